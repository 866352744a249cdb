package state

import (
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/ui/words"
)

// IntakeRow is one proposal as it is listed.
type IntakeRow struct {
	Key       string
	Says      string // 22:34–23:15 run, Alder Pool
	Times     string // 22:34–23:15
	What      string // run, Alder Pool
	Proposal  intake.Proposal
	Details   []string // how the river stood at the gauge
	Record    journal.Record
	Do        intake.Do
	Way       intake.Way
	Conflicts []IntakeConflict
	Unsettled bool // accepted, but a conflict waits for its way
	Doubtful  bool
	Edited    bool
	Past      journal.Verdict // decided before; such rows stand last
}

// IntakeConflict is what stands against a proposal, with the ways to settle it.
type IntakeConflict struct {
	Says                      string
	WrittenHead, ProposedHead string // of the two sides
	WrittenSide, ProposedSide string

	Written journal.Ref // zero: another file's proposal
	Ways    []IntakeWay
}

// IntakeWay is a way to settle a conflict.
type IntakeWay struct {
	Way   intake.Way
	Label string
}

// IntakeSource is one file as it is listed.
type IntakeSource struct {
	Says    string
	Remarks []string
	Hint    string // at an offset; empty if there is none
	Source  intake.Source
}

// Sources lists the files; without a night by what their readers made of them alone.
func (k *IntakeDesk) Sources() []IntakeSource {
	v := words.IntakeView{Zone: k.zone(), Prefs: k.d.prefs}
	b, _ := k.Batch()
	if b == nil {
		b = &intake.Batch{}
		for _, f := range k.files {
			s := intake.Source{File: f, Device: intake.DeviceOf(f)}
			s.Record.Offset = k.order.Clocks[s.Device]
			if f.Photo != nil {
				s.Clock = intake.ReadClock(f.Photo, v.Zone, k.order.Zone)
			}
			if f.Fault != nil {
				s.Remarks = []intake.Remark{{Kind: intake.BadFile}}
			}
			b.Sources = append(b.Sources, s)
		}
	} else if w, err := k.view(b); err == nil {
		v = w
	}
	v.Batch = b
	var out []IntakeSource
	for _, s := range b.Sources {
		x := IntakeSource{Says: v.SourceLine(s), Hint: words.HintLine(s), Source: s}
		for _, r := range s.Remarks {
			x.Remarks = append(x.Remarks, v.RemarkLine(s, r))
		}
		out = append(out, x)
	}
	return out
}

// zone is that of the night, else that of the newest, else UTC.
func (k *IntakeDesk) zone() *time.Location {
	if t, ok := k.trips()[k.Trip()]; ok {
		if loc, err := t.Location(); err == nil {
			return loc
		}
	}
	if len(k.d.list.trips) > 0 {
		if loc, err := k.d.list.trips[0].Location(); err == nil {
			return loc
		}
	}
	return time.UTC
}

// trips are the nights there are.
func (k *IntakeDesk) trips() map[journal.ID]journal.Trip {
	out := map[journal.ID]journal.Trip{}
	all, _ := k.d.j.Trips() // without nights nothing is offered
	for _, t := range all {
		out[t.ID] = t
	}
	return out
}

// Questions lists what is to be answered, each in its lines.
func (k *IntakeDesk) Questions() (qs []intake.Question, lines [][]string) {
	b, _ := k.Batch()
	if b == nil {
		return nil, nil
	}
	v, err := k.view(b)
	if err != nil {
		return nil, nil
	}
	for _, q := range b.Questions {
		qs, lines = append(qs, q), append(lines, v.QuestionLines(q))
	}
	return qs, lines
}

// Rows lists the proposals in order of time, those decided before last.
func (k *IntakeDesk) Rows() []IntakeRow {
	if k.rows == nil {
		k.rows = k.makeRows()
	}
	return k.rows
}

