package gauge

import (
	"math"
	"time"
)

// Mark is a stretch of a curve to be looked at with doubt. Nothing is taken away.
type Mark struct {
	Kind     MarkKind
	From, To time.Time
	PerHour  float64 // of a step: metres an hour
}

// MarkKind is what is odd.
type MarkKind string

// The kinds, by the limits in common use: a step above 0.05 m within a quarter hour that
// is more than twice each of its neighbours; the same value for more than 24 hours; no
// reading for longer than Settings.Gap.
const (
	Step    MarkKind = "step"
	Flat    MarkKind = "flat"
	Silence MarkKind = "silence"
)

const (
	stepLeast  = 0.05 // metres
	stepTimes  = 2
	stepWithin = 15 * time.Minute
	flatAfter  = 24 * time.Hour
)

// Marks are the odd stretches in order of time.
func (c *Curve) Marks() []Mark {
	var out []Mark
	rise := func(i int) float64 { // from reading i-1 to i; nothing beyond the ends
		if i < 1 || i >= len(c.pts) {
			return 0
		}
		return float64(c.pts[i].Level - c.pts[i-1].Level)
	}
	flat := 0
	for i := 1; i <= len(c.pts); i++ {
		end := i == len(c.pts)
		silent := !end && c.pts[i].At.Sub(c.pts[i-1].At) > c.set.Gap
		if end || silent || c.pts[i].Level != c.pts[flat].Level {
			if a, b := c.pts[flat].At, c.pts[i-1].At; b.Sub(a) > flatAfter {
				out = append(out, Mark{Kind: Flat, From: a, To: b})
			}
			flat = i
		}
		if end {
			break
		}
		a, b := c.pts[i-1].At, c.pts[i].At
		d := rise(i)
		size := math.Abs(d)
		switch {
		case silent:
			out = append(out, Mark{Kind: Silence, From: a, To: b})
		case b.Sub(a) <= stepWithin && size > stepLeast && size > stepTimes*math.Abs(rise(i-1)) && size > stepTimes*math.Abs(rise(i+1)):
			out = append(out, Mark{Kind: Step, From: a, To: b, PerHour: d / b.Sub(a).Hours()})
		}
	}
	return out
}
