package scene

import (
	"math"
	"slices"
	"strings"

	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// table draws one table with its denominator: a grid where rows are of two things at
// once, else lines with a plot of their rates.
func (c *cards) table(t *season.Table) {
	rows := told(t)
	if len(rows) == 0 {
		return
	}
	room := 100.0 // a title does not stand alone
	if strings.Contains(rows[0].Code, "/") {
		room = 330
	}
	c.need(room)
	c.y += 8
	c.say(boldFont, c.look.Ink, words.TableTitle(t), c.inner().Min.X)
	if len(rows) > 1 && strings.Contains(rows[0].Code, "/") && c.grid(t, rows) {
		c.note(words.ApartLine(t))
		return
	}
	c.lines(t, rows)
	if t.Per == "fly-hours" {
		c.note(words.PerName(t.Per) + ".")
	}
	c.note(words.ApartLine(t))
}

// told leaves out rows with neither hours nor fish.
func told(t *season.Table) []season.Row {
	var out []season.Row
	for _, r := range t.Rows {
		if r.Hours > 0 || r.Fish > 0 || r.Of > 0 {
			out = append(out, r)
		}
	}
	return out
}

// interval is what a rate may be: the exact interval and that of resampled nights, whichever
// is wider at either end, as its words say.
func interval(r season.Row) (lo, hi float64) {
	lo, hi = r.Rate.Interval.Lo, r.Rate.Interval.Hi
	if r.Nightly != nil {
		lo, hi = math.Min(lo, r.Nightly.Lo), math.Max(hi, r.Nightly.Hi)
	}
	return lo, hi
}

// columns of a table, in dp: right edges of figures, left edges of the rest.
type columns struct {
	label, hours, nights, fish float64
	rate, rateWidth            float64
	plot, plotWidth            float64 // no plot if 0
}

func (c *cards) columns(t *season.Table, rows []season.Row) columns {
	in := c.inner()
	k := columns{label: in.Min.X}
	wide := 0.0
	for _, r := range rows {
		wide = max(wide, draw.Measure(textFont, words.RowLabel(t, r)).Width)
	}
	x := in.Min.X + min(max(wide+6, 70), max(in.W()*0.3, 96))
	if t.Kind != season.Rates {
		k.fish = x + 44
		k.hours = k.fish + 44 // of
		k.rate = k.hours + 14
		k.rateWidth = max(in.Max.X-k.rate, 60)
		return k
	}
	k.hours, k.nights, k.fish = x+62, x+62+46, x+62+46+44
	k.rate = k.fish + 14
	rest := in.Max.X - k.rate
	k.rateWidth = max(min(rest, 166), 60)
	if rest-k.rateWidth > 110 {
		k.plot, k.plotWidth = k.rate+k.rateWidth+12, min(rest-k.rateWidth-16, 420)
	}
	return k
}

func (c *cards) lines(t *season.Table, rows []season.Row) {
	k := c.columns(t, rows)
	most := 0.0
	for _, r := range rows {
		switch {
		case t.Kind != season.Rates || t.Verdict == season.NotEnough:
		case r.Rate != nil:
			_, hi := interval(r)
			most = max(most, hi)
		case r.Most != nil && r.Enough:
			most = max(most, *r.Most)
		}
	}
	c.heads(t, k, most)
	for _, r := range rows {
		label := draw.Wrap(textFont, words.RowLabel(t, r), k.figureFrom(t)-k.label)
		said := c.rateWords(t, r)
		if t.Kind == season.Counts {
			said = ""
		}
		rate := draw.Wrap(textFont, said, k.rateWidth)
		height := float64(max(len(label), len(rate), 1)) * 16
		c.need(height + 2)
		y := c.y + 14
		for i, l := range label {
			c.list.Text(draw.Text{S: l, At: draw.Pt(k.label, y+16*float64(i)), Font: textFont, Color: c.look.Ink})
		}
		figure := func(s string, x float64) {
			c.list.Text(draw.Text{S: s, At: draw.Pt(x, y), Font: textFont, Color: c.look.Ink, Anchor: draw.End})
		}
		figure(words.Expected(r.Fish), k.fish)
		switch t.Kind {
		case season.Rates:
			figure(words.SeasonHours(r.Hours), k.hours)
			figure(words.SeasonCount(r.Nights), k.nights)
		default:
			if r.Of > 0 {
				figure(words.Expected(r.Of), k.hours)
			}
		}
		for i, l := range rate {
			c.list.Text(draw.Text{S: l, At: draw.Pt(k.rate, y+16*float64(i)), Font: textFont, Color: c.look.Soft})
		}
		if most > 0 && k.plotWidth > 0 {
			c.ratePlot(r, draw.R(k.plot, c.y, k.plotWidth, height), most)
		}
		c.y += height + 2
	}
}

// figureFrom is where the figures begin.
func (k columns) figureFrom(t *season.Table) float64 {
	if t.Kind != season.Rates {
		return k.fish - 38
	}
	return k.hours - 56
}

func (c *cards) rateWords(t *season.Table, r season.Row) string {
	if t.Kind == season.Rates {
		return words.SeasonRowRate(t, r)
	}
	return words.SeasonShareOnly(r)
}

// heads are the names of the columns, with the ends of the plot's axis.
func (c *cards) heads(t *season.Table, k columns, most float64) {
	y := c.y + 14
	head := func(s string, x float64, a draw.Anchor) {
		c.list.Text(draw.Text{S: s, At: draw.Pt(x, y), Font: textFont, Color: c.look.Soft, Anchor: a})
	}
	counted := words.SeasonFish()
	if t.Kind == season.Shares && !strings.HasPrefix(t.Per, counted) {
		counted = words.SeasonSo() // of pairs, nights, changes
	}
	head(counted, k.fish, draw.End)
	if t.Kind == season.Rates {
		head(t.Per, k.hours, draw.End)
		head(words.SeasonNights(), k.nights, draw.End)
		head(draw.Fit(textFont, words.SeasonAnHour(), k.rateWidth), k.rate, draw.Start)
	} else if t.Kind == season.Counts && slices.ContainsFunc(t.Rows, func(r season.Row) bool { return r.Of > 0 }) {
		head(words.SeasonOf(), k.hours, draw.End)
	} else if t.Kind == season.Shares {
		head(words.SeasonOf(), k.hours, draw.End)
		head(draw.Fit(textFont, t.Per, k.rateWidth), k.rate, draw.Start)
	}
	if most > 0 && k.plotWidth > 0 {
		head("0", k.plot, draw.Start)
		end := words.SeasonTick(niceEnd(most))
		head(end, k.plot+k.plotWidth, draw.End)
	}
	c.y += 18
}

// niceEnd is the end of an axis: one, two or five, times a power of ten.
func niceEnd(v float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(v)))
	for _, k := range []float64{1, 1.5, 2, 3, 4, 5, 6, 8} {
		if v <= k*p {
			return k * p
		}
	}
	return 10 * p
}

