package scene

import (
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// ListRow is one night of the list from which nights are picked.
type ListRow struct {
	Trip   journal.Ref
	Mark   string // its letter; empty if it is not laid with the others
	Date   string
	Beat   string
	What   string // hours and fish
	In     bool   // ticked
	Stands bool   // stands out
	Marked bool   // where the keys are
}

// TickKind marks a hit on the tick of a row; its ID is that of the trip.
const TickKind journal.Kind = "tick"

// listRow and listHead are the height of a row and of what divides those laid together
// from the others, in dp.
const (
	listRow  = 38.0
	listHead = 24.0
)

// NightPicks draws the list: nights laid together first, each with its letter, then the
// others. Its height is that of the list it returns; it scrolls.
func NightPicks(rows []ListRow, width float64, look Look) Scene {
	in := 0
	for _, r := range rows {
		if r.In {
			in++
		}
	}
	h := float64(len(rows)) * listRow
	if in < len(rows) {
		h += listHead
	}
	s := Scene{List: draw.NewList(draw.Size{W: width, H: max(h, 1)})}
	l := s.List
	l.Group(words.PicksTitle())
	defer l.EndGroup()
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(look.Back))
	y := 0.0
	for i, r := range rows {
		if i == in {
			l.Text(draw.Text{S: words.OtherNights(), At: draw.Pt(12, y+17), Font: boldFont, Color: look.Soft})
			y += listHead
		}
		box := draw.R(0, y, width, listRow)
		if r.Stands {
			l.Fill(draw.Rectangle(box), draw.NonZero, draw.Solid(draw.Over(draw.Fade(look.Ink, 0.1), look.Back)))
			l.Fill(draw.Rectangle(draw.R(0, y, 3, listRow)), draw.NonZero, draw.Solid(look.Accent))
		}
		if r.Marked {
			l.Stroke(draw.RoundRect(draw.R(4.5, y+1.5, width-9, listRow-3), 4), draw.Stroke{Width: 1.4}, look.Accent)
		}
		tick := draw.R(12, y+11, 15, 15)
		drawTick(l, look, tick, r.In)
		font, c := draw.Font{Size: 13}, look.Ink
		if r.Stands {
			font.Weight = draw.Bold
		}
		if !r.In {
			c = look.Soft
		}
		l.Text(draw.Text{S: draw.Fit(font, r.Date, width-64), At: draw.Pt(36, y+16), Font: font, Color: c})
		if r.Mark != "" {
			l.Text(draw.Text{S: r.Mark, At: draw.Pt(width-14, y+16), Anchor: draw.End, Font: boldFont, Color: look.Ink})
		}
		l.Text(draw.Text{S: draw.Fit(textFont, words.Commas(r.Beat, r.What), width-46), At: draw.Pt(36, y+31), Font: textFont, Color: look.Soft})
		tip := words.PickTip(r.In)
		s.Hits = append(s.Hits, Hit{Ref: r.Trip, Box: box},
			Hit{Ref: journal.Ref{Kind: TickKind, ID: r.Trip.ID}, Box: draw.R(4, y+4, 28, listRow-8), Tip: tip})
		y += listRow
	}
	return s
}

// drawTick is a box with or without its tick.
func drawTick(s draw.Surface, look Look, r draw.Rect, on bool) {
	s.Stroke(draw.RoundRect(r, 3), draw.Stroke{Width: 1.3}, look.Soft)
	if on {
		s.Stroke(draw.Polyline([]draw.Point{{X: r.Min.X + 3, Y: r.Center().Y + 0.5}, {X: r.Min.X + 6.2, Y: r.Max.Y - 3.6}, {X: r.Max.X - 2.6, Y: r.Min.Y + 3.4}}),
			draw.Stroke{Width: 2, Cap: draw.RoundCap, Join: draw.RoundJoin}, look.Ink)
	}
}
