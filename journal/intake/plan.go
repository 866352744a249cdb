package intake

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"gloamline/journal"
)

// Do is what is done with a proposal.
type Do string

// The choices. What nobody chose for is left: it comes again with the next import.
const (
	Leave  Do = ""
	Accept Do = "accept"
	Reject Do = "reject"
)

// Choice is what was chosen for one proposal.
type Choice struct {
	Do     Do
	Way    Way            // of its conflicts, if it has any
	Record journal.Record // as edited; nil: as proposed. Kind, identity and night stay
}

// Choices are by the key of the proposal.
type Choices map[string]Choice

// Ticks accepts what is ticked and leaves the rest.
func (b *Batch) Ticks() Choices {
	out := Choices{}
	for _, p := range b.Proposals {
		if p.Ticked {
			out[p.Key] = Choice{Do: Accept}
		}
	}
	return out
}

// UnsettledError names accepted proposals whose conflicts need a Way, or whose rival is
// accepted too.
type UnsettledError struct{ Keys []string }

// Error implements error.
func (e *UnsettledError) Error() string {
	return fmt.Sprintf("%d accepted proposals contradict what is written: say for each which of the two stands", len(e.Keys))
}

// Commit stores what was chosen as one change, taken back by one undo. Choices that come
// to nothing store nothing; the change is then zero.
func (b *Batch) Commit(j *journal.Journal, c Choices) (journal.Change, error) {
	p, err := b.Plan(c)
	if err != nil {
		return journal.Change{}, err
	}
	return j.Do("import", p)
}

// Plan is the act that the choices come to, without doing it: Journal.Try tells whether
// the journal would take it.
func (b *Batch) Plan(c Choices) (journal.Batch, error) {
	pl := &planner{b: b, c: c, put: map[journal.Ref]journal.Record{}, of: map[int]journal.ID{}, used: map[int]bool{}}
	var unsettled []string
	for _, p := range b.Proposals {
		if c[p.Key].Do == Accept && !b.settled(p, c) {
			unsettled = append(unsettled, p.Key)
		}
	}
	if len(unsettled) > 0 {
		return journal.Batch{}, &UnsettledError{unsettled}
	}
	// A fish before its picture, which names it.
	for _, photos := range []bool{false, true} {
		for _, p := range b.Proposals {
			if _, is := p.Record.(journal.Photo); is != photos {
				continue
			}
			if err := pl.one(p); err != nil {
				return journal.Batch{}, err
			}
		}
	}
	return pl.batch(), nil
}

// settled reports whether an accepted proposal says what becomes of each conflict.
func (b *Batch) settled(p Proposal, c Choices) bool {
	for _, x := range p.Conflicts {
		way := c[p.Key].Way
		if !x.Allows(way) {
			return false
		}
		if rival := c[x.Rival]; x.Kind == TwoTracks && way == TakeProposed && rival.Do == Accept && rival.Way != KeepWritten {
			return false
		}
	}
	return true
}

// planner gathers what the choices come to.
type planner struct {
	b      *Batch
	c      Choices
	put    map[journal.Ref]journal.Record
	order  []journal.Ref
	remove []journal.Ref
	of     map[int]journal.ID // by source: the fish its picture shows
	used   map[int]bool       // sources something was decided of
}

func (pl *planner) add(r journal.Record) {
	if _, ok := pl.put[r.Ref()]; !ok {
		pl.order = append(pl.order, r.Ref())
	}
	pl.put[r.Ref()] = r
}

func (pl *planner) batch() journal.Batch {
	var out journal.Batch
	for i, s := range pl.b.Sources {
		if pl.used[i] {
			out.Put = append(out.Put, s.Record)
		}
	}
	for _, r := range pl.order {
		if !slices.Contains(pl.remove, r) {
			out.Put = append(out.Put, pl.put[r])
		}
	}
	out.Remove = pl.remove
	return out
}

// decide remembers a verdict.
func (pl *planner) decide(p Proposal, v journal.Verdict, entry journal.Ref) {
	d, ok := pl.b.past[p.Key]
	if !ok {
		d = journal.Decision{ID: journal.NewID(), Key: p.Key}
	}
	d.Verdict, d.Entry = v, entry
	pl.add(d)
	pl.used[p.Source] = true
}

var errEdited = errors.New("an edited proposal keeps its kind, identity and night")

