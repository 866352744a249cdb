package scene

import (
	"gloamline/journal"
	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// pools lists the pools with their runs, hours, nights and contacts from follow to landed,
// the rate with its interval and, on a second line, runs, rest and light.
func (c *cards) pools() {
	t := c.s.Table("pools")
	if t == nil || len(c.s.Pools) == 0 {
		return
	}
	in := c.inner()
	c.y += 8
	touches := []journal.Touch{journal.Boil, journal.Pull, journal.Lost, journal.Landed}
	const figure = 46.0
	label := min(max(in.W()*0.26, 90), 210)
	right := in.Min.X + label
	edges := []float64{right + 40, right + 40 + 62, right + 40 + 62 + figure}
	marks := edges[2] + 10
	mark := min(34, (in.Max.X-marks)/float64(len(touches)))
	rate := marks + mark*float64(len(touches)) + 12
	narrow := in.Max.X-rate < 150 // the rate has a line of its own
	plot, plotWidth := 0.0, 0.0
	if in.Max.X-rate > 180+110 {
		plot = rate + 180
		plotWidth = min(in.Max.X-plot-4, 420)
	}
	most := 0.0
	for _, p := range c.s.Pools {
		if p.Rate != nil && t.Verdict != season.NotEnough {
			_, hi := interval(p.Row)
			most = max(most, hi)
		}
	}
	y := c.y + 14
	head := func(s string, x float64, a draw.Anchor) {
		c.list.Text(draw.Text{S: s, At: draw.Pt(x, y), Font: textFont, Color: c.look.Soft, Anchor: a})
	}
	for i, s := range []string{words.SeasonRuns(), t.Per, words.SeasonNights()} {
		head(s, edges[i], draw.End)
	}
	for i, touch := range touches {
		drawContact(c.list, c.look, journal.Contact{Touch: touch}, draw.Pt(marks+mark*(float64(i)+0.6), y-4), 1)
	}
	if !narrow {
		head(words.SeasonAnHour(), rate, draw.Start)
	}
	if most > 0 && plot > 0 {
		head("0", plot, draw.Start)
		head(words.SeasonTick(niceEnd(most)), plot+plotWidth, draw.End)
	}
	c.y += 22
	beat := ""
	for _, p := range c.s.Pools {
		c.need(60)
		if p.Beat != beat {
			beat = p.Beat
			c.say(boldFont, c.look.Soft, beat, in.Min.X)
		}
		y = c.y + 15
		figureAt := func(s string, x float64) {
			c.list.Text(draw.Text{S: s, At: draw.Pt(x, y), Font: textFont, Color: c.look.Ink, Anchor: draw.End})
		}
		c.list.Text(draw.Text{S: draw.Fit(boldFont, p.Name, label-6), At: draw.Pt(in.Min.X, y), Font: boldFont, Color: c.look.Ink})
		for i, s := range []string{words.SeasonCount(p.Runs), words.SeasonHours(p.Hours), words.SeasonCount(p.Nights)} {
			figureAt(s, edges[i])
		}
		for i, n := range []float64{p.Chain.Shows, p.Chain.Touches, p.Chain.Lost, p.Chain.Landed} {
			figureAt(words.Expected(n), marks+mark*(float64(i)+1))
		}
		said := words.SeasonRowRate(t, p.Row)
		if !narrow {
			for i, l := range draw.Wrap(textFont, said, min(in.Max.X-rate, 172)) {
				c.list.Text(draw.Text{S: l, At: draw.Pt(rate, y+16*float64(i)), Font: textFont, Color: c.look.Ink})
				if i > 0 {
					c.y += 16
				}
			}
		}
		if most > 0 && plot > 0 {
			c.ratePlot(p.Row, draw.R(plot, y-13, plotWidth, 16), most)
		}
		c.y += 18
		if narrow {
			c.say(textFont, c.look.Ink, said, in.Min.X+10)
		}
		c.say(textFont, c.look.Soft, words.PoolMore(p), in.Min.X+10)
		c.y += 4
	}
}
