package season

import (
	"encoding/json"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline/tally"
)

func demoNights(t testing.TB) Nights {
	n, err := NewBook(demoJournal(t)).Read(nil)
	require.NoError(t, err)
	return n
}

func sum(t *Table) (hours, fish float64, chain Chain) {
	for _, r := range t.Rows {
		hours, fish = hours+r.Hours, fish+r.Fish
		chain = chain.plus(r.Chain)
	}
	return hours, fish, chain
}

// Ensure that every table that leaves nothing out adds up to the season, and the season
// to its nights.
func TestTablesAddUp(t *testing.T) {
	for _, m := range Measures {
		s := Fold(demoNights(t), View{Measure: m})
		assert.InDelta(t, s.Totals.InWater.Hours(), s.Hours, 1e-6)
		assert.Equal(t, float64(s.Totals.Contacts()), s.Chain.of(AllContacts))
		for _, name := range []string{"light", "pools", "pools_light", "pools_trend", "pools_runs", "rest", "second_run", "clients", "clock"} {
			hours, fish, chain := sum(s.Table(name))
			assert.InDelta(t, s.Hours, hours, 1e-6, name)
			assert.InDelta(t, s.Fish-float64(s.Placed.NoRun), fish, 1e-6, name)
			assert.InDelta(t, float64(s.Totals.Landed), chain.Landed, 1, name) // less what came outside runs
		}
		for _, name := range []string{"since_grey", "moon", "trend", "temperature", "length", "surface", "planned"} {
			tb := s.Table(name)
			hours, fish, _ := sum(tb)
			assert.InDelta(t, s.Fish, fish+tb.Apart+tb.NoHours, 1e-6, "%s: a fish is in a row, or told apart", name)
			if tb.Per == "rod-hours" {
				assert.LessOrEqual(t, hours, s.Hours+1e-6, name)
			}
		}
		nights, hours := 0, 0.0
		for _, r := range s.List {
			nights++
			hours += r.Hours
		}
		assert.Equal(t, s.Nights, nights)
		assert.InDelta(t, s.Hours, hours, 1e-9)
		var runs, pools = 0, 0.0
		for _, p := range s.Pools {
			runs += p.Runs
			pools += p.First.Hours + p.Later.Hours
		}
		assert.Equal(t, s.Runs, runs)
		assert.InDelta(t, s.Hours, pools, 1e-6)
	}
}

// Ensure that parts of the nights add up to all of them, whichever way they are parted.
func TestFiltersPart(t *testing.T) {
	n := demoNights(t)
	all := Fold(n, View{})
	beats, people := map[journal.ID]bool{}, map[journal.ID]bool{}
	for _, d := range n.Digests {
		beats[d.Beat] = true
		for _, r := range d.Rods {
			people[r.Person] = true
		}
	}
	parts := map[string][]Filter{
		"clients": {{Clients: ClientNights}, {Clients: OwnNights}},
		"dates":   {{To: journal.Date{Year: 2025, Month: time.December, Day: 31}}, {From: journal.Date{Year: 2026, Month: time.January, Day: 1}}},
		"trends":  {{Trends: []journal.Trend{""}}},
	}
	for b := range beats {
		parts["beats"] = append(parts["beats"], Filter{Beats: []journal.ID{b}})
	}
	for p := range people {
		parts["people"] = append(parts["people"], Filter{People: []journal.ID{p}})
	}
	for m := time.January; m <= time.December; m++ {
		parts["months"] = append(parts["months"], Filter{Months: []time.Month{m}})
	}
	for _, r := range journal.Trends {
		parts["trends"] = append(parts["trends"], Filter{Trends: []journal.Trend{r}})
	}
	for name, list := range parts {
		var hours, fish float64
		nights := 0
		for _, f := range list {
			s := Fold(n, View{Filter: f})
			hours, fish, nights = hours+s.Hours, fish+s.Fish, nights+s.Nights
		}
		assert.InDelta(t, all.Hours, hours, 1e-6, name)
		assert.InDelta(t, all.Fish, fish, 1e-9, name)
		if name != "people" { // two rods share a night
			assert.Equal(t, all.Nights, nights, name)
		}
	}
	none := Fold(n, View{Filter: Filter{Months: []time.Month{time.January}}})
	assert.Zero(t, none.Nights)
	assert.Len(t, none.Settle().Cards, 26)
}

