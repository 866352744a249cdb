package timeline

import (
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline/tally"
)

// Ensure that the night of two rods comes out as worked by hand.
func TestBuild(t *testing.T) {
	s := twoRods(t)
	n := build(t, s.log(), setting(larrick()))

	require.Len(t, n.Contacts, 5)
	for i, k := range n.Contacts {
		require.Equal(t, i+1, k.N)
	}
	pools := []string{"Alder Pool", "Alder Pool", "Long Flat", "Sand Bend", "Long Flat"}
	// The follow "during the run" has its middle at 00:17:30, after the pull at 00:10.
	touches := []journal.Touch{journal.Landed, journal.Lost, journal.Landed, journal.Pull, journal.Follow}
	for i, k := range n.Contacts {
		require.Equal(t, pools[i], k.Pool.Name, "contact %d", k.N)
		require.Equal(t, touches[i], k.Touch)
		require.False(t, k.TimeOnly)
	}
	require.Equal(t, Totals{
		Landed: 2, Lost: 1, Touches: 1, Shows: 1, Kept: 1, Returned: 1,
		// Anna 21:30-2:00; Colm from his first run to the end of his last.
		OnBank: 4*time.Hour + 30*time.Minute + 2*time.Hour + 25*time.Minute,
		// Anna 22:35-23:10, 23:30-1:05 less 15 min; Colm 23:25-0:55, 1:10-1:50.
		InWater: (35 + 95 - 15 + 90 + 40) * time.Minute,
		Runs:    4, Blank: 1,
	}, n.Totals)

	colm := n.Rods[1]
	require.Equal(t, 2, colm.Runs[1].Nth, "Anna fished Alder Pool before Colm")
	require.Equal(t, 2*time.Hour, colm.Runs[1].Rest)
	require.Equal(t, 1, colm.Runs[0].Nth)
	require.Equal(t, []string{"A", "C"}, []string{n.Rods[0].Initials, colm.Initials})
	require.Len(t, n.Others, 2)
	require.Len(t, n.Skies, 3)
}

// Ensure that a wrong setting is told and not drawn.
func TestBuildRefuses(t *testing.T) {
	s := twoRods(t)
	kind := func(log *journal.Log, set Setting) journal.Fail {
		n, err := Build(log, set)
		require.Nil(t, n)
		require.Error(t, err)
		return journal.KindOf(err)
	}
	set := setting(larrick())
	set.Beat.Pools = nil
	require.Equal(t, journal.Invalid, kind(s.log(), set), "a beat without a position")

	set = setting(larrick())
	set.Beat.Pools[2].Skyline[0].Altitude = 120
	require.Equal(t, journal.Invalid, kind(s.log(), set))

	s.trip.Rods = s.trip.Rods[:1]
	require.Equal(t, journal.Conflict, kind(s.log(), setting(larrick())), "Colm is no rod")

	s = twoRods(t)
	s.trip.Zone = "Nowhere/Else"
	require.Equal(t, journal.Invalid, kind(s.log(), setting(larrick())))
}

// Ensure that a night without any entry, or any rod, is built all the same.
func TestBuildEmpty(t *testing.T) {
	n := build(t, writeUp(t, "2026-07-04", "Europe/London").log(), setting(larrick()))
	require.Equal(t, Totals{}, n.Totals)
	require.Len(t, n.Pools, 7)
	require.True(t, n.Open.NoCloud)
	n = build(t, writeUp(t, "2026-07-04", "Europe/London", anna).log(), setting(larrick()))
	require.Equal(t, Totals{}, n.Totals)
	require.Equal(t, Totals{}, n.Rods[0].Totals)
}

