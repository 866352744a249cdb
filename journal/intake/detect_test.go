package intake_test

import (
	"fmt"
	"os"
	"testing"
	"time"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal/intake"
	"gloamline/journal/intaketest"
)

// marks counts how well runs were found over many nights.
type marks struct {
	runs, ends, both, missed, proposed, wrong int
	sure, sureWrong                           int // of those not doubtful
}

func (m marks) endsShare() float64  { return float64(m.ends) / float64(2*m.runs) }
func (m marks) wrongShare() float64 { return float64(m.wrong) / float64(max(1, m.proposed)) }

func (m marks) String() string {
	return fmt.Sprintf("%d runs: %.1f %% of ends within 3 min, %.1f %% of runs with both, %d missed; %d found, %d at a pool not fished then (%.1f %%), %d of them not marked doubtful",
		m.runs, 100*m.endsShare(), 100*float64(m.both)/float64(m.runs), m.missed, m.proposed, m.wrong, 100*m.wrongShare(), m.sureWrong)
}

// judge compares what was found with the truth: a run counts as found by the one at its
// pool that shares most time with it, at least half of the shorter of the two.
func (m *marks) judge(n intaketest.Night, got []intake.Visit) {
	used := map[int]bool{}
	for _, r := range n.Runs {
		best, most := -1, time.Duration(0)
		for i, v := range got {
			lo, hi := v.From, v.To
			if r.From.After(lo) {
				lo = r.From
			}
			if r.To.Before(hi) {
				hi = r.To
			}
			if d := hi.Sub(lo); v.Pool == r.Pool && !used[i] && d > most && 2*d > min(v.To.Sub(v.From), r.To.Sub(r.From)) {
				best, most = i, d
			}
		}
		m.runs++
		if best < 0 {
			m.missed++
			continue
		}
		used[best] = true
		near := 0
		for _, off := range []time.Duration{got[best].From.Sub(r.From), got[best].To.Sub(r.To)} {
			if off.Abs() <= 3*time.Minute {
				near++
			}
		}
		m.ends += near
		m.both += near / 2
	}
	for i, v := range got {
		m.proposed++
		if !used[i] {
			m.wrong++
		}
		if v.Confidence >= intake.Doubtful {
			m.sure++
			if !used[i] {
				m.sureWrong++
			}
		}
	}
}

func marksOf(seeds []uint64, p intaketest.Params, thin func([]intake.Fix) []intake.Fix) (m marks) {
	for _, seed := range seeds {
		n := intaketest.Walk(seed, p)
		fixes := n.Fixes
		if thin != nil {
			fixes = thin(fixes)
		}
		m.judge(n, intake.Visits(n.Beat.Layout(), fixes, intake.Usual()))
	}
	return m
}

// Ensure that on nights kept for the check at least 90 % of the ends of runs come out
// within 3 minutes, and at most 1 % of the runs found are at a pool not fished then.
func TestCheckNights(t *testing.T) {
	if testing.Short() {
		t.Skip("minutes under the race detector")
	}
	t.Parallel()
	m := marksOf(intaketest.CheckSeeds(), intaketest.Common(), nil)
	t.Log(m)
	assert.Greater(t, m.runs, 600)
	assert.GreaterOrEqual(t, m.endsShare(), 0.9)
	assert.LessOrEqual(t, m.wrongShare(), 0.01)
}

// Ensure that the tuning nights still give what they gave when the settings were settled.
func TestTuningNights(t *testing.T) {
	seeds := intaketest.TuneSeeds()
	if os.Getenv("ALL") == "" {
		seeds = seeds[:15]
	}
	m := marksOf(seeds, intaketest.Common(), nil)
	t.Log(m)
	assert.GreaterOrEqual(t, m.endsShare(), 0.88)
}

// Ensure that where people wait, sit and watch at the water, which no track tells from
// fishing, runs are still found, if too long, and hardly any is made up.
func TestHardNights(t *testing.T) {
	m := marksOf(intaketest.TuneSeeds()[:30], intaketest.Hard(), nil)
	t.Log(m)
	assert.GreaterOrEqual(t, m.endsShare(), 0.7)
	assert.LessOrEqual(t, m.wrongShare(), 0.03)
	assert.LessOrEqual(t, m.missed, m.runs/50)
}

