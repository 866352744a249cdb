package scene

import (
	"math"

	"gloamline/ui/draw"
)

// Room that a fish takes over the light, in dp: with its number, and without.
const (
	barNumbered = 38.0
	barPlain    = 23.0
)

// barFish stands the fish over the light, each at its minute with its number. Those that
// come close together make room for each other and are joined to their minutes; where
// there are too many for numbers they stand without.
func (g *clientDraw) barFish(room draw.Rect, top float64, x func(minute int) float64) {
	all := g.c.Fish
	if len(all) == 0 {
		return
	}
	from, to := room.Min.X+12, room.Max.X-24
	each := barNumbered
	if each*float64(len(all)-1) > to-from {
		each, to = math.Min(barPlain, (to-from)/math.Max(1, float64(len(all)-1))), room.Max.X-12
	}
	want := make([]float64, len(all))
	for i, f := range all {
		want[i] = x(f.Minute)
	}
	at := abreast(want, each, from, to)
	y := room.Min.Y + 10
	for i, f := range all {
		if math.Abs(at[i]-want[i]) > 2 { // joined to its minute, below its mark
			g.l.Stroke(draw.Polyline([]draw.Point{{X: at[i], Y: y + 10}, {X: want[i], Y: top}}), draw.Stroke{Width: 1}, draw.Fade(g.look.Soft, clientStrength(f, g.minute)))
		}
	}
	for i, f := range all {
		g.mark(f, draw.Pt(at[i], y))
	}
	numbered := each == barNumbered
	for i, f := range all { // over the ring of a neighbour that has just come up
		if numbered {
			g.number(f, draw.Pt(at[i], y), g.look.Panel)
		}
		if f.N == g.v.Fish {
			pickedRing(g.l, g.look, f, draw.Pt(at[i], y), numbered)
		}
	}
}

// abreast moves places, in rising order, as little as it takes (in least squares) for each
// to be at least so far from the one before, and all from from to to. Without a bound this
// is a regression that only rises, of the places less their turn: neighbours out of order
// are pooled at their mean (Barlow et al. 1972, Statistical Inference under Order
// Restrictions, the pool adjacent violators algorithm). Cutting such a regression off at
// bounds gives the one within them.
func abreast(want []float64, each, from, to float64) []float64 {
	type pool struct{ sum, n float64 }
	var pools []pool
	for i, w := range want {
		pools = append(pools, pool{w - each*float64(i), 1})
		for n := len(pools); n > 1 && pools[n-2].sum/pools[n-2].n > pools[n-1].sum/pools[n-1].n; n-- {
			pools[n-2].sum += pools[n-1].sum
			pools[n-2].n += pools[n-1].n
			pools = pools[:n-1]
		}
	}
	most := to - each*float64(len(want)-1)
	out := make([]float64, 0, len(want))
	for _, p := range pools {
		for range int(p.n) {
			out = append(out, math.Max(from, math.Min(most, p.sum/p.n))+each*float64(len(out)))
		}
	}
	return out
}
