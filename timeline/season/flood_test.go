package season

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

var dayOne = time.Date(2026, time.June, 1, 12, 0, 0, 0, time.UTC)

// gauge is a level every hour, given by its corners: hours after dayOne and metres.
func gauge(unit string, k float64, corners ...[2]float64) journal.Series {
	s := journal.Series{ID: journal.NewID(), Station: "Larrick", What: "level", Unit: unit}
	for i := 1; i < len(corners); i++ {
		a, b := corners[i-1], corners[i]
		for h := a[0]; h < b[0]; h++ {
			v := a[1] + (b[1]-a[1])*(h-a[0])/(b[0]-a[0])
			s.Points = append(s.Points, journal.Reading{At: dayOne.Add(time.Duration(h * float64(time.Hour))), Value: journal.Of(v * k)})
		}
	}
	return s
}

// Ensure that rises of 20 cm and more that fell again are floods, each at its highest, and
// that lesser ones and readings that are missing are not.
func TestFloodsOf(t *testing.T) {
	s := gauge("cm", 100, [2]float64{0, 0.5}, [2]float64{300, 0.5}, [2]float64{310, 0.9}, [2]float64{330, 0.6}, [2]float64{340, 0.75}, [2]float64{360, 0.55},
		[2]float64{400, 0.5}, [2]float64{420, 1.1}, [2]float64{425, 1.05}, [2]float64{430, 1.3}, [2]float64{500, 0.6}, [2]float64{520, 0.9})
	s.Points[305].Value = journal.Field[float64]{}
	other := gauge("furlong", 1, [2]float64{0, 0}, [2]float64{10, 9}, [2]float64{20, 0})
	other.Station = "Alder"
	f := floodsOf([]journal.Series{s, other, {Station: "A", What: "flow", Unit: "m"}})
	require.NotNil(t, f)
	at := func(h float64) time.Time { return dayOne.Add(time.Duration(h * float64(time.Hour))) }
	assert.Equal(t, []time.Time{at(310), at(430)}, f.Peaks, "the last has not fallen yet")
	assert.Nil(t, floodsOf([]journal.Series{other}))
	assert.Nil(t, floodsOf(nil))

	for _, x := range []struct {
		hour  float64
		row   int
		known bool
	}{
		{100, -1, false}, // the gauge does not reach ten days back
		{299, 5, true}, {311, 0, true}, {325, 1, true}, {340, 2, true}, {370, 3, true}, {410, 4, true}, {431, 0, true},
		{519 + 7, -1, false}, // beyond what it recorded
	} {
		assert.Equal(t, x.row, f.peakRow(&Digest{Fished: at(x.hour)}), "%v", x.hour)
		_, _, known := f.since(at(x.hour))
		assert.Equal(t, x.known, known, "%v", x.hour)
	}
	assert.Equal(t, -1, f.peakRow(&Digest{}), "a night without a run")
	assert.Equal(t, -1, (*Floods)(nil).peakRow(&Digest{Fished: at(311)}))
}

// waterNight is a night of two rod-hours and some fish, so many days after dayOne.
func waterNight(day int, temp float64, fish ...Fish) *Digest {
	d := &Digest{Trip: journal.NewID(), Evening: journal.Date{Year: 2026, Month: time.June, Day: 1}.Add(day), Beat: journal.ID{1}, BeatName: "Home Beat", River: "Larrick Water",
		Fished: dayOne.AddDate(0, 0, day).Add(10 * time.Hour)}
	d.Facts.TempC = temp
	r := RodDigest{Person: journal.ID{2}, Hours: 2, Runs: []RunDigest{{Pool: journal.ID{3}, Nth: 1, Bank: "left"}}, Cells: []Cell{{Rig: -1, Way: -1, Hours: 2}}}
	for _, f := range fish {
		f.rank = rank(f.Touch)
		f.In = []Part{{0, 1}}
		at := d.Fished.Add(time.Hour)
		f.At = journal.Spread{Lo: at, Hi: at}
		r.Fish = append(r.Fish, f)
	}
	d.Rods = []RodDigest{r}
	return d
}

