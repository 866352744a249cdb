package timeline

import (
	"fmt"
	"math"
	"time"

	"gloamline/geo"
	"gloamline/timeline/tally"
)

// Axis is that along which nights are laid over each other. On every axis but that of
// light a place is a number of minutes; on that of light it is log10 of lux, and has a
// part besides.
type Axis uint8

const (
	ClockAxis  Axis = iota // by the clock on the wall, from noon of the evening
	SunsetAxis             // from sunset
	GreyAxis               // from trees grey
	MoonAxis               // from the moon coming over the skyline of the pool concerned
	LightAxis              // the light itself, at the pool concerned
)

// Axes lists every axis.
var Axes = []Axis{ClockAxis, SunsetAxis, GreyAxis, MoonAxis, LightAxis}

var axisNames = [...]string{"clock", "sunset", "grey", "moon", "light"}

// String is the name of the axis in files and on a command line; it never changes.
func (a Axis) String() string { return axisNames[min(int(a), len(axisNames)-1)] }

// ParseAxis reads what String wrote.
func ParseAxis(s string) (Axis, error) {
	for _, a := range Axes {
		if a.String() == s {
			return a, nil
		}
	}
	return 0, fmt.Errorf("there is no axis %q; there are clock, sunset, grey, moon and light", s)
}

// Part says on which part of the axis of light something lies. Other axes have one
// part. A night comes by the same light twice, so that lux alone says too little.
type Part uint8

const (
	WholePart   Part = iota
	FallingPart      // before the sun is lowest, and not moonlit
	MoonlitPart      // as the ladder of light says it of the place
	DawnPart         // after the sun is lowest, and not moonlit
)

// Parts lists the parts of an axis in order.
func (a Axis) Parts() []Part {
	if a == LightAxis {
		return []Part{FallingPart, MoonlitPart, DawnPart}
	}
	return []Part{WholePart}
}

// String is the name of the part in files; it never changes.
func (p Part) String() string {
	return [...]string{"whole", "falling", "moonlit", "dawn"}[min(p, DawnPart)]
}

// Spot is a place on an axis.
type Spot struct {
	Part Part
	V    float64 // minutes, or log10 of lux
}

// Reach is a stretch of an axis: where something uncertain may lie, or what lasted.
type Reach struct {
	Part   Part
	Lo, Hi float64
	Share  float64 // of its time, 0 to 1
}

// OffWhy says why something of a night has no place on an axis.
type OffWhy uint8

const (
	OnAxis    OffWhy = iota
	NoSunset         // the sun does not set that night
	NeverGrey        // it never gets so dark that the trees go grey
	NoMoon           // the moon does not come over that pool's skyline that night
	NoPool           // the pool is not known, so its skyline is not
)

// String is the name of the reason in files; it never changes.
func (w OffWhy) String() string {
	return [...]string{"", "no sunset", "never grey", "no moon over the pool", "pool not known"}[min(w, NoPool)]
}

// ruler lays the time at one place on one night along an axis.
type ruler struct {
	axis   Axis
	light  *Curve  // at the place
	pieces []piece // in order of time; together they hold the night
	off    OffWhy
}

// piece is a stretch of time with one part and, on an axis of time, one zero.
type piece struct {
	tally.Stretch
	part Part
	zero time.Time
}

// beyond is how far the first and the last piece reach past the night.
const beyond = 48 * time.Hour

// ruler returns the ruler of a pool, or with a zero pool of the beat under the open
// sky. For the moon each pool has its own zero: a hill keeps it longer from one than
// from another.
func (n *Night) ruler(axis Axis, pool geo.ID) ruler {
	r := ruler{axis: axis, light: n.curve(pool)}
	one := func(zero time.Time) {
		r.pieces = []piece{{tally.Stretch{From: n.Start.Add(-beyond), To: n.End.Add(beyond)}, WholePart, zero}}
	}
	switch axis {
	case ClockAxis:
		r.pieces = n.wallPieces()
	case SunsetAxis:
		if r.off = NoSunset; len(n.Sky.Sunset) > 0 {
			r.off = OnAxis
			one(n.Sky.Sunset[0])
		}
	case GreyAxis:
		if r.off = NeverGrey; !n.Grey.At.IsZero() {
			r.off = OnAxis
			one(n.Grey.At)
		}
	case MoonAxis:
		p, ok := n.PoolNight(pool)
		if r.off = NoPool; ok {
			r.off = NoMoon
			if at, comes := n.moonOver(p); comes {
				r.off = OnAxis
				one(at)
			}
		}
	case LightAxis:
		r.pieces = n.lightPieces(r.light)
	}
	return r
}

// moonOver is when the moon first comes over a pool's skyline after noon, if it does so
// before the sun is up again: a moon that rises into daylight is none for the fishing.
func (n *Night) moonOver(p *PoolNight) (time.Time, bool) {
	dawn := n.End
	for _, t := range n.Sky.Sunrise {
		if t.After(n.Sky.LowestAt) {
			dawn = t
			break
		}
	}
	for _, i := range p.MoonOver {
		if i.From.After(n.Start) && i.From.Before(dawn) {
			return i.From, true
		}
	}
	return time.Time{}, false
}

