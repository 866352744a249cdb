package journaltest

import (
	"encoding/hex"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

var banks = []geo.Bank{geo.TrueLeft, geo.TrueRight}

func (w *World) yes() bool { return w.Rand.IntN(2) == 0 }

func pick[T any](w *World, list []T) T { return list[w.Rand.IntN(len(list))] }

// field knows v half the time; else it is unknown or known to be none.
func field[T any](w *World, v T) journal.Field[T] {
	switch w.Rand.IntN(4) {
	case 0:
		return journal.Field[T]{}
	case 1:
		return journal.None[T]()
	}
	return journal.Of(v)
}

// some draws a few of a list, each once.
func (w *World) some(list []journal.ID) []journal.ID {
	var out []journal.ID
	for _, i := range w.Rand.Perm(len(list)) {
		if w.yes() {
			break
		}
		out = append(out, list[i])
	}
	return out
}

// texts hold what an encoding can trip over.
var texts = []string{
	"under the alders",
	"two lines\nand a tab\t, \"quoted\" \\ and {braced}",
	"1 lb 10 oz at 23:40 → half-light, 14 °C",
	"<b>&amp;</b> \u2028 é e\u0301 \U0001F41F \x00 \x7f",
	"null",
}

func (w *World) text() string { return pick(w, texts) }

func (w *World) bytes(n int) []byte {
	b := make([]byte, n)
	for i := range b {
		b[i] = byte(w.Rand.Uint32())
	}
	return b
}

func (w *World) sha256() string { return hex.EncodeToString(w.bytes(32)) }

func (w *World) instant() time.Time {
	return time.Unix(1e9+w.Rand.Int64N(5e8), w.Rand.Int64N(1e9)).UTC()
}

func (w *World) between(lo, hi float64) float64 { return lo + (hi-lo)*w.Rand.Float64() }

func (w *World) place() geo.Place {
	return geo.Place{Lat: units.Degrees(w.between(54.8, 55.1)), Lon: units.Degrees(w.between(-4.6, -4.2))}
}

func (w *World) lux(lo, hi float64) units.Lux { return units.Lux(w.between(lo, hi)) }

var lengthUnits = []units.LengthUnit{units.Millimetre, units.Centimetre, units.Metre, units.Inch, units.Foot}

// length draws a length between lo and hi metres.
func (w *World) length(lo, hi float64) units.Length {
	return units.Length{M: units.Metres(w.between(lo, hi)), Unit: pick(w, lengthUnits)}
}

func (w *World) weight() units.Weight {
	return units.Weight{G: units.Grams(w.between(1, 9000)), Unit: pick(w, []units.WeightUnit{units.Gram, units.Kilogram, units.Pound})}
}

func (w *World) temperature(lo, hi float64) units.Temperature {
	return units.Temperature{C: units.Celsius(w.between(lo, hi)), Unit: pick(w, []units.TemperatureUnit{units.DegreeCelsius, units.DegreeFahrenheit})}
}
