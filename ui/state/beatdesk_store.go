package state

import (
	"errors"
	"slices"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal"
	"gloamline/journal/pen"
	"gloamline/ui/words"
)

// ErrAsk is returned by Store for a beat that stands: whether it was drawn wrong, or has
// changed since an evening, only a person can say (Question, then Correct or ChangeFrom).
var ErrAsk = errors.New("correct it, or changed from an evening on?")

// Store makes the drawing a beat of the journal. A drawing on which no light or place could be
// worked out is refused, with the first thing wrong picked out; it stays as it is.
func (b *BeatDesk) Store() error {
	switch {
	case b.top == nil || !b.top.changed():
		return nil
	case b.d.readOnly:
		return &journal.Error{Op: "store a beat", Kind: journal.ReadOnly}
	}
	if err := b.sound(); err != nil {
		return err
	}
	if b.top.stands {
		return ErrAsk
	}
	shape := b.top.hist.Now.Beat
	r := journal.Beat{ID: shape.ID, Revisions: []journal.BeatRevision{{Shape: shape}}}
	return b.write("add beat", r)
}

// sound refuses what no night could be written on.
func (b *BeatDesk) sound() error {
	b.held = nil
	b.look()
	for _, f := range b.found {
		if f.Gates {
			b.d.act(func() {
				b.Select(f.Of)
				b.refused = &draft.Error{Of: f.Of, At: f.At, What: f.What, Do: f.Do}
			})
			return &journal.Error{Op: "store a beat", Kind: journal.Invalid, Err: words.BeatNotYet(f.What, f.Do)}
		}
	}
	return nil
}

// StoreQuestion is what storing a changed beat asks.
type StoreQuestion struct {
	Beat   string
	Since  journal.Date // from when the sketch that stands holds; zero: always
	Nights int          // written on that sketch
	From   string       // the evening that is offered
	// Lost are the pools that nights were fished in and that this drawing no longer has: corrected,
	// those nights would lose the place of what they hold.
	Lost []string
	// Elsewhere is set when the beat was changed since this drawing was begun.
	Elsewhere bool
}

// Question returns what storing the drawing of a standing beat asks.
func (b *BeatDesk) Question() (StoreQuestion, error) {
	r, err := b.record()
	if err != nil {
		return StoreQuestion{}, err
	}
	last := r.Revisions[len(r.Revisions)-1]
	q := StoreQuestion{Beat: words.BeatName(latest(r)), Since: last.From, Elsewhere: !sameSketch(b.top.base, latest(r))}
	shape := b.top.hist.Now.Beat
	q.From = printDate(journal.EveningOf(b.d.now(), zoneOf(shape.Zone)))
	fished := map[geo.ID]bool{}
	for _, t := range b.d.list.trips {
		if t.Beat != r.ID || t.Evening.Before(last.From) {
			continue
		}
		q.Nights++
		if log, err := b.d.j.Night(t.ID); err == nil {
			for _, e := range log.Sorted() {
				for _, p := range poolsOf(e) {
					fished[p] = true
				}
			}
		}
	}
	for _, p := range last.Shape.Pools {
		if _, still := shape.Pool(p.ID); fished[p.ID] && !still {
			q.Lost = append(q.Lost, words.PoolName(p.Name))
		}
	}
	return q, nil
}

// poolsOf lists the pools an entry names.
func poolsOf(e journal.Entry) []geo.ID {
	switch e := e.(type) {
	case journal.Run:
		return []geo.ID{e.Pool}
	case journal.Contact:
		return []geo.ID{e.Pool.Or(geo.ID{})}
	case journal.Ready:
		return []geo.ID{e.Pool}
	case journal.Plan:
		return []geo.ID{e.Pool.Or(geo.ID{})}
	case journal.Note:
		return []geo.ID{e.Pool.Or(geo.ID{})}
	}
	return nil
}

// Correct puts the drawing in the place of the sketch that stands: it was so all along.
func (b *BeatDesk) Correct() error {
	if err := b.sound(); err != nil {
		return err
	}
	r, err := b.record()
	if err != nil {
		return err
	}
	r.Revisions = slices.Clone(r.Revisions)
	r.Revisions[len(r.Revisions)-1].Shape = b.top.hist.Now.Beat
	return b.write("amend beat", r)
}

// ChangeFrom makes the drawing hold from the night of an evening on; nights before it keep the
// sketch that stands.
func (b *BeatDesk) ChangeFrom(text string) error {
	if err := b.sound(); err != nil {
		return err
	}
	r, err := b.record()
	if err != nil {
		return err
	}
	shape := b.top.hist.Now.Beat
	from, err := pen.ParseDate(text, journal.EveningOf(b.d.now(), zoneOf(shape.Zone)))
	if err != nil {
		return &journal.Error{Op: "store a beat", Kind: journal.Invalid, Field: "from", Err: err}
	}
	n := len(r.Revisions)
	switch last := r.Revisions[n-1].From; {
	case from == last:
		r.Revisions = slices.Clone(r.Revisions)
		r.Revisions[n-1].Shape = shape
	case from.Before(last):
		return &journal.Error{Op: "store a beat", Kind: journal.Invalid, Field: "from", Err: words.SketchIsLater(last)}
	default:
		r.Revisions = append(slices.Clip(r.Revisions), journal.BeatRevision{From: from, Shape: shape})
	}
	return b.write("amend beat", r)
}

// record is the beat on the table as the journal has it.
func (b *BeatDesk) record() (journal.Beat, error) {
	if b.top == nil {
		return journal.Beat{}, &journal.Error{Op: "store a beat", Kind: journal.NotFound}
	}
	r, err := journal.One[journal.Beat](b.d.j, b.top.hist.Now.Beat.ID)
	if err == nil && len(r.Revisions) == 0 {
		err = &journal.Error{Op: "store a beat", Kind: journal.Corrupt}
	}
	return r, err
}

// write stores a record as one change. What became of pools that were split or joined goes with
// it, whichever answer was given.
func (b *BeatDesk) write(did string, r journal.Beat) (err error) {
	dr := b.top
	if next := dr.hist.Now.Successors(dr.base); len(next) > 0 {
		all := map[journal.ID][]journal.ID{}
		for _, from := range []map[journal.ID][]journal.ID{r.Successors, next} {
			for p, into := range from {
				all[p] = into
			}
		}
		r.Successors = all
	}
	b.d.act(func() {
		b.tell()
		if _, err = b.d.j.Do(did, journal.Batch{Put: []journal.Record{r}}); err != nil {
			return
		}
		dr.stands, dr.base = true, latest(r)
		dr.hist, dr.about = draft.History{Now: draft.New(dr.base)}, ""
		b.refused = nil
		b.after()
	})
	return err
}