// Ensure that each filter reaches every card: what is let through comes to the same, table by table,
// tests and what is missing too, as nights of which nothing else was ever written.
func TestFiltersReachEveryCard(t *testing.T) {
	n := demoNights(t)
	first := n.Digests[0]
	for name, f := range map[string]Filter{
		"months": {Months: []time.Month{time.July, time.August}}, "beat": {Beats: []journal.ID{first.Beat}}, "person": {People: []journal.ID{first.Rods[0].Person}},
		"trend": {Trends: []journal.Trend{"normal", ""}}, "client nights": {Clients: ClientNights}, "no clients": {Clients: OwnNights},
		"evenings": {From: journal.Date{Year: 2025, Month: time.July, Day: 10}, To: journal.Date{Year: 2026, Month: time.July, Day: 4}}, "years": {Years: []int{2026}},
	} {
		alone := Nights{Rules: n.Rules, Floods: n.Floods}
		for _, d := range n.Digests {
			if !f.Takes(d) {
				continue
			}
			c := *d
			c.sheet, c.Rods = nil, nil
			for _, r := range d.Rods {
				if f.takesRod(&r) {
					c.Rods = append(c.Rods, r)
				}
			}
			alone.Digests = append(alone.Digests, &c)
		}
		got, want := Fold(n, View{Filter: f}).Settle(), Fold(alone, View{}).Settle()
		require.Less(t, got.Hours, Fold(n, View{}).Hours, name)
		require.Equal(t, len(want.Tables), len(got.Tables), name)
		for i, c := range want.Cards {
			assert.Equal(t, c.Figures, got.Cards[i].Figures, "%s, question %d", name, c.N)
			assert.Equal(t, c.Missing, got.Cards[i].Missing, "%s, question %d", name, c.N)
			assert.Equal(t, c.Verdict, got.Cards[i].Verdict, "%s, question %d", name, c.N)
		}
		for i, w := range want.Tables {
			g := got.Tables[i]
			if w.Name == "rods_on_pool" && name == "person" {
				continue // which counts whoever fished
			}
			assert.Equal(t, told(w.Rows), told(g.Rows), "%s: %s", name, w.Name)
			assert.Equal(t, w.Test, g.Test, "%s: %s", name, w.Name)
		}
		assert.Equal(t, want.ClockOrLight, got.ClockOrLight, name)
	}
}

// told leaves out rows in which nothing is: pools that others fished.
func told(rows []Row) (out []Row) {
	for _, r := range rows {
		if r.Hours > 0 || r.Fish > 0 || r.Of > 0 {
			out = append(out, r)
		}
	}
	return out
}

// Ensure that settling answers every question, comes to the same each time, leaves the
// first season alone and changes no hours; and that all of it can be written as JSON.
func TestSettle(t *testing.T) {
	n := demoNights(t)
	s := Fold(n, View{})
	before, err := json.Marshal(s)
	require.NoError(t, err)
	a, b := s.Settle(), s.Settle()
	after, _ := json.Marshal(s)
	assert.Equal(t, string(before), string(after))
	ja, err := json.Marshal(a)
	require.NoError(t, err)
	jb, _ := json.Marshal(b)
	assert.Equal(t, string(ja), string(jb))
	require.Len(t, a.Cards, 26)
	for i, c := range a.Cards {
		assert.Equal(t, i+1, c.N)
		assert.NotEqual(t, Open, c.Verdict, "question %d", c.N)
		assert.NotEmpty(t, c.Verdict)
	}
	for _, tb := range a.Tables {
		assert.NotEqual(t, Open, tb.Verdict, tb.Name)
		was := s.Table(tb.Name)
		require.NotNil(t, was, tb.Name)
		for i := range tb.Rows {
			assert.InDelta(t, was.Rows[i].Hours, tb.Rows[i].Hours, 1e-9)
			if tb.Name != "alike_foretold" { // which waits for it
				assert.InDelta(t, was.Rows[i].Fish, tb.Rows[i].Fish, 1e-9)
			}
		}
		if tb.Test != nil {
			assert.GreaterOrEqual(t, tb.Test.Holm, tb.Test.P)
			assert.GreaterOrEqual(t, tb.Test.Statistic, -1e-9, tb.Name)
		}
	}
}

