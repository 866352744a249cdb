package scene

import (
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// BeatKind marks a hit on a beat in the list.
const BeatKind = journal.KindBeat

// BeatLine is a row of the column beside the plan.
type BeatLine struct {
	ID          geo.ID
	Name, Under string
	Number      string   // of a pool, in fishing order
	Role        geo.Role // of a mark, whose sign stands before it
	On          bool     // open, or picked out
	Open        bool     // something of it is not stored
}

// BeatList draws the beats and, below them, what is drawn of the one on the table: its pools in
// fishing order and its marks. It is as high as it needs to be, size.H at least.
func BeatList(beats, things []BeatLine, size draw.Size, look Look) Scene {
	const row, head, pad = 40.0, 30.0, 12.0
	width := size.W
	h := head + row*float64(max(1, len(beats)))
	if len(things) > 0 {
		h += head + 8
	}
	for _, t := range things {
		h += thingRow(t)
	}
	l := draw.NewList(draw.Size{W: width, H: max(size.H, h+12)})
	out := Scene{List: l}
	l.Group(words.BeatsTitle())
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(look.Back))
	title := func(s string, y float64) {
		l.Text(draw.Text{S: s, At: draw.Pt(pad, y+19), Font: draw.Font{Weight: draw.Medium, Size: 12.5}, Color: look.Soft})
	}
	line := func(b BeatLine, kind journal.Kind, y, h float64) {
		if b.On {
			l.Fill(draw.Rectangle(draw.R(0, y+3, 3, h-6)), draw.NonZero, draw.Solid(look.Accent))
		}
		x := pad
		if b.Number != "" {
			l.Text(draw.Text{S: b.Number, At: draw.Pt(x+8, y+18), Font: draw.Font{Weight: draw.Bold, Size: 13}, Color: look.Soft, Anchor: draw.Middle})
			x += 24
		} else if b.Role != "" {
			drawRole(l, look, b.Role, draw.Pt(x+8, y+h/2))
			x += 24
		}
		font, c := draw.Font{Size: 13.5}, look.Ink
		if b.On {
			font.Weight = draw.Bold
		}
		l.Text(draw.Text{S: draw.Fit(font, b.Name, width-x-8), At: draw.Pt(x, y+18), Font: font, Color: c})
		if b.Under != "" {
			l.Text(draw.Text{S: draw.Fit(textFont, b.Under, width-x-8), At: draw.Pt(x, y+34), Font: textFont, Color: look.Soft})
		}
		out.Hits = append(out.Hits, Hit{Ref: journal.Ref{Kind: kind, ID: b.ID}, Box: draw.R(0, y, width, h), Tip: joinTip(b.Name, b.Under)})
	}
	y := 0.0
	title(words.BeatsTitle(), y)
	y += head
	if len(beats) == 0 {
		l.Text(draw.Text{S: draw.Fit(textFont, words.NoBeats(), width-2*pad), At: draw.Pt(pad, y+18), Font: textFont, Color: look.Soft})
		y += row
	}
	for _, b := range beats {
		line(b, BeatKind, y, row)
		y += row
	}
	if len(things) > 0 {
		y += 8
		l.Stroke(draw.Line(draw.Pt(0, y), draw.Pt(width, y)), draw.Stroke{Width: 1}, look.Edge)
		title(words.ThingsTitle(), y)
		y += head
	}
	for _, t := range things {
		kind := SpotKind
		if t.Number != "" {
			kind = PoolKind
		}
		line(t, kind, y, thingRow(t))
		y += thingRow(t)
	}
	l.EndGroup()
	return out
}

func thingRow(t BeatLine) float64 {
	if t.Under == "" {
		return 26
	}
	return 42
}

func joinTip(a, b string) string {
	if b == "" {
		return a
	}
	return a + ", " + b
}

// drawRole is the sign of a feature in the list: that of a spot, a line for a bank, strokes for
// trees.
func drawRole(s draw.Surface, look Look, r geo.Role, c draw.Point) {
	switch r {
	case geo.RoleBank:
		s.Stroke(draw.Line(c.Add(draw.Pt(-7, 2)), c.Add(draw.Pt(7, -2))), draw.Stroke{Width: 1.8, Cap: draw.RoundCap}, look.Soft)
	case geo.RoleTrees:
		var p draw.Path
		for _, d := range []float64{-4, 0, 4} {
			p.Move(c.X+d-1.7, c.Y+3.4)
			p.Line(c.X+d+1.7, c.Y-3.4)
		}
		s.Stroke(p, draw.Stroke{Width: 1.4, Cap: draw.RoundCap}, look.Soft)
	default:
		drawSpot(s, look, r, c)
	}
}
