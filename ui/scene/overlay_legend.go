package scene

import (
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// TogetherLegend explains the codes of nights side by side. Its height is that of the
// list it returns.
func TogetherLegend(width float64, look Look) *draw.List {
	items := []legendItem{
		{w: 30, text: words.LegendHours(), draw: func(s draw.Surface, c draw.Point) {
			for i, h := range []float64{5, 11, 8} {
				s.Fill(draw.Rectangle(draw.R(c.X-14+float64(i)*9.5, c.Y+6-h, 8.5, h)), draw.NonZero, draw.Solid(draw.Fade(look.Ink, 0.24)))
			}
		}},
		{w: 30, text: words.LegendJoined(), draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Polyline([]draw.Point{{X: c.X - 12, Y: c.Y - 7}, {X: c.X - 12, Y: c.Y - 3}, {X: c.X + 12, Y: c.Y + 3}, {X: c.X + 12, Y: c.Y + 7}}), draw.Stroke{Width: 1.2}, look.Ink)
		}},
		{w: 30, text: words.LegendStandsOut(), draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Line(draw.Pt(c.X-14, c.Y-3), draw.Pt(c.X+14, c.Y-3)), nightStroke(0, stands), look.Ink)
			s.Stroke(draw.Line(draw.Pt(c.X-14, c.Y+4), draw.Pt(c.X+14, c.Y+4)), nightStroke(0, recedes), draw.Fade(look.Ink, recedes.strength()))
		}},
		{w: 30, text: words.LegendSpread(), draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Line(draw.Pt(c.X-11, c.Y), draw.Pt(c.X+11, c.Y)), draw.Stroke{Width: 7, Cap: draw.RoundCap}, draw.Fade(look.Fish, 0.28))
			drawContact(s, look, journal.Contact{Touch: journal.Pull}, c, 1)
		}},
		{w: 30, text: words.LegendRunLength(), draw: func(s draw.Surface, c draw.Point) {
			s.Fill(draw.Rectangle(draw.R(c.X-14, c.Y-3, 14, 9)), draw.NonZero, draw.Solid(draw.Fade(look.Ink, 0.22)))
			s.Fill(draw.Rectangle(draw.R(c.X, c.Y+1, 14, 5)), draw.NonZero, draw.Solid(draw.Fade(look.Ink, 0.22)))
			s.Stroke(draw.Line(draw.Pt(c.X-14, c.Y+6), draw.Pt(c.X+14, c.Y+6)), draw.Stroke{Width: 1.4}, look.Ink)
		}},
	}
	// Photos, and what a night's own legend says of rules, are not on these pictures.
	for _, it := range append(legendContacts(look), legendTackle(look)...) {
		switch it.text {
		case words.LegendUncertain(), words.LegendPhoto(), words.LegendOffRule():
		default:
			items = append(items, it)
		}
	}
	items = append(items, legendPicked(look)[0])
	return legend(width, look, items, 19)
}