// Ensure that no rate is shown for a row that has not enough, but for how much a blank may
// have missed.
func TestNoRateWithoutEnough(t *testing.T) {
	s := Fold(demoNights(t), View{}).Settle()
	thin := 0
	for _, tb := range s.Tables {
		for _, r := range tb.Rows {
			if tb.Kind != Rates {
				continue
			}
			enough := r.Hours >= 5 && r.Nights >= 3
			assert.Equal(t, enough, r.Enough, "%s %s", tb.Name, r.Code)
			assert.Equal(t, enough, r.Rate != nil)
			if !enough {
				thin++
				assert.Nil(t, r.Nightly)
				assert.Equal(t, r.Fish == 0 && r.Hours > 0, r.Most != nil)
			}
		}
		if tb.Test != nil && tb.Kind == Rates {
			rows, ok := tb.enough()
			assert.True(t, ok)
			assert.Len(t, rows, tb.Test.Rows)
		}
	}
	assert.Positive(t, thin)
}

// made returns invented nights with one rod, one pool a band, and fish as told: hours and
// fish of each night by band.
func made(hours, fish [][Bands]float64) []*Digest {
	var out []*Digest
	for i := range hours {
		d := &Digest{Trip: journal.NewID(), Evening: journal.Date{Year: 2026, Month: time.June, Day: 1}.Add(i), Beat: journal.ID{1}, BeatName: "Home Beat"}
		d.Facts.TempC, d.Facts.LevelM = math.NaN(), math.NaN()
		r := RodDigest{Person: journal.ID{2}}
		for b := range Bands {
			r.Runs = append(r.Runs, RunDigest{Pool: journal.ID{3, byte(b)}, Name: "Pool", Nth: 1, Local: b})
			if hours[i][b] == 0 {
				continue
			}
			r.Cells = append(r.Cells, Cell{Run: int16(b), Rig: -1, Way: -1, Band: Band(b), Night: b >= int(AtGrey), Hours: hours[i][b]})
			r.Hours += hours[i][b]
			r.Clock = append(r.Clock, Bin{int16(40 + b), hours[i][b]})
			r.Dark = append(r.Dark, Bin{int16(10 * b), hours[i][b]})
			for range int(fish[i][b]) {
				r.Fish = append(r.Fish, Fish{
					Touch: journal.Landed, rank: rank(journal.Landed), Run: b, HasPool: true,
					Fly: FlyDigest{LengthMM: math.NaN()}, Length: math.NaN(), Weight: math.NaN(),
					In:    []Part{{int32(len(r.Cells) - 1), 1}},
					Clock: []Bin{{int16(40 + b), 1}}, Dark: []Bin{{int16(10 * b), 1}},
				})
			}
		}
		d.Rods = []RodDigest{r}
		out = append(out, d)
	}
	return out
}

func repeat(n int, v [Bands]float64) [][Bands]float64 {
	out := make([][Bands]float64, n)
	for i := range out {
		out[i] = v
	}
	return out
}