// Ensure that hours stand in the class of time since the peak, that the lag to the first fresh
// fish is told by month, and what is missing is said.
func TestSincePeak(t *testing.T) {
	f := floodsOf([]journal.Series{gauge("m", 1, [2]float64{0, 0.5}, [2]float64{290, 0.5}, [2]float64{300, 1}, [2]float64{400, 0.5}, [2]float64{900, 0.5})})
	fresh := Fish{Touch: journal.Landed, Lice: Yes}
	n := Nights{Floods: f, Digests: []*Digest{waterNight(2, 14), waterNight(11, 14), waterNight(12, 14), waterNight(13, 14, fresh, fresh), waterNight(15, 14, Fish{Touch: journal.Lost})}}
	s := Fold(n, View{})
	t19 := s.Table("since_peak")
	require.NotNil(t, t19)
	hours := map[string]float64{}
	for _, r := range t19.Rows {
		hours[r.Code] = r.Hours
	}
	assert.Equal(t, map[string]float64{"peak_0_12_h": 0, "peak_12_24_h": 2, "peak_1_2_d": 0, "peak_2_4_d": 2, "peak_4_10_d": 0, "no_peak_10_d": 4}, hours)
	c := s.Card(19)
	assert.InDelta(t, (13*24.+11-300)/24, c.Figures["days_to_fresh_fish_06"], 1e-9)
	assert.Equal(t, Missing{"no_gauge", 1, 5}, missingOf(c, "no_gauge"))
	assert.Equal(t, 1.0, s.Table("flood_fresh").Rows[0].Of)

	n.Floods = nil
	assert.Nil(t, Fold(n, View{}).Table("since_peak"))
	assert.NotZero(t, missingOf(Fold(n, View{}).Card(19), "no_hours_since_peak"))
	n.Floods = f
	n.Digests[0].River = "Other Water"
	assert.NotZero(t, missingOf(Fold(n, View{}).Card(19), "several_rivers"))
}

func missingOf(c *Card, code string) Missing {
	for _, m := range c.Missing {
		if m.Code == code {
			return m
		}
	}
	return Missing{}
}

// Ensure that the change of temperature is that since the evening before on the same beat, and
// that warm water is counted with its hours.
func TestTemperatureOfWater(t *testing.T) {
	hooked := Fish{Touch: journal.Lost}
	other := waterNight(5, 21)
	other.Beat = journal.ID{9}
	n := Nights{Digests: []*Digest{waterNight(1, 14, hooked), waterNight(2, 18, hooked), waterNight(3, 18.4), waterNight(4, 12), waterNight(7, 20, hooked), other}}
	s := Fold(n, View{})
	var got []float64
	for _, r := range s.Table("temperature_change").Rows {
		got = append(got, r.Hours)
	}
	assert.Equal(t, []float64{2, 2, 2}, got, "colder, steady, warmer")
	c := s.Card(18)
	assert.Equal(t, Missing{"no_evening_before", 3, 6}, missingOf(c, "no_evening_before"))
	warm := s.Table("warm_water")
	assert.Equal(t, [2]float64{2, 3}, [2]float64{warm.Rows[0].Fish, warm.Rows[0].Of})
	assert.Equal(t, [2]float64{1, 3}, [2]float64{warm.Rows[1].Fish, warm.Rows[1].Of})
	assert.Equal(t, [3]float64{8, 4, 12}, [3]float64{c.Figures["hours_from_18_c"], c.Figures["hours_from_20_c"], c.Figures["hours_with_temperature"]})
}

// Ensure that tables added to the questions count every fish and hour of the demo that they can.
func TestMoreTables(t *testing.T) {
	n := demoNights(t)
	s := Fold(n, View{Measure: AllContacts})
	var bank, byBank, parts, landed, hookPlaces, hooked, lit float64
	for _, d := range n.Digests {
		for i := range d.Rods {
			r := &d.Rods[i]
			for _, c := range r.Cells {
				if r.Runs[c.Run].Bank != "" {
					bank += c.Hours
				}
			}
			for _, f := range r.Fish {
				parts += one(f.Part != "" && f.HasPool)
				landed += one(f.Touch == journal.Landed)
				lit += one(Hooked.counts(f.Touch) && len(f.In) > 0)
			}
		}
	}
	byBank, _, _ = sum(s.Table("bank"))
	assert.InDelta(t, bank, byBank, 1e-9)
	assert.Greater(t, bank, 1.0)
	sumFish := func(name string) (fish, of float64) {
		for _, r := range s.Table(name).Rows {
			fish, of = fish+r.Fish, of+r.Of
		}
		return fish, of
	}
	if parts > 0 {
		got, _ := sumFish("part_pools")
		assert.Equal(t, parts, got)
	}
	hookPlaces, _ = sumFish("hook_places")
	assert.LessOrEqual(t, hookPlaces, landed)
	assert.InDelta(t, landed-hookPlaces, missingOf(s.Card(13), "no_hook_place").N, 1e-9)
	_, hooked = sumFish("chain_light")
	assert.Equal(t, lit, hooked)
	_, contacts := sumFish("surface_chain")
	assert.Greater(t, contacts, 50.0)
	c := s.Card(20)
	assert.Greater(t, c.Figures["hours_in_last_hour"], 10.0)
	assert.LessOrEqual(t, c.Figures["hours_in_last_hour"], float64(s.Rods)+1e-9, "an hour a rod's night at most")
}