func (k *IntakeDesk) makeRows() []IntakeRow {
	b, _ := k.Batch()
	if b == nil {
		return nil
	}
	v, err := k.view(b)
	if err != nil {
		return nil
	}
	choices := k.choices(b)
	var out []IntakeRow
	for _, p := range append(b.New(), b.Decided()...) {
		c := choices[p.Key]
		r := IntakeRow{Key: p.Key, Record: p.Record, Do: c.Do, Way: c.Way, Past: p.Past, Doubtful: p.Confidence < intake.Doubtful, Edited: c.Record != nil}
		if r.Edited {
			p.Record, r.Record = c.Record, c.Record
		}
		r.Says, r.Times, r.What, r.Proposal = v.ProposalLine(p), v.ProposalTimes(p), v.ProposalWhat(p), p
		for _, s := range p.River {
			r.Details = append(r.Details, v.GaugeLine(s))
		}
		for _, x := range p.Conflicts {
			row := IntakeConflict{Says: v.ConflictLine(x)}
			row.WrittenHead, row.ProposedHead = v.ConflictHeads(x, p)
			row.WrittenSide, row.ProposedSide = v.ConflictSides(x, p)
			if x.Written != nil {
				row.Written = x.Written.Ref()
			}
			for _, w := range x.Ways {
				row.Ways = append(row.Ways, IntakeWay{w, words.WayLabelFor(x, p, w)})
			}
			r.Conflicts = append(r.Conflicts, row)
		}
		r.Unsettled = c.Do == intake.Accept && slices.ContainsFunc(p.Conflicts, func(x intake.Conflict) bool { return !x.Allows(c.Way) })
		out = append(out, r)
	}
	return out
}

// choices are what is ticked by itself, with what was chosen over it.
func (k *IntakeDesk) choices(b *intake.Batch) intake.Choices {
	out := b.Ticks()
	for key, c := range k.chosen {
		if _, ok := b.Find(key); ok {
			out[key] = c
		}
	}
	return out
}

// choose changes what is chosen for a proposal.
func (k *IntakeDesk) choose(key string, f func(*intake.Choice)) {
	b, _ := k.Batch()
	if b == nil {
		return
	}
	c, ok := k.choices(b)[key]
	if _, there := b.Find(key); !there {
		return
	}
	if !ok {
		c = intake.Choice{}
	}
	f(&c)
	k.d.act(func() {
		k.chosen[key] = c
		k.stale()
		k.d.tell(RoomView | Can)
	})
}

// Tick accepts a proposal or leaves it for another time.
func (k *IntakeDesk) Tick(key string, on bool) {
	k.choose(key, func(c *intake.Choice) {
		if c.Do = intake.Leave; on {
			c.Do = intake.Accept
		}
	})
}

// TickAll accepts, or leaves, all that is new and contradicts nothing.
func (k *IntakeDesk) TickAll(on bool) {
	k.d.act(func() {
		for _, r := range k.Rows() {
			if r.Past == "" && len(r.Conflicts) == 0 {
				k.Tick(r.Key, on)
			}
		}
	})
}

// Reject says that a proposal is not to come again.
func (k *IntakeDesk) Reject(key string) {
	k.choose(key, func(c *intake.Choice) { c.Do = intake.Reject })
}

// Settle says which of two sides stands, and accepts the proposal in that way.
func (k *IntakeDesk) Settle(key string, w intake.Way) {
	k.choose(key, func(c *intake.Choice) { c.Do, c.Way = intake.Accept, w })
}

// Edit puts another record in the place of the one proposed: same kind, same identity. What
// is wrong with it by itself is refused.
func (k *IntakeDesk) Edit(key string, r journal.Record) error {
	b, err := k.Batch()
	if b == nil {
		return err
	}
	p, ok := b.Find(key)
	if !ok || p.Record.Ref() != r.Ref() {
		return &journal.Error{Op: "edit proposal", Kind: journal.NotFound, ID: r.Ref().ID}
	}
	if err := journal.Check(r); err != nil {
		return err
	}
	k.choose(key, func(c *intake.Choice) { c.Do, c.Record = intake.Accept, r })
	return nil
}
