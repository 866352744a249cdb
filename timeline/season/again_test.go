package season

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a later run is told from the one before it in its pool, whichever rod that was, by
// what each had for most of its hours; and that what is not known is not called the same.
func TestAgain(t *testing.T) {
	fly := func(id byte, mm float64) FlyDigest { return FlyDigest{Fly: journal.ID{id}, LengthMM: mm} }
	rigs := []RigDigest{{Flies: []FlyDigest{fly(1, 25)}}, {Flies: []FlyDigest{fly(2, 25.4)}}, {Flies: []FlyDigest{fly(3, 50)}}, {Flies: []FlyDigest{fly(4, math.NaN())}}, {}}
	ways := []WayDigest{{"dead drift", "deep"}, {"fast strip", "deep"}, {"dead drift", "surface"}, {"", "deep"}}
	for _, x := range []struct {
		rig, way, rigNow, wayNow int16
		want                     Again
	}{
		{0, 0, 0, 0, FliesKnown | SpeedKnown | DepthKnown},
		{0, 0, 1, 1, FliesKnown | OtherFlies | SpeedKnown | OtherSpeed | DepthKnown},
		{0, 0, 2, 2, FliesKnown | OtherFlies | OtherSize | SpeedKnown | DepthKnown | OtherDepth},
		{0, 0, 3, 3, FliesKnown | OtherFlies | DepthKnown}, // its length is not known, so nor is whether it is another
		{0, 0, 4, -1, 0},
		{-1, 3, 0, 0, DepthKnown},
	} {
		d := &Digest{Rods: []RodDigest{
			{Runs: []RunDigest{{Pool: journal.ID{7}, Nth: 1}}, Rigs: rigs, Ways: ways,
				Cells: []Cell{{Rig: x.rig, Way: x.way, Hours: 1}, {Rig: 2, Way: 1, Hours: 0.4}}},
			{Runs: []RunDigest{{Pool: journal.ID{8}, Nth: 1}, {Pool: journal.ID{7}, Nth: 2}}, Rigs: rigs, Ways: ways,
				Cells: []Cell{{Run: 0, Rig: 3, Way: 2, Hours: 5}, {Run: 1, Rig: x.rigNow, Way: x.wayNow, Hours: 0.5}}},
		}}
		d.again()
		assert.Equal(t, x.want, d.Rods[1].Runs[1].Again, "%+v", x)
		assert.Zero(t, d.Rods[0].Runs[0].Again)
		assert.Zero(t, d.Rods[1].Runs[0].Again)
	}
}

// handMade is a night with one rod and a run of each of these hours and fish hooked through one pool,
// of which the later have other flies of the same length.
func handMade(evening journal.Date, level float64, trend journal.Trend, runs ...[2]float64) *Digest {
	d := &Digest{
		Trip: journal.NewID(), Evening: evening, Beat: journal.ID{1}, BeatName: "Home Beat", Began: -0.5,
		Fished: time.Date(evening.Year, evening.Month, evening.Day, 22, 0, 0, 0, time.UTC),
		Facts:  Facts{LevelM: level, TempC: 14, Cloud: 2, Trend: trend},
	}
	r := RodDigest{Person: journal.ID{2}, Rigs: []RigDigest{{Flies: []FlyDigest{{Fly: journal.ID{5}, LengthMM: 25}}}, {Flies: []FlyDigest{{Fly: journal.ID{6}, LengthMM: 25}}}}}
	for i, x := range runs {
		r.Runs = append(r.Runs, RunDigest{Pool: journal.ID{3}, Name: "Alder Pool", Nth: i + 1})
		r.Cells = append(r.Cells, Cell{Run: int16(i), Rig: int16(min(i, 1)), Way: -1, Band: AtGrey, Night: true, Hours: x[0]})
		r.Hours += x[0]
		for range int(x[1]) {
			r.Fish = append(r.Fish, Fish{ID: journal.NewID(), Touch: journal.Landed, rank: rank(journal.Landed), Run: i, HasPool: true, Pool: journal.ID{3}, In: []Part{{Cell: int32(i), Share: 1}}})
		}
	}
	d.Rods = []RodDigest{r}
	d.again()
	return d
}

func inJuly(day int) journal.Date { return journal.Date{Year: 2026, Month: time.July, Day: day} }

