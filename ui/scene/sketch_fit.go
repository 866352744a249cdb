package scene

import (
	"math"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/ui/draw"
)

// turnings are tried so that the river fills its room: degrees either way. More would
// put the true left bank at the side rather than above.
const turnings = 24

// fit finds the turning, scale and place at which the water fills room.
func (g *sketch) fit(room draw.Rect) {
	pts := g.water()
	most := 0
	if g.lay.FlowKnown {
		most = turnings
	}
	best := 0.0
	var box draw.Rect
	g.sin, g.cos = 0, 1
	for a := 0; a <= 2*most; a++ {
		deg := float64(a+1) / 2 // 0, 1, -1, 2, -2 ...: straight unless turning gains a hundredth
		if deg = math.Floor(deg); a%2 == 0 {
			deg = -deg
		}
		sin, cos := math.Sincos(deg * math.Pi / 180)
		b := turnedBox(pts, sin, cos)
		if k := math.Min(room.W()/b.W(), room.H()/b.H()); !b.Empty() && k > best*1.01 {
			best, box, g.sin, g.cos = k, b, sin, cos
		}
	}
	if !(best > 0) || room.Empty() || math.IsInf(best, 0) {
		box = draw.R(-50, -20, 100, 40)
		best = math.Max(0.05, math.Min(room.W()/100, room.H()/40))
	}
	g.scale = math.Min(best, closestFit) * g.v.Zoom
	c := room.Center().Add(g.v.Pan)
	g.origin = c.Sub(box.Center().Mul(g.scale))
}

// closestFit is the largest scale, in dp a metre, of a beat fitted to its room: a
// beat of one small pool is not blown up to fill the panel.
const closestFit = 12.0

// turnedBox is the box around points of the plane after turning, y downwards.
func turnedBox(pts geo.Path, sin, cos float64) draw.Rect {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range pts {
		x, y := turned(p, sin, cos)
		x0, x1, y0, y1 = math.Min(x0, x), math.Max(x1, x), math.Min(y0, y), math.Max(y1, y)
	}
	if x1-x0 < 1 && x1 >= x0 { // a line straight up, or nothing but a point
		x0, x1 = x0-0.5, x1+0.5
	}
	if y1-y0 < 1 && y1 >= y0 {
		y0, y1 = y0-0.5, y1+0.5
	}
	return draw.Rect{Min: draw.Pt(x0, y0), Max: draw.Pt(x1, y1)}
}

// turned is a point of the plane on the picture, in metres, y downwards.
func turned(p geo.Point, sin, cos float64) (x, y float64) {
	px, py := float64(p.X), -float64(p.Y)
	return px*cos - py*sin, px*sin + py*cos
}

// water is what the room is fitted to: pools and banks; without any, whatever else is
// drawn.
func (g *sketch) water() geo.Path {
	var out geo.Path
	for _, p := range g.lay.Pools {
		out = append(out, p.Area[0]...)
	}
	for _, b := range g.lay.Banks {
		out = append(out, b.Path...)
	}
	if len(out) > 0 {
		return out
	}
	for _, f := range g.n.Beat.Features {
		points, lines, areas := g.lay.Shape(f.Shape)
		out = append(out, points...)
		for _, l := range lines {
			out = append(out, l...)
		}
		for _, a := range areas {
			out = append(out, a[0]...)
		}
	}
	return out
}

func (g *sketch) at(p geo.Point) draw.Point {
	x, y := turned(p, g.sin, g.cos)
	return draw.Pt(g.origin.X+x*g.scale, g.origin.Y+y*g.scale)
}

// plane is the inverse of at.
func (g *sketch) plane(p draw.Point) geo.Point {
	x, y := (p.X-g.origin.X)/g.scale, (p.Y-g.origin.Y)/g.scale
	return geo.Point{X: units.Metres(x*g.cos + y*g.sin), Y: units.Metres(x*g.sin - y*g.cos)}
}

// direction is the unit vector of a true bearing on the picture, y downwards.
func (g *sketch) direction(bearing units.Degrees) draw.Point {
	nx, ny := g.lay.North()
	sin, cos := math.Sincos(bearing.Radians())
	x, y := nx*cos+ny*sin, ny*cos-nx*sin
	return draw.Pt(x*g.cos+y*g.sin, x*g.sin-y*g.cos)
}
