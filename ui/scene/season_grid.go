package scene

import (
	"slices"
	"strings"

	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// grid draws a table whose rows are of two things at once: one down, the other across; in
// each cell fish and hours, shaded by the rate where there is enough. It reports whether
// there was room for it.
func (c *cards) grid(t *season.Table, rows []season.Row) bool {
	var down, across []string
	names := map[string]string{}
	byCode := map[string]season.Row{}
	for _, r := range rows {
		a, b, ok := strings.Cut(r.Code, "/")
		if !ok {
			return false
		}
		byCode[r.Code] = r
		if !slices.Contains(down, a) {
			down = append(down, a)
			names[a] = r.Name
			if r.Name == "" {
				names[a] = words.RowLabel(t, season.Row{Code: a})
			}
		}
		if !slices.Contains(across, b) {
			across = append(across, b)
		}
	}
	order := map[string]int{} // as the table has them, though some may be missing of the first
	for i, r := range t.Rows {
		if _, b, ok := strings.Cut(r.Code, "/"); ok {
			if _, seen := order[b]; !seen {
				order[b] = i
			}
		}
	}
	slices.SortFunc(across, func(a, b string) int { return order[a] - order[b] })
	in := c.inner()
	label := 0.0
	for _, a := range down {
		label = max(label, draw.Measure(textFont, names[a]).Width)
	}
	label = min(label+10, in.W()*0.28)
	wide := min((in.W()-label)/float64(len(across)), 150)
	if wide < 74 {
		return false
	}
	heads := make([][]string, len(across))
	tall := 1
	for i, b := range across {
		heads[i] = draw.Wrap(textFont, words.RowLabel(t, season.Row{Code: b}), wide-8)
		tall = max(tall, len(heads[i]))
	}
	const cellTall = 36.0
	c.need(float64(tall)*15 + 5 + cellTall*float64(min(len(down), 8)))
	for i, lines := range heads {
		for k, l := range lines {
			c.list.Text(draw.Text{S: l, At: draw.Pt(in.Min.X+label+wide*float64(i)+4, c.y+14+15*float64(k+tall-len(lines))), Font: textFont, Color: c.look.Soft})
		}
	}
	c.y += float64(tall)*15 + 5
	most := 0.0
	for _, r := range rows {
		if r.Enough && r.Shrunk != nil {
			most = max(most, *r.Shrunk)
		}
	}
	off := false
	for _, a := range down {
		c.need(cellTall)
		for k, l := range draw.Wrap(textFont, names[a], label-8) {
			if k < 2 {
				c.list.Text(draw.Text{S: l, At: draw.Pt(in.Min.X, c.y+15+15*float64(k)), Font: textFont, Color: c.look.Ink})
			}
		}
		for i, b := range across {
			box := draw.R(in.Min.X+label+wide*float64(i), c.y, wide-3, cellTall-3)
			r, ok := byCode[a+"/"+b]
			off = c.cell(t, r, ok, box, most, offRule(c.s.Rules, t, a+"/"+b)) || off
		}
		c.y += cellTall
	}
	if t.Kind == season.Rates {
		c.note(words.GridKey(off))
	}
	return true
}

// cell is one field of a grid; it reports whether it was ruled.
func (c *cards) cell(t *season.Table, r season.Row, there bool, box draw.Rect, most float64, off bool) bool {
	ground := c.look.Panel
	if there && r.Enough && r.Shrunk != nil && most > 0 {
		ground = draw.Mix(c.look.Panel, c.look.Ink, 0.06+0.26**r.Shrunk/most)
		c.list.Fill(draw.Rectangle(box), draw.NonZero, draw.Solid(ground))
	}
	if off {
		band := draw.R(box.Min.X, box.Max.Y-7, box.W(), 6) // below the words
		drawShade(c.list, c.look, draw.Rectangle(band), band, ground)
	}
	c.list.Stroke(draw.Rectangle(box), draw.Stroke{Width: 1}, c.look.Edge)
	if !there {
		return off
	}
	fish, hours := words.SeasonCell(r)
	ink := draw.Readable(c.look.Ink, ground, 4.6)
	font := textFont
	if r.Enough {
		font = boldFont
	}
	c.list.Text(draw.Text{S: draw.Fit(font, fish, box.W()-8), At: draw.Pt(box.Min.X+4, box.Min.Y+12), Font: font, Color: ink})
	if t.Kind != season.Rates {
		return off // counted, not set against hours
	}
	c.list.Text(draw.Text{S: draw.Fit(textFont, hours, box.W()-8), At: draw.Pt(box.Min.X+4, box.Min.Y+25), Font: textFont, Color: ink})
	return off
}

// offRule reports whether a cell of length and light lies wholly off a house rule that
// stands for its light by grey trees. The table has each length's bands in turn.
func offRule(rules []season.Rule, t *season.Table, code string) bool {
	at := slices.IndexFunc(t.Rows, func(r season.Row) bool { return r.Code == code })
	if t.Name != "length_light" || at < 0 {
		return false
	}
	band := season.Band(at % season.Bands)
	from, to := season.LengthEnds(at / season.Bands)
	for _, r := range rules {
		when := r.Rule.AtGrey
		if when != "before" && when != "after" || (when == "after") != (band >= season.AtGrey) || len(r.Rule.Silhouettes)+len(r.Rule.Tones) > 0 {
			continue
		}
		const edge = 1e-6
		if lo, ok := r.Rule.Min.Get(); ok && to <= float64(lo.M)*1000+edge {
			return true
		}
		if hi, ok := r.Rule.Max.Get(); ok && from >= float64(hi.M)*1000-edge {
			return true
		}
	}
	return false
}
