package scene

import (
	"math"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// SkylineView is what the strip of a pool's skyline shows.
type SkylineView struct {
	Pool    geo.Pool // its skyline sorted by bearing; no ID: none
	At      geo.Place
	Zone    *time.Location
	Evening journal.Date // the night whose sun and moon pass over it
	Point   int          // of the skyline picked out, -1 for none
}

// SkyPointKind marks a hit on a point of the skyline.
const SkyPointKind journal.Kind = "skypoint"

// SkyFrame maps between bearings, altitudes and the strip. The side on which the moon passes lies
// in the middle: south north of the equator, north south of it.
type SkyFrame struct {
	Plot   draw.Rect
	middle float64 // bearing, degrees
	top    float64 // altitude at the upper edge, degrees
}

// lowest is the altitude at the lower edge of the strip, as low as a skyline may be.
const lowest = -5.0

// FrameOfSkyline returns the frame of a strip of that size.
func FrameOfSkyline(v SkylineView, size draw.Size) SkyFrame {
	f := SkyFrame{Plot: draw.R(34, 26, size.W-48, math.Max(10, size.H-26-22)), middle: 180, top: 45}
	if v.At.Lat < 0 {
		f.middle = 0
	}
	for _, p := range v.Pool.Skyline {
		f.top = math.Max(f.top, float64(p.Altitude)+8)
	}
	f.top = math.Min(90, math.Ceil(f.top/5)*5)
	return f
}

// At is where a direction lies on the strip.
func (f SkyFrame) At(p geo.SkyPoint) draw.Point {
	off := math.Mod(float64(p.Bearing)-f.middle+540+360, 360) - 180 // -180 to 180 from the middle
	return draw.Pt(f.Plot.Center().X+off/360*f.Plot.W(), f.y(float64(p.Altitude)))
}

func (f SkyFrame) y(alt float64) float64 {
	return f.Plot.Max.Y - (alt-lowest)/(f.top-lowest)*f.Plot.H()
}

// Sky is the inverse of At; a place beside the strip is drawn to its edge.
func (f SkyFrame) Sky(p draw.Point) geo.SkyPoint {
	x := math.Max(f.Plot.Min.X, math.Min(f.Plot.Max.X-1e-6, p.X))
	b := f.middle + (x-f.Plot.Center().X)/f.Plot.W()*360
	a := lowest + (f.Plot.Max.Y-p.Y)/f.Plot.H()*(f.top-lowest)
	return geo.SkyPoint{Bearing: units.Degrees(b).Bearing(), Altitude: units.Degrees(math.Max(lowest, math.Min(90, a)))}
}

// Degrees is how many degrees of bearing and of altitude so many dp are.
func (f SkyFrame) Degrees(dp float64) (bearing, altitude units.Degrees) {
	return units.Degrees(dp / f.Plot.W() * 360), units.Degrees(dp / f.Plot.H() * (f.top - lowest))
}

// skyStrip is the strip being drawn.
type skyStrip struct {
	SkyFrame
	v      SkylineView
	look   Look
	list   *draw.List
	hits   []Hit
	labels labels
	night  skyNight
}

// Skyline draws the skyline of a pool as the edge of a hill over all bearings, with the ways of sun
// and moon through one night above it and behind it: so one sees when the moon comes over.
func Skyline(v SkylineView, size draw.Size, look Look) Scene {
	s := &skyStrip{SkyFrame: FrameOfSkyline(v, size), v: v, look: look, list: draw.NewList(size)}
	s.labels.room = draw.R(4, 2, size.W-8, size.H-4)
	s.list.Group(words.SkylineTitle(v.Pool.Name))
	s.list.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(look.Panel))
	if v.Pool.ID.IsZero() || s.Plot.W() < 60 {
		t := draw.Text{S: words.NoSkylineYet(), At: draw.Bounds(size).Center(), Anchor: draw.Middle, Font: draw.Font{Size: 13}, Color: look.Soft}
		t.S = draw.Fit(t.Font, t.S, size.W-20)
		s.list.Text(t)
		s.list.EndGroup()
		return Scene{List: s.list}
	}
	s.night = nightOver(v)
	s.rules()
	s.list.PushClip(draw.Rectangle(s.Plot))
	s.hill()
	s.sun()
	s.moon()
	s.list.PopClip()
	s.points()
	s.labels.room = s.Plot
	s.moments()
	s.caption()
	s.list.EndGroup()
	return Scene{List: s.list, Hits: s.hits}
}

