package main

import (
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/timeline/light"
	"gloamline/timeline/sky"
)

// larrick asks for a night at an invented place in the south-west of Scotland.
func larrick(more ...string) []string {
	return append([]string{"light", "--lat", "55.05", "--lon", "-4.62", "--zone", "Europe/London"}, more...)
}

// Ensure that the table runs from noon to noon by the clock of the place, both
// included, over 23, 24 and 25 hours, with the offset that holds at each instant.
func TestLightNights(t *testing.T) {
	for night, c := range map[string]struct {
		minutes     int
		first, last string
	}{
		"2026-06-12": {1440, "2026-06-12T12:00:00+01:00", "2026-06-13T12:00:00+01:00"},
		"2026-03-28": {1380, "2026-03-28T12:00:00Z", "2026-03-29T12:00:00+01:00"},
		"2026-10-24": {1500, "2026-10-24T12:00:00+01:00", "2026-10-25T12:00:00Z"},
	} {
		r := run("", larrick("--night", night, "--cloud", "3")...)
		require.Equal(t, done, r.code, r.err)
		assert.Empty(t, r.err)
		assert.True(t, strings.HasPrefix(r.out, "utc,local,sun_alt,sun_az,moon_alt,moon_az,moon_fraction,lux,lux_low,lux_high\n"))
		rows := records(t, r.out)
		require.Len(t, rows, c.minutes+1)
		assert.Equal(t, c.first, rows[0]["local"])
		assert.Equal(t, c.last, rows[c.minutes]["local"])
		for i, row := range rows {
			utc, err := time.Parse(time.RFC3339, row["utc"])
			require.NoError(t, err)
			local, err := time.Parse(time.RFC3339, row["local"])
			require.NoError(t, err)
			assert.True(t, utc.Equal(local))
			first, _ := time.Parse(time.RFC3339, c.first)
			assert.Equal(t, first.Add(time.Duration(i)*time.Minute).UTC(), utc)
		}
	}
}

// Ensure that positions and light are those of the packages at each instant, worked
// out the plain way, and that the band lies about the value.
func TestLightValues(t *testing.T) {
	rows := records(t, run("", larrick("--night", "2026-08-27", "--cloud", "8", "--kind", "dark", "--step", "13m")...).out)
	require.Len(t, rows, 1440/13+2, "a row for the last noon too")
	assert.Equal(t, "2026-08-28T11:00:00Z", rows[len(rows)-1]["utc"])
	for _, row := range rows {
		at, err := time.Parse(time.RFC3339, row["utc"])
		require.NoError(t, err)
		p := sky.At(at, sky.Place{Lat: 55.05, Lon: -4.62})
		assert.InDelta(t, float64(p.Sun.Alt), row.num(t, "sun_alt"), 1e-4)
		assert.InDelta(t, float64(p.Sun.Az), row.num(t, "sun_az"), 1e-4)
		assert.InDelta(t, float64(p.Moon.Alt), row.num(t, "moon_alt"), 1e-4)
		assert.InDelta(t, float64(p.Moon.Az), row.num(t, "moon_az"), 1e-4)
		assert.InDelta(t, p.Fraction(), row.num(t, "moon_fraction"), 1e-4)
		clear := light.Clear(p.Sun.Alt, p.Moon.Alt, p.PhaseAngle, p.Parallax())
		lux := row.num(t, "lux")
		if p.Moon.Alt > 1 || p.Moon.Alt < -1 {
			assert.InEpsilon(t, 0.1*float64(clear.Total()), lux, 1e-4, "%v", row)
		}
		low, high := row.num(t, "lux_low"), row.num(t, "lux_high")
		assert.InEpsilon(t, lux/low, high/lux, 1e-4)
		assert.Greater(t, high/low, 3.9, "overcast: a factor of two either way")
	}
}

// Ensure that a night without cloud given is that of a clear sky with a wide band, and
// says so, and that a moon in the Earth's shadow is told of (total eclipse of 14 March 2025).
func TestLightRemarks(t *testing.T) {
	clear := run("", larrick("--night", "2026-06-12", "--step", "1h", "--cloud", "0")...)
	none := run("", larrick("--night", "2026-06-12", "--step", "1h")...)
	assert.Equal(t, done, none.code)
	assert.Contains(t, none.err, "Cloud was not given")
	a, b := records(t, clear.out), records(t, none.out)
	for i := range a {
		assert.Equal(t, a[i]["lux"], b[i]["lux"])
		assert.Less(t, b[i].num(t, "lux_low"), a[i].num(t, "lux_low"))
	}
	assert.Contains(t, run("", larrick("--night", "2025-03-13", "--cloud", "0")...).err, "eclipsed")
	assert.Empty(t, clear.err)
}

// Ensure that wrong values are refused in one sentence that names them.
func TestLightRefuses(t *testing.T) {
	night := []string{"--night", "2026-06-12"}
	for _, c := range []struct {
		args  []string
		words []string
	}{
		{[]string{"light", "--lat", "55"}, []string{"--lon"}},
		{[]string{"light", "--lat", "north", "--lon", "0"}, []string{"--lat", `"north"`}},
		{[]string{"light", "--lat", "95", "--lon", "0", "--zone", "UTC", "--night", "2026-06-12"}, []string{"latitude", "95"}},
		{[]string{"light", "--lat", "55", "--lon", "NaN", "--zone", "UTC", "--night", "2026-06-12"}, []string{"longitude"}},
		{[]string{"light", "--lat", "55", "--lon", "0", "--night", "2026-06-12"}, []string{"zone"}},
		{[]string{"light", "--lat", "55", "--lon", "0", "--zone", "Europe/Larrick", "--night", "2026-06-12"}, []string{"Europe/Larrick"}},
		{[]string{"light", "--lat", "55", "--lon", "0", "--zone", "Local", "--night", "2026-06-12"}, []string{"Local"}},
		{larrick(), []string{"--night"}},
		{larrick("--night", "2026-02-30"), []string{"2026-02-30"}},
		{larrick("--night", "12/06/2026"), []string{"12/06/2026"}},
		{larrick("--night", "1850-06-12"), []string{"1850"}},
		{larrick(append(night, "--cloud", "9")...), []string{"eighths", "9"}},
		{larrick(append(night, "--cloud", "some")...), []string{"--cloud", "some"}},
		{larrick(append(night, "--kind", "thin")...), []string{"--kind", "--cloud"}},
		{larrick(append(night, "--cloud", "4", "--kind", "fluffy")...), []string{"--kind", "fluffy"}},
		{larrick(append(night, "--step", "0s")...), []string{"--step", "0s"}},
		{larrick(append(night, "--step", "-1m")...), []string{"--step"}},
		{larrick(append(night, "--step", "often")...), []string{"--step", "often"}},
		{larrick(append(night, "extra")...), []string{`"extra"`}},
		{larrick(append(night, "--moon")...), []string{"--moon"}},
		{larrick("--night"), []string{"--night needs a value"}},
	} {
		refused(t, run("", c.args...), c.words...)
	}
}

// Ensure that six figures stand in every number of light, without an exponent.
func TestFigures(t *testing.T) {
	for lux, want := range map[float64]string{
		123866.9: "123867", 3.471527: "3.47153", 0.3: "0.300000", 6e-5: "0.0000600000", 0: "0", 1e-9: "0.00000000100000",
	} {
		assert.Equal(t, want, figures(lux))
	}
	assert.False(t, strings.Contains(figures(math.SmallestNonzeroFloat64), "e"))
}
