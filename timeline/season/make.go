package season

import (
	"math"
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/timeline/tally"
)

// wide is from how long a spread on a fish's time counts as wide.
const wide = 30 * time.Minute

// DigestOf boils a night down. The edges of light in lux, other than those of the bands,
// are what house rules name.
func DigestOf(n *timeline.Night, extra []float64) *Digest { return new(knife).digest(n, extra) }

func (k *knife) digest(n *timeline.Night, extra []float64) *Digest {
	k.wipe()
	trip := n.Log.Trip
	d := &Digest{
		Trip: trip.ID, Evening: trip.Evening, Beat: trip.Beat,
		BeatName: n.Beat.Name, River: n.Beat.River.Name,
		Grey: n.Grey.Threshold, Edges: edges(float64(n.Grey.Threshold.Lux), extra),
		Totals: n.Totals,
	}
	d.facts(n)
	for _, e := range n.Others {
		if p, ok := e.Entry.(journal.Plan); ok {
			if id, ok := p.Pool.Get(); ok && !slices.Contains(d.Planned, id) {
				d.Planned = append(d.Planned, id)
			}
		}
	}
	for i := range n.Rods {
		d.Rods = append(d.Rods, d.rod(n, i, k))
		for _, r := range n.Rods[i].Runs {
			if at := r.From.Mid(); d.Fished.IsZero() || at.Before(d.Fished) {
				d.Fished = at
			}
		}
	}
	d.Began = math.NaN()
	if !d.Fished.IsZero() {
		d.Began = math.Log10(math.Max(float64(n.Open.At(d.Fished).Lux), 1e-9))
	}
	d.again()
	d.greyLogs(n)
	d.gaps(n)
	return d
}

func (d *Digest) rod(n *timeline.Night, i int, knife *knife) RodDigest {
	r := &n.Rods[i]
	out := RodDigest{Person: r.Rod.Person, Name: r.Name, Client: r.Rod.Client, Totals: r.Totals}
	for _, run := range r.Runs {
		local := slices.Index(d.pools, run.Run.Pool)
		if local < 0 {
			local = len(d.pools)
			d.pools = append(d.pools, run.Run.Pool)
		}
		out.Runs = append(out.Runs, RunDigest{
			Pool: run.Run.Pool, Name: poolName(run.Pool), Order: run.Pool.Order, Local: local, Nth: run.Nth, Rest: run.Rest, Bank: run.Run.Bank.Or(""),
			Planned: slices.Contains(d.Planned, run.Run.Pool),
		})
	}
	for _, s := range r.Rigs {
		rig := RigDigest{Surface: s.Rig.Surface}
		for _, f := range s.Flies {
			if !f.Fly.IsZero() {
				rig.Flies = append(rig.Flies, flyOf(f))
			}
		}
		out.Rigs = append(out.Rigs, rig)
	}
	for _, w := range r.Ways {
		out.Ways = append(out.Ways, WayDigest{w.Way.Speed.Or(""), w.Way.Depth.Or("")})
	}
	c := newCutter(n, r, d, &out, knife)
	on := waters(r)
	c.spend(on)
	for _, k := range n.Contacts {
		if k.Rod != i {
			continue
		}
		f := fishOf(k)
		if rig := r.RigAt(k.At.Mid()); rig != nil {
			f.FliesUp = len(rig.Flies)
		}
		c.place(&f, on)
		if f.Run >= 0 {
			out.Runs[f.Run].Touched = true
		}
		out.Fish = append(out.Fish, f)
	}
	out.Waits = waits(r, out.Fish)
	return out
}

func number(v float64, ok bool) float64 {
	if ok {
		return v
	}
	return math.NaN()
}

func answer(known, yes bool) Answer {
	switch {
	case !known:
		return Unknown
	case yes:
		return Yes
	}
	return No
}

func flyOf(f timeline.FlyOn) FlyDigest {
	l, ok := f.Dress.Length.Get()
	hot := answer(!f.Dress.HotSpot.IsZero(), f.Dress.HotSpot.Known())
	return FlyDigest{
		Position: f.Position, Fly: f.Fly, LengthMM: number(float64(l.M)*1000, ok),
		Silhouette: f.Dress.Silhouette.Or(""), Tone: f.Dress.Tone.Or(""), HotSpot: hot,
		Hook: f.Dress.Hook.Or(""), Surface: f.Dress.Built.Or("") == "surface",
	}
}

