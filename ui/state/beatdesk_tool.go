package state

import (
	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// Tool is what a click on the plan does.
type Tool string

// The tools.
const (
	Choose       Tool = "choose"  // pick out, move, bend
	DrawRiver    Tool = "river"   // both banks by the middle of the river and its width
	DrawBank     Tool = "bank"    // one bank line
	DrawPool     Tool = "pool"    // round a pool
	DrawTrees    Tool = "trees"   // round an area of trees
	MarkEnds     Tool = "ends"    // head and tail of the pool picked out
	MarkEntry    Tool = "entry"   // a way in or out
	MarkHazard   Tool = "hazard"  //
	MarkLie      Tool = "lie"     // where fish lie
	MarkThing    Tool = "mark"    // a landmark
	SplitPool    Tool = "split"   // the pool picked out, across
	Measure      Tool = "measure" // along corners
	PlaceTracing Tool = "tracing" // two points of the image and where they belong
)

// Tools lists the tools in the order of their buttons.
var Tools = []Tool{Choose, DrawRiver, DrawBank, DrawPool, MarkEnds, DrawTrees, MarkEntry, MarkHazard, MarkLie, MarkThing, SplitPool, Measure}

// draws reports whether the tool gathers corners until it is told to close, and how many it
// needs at least.
func (t Tool) draws() (least int, ok bool) {
	switch t {
	case DrawRiver, DrawBank, Measure:
		return 2, true
	case DrawPool, DrawTrees:
		return 3, true
	}
	return 0, false
}

// Tool returns the tool in hand.
func (b *BeatDesk) Tool() Tool { return b.tool }

// Take takes a tool in hand; corners that were not closed go.
func (b *BeatDesk) Take(t Tool) {
	b.d.act(func() {
		if b.top == nil {
			return
		}
		b.tell()
		b.tool, b.pending, b.penOn, b.refused, b.measure = t, nil, false, nil, 0
		b.look()
	})
}

// Prompt says what to do next with the tool in hand.
func (b *BeatDesk) Prompt() string {
	d, ok := b.Drawn()
	switch {
	case !ok:
		return words.NoBeatOnTable()
	case d.Plane.Origin().IsZero():
		return words.PlaceFirst()
	}
	pool, on := d.Beat.Pool(b.sel)
	name := ""
	if on {
		name = words.PoolName(pool.Name)
	}
	switch b.tool {
	case PlaceTracing:
		return words.TracingPrompt(b.tracingStep())
	case Measure:
		return words.MeasurePrompt(len(b.pending), b.measured())
	}
	return words.ToolPrompt(string(b.tool), len(b.pending), b.side(), name)
}

// Pending returns the corners drawn so far, and the pen if it stands somewhere.
func (b *BeatDesk) Pending() (corners geo.Path, pen geo.Point, on bool) {
	return b.pending, b.pen, b.penOn
}

// side is the bank that the next bank line is: the one that is not drawn yet.
func (b *BeatDesk) side() geo.Bank {
	for _, f := range b.now().Beat.Banks() {
		if f.Bank == geo.TrueLeft {
			return geo.TrueRight
		}
	}
	return geo.TrueLeft
}

// measured is the length along the corners, to the pen.
func (b *BeatDesk) measured() units.Metres {
	p := b.pending
	if b.penOn && len(p) > 0 {
		p = append(p[:len(p):len(p)], b.pen)
	}
	return p.Length()
}

// Catch draws a point to a corner within reach, else to the grid.
func (b *BeatDesk) Catch(p geo.Point, within units.Metres) geo.Point {
	q, _ := b.now().Snap(p, b.grid, within, draft.Vertex{})
	if n := len(b.pending); n > 2 && b.pending[0].Distance(p) <= within {
		return b.pending[0]
	}
	return q
}

// Point moves the pen of a tool that draws to where the pointer is.
func (b *BeatDesk) Point(p geo.Point, within units.Metres) {
	if b.top == nil || b.tool == Choose {
		return
	}
	q := b.Catch(p, within)
	if b.tool == PlaceTracing {
		q = p
	}
	b.d.act(func() {
		if b.penOn && q == b.pen {
			return
		}
		b.pen, b.penOn = q, true
		b.d.tell(RoomView)
	})
}

// Click does what the tool in hand does at a place. within is how near a corner must be to
// catch the click.
func (b *BeatDesk) Click(p geo.Point, within units.Metres) error {
	if b.top == nil {
		return nil
	}
	if b.tool == PlaceTracing {
		return b.clickTracing(p)
	}
	q := b.Catch(p, within)
	if least, draws := b.tool.draws(); draws {
		if n := len(b.pending); n > 0 && b.pending[n-1].Distance(q) < within/4 {
			if n >= least { // the second of a double click, however long it took
				return b.Close()
			}
			return nil
		}
		if n := len(b.pending); n >= least && n > 2 && q == b.pending[0] && (b.tool == DrawPool || b.tool == DrawTrees) {
			return b.Close()
		}
		b.d.act(func() {
			b.tell()
			b.pending, b.pen, b.penOn, b.refused = append(b.pending, q), q, true, nil
			b.measure = b.pending.Length()
		})
		return nil
	}
	switch b.tool {
	case MarkEntry, MarkHazard, MarkLie, MarkThing:
		id := geo.NewID()
		return b.chosen(id, b.do("", func(d draft.Draft) (draft.Draft, error) { return d.AddPoint(id, geo.Role(b.tool), "", q) }))
	case MarkEnds, SplitPool:
		return b.two(q)
	}
	return nil
}

// two gathers the two places of marking ends or splitting.
func (b *BeatDesk) two(q geo.Point) error {
	if b.sel.IsZero() || !b.isPool(b.sel) {
		if p, ok := b.now().Beat.LayoutOn(b.now().Plane).SnapPoint(q, 0); ok {
			b.Select(p.Pool)
		} else {
			b.refuse(q, words.ChoosePoolFirst())
			return nil
		}
	}
	if len(b.pending) == 0 {
		b.d.act(func() { b.tell(); b.pending, b.pen, b.penOn, b.refused = geo.Path{q}, q, true, nil })
		return nil
	}
	first := b.pending[0]
	b.d.act(func() { b.pending = nil })
	if b.tool == MarkEnds {
		return b.do("", func(d draft.Draft) (draft.Draft, error) { return d.MarkEnds(b.sel, first, q) })
	}
	p, _ := b.now().Beat.Pool(b.sel)
	upper, lower := draft.Part{ID: geo.NewID(), Name: words.UpperHalf(p.Name)}, draft.Part{ID: geo.NewID(), Name: words.LowerHalf(p.Name)}
	return b.chosen(upper.ID, b.do("", func(d draft.Draft) (draft.Draft, error) { return d.Split(b.sel, first, q, upper, lower) }))
}

// Close ends what is being drawn and adds it. What cannot be added stays as drawn, to be gone
// on with.
func (b *BeatDesk) Close() error {
	least, draws := b.tool.draws()
	if b.top == nil || !draws {
		return nil
	}
	line := b.pending
	if len(line) < least {
		if len(line) > 0 {
			b.refuse(line[len(line)-1], words.MoreCorners(least-len(line)))
		}
		return nil
	}
	id, other := geo.NewID(), geo.NewID()
	var err error
	switch b.tool {
	case Measure:
		b.d.act(func() { b.tell(); b.pending, b.penOn = nil, false })
		return nil
	case DrawPool:
		name := words.PoolNumbered(len(b.now().Beat.Pools) + 1)
		err = b.do("", func(d draft.Draft) (draft.Draft, error) { return d.AddPool(id, name, line) })
	case DrawTrees:
		err = b.do("", func(d draft.Draft) (draft.Draft, error) { return d.AddArea(id, geo.RoleTrees, "", line) })
	case DrawBank:
		side := b.side()
		err = b.do("", func(d draft.Draft) (draft.Draft, error) { return d.AddBank(id, side, line) })
	case DrawRiver:
		if len(b.now().Beat.Banks()) > 0 {
			b.refuse(line[0], words.BanksDrawn())
			return nil
		}
		err = b.do("", func(d draft.Draft) (draft.Draft, error) { return d.Banks(line, b.width, "", id, other) })
	}
	if err == nil {
		b.d.act(func() { b.pending, b.penOn = nil, false })
		if b.tool == DrawRiver || b.tool == DrawBank && b.bothBanks() {
			b.Take(DrawPool) // what comes next
		}
	}
	return b.chosen(id, err)
}

func (b *BeatDesk) bothBanks() bool {
	sides := map[geo.Bank]bool{}
	for _, f := range b.now().Beat.Banks() {
		sides[f.Bank] = true
	}
	return sides[geo.TrueLeft] && sides[geo.TrueRight]
}

// chosen picks out what was just drawn.
func (b *BeatDesk) chosen(id geo.ID, err error) error {
	if err == nil {
		b.Select(id)
	}
	return err
}

// refuse tells at a place why an act was not done.
func (b *BeatDesk) refuse(at geo.Point, why words.Told) {
	b.d.act(func() {
		b.tell()
		b.refused = &draft.Error{Of: b.sel, At: at, What: why.What, Do: why.Do}
	})
}

// LetGo takes a step back towards having nothing in hand: what the pointer holds, then
// corners not closed, then the tool, then what is picked out. It reports whether there was
// something.
func (b *BeatDesk) LetGo() bool {
	had := true
	b.d.act(func() {
		b.tell()
		switch {
		case b.held != nil:
			b.held = nil
			b.look()
		case b.refused != nil:
			b.refused = nil
		case len(b.pending) > 0:
			b.pending, b.penOn = nil, false
		case b.tool != Choose:
			b.tool, b.penOn = Choose, false
		case b.corner:
			b.corner = false
		case !b.sel.IsZero():
			b.sel, b.sky = geo.ID{}, -1
		default:
			had = false
		}
	})
	return had
}
