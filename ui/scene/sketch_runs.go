package scene

import (
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Measures of the line of a run along its bank, in dp: off the edge of the water, and
// from one run to the next.
const (
	runOff  = 5.5
	runStep = 5.0
	runMost = 3 // abreast; later ones lie on the last
)

// runs draws each run as a line along the bank it was fished from, with an arrow the
// way the rod went: from where it went in to where it came out, if that was noted, with
// a ring and a bar there; else along the pool. A run whose bank nobody noted is dotted down
// the middle: it was fished, from where is not known.
func (g *sketch) runs() {
	type lane struct {
		pool geo.ID
		bank geo.Bank
	}
	used := map[lane]int{}
	for i, rod := range g.n.Rods {
		for _, run := range rod.Runs {
			for j := range g.shapes {
				p := &g.shapes[j]
				if p.Pool.ID != run.Run.Pool {
					continue
				}
				bank, way := g.walk(p, run.Run)
				if bank == "" {
					if way := g.all(p.Axis.Part(p.Axis.Length()*0.14, p.Axis.Length()*0.88).Even(24)); len(way) > 1 {
						g.run(i, rod, run, way, true)
					}
					continue
				}
				if len(way) < 2 {
					continue
				}
				l := lane{p.Pool.ID, bank}
				off := runOff + runStep*float64(min(used[l], runMost-1))
				used[l]++
				g.run(i, rod, run, offBank(g.all(way), bank, off, g.backwards(p, run.Run, bank)), false)
			}
		}
	}
}

// edgeOn is the pool's edge on a bank, head to tail.
func (p *poolDrawn) edgeOn(b geo.Bank) geo.Path {
	if b == geo.TrueRight {
		return p.Right
	}
	return p.Left
}

// walk is the stretch of the pool's edge along which a run was fished, downstream, and
// its bank; no bank if that is not known.
func (g *sketch) walk(p *poolDrawn, r journal.Run) (geo.Bank, geo.Path) {
	enter, in := r.Enter.Get()
	leave, out := r.Leave.Get()
	bank, ok := r.Bank.Get()
	if !ok || !bank.Known() {
		switch {
		case in:
			bank = p.nearer(g.lay.At(enter))
		case out:
			bank = p.nearer(g.lay.At(leave))
		default:
			return "", nil
		}
	}
	edge := p.edgeOn(bank)
	a, b := edge.Length()*0.14, edge.Length()*0.88
	if in {
		a = edge.Foot(g.lay.At(enter)).Chainage
	}
	if out {
		b = edge.Foot(g.lay.At(leave)).Chainage
	}
	part := edge.Part(min(a, b), max(a, b))
	if len(part) < 2 {
		return bank, nil
	}
	return bank, part.Even(24)
}

// backwards reports whether the rod went up the pool.
func (g *sketch) backwards(p *poolDrawn, r journal.Run, bank geo.Bank) bool {
	enter, in := r.Enter.Get()
	leave, out := r.Leave.Get()
	edge := p.edgeOn(bank)
	return in && out && edge.Foot(g.lay.At(enter)).Chainage > edge.Foot(g.lay.At(leave)).Chainage
}

func (p *poolDrawn) nearer(at geo.Point) geo.Bank {
	if p.Right.Foot(at).Distance < p.Left.Foot(at).Distance {
		return geo.TrueRight
	}
	return geo.TrueLeft
}

// offBank is the line at a distance on the land side of an edge that runs downstream,
// turned round if the rod went up.
func offBank(edge []draw.Point, bank geo.Bank, off float64, up bool) []draw.Point {
	sign := 1.0
	if bank == geo.TrueRight {
		sign = -1
	}
	out := make([]draw.Point, 0, len(edge))
	for i, q := range edge {
		d := edge[min(i+2, len(edge)-1)].Sub(edge[max(i-2, 0)])
		if l := d.Dist(draw.Point{}); l > 0 {
			d = d.Mul(1 / l)
		}
		out = append(out, q.Add(draw.Pt(d.Y, -d.X).Mul(sign*off)))
	}
	if up {
		for i, j := 0, len(out)-1; i < j; i, j = i+1, j-1 {
			out[i], out[j] = out[j], out[i]
		}
	}
	return out
}

func (g *sketch) run(rod int, who timeline.RodNight, run timeline.RunSpan, line []draw.Point, noBank bool) {
	t, k := g.v.Cursor, 0.75
	switch {
	case t.IsZero():
	case run.From.Mid().After(t):
		k = 0.35
	case !run.To.Mid().Before(t): // being fished at the cursor
		k = 1
	}
	c := draw.Fade(g.look.Ink, k)
	if run.Run.Ref() == g.v.Selected {
		c = g.look.Accent
	}
	_, in := run.Run.Enter.Get()
	_, out := run.Run.Leave.Get()
	g.lines[run.Run.ID] = line[0]
	st := rodStroke(rod)
	if noBank {
		st = noBankStroke
	}
	if ghost := g.v.Ghosts[run.Run.Ref()]; ghost != NoGhost {
		drawGhostRun(g.list, g.look, ghost, line, in, out, c)
	} else {
		drawRun(g.list, g.look, line, st, in, out, c)
	}
	var box draw.Rect
	for i := 0; i < len(line); i += 2 {
		b := draw.R(line[i].X-3, line[i].Y-3, 6, 6)
		if !noBank { // fish lie where that line does, over it
			g.labels.block(b)
		}
		box = box.Union(b)
	}
	if box = box.Intersect(g.view); box.Empty() {
		return
	}
	var band []draw.Point
	for _, side := range []float64{-4, 4} {
		for i := range line {
			j := i
			if side > 0 {
				j = len(line) - 1 - i
			}
			d := line[min(j+1, len(line)-1)].Sub(line[max(j-1, 0)])
			if l := d.Dist(draw.Point{}); l > 0 {
				d = d.Mul(1 / l)
			}
			band = append(band, line[j].Add(draw.Pt(d.Y, -d.X).Mul(side)))
		}
	}
	g.hits = append(g.hits, Hit{Ref: run.Run.Ref(), Box: box.Inset(-2), Area: draw.Polygon(band), Tip: words.RunTip(g.n, run, who, g.v.Prefs)})
}

// noBankStroke is that of a run down the middle.
var noBankStroke = draw.Stroke{Dash: []float64{0.1, 4.5}, Cap: draw.RoundCap}

// drawRun is the sign of a run: a line in the rod's dash with an arrow; a ring where
// the rod went in and a bar where it came out, if noted.
func drawRun(s draw.Surface, look Look, line []draw.Point, st draw.Stroke, in, out bool, c draw.Color) {
	st.Width = 1.8
	end, back := line[len(line)-1], line[max(0, len(line)-3)]
	d := end.Sub(back)
	if l := d.Dist(draw.Point{}); l > 0 {
		d = d.Mul(1 / l)
	}
	side := draw.Pt(-d.Y, d.X)
	s.Stroke(draw.Polyline(line), st, c)
	s.Fill(draw.Polygon([]draw.Point{end.Add(d.Mul(6)), end.Add(side.Mul(3.4)), end.Sub(side.Mul(3.4))}), draw.NonZero, draw.Solid(c))
	if in {
		s.Fill(draw.Circle(line[0], 3), draw.NonZero, draw.Solid(look.Panel))
		s.Stroke(draw.Circle(line[0], 3), draw.Stroke{Width: 1.5}, c)
	}
	if out {
		tip := end.Add(d.Mul(7))
		s.Stroke(draw.Line(tip.Add(side.Mul(4)), tip.Sub(side.Mul(4))), draw.Stroke{Width: 1.5}, c)
	}
}

// along is the place that share of the way down a pool's axis.
func (g *sketch) along(pool geo.ID, share float64) (draw.Point, bool) {
	for i := range g.shapes {
		if p := &g.shapes[i]; p.Pool.ID == pool {
			return g.at(p.At(p.Length()*units.Metres(share), 0)), true
		}
	}
	return draw.Point{}, false
}
