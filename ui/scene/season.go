package scene

import (
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// SeasonView is what the room of a season shows.
type SeasonView struct {
	Season   *season.Season // nil while nights are read
	Nights   int            // in the journal
	Done, Of int            // nights read while the others are
	Picked   int            // a card: 0 is all of it, then the questions
	Open     map[int]bool
	Full     map[int]bool // with the tests
	Beats    []SeasonBeat
	Prefs    words.Prefs
}

// SeasonBeat is a beat whose pools are shaded by their rates.
type SeasonBeat struct {
	ID   journal.ID // of its record
	Beat geo.Beat
}

// CardKind marks a hit on a card of a season, FoldKind on the line that shows its tests.
const (
	CardKind journal.Kind = "card"
	FoldKind journal.Kind = "fold"
)

// SeasonCard and SeasonFold are what a hit on a card, or on its fold, refers to.
func SeasonCard(n int) journal.Ref {
	return journal.Ref{Kind: CardKind, ID: journal.ID{1, 15: byte(n)}}
}
func SeasonFold(n int) journal.Ref {
	return journal.Ref{Kind: FoldKind, ID: journal.ID{1, 15: byte(n)}}
}

// SeasonLight is the card of the light, SeasonClock that of clock or light, SeasonPools that of
// the pools, SeasonLengths that of length against light.
const (
	SeasonLight   = 1
	SeasonClock   = 3
	SeasonPools   = 14
	SeasonLengths = 5
)

// SeasonNumber is the card of such a reference.
func SeasonNumber(r journal.Ref) int { return int(r.ID[15]) }

// Measures of the cards in dp.
const (
	seasonPad    = 14.0
	seasonIndent = 30.0 // of what stands under a question
	seasonLine   = 17.0
	seasonGap    = 10.0
)

// Season draws the cards of a season in a column of that width, one under the other: what
// it all comes to, then each question with its answer; an open one with its tables, their
// denominators and what is missing. Its height is what it needs.
func Season(width float64, look Look, v SeasonView) Scene {
	c := &cards{look: look, v: v, width: width, y: seasonPad}
	c.begin()
	switch s := v.Season; {
	case v.Of > v.Done || s == nil && v.Nights > 0:
		c.say(boxLineFont, look.Soft, words.SeasonReading(v.Done, v.Of), seasonPad)
	case s == nil || s.Nights == 0:
		c.say(boxLineFont, look.Soft, words.SeasonEmpty(v.Nights), seasonPad)
	default:
		c.s = s
		c.overview()
		for _, q := range s.Cards {
			c.question(q)
		}
	}
	c.list.EndGroup()
	out := draw.NewList(draw.Size{W: width, H: c.y + seasonPad})
	out.Fill(draw.Rectangle(draw.Bounds(out.Size())), draw.NonZero, draw.Solid(look.Panel))
	draw.Place(out, c.list, 1, draw.Point{})
	return Scene{List: out, Hits: c.hits}
}

// cards lays one card under the other.
type cards struct {
	look  Look
	v     SeasonView
	s     *season.Season
	width float64
	list  *draw.List
	hits  []Hit
	tips  []Hit // of the card that is being drawn, on top of it
	y     float64

	tall float64      // of a page; 0: all on one
	full []*draw.List // pages before this one
}

// inner is the room of what stands under a question.
func (c *cards) inner() draw.Rect {
	return draw.R(seasonPad+seasonIndent, c.y, c.width-2*seasonPad-seasonIndent, 0)
}

// say sets a paragraph from x to the right edge and moves on.
func (c *cards) say(f draw.Font, color draw.Color, text string, x float64) {
	if text == "" {
		return
	}
	for _, line := range draw.Wrap(f, text, c.width-seasonPad-x) {
		c.need(seasonLine)
		c.y += seasonLine
		c.list.Text(draw.Text{S: line, At: draw.Pt(x, c.y-4), Font: f, Color: color})
	}
}

func (c *cards) note(text string) { c.say(textFont, c.look.Soft, text, c.inner().Min.X) }

// card draws the head of a card and, open, its body; the whole can be pointed at.
func (c *cards) card(n int, number, title string, mark func(at draw.Point), verdict string, sentence string, body func()) {
	top := c.y
	room := c.width - 2*seasonPad - seasonIndent
	vw := 0.0
	if verdict != "" {
		vw = draw.Measure(boldFont, verdict).Width + 34
	}
	lines := draw.Wrap(boxTitleFont, title, max(room-vw, 160))
	c.y += 8
	c.list.Text(draw.Text{S: number, At: draw.Pt(seasonPad+seasonIndent-8, c.y+15), Font: boldFont, Color: c.look.Soft, Anchor: draw.End})
	for _, line := range lines {
		c.y += 20
		c.list.Text(draw.Text{S: line, At: draw.Pt(seasonPad+seasonIndent, c.y-5), Font: boxTitleFont, Color: c.look.Ink})
	}
	if verdict != "" {
		at := draw.Pt(c.width-seasonPad-vw+14, top+23)
		if room-vw < 160 { // a line of its own
			c.y += seasonLine
			at = draw.Pt(seasonPad+seasonIndent, c.y-4)
		}
		mark(draw.Pt(at.X+6, at.Y-4))
		c.list.Text(draw.Text{S: verdict, At: draw.Pt(at.X+18, at.Y), Font: boldFont, Color: c.look.Ink})
	}
	c.say(boxLineFont, c.look.Ink, sentence, seasonPad+seasonIndent)
	if c.v.Open[n] {
		body()
	}
	c.y += seasonGap
	box := draw.R(4, top+2, c.width-8, c.y-top-4)
	c.hits = append(c.hits, Hit{Ref: SeasonCard(n), Box: box})
	c.hits = append(c.hits, c.tips...)
	c.tips = nil
	if n == c.v.Picked {
		c.list.Stroke(draw.RoundRect(box.Inset(0.5), 5), draw.Stroke{Width: 1.8}, c.look.Accent)
	}
	c.list.Stroke(draw.Line(draw.Pt(seasonPad, c.y), draw.Pt(c.width-seasonPad, c.y)), draw.Stroke{Width: 1}, c.look.Rule)
}

// fold is the line that shows the tests, and these if they are shown.
func (c *cards) fold(n int, lines []string) {
	if len(lines) == 0 || c.tall > 0 && !c.v.Full[n] { // nobody opens it on paper
		return
	}
	c.y += 8
	x, top := c.inner().Min.X, c.y
	title := words.FoldTitle(c.v.Full[n])
	var tip draw.Path // a wedge that points down when open
	m := draw.Pt(x+4, c.y+9)
	if c.v.Full[n] {
		tip = draw.Polygon([]draw.Point{m.Add(draw.Pt(-4, -3)), m.Add(draw.Pt(4, -3)), m.Add(draw.Pt(0, 4))})
	} else {
		tip = draw.Polygon([]draw.Point{m.Add(draw.Pt(-3, -4)), m.Add(draw.Pt(-3, 4)), m.Add(draw.Pt(4, 0))})
	}
	c.list.Fill(tip, draw.NonZero, draw.Solid(c.look.Soft))
	c.say(boldFont, c.look.Soft, title, x+14)
	c.tips = append(c.tips, Hit{Ref: SeasonFold(n), Box: draw.R(x-4, top, draw.Measure(boldFont, title).Width+24, c.y-top+2)})
	if c.v.Full[n] {
		for _, l := range lines {
			c.say(textFont, c.look.Soft, l, x+14)
			c.y += 3
		}
	}
}
