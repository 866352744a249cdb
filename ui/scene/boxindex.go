package scene

import (
	"strconv"

	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// BoxIndex lists the boxes with their numbers of flies, to go to one, in a column.
func BoxIndex(size draw.Size, look Look, v BoxView) Scene {
	const row, pad = 30.0, 14.0
	rows := 0
	for _, g := range v.Groups {
		if g.Kind == "box" {
			rows++
		}
	}
	l := draw.NewList(draw.Size{W: size.W, H: max(size.H, float64(rows)*row+2*pad)})
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(look.Back))
	sc := Scene{List: l}
	l.Group(words.BoxesTitle())
	y := 4.0
	for _, g := range v.Groups {
		if g.Kind != "box" {
			continue
		}
		box := draw.R(4, y, size.W-8, row-2)
		if g.Box.Ref() == v.Picked {
			l.Fill(draw.Rectangle(draw.R(0, y+3, 3, row-8)), draw.NonZero, draw.Solid(look.Accent))
		}
		count := strconv.Itoa(len(g.Rows))
		room := size.W - 2*pad - draw.Measure(textFont, count).Width - 8
		l.Text(draw.Text{S: draw.Fit(boxLineFont, g.Box.Name, room), At: draw.Pt(pad, y+19), Font: boxLineFont, Color: look.Ink})
		l.Text(draw.Text{S: count, At: draw.Pt(size.W-pad, y+19), Font: textFont, Color: look.Soft, Anchor: draw.End})
		sc.Hits = append(sc.Hits, Hit{Ref: g.Box.Ref(), Box: box, Tip: words.GroupUse(g.Kind, g.Box.Use, len(g.Rows))})
		y += row
	}
	l.EndGroup()
	return sc
}
