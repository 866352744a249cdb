package scene

import (
	"strconv"

	"gloamline/journal"
	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// overview is the first card: hours, nights, fish, what could not be placed, when the
// trees go grey.
func (c *cards) overview() {
	s := c.s
	c.card(0, "", words.SeasonOverview(), nil, "", words.SeasonLine(s), func() {
		c.chain(s.Chain)
		c.note(words.UnplacedLine(s))
		if len(s.LeftOut) > 0 {
			c.note(words.SeasonLeft(len(s.LeftOut)))
		}
		for _, d := range s.Darkness {
			c.note(words.DarknessLine(d))
			for _, p := range d.Pools {
				c.note(words.PoolDarkness(p))
			}
		}
		if t := words.ScatterInFull(s); t != "" {
			c.fold(0, []string{t})
		}
	})
}

// chain shows how many contacts came of each sort, by the marks that stand for them.
func (c *cards) chain(of season.Chain) {
	c.y += 6
	x, y := c.inner().Min.X, c.y+14
	for _, k := range []struct {
		n float64
		t journal.Touch
	}{{of.Shows, journal.Boil}, {of.Touches, journal.Pull}, {of.Lost, journal.Lost}, {of.Landed, journal.Landed}} {
		mark := journal.Contact{Touch: k.t}
		w := contactSize(mark).W
		drawContact(c.list, c.look, mark, draw.Pt(x+w/2, y-4), 1)
		n := words.Expected(k.n)
		c.list.Text(draw.Text{S: n, At: draw.Pt(x+w+5, y), Font: boldFont, Color: c.look.Ink})
		x += w + 5 + draw.Measure(boldFont, n).Width + 22
	}
	c.y += 22
}

// question is a card of its own.
func (c *cards) question(q *season.Card) {
	verdict := ""
	if q.Verdict != season.Told {
		verdict = words.VerdictName(q.Verdict)
	}
	mark := func(at draw.Point) { drawVerdict(c.list, c.look, q.Verdict, at) }
	c.card(q.N, strconv.Itoa(q.N), words.QuestionTitle(q.N), mark, verdict, words.CardSentence(c.s, q), func() {
		var tests []string
		add := func(s string) {
			if s != "" {
				tests = append(tests, s)
			}
		}
		switch q.N {
		case SeasonClock:
			c.clockOrLight()
			add(words.ClockOrLightInFull(c.s.ClockOrLight))
		case SeasonLengths:
			c.lengthLight()
		case 6:
			for _, r := range c.s.Rules {
				c.y += 4
				c.say(boldFont, c.look.Ink, "“"+r.Words+"”", c.inner().Min.X)
				c.note(words.RuleSentence(r))
			}
		case SeasonPools:
			c.poolSketches()
			c.pools()
		}
		for _, t := range q.Tables {
			if t.Name != "pools" && t.Name != "length_drawn" { // which are told in full above
				c.table(t)
			}
			if line := words.TestInFull(t); line != "" {
				add(words.TableTitle(t) + ": " + line)
			}
			for _, p := range t.Pairs {
				add(words.PairInFull(t, p))
			}
			add(words.PriorInFull(t))
		}
		if q.N == SeasonLight {
			c.darkness()
		}
		if q.Short != nil {
			c.y += 4
			c.note(words.SeasonShort(*q.Short))
		}
		if len(q.Missing) > 0 {
			c.y += 4
		}
		for _, m := range q.Missing {
			c.note("– " + words.MissingLine(m))
		}
		c.fold(q.N, tests)
	})
}

// drawVerdict is the sign of a verdict: an empty ring for not enough yet, a dash for no
// difference seen, half a disc for an idea, a disc for a difference, a crossed ring for what
// cannot be told apart or was never tested, a dotted ring while it is worked out.
func drawVerdict(s draw.Surface, look Look, v season.Verdict, at draw.Point) {
	ring := func(st draw.Stroke, c draw.Color) { s.Stroke(draw.Circle(at, 4.5), st, c) }
	switch v {
	case season.NotEnough:
		ring(draw.Stroke{Width: 1.4}, look.Soft)
	case season.Open:
		ring(draw.Stroke{Width: 1.4, Dash: []float64{1.5, 2.5}}, look.Soft)
	case season.NoneSeen:
		s.Stroke(draw.Line(draw.Pt(at.X-5, at.Y), draw.Pt(at.X+5, at.Y)), draw.Stroke{Width: 2}, look.Soft)
	case season.Idea:
		ring(draw.Stroke{Width: 1.4}, look.Ink)
		s.PushClip(draw.Rectangle(draw.R(at.X-6, at.Y-6, 6, 12)))
		s.Fill(draw.Circle(at, 4.5), draw.NonZero, draw.Solid(look.Ink))
		s.PopClip()
	case season.Differs:
		s.Fill(draw.Circle(at, 5), draw.NonZero, draw.Solid(look.Ink))
	case season.Inseparable, season.NeverTested:
		ring(draw.Stroke{Width: 1.4}, look.Ink)
		s.Stroke(draw.Line(draw.Pt(at.X-3.2, at.Y-3.2), draw.Pt(at.X+3.2, at.Y+3.2)), draw.Stroke{Width: 1.4}, look.Ink)
	}
}
