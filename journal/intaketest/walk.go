package intaketest

import (
	"math"
	"math/rand/v2"
	"time"

	"gloamline/geo"
	"gloamline/journal/intake"
)

// Begin is when each track begins: half past ten in the evening of 4 July 2026 by the
// clock of the invented river, so that the track crosses midnight twice, in UTC and there.
var Begin = time.Date(2026, 7, 4, 21, 30, 0, 0, time.UTC)

// Run is one run as it was: from the first cast to the last.
type Run struct {
	Pool     geo.ID
	Nth      int // of the pool that night, from 1
	From, To time.Time
}

// Night is a walk with its truth.
type Night struct {
	Beat  geo.Beat
	Runs  []Run
	True  []geo.Place  // where the person was, second by second
	Fixes []intake.Fix // what the receiver recorded, as it came
}

// Walk walks a beat made up for the seed.
func Walk(seed uint64, p Params) Night { return WalkOn(Beat(seed, p), seed, p) }

// WalkOn walks a beat that has pools with outlines.
func WalkOn(b geo.Beat, seed uint64, p Params) Night {
	x := rand.New(rand.NewPCG(seed, 0x3a1c))
	w := &walker{x: x, p: p, l: b.Layout(), runs: map[geo.ID]int{}, left: x.IntN(2) == 0}
	w.path = p.PathM.draw(x)
	for _, s := range w.l.Pools {
		w.river = append(w.river, s.Axis...)
	}
	w.night()
	n := Night{Beat: b}
	for _, r := range w.done {
		n.Runs = append(n.Runs, Run{r.pool, r.nth, at(r.from), at(r.to)})
	}
	for _, q := range w.pts {
		n.True = append(n.True, w.l.Place(q))
	}
	n.Fixes = receive(x, p, w.l, w.pts)
	return n
}

func at(second int) time.Time { return Begin.Add(time.Duration(second) * time.Second) }

type run struct {
	pool     geo.ID
	nth      int
	from, to int // seconds
}

type walker struct {
	x     *rand.Rand
	p     Params
	l     *geo.Layout
	river geo.Path // down the middle, pool after pool
	left  bool     // the bank of the night
	path  float64  // metres of the path behind the water's edge
	pts   []geo.Point
	done  []run
	runs  map[geo.ID]int
}

func (w *walker) pos() geo.Point        { return w.pts[len(w.pts)-1] }
func (w *walker) seconds() int          { return int(w.p.Hours * 3600) }
func (w *walker) chance(p float64) bool { return w.x.Float64() < p }

// stand stays where one is.
func (w *walker) stand(seconds float64) {
	for range int(seconds) {
		w.pts = append(w.pts, w.pos())
	}
}

// walk goes along a path at one speed.
func (w *walker) walk(to ...geo.Point) {
	speed := w.p.WalkMS.draw(w.x)
	for _, q := range to {
		from := w.pos()
		d := float64(from.Distance(q))
		for s := speed; s < d; s += speed {
			w.pts = append(w.pts, between(from, q, s/d))
		}
	}
	if len(to) > 0 {
		w.pts = append(w.pts, to[len(to)-1])
	}
}

func between(a, b geo.Point, t float64) geo.Point {
	return geo.Point{X: a.X + metres(t)*(b.X-a.X), Y: a.Y + metres(t)*(b.Y-a.Y)}
}

// edge is a point beside a pool: along its edge from the head, and so many metres out of
// the water (negative: into it).
func (w *walker) edge(s geo.PoolShape, along, out float64) geo.Point {
	side, sign := s.Right, -1.0
	if w.left {
		side, sign = s.Left, 1
	}
	q, dx, dy := side.Along(metres(along))
	return geo.Point{X: q.X - metres(sign*out*dy), Y: q.Y + metres(sign*out*dx)}
}

func (w *walker) length(s geo.PoolShape) float64 {
	if w.left {
		return float64(s.Left.Length())
	}
	return float64(s.Right.Length())
}

