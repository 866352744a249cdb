package intaketest

import (
	"math"
	"math/rand/v2"

	"github.com/paulmach/orb"

	"gloamline/geo"
	"gloamline/journal/units"
)

func (r Range) draw(x *rand.Rand) float64 { return r.Lo + (r.Hi-r.Lo)*x.Float64() }

// whole draws a whole number, both ends among them.
func (r Range) whole(x *rand.Rand) int { return int(r.Lo) + x.IntN(int(r.Hi)-int(r.Lo)+1) }

// Beat makes up a beat: a winding river with pools in it.
func Beat(seed uint64, p Params) geo.Beat {
	return beat(rand.New(rand.NewPCG(seed, 0xbea7)), p)
}

func beat(x *rand.Rand, p Params) geo.Beat {
	at := geo.Place{Lat: units.Degrees(54.9 + x.Float64()/5), Lon: units.Degrees(-4.6 + x.Float64()/5)}
	pl := geo.NewPlane(at)
	b := geo.Beat{ID: id(x), Name: "Home Beat", Zone: "Europe/London", River: geo.River{ID: id(x), Name: "Larrick Water"}}
	course, bend := x.Float64()*2*math.Pi, 0.0
	pos := geo.Point{}
	reach := func(length, width float64) (left, right geo.Path) {
		n := max(4, int(length/8))
		for i := range n + 1 {
			w := width / 2 * (0.7 + 0.3*math.Sin(math.Pi*float64(i)/float64(n)))
			sin, cos := math.Sincos(course)
			left = append(left, geo.Point{X: pos.X - metres(w*sin), Y: pos.Y + metres(w*cos)})
			right = append(right, geo.Point{X: pos.X + metres(w*sin), Y: pos.Y - metres(w*cos)})
			if i < n {
				bend = 0.9*bend + 0.02*x.NormFloat64()
				course += bend * length / float64(n) / 8
				pos = geo.Point{X: pos.X + metres(length/float64(n)*cos), Y: pos.Y + metres(length/float64(n)*sin)}
			}
		}
		return left, right
	}
	for i := range p.Pools.whole(x) {
		left, right := reach(p.PoolM.draw(x), p.WidthM.draw(x))
		ring := orb.Ring{}
		for _, q := range append(left, right.Reversed()...) {
			ring = append(ring, pl.Place(q).LonLat())
		}
		ring = append(ring, ring[0])
		b.Pools = append(b.Pools, geo.Pool{ID: id(x), Name: string(rune('A'+i)) + " pool", Order: i + 1, Outline: orb.Polygon{ring}, Bank: geo.TrueLeft})
		reach(p.BetweenM.draw(x), 8)
	}
	return b
}

func id(x *rand.Rand) geo.ID {
	var out geo.ID
	for i := range out {
		out[i] = byte(x.UintN(256))
	}
	return out
}
