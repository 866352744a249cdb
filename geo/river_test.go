package geo

import (
	"math"

	"github.com/paulmach/orb"

	"gloamline/journal/units"
)

// bend is an invented river for the tests: its middle is (t, 40 sin(t/60)) metres east
// and north of the origin, t from 0 to 600, turned to run towards a bearing; it is 16 m
// wide. Its true left bank is on the left for one who goes with t.
type bend struct {
	plane Plane
}

var larrick = Place{Lat: 54.984, Lon: -4.428}

// newBend returns the river running towards a bearing from the origin.
func newBend(at Place, bearing units.Degrees) bend {
	return bend{NewPlane(at).Turned(bearing)}
}

func (r bend) middle(t float64) (p Point, nx, ny float64) {
	slope := 40.0 / 60 * math.Cos(t/60)
	l := math.Hypot(1, slope)
	return Point{units.Metres(t), units.Metres(40 * math.Sin(t/60))}, -slope / l, 1 / l
}

// at returns the position off metres to the left of the middle.
func (r bend) at(t, off float64) orb.Point {
	m, nx, ny := r.middle(t)
	return r.plane.Place(Point{m.X + units.Metres(off*nx), m.Y + units.Metres(off*ny)}).LonLat()
}

func (r bend) line(from, to, off float64) orb.LineString {
	var out orb.LineString
	n := int(math.Abs(to-from)/4) + 1
	for i := 0; i <= n; i++ {
		out = append(out, r.at(from+(to-from)*float64(i)/float64(n), off))
	}
	return out
}

// pool is an outline between two t, 12 m wide, drawn clockwise or not from a corner.
func (r bend) pool(from, to float64) orb.Polygon {
	ring := orb.Ring(r.line(from, to, -6))
	ring = append(ring, r.line(to, from, 6)...)
	return orb.Polygon{append(ring, ring[0])}
}

// arc is the length of the middle between two t, by Simpson's rule.
func (r bend) arc(from, to float64) float64 {
	const n = 200
	h, sum := (to-from)/n, 0.0
	f := func(t float64) float64 { return math.Hypot(1, 40.0/60*math.Cos(t/60)) }
	for i := 0; i < n; i++ {
		a := from + float64(i)*h
		sum += (f(a) + 4*f(a+h/2) + f(a+h)) * h / 6
	}
	return sum
}

var bendIDs = func() (ids [12]ID) {
	for i := range ids {
		ids[i] = ID{15: byte(i + 1)}
	}
	return ids
}()

// beat has pools at t 20-90, 150-260 and 400-560, listed out of order.
func (r bend) beat() Beat {
	return Beat{
		ID: bendIDs[0], Name: "Home Beat", River: River{Name: "Larrick Water"}, Zone: "Europe/London",
		Pools: []Pool{
			{ID: bendIDs[3], Name: "Kirk Pool", Order: 3, Outline: r.pool(400, 560)},
			{ID: bendIDs[1], Name: "Mill Neck", Order: 1, Outline: r.pool(20, 90)},
			{ID: bendIDs[2], Name: "Alder Pool", Order: 2, Outline: r.pool(150, 260), Canopy: Partly,
				Skyline: Skyline{{0, 5}, {120, 14}, {240, 8}}},
		},
	}
}

// withBanks adds both bank lines, drawn downstream.
func (r bend) withBanks() Beat {
	b := r.beat()
	b.Features = append(b.Features,
		Feature{ID: bendIDs[4], Role: RoleBank, Bank: TrueLeft, Shape: LineShape(r.line(0, 600, 8))},
		Feature{ID: bendIDs[5], Role: RoleBank, Bank: TrueRight, Shape: LineShape(r.line(0, 600, -8))})
	return b
}

func turned(l orb.LineString) orb.LineString {
	out := l.Clone()
	out.Reverse()
	return out
}
