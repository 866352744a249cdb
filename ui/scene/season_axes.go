package scene

import (
	"slices"

	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// axisTall is the height of the bars of one way of cutting, in dp.
const axisTall = 78.0

// clockOrLight draws the same fish cut by the clock and by the light: bands of about equal
// hours, so that bars may have equal widths, each as high as its rate.
func (c *cards) clockOrLight() {
	k := c.s.ClockOrLight
	if len(k.Clock.Rows) == 0 && len(k.Light.Rows) == 0 {
		return
	}
	c.need(2 * (axisTall + 125))
	c.y += 8
	in := c.inner()
	cut := []struct {
		title string
		rows  []season.AxisRow
		name  func(from, to int) string
	}{{words.ClockAxisTitle(), k.Clock.Rows, words.ClockBand}, {words.LightAxisTitle(), k.Light.Rows, words.DarkBand}}
	wide, top, bottom := in.W(), c.y, c.y
	if in.W() > 760 { // side by side
		wide = (in.W() - 24) / 2
	}
	most := 0.0
	for _, x := range cut {
		for _, r := range x.rows {
			most = max(most, r.Rate)
		}
	}
	bars := k.Verdict != season.NotEnough && most > 0
	for i, x := range cut {
		left := in.Min.X
		if wide < in.W() {
			c.y = top
			left += float64(i) * (wide + 24)
		}
		c.axis(x.title, x.rows, x.name, draw.R(left, c.y, wide, 0), most, bars)
		bottom = max(bottom, c.y)
		c.y += 6
	}
	c.y = bottom
	if bars {
		c.note(words.RelativeKey())
	}
}

func (c *cards) axis(title string, rows []season.AxisRow, name func(from, to int) string, at draw.Rect, most float64, bars bool) {
	c.list.Text(draw.Text{S: draw.Fit(boldFont, title, at.W()), At: draw.Pt(at.Min.X, c.y+13), Font: boldFont, Color: c.look.Ink})
	c.y += 22
	foot := c.y
	if bars {
		foot += axisTall
	}
	w := at.W() / float64(max(len(rows), 1))
	bottom := foot
	for i, r := range rows {
		x := at.Min.X + w*float64(i)
		if bars {
			box := draw.R(x+3, foot-axisTall*r.Rate/most, w-6, axisTall*r.Rate/most)
			c.list.Fill(draw.Rectangle(box), draw.NonZero, draw.Solid(draw.Mix(c.look.Panel, c.look.Ink, 0.45)))
		}
		y := foot + 2
		for _, l := range slices.Concat(draw.Wrap(textFont, name(r.From, r.To), w-6), []string{words.SeasonHours(r.Hours) + " h", words.SeasonOn(r.Nights), words.Expected(r.Fish) + " " + words.SeasonFish()}) {
			y += 15
			c.list.Text(draw.Text{S: l, At: draw.Pt(x+3, y), Font: textFont, Color: c.look.Soft})
		}
		bottom = max(bottom, y+6)
	}
	if bars {
		c.list.Stroke(draw.Line(draw.Pt(at.Min.X, foot), draw.Pt(at.Max.X, foot)), draw.Stroke{Width: 1}, c.look.Edge)
	}
	c.y = bottom
}
