package timeline

import (
	"math"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline/tally"
)

// Overlay is a set of nights laid over each other along one axis. It is derived from
// its nights and says nothing that they do not: every rod-hour and every contact of
// each night lies on the axis or is told in Off.
type Overlay struct {
	Axis   Axis
	Nights []Laid // in the order given
	Bins   []Bin  // of all nights, in the order of the axis; those in between that hold nothing are left out
	Off    []Off  // what has no place on the axis, by reason
	Pools  []PoolSum
	Totals Totals // of all nights
}

// PoolSum is what several nights had at one pool; a zero pool holds the contacts of
// which the pool is not known.
type PoolSum struct {
	Beat, Pool                   geo.ID
	Name                         string // as it was on the last of the nights laid
	Water                        time.Duration
	Landed, Lost, Touches, Shows int
	Runs, Nights                 int
}

// Off is what of some nights has no place on an axis.
type Off struct {
	Why      OffWhy
	Water    time.Duration
	Contacts int
	Nights   int // on which that is so
}

// Laid is one night along the axis.
type Laid struct {
	Night   *Night
	Curve   []Trace // the open sky over the part worth drawing; none on the axis of light
	Runs    []LaidRun
	Rigs    []LaidRig
	Fish    []LaidFish // one for each contact, in their order
	Bins    []Bin
	Off     []Off
	Darkest units.Lux // least light at the places fished, while a fly was in the water
}

// Trace is light along an axis of time.
type Trace struct {
	Part   Part
	V, Lux []float64
}

// LaidRun is a run along the axis.
type LaidRun struct {
	Rod, Run int // indices into the night
	Off      OffWhy
	Reach    []Reach // where it lasted, ends at the middle of their spread
	Ends     []Reach // where its ends may lie, if they are uncertain
	Light    []Trace // of its pool; none on the axis of light
}

// LaidRig is a change of flies along the axis: at the pool fished then or next.
type LaidRig struct {
	Rod, Rig int
	Off      OffWhy
	At       Spot
	Reach    []Reach // where the moment of the change may lie
	Until    []Reach // where it was fished
}

// LaidFish is a contact along the axis: its mark at At, and where it may lie.
type LaidFish struct {
	Contact *Contact
	Off     OffWhy
	At      Spot
	Reach   []Reach
}

// Lay lays nights over each other.
func Lay(nights []*Night, axis Axis) *Overlay {
	o := &Overlay{Axis: axis}
	all := bins{}
	for _, n := range nights {
		l, own := lay(n, axis)
		for k, b := range own {
			sum := all.at(axis, k)
			sum.Water += b.Water
			sum.Landed, sum.Lost = sum.Landed+b.Landed, sum.Lost+b.Lost
			sum.Touches, sum.Shows = sum.Touches+b.Touches, sum.Shows+b.Shows
			if b.Water > 0 {
				sum.Nights++
			}
		}
		for _, x := range l.Off {
			o.Off = addOff(o.Off, x)
		}
		o.Totals = o.Totals.Plus(n.Totals)
		o.Nights = append(o.Nights, l)
	}
	o.Bins = all.sorted()
	o.Pools = poolSums(nights)
	return o
}

// addOff adds to what is told for a reason.
func addOff(list []Off, x Off) []Off {
	for i := range list {
		if list[i].Why == x.Why {
			list[i].Water += x.Water
			list[i].Contacts += x.Contacts
			list[i].Nights += x.Nights
			return list
		}
	}
	return append(list, x)
}

// layer lays one night.
type layer struct {
	n      *Night
	axis   Axis
	rulers map[geo.ID]*ruler
	bins   bins
	out    Laid
}

func lay(n *Night, axis Axis) (Laid, bins) {
	g := &layer{n: n, axis: axis, rulers: map[geo.ID]*ruler{}, bins: bins{}, out: Laid{Night: n}}
	darkest := math.Inf(1)
	for i := range n.Rods {
		rod := &n.Rods[i]
		for _, f := range rod.fished() {
			run := &rod.Runs[f.run]
			r := g.ruler(run.Pool.ID)
			g.run(i, f.run, r)
			g.water(f.water, r)
			for _, s := range f.water {
				darkest = math.Min(darkest, least(r.light, s))
			}
		}
		for k := range rod.Rigs {
			g.rig(i, k)
		}
	}
	for i := range n.Contacts {
		g.contact(&n.Contacts[i])
	}
	for i := range g.out.Off {
		g.out.Off[i].Nights = 1
	}
	if math.IsInf(darkest, 1) {
		darkest = float64(n.Grey.Least)
	}
	g.out.Darkest = units.Lux(darkest)
	g.curve()
	for _, b := range g.bins {
		if b.Water > 0 {
			b.Nights = 1
		}
	}
	g.out.Bins = g.bins.sorted()
	return g.out, g.bins
}

func (g *layer) ruler(pool geo.ID) *ruler {
	r, ok := g.rulers[pool]
	if !ok {
		made := g.n.ruler(g.axis, pool)
		r = &made
		g.rulers[pool] = r
	}
	return r
}

func (g *layer) off(x Off) { g.out.Off = addOff(g.out.Off, x) }

