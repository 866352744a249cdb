package light

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/units"
	"gloamline/timeline/sky"
)

// Ensure that the fall of twilight through a threshold agrees with
// colour_gone_public.csv (positions of python3-ephem 4.1.4) within 10 s where it is reached,
// and the least light within 0.5 %. The table counts twilight alone, so the test keeps
// only the sun's part of each trace.
func TestColourGoneTable(t *testing.T) {
	rows := table(t, "colour_gone_public.csv")
	require.Len(t, rows, 175)
	for _, r := range rows {
		day, err := time.Parse(time.DateOnly, r["date"])
		require.NoError(t, err)
		p := sky.Place{Lat: units.Degrees(r.num(t, "lat")), Lon: units.Degrees(r.num(t, "lon"))}
		noon := day.Add(12 * time.Hour)
		trace := NewOpenSky(sky.NewSpan(noon, noon.Add(24*time.Hour)).Grid(p, time.Minute), nil).Reference()
		for i := range trace.Lux {
			trace.Lux[i] = trace.Sun[i] * r.num(t, "transmittance")
		}
		g := TreesGrey(trace, units.Lux(r.num(t, "threshold_lux")))
		assert.Equal(t, r["status"] == "reached", g.Reached, "%v", r)
		if g.Reached {
			assert.InDelta(t, 0, g.Evening.Sub(r.time(t, "crossing_utc")).Seconds(), 10, "%v", r)
			assert.True(t, g.Morning.After(g.Evening))
		} else {
			assert.True(t, g.Evening.IsZero() && g.Morning.IsZero() && len(g.Spells) == 0)
		}
		if want := r.num(t, "min_twilight_lux"); want > 0 {
			assert.InEpsilon(t, want, float64(g.Least), 0.005, "%v", r)
		} else {
			assert.Zero(t, g.Least)
		}
	}
}

// bent is a trace whose light is set minute by minute, by a list of minutes and
// values between which it stays.
func bent(values map[int]float64) *Trace {
	noon := time.Date(2026, 9, 11, 11, 0, 0, 0, time.UTC)
	trace := NewOpenSky(sky.NewSpan(noon, noon.Add(24*time.Hour)).Grid(larrick, time.Minute), nil).Reference()
	now := 100.0
	for i := range trace.Lux {
		if v, ok := values[i]; ok {
			now = v
		}
		trace.Lux[i] = now
	}
	return trace
}

// Ensure that light must stay below the threshold for ten minutes: a shorter dip in
// the evening and one in the morning are listed but are not the moment; the moon giving
// the colours back for an hour splits the night.
func TestTenMinuteRule(t *testing.T) {
	trace := bent(map[int]float64{
		480: 0.1, 486: 100, // six minutes
		500: 0.1, 700: 100, // two hundred
		760: 0.1, 900: 100,
		910: 0.1, 915: 100,
	})
	g := TreesGrey(trace, 0.3)
	require.True(t, g.Reached)
	minute := func(at time.Time) float64 { return at.Sub(trace.Time(0)).Minutes() }
	// The logarithm falls linearly from 100 to 0.1 within one minute: 0.841 of it to 0.3.
	assert.InDelta(t, 499.841, minute(g.Evening), 0.001)
	assert.InDelta(t, 899.159, minute(g.Morning), 0.001)
	require.Len(t, g.Spells, 4)
	assert.InDelta(t, 479.841, minute(g.Spells[0].From), 0.001)
	assert.InDelta(t, 0.1, float64(g.Least), 1e-12)

	short := TreesGrey(bent(map[int]float64{500: 0.1, 508: 100}), 0.3)
	assert.False(t, short.Reached)
	assert.Len(t, short.Spells, 1)
	assert.True(t, short.Evening.IsZero())
}

// Ensure that darkness before sunset is not grey yet: it counts from sunset on.
func TestGreyFromSunset(t *testing.T) {
	trace := bent(map[int]float64{0: 0.01})
	var set, rise time.Time
	for _, e := range trace.Sky.Grid.Span.Almanac(larrick).Events() {
		switch e.Kind {
		case sky.Sunset:
			set = e.At
		case sky.Sunrise:
			rise = e.At
		}
	}
	g := TreesGrey(trace, 0.3)
	assert.InDelta(t, 0, g.Evening.Sub(set).Seconds(), 1)
	assert.InDelta(t, 0, g.Morning.Sub(rise).Seconds(), 1)
}

// Ensure that the polar night is grey at both edges of the window and says so, and
// that under the midnight sun the least light of the whole window is told.
func TestGreyPolar(t *testing.T) {
	north := sky.Place{Lat: 78, Lon: 15}
	trace := func(month time.Month) *Trace {
		noon := time.Date(2026, month, 21, 11, 0, 0, 0, time.UTC)
		return NewOpenSky(sky.NewSpan(noon, noon.Add(24*time.Hour)).Grid(north, time.Minute), nil).Reference()
	}
	winter := TreesGrey(trace(time.December), 0.3)
	require.Len(t, winter.Spells, 1)
	assert.True(t, winter.Reached && winter.Spells[0].AtStart && winter.Spells[0].AtEnd)
	assert.True(t, winter.Evening.IsZero() && winter.Morning.IsZero())
	summer := TreesGrey(trace(time.June), 0.3)
	assert.False(t, summer.Reached)
	assert.Greater(t, summer.Least, units.Lux(1000))
	// Lowest at local midnight, 23 UTC at 15 east.
	assert.InDelta(t, 0, summer.LeastAt.Sub(time.Date(2026, 6, 21, 23, 2, 0, 0, time.UTC)).Minutes(), 5)
}

// Ensure that heavier cloud and darker pools never make the trees grey later, and
// that a lower threshold never makes them grey earlier.
func TestGreyOrder(t *testing.T) {
	span := nightOf(2026, 4, 15)
	evening := func(eighths int, threshold units.Lux) time.Time {
		g := TreesGrey(openSky(span, note(0, eighths, Average, NotNoted)).Reference(), threshold)
		require.True(t, g.Reached)
		return g.Evening
	}
	for n := 1; n <= 8; n++ {
		assert.False(t, evening(n, 0.3).After(evening(n-1, 0.3)), "%d", n)
	}
	// Overcast brings the moment forward by 0.55 / 0.48 degrees of sun: minutes, not hours.
	assert.InDelta(t, 10, evening(0, 0.3).Sub(evening(8, 0.3)).Minutes(), 3)
	for _, pair := range [][2]units.Lux{{1, 0.5}, {0.5, 0.3}, {0.3, 0.1}} {
		assert.True(t, evening(0, pair[0]).Before(evening(0, pair[1])))
	}
}