// ratePlot is a rate with its interval on the axis of its table; a blank has only an
// upper end, a row without enough nothing.
func (c *cards) ratePlot(r season.Row, box draw.Rect, most float64) {
	end := niceEnd(most)
	x := func(v float64) float64 { return box.Min.X + box.W()*math.Min(1, v/end) }
	y := box.Min.Y + 9
	c.list.Stroke(draw.Line(draw.Pt(box.Min.X, box.Min.Y), draw.Pt(box.Min.X, box.Max.Y+2)), draw.Stroke{Width: 1}, c.look.Edge)
	c.list.Stroke(draw.Line(draw.Pt(box.Max.X, box.Min.Y), draw.Pt(box.Max.X, box.Max.Y+2)), draw.Stroke{Width: 1}, c.look.Edge)
	switch {
	case r.Rate == nil:
	case r.Fish == 0 && r.Most != nil:
		c.list.Stroke(draw.Line(draw.Pt(x(0), y), draw.Pt(x(*r.Most), y)), draw.Stroke{Width: 1.4, Dash: []float64{2, 3}}, c.look.Soft)
	default:
		lo, hi := interval(r)
		c.list.Stroke(draw.Line(draw.Pt(x(lo), y), draw.Pt(x(hi), y)), draw.Stroke{Width: 2}, c.look.Soft)
		c.list.Fill(draw.Circle(draw.Pt(x(r.Rate.Value), y), 4), draw.NonZero, draw.Solid(c.look.Ink))
	}
}
