package scene

import (
	"math"
	"strings"

	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// rim writes the caption, the moon's bearing, north, the scale and the banks
// around the sketch.
func (g *sketch) rim() {
	if !g.v.Paper {
		g.caption()
	}
	g.foot()
}

// caption says what the sketch shows at the cursor, and where the moon stands: in two
// lines where one has no room, and whole in the tip.
func (g *sketch) caption() {
	right := g.list.Size().W - 16
	if !g.v.Cursor.IsZero() {
		right = g.moon(right)
	}
	font := draw.Font{Size: 12.5}
	room := right - 32
	if room < 40 {
		return
	}
	lines := draw.Wrap(font, words.SketchCaption(g.n, g.v.Cursor, g.v.Prefs), room)
	if len(lines) > 2 {
		lines = []string{lines[0], draw.Fit(font, strings.Join(lines[1:], " "), room)}
	}
	for i, line := range lines {
		t := draw.Text{S: line, At: draw.Pt(16, 20+float64(i)*16), Font: font, Color: g.look.Soft}
		g.labels.block(labelBox(t))
		if g.v.Zoom != 1 { // the map begins below the words
			g.view.Min.Y = math.Max(g.view.Min.Y, t.At.Y+6)
		}
		g.list.Text(t)
	}
	g.hits = append(g.hits, Hit{Box: draw.R(12, 6, room, 14+16*float64(len(lines))), Tip: words.SketchCaptionWhole(g.n, g.v.Cursor, g.v.Prefs)})
}

// foot has the scale, north, and how the sketch lies.
func (g *sketch) foot() {
	size := g.list.Size()
	y := size.H - 14
	metres := niceLength(110 / g.scale)
	w := metres * g.scale
	g.list.Stroke(draw.Polyline([]draw.Point{{X: 16, Y: y - 8}, {X: 16, Y: y - 4}, {X: 16 + w, Y: y - 4}, {X: 16 + w, Y: y - 8}}), draw.Stroke{Width: 1.5}, g.look.Soft)
	g.list.Text(draw.Text{S: words.Metres(units.Metres(metres)), At: draw.Pt(16+w+8, y), Font: textFont, Color: g.look.Soft})
	lx := 16 + w + 8 + draw.Measure(textFont, words.Metres(units.Metres(metres))).Width
	g.north(draw.Pt(lx+24, y-5))
	t := draw.Text{S: words.BanksCaption(), At: draw.Pt(size.W-16, y), Font: textFont, Color: g.look.Soft, Anchor: draw.End}
	if draw.Measure(t.Font, t.S).Width < size.W-lx-80 {
		g.list.Text(t)
	}
}

// north is a small needle with its letter.
func (g *sketch) north(c draw.Point) {
	d := g.direction(0)
	s := draw.Pt(-d.Y, d.X)
	g.list.Fill(draw.Polygon([]draw.Point{c.Add(d.Mul(9)), c.Add(s.Mul(3.2)).Sub(d.Mul(5)), c.Sub(d.Mul(2)), c.Sub(s.Mul(3.2)).Sub(d.Mul(5))}), draw.NonZero, draw.Solid(g.look.Soft))
	g.list.Text(draw.Text{S: words.NorthLetter(), At: draw.Pt(c.X+14, c.Y+5), Font: textFont, Color: g.look.Soft})
}

// moon writes where the moon stands and puts its disc on the rim at its
// bearing; it returns how far right the caption may reach.
func (g *sketch) moon(right float64) float64 {
	size := g.list.Size()
	t := draw.Text{S: words.MoonWhere(g.n, g.v.Cursor), At: draw.Pt(right, 20), Font: textFont, Color: g.look.Moon, Anchor: draw.End}
	g.list.Text(t)
	w := draw.Measure(t.Font, t.S).Width
	disc := draw.Pt(right-w-16, 16)
	shows := 1.0
	if !g.n.Sky.MoonUpAt(g.v.Cursor) { // a bright disc beside the words that it is down would be read first
		shows = 0.3
	}
	drawMoon(g.list, g.look, disc, 7.5, g.n.Sky.MoonFraction, g.n.Sky.MoonWaxing == (g.n.Beat.Place().Lat >= 0), shows)
	g.labels.block(draw.R(disc.X-10, 6, w+28, 22))
	g.hits = append(g.hits, Hit{Box: draw.R(disc.X-10, 4, w+28, 22), Tip: words.MoonPhase(g.n.Sky)})
	if g.n.Sky.MoonUpAt(g.v.Cursor) {
		d := g.direction(g.n.MoonAt(g.v.Cursor).Az)
		p := rimPoint(draw.R(10, sketchHead+4, size.W-20, math.Max(1, size.H-sketchHead-sketchFoot-8)), d)
		g.list.Fill(draw.Circle(p, 4.5), draw.NonZero, draw.Solid(g.look.Moon))
		g.list.Stroke(draw.Line(p, p.Sub(d.Mul(16))), draw.Stroke{Width: 1.2, Dash: []float64{2, 2}}, draw.Fade(g.look.Moon, 0.8))
		g.labels.block(draw.R(p.X-7, p.Y-7, 14, 14).Union(draw.R(p.X-d.X*16-2, p.Y-d.Y*16-2, 4, 4)))
		g.hits = append(g.hits, Hit{Box: draw.R(p.X-8, p.Y-8, 16, 16), Tip: words.MoonWhere(g.n, g.v.Cursor)})
	}
	return right - w - 30
}

// rimPoint is where the ray from the middle of r in a direction leaves it.
func rimPoint(r draw.Rect, d draw.Point) draw.Point {
	c := r.Center()
	t := math.Inf(1)
	if d.X != 0 {
		t = math.Min(t, r.W()/2/math.Abs(d.X))
	}
	if d.Y != 0 {
		t = math.Min(t, r.H()/2/math.Abs(d.Y))
	}
	if math.IsInf(t, 1) {
		return c
	}
	return c.Add(d.Mul(t))
}

// niceLength is the round length in metres at most m.
func niceLength(m float64) float64 {
	if !(m > 0) || math.IsInf(m, 0) {
		return 1
	}
	p := math.Pow(10, math.Floor(math.Log10(m)))
	for _, k := range []float64{5, 2, 1} {
		if k*p <= m {
			return k * p
		}
	}
	return p
}
