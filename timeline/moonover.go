package timeline

import (
	"time"

	"gloamline/journal/units"
	"gloamline/timeline/light"
	"gloamline/timeline/sky"
)

// moonlit finds when the moon stands over skylines. It reads the positions that the
// grid already holds and goes back to the span only at a crossing: what
// light.MoonOver finds without a grid, at a tenth of the cost for each pool.
type moonlit struct {
	grid *sky.Grid
	seen []units.Degrees // altitude of the moon's middle as lifted by refraction
}

func newMoonlit(g *sky.Grid) moonlit {
	m := moonlit{g, make([]units.Degrees, g.Len())}
	for i, alt := range g.MoonAlt {
		m.seen[i] = alt + sky.Refraction(alt)
	}
	return m
}

// over returns when the middle of the moon's disc clears a skyline.
func (m moonlit) over(line light.Skyline) []Interval {
	var out []Interval
	step := m.grid.Step.Seconds()
	clear := func(i int) bool { return m.seen[i] >= line.Altitude(m.grid.MoonAz[i]) }
	was, from := clear(0), m.grid.Time(0)
	for i := 1; i < m.grid.Len(); i++ {
		is := clear(i)
		if is == was {
			continue
		}
		at := m.crossing(line, float64(i-1)*step, float64(i)*step, is)
		if was {
			out = append(out, Interval{From: from, To: at})
		}
		was, from = is, at
	}
	if was {
		out = append(out, Interval{From: from, To: m.grid.Span.End()})
	}
	return out
}

// crossing halves a step until the moment when clear becomes up is known to a
// hundredth of a second.
func (m moonlit) crossing(line light.Skyline, lo, hi float64, up bool) time.Time {
	for hi-lo > 0.01 {
		mid := (lo + hi) / 2
		moon := m.grid.Span.Moon(mid, m.grid.Place)
		if (moon.Alt+sky.Refraction(moon.Alt) >= line.Altitude(moon.Az)) == up {
			hi = mid
		} else {
			lo = mid
		}
	}
	return m.grid.Span.Time(hi)
}
