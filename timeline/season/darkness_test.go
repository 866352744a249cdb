package season

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
)

func beatLogs(lux ...float64) []*Digest {
	var out []*Digest
	for i, l := range lux {
		d := &Digest{Trip: journal.NewID(), Beat: journal.ID{1}, BeatName: "Home Beat", Grey: timeline.DefaultThreshold()}
		log := GreyLog{Lux: l, CloudNoted: true}
		if i%2 == 0 {
			log.Pool, log.PoolName, log.PoolLux = journal.ID{2}, "Alder Pool", l/2
		}
		d.Logged = []GreyLog{log}
		out = append(out, d)
	}
	return out
}

// Ensure that five logs make a beat's own threshold, drawn toward 0.3 lx as by four
// (median 0.12 lx of five: (5 log 0.12 + 4 log 0.3) / 9 = 0.1803 lx), and that four do not.
func TestDarknessFromFiveLogs(t *testing.T) {
	d := Darknesses(beatLogs(.1, .12, .11, .14, .13))
	require.Len(t, d, 1)
	f := d[0].Fit
	assert.Equal(t, "beat", f.From)
	assert.Equal(t, 5, f.Used)
	want := math.Pow(10, (5*math.Log10(.12)+4*math.Log10(.3))/9)
	assert.InDelta(t, want, f.Lux, 1e-9)
	assert.True(t, f.Lo < f.Lux && f.Lux < f.Hi)
	require.Len(t, d[0].Pools, 1)
	assert.Equal(t, "default", d[0].Pools[0].Fit.From, "three logs on one pool are not enough, nor those of all pools")
	assert.Equal(t, 3, d[0].Pools[0].Fit.Logged)

	four := Darknesses(beatLogs(.1, .12, .11, .14))[0].Fit
	assert.Equal(t, "default", four.From)
	assert.InDelta(t, .3, four.Lux, 1e-12)
	assert.Equal(t, 4, four.Logged)

	ten := Darknesses(beatLogs(.1, .12, .11, .14, .13, .1, .12, .11, .14, .13))[0]
	assert.Equal(t, "pool", ten.Pools[0].Fit.From)
	assert.Equal(t, 5, ten.Pools[0].Fit.Used)
	// Every second log lies on the pool, at half of the light: 0.1, 0.11, 0.13, 0.12, 0.14.
	assert.InDelta(t, math.Pow(10, (5*math.Log10(.06)+4*math.Log10(.3))/9), ten.Pools[0].Fit.Lux, 1e-9, "by the light on the pool")
}

// Ensure that a moment far from the others is told and left out.
func TestDarknessLeavesOutWhatIsFarOff(t *testing.T) {
	d := Darknesses(beatLogs(.1, .12, .11, .14, .13, .12, 40))[0]
	assert.Equal(t, "far off", d.Logs[6].Apart)
	assert.Equal(t, "", d.Logs[0].Apart)
	assert.Equal(t, 6, d.Fit.Used)
}

// Ensure that what is shown is what every night goes by.
func TestDarknessIsTheThresholdInUse(t *testing.T) {
	n, err := NewBook(demoJournal(t)).Read(nil)
	require.NoError(t, err)
	logs := 0
	for _, d := range Darknesses(n.Digests) {
		logs += len(d.Logs)
		if !d.Hand {
			assert.InEpsilon(t, d.Used, d.Fit.Lux, 1e-6, d.Name)
		}
		for _, x := range n.Digests {
			if x.Beat == d.Beat {
				assert.InDelta(t, d.Used, float64(x.Grey.Lux), 1e-12)
			}
		}
	}
	assert.Positive(t, logs)
}
