package light

import (
	"math"
	"slices"
	"time"
)

// SkyNote is one look at the sky during the night.
type SkyNote struct {
	At    time.Time
	Cloud Cloud
	Moon  MoonSeen
	// Step says that the sky changed at this moment, not little by little since
	// the note before.
	Step bool
}

// Weather is the sky of a night, drawn from its notes. Between two notes the
// transmittance goes evenly in its logarithm and the moon's beam evenly; before
// the first note and after the last the sky stays as noted. It jumps only at a Step.
type Weather struct {
	noted bool
	knots []veil
}

// veil is what the sky does to light from an instant on.
type veil struct {
	at      time.Time
	logT    float64 // natural logarithm of the transmittance
	through float64 // of a full cover of this cloud
	average float64 // open beam when the moon was not noted
	spread  float64 // powers of ten
	beam
}

// unnoted is the clear sky with the wide band.
var unnoted = veil{through: Average.through(), average: 1, spread: Cloud{}.spread(), beam: beam{open: 1}}

// NewWeather takes notes in any order; of two at one instant the later in the list
// counts. A note with neither cloud nor moon is passed over. A note of the moon alone
// takes the cloud from its neighbours.
func NewWeather(notes []SkyNote) *Weather {
	list := make([]SkyNote, 0, len(notes))
	for _, n := range notes {
		if n.Cloud.Noted || n.Moon != NotNoted {
			list = append(list, n)
		}
	}
	slices.SortStableFunc(list, func(a, b SkyNote) int { return a.At.Compare(b.At) })
	for i := len(list) - 2; i >= 0; i-- {
		if list[i].At.Equal(list[i+1].At) {
			list = slices.Delete(list, i, i+1)
		}
	}
	var cloud []veil
	for _, n := range list {
		if !n.Cloud.Noted {
			continue
		}
		v := veil{
			at: n.At, logT: math.Log(n.Cloud.Transmittance()), through: n.Cloud.Kind.through(),
			average: NotNoted.beam(n.Cloud).open, spread: n.Cloud.spread(),
		}
		if n.Step && len(cloud) > 0 { // the cloud before holds until this instant
			held := cloud[len(cloud)-1]
			held.at = n.At
			cloud = append(cloud, held)
		}
		cloud = append(cloud, v)
	}
	w := &Weather{noted: len(cloud) > 0}
	for _, n := range list {
		v := between(cloud, n.At)
		v.at = n.At
		switch n.Moon {
		case NotNoted:
			v.beam = beam{open: v.average}
		case MoonHidden:
			v.beam = beam{sky: v.through}
		default:
			v.beam = n.Moon.beam(n.Cloud)
		}
		if n.Step && len(w.knots) > 0 {
			before, held := w.knots[len(w.knots)-1], v
			if n.Cloud.Noted { // a step of the moon alone leaves the cloud going evenly
				held = before
			}
			held.at, held.beam = n.At, before.beam
			w.knots = append(w.knots, held)
		}
		w.knots = append(w.knots, v)
	}
	return w
}

// Noted reports whether any cloud was noted.
func (w *Weather) Noted() bool { return w != nil && w.noted }

// at returns the veil at an instant.
func (w *Weather) at(t time.Time) veil {
	if w == nil {
		return unnoted
	}
	return between(w.knots, t)
}

// between interpolates; at the instant of a step the later veil counts.
func between(knots []veil, t time.Time) veil {
	i, _ := slices.BinarySearchFunc(knots, t, func(v veil, t time.Time) int {
		if v.at.After(t) {
			return 1
		}
		return -1
	})
	switch {
	case len(knots) == 0:
		return unnoted
	case i == 0:
		return knots[0]
	case i == len(knots):
		return knots[i-1]
	}
	a, b := knots[i-1], knots[i]
	f := float64(t.Sub(a.at)) / float64(b.at.Sub(a.at))
	mix := func(x, y float64) float64 { return x + (y-x)*f }
	return veil{
		at: t, logT: mix(a.logT, b.logT), through: mix(a.through, b.through),
		average: mix(a.average, b.average), spread: mix(a.spread, b.spread),
		beam: beam{open: mix(a.open, b.open), sky: mix(a.sky, b.sky)},
	}
}