func fishOf(k timeline.Contact) Fish {
	f := Fish{
		ID: k.ID, N: k.N, Touch: k.Touch, rank: rank(k.Touch), At: k.At, Run: k.Run,
		Pool: k.Pool.ID, PoolName: poolName(k.Pool), HasPool: k.HasPool,
		Fly: flyOf(k.Fly), HasFly: k.HasFly, Light: k.Light, Darker: k.Darker,
		ByEye: k.ByEye || k.Estimated, Class: k.Class.Or(""), Hooked: k.HookPlace.Or(""),
		Part: k.Part.Or(""), Fate: k.Fate.Or(""), Lice: answer(k.Lice.Known(), k.Lice.Or(false)),
	}
	l, okL := k.Length.Get()
	w, okW := k.Weight.Get()
	f.Length, f.Weight = number(float64(l.M), okL), number(float64(w.G), okW)
	return f
}

func (d *Digest) facts(n *timeline.Night) {
	f := Facts{LevelM: math.NaN(), TempC: math.NaN(), Cloud: -1, Wind: -1, Guided: n.Guide != "", GreySeen: !n.Grey.At.IsZero()}
	for _, w := range n.Waters {
		if t, ok := w.Entry.Trend.Get(); ok && f.Trend == "" {
			f.Trend = t
		}
		if c, ok := w.Entry.Clarity.Get(); ok && f.Clarity == "" {
			f.Clarity = c
		}
		if l, ok := w.Entry.Level.Get(); ok && math.IsNaN(f.LevelM) {
			f.LevelM = float64(l.M)
		}
		if t, ok := w.Entry.Temp.Get(); ok && math.IsNaN(f.TempC) {
			f.TempC = float64(t.C)
		}
	}
	for _, s := range n.Skies {
		if c, ok := s.Entry.Cloud.Get(); ok && f.Cloud < 0 {
			f.Cloud = c
		}
	}
	for _, o := range n.Others {
		switch e := o.Entry.(type) {
		case journal.Weather:
			if w, ok := e.Wind.Get(); ok && f.Wind < 0 {
				f.Wind = w
			}
		case journal.End:
			if w, ok := e.Why.Get(); ok {
				f.EndWhy = w
			}
		}
	}
	for _, r := range n.Rods {
		if r.Rod.Client {
			f.Clients++
		}
	}
	d.Facts = f
}

func (d *Digest) gaps(n *timeline.Night) {
	for i := range d.Rods {
		d.Rods[i].Gaps = gapsOf(&d.Rods[i], &n.Rods[i])
	}
	d.Gaps = Gaps{
		NoTrend: d.Facts.Trend == "", NoTemp: math.IsNaN(d.Facts.TempC), NoSky: d.Facts.Cloud < 0, NoEnd: d.Facts.EndWhy == "",
		NoLevel: math.IsNaN(d.Facts.LevelM),
	}
}

// gapsOf counts what is missing of one rod.
func gapsOf(r *RodDigest, n *timeline.RodNight) (g Gaps) {
	for _, run := range n.Runs {
		g.Runs++
		if !run.Run.Until.Known() {
			g.RunsOpen++
		}
	}
	g.RodHours = r.Hours
	for _, c := range r.Cells {
		if c.Rig < 0 || len(r.Rigs[c.Rig].Flies) == 0 {
			g.NoRigHours += c.Hours
		}
		if c.Way < 0 || r.Ways[c.Way].Speed == "" {
			g.NoWayHours += c.Hours
		}
	}
	for _, f := range r.Fish {
		g.Fish++
		if !f.HasFly {
			g.FishNoFly++
		}
		if !f.HasPool {
			g.FishNoPool++
		}
		if len(f.In) == 0 {
			g.FishNoRun++
		}
		if f.At.Hi.Sub(f.At.Lo) >= wide {
			g.FishWide++
		}
		if f.Touch == journal.Landed {
			g.Hooked++
			if math.IsNaN(f.Length) && math.IsNaN(f.Weight) {
				g.NoSize++
			}
		}
	}
	return g
}

