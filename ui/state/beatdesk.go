package state

import (
	"slices"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// BeatDesk is the table on which beats are drawn. One drawing lies on top; others stay as
// they were left, each with its own history. What is drawn becomes a record only when it is
// stored (Store, Correct, ChangeFrom), as one change of the journal. Until then it is laid by
// after every act (Keeper), whatever is wrong with it, and offered again: a sketch that crosses
// itself or has no place is no record, and a record for every stroke would fill the journal.
//
// Lengths are metres on the plane of the drawing, X east and Y north of its place.
type BeatDesk struct {
	d      *Desk
	keeper Keeper
	fault  error // why the drawings could not be laid by

	all []*drawing
	top *drawing // nil: nothing lies on the table

	tool    Tool
	pending geo.Path // corners so far of what is being drawn
	pen     geo.Point
	penOn   bool
	sel     geo.ID // pool or feature; zero: the beat itself
	vertex  draft.Vertex
	corner  bool // vertex is set
	held    *held
	refused *draft.Error
	typed   map[string]string // texts of fields as typed, by ID of thing and field
	typing  bool              // a field is being filled in
	found   []draft.Finding   // of the draft on the table
	width   units.Metres      // of a river drawn by its middle
	measure units.Metres

	grid units.Metres
	view PlanView
	size draw.Size

	sky      int // point of the skyline picked out, -1 for none
	skyHeld  geo.Skyline
	skyMoved bool
	evening  journal.Date // of the sky over the skyline; zero: tonight
}

// drawing is one beat being drawn.
type drawing struct {
	stands bool     // the journal has the beat
	base   geo.Beat // its sketch in the journal when this was begun, or last stored
	hist   draft.History
	about  string // what the last act was about: acts of one kind that follow it are one step
	found  string // the zone that was found from the place
	trace  *tracing
}

// held is what the pointer holds: the draft is a preview until it is let go.
type held struct {
	now  draft.Draft
	from geo.Point
	what draft.Vertex // zero: the whole of the selected thing
}

// Grids are the widths of the grid that drawing catches on, in metres; 0 is none.
var Grids = []units.Metres{0, 0.5, 1, 2, 5, 10, 20}

// Beats returns the table for drawing beats.
func (d *Desk) Beats() *BeatDesk {
	if d.beats == nil {
		d.beats = &BeatDesk{d: d, tool: Choose, grid: 1, width: 20, typed: map[string]string{}, sky: -1, size: draw.Size{W: 800, H: 500}}
	}
	return d.beats
}

// tell says that the drawing changed, in act's fashion.
func (b *BeatDesk) tell() { b.d.tell(RoomView | Can) }

// Drawn returns the draft on the table, as it would be if what the pointer holds were let
// go; false if there is none.
func (b *BeatDesk) Drawn() (draft.Draft, bool) {
	switch {
	case b.top == nil:
		return draft.Draft{}, false
	case b.held != nil:
		return b.held.now, true
	}
	return b.top.hist.Now, true
}

func (b *BeatDesk) now() draft.Draft { d, _ := b.Drawn(); return d }

// BeatRow is a beat in the list.
type BeatRow struct {
	ID    geo.ID
	Name  string // with its river
	Pools int
	Draft bool // changed, and not stored yet
	New   bool // the journal does not have it
	Open  bool // on the table
}

// Rows lists the beats: those of the journal by name, then new ones in the order they were begun.
func (b *BeatDesk) Rows() []BeatRow {
	var out []BeatRow
	beats, _ := journal.All[journal.Beat](b.d.j) // one that cannot be read cannot be drawn on
	for _, r := range beats {
		shape := latest(r)
		row := BeatRow{ID: r.ID}
		if dr := b.drawing(r.ID); dr != nil {
			shape, row.Draft, row.Open = dr.hist.Now.Beat, dr.changed(), dr == b.top
		}
		row.Name, row.Pools = words.BeatName(shape), len(shape.Pools)
		out = append(out, row)
	}
	slices.SortStableFunc(out, func(x, y BeatRow) int { return compareNames(x.Name, y.Name) })
	for _, dr := range b.all {
		if !dr.stands {
			shape := dr.hist.Now.Beat
			out = append(out, BeatRow{ID: shape.ID, Name: words.BeatName(shape), Pools: len(shape.Pools), Draft: true, New: true, Open: dr == b.top})
		}
	}
	return out
}

func (b *BeatDesk) drawing(id geo.ID) *drawing {
	i := slices.IndexFunc(b.all, func(dr *drawing) bool { return dr.hist.Now.Beat.ID == id })
	if i < 0 {
		return nil
	}
	return b.all[i]
}

// latest is the sketch of a beat that holds now, with the identity of the beat.
func latest(r journal.Beat) geo.Beat {
	var shape geo.Beat
	if n := len(r.Revisions); n > 0 {
		shape = r.Revisions[n-1].Shape
	}
	shape.ID = r.ID
	return shape
}

// changed reports whether there is something that the journal does not have.
func (dr *drawing) changed() bool { return !dr.stands || !sameSketch(dr.base, dr.hist.Now.Beat) }

// blank reports whether nothing at all was done on a new drawing.
func (dr *drawing) blank() bool {
	s := dr.hist.Now.Beat
	return !dr.stands && len(s.Pools)+len(s.Features) == 0 && s.Name == "" && s.River.Name == "" && s.At.IsZero() && dr.trace == nil
}

// New puts an empty drawing on the table. One on which nothing was done yet is taken instead.
func (b *BeatDesk) New() {
	b.d.act(func() {
		for _, dr := range b.all {
			if dr.blank() {
				b.put(dr)
				return
			}
		}
		dr := &drawing{hist: draft.History{Now: draft.New(geo.Beat{ID: geo.NewID()})}}
		b.all = append(b.all, dr)
		b.put(dr)
	})
}

// Open puts a beat on the table: the drawing of it that is not finished, or the sketch as
// it stands.
func (b *BeatDesk) Open(id geo.ID) (err error) {
	b.d.act(func() {
		dr := b.drawing(id)
		if dr == nil {
			var r journal.Beat
			if r, err = journal.One[journal.Beat](b.d.j, id); err != nil {
				return
			}
			dr = &drawing{stands: true, base: latest(r), hist: draft.History{Now: draft.New(latest(r))}}
			b.all = append(b.all, dr)
		}
		b.put(dr)
	})
	return err
}

func (b *BeatDesk) put(dr *drawing) {
	b.tell()
	if dr == b.top {
		return
	}
	b.top, b.sel, b.corner, b.pending, b.penOn, b.held, b.refused, b.sky = dr, geo.ID{}, false, nil, false, nil, nil, -1
	b.typed, b.skyHeld, b.measure = map[string]string{}, nil, 0
	b.tool = Choose
	b.look()
	b.Fit()
}

// Discard takes the drawing off the table and drops what was not stored of it; what the
// journal has stands.
func (b *BeatDesk) Discard() {
	b.d.act(func() {
		if b.top == nil {
			return
		}
		gone := b.top
		b.all = slices.DeleteFunc(b.all, func(dr *drawing) bool { return dr == gone })
		stands, id := gone.stands, gone.hist.Now.Beat.ID
		b.top = nil
		b.put(nil)
		if stands {
			_ = b.Open(id) // it was just there
		}
		b.keep()
	})
}

// Changed reports whether the drawing on the table holds something that is not stored.
func (b *BeatDesk) Changed() bool { return b.top != nil && b.top.changed() }

// Stands reports whether the journal has the beat on the table.
func (b *BeatDesk) Stands() bool { return b.top != nil && b.top.stands }

// Findings lists what is wrong with what is drawn, and where.
func (b *BeatDesk) Findings() []draft.Finding { return b.found }

// look finds anew what is wrong.
func (b *BeatDesk) look() {
	b.found = nil
	if d, ok := b.Drawn(); ok {
		b.found = d.Findings()
	}
}

// Refused is the last act that could not be done, with its reason and place, until another
// one is tried; nil for none.
func (b *BeatDesk) Refused() *draft.Error { return b.refused }
