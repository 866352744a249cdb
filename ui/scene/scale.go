package scene

import (
	"math"
	"time"

	"gloamline/ui/draw"
)

// timeAxis maps instants to x.
type timeAxis struct {
	from, to time.Time
	x0, x1   float64
}

func (a timeAxis) x(t time.Time) float64 {
	span := a.to.Sub(a.from)
	if span <= 0 {
		return a.x0
	}
	return a.x0 + (a.x1-a.x0)*float64(t.Sub(a.from))/float64(span)
}

// at is the inverse of x.
func (a timeAxis) at(x float64) time.Time {
	if a.x1 <= a.x0 {
		return a.from
	}
	return a.from.Add(time.Duration((x - a.x0) / (a.x1 - a.x0) * float64(a.to.Sub(a.from))))
}

// ticks returns even clock times in the zone, at least gap dp apart.
func (a timeAxis) ticks(zone *time.Location, gap float64) []time.Time {
	perHour := (a.x1 - a.x0) / math.Max(a.to.Sub(a.from).Hours(), 1e-9)
	step := 12 * time.Hour
	for _, s := range []time.Duration{time.Minute, 2 * time.Minute, 5 * time.Minute, 10 * time.Minute, 15 * time.Minute, 30 * time.Minute, time.Hour, 2 * time.Hour, 3 * time.Hour, 6 * time.Hour} {
		if perHour*s.Hours() >= gap {
			step = s
			break
		}
	}
	// Steps of the local clock: start from the local midnight before.
	l := a.from.In(zone)
	day := time.Date(l.Year(), l.Month(), l.Day(), 0, 0, 0, 0, zone)
	var out []time.Time
	for t := day; !t.After(a.to); t = t.Add(step) {
		if !t.Before(a.from) {
			out = append(out, t)
		}
	}
	return out
}

// luxAxis maps light to y. From 10 down to 0.0005 lx it is logarithmic over two
// thirds of the height, where the fishing is; brighter light is squeezed into
// the third above a break mark.
type luxAxis struct{ top, bottom float64 }

const (
	luxTop    = 1e5
	luxBreak  = 10.0
	luxBottom = 0.0005
)

func (a luxAxis) breakY() float64 { return a.top + (a.bottom-a.top)/3 }

func (a luxAxis) y(lux float64) float64 {
	b := a.breakY()
	switch {
	case !(lux > luxBottom):
		return a.bottom
	case lux >= luxTop:
		return a.top
	case lux <= luxBreak:
		return b + (a.bottom-b)*math.Log10(luxBreak/lux)/math.Log10(luxBreak/luxBottom)
	}
	return b - (b-a.top)*math.Log10(lux/luxBreak)/math.Log10(luxTop/luxBreak)
}

// decades lists the ruled values, brightest first.
var decades = []struct {
	lux   float64
	label string
}{{1e4, "10,000"}, {100, "100"}, {10, "10 lx"}, {1, "1"}, {0.1, "0.1"}, {0.01, "0.01"}, {0.001, "0.001"}}

// curvePath samples f about every dp of x from t0 to t1.
func curvePath(a timeAxis, t0, t1 time.Time, every float64, y func(time.Time) float64) []draw.Point {
	x0, x1 := a.x(t0), a.x(t1)
	n := int(math.Ceil(math.Abs(x1-x0)/every)) + 1
	n = max(2, min(n, 5000))
	pts := make([]draw.Point, 0, n)
	for i := range n {
		t := t0.Add(time.Duration(float64(t1.Sub(t0)) * float64(i) / float64(n-1)))
		pts = append(pts, draw.Pt(a.x(t), y(t)))
	}
	return pts
}