// wallPieces are the stretches in which the clock on the wall keeps pace with time;
// one but on nights when clocks change. Their zero is where that clock would show noon.
func (n *Night) wallPieces() []piece {
	offset := func(t time.Time) time.Duration {
		_, s := t.In(n.Zone).Zone()
		return time.Duration(s) * time.Second
	}
	noon := offset(n.Start)
	zero := func(t time.Time) time.Time { return n.Start.Add(noon - offset(t)) }
	out := []piece{{tally.Stretch{From: n.Start.Add(-beyond)}, WholePart, n.Start}}
	for t := n.Start.Add(Step); t.Before(n.End); t = t.Add(15 * time.Minute) {
		// Clocks change at whole minutes; a quarter of an hour holds one change.
		if offset(t) == offset(t.Add(15*time.Minute)) {
			continue
		}
		for u := t; ; u = u.Add(Step) {
			if offset(u) != offset(t) {
				out[len(out)-1].To = u.Truncate(Step)
				out = append(out, piece{tally.Stretch{From: u.Truncate(Step)}, WholePart, zero(u)})
				break
			}
		}
	}
	out[len(out)-1].To = n.End.Add(beyond)
	return out
}

// lightPieces are the parts of the light at a place, to the minute: moonlit where the
// ladder says so, else falling until the sun is lowest and dawn after it.
func (n *Night) lightPieces(c *Curve) []piece {
	grey := float64(n.Grey.Threshold.Lux)
	bright, glow := grey*math.Pow(10, moonlitAbove), math.Max(glowLux, grey)
	part := func(i int) Part {
		t := c.Start.Add(time.Duration(i) * c.Step)
		lux := c.Lux[i]
		if lux < bright && c.Moon[i] > lux/2 && n.Open.Lux[min(i, len(n.Open.Lux)-1)] < glow && !n.Sky.SunUpAt(t) {
			return MoonlitPart
		}
		if t.Before(n.Sky.LowestAt) {
			return FallingPart
		}
		return DawnPart
	}
	out := []piece{{Stretch: tally.Stretch{From: n.Start.Add(-beyond)}, part: part(0)}}
	for i := 1; i < len(c.Lux); i++ {
		p := part(i)
		if p == out[len(out)-1].part {
			continue
		}
		at := c.Start.Add(time.Duration(i) * c.Step)
		out[len(out)-1].To = at
		out = append(out, piece{Stretch: tally.Stretch{From: at}, part: p})
	}
	out[len(out)-1].To = n.End.Add(beyond)
	return out
}

// value is the place of an instant within a piece.
func (r *ruler) value(p piece, t time.Time) float64 {
	if r.axis == LightAxis {
		return logLux(r.light.value(r.light.Lux, t))
	}
	return t.Sub(p.zero).Minutes()
}

// at is the place of an instant.
func (r *ruler) at(t time.Time) (Spot, bool) {
	for _, p := range r.pieces {
		if p.Contains(t) {
			return Spot{p.part, r.value(p, t)}, true
		}
	}
	return Spot{}, false
}

// reach is where a stretch of time lies, one reach to a part that it touches: from the
// least to the greatest value in it. A moment alone has a reach without length.
func (r *ruler) reach(from, to time.Time) []Reach {
	if !from.Before(to) {
		s, ok := r.at(from)
		if !ok {
			return nil
		}
		return []Reach{{s.Part, s.V, s.V, 1}}
	}
	var out []Reach
	whole := to.Sub(from)
	for _, p := range r.pieces {
		s := p.Intersect(tally.Stretch{From: from, To: to})
		if s.Empty() {
			continue
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, t := range r.looks(s) {
			v := r.value(p, t)
			lo, hi = math.Min(lo, v), math.Max(hi, v)
		}
		share := float64(s.Length()) / float64(whole)
		at := -1
		for i := range out {
			if out[i].Part == p.part {
				at = i
			}
		}
		if at < 0 {
			out = append(out, Reach{p.part, lo, hi, share})
			continue
		}
		out[at].Lo, out[at].Hi, out[at].Share = math.Min(out[at].Lo, lo), math.Max(out[at].Hi, hi), out[at].Share+share
	}
	return out
}

// looks are the instants of a stretch between which its value runs straight.
func (r *ruler) looks(s tally.Stretch) []time.Time {
	out := []time.Time{s.From}
	if r.axis == LightAxis {
		c := r.light
		i := int(s.From.Sub(c.Start)/c.Step) + 1
		for i = max(i, 0); i < len(c.Lux); i++ {
			t := c.Start.Add(time.Duration(i) * c.Step)
			if !t.Before(s.To) {
				break
			}
			if t.After(s.From) {
				out = append(out, t)
			}
		}
	}
	return append(out, s.To)
}
