package scene

import (
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Legend explains every code on screen, in as many rows as the width asks for: a
// column 160 dp wide is enough, its words wrapped beside their marks. Its height is
// that of the list it returns.
func Legend(width float64, look Look) *draw.List {
	return legend(width, look, legendItems(look), 22)
}

// pageLegend explains what stands on the page of one night, and no more: a page has
// neither cursor nor selection.
func pageLegend(n *timeline.Night, width float64, look Look) *draw.List {
	var items []legendItem
	for _, it := range legendItems(look) {
		if it.on != nil && it.on(n) {
			items = append(items, it)
		}
	}
	return legend(width, look, items, 17.5)
}

// legendItem is a mark with its words. draw paints it centred on a point; on tells
// whether the mark stands on the page of a night, nil if on no page.
type legendItem struct {
	w    float64
	draw func(s draw.Surface, c draw.Point)
	text string
	on   func(n *timeline.Night) bool
}

func legend(width float64, look Look, items []legendItem, rowH float64) *draw.List {
	const gap, column = 14.0, 58.0
	type spot struct {
		it    legendItem
		x, y  float64 // of the mark's left edge, of its middle
		lines []string
	}
	narrow := width < 360 // one under the other, the words in one line of sight
	x, y := 0.0, 0.0
	var spots []spot
	for _, it := range items {
		textX := it.w + 6
		if narrow {
			textX = column + 6
		}
		lines := draw.Wrap(textFont, it.text, max(width-textX, 60))
		w := textX
		for _, l := range lines {
			w = max(w, textX+draw.Measure(textFont, l).Width)
		}
		if x > 0 && (narrow || x+w > width) {
			x, y = 0, y+rowH
		}
		s := spot{it, x, y + rowH/2, lines}
		spots = append(spots, s)
		if len(lines) > 1 { // it has its rows to itself
			y += float64(len(lines)-1) * 15
		}
		x += w + gap
	}
	l := draw.NewList(draw.Size{W: width, H: y + rowH})
	l.Group(words.LegendTitle())
	for _, s := range spots {
		markX, textX := s.x+s.it.w/2, s.x+s.it.w+6
		if narrow {
			markX, textX = column/2, column+6
		}
		s.it.draw(l, draw.Pt(markX, s.y))
		for i, line := range s.lines {
			l.Text(draw.Text{S: line, At: draw.Pt(textX, s.y+15*float64(i)), Align: draw.Centre, Font: textFont, Color: look.Soft})
		}
	}
	l.EndGroup()
	return l
}
