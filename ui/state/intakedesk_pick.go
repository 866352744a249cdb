package state

import (
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// Picked is the proposal picked out; false if none is.
func (k *IntakeDesk) Picked() (IntakeRow, bool) {
	for _, r := range k.Rows() {
		if r.Record.Ref() == k.picked {
			return r, true
		}
	}
	return IntakeRow{}, false
}

// Row is the proposal of a record; false if it is none. What is written leads to the
// proposal that contradicts it.
func (k *IntakeDesk) Row(ref journal.Ref) (IntakeRow, bool) {
	rows := k.Rows()
	for _, r := range rows {
		if r.Record.Ref() == ref || r.Record.Ref().ID == ref.ID {
			return r, true
		}
	}
	for _, r := range rows {
		if slices.ContainsFunc(r.Conflicts, func(c IntakeConflict) bool { return c.Written == ref }) {
			return r, true
		}
	}
	return IntakeRow{}, false
}

// Pick picks a proposal out by its record, with the file it came from; the cursor goes to its
// moment. What is none picks out nothing.
func (k *IntakeDesk) Pick(ref journal.Ref) {
	r, ok := k.Row(ref)
	k.d.act(func() {
		k.picked = journal.Ref{}
		if ok {
			k.picked = r.Record.Ref()
			k.file = r.Proposal.Source
			switch r.Record.(type) {
			case journal.Track, journal.Series:
			default:
				k.cursor = r.Proposal.At
			}
		}
		k.d.tell(RoomView | Can)
	})
}

// Next picks out the next proposal of the list, or the one before.
func (k *IntakeDesk) Next(step int) {
	rows := k.Rows()
	if len(rows) == 0 {
		return
	}
	at := slices.IndexFunc(rows, func(r IntakeRow) bool { return r.Record.Ref() == k.picked })
	switch {
	case at < 0 && step < 0:
		at = len(rows)
	case at < 0:
		at = -1
	}
	k.Pick(rows[max(0, min(len(rows)-1, at+step))].Record.Ref())
}

// File is the file picked out; false if there is none.
func (k *IntakeDesk) File() (*intake.File, bool) {
	if k.file < 0 || k.file >= len(k.files) {
		return nil, false
	}
	return k.files[k.file], true
}

// PickFile picks out a file by its place in the list.
func (k *IntakeDesk) PickFile(i int) {
	k.d.act(func() {
		k.file = max(0, min(len(k.files)-1, i))
		k.d.tell(RoomView | Can)
	})
}

// NextFile picks out the next file, or the one before.
func (k *IntakeDesk) NextFile(step int) { k.PickFile(k.file + step) }

// Cursor is the moment at which the river and the light are told; zero: none.
func (k *IntakeDesk) Cursor() time.Time { return k.cursor }

// SetCursor sets it.
func (k *IntakeDesk) SetCursor(t time.Time) {
	k.d.act(func() {
		k.cursor = t
		k.d.tell(RoomView)
	})
}

// Toggle accepts the proposal picked out, or leaves it.
func (k *IntakeDesk) Toggle() {
	if r, ok := k.Picked(); ok {
		k.Tick(r.Key, r.Do != intake.Accept)
	}
}

// ToggleReject rejects the proposal picked out, or leaves it again.
func (k *IntakeDesk) ToggleReject() {
	r, ok := k.Picked()
	switch {
	case !ok:
	case r.Do == intake.Reject:
		k.Tick(r.Key, false)
	default:
		k.Reject(r.Key)
	}
}

// SettlePicked settles what the proposal picked out contradicts, if that way is open.
func (k *IntakeDesk) SettlePicked(w intake.Way) {
	if r, ok := k.Picked(); ok && r.allows(w) {
		k.Settle(r.Key, w)
	}
}

// allows reports whether all that a proposal contradicts can be settled in a way.
func (r IntakeRow) allows(w intake.Way) bool {
	return len(r.Conflicts) > 0 && !slices.ContainsFunc(r.Conflicts, func(c IntakeConflict) bool {
		return !slices.ContainsFunc(c.Ways, func(x IntakeWay) bool { return x.Way == w })
	})
}

// open reports whether the proposal picked out can still be decided.
func (k *IntakeDesk) open() bool {
	_, ok := k.Picked()
	return ok
}

// Counts says how many proposals stand for decision, and how many of them are accepted,
// rejected, and accepted without what they contradict being settled.
func (k *IntakeDesk) Counts() (rows, accepted, rejected, waiting int) {
	for _, r := range k.Rows() {
		if r.Past == "" {
			rows++
		}
		switch {
		case r.Do == intake.Reject && r.Past == "":
			rejected++
		case r.Unsettled:
			waiting++
		case r.Do == intake.Accept && r.Past != journal.Accepted:
			accepted++
		}
	}
	return rows, accepted, rejected, waiting
}

// Scene is the list of proposals as a scene takes it.
func (k *IntakeDesk) Scene() scene.IntakeListView {
	v := scene.IntakeListView{Picked: k.picked}
	if _, err := k.Batch(); err != nil {
		what, do := words.Explain(err)
		v.Empty = []string{what, do}
		return v
	}
	switch {
	case len(k.files) == 0:
		v.Empty = words.IntakeNoFiles()
	case k.Trip().IsZero():
		v.Empty = words.IntakeNoNight()
	case slices.ContainsFunc(k.Asks(), func(a IntakeAsk) bool { return a.Open }):
		v.Empty = words.IntakeAsked()
	default:
		v.Empty = words.IntakeNoProposals()
	}
	for _, r := range k.Rows() {
		v.Rows = append(v.Rows, r.scene())
	}
	return v
}

func (r IntakeRow) scene() scene.IntakeRow {
	out := scene.IntakeRow{Ref: r.Record.Ref(), Times: r.Times, What: r.What, Share: r.Proposal.Confidence, Doubt: words.Doubt(r.Proposal)}
	if p, ok := r.Record.(journal.Photo); ok {
		out.Thumb = p.Thumb
	}
	if r.Proposal.Visit != nil {
		out.Sure = words.Sure(r.Proposal.Confidence)
	}
	again := r.Past != "" && r.Past != journal.Accepted && r.Do == intake.Accept
	switch {
	case r.Past != "" && !again:
		out.Do = scene.IntakePast
		out.Notes = append(out.Notes, words.PastNote(r.Past))
	case r.Unsettled:
		out.Do = scene.IntakeWaits
	case r.Do == intake.Accept:
		out.Do = scene.IntakeAccepted
	case r.Do == intake.Reject:
		out.Do = scene.IntakeRejected
		out.Notes = append(out.Notes, words.WillNotCome())
	}
	if r.Edited {
		out.Notes = append(out.Notes, words.EditedNote())
	}
	out.Notes = append(out.Notes, r.Details...)
	if r.Past != "" {
		return out
	}
	for _, c := range r.Conflicts {
		out.Conflicts = append(out.Conflicts, scene.IntakeSides{WrittenHead: c.WrittenHead, Written: c.WrittenSide, ProposedHead: c.ProposedHead, Proposed: c.ProposedSide})
	}
	if len(r.Conflicts) > 0 { // one way settles all
		for _, w := range r.Conflicts[0].Ways {
			if r.allows(w.Way) {
				out.Ways = append(out.Ways, scene.IntakeWay{Kind: wayKinds[w.Way], Label: w.Label, Chosen: r.Do == intake.Accept && r.Way == w.Way})
			}
		}
	}
	return out
}

var wayKinds = map[intake.Way]journal.Kind{intake.KeepWritten: scene.KeepKind, intake.TakeProposed: scene.TakeKind, intake.TakeBoth: scene.BothKind}
