package scene

import (
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// SeasonPages draws one card of a season, opened, to keep: its title, which nights and fish it
// counts, the question with its answer, plots and tables, on as many A4 pages as it takes.
// Card 0 is what it all comes to. Each page says what its figures are made from.
func SeasonPages(v SeasonView, card int, title, made string, look Look) []*draw.List {
	if v.Season == nil {
		return nil
	}
	const m = pageMargin
	w := PageSize.W - 2*m
	var heads []*draw.List
	sheet := func() (*draw.List, float64) {
		l := draw.NewList(PageSize)
		l.Fill(draw.Rectangle(draw.Bounds(PageSize)), draw.NonZero, draw.Solid(look.Back))
		y := paragraph(l, draw.Font{Weight: draw.Bold, Size: 21}, look.Ink, title, draw.Pt(m, m+16), w, 26)
		y = paragraph(l, draw.Font{Size: 12.5}, look.Soft, made, draw.Pt(m, y-3), w, 17)
		paragraph(l, textFont, look.Faint, words.TogetherCaution(), draw.Pt(m, PageSize.H-m-14), w, 15)
		heads = append(heads, l)
		return l, y
	}
	_, top := sheet()
	v.Open, v.Picked = map[int]bool{card: true}, -1
	c := &cards{look: look, v: v, s: v.Season, width: w + 2*seasonPad, tall: PageSize.H - m - 32 - top, y: 0}
	c.begin()
	if q := v.Season.Card(card); q != nil {
		c.question(q)
	} else {
		c.overview()
	}
	c.list.EndGroup()
	for i, body := range append(c.full, c.list) {
		if i > 0 {
			sheet()
		}
		draw.Place(heads[i], body, 1, draw.Pt(m-seasonPad, top))
	}
	return heads
}

// begin starts a list to draw on.
func (c *cards) begin() {
	c.list = draw.NewList(draw.Size{W: c.width, H: 1e5})
	c.list.Group(words.SeasonRoomTitle())
}

// need goes on to another page if less than h is left of this one. On the screen there is
// one, as tall as it takes.
func (c *cards) need(h float64) {
	if c.tall == 0 || c.y+h <= c.tall || c.y == 0 {
		return
	}
	c.list.EndGroup()
	c.full = append(c.full, c.list)
	c.begin()
	c.y = 0
}
