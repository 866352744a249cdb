package scene

import (
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Legend explains the marks, in as many rows as the width asks for.
func Legend(width float64, look Look) *draw.List {
	type item struct {
		w    float64
		draw func(s draw.Surface, c draw.Point)
		text string
	}
	contact := func(t journal.Touch, fate journal.Fate) func(draw.Surface, draw.Point) {
		return func(s draw.Surface, c draw.Point) {
			k := journal.Contact{Touch: t}
			if fate != "" {
				k.Fate = journal.Of(fate)
			}
			drawContact(s, look, k, c, 1)
		}
	}
	fly := func(sil journal.Silhouette, tone journal.Tone, hot bool) func(draw.Surface, draw.Point) {
		return func(s draw.Surface, c draw.Point) {
			d := journal.Dress{Length: journal.Of(units.Length{M: 0.0254, Unit: units.Inch}), Silhouette: journal.Of(sil), Tone: journal.Of(tone)}
			if hot {
				d.HotSpot = journal.Of("orange")
			}
			drawFly(s, look, true, d, draw.Pt(c.X, c.Y+7), 13, 1)
		}
	}
	items := []item{
		{16, contact(journal.Landed, ""), words.TouchName(journal.Landed)},
		{16, contact(journal.Landed, journal.Kept), words.LegendKept()},
		{16, contact(journal.Lost, ""), words.TouchName(journal.Lost)},
		{12, contact(journal.Pull, ""), words.TouchName(journal.Pull)},
		{12, contact(journal.Pluck, ""), words.TouchName(journal.Pluck)},
		{12, contact(journal.Boil, ""), words.TouchName(journal.Boil)},
		{12, contact(journal.Follow, ""), words.TouchName(journal.Follow)},
		{16, fly(journal.Slim, journal.DarkTone, true), words.LegendFlySlim()},
		{16, fly(journal.Full, journal.LightTone, false), words.LegendFlyFull()},
		{26, func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Line(draw.Pt(c.X-12, c.Y), draw.Pt(c.X+12, c.Y)), draw.Stroke{Width: 1.4}, look.Soft)
		}, words.LegendOpenSky()},
		{26, func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Line(draw.Pt(c.X-12, c.Y), draw.Pt(c.X+12, c.Y)), rodStroke(0), look.Ink)
		}, words.LegendTrace()},
		{26, func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Line(draw.Pt(c.X-10, c.Y), draw.Pt(c.X+10, c.Y)), draw.Stroke{Width: 8, Cap: draw.RoundCap}, draw.Fade(look.Fish, 0.28))
		}, words.LegendUncertain()},
		{12, func(s draw.Surface, c draw.Point) { drawEntry(s, look, c) }, words.LegendEntry()},
		{14, func(s draw.Surface, c draw.Point) { drawHazard(s, look, c) }, words.LegendHazard()},
	}
	const rowH, gap = 24.0, 16.0
	x, y := 0.0, rowH/2
	type spot struct {
		it   item
		x, y float64
	}
	var spots []spot
	for _, it := range items {
		w := it.w + 6 + draw.Measure(textFont, it.text).Width
		if x > 0 && x+w > width {
			x, y = 0, y+rowH
		}
		spots = append(spots, spot{it, x, y})
		x += w + gap
	}
	l := draw.NewList(draw.Size{W: width, H: y + rowH/2})
	l.Group(words.LegendTitle())
	for _, s := range spots {
		s.it.draw(l, draw.Pt(s.x+s.it.w/2, s.y))
		l.Text(draw.Text{S: s.it.text, At: draw.Pt(s.x+s.it.w+6, s.y), Align: draw.Centre, Font: textFont, Color: look.Soft})
	}
	l.EndGroup()
	return l
}
