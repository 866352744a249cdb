package draft

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"gloamline/geo"
	"gloamline/journal/units"
)

// reach is how far from its place a beat may be drawn; the plane is flat enough to there.
const reach units.Metres = 20_000

// Draft is a beat being drawn. It is a value: acts return another one.
type Draft struct {
	Beat  geo.Beat
	Plane geo.Plane
	went  map[geo.ID][]geo.ID // what a split or joined pool became, step by step
}

// New begins with a beat that stands, or with an empty one.
func New(b geo.Beat) Draft { return Draft{Beat: b, Plane: geo.NewPlane(b.Place())} }

// Error is an act that cannot be done. Error returns two lines: what happened, what to do.
type Error struct {
	Of   geo.ID // the pool or feature, if one is concerned
	At   geo.Point
	What string
	Do   string
}

func (e *Error) Error() string { return e.What + "\n" + e.Do }

func refuse(of geo.ID, at geo.Point, what, do string, args ...any) error {
	return &Error{of, at, fmt.Sprintf(what, args...), do}
}

// Place puts the beat on the globe. When nothing is drawn yet the plane moves there; what is
// drawn stays where it is.
func (d Draft) Place(at geo.Place) (Draft, error) {
	if at.IsZero() {
		return d, refuse(d.Beat.ID, geo.Point{}, "there is no place to put the beat", "Give its latitude and longitude.")
	}
	if err := at.Check(); err != nil {
		return d, refuse(d.Beat.ID, geo.Point{}, "%v", "Check latitude and longitude; latitude comes first.", err)
	}
	if math.Abs(float64(at.Lat)) > 85 {
		return d, refuse(d.Beat.ID, geo.Point{}, "that is nearer to a pole than can be drawn on a flat plane", "Check latitude and longitude; latitude comes first.")
	}
	if d.drawn() {
		if away := d.Plane.At(at).Distance(geo.Point{}); away > reach {
			return d, refuse(d.Beat.ID, d.Plane.At(at), "that is %.0f km from what is drawn", "Give a place on the beat.", float64(away)/1000)
		}
	} else {
		d.Plane = geo.NewPlane(at)
	}
	d.Beat.At = at
	return d, nil
}

func (d Draft) drawn() bool {
	return !d.Beat.Bound().IsEmpty() && (d.hasPools() || len(d.Beat.Features) > 0)
}

func (d Draft) hasPools() bool {
	return slices.ContainsFunc(d.Beat.Pools, geo.Pool.Drawn)
}

// Zone sets the time zone; whether it is known is told by Findings.
func (d Draft) Zone(name string) Draft { d.Beat.Zone = name; return d }

// Call names the beat and its river.
func (d Draft) Call(beat, river string) Draft {
	d.Beat.Name, d.Beat.River.Name = beat, river
	return d
}

// Successors returns what each pool of the beat that was begun with became, down to pools that
// stand. Pools that came and went within the draft are left out.
func (d Draft) Successors(begun geo.Beat) map[geo.ID][]geo.ID {
	out := map[geo.ID][]geo.ID{}
	for _, p := range begun.Pools {
		if _, gone := d.went[p.ID]; gone {
			out[p.ID] = d.standing(p.ID, nil)
		}
	}
	return out
}

func (d Draft) standing(id geo.ID, into []geo.ID) []geo.ID {
	for _, next := range d.went[id] {
		if _, on := d.went[next]; on {
			into = d.standing(next, into)
		} else if _, stands := d.Beat.Pool(next); stands && !slices.Contains(into, next) {
			into = append(into, next)
		}
	}
	return into
}

func (d Draft) succeed(old geo.ID, next ...geo.ID) Draft {
	d.went = maps.Clone(d.went)
	if d.went == nil {
		d.went = map[geo.ID][]geo.ID{}
	}
	d.went[old] = next
	return d
}

// taken reports whether an ID is used, or was.
func (d Draft) taken(id geo.ID) bool {
	_, went := d.went[id]
	return id.IsZero() || went || id == d.Beat.ID ||
		slices.ContainsFunc(d.Beat.Pools, func(p geo.Pool) bool { return p.ID == id }) ||
		slices.ContainsFunc(d.Beat.Features, func(f geo.Feature) bool { return f.ID == id })
}

// sound refuses points that are no numbers or too far off.
func (d Draft) sound(of geo.ID, points ...geo.Point) error {
	if d.Plane.Origin().IsZero() {
		return refuse(of, geo.Point{}, "the beat has no place yet, so nothing can be drawn to scale", "Give its latitude and longitude first.")
	}
	for _, p := range points {
		if !(math.Abs(float64(p.X)) <= float64(reach) && math.Abs(float64(p.Y)) <= float64(reach)) {
			return refuse(of, geo.Point{}, "that point is more than 20 km from the place of the beat", "Draw nearer, or move the place of the beat first.")
		}
	}
	return nil
}

// History is a draft with the ones before it and those taken back. It is a value too.
type History struct {
	Now          Draft
	past, future []Draft
}

// Do goes on to the next draft; what was taken back before is then gone.
func (h History) Do(next Draft) History {
	return History{Now: next, past: append(slices.Clip(h.past), h.Now)}
}

// Undo returns to the draft before, exactly as it was.
func (h History) Undo() (History, bool) {
	n := len(h.past)
	if n == 0 {
		return h, false
	}
	return History{h.past[n-1], h.past[:n-1], append(slices.Clip(h.future), h.Now)}, true
}

// Redo goes forward again.
func (h History) Redo() (History, bool) {
	n := len(h.future)
	if n == 0 {
		return h, false
	}
	return History{h.future[n-1], append(slices.Clip(h.past), h.Now), h.future[:n-1]}, true
}