func (g *layer) run(rod, i int, r *ruler) {
	run := &g.n.Rods[rod].Runs[i]
	l := LaidRun{Rod: rod, Run: i, Off: r.off}
	if r.off == OnAxis {
		from, to := run.From.Mid(), run.To.Mid()
		l.Reach = r.reach(from, to)
		for _, end := range []journal.Spread{run.From, run.To} {
			if !end.Exact() {
				l.Ends = append(l.Ends, r.reach(end.Lo, end.Hi)...)
			}
		}
		if g.axis != LightAxis {
			l.Light = r.trace(from, to)
		}
	}
	g.out.Runs = append(g.out.Runs, l)
}

// water counts the time with a fly in the water.
func (g *layer) water(set tally.Set, r *ruler) {
	if r.off != OnAxis {
		if d := set.Length(); d > 0 {
			g.off(Off{Why: r.off, Water: d})
		}
		return
	}
	for _, s := range set {
		r.split(s, func(k binKey, d time.Duration) { g.bins.at(g.axis, k).Water += d })
	}
}

func (g *layer) rig(rod, i int) {
	r := &g.n.Rods[rod]
	rig := &r.Rigs[i]
	at := rig.From.Mid()
	// The run fished then, else the next one, else the last.
	var pool geo.ID
	for k := range r.Runs {
		pool = r.Runs[k].Pool.ID
		if r.Runs[k].To.Mid().After(at) {
			break
		}
	}
	ruler := g.ruler(pool)
	l := LaidRig{Rod: rod, Rig: i, Off: ruler.off}
	if ruler.off == OnAxis {
		l.At, _ = ruler.at(at)
		l.Reach = ruler.reach(rig.From.Lo, rig.From.Hi)
		for _, f := range r.fished() {
			run := g.ruler(r.Runs[f.run].Pool.ID)
			for _, s := range f.water.Intersect(tally.Union(tally.Stretch{From: at, To: rig.To})) {
				if run.off == OnAxis {
					l.Until = append(l.Until, run.reach(s.From, s.To)...)
				}
			}
		}
	}
	g.out.Rigs = append(g.out.Rigs, l)
}

func (g *layer) contact(k *Contact) {
	var pool geo.ID
	if k.HasPool {
		pool = k.Pool.ID
	}
	r := g.ruler(pool)
	l := LaidFish{Contact: k, Off: r.off}
	if r.off != OnAxis {
		g.off(Off{Why: r.off, Contacts: 1})
		g.out.Fish = append(g.out.Fish, l)
		return
	}
	l.Reach = r.reach(k.At.Lo, k.At.Hi)
	l.At, _ = r.at(k.At.Mid())
	if g.axis == LightAxis { // as header, strip and log say it
		best := 0.0
		for _, x := range l.Reach {
			if x.Share > best {
				best, l.At.Part = x.Share, x.Part
			}
		}
		l.At.V = logLux(float64(k.Light.Lux))
	}
	g.bins.tell(r, k)
	g.out.Fish = append(g.out.Fish, l)
}

// traceStep is how finely curves are handed out.
const traceStep = 3 * time.Minute

// trace is the light of the ruler's place along its axis of time.
func (r *ruler) trace(from, to time.Time) []Trace {
	var out []Trace
	for _, p := range r.pieces {
		s := p.Intersect(tally.Stretch{From: from, To: to})
		if s.Empty() {
			continue
		}
		t := Trace{Part: p.part}
		for at := s.From; ; at = at.Add(traceStep) {
			if at.After(s.To) {
				at = s.To
			}
			t.V = append(t.V, r.value(p, at))
			t.Lux = append(t.Lux, r.light.value(r.light.Lux, at))
			if !at.Before(s.To) {
				break
			}
		}
		out = append(out, t)
	}
	return out
}

// curve lays the open sky along the axis. For the moon its zero is that of the first
// pool fished over which the moon comes, of a night without runs that of any pool.
func (g *layer) curve() {
	if g.axis == LightAxis {
		return
	}
	r := g.n.ruler(g.axis, geo.ID{})
	if g.axis == MoonAxis {
		first, found := time.Time{}, false
		see := func(pool geo.ID) {
			p, ok := g.n.PoolNight(pool)
			if !ok {
				return
			}
			if at, comes := g.n.moonOver(p); comes && (!found || at.Before(first)) {
				first, found = at, true
				r = g.n.ruler(g.axis, pool)
			}
		}
		for _, rod := range g.n.Rods {
			for _, run := range rod.Runs {
				see(run.Pool.ID)
			}
		}
		if len(g.out.Runs) == 0 {
			for _, p := range g.n.Pools {
				see(p.Pool.ID)
			}
		}
		r.light = &g.n.Open
	}
	if r.off == OnAxis {
		g.out.Curve = r.trace(g.n.From, g.n.To)
	}
}

// least is the least light of a curve in a stretch of time.
func least(c *Curve, s tally.Stretch) float64 {
	r := ruler{axis: LightAxis, light: c}
	out := math.Inf(1)
	for _, t := range r.looks(s) {
		out = math.Min(out, c.value(c.Lux, t))
	}
	return out
}

// Spread returns the least and the greatest place at which a part of the axis holds
// hours or contacts; false if it holds none.
func (o *Overlay) Spread(p Part) (lo, hi float64, ok bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, b := range o.Bins {
		if b.Part == p {
			lo, hi, ok = math.Min(lo, b.Lo), math.Max(hi, b.Hi), true
		}
	}
	return lo, hi, ok
}
