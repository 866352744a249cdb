package sketch

import (
	"bytes"
	"encoding/json"
	"math"

	"github.com/paulmach/orb"

	"gloamline/geo"
)

// position is longitude, latitude and whatever follows.
type position []float64

// drawing is a geometry taken apart, heights still on.
type drawing struct {
	points []position
	lines  [][]position
	areas  [][][]position
}

// maxDepth bounds collections inside collections.
const maxDepth = 16

// geometry reads one geometry into d and returns its further members.
func (r *reader) geometry(raw json.RawMessage, d *drawing, depth int) (map[string]json.RawMessage, *Error) {
	o := members(raw)
	if o == nil || depth > maxDepth {
		return nil, r.bad("a geometry that is no object, or too deep")
	}
	kind, _ := text(o.take("type"))
	coordinates := o["coordinates"]
	if kind == "GeometryCollection" {
		coordinates = o["geometries"]
		delete(o, "geometries")
	} else {
		delete(o, "coordinates")
	}
	if err := r.grid(o.take("crs")); err != nil {
		return nil, err
	}
	delete(o, "bbox")
	r.forbid(o, "geometry", "properties", "features", "coordinates", "geometries")
	if kind == "GeometryCollection" {
		return o.rest(), r.collection(coordinates, d, depth)
	}
	if isNull(coordinates) || len(coordinates) == 0 {
		coordinates = json.RawMessage("[]")
	}
	return o.rest(), r.coordinates(kind, coordinates, d)
}

func (r *reader) collection(raw json.RawMessage, d *drawing, depth int) *Error {
	var all []json.RawMessage
	if len(raw) > 0 && json.Unmarshal(raw, &all) != nil {
		return r.bad("a GeometryCollection without its list of geometries")
	}
	for _, g := range all {
		if isNull(g) {
			continue
		}
		lost, err := r.geometry(g, d, depth+1)
		if err != nil {
			return err
		}
		for k := range lost {
			r.warn(MemberLeftOut, k)
		}
	}
	return nil
}

func (r *reader) coordinates(kind string, raw json.RawMessage, d *drawing) *Error {
	var err *Error
	switch kind {
	case "Point":
		var p position
		if err = r.decode(raw, &p); err == nil && len(p) > 0 {
			d.points = append(d.points, p)
		}
	case "MultiPoint":
		var p []position
		err = r.decode(raw, &p)
		d.points = append(d.points, p...)
	case "LineString":
		var l []position
		if err = r.decode(raw, &l); len(l) > 0 {
			d.lines = append(d.lines, l)
		}
	case "MultiLineString":
		var l [][]position
		err = r.decode(raw, &l)
		d.lines = append(d.lines, l...)
	case "Polygon":
		var a [][]position
		if err = r.decode(raw, &a); len(a) > 0 {
			d.areas = append(d.areas, a)
		}
	case "MultiPolygon":
		var a [][][]position
		err = r.decode(raw, &a)
		d.areas = append(d.areas, a...)
	default:
		return r.bad("a geometry of the type " + quote(kind))
	}
	return err
}

func (r *reader) decode(raw json.RawMessage, v any) *Error {
	// A null would be read as nought without a word.
	if bytes.Contains(raw, []byte("null")) || json.Unmarshal(raw, v) != nil {
		return r.bad("coordinates that are not lists of numbers as its type needs")
	}
	return nil
}

// tidy checks every position, rounds it, closes and turns the rings, and leaves out
// what is too short to be drawn.
func (r *reader) tidy(d *drawing) *Error {
	var lines [][]position
	for _, l := range d.lines {
		if len(l) < 2 {
			r.warn(LineLeftOut, "")
			continue
		}
		lines = append(lines, l)
	}
	d.lines = lines
	for _, list := range append(d.lines, d.points) {
		if err := r.positions(list); err != nil {
			return err
		}
	}
	var areas [][][]position
	for _, a := range d.areas {
		var rings [][]position
		for i, ring := range a {
			if err := r.positions(ring); err != nil {
				return err
			}
			if ring = r.close(ring); ring == nil {
				if i == 0 { // islands of an outline that is none
					break
				}
				continue
			}
			rings = append(rings, turned(ring, i == 0))
		}
		if len(rings) > 0 {
			areas = append(areas, rings)
		}
	}
	d.areas = areas
	return nil
}

func (r *reader) positions(list []position) *Error {
	if r.count += len(list); r.count > MaxPositions {
		return refuse(TooBig, "the file has more than %d positions, which no sketch of a beat needs; simplify its lines", MaxPositions)
	}
	for _, p := range list {
		if len(p) < 2 {
			return r.bad("a position of fewer than two numbers")
		}
		if math.Abs(p[0]) > 180 || math.Abs(p[1]) > 90 {
			return r.otherGrid(p)
		}
		p[0], p[1] = rounded(p[0]), rounded(p[1])
	}
	return nil
}

// close closes a ring; nil when it has fewer than three corners.
func (r *reader) close(ring []position) []position {
	if len(ring) > 0 && !same(ring[0], ring[len(ring)-1]) {
		if len(ring) >= 3 {
			r.warn(RingClosed, "")
		}
		ring = append(ring, ring[0])
	}
	if len(ring) < 4 {
		r.warn(RingLeftOut, "")
		return nil
	}
	return ring
}

func same(p, q position) bool { return p[0] == q[0] && p[1] == q[1] }

// turned returns a ring anticlockwise for an outline, clockwise for an island.
func turned(ring []position, outline bool) []position {
	line := make(orb.Ring, len(ring))
	for i, p := range ring {
		line[i] = orb.Point{p[0], p[1]}
	}
	if ccw := area(line); ccw == 0 || (ccw > 0) == outline {
		return ring
	}
	for i, j := 0, len(ring)-1; i < j; i, j = i+1, j-1 {
		ring[i], ring[j] = ring[j], ring[i]
	}
	return ring
}

// area is twice the area of a ring in square degrees, positive anticlockwise, with
// longitudes taken the short way so that the 180th meridian does not turn it round.
func area(ring orb.Ring) float64 {
	var sum float64
	for i := 2; i < len(ring); i++ {
		ax, ay := math.Remainder(ring[i-1][0]-ring[0][0], 360), ring[i-1][1]-ring[0][1]
		bx, by := math.Remainder(ring[i][0]-ring[0][0], 360), ring[i][1]-ring[0][1]
		sum += ax*by - ay*bx
	}
	return sum
}

// comesRound reports whether it is a single line that ends where it began.
func (d drawing) comesRound() bool {
	if len(d.lines) != 1 || len(d.points)+len(d.areas) > 0 {
		return false
	}
	l := d.lines[0]
	return len(l) >= 4 && same(l[0], l[len(l)-1])
}

// shape parts positions from their heights.
func (d drawing) shape() (geo.Shape, [][]float64) {
	var s geo.Shape
	var all [][]float64
	high := false
	flat := func(list []position) []orb.Point {
		out := make([]orb.Point, len(list))
		for i, p := range list {
			out[i] = orb.Point{p[0], p[1]}
			all, high = append(all, p), high || len(p) > 2
		}
		return out
	}
	if len(d.points) > 0 {
		s.Points = flat(d.points)
	}
	for _, l := range d.lines {
		s.Lines = append(s.Lines, flat(l))
	}
	for _, a := range d.areas {
		var rings orb.Polygon
		for _, ring := range a {
			rings = append(rings, flat(ring))
		}
		s.Areas = append(s.Areas, rings)
	}
	if !high {
		all = nil
	}
	return s, all
}