// way is the path along the river from one place to another, behind the edge.
func (w *walker) way(from, to geo.Point) []geo.Point {
	a, b := float64(w.river.Foot(from).Chainage), float64(w.river.Foot(to).Chainage)
	sign := 1.0
	if !w.left {
		sign = -1
	}
	n := int(math.Abs(b-a)/10) + 1
	var out []geo.Point
	for i := range n + 1 {
		q, dx, dy := w.river.Along(metres(a + (b-a)*float64(i)/float64(n)))
		off := sign * (w.p.WidthM.Hi/2 + w.path)
		out = append(out, geo.Point{X: q.X - metres(off*dy), Y: q.Y + metres(off*dx)})
	}
	return append(out, to)
}

// night is the whole of it: from the car to the car.
func (w *walker) night() {
	first := w.l.Pools[0]
	car := w.edge(first, w.x.Float64()*w.length(first), w.p.CarM.draw(w.x))
	w.pts = append(w.pts, car)
	w.stand(30 + 300*w.x.Float64())
	for i := w.x.IntN(min(2, len(w.l.Pools))); ; i++ {
		if w.chance(w.p.Return) {
			i = w.x.IntN(len(w.l.Pools))
		}
		if i >= len(w.l.Pools) {
			i = 0
		}
		if w.chance(w.p.Skip) {
			continue
		}
		if w.chance(w.p.Pause) {
			w.rest(w.l.Pools[w.x.IntN(len(w.l.Pools))], w.p.PauseM.draw(w.x), w.p.PauseMin)
		}
		if w.chance(w.p.Watch) {
			w.rest(w.l.Pools[w.x.IntN(len(w.l.Pools))], 5*w.x.Float64(), w.p.WaterMin)
		}
		if !w.fish(w.l.Pools[i]) {
			break
		}
		if w.chance(w.p.Second) {
			s := w.l.Pools[i]
			w.walk(w.way(w.pos(), w.edge(s, 2, 3))...)
			if w.chance(0.5) {
				w.stand(60 * w.p.RestMin.draw(w.x))
			}
			if !w.fish(s) {
				break
			}
		}
	}
	w.walk(w.way(w.pos(), w.edge(first, 0, 0))...)
	w.walk(car)
	w.stand(float64(max(0, w.seconds()-len(w.pts))))
	w.pts = w.pts[:w.seconds()]
}

// rest sits down somewhere behind a pool.
func (w *walker) rest(s geo.PoolShape, out float64, min Range) {
	seat := w.edge(s, w.x.Float64()*w.length(s), out)
	w.walk(w.way(w.pos(), seat)...)
	w.stand(60 * min.draw(w.x))
}

// fish goes to the head of a pool and fishes it down once; false when the night is too
// short for it.
func (w *walker) fish(s geo.PoolShape) bool {
	length, wade := w.length(s), w.p.WadeM.draw(w.x)
	rate := max(w.p.DownMMin.draw(w.x), length/w.p.LongestMin) / 60
	stops := w.p.Stops.whole(w.x)
	need := length/rate + float64(stops)*60*w.p.StopMin.Hi + 60*(w.p.WaterMin.Hi+15)
	if float64(w.seconds()-len(w.pts)) < need+1000 {
		return false
	}
	w.walk(w.way(w.pos(), w.edge(s, 1, 2))...)
	if w.chance(w.p.Wait) {
		w.stand(60 * w.p.WaterMin.draw(w.x))
	}
	w.stand(w.p.Prepare.draw(w.x))
	w.pts = append(w.pts, w.edge(s, 1, -wade))
	from := len(w.pts)
	stop := map[int]bool{}
	steps := int(length / rate / 50) // a pace every 50 seconds
	for range stops {
		stop[1+w.x.IntN(max(1, steps-1))] = true
	}
	for i := 1; i <= steps; i++ {
		w.stand(49)
		along := 1 + (length-2)*float64(i)/float64(steps)
		w.pts = append(w.pts, w.edge(s, along, -wade))
		if stop[i] {
			w.walk(w.edge(s, along, w.p.StopOutM.draw(w.x)))
			w.stand(60 * w.p.StopMin.draw(w.x))
			w.walk(w.edge(s, along, -wade))
		}
	}
	w.runs[s.Pool.ID]++
	w.done = append(w.done, run{s.Pool.ID, w.runs[s.Pool.ID], from, len(w.pts)})
	w.stand(w.p.ReelIn.draw(w.x))
	if w.chance(w.p.Sit) {
		w.walk(w.edge(s, length-3, 3))
		w.stand(60 * w.p.WaterMin.draw(w.x))
	}
	return true
}
