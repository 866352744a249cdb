package draw

import (
	"math"
	"sort"
)

// Stop is a colour at a place on a gradient, in dp along its axis.
type Stop struct {
	At    float64
	Color Color
}

// Paint is what a shape is filled with: one colour, or a gradient along x or y.
type Paint struct {
	Color    Color  // where there are no stops
	Stops    []Stop // rising At; before the first and after the last the colour holds
	Vertical bool   // At is a y, not an x
}

// Solid fills with one colour.
func Solid(c Color) Paint { return Paint{Color: c} }

// Horizontal is a gradient along x; the stops are put in order.
func Horizontal(stops ...Stop) Paint { return Paint{Stops: ordered(stops)} }

// Vertical is a gradient along y; the stops are put in order.
func Vertical(stops ...Stop) Paint { return Paint{Stops: ordered(stops), Vertical: true} }

// Smooth puts n stops mixed in OKLab between each two, for gradients between
// colours far apart. The gradient itself runs in sRGB.
func Smooth(n int, stops ...Stop) []Stop {
	stops = ordered(stops)
	var out []Stop
	for i, s := range stops {
		if i > 0 {
			last := stops[i-1]
			for k := 1; k <= n; k++ {
				t := float64(k) / float64(n+1)
				out = append(out, Stop{last.At + (s.At-last.At)*t, Mix(last.Color, s.Color, t)})
			}
		}
		out = append(out, s)
	}
	return out
}

// At is the colour of the paint at a point.
func (p Paint) At(pt Point) Color {
	v := pt.X
	if p.Vertical {
		v = pt.Y
	}
	return p.Along(v)
}

// Along is the colour at v dp on the axis of the gradient: straight (not
// premultiplied) sRGB values mixed evenly between two stops, as in SVG.
func (p Paint) Along(v float64) Color {
	n := len(p.Stops)
	if n == 0 {
		return p.Color
	}
	i := sort.Search(n, func(i int) bool { return p.Stops[i].At > v })
	switch {
	case i == 0:
		return p.Stops[0].Color
	case i == n:
		return p.Stops[n-1].Color
	}
	a, b := p.Stops[i-1], p.Stops[i]
	t := (v - a.At) / (b.At - a.At)
	mix := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + (float64(y)-float64(x))*t)) }
	return RGBA(mix(a.Color.R, b.Color.R), mix(a.Color.G, b.Color.G), mix(a.Color.B, b.Color.B), mix(a.Color.A, b.Color.A))
}

// scaled is the paint of a shape that is scaled and then moved.
func (p Paint) scaled(k float64, d Point) Paint {
	if len(p.Stops) == 0 {
		return p
	}
	move := d.X
	if p.Vertical {
		move = d.Y
	}
	stops := make([]Stop, len(p.Stops))
	for i, s := range p.Stops {
		stops[i] = Stop{s.At*k + move, s.Color}
	}
	p.Stops = stops
	return p
}

func (p Paint) ok() bool {
	for i, s := range p.Stops {
		if !sane(s.At) || i > 0 && s.At < p.Stops[i-1].At {
			return false
		}
	}
	return true
}

func (p Paint) visible() bool {
	if len(p.Stops) == 0 {
		return p.Color.A > 0
	}
	for _, s := range p.Stops {
		if s.Color.A > 0 {
			return true
		}
	}
	return false
}

func ordered(stops []Stop) []Stop {
	out := append([]Stop(nil), stops...)
	sort.SliceStable(out, func(i, j int) bool { return out[i].At < out[j].At })
	return out
}
