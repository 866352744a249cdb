package scene

import (
	"strconv"

	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// SeasonIndex lists the questions with the signs of their verdicts, to go to one, in a
// column.
func SeasonIndex(size draw.Size, look Look, v SeasonView) Scene {
	const row = 25.0
	n := 0
	if v.Season != nil {
		n = 1 + len(v.Season.Cards)
	}
	l := draw.NewList(draw.Size{W: size.W, H: max(size.H, float64(n)*row+16)})
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(look.Back))
	sc := Scene{List: l}
	l.Group(words.SeasonRoomTitle())
	y := 4.0
	line := func(k int, verdict season.Verdict) {
		if k == v.Picked {
			l.Fill(draw.Rectangle(draw.R(0, y+2, 3, row-6)), draw.NonZero, draw.Solid(look.Accent))
		}
		if k > 0 {
			l.Text(draw.Text{S: strconv.Itoa(k), At: draw.Pt(28, y+16), Font: textFont, Color: look.Soft, Anchor: draw.End})
		}
		l.Text(draw.Text{S: draw.Fit(boxLineFont, words.QuestionShort(k), size.W-36-28), At: draw.Pt(36, y+16), Font: boxLineFont, Color: look.Ink})
		tip := words.SeasonOverview()
		if k > 0 {
			drawVerdict(l, look, verdict, draw.Pt(size.W-16, y+12))
			tip = words.QuestionTitle(k)
			if verdict != season.Told {
				tip += " " + words.VerdictName(verdict)
			}
		}
		sc.Hits = append(sc.Hits, Hit{Ref: SeasonCard(k), Box: draw.R(4, y, size.W-8, row-1), Tip: tip})
		y += row
	}
	if n > 0 {
		line(0, season.Told)
		for _, c := range v.Season.Cards {
			line(c.N, c.Verdict)
		}
	}
	l.EndGroup()
	return sc
}