// Ensure that a device that records every minute only still shows the runs.
func TestSparseTracks(t *testing.T) {
	every := func(d time.Duration) func([]intake.Fix) []intake.Fix {
		return func(in []intake.Fix) (out []intake.Fix) {
			for _, f := range in {
				if n := len(out); n == 0 || f.At.Sub(out[n-1].At) >= d {
					out = append(out, f)
				}
			}
			return out
		}
	}
	for name, thin := range map[string]func([]intake.Fix) []intake.Fix{"every 15 s": every(15 * time.Second), "every minute": every(time.Minute)} {
		m := marksOf(intaketest.TuneSeeds()[:20], intaketest.Common(), thin)
		t.Log(name, m)
		assert.GreaterOrEqual(t, m.endsShare(), 0.8, name)
		assert.LessOrEqual(t, m.wrongShare(), 0.03, name)
	}
}

// square is a beat of square pools of 40 m, south of each other.
func square(at ...geo.Place) geo.Beat {
	b := geo.Beat{Name: "Home Beat"}
	for i, p := range at {
		pl := geo.NewPlane(p)
		ring := orb.Ring{}
		for _, c := range []geo.Point{{X: -20, Y: 20}, {X: 20, Y: 20}, {X: 20, Y: -20}, {X: -20, Y: -20}, {X: -20, Y: 20}} {
			ring = append(ring, pl.Place(c).LonLat())
		}
		b.Pools = append(b.Pools, geo.Pool{ID: geo.ID{byte(i + 1)}, Name: fmt.Sprintf("Pool %d", i+1), Order: i + 1, Outline: orb.Polygon{ring}})
	}
	return b
}

// Ensure that the two stays of night_track.gpx, five minutes between positions and one of
// them 5.56 km off, come out as two runs whose ends lie within a step of the recording, and
// that they are marked doubtful, since nobody went down a pool.
func TestTwoStays(t *testing.T) {
	l := square(geo.Place{Lat: 52.1, Lon: -4.2}, geo.Place{Lat: 52.0985, Lon: -4.1994}).Layout()
	f := read(t, invented(t, "night_track.gpx"), intake.ReadOptions{})
	got := intake.Visits(l, f.Fixes, intake.Usual())
	require.Len(t, got, 2)
	for i, want := range [][2]string{{"22:30", "23:15"}, {"23:30", "01:00"}} {
		for k, at := range []time.Time{got[i].From, got[i].To} {
			w, err := time.Parse("15:04", want[k])
			require.NoError(t, err)
			w = time.Date(2025, 7, 14, w.Hour(), w.Minute(), 0, 0, time.UTC)
			if w.Hour() < 12 {
				w = w.AddDate(0, 0, 1)
			}
			assert.LessOrEqual(t, at.Sub(w).Abs(), 5*time.Minute, "%v %s", at, want[k])
		}
		assert.Equal(t, geo.ID{byte(i + 1)}, got[i].Pool)
		assert.True(t, got[i].Stood)
		assert.Less(t, got[i].Confidence, intake.Doubtful)
		assert.Equal(t, 1, got[i].Nth)
	}
}

// Ensure that nothing, one position, or a beat without outlines gives no run.
func TestNoVisits(t *testing.T) {
	l := square(geo.Place{Lat: 52.1, Lon: -4.2}).Layout()
	assert.Empty(t, intake.Visits(l, nil, intake.Usual()))
	assert.Empty(t, intake.Visits(l, []intake.Fix{{At: time.Unix(0, 0), Place: geo.Place{Lat: 52.1, Lon: -4.2}}}, intake.Usual()))
	assert.Empty(t, intake.Visits(geo.Beat{}.Layout(), []intake.Fix{{}}, intake.Usual()))
}

// Eight hours at one a second, 28,800 positions, on a beat of up to seven pools.
func BenchmarkVisits(b *testing.B) {
	n := intaketest.Walk(1, intaketest.Common())
	l := n.Beat.Layout()
	b.ReportAllocs()
	for b.Loop() {
		if len(intake.Visits(l, n.Fixes, intake.Usual())) == 0 {
			b.Fatal("no run")
		}
	}
}