// Ensure that a strong difference inside nights is said, that too few hours come first,
// and that an even one is not.
func TestVerdicts(t *testing.T) {
	hours := repeat(14, [Bands]float64{0, 0, 1, 1, 1, 0})
	say := func(fish [Bands]float64, nights int) *Table {
		return Fold(Nights{Digests: made(hours[:nights], repeat(nights, fish))}, View{}).Settle().Table("light")
	}
	strong := say([Bands]float64{2: 0, 3: 3, 4: 0}, 14)
	assert.Equal(t, Differs, strong.Verdict)
	assert.Equal(t, 3, strong.Test.Rows)
	require.Len(t, strong.Pairs, 3)
	assert.Equal(t, "1x_10x", strong.Pairs[0].A)
	assert.Less(t, strong.Pairs[0].Holm, .001)
	assert.Equal(t, 3, strong.Pairs[0].Looked)
	assert.Equal(t, NoneSeen, say([Bands]float64{2: 1, 3: 1, 4: 1}, 14).Verdict)
	assert.Equal(t, NotEnough, say([Bands]float64{3: 3}, 4).Verdict, "4 h a row")
	few := made(hours, repeat(14, [Bands]float64{}))
	copy(few, made(hours[:3], repeat(3, [Bands]float64{3: 3})))
	assert.Equal(t, NotEnough, Fold(Nights{Digests: few}, View{}).Settle().Table("light").Verdict, "9 fish")

	// One great night is no finding: everything of it fell into one band.
	great := made(hours, repeat(14, [Bands]float64{}))
	great[0] = made([][Bands]float64{{3: 3}}, [][Bands]float64{{3: 20}})[0]
	assert.Equal(t, NoneSeen, Fold(Nights{Digests: great}, View{}).Settle().Table("light").Verdict)
}

// Ensure that only what stands after Holm's correction is called a difference, what is
// small by itself an idea, and that each says how many were looked at: of 0.01, 0.04, 0.03 and
// 0.5 the corrected ones are 0.04, 0.09, 0.09 and 0.5.
func TestSpeak(t *testing.T) {
	var list []*Table
	for _, p := range []float64{.01, .04, .03, .5} {
		list = append(list, &Table{Test: &Test{Test: tally.Test{P: p}}})
	}
	quiet := &Table{Verdict: NotEnough}
	speak(append(list, quiet))
	for i, want := range []struct {
		v Verdict
		p float64
	}{{Differs, .04}, {Idea, .09}, {Idea, .09}, {NoneSeen, .5}} {
		assert.Equal(t, want.v, list[i].Verdict)
		assert.InDelta(t, want.p, list[i].Test.Holm, 1e-12)
		assert.Equal(t, 4, list[i].Test.Looked)
	}
	assert.Equal(t, NotEnough, quiet.Verdict)
	assert.Nil(t, quiet.Test)
}

// Ensure that clock and light are told apart where they can be, and not where they go
// together.
func TestClockOrLight(t *testing.T) {
	// Light and clock run together: every night alike.
	hours := repeat(14, [Bands]float64{1, 1, 1, 1, 1, 0})
	s := Fold(Nights{Digests: made(hours, repeat(14, [Bands]float64{3: 3}))}, View{}).Settle()
	assert.Equal(t, Inseparable, s.ClockOrLight.Verdict)
	assert.InDelta(t, 0, s.ClockOrLight.Difference, 1e-6)

	// The clock is shifted from night to night, the fish keep to the light.
	shifted := made(hours, repeat(14, [Bands]float64{3: 3}))
	for i, d := range shifted {
		move := func(list []Bin) {
			for k := range list {
				list[k].I = (list[k].I-40+int16(i))%5 + 40
			}
		}
		move(d.Rods[0].Clock)
		for k := range d.Rods[0].Fish {
			move(d.Rods[0].Fish[k].Clock)
		}
	}
	s = Fold(Nights{Digests: shifted}, View{}).Settle()
	assert.Equal(t, "light", s.ClockOrLight.Winner)
	assert.Equal(t, Differs, s.ClockOrLight.Verdict)
	assert.Greater(t, s.ClockOrLight.Interval.Lo, 0.0)
	// And the other way round.
	for _, d := range shifted {
		r := &d.Rods[0]
		r.Clock, r.Dark = r.Dark, r.Clock
		for k := range r.Fish {
			r.Fish[k].Clock, r.Fish[k].Dark = r.Fish[k].Dark, r.Fish[k].Clock
		}
	}
	s = Fold(Nights{Digests: shifted}, View{}).Settle()
	assert.Equal(t, "clock", s.ClockOrLight.Winner)

	assert.Equal(t, NotEnough, Fold(Nights{Digests: shifted[:7]}, View{}).Settle().ClockOrLight.Verdict, "seven nights")
}
