package scene

import (
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// offRule is the mark under a lane where the flies lay off a house rule: small open
// rings in a row, which stop at what is written there. It says so quietly; nothing is
// forbidden.
func (g *strip) offRule(rod int, foot float64, taken []draw.Rect) {
	for _, a := range g.n.Against {
		if a.Rod != rod {
			continue
		}
		tip := words.OffRule(a)
		for _, w := range a.When {
			if w.To.Before(g.v.From) || w.From.After(g.v.To) {
				continue
			}
			x0, x1 := g.axis.x(g.clipTime(w.From)), g.axis.x(g.clipTime(w.To))
			line := draw.R(x0, foot+offRuleDrop-6, x1-x0, 12)
			for _, s := range gaps(x0, x1, across(taken, line)) {
				drawOffRule(g.list, g.ink(g.look.Soft, w.From), s[0], s[1], foot+offRuleDrop)
			}
			g.hit(g.n.Rods[rod].Rigs[a.Rig].Rig.Ref(), draw.R(x0-2, foot+offRuleDrop-4, max(x1-x0, 4)+4, 8), tip)
		}
	}
}

// offRuleDrop is how far below the flies' feet the mark runs, in dp.
const offRuleDrop = 6.3

// drawOffRule draws rings from x0 to x1 at a height.
func drawOffRule(s draw.Surface, c draw.Color, x0, x1, y float64) {
	const r, step = 1.3, 7.0
	for x := x0 + r; x <= max(x1-r, x0+r); x += step {
		s.Stroke(draw.Circle(draw.Pt(x, y), r), draw.Stroke{Width: 1}, c)
	}
}

// offRules reports whether anything of the night lay off a house rule.
func offRules(n *timeline.Night) bool { return len(n.Against) > 0 }
