package light

import (
	"math"
	"slices"

	"gloamline/journal/units"
)

// DefaultGrey is the light on open ground at which the green goes out of foliage,
// lux: between 1 and 0.1 lx (Shin, Yaguchi & Shioiri 2004), the middle of that span.
const DefaultGrey units.Lux = 0.3

const (
	priorSpread = 0.35 // of DefaultGrey between people and places, powers of ten
	priorWeight = 4    // logged moments that DefaultGrey counts for
	ownFrom     = 5    // logged moments from which a threshold is a beat's own
	leastSpread = 0.15 // five minutes of logging error; nothing finer is claimed
)

// LoggedGrey is one logged moment at which the trees had gone grey, with the light
// computed for the pool at that minute under the sky as logged.
type LoggedGrey struct {
	Lux        units.Lux
	CloudNoted bool
}

// Reason says why a logged moment is not in the fit.
type Reason uint8

// The reasons.
const (
	CloudUnknown Reason = iota + 1 // left out while five others have their cloud noted
	FarOff                         // more than three spreads from the rest
	NoLight                        // no light was computed for it
)

// LeftOut is a logged moment that is not in the fit, by its index.
type LeftOut struct {
	Index  int
	Reason Reason
}

// Threshold is the light below which the trees count as grey.
type Threshold struct {
	Lux units.Lux
	// Spread is how single evenings scatter about Lux, in powers of ten, and
	// Error how well Lux itself is known (68 %).
	Spread, Error float64
	// Own says that it comes from logged moments, not from the default.
	Own bool
	// Level is the index of the list it comes from, -1 for the default.
	Level int
	// Logged counts the moments in that list (the first list for the default),
	// Used those in the fit.
	Logged, Used int
	LeftOut      []LeftOut
}

// Band returns the 68 % band of the threshold itself.
func (t Threshold) Band() (low, high units.Lux) { return t.scaled(t.Error) }

func (t Threshold) scaled(dex float64) (low, high units.Lux) {
	f := units.Lux(pow10(dex))
	return t.Lux / f, t.Lux * f
}

// Calibrate returns the threshold from logged moments: from the first list that
// has five to use (pool before beat before all beats), else the default. The
// median is drawn toward the default as by four logged moments; the spread comes from
// the median absolute deviation.
func Calibrate(levels ...[]LoggedGrey) Threshold {
	for i, list := range levels {
		if t := fit(list); t.Used >= ownFrom {
			t.Level, t.Own = i, true
			return t
		}
	}
	t := Threshold{Lux: DefaultGrey, Spread: priorSpread, Error: standardError(priorSpread, 0), Level: -1}
	if len(levels) > 0 {
		t.Logged = len(levels[0])
	}
	return t
}

// standardError is that of a median of n moments and the prior.
func standardError(spread float64, n int) float64 {
	return 1.25 * spread / math.Sqrt(float64(n+priorWeight))
}

func fit(list []LoggedGrey) Threshold {
	t := Threshold{Logged: len(list)}
	withCloud := 0
	for _, l := range list {
		if l.CloudNoted && l.Lux > 0 {
			withCloud++
		}
	}
	type moment struct {
		index int
		x     float64 // log10 lux
	}
	var use []moment
	for i, l := range list {
		switch {
		case !(l.Lux > 0) || math.IsInf(float64(l.Lux), 1):
			t.LeftOut = append(t.LeftOut, LeftOut{i, NoLight})
		case !l.CloudNoted && withCloud >= ownFrom:
			t.LeftOut = append(t.LeftOut, LeftOut{i, CloudUnknown})
		default:
			use = append(use, moment{i, math.Log10(float64(l.Lux))})
		}
	}
	for {
		x := make([]float64, len(use))
		for i, m := range use {
			x[i] = m.x
		}
		n := float64(len(use))
		middle := median(x)
		for i := range x {
			x[i] = math.Abs(x[i] - middle)
		}
		scatter := max(leastSpread, 1.4826*median(x))
		prior := math.Log10(float64(DefaultGrey))
		centre := (n*middle + priorWeight*prior) / (n + priorWeight)
		t.Spread = math.Sqrt((n*scatter*scatter + priorWeight*priorSpread*priorSpread) / (n + priorWeight))
		t.Lux, t.Used = units.Lux(pow10(centre)), len(use)
		t.Error = standardError(t.Spread, len(use))

		kept := use[:0:0]
		for _, m := range use {
			if math.Abs(m.x-middle) > 3*t.Spread {
				t.LeftOut = append(t.LeftOut, LeftOut{m.index, FarOff})
			} else {
				kept = append(kept, m)
			}
		}
		if len(kept) == len(use) {
			slices.SortFunc(t.LeftOut, func(a, b LeftOut) int { return a.Index - b.Index })
			return t
		}
		use = kept
	}
}

// median of an empty list is 0.
func median(x []float64) float64 {
	if len(x) == 0 {
		return 0
	}
	s := slices.Sorted(slices.Values(x))
	if n := len(s); n%2 == 0 {
		return (s[n/2-1] + s[n/2]) / 2
	}
	return s[len(s)/2]
}

// GreyBand is one evening's grey with its uncertainty in time: Early by a threshold
// one spread brighter and Late by one a spread darker. In white nights Late may not be
// reached: the band is then open.
type GreyBand struct {
	Early, Middle, Late Grey
}

// Evening applies the threshold and its spread to a trace.
func (t Threshold) Evening(trace *Trace) GreyBand {
	low, high := t.scaled(t.Spread)
	return GreyBand{Early: TreesGrey(trace, high), Middle: TreesGrey(trace, t.Lux), Late: TreesGrey(trace, low)}
}
