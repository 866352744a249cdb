package light

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

var ten = time.Date(2026, 6, 12, 22, 0, 0, 0, time.UTC)

func note(minutes int, eighths int, kind CloudKind, moon MoonSeen) SkyNote {
	return SkyNote{At: ten.Add(time.Duration(minutes) * time.Minute), Cloud: Cloud{eighths, kind, true}, Moon: moon}
}

// through is the transmittance at a minute after ten.
func (w *Weather) through(minutes float64) float64 {
	return w.at(ten.Add(time.Duration(minutes * float64(time.Minute)))).ready().through
}

// Transmittance of full cover 0.55, 0.28, 0.10; of half a sky of average cloud
// 1 - 0.72 x 0.5^3.4 = 0.931793, worked by hand.
func TestTransmittance(t *testing.T) {
	assert.InDelta(t, 0.28, Cloud{8, Average, true}.Transmittance(), 1e-12)
	assert.InDelta(t, 0.55, Cloud{8, Thin, true}.Transmittance(), 1e-12)
	assert.InDelta(t, 0.10, Cloud{8, Dark, true}.Transmittance(), 1e-12)
	assert.InDelta(t, 0.931793, Cloud{4, Average, true}.Transmittance(), 1e-6)
	assert.Equal(t, 1.0, Cloud{0, Dark, true}.Transmittance())
	assert.Equal(t, 1.0, Cloud{8, Dark, false}.Transmittance(), "not noted counts as clear")
}

// Ensure that between notes the transmittance is the geometric mean at half time, and
// that it holds before the first note and after the last.
func TestWeatherBetweenNotes(t *testing.T) {
	w := NewWeather([]SkyNote{note(60, 8, Dark, NotNoted), note(0, 0, Average, NotNoted)}) // any order
	assert.True(t, w.Noted())
	assert.InDelta(t, 1, w.through(-300), 1e-12)
	assert.InDelta(t, 1, w.through(0), 1e-12)
	assert.InDelta(t, math.Sqrt(0.1), w.through(30), 1e-12)
	assert.InDelta(t, 0.1, w.through(60), 1e-12)
	assert.InDelta(t, 0.1, w.through(600), 1e-12)
}

// Ensure that a step holds the sky before it until its instant, and jumps there.
func TestWeatherStep(t *testing.T) {
	step := note(60, 8, Dark, MoonHidden)
	step.Step = true
	w := NewWeather([]SkyNote{note(0, 0, Average, MoonClear), step})
	assert.InDelta(t, 1, w.through(59.999), 1e-12)
	assert.InDelta(t, 0.1, w.through(60), 1e-12)
	before, after := w.at(ten.Add(59*time.Minute)), w.at(ten.Add(60*time.Minute))
	assert.Equal(t, beam{open: 1}, before.beam)
	assert.Equal(t, beam{sky: 0.10}, after.beam)
}

// Ensure that a step of the moon alone leaves the cloud changing evenly, also when
// it is the only look at the moon between two at the cloud.
func TestWeatherMoonStep(t *testing.T) {
	moon := SkyNote{At: ten.Add(30 * time.Minute), Moon: MoonHidden, Step: true}
	w := NewWeather([]SkyNote{note(0, 0, Average, MoonClear), moon, note(60, 8, Average, MoonHidden)})
	for _, m := range []float64{10, 29.99, 30, 50} {
		assert.InDelta(t, math.Pow(0.28, m/60), w.through(m), 1e-9, "%v", m)
	}
	assert.Equal(t, beam{open: 1}, w.at(ten.Add(29*time.Minute)).beam)
	// A cloud that comes in a step leaves the minute before it clear.
	last, step := SkyNote{At: ten.Add(3570 * time.Second), Moon: MoonVeiled}, note(60, 8, Dark, MoonHidden)
	step.Step = true
	assert.InDelta(t, 1, NewWeather([]SkyNote{note(0, 0, Average, MoonClear), last, step}).through(59.9), 1e-12)
	assert.Equal(t, 1.0, NewWeather([]SkyNote{moon}).through(0), "no cloud was noted")
	assert.False(t, NewWeather([]SkyNote{moon}).Noted())
}

// Ensure that an un-noted moon shines through as the cloud lets it on average:
// 1 - (1-k) N/8, and that a night without notes is clear with the wide spread.
func TestWeatherUnnoted(t *testing.T) {
	w := NewWeather([]SkyNote{note(0, 4, Average, NotNoted)})
	assert.InDelta(t, 1-0.72*0.5, w.at(ten).open, 1e-12)
	assert.InDelta(t, 0.05+0.125, w.at(ten).spread, 1e-12)
	var none *Weather
	for _, w := range []*Weather{none, NewWeather(nil), NewWeather([]SkyNote{{At: ten}})} {
		assert.False(t, w.Noted())
		v := w.at(ten)
		assert.Equal(t, [3]float64{0, 1, 0.35}, [3]float64{v.logT, v.open, v.spread})
	}
}

// Ensure that of two notes at one instant the later in the list counts.
func TestWeatherSameInstant(t *testing.T) {
	w := NewWeather([]SkyNote{note(0, 0, Average, NotNoted), note(0, 8, Dark, NotNoted)})
	for _, m := range []float64{-5, 0, 5} {
		assert.InDelta(t, 0.1, w.through(m), 1e-12)
	}
}

// Ensure that without steps nothing jumps, that every value stays between the
// extremes of its neighbours, and that each note's own value stands at its instant.
func TestWeatherProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 6).Draw(t, "n")
		var notes []SkyNote
		for i := range n {
			notes = append(notes, note(i*60+rapid.IntRange(0, 50).Draw(t, "minute"), rapid.IntRange(0, 8).Draw(t, "eighths"),
				CloudKind(rapid.IntRange(0, 2).Draw(t, "kind")), MoonSeen(rapid.IntRange(0, 3).Draw(t, "moon"))))
		}
		w := NewWeather(notes)
		for i, n := range notes {
			v := w.at(n.At)
			assert.InDelta(t, n.Cloud.Transmittance(), math.Exp(v.logT), 1e-12)
			want := n.Moon.beam(n.Cloud)
			assert.InDelta(t, want.open, v.open, 1e-12)
			assert.InDelta(t, want.sky, v.sky, 1e-12)
			for _, near := range []time.Duration{-time.Millisecond, time.Millisecond} {
				u := w.at(n.At.Add(near))
				assert.InDelta(t, v.logT, u.logT, 1e-4)
				assert.InDelta(t, v.open, u.open, 1e-4)
				assert.InDelta(t, v.sky, u.sky, 1e-4)
			}
			if i > 0 {
				mid := w.at(notes[i-1].At.Add(n.At.Sub(notes[i-1].At) / 2))
				a, b := notes[i-1].Cloud.Transmittance(), n.Cloud.Transmittance()
				assert.InDelta(t, math.Sqrt(a*b), math.Exp(mid.logT), 1e-6)
			}
		}
	})
}