// randomLog draws a night of one to three rods that the journal would accept.
func randomLog(t *rapid.T, tb testing.TB) *scribe {
	rods := []journal.Rod{anna, colm, {ID: id(1003), Person: id(1103)}}
	s := writeUp(tb, "2026-07-04", "Europe/London", rods[:rapid.IntRange(1, 3).Draw(t, "rods")]...)
	dusk := s.at("21:30")
	minute := func(label string, lo, hi int) time.Time {
		return dusk.Add(time.Duration(rapid.IntRange(lo, hi).Draw(t, label)) * time.Minute)
	}
	moment := func(label string, lo, hi int) journal.When {
		a := minute(label, lo, hi)
		switch rapid.IntRange(0, 3).Draw(t, "kind") {
		case 0:
			return journal.About(a, 0)
		case 1:
			return journal.Between(a, a.Add(time.Duration(rapid.IntRange(0, 90).Draw(t, "spread"))*time.Minute))
		}
		return journal.Exact(a)
	}
	var runs []journal.ID
	for _, rod := range s.trip.Rods {
		from := 0
		for range rapid.IntRange(0, 4).Draw(t, "runs") {
			from += rapid.IntRange(0, 40).Draw(t, "pause")
			to := from + rapid.IntRange(1, 60).Draw(t, "length")
			r := journal.Run{Head: s.head(rod, journal.Exact(dusk.Add(time.Duration(from)*time.Minute))), Pool: id(800 + rapid.IntRange(0, 6).Draw(t, "pool"))}
			if rapid.Bool().Draw(t, "ended") {
				r.Until = journal.Of(journal.Exact(dusk.Add(time.Duration(to) * time.Minute)))
			}
			runs = append(runs, s.add(r))
			from = to
		}
		for range rapid.IntRange(0, 3).Draw(t, "rigs") {
			r := journal.Rig{Head: s.head(rod, moment("rig", 0, 240))}
			for i := range rapid.IntRange(0, 3).Draw(t, "flies") {
				r.Flies = append(r.Flies, journal.Mounted{Position: i, Fly: journal.Of(id(701 + i))})
			}
			s.add(r)
		}
		for range rapid.IntRange(0, 5).Draw(t, "contacts") {
			w := moment("contact", 0, 300)
			if len(runs) > 0 && rapid.IntRange(0, 4).Draw(t, "within") == 0 {
				w = journal.Within(rapid.SampledFrom(runs).Draw(t, "run"))
			}
			s.contact(rod, w, rapid.SampledFrom(journal.Touches).Draw(t, "touch"))
		}
		if rapid.Bool().Draw(t, "rest") {
			s.add(journal.Break{Head: s.head(rod, moment("break", 0, 200))})
		}
	}
	for range rapid.IntRange(0, 3).Draw(t, "skies") {
		s.sky("22:00", rapid.IntRange(0, 8).Draw(t, "cloud"), func(e *journal.Sky) { e.When = moment("sky", -60, 300) })
	}
	return s
}