// rules are the altitudes in tens of degrees and the eight winds.
func (s *skyStrip) rules() {
	step := 10.0
	if s.top > 60 {
		step = 20
	}
	for a := 0.0; a <= s.top; a += step {
		y := s.y(a)
		c := s.look.Rule
		if a == 0 {
			c = s.look.Edge
		}
		s.list.Stroke(draw.Line(draw.Pt(s.Plot.Min.X, y), draw.Pt(s.Plot.Max.X, y)), draw.Stroke{Width: 1}, c)
		t := draw.Text{S: words.DegreesShort(a), At: draw.Pt(s.Plot.Min.X-5, y), Font: textFont, Color: s.look.Soft, Anchor: draw.End, Align: draw.Centre}
		if s.labels.free(labelBox(t)) {
			s.labels.block(labelBox(t))
			s.list.Text(t)
		}
	}
	for i := range 9 {
		b := s.middle - 180 + float64(i)*45
		x := s.Plot.Min.X + float64(i)/8*s.Plot.W()
		s.list.Stroke(draw.Line(draw.Pt(x, s.Plot.Min.Y), draw.Pt(x, s.Plot.Max.Y)), draw.Stroke{Width: 1}, draw.Fade(s.look.Rule, 0.6))
		t := draw.Text{S: words.Wind(b), At: draw.Pt(x, s.Plot.Max.Y+15), Font: textFont, Color: s.look.Soft, Anchor: draw.Middle}
		s.labels.block(labelBox(t))
		s.list.Text(t)
	}
}

// hill is the ground below the skyline.
func (s *skyStrip) hill() {
	edge := s.edge()
	ground := draw.Polyline(edge)
	ground.Line(s.Plot.Max.X, s.Plot.Max.Y)
	ground.Line(s.Plot.Min.X, s.Plot.Max.Y)
	ground.Close()
	s.list.Fill(ground, draw.NonZero, draw.Solid(s.land()))
	s.list.Stroke(draw.Polyline(edge), draw.Stroke{Width: 2, Join: draw.RoundJoin}, s.look.Soft)
}

// land is the colour of the hill: dark, but not the night's.
func (s *skyStrip) land() draw.Color { return draw.Mix(s.look.Panel, s.look.Leaf, 0.28) }

// edge is the skyline from one side of the strip to the other.
func (s *skyStrip) edge() []draw.Point {
	line := s.v.Pool.Skyline.Sorted()
	west := units.Degrees(s.middle - 180).Bearing()
	end := line.Altitude(west)
	out := []draw.Point{draw.Pt(s.Plot.Min.X, s.y(float64(end)))}
	for i := range line { // from the left edge on, round through north
		p := line[(i+s.first(line, west))%len(line)]
		out = append(out, s.SkyFrame.At(p))
	}
	return append(out, draw.Pt(s.Plot.Max.X, s.y(float64(end))))
}

// first is the point nearest to the right of a bearing.
func (s *skyStrip) first(line geo.Skyline, west units.Degrees) int {
	best, near := 0, math.Inf(1)
	for i, p := range line {
		if d := float64((p.Bearing - west).Bearing()); d < near {
			best, near = i, d
		}
	}
	return best
}

// points are taken hold of.
func (s *skyStrip) points() {
	for i, p := range s.v.Pool.Skyline.Sorted() {
		q := s.SkyFrame.At(p)
		r, fill := 4.5, s.look.Panel
		if i == s.v.Point {
			r, fill = 6, s.look.Accent
		}
		s.list.Fill(draw.Circle(q, r), draw.NonZero, draw.Solid(fill))
		s.list.Stroke(draw.Circle(q, r), draw.Stroke{Width: 1.8}, s.look.Accent)
		s.labels.block(draw.R(q.X-r, q.Y-r, 2*r, 2*r))
		s.hits = append(s.hits, Hit{Ref: journal.Ref{Kind: SkyPointKind, ID: s.v.Pool.ID}, Box: draw.R(q.X-8, q.Y-8, 16, 16), Tip: words.SkyPoint(p)})
	}
}