// greyLogs keeps each logged moment of trees going grey with the light of the open sky,
// and with that of the pool which the rod who logged it, or else the only one on a pool,
// was fishing.
func (d *Digest) greyLogs(n *timeline.Night) {
	noted := false
	for _, s := range n.Skies {
		noted = noted || s.Entry.Cloud.Known() || s.Entry.Cloud.IsNone() || s.Entry.CloudKind.Known()
	}
	for _, s := range n.Skies {
		if !s.Entry.TreesGrey {
			continue
		}
		at := s.At.Mid()
		log := GreyLog{At: at, Lux: float64(n.Open.At(at).Lux), CloudNoted: noted}
		var on []*timeline.RunSpan
		for i := range n.Rods {
			if r := n.Rods[i].RunAt(at); r != nil && (s.Entry.Rod.IsZero() || s.Entry.Rod == n.Rods[i].Rod.ID) {
				on = append(on, r)
			}
		}
		if len(on) == 1 {
			if p, ok := n.PoolNight(on[0].Run.Pool); ok {
				log.Pool, log.PoolName, log.PoolLux = p.Pool.ID, p.Pool.Name, float64(p.Curve.At(at).Lux)
			}
		}
		d.Logged = append(d.Logged, log)
	}
}

// A while without response, and soon: both of fishing time. Common practice, without a
// source.
const (
	quiet = 20 * time.Minute
	soon  = 20 * time.Minute
)

// waits lists what a rod did after a quiet while: a change of speed, of size, or, every
// further quiet while without either, that it carried on; and whether a contact came soon.
// Only time with a fly in the water counts. Uncertain moments count at their middle.
func waits(r *timeline.RodNight, fish []Fish) []Wait {
	var touched []time.Time
	for _, f := range fish {
		touched = append(touched, f.At.Mid())
	}
	water := tally.Set(r.Water)
	fished := func(a, b time.Time) time.Duration {
		return water.Intersect(tally.Union(tally.Stretch{From: a, To: b})).Length()
	}
	lastTouch := func(t time.Time) time.Time {
		out := time.Time{}
		for _, k := range touched {
			if !k.After(t) && k.After(out) {
				out = k
			}
		}
		return out
	}
	answered := func(t time.Time) bool {
		return slices.ContainsFunc(touched, func(k time.Time) bool { return k.After(t) && fished(t, k) <= soon })
	}
	type change struct {
		at   time.Time
		kind string
	}
	var changes []change
	for i := 1; i < len(r.Ways); i++ {
		a, okA := r.Ways[i-1].Way.Speed.Get()
		b, okB := r.Ways[i].Way.Speed.Get()
		if okA && okB && a != b {
			changes = append(changes, change{r.Ways[i].From.Mid(), "speed"})
		}
	}
	for i := 1; i < len(r.Rigs); i++ {
		if longest(r.Rigs[i-1]) != longest(r.Rigs[i]) && longest(r.Rigs[i-1]) > 0 && longest(r.Rigs[i]) > 0 {
			changes = append(changes, change{r.Rigs[i].From.Mid(), "size"})
		}
	}
	slices.SortFunc(changes, func(a, b change) int { return a.at.Compare(b.at) })
	var out []Wait
	for i, k := range changes {
		mixed := i > 0 && k.at.Sub(changes[i-1].at) < soon && changes[i-1].kind != k.kind ||
			i+1 < len(changes) && changes[i+1].at.Sub(k.at) < soon && changes[i+1].kind != k.kind
		from := lastTouch(k.at)
		if mixed || fished(from, k.at) < quiet || fished(k.at, k.at.Add(24*time.Hour)) < soon {
			continue
		}
		out = append(out, Wait{k.kind, answered(k.at)})
	}
	// The control: quiet whiles that ended without a change before the next 20 minutes.
	for _, s := range water {
		for t := s.From; ; {
			t = t.Add(quiet)
			if !t.Before(s.To) || s.To.Sub(t) < soon {
				break
			}
			near := slices.ContainsFunc(changes, func(k change) bool { return k.at.After(t.Add(-quiet)) && k.at.Before(t.Add(soon)) })
			if !near && fished(lastTouch(t), t) >= quiet {
				out = append(out, Wait{"carried on", answered(t)})
			}
		}
	}
	return out
}

func longest(s timeline.RigSpan) float64 {
	most := 0.0
	for _, f := range s.Flies {
		if l, ok := f.Dress.Length.Get(); ok {
			most = math.Max(most, float64(l.M))
		}
	}
	return most
}