// Ensure that all counts agree wherever they are taken, that every contact has its
// light, and that the order in which entries are stored changes nothing.
func TestNightHoldsTogether(t *testing.T) {
	set := setting(larrick())
	rapid.Check(t, func(rt *rapid.T) {
		s := randomLog(rt, t)
		n := build(t, s.log(), set)

		var sum Totals
		of := make([]int, len(n.Rods))
		for _, r := range n.Rods {
			sum = sum.Plus(r.Totals)
			if in := tally.Set(r.Water); in.Length() != tally.Union(in...).Length() {
				rt.Fatalf("time in the water counted twice: %v", in)
			}
		}
		if sum != n.Totals || n.Totals.Contacts() != len(n.Contacts) {
			rt.Fatalf("rods come to %+v, the night to %+v with %d contacts", sum, n.Totals, len(n.Contacts))
		}
		for i, k := range n.Contacts {
			of[k.Rod]++
			if k.N != i+1 || i > 0 && k.At.Mid().Before(n.Contacts[i-1].At.Mid()) {
				rt.Fatalf("contact %d is out of order", k.N)
			}
			if !(k.Light.Lo <= k.Light.Lux && k.Light.Lux <= k.Light.Hi && k.Light.Lo > 0) {
				rt.Fatalf("contact %d: light %+v", k.N, k.Light)
			}
			if k.TimeOnly == k.HasPool {
				rt.Fatalf("contact %d: light of the open sky though the pool is known, or the other way", k.N)
			}
			if k.Run >= 0 && n.Rods[k.Rod].Runs[k.Run].Run.Pool != k.Pool.ID {
				rt.Fatalf("contact %d lies in another pool than its run", k.N)
			}
		}
		for i, r := range n.Rods {
			if of[i] != r.Totals.Contacts() {
				rt.Fatalf("rod %d has %d contacts, its totals say %d", i, of[i], r.Totals.Contacts())
			}
		}
		brief, err := Summary(s.log())
		if err != nil || brief.Totals != n.Totals {
			rt.Fatalf("the list says %+v, the night %+v (%v)", brief.Totals, n.Totals, err)
		}
		if n.From.Before(n.Start) || n.To.After(n.End) || !n.From.Before(n.To) {
			rt.Fatalf("window %v to %v", n.From, n.To)
		}

		// Contacts shared out over the bands of light add up to all of them.
		var moments []tally.Moment
		for _, k := range n.Contacts {
			moments = append(moments, tally.Moment(k.At))
		}
		bands := n.Open.Bands(10, 0.3, 0.03, 0.003)
		counted := 0.0
		for _, c := range tally.Expect(moments, bands) {
			counted += c
		}
		if diff := counted - float64(len(n.Contacts)); diff > 1e-9 || diff < -1e-9 {
			rt.Fatalf("%d contacts come to %v over the bands", len(n.Contacts), counted)
		}

		shuffled := s.log()
		seed := rapid.Uint64().Draw(rt, "seed")
		rand.New(rand.NewPCG(seed, 1)).Shuffle(len(s.es), func(i, j int) { s.es[i], s.es[j] = s.es[j], s.es[i] })
		again := build(t, s.log(), set)
		require.Equal(t, shuffled.Sorted(), s.log().Sorted())
		n.Log, again.Log = nil, nil
		require.Equal(t, n, again)
	})
}

// BenchmarkBuild sets a night of two rods, seven pools and fifty entries in its
// light: the cost of one keystroke.
func BenchmarkBuild(b *testing.B) {
	s := twoRods(b)
	for i := 0; len(s.es) < 50; i++ {
		s.contact(colm, journal.Exact(s.at("23:30").Add(time.Duration(i)*3*time.Minute)), journal.Touches[i%6])
	}
	log, set := s.log(), setting(larrick())
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Build(log, set); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSummary counts the same night for a list.
func BenchmarkSummary(b *testing.B) {
	log := twoRods(b).log()
	for b.Loop() {
		if _, err := Summary(log); err != nil {
			b.Fatal(err)
		}
	}
}

// Ensure that a night built for figures has the same light and the same counts as one
// built to be drawn.
func TestBuildForFigures(t *testing.T) {
	for _, b := range []geo.Beat{larrick(), beatAt(65.5, 25, "Europe/Helsinki"), beatAt(-54, -68, "America/Argentina/Ushuaia")} {
		log := twoRods(t).log()
		set := setting(b)
		whole := build(t, log, set)
		set.Figures = true
		n := build(t, log, set)
		require.Equal(t, whole.Totals, n.Totals)
		require.WithinDuration(t, whole.Grey.At, n.Grey.At, time.Second)
		require.Len(t, n.Contacts, len(whole.Contacts))
		for i, k := range n.Contacts {
			w := whole.Contacts[i]
			require.InEpsilon(t, float64(w.Light.Lux), float64(k.Light.Lux), 1e-5)
			require.InEpsilon(t, float64(w.Light.Lo), float64(k.Light.Lo), 1e-5)
			require.Equal(t, w.Rung, k.Rung)
		}
		require.Equal(t, whole.Sky.Sunset, n.Sky.Sunset)
	}
}
