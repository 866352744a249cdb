package scene

import (
	"math"
	"slices"

	"gloamline/journal"
	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

func (g *lengthLight) field(b lengthBand, k int) (season.Row, draw.Rect) {
	r := draw.R(g.x(float64(k)-lengthEnd), b.top, (g.x1-g.x0)/season.Bands, b.end-b.top)
	return g.of.Table.Rows[b.at*season.Bands+k], r
}

// shadeOf is the ground of a field by its hours.
func (g *lengthLight) shadeOf(row season.Row, most float64) draw.Color {
	if row.Hours <= 0 || most <= 0 {
		return g.look.Panel
	}
	return draw.Mix(g.look.Panel, g.look.Ink, 0.05+0.23*row.Hours/most)
}

func (g *lengthLight) most() float64 {
	most := 0.0
	for _, r := range g.of.Table.Rows {
		most = max(most, r.Hours)
	}
	return most
}

func (g *lengthLight) ground() {
	most := g.most()
	for _, b := range g.rows {
		for k := range season.Bands {
			row, r := g.field(b, k)
			g.list.Fill(draw.Rectangle(r), draw.NonZero, draw.Solid(g.shadeOf(row, most)))
			g.list.Stroke(draw.Rectangle(r), draw.Stroke{Width: 1}, g.look.Edge)
		}
	}
	x := g.x(0)
	g.list.Stroke(draw.Line(draw.Pt(x, g.rows[len(g.rows)-1].top-3), draw.Pt(x, g.rows[0].end)), thresholdStroke, g.look.Ink)
}

// hatch rules what lies off a house rule and draws the step along its edge.
func (g *lengthLight) hatch() {
	hatch := 0.5
	if g.look.Name == Lamp.Name { // where red on black says little
		hatch = 0.7
	}
	for _, b := range g.rows {
		for _, s := range b.off {
			r := draw.R(g.x(s[0]), b.top, g.x(s[1])-g.x(s[0]), b.end-b.top)
			var lines draw.Path
			for x := math.Floor((r.Min.X-r.H())/8) * 8; x < r.Max.X; x += 8 {
				lines.Move(x+r.H(), r.Min.Y)
				lines.Line(x, r.Max.Y)
			}
			g.list.PushClip(draw.Rectangle(r))
			g.list.Stroke(lines, draw.Stroke{Width: 1.2}, draw.Mix(g.look.Panel, g.look.Ink, hatch))
			g.list.PopClip()
		}
	}
	step := draw.Stroke{Width: 2.4, Cap: draw.RoundCap}
	line := func(a, b draw.Point) { g.list.Stroke(draw.Line(a, b), step, g.look.Ink) }
	off := func(i int, x float64) bool {
		return i >= 0 && i < len(g.rows) && slices.ContainsFunc(g.rows[i].off, func(s [2]float64) bool { return x > s[0] && x < s[1] })
	}
	for i, b := range g.rows { // from short to long
		var ends []float64
		for _, s := range b.off {
			ends = append(ends, s[0], s[1])
		}
		for _, x := range ends { // risers
			if x > -lengthEnd && x < lengthEnd {
				line(draw.Pt(g.x(x), b.top), draw.Pt(g.x(x), b.end))
			}
		}
		if i+1 == len(g.rows) {
			continue
		}
		for _, s := range g.rows[i+1].off {
			ends = append(ends, s[0], s[1])
		}
		ends = append(ends, -lengthEnd, lengthEnd)
		slices.Sort(ends)
		for k := 1; k < len(ends); k++ { // treads, where one side is off and the other not
			if m := (ends[k-1] + ends[k]) / 2; ends[k] > ends[k-1] && off(i, m) != off(i+1, m) {
				line(draw.Pt(g.x(ends[k-1]), b.top), draw.Pt(g.x(ends[k]), b.top))
			}
		}
	}
}

// hours stand at the foot of each field, on their own ground where it is hatched.
func (g *lengthLight) hours() {
	most := g.most()
	for _, b := range g.rows {
		for k := range season.Bands {
			row, r := g.field(b, k)
			if row.Hours < 0.05 {
				continue
			}
			s := words.LengthLightHours(row.Hours)
			m := draw.Measure(textFont, s).Width
			if m > r.W()-4 {
				continue
			}
			ground := g.shadeOf(row, most)
			at := draw.Pt(r.Min.X+5, r.Max.Y-5)
			g.list.Fill(draw.Rectangle(draw.R(at.X-3, at.Y-12, m+6, 15.5)), draw.NonZero, draw.Solid(ground))
			g.list.Text(draw.Text{S: s, At: at, Font: textFont, Color: draw.Readable(g.look.Soft, ground, 4.6)})
		}
	}
}

// fish draws every fish as its fly.
func (g *lengthLight) fish() {
	for _, b := range g.rows {
		for i, f := range b.fish {
			foot := draw.Pt(b.x[i], b.end-hoursTall-8-float64(b.lane[i])*b.laneTall)
			plate, _ := drawFly(g.list, g.look, true, words.DrawnDress(f), foot, g.inch, 1)
			edge := draw.Stroke{Width: 1.3}
			switch f.Touch {
			case journal.Landed:
			case journal.Lost:
				edge.Dash = []float64{2.5, 2}
			default:
				edge.Width = 0
			}
			if edge.Width > 0 {
				g.list.Stroke(draw.RoundRect(plate, 3), edge, g.look.Ink)
			}
			if g.offStep(f) {
				g.list.Fill(draw.Rectangle(draw.R(plate.Min.X, plate.Max.Y+1, plate.W(), 2.4)), draw.NonZero, draw.Solid(g.look.Ink))
			}
			g.tips = append(g.tips, Hit{Ref: FishRef(f), Box: plate.Inset(-1), Tip: words.DrawnFishTip(f, g.s.Rules, g.v.Prefs)})
		}
	}
}

// offStep reports whether a fish came off a rule that is drawn here.
func (g *lengthLight) offStep(f season.DrawnFish) bool {
	return slices.ContainsFunc(g.of.Steps, func(s season.RuleStep) bool { return slices.Contains(f.Outside, s.Rule) })
}

// FishRef is the contact that a fly stands for.
func FishRef(f season.DrawnFish) journal.Ref {
	return journal.Ref{Kind: journal.KindContact, Trip: f.Trip, ID: f.ID}
}

// strokes draws very many fish: one path a tone, since each costs.
func (g *lengthLight) strokes() {
	var lines draw.Path
	for _, b := range g.rows {
		for i, f := range b.fish {
			x := b.x[i]
			y := b.end - hoursTall - 2 - float64(b.lane[i])*b.laneTall
			lines.Move(x, y)
			lines.Line(x, y-max(f.Length/25.4*strokePerInch*g.inch/lengthPerInch, 4))
		}
	}
	g.list.Stroke(lines, draw.Stroke{Width: 1.2}, g.look.Ink)
}
