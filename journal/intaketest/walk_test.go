package intaketest

import (
	"bytes"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo/gpx"
)

// Ensure that the nights are what the parameters say, and the same again for a seed.
func TestWalk(t *testing.T) {
	p := Common()
	runs, seconds, twice := 0, 0, 0
	var drift, n float64
	for _, seed := range TuneSeeds()[:20] {
		night := Walk(seed, p)
		require.Equal(t, night, Walk(seed, p))
		require.Len(t, night.True, 28800)
		last := time.Time{}
		for _, r := range night.Runs {
			require.True(t, r.From.After(last) && r.To.After(r.From.Add(5*time.Minute)), "%v", r)
			require.False(t, r.To.After(Begin.Add(8*time.Hour)))
			last = r.To
			if r.Nth > 1 {
				twice++
			}
		}
		runs += len(night.Runs)
		seconds += len(night.Fixes)
		l := night.Beat.Layout()
		for _, f := range night.Fixes[len(night.Fixes)-600:] { // standing at the car
			if d := float64(l.At(f.Place).Distance(l.At(night.True[len(night.True)-1]))); d < 25 {
				drift, n = drift+d*d, n+1
			}
		}
		require.Empty(t, len(night.Beat.Pools)-len(l.Pools))
	}
	t.Logf("%d runs, %d of them second ones, %d fixes, standing drift about %.1f m", runs, twice, seconds, math.Sqrt(drift/n))
	assert.Greater(t, runs, 80)
	assert.Greater(t, twice, 15)
	assert.Greater(t, seconds, 20*27000)
}

// Ensure that the track reads back as GPX.
func TestGPX(t *testing.T) {
	night := Walk(1, Common())
	f, err := gpx.Read(bytes.NewReader(night.GPX()), gpx.Options{})
	require.NoError(t, err)
	require.Equal(t, len(night.Fixes), f.Timed)
	assert.Less(t, len(f.Fixes()), f.Timed, "some stand twice")
}

// Ensure that the two sets of seeds have none in common.
func TestSeeds(t *testing.T) {
	for _, s := range TuneSeeds() {
		assert.NotContains(t, CheckSeeds(), s)
	}
}