// Ensure that pairs of runs are counted by hand: 2 fish in 1 h against 1 in 2 h, later worse; 0 and 1,
// later better; both blank, alike; 1 in 1 h and 2 in 2 h, alike; three runs make two pairs; and that a
// run of under five minutes is in none.
func TestRunPairs(t *testing.T) {
	n := Nights{Floods: &Floods{}, Digests: []*Digest{
		handMade(inJuly(1), .3, "normal", [2]float64{1, 2}, [2]float64{2, 1}),
		handMade(inJuly(2), .3, "normal", [2]float64{1, 0}, [2]float64{1, 1}),
		handMade(inJuly(3), .3, "normal", [2]float64{1, 0}, [2]float64{3, 0}),
		handMade(inJuly(4), .3, "normal", [2]float64{1, 1}, [2]float64{2, 2}),
		handMade(inJuly(5), .3, "normal", [2]float64{1, 1}, [2]float64{1, 0}, [2]float64{1, 4}),
		handMade(inJuly(6), .3, "normal", [2]float64{1, 1}, [2]float64{0.05, 0}),
		handMade(inJuly(7), .3, "normal", [2]float64{1, 1}),
	}}
	c := Fold(n, View{}).Card(17)
	assert.Equal(t, 6.0, c.Figures["run_pairs"])
	assert.Equal(t, 2.0, c.Figures["run_pairs_alike"])
	t17 := c.Tables[3]
	require.Equal(t, "second_run_pairs", t17.Name)
	assert.Equal(t, [2]float64{2, 4}, [2]float64{t17.Row("all_later").Fish, t17.Row("all_later").Of})
	assert.Equal(t, [2]float64{1, 3}, [2]float64{t17.Row("other_flies").Fish, t17.Row("other_flies").Of})
	assert.Equal(t, [2]float64{1, 1}, [2]float64{t17.Row("same_flies").Fish, t17.Row("same_flies").Of}, "the third run has the flies of the second")
	by := c.Tables[1]
	assert.InDelta(t, 7, by.Row("first").Hours, 1e-9)
	assert.InDelta(t, 9.05, by.Row("other_flies").Hours, 1e-9)
	assert.InDelta(t, 1, by.Row("same_flies").Hours, 1e-9)
	for _, m := range c.Missing {
		assert.NotEqual(t, "no_later_run", m.Code)
	}
}

// Ensure that the nights likest to the latest are those of its level and trend, with what came of them,
// and that the likest earlier night is set against the middle rate: of the six nights .5, 3, .5, 3, .5 and
// 3 an hour the middle is 1.75, and a night lies with the likest before it but for the first rich one.
func TestAlike(t *testing.T) {
	poor, rich := [2]float64{2, 1}, [2]float64{2, 6}
	n := Nights{Floods: &Floods{}, Digests: []*Digest{
		handMade(inJuly(1), .3, "normal", poor), handMade(inJuly(2), .8, "falling flood", rich),
		handMade(inJuly(3), .3, "normal", poor), handMade(inJuly(4), .8, "falling flood", rich),
		handMade(inJuly(5), .3, "normal", poor), handMade(inJuly(6), .8, "falling flood", rich),
	}}
	c := Fold(n, View{}).Settle().Card(23)
	like := c.Tables[0]
	require.Equal(t, "alike", like.Name)
	assert.Equal(t, "latest", like.Rows[0].Code)
	assert.Equal(t, inJuly(6), like.Rows[0].Evening)
	assert.Equal(t, inJuly(4), like.Rows[1].Evening)
	assert.Equal(t, inJuly(2), like.Rows[2].Evening)
	together := like.Row("together")
	assert.Equal(t, [3]float64{10, 15, 5}, [3]float64{together.Hours, together.Fish, float64(together.Nights)})
	assert.InDelta(t, 10, c.Tables[1].Row("1_inch").Hours, 1e-9, "not the hours of the latest itself")
	told := c.Tables[3].Rows[0]
	assert.InDelta(t, 1.75, c.Figures["middle_rate"], 1e-9)
	assert.Equal(t, [2]float64{4, 5}, [2]float64{told.Fish, told.Of})
	alone := Fold(Nights{Floods: &Floods{}, Digests: n.Digests[:1]}, View{}).Settle().Card(23)
	assert.Equal(t, NotEnough, alone.Verdict)
	assert.Empty(t, alone.Tables)
}

// Ensure that half of a histogram lies on either side of its half, within a bin in proportion.
func TestHalf(t *testing.T) {
	var h bins
	_, ok := h.half()
	assert.False(t, ok)
	h.add([]Bin{{I: -3, V: 1}, {I: 10, V: 2}})
	h.add([]Bin{{I: 12, V: 1}})
	v, ok := h.half()
	assert.True(t, ok)
	assert.InDelta(t, 10.5, v, 1e-9)
}

// Ensure that nights with the moon over the pool and without are set against each other by hand: more
// an hour with it, as much, too little of either; by day counts for nothing.
func TestMoonPairs(t *testing.T) {
	night := func(day int, with, without [2]float64) *Digest {
		d := handMade(inJuly(day), .3, "normal", without, with)
		d.Rods[0].Cells[1].Moon = true
		return d
	}
	byDay := night(4, [2]float64{1, 3}, [2]float64{1, 0})
	for i := range byDay.Rods[0].Cells {
		byDay.Rods[0].Cells[i].Night = false
	}
	c := Fold(Nights{Floods: &Floods{}, Digests: []*Digest{
		night(1, [2]float64{1, 2}, [2]float64{2, 1}), night(2, [2]float64{1, 1}, [2]float64{2, 2}), night(3, [2]float64{.4, 1}, [2]float64{2, 0}), byDay,
		night(5, [2]float64{2, 1}, [2]float64{1, 1}),
	}}, View{}).Card(4)
	require.Equal(t, "moon_pairs", c.Tables[2].Name)
	assert.Equal(t, [2]float64{1, 2}, [2]float64{c.Tables[2].Rows[0].Fish, c.Tables[2].Rows[0].Of})
	assert.Equal(t, 1.0, c.Figures["moon_nights_alike"])
	assert.InDelta(t, 4.4, c.Tables[1].Row("moon_over/cloud_0_2").Hours, 1e-9)
}