// one carries out the choice for a proposal.
func (pl *planner) one(p Proposal) error {
	choice := pl.c[p.Key]
	rec := p.Record
	if choice.Record != nil {
		if choice.Record.Ref() != rec.Ref() {
			return errEdited
		}
		rec = choice.Record
	}
	switch {
	case choice.Do == Reject && p.Past == "":
		pl.decide(p, journal.Rejected, journal.Ref{})
	case choice.Do != Accept || p.Past == journal.Accepted:
	case len(p.Conflicts) > 0 && choice.Way != TakeBoth:
		pl.conflicting(p, rec, choice.Way)
	default:
		pl.accept(p, rec)
	}
	return nil
}

func (pl *planner) accept(p Proposal, rec journal.Record) {
	switch r := rec.(type) {
	case journal.Contact:
		r.From = p.Record.(journal.Contact).From
		pl.of[p.Source] = r.ID
		rec = r
	case journal.Photo:
		if id, ok := pl.of[p.Source]; ok {
			r.Of = journal.Of(id)
		}
		r.From = p.Record.(journal.Photo).From
		rec = r
	case journal.Run:
		r.From = p.Record.(journal.Run).From
		rec = r
	case journal.Series:
		rec = pl.join(r)
	}
	pl.add(rec)
	pl.decide(p, journal.Accepted, rec.Ref())
}

// join puts readings among those that the journal, or another file of the batch, has of
// their gauge already.
func (pl *planner) join(s journal.Series) journal.Series {
	for _, ref := range pl.order {
		if old, ok := pl.put[ref].(journal.Series); ok && sameGauge(old, s) {
			return joined(old, s)
		}
	}
	return pl.b.Joined(s)
}

// conflicting carries out the way chosen for a proposal's conflicts, other than both.
func (pl *planner) conflicting(p Proposal, rec journal.Record, way Way) {
	var written []journal.Record
	for _, c := range p.Conflicts {
		if c.Written != nil {
			written = append(written, c.Written)
		}
	}
	if way == KeepWritten {
		if _, fish := rec.(journal.Contact); fish && len(written) == 1 {
			pl.of[p.Source] = written[0].Ref().ID
		}
		if s, ok := rec.(journal.Series); ok && len(s.Points) > 0 {
			pl.accept(p, s) // the readings the journal does not have
			return
		}
		entry := journal.Ref{}
		if len(written) > 0 {
			entry = written[0].Ref()
		}
		pl.decide(p, journal.Rejected, entry)
		return
	}
	switch r := rec.(type) {
	case journal.Run:
		pl.takeRun(p, r, written)
	case journal.Contact:
		pl.takeFish(p, r, written)
	case journal.Series:
		for _, c := range p.Conflicts {
			pl.add(corrected(c.Written.(journal.Series), c.Readings))
		}
		if len(r.Points) > 0 {
			pl.accept(p, r)
		} else {
			pl.decide(p, journal.Accepted, written[0].Ref())
		}
	default:
		pl.accept(p, rec)
	}
}

// takeRun gives the first written run at the same pool the times and places of the track,
// so that what hangs on it stays; others give way.
func (pl *planner) takeRun(p Proposal, r journal.Run, written []journal.Record) {
	kept := false
	for _, w := range written {
		old := w.(journal.Run)
		if kept || old.Pool != r.Pool {
			pl.remove = append(pl.remove, old.Ref())
			continue
		}
		kept = true
		old.When, old.Until, old.From, old.Warnings = r.When, r.Until, p.Record.(journal.Run).From, nil
		if !old.Enter.Known() {
			old.Enter = r.Enter
		}
		if !old.Leave.Known() {
			old.Leave = r.Leave
		}
		pl.add(old)
		pl.decide(p, journal.Accepted, old.Ref())
	}
	if !kept {
		pl.accept(p, r)
	}
}

// takeFish gives the first written fish moment and place of the picture.
func (pl *planner) takeFish(p Proposal, r journal.Contact, written []journal.Record) {
	old := written[0].(journal.Contact)
	old.When, old.From, old.Warnings = r.When, p.Record.(journal.Contact).From, r.Warnings
	if !old.Spot.Known() {
		old.Spot = r.Spot
	}
	if !old.Pool.Known() {
		old.Pool = r.Pool
	}
	pl.of[p.Source] = old.ID
	pl.add(old)
	pl.decide(p, journal.Accepted, old.Ref())
}

// corrected is a series with other values at the moments of some readings.
func corrected(s journal.Series, with []journal.Reading) journal.Series {
	at := map[int64]journal.Reading{}
	for _, r := range with {
		at[r.At.Unix()] = r
	}
	s.Points = slices.Clone(s.Points)
	for i, r := range s.Points {
		if n, ok := at[r.At.Unix()]; ok {
			s.Points[i] = n
		}
	}
	return s
}

// Element is the part of a key after the file: track, run, photo, fish or level first.
func Element(key string) string {
	_, element, _ := strings.Cut(key, "#")
	return element
}
