package scene

import (
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// moment is an instant of the sky with its name and the row its name stands in,
// counted from the plot upwards; -1 where there is no room for it.
type moment struct {
	at    time.Time
	text  string
	color draw.Color
	row   int
	x     float64 // where the text begins
	moon  bool    // it gives way to sunset, trees grey and sunrise
}

// rowStep is the distance of two rows of names, and momentRows the most there are.
const (
	rowStep    = 16.0
	momentRows = 4
)

// setMoments lists sunset, trees grey, the moon over the hill and sunrise, each with a
// row for its name. Where there is no room for all, moons over a hill go first: trees grey
// is the zero of the night.
func (g *strip) setMoments() {
	n := g.n
	add := func(t time.Time, text string, c draw.Color) {
		if g.visible(t) {
			g.moments = append(g.moments, moment{at: t, text: text, color: c, row: -1})
		}
	}
	for _, t := range n.Sky.Sunset {
		add(t, words.SunsetMark(n, t), g.look.Accent)
	}
	if !n.Grey.At.IsZero() {
		add(n.Grey.At, words.GreyMark(n, n.Grey.At), g.look.Ink)
	}
	for _, m := range g.moonMarks() {
		add(m.at, m.text, g.look.Moon)
		if k := len(g.moments) - 1; k >= 0 && g.moments[k].at.Equal(m.at) && g.moments[k].text == m.text {
			g.moments[k].moon = true
		}
	}
	for _, t := range n.Sky.Sunrise {
		add(t, words.SunriseMark(n, t), g.look.Accent)
	}
	slices.SortStableFunc(g.moments, func(a, b moment) int { return a.at.Compare(b.at) })
	for {
		g.nameMoments()
		lacks := slices.IndexFunc(g.moments, func(m moment) bool { return !m.moon && m.row < 0 })
		if lacks < 0 {
			break
		}
		near := -1
		for i, m := range g.moments {
			if m.moon && (near < 0 || m.at.Sub(g.moments[lacks].at).Abs() < g.moments[near].at.Sub(g.moments[lacks].at).Abs()) {
				near = i
			}
		}
		if near < 0 {
			break
		}
		g.moments = slices.Delete(g.moments, near, near+1)
	}
	// an upright without a word says nothing
	g.moments = slices.DeleteFunc(g.moments, func(m moment) bool { return m.moon && m.row < 0 })
}

// nameMoments finds a row for each name: the lowest in which it touches no other.
func (g *strip) nameMoments() {
	g.rows = 0
	for i := range g.moments {
		g.moments[i].row = -1
	}
	type stretch struct{ lo, hi float64 }
	var rows [momentRows][]stretch
	for i := len(g.moments) - 1; i >= 0; i-- { // from the right, as names stand right of their upright
		m := &g.moments[i]
		x, w := g.axis.x(m.at), draw.Measure(textFont, m.text).Width
		for row := range rows {
			// its upright may cross no name in the rows below
			if slices.ContainsFunc(rows[:row], func(below []stretch) bool {
				return slices.ContainsFunc(below, func(o stretch) bool { return x > o.lo+4 && x < o.hi-4 })
			}) {
				continue
			}
			for _, lo := range []float64{x + 5, x - 5 - w} {
				s := stretch{lo - 8, lo + w + 8}
				if lo < 4 || lo+w > g.list.Size().W-4 || slices.ContainsFunc(rows[row], func(o stretch) bool { return s.lo < o.hi && o.lo < s.hi }) {
					continue
				}
				// no upright of another moment may cross the name
				if slices.ContainsFunc(g.moments, func(o moment) bool {
					ox := g.axis.x(o.at)
					return !o.at.Equal(m.at) && ox > lo-3 && ox < lo+w+3 && (o.row >= row || o.row < 0 && row == 0)
				}) {
					continue
				}
				rows[row] = append(rows[row], s)
				m.row, m.x = row, lo
				break
			}
			if m.row >= 0 {
				break
			}
		}
		if m.row+1 > g.rows {
			g.rows = m.row + 1
		}
	}
}

// drawMoments draws each moment as a dotted upright with its name above the plot.
// Where a name finds no row the upright stays; header and log say it in words.
func (g *strip) drawMoments() {
	for _, m := range g.moments {
		x, top := g.axis.x(m.at), g.plot.Min.Y-4
		if m.row >= 0 {
			top = g.rowY(m.row) - 9
		}
		k := g.strength(m.at)
		g.list.Stroke(draw.Line(draw.Pt(x, top), draw.Pt(x, g.plot.Max.Y)), momentStroke, draw.Fade(m.color, k))
		tip := words.MomentTip(g.n, m.text, m.at, g.v.Prefs)
		g.hit(journal.Ref{}, draw.R(x-4, top, 8, g.plot.Max.Y-top), tip)
		if m.row >= 0 {
			g.hit(journal.Ref{}, draw.R(m.x-2, g.rowY(m.row)-12, draw.Measure(textFont, m.text).Width+4, 16), tip)
		}
		if m.row < 0 {
			continue
		}
		t := draw.Text{S: m.text, Font: textFont, Color: g.ink(m.color, m.at), At: draw.Pt(m.x, g.rowY(m.row))}
		g.labels.block(labelBox(t))
		g.list.Text(t)
	}
	for _, t := range g.n.Grey.Logged { // a logged moment is a mark on the threshold
		if g.visible(t) {
			drawGreyNoted(g.list, g.look, draw.Pt(g.axis.x(t), g.lux.y(g.grey)), g.strength(t))
		}
	}
}

func (g *strip) rowY(row int) float64 { return g.plot.Min.Y - 8 - rowStep*float64(row) }

type moonMark struct {
	at   time.Time
	text string
}

// moonMarks lists when the moon comes over the hill of a pool that is still to
// be fished or being fished then; of a night without runs, of every pool. Pools
// within ten minutes of each other share a mark.
func (g *strip) moonMarks() []moonMark {
	type rise struct {
		at    time.Time
		pools []string
	}
	last := map[journal.ID]time.Time{} // end of the last run through a pool
	for _, r := range g.n.Rods {
		for _, run := range r.Runs {
			if to := run.To.Mid(); to.After(last[run.Pool.ID]) {
				last[run.Pool.ID] = to
			}
		}
	}
	var rises []rise
	for _, p := range g.n.Pools {
		for _, i := range p.MoonOver {
			if !i.From.After(g.n.Start) || len(last) > 0 && i.From.After(last[p.Pool.ID]) {
				continue
			}
			k := slices.IndexFunc(rises, func(r rise) bool { return r.at.Sub(i.From).Abs() < 10*time.Minute })
			if k < 0 {
				rises = append(rises, rise{i.From, []string{p.Pool.Name}})
				continue
			}
			rises[k].pools = append(rises[k].pools, p.Pool.Name)
			if i.From.Before(rises[k].at) {
				rises[k].at = i.From
			}
		}
	}
	var out []moonMark
	for _, r := range rises {
		out = append(out, moonMark{r.at, words.MoonMark(g.n, r.at, r.pools, len(rises) == 1)})
	}
	return out
}
