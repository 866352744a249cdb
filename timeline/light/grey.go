package light

import (
	"math"
	"time"

	"gloamline/journal/units"
)

// greyHold is how long the light must stay below the threshold for the trees to
// count as grey.
const greyHold = 10 * time.Minute

// setAltitude is where the sun's upper limb sets, degrees.
const setAltitude = -50.0 / 60

// Spell is a stretch of time. AtStart and AtEnd say that it reaches the edge of the
// window, so that its true beginning or end was not seen.
type Spell struct {
	From, To       time.Time
	AtStart, AtEnd bool
}

// Length returns the part of the spell inside the window.
func (s Spell) Length() time.Duration { return s.To.Sub(s.From) }

// Grey is when the colour has gone from the trees: the light stays below a
// threshold while the sun is down.
type Grey struct {
	Threshold units.Lux
	// Reached says that a spell lasted ten minutes or more.
	Reached bool
	// Evening is when the first such spell begins and Morning when the last one
	// ends. Each is the zero time when it lies outside the window: in the polar night the
	// trees may be grey at both edges.
	Evening, Morning time.Time
	// Spells are all stretches below the threshold, short ones too: a rising moon
	// may give the colours back for a while.
	Spells []Spell
	// Least is the smallest light while the sun is down, or of the whole window
	// when it never sets, and when: for "not reached, least 0.4 lx at 00:31".
	Least   units.Lux
	LeastAt time.Time
}

// TreesGrey finds when the light of the trace falls below a threshold.
func TreesGrey(t *Trace, threshold units.Lux) Grey {
	g := Grey{Threshold: threshold}
	limit := math.Log10(max(float64(threshold), leastLux))
	dark := t.below(func(i int) float64 { return math.Log10(max(t.Lux[i], leastLux)) - limit })
	down := t.below(func(i int) float64 { return float64(t.Sky.Grid.SunAlt[i]) - setAltitude })
	g.Spells = t.spells(overlap(dark, down))
	for _, s := range g.Spells {
		if s.Length() < greyHold {
			continue
		}
		if !g.Reached && !s.AtStart {
			g.Evening = s.From
		}
		g.Reached = true
		g.Morning = time.Time{}
		if !s.AtEnd {
			g.Morning = s.To
		}
	}
	g.Least, g.LeastAt = t.least(down)
	return g
}

// stretch is a spell in steps.
type stretch struct{ from, to float64 }

// below returns where the piecewise linear v is below zero.
func (t *Trace) below(v func(step int) float64) []stretch {
	var out []stretch
	from, open := 0.0, false
	before := v(0)
	if before < 0 {
		open = true
	}
	for i := 1; i < t.Len(); i++ {
		here := v(i)
		if (here < 0) != open {
			x := float64(i-1) + before/(before-here)
			if open {
				out = append(out, stretch{from, x})
			}
			from, open = x, !open
		}
		before = here
	}
	if open {
		out = append(out, stretch{from, float64(t.Len() - 1)})
	}
	return out
}

// overlap returns the stretches common to both lists, each in order.
func overlap(a, b []stretch) []stretch {
	var out []stretch
	for i, j := 0, 0; i < len(a) && j < len(b); {
		if from, to := max(a[i].from, b[j].from), min(a[i].to, b[j].to); from < to {
			out = append(out, stretch{from, to})
		}
		if a[i].to < b[j].to {
			i++
		} else {
			j++
		}
	}
	return out
}

func (t *Trace) spells(list []stretch) []Spell {
	step := t.Sky.Grid.Step
	at := func(x float64) time.Time {
		return t.Time(0).Add(time.Duration(math.Round(x * float64(step))))
	}
	var out []Spell
	for _, s := range list {
		out = append(out, Spell{at(s.from), at(s.to), s.from == 0, s.to == float64(t.Len()-1)})
	}
	return out
}

// least returns the smallest light within the stretches, or of all when there are none.
func (t *Trace) least(within []stretch) (units.Lux, time.Time) {
	if len(within) == 0 {
		within = []stretch{{0, float64(t.Len() - 1)}}
	}
	best := -1
	for _, s := range within {
		for i := int(math.Ceil(s.from)); float64(i) <= s.to; i++ {
			if best < 0 || t.Lux[i] < t.Lux[best] {
				best = i
			}
		}
	}
	if best < 0 { // the sun is down for less than a step
		best = int(math.Round(within[0].from))
	}
	return units.Lux(t.Lux[best]), t.Time(best)
}
