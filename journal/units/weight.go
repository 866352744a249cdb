package units

import "math/big"

var (
	ounceSI = big.NewRat(45359237, 1600000)
	poundSI = big.NewRat(45359237, 100000)
	kiloSI  = big.NewRat(1000, 1)
	gramSI  = big.NewRat(1, 1)
)

var weights = quantity{
	noun: "a weight", listed: "g, kg, lb and oz",
	min: 0.01, minText: "0.01 g", max: 100_000, maxText: "100 kg",
	units: []unit{
		{name: "lb", stored: "lb", si: poundSI, words: []string{"lb", "lbs", "pound", "pounds"}, small: "oz", ratio: 16, bare: true},
		{name: "oz", stored: "lb", si: ounceSI, words: []string{"oz", "ozs", "ounce", "ounces"}},
		{name: "kg", stored: "kg", si: kiloSI, words: []string{"kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"}, small: "g", ratio: 1000},
		{name: "g", stored: "g", si: gramSI, words: []string{"g", "gr", "gm", "gms", "gram", "grams", "gramme", "grammes"}},
	},
}

// ParseWeight reads a weight above nothing, from 0.01 g to 100 kg: 1 lb 10 oz,
// 1lb10, 2½ lb, 10 oz, 740 g, 0.74 kg, 0,74 kg. A bare number is in def; two bare
// numbers, and a bare 2.10 where pounds are the default, are refused with a hint.
// Ounces alone are kept as pounds and ounces. The error is an *Error.
func ParseWeight(text string, def WeightUnit) (Weight, error) {
	g, u, err := weights.parse(text, string(def))
	if err != nil {
		return Weight{}, err
	}
	return Weight{Grams(g), WeightUnit(u)}, nil
}

// WeightOf returns a weight given as a number of its unit: WeightOf(0.74, Kilogram).
// An unknown unit counts as grams.
func WeightOf(n float64, u WeightUnit) Weight {
	if !finite(n) {
		return Weight{Grams(n), u}
	}
	v := exact(n)
	return Weight{Grams(nearest(v.Mul(v, u.si()))), u}
}

func (u WeightUnit) si() *big.Rat {
	switch u {
	case Pound:
		return poundSI
	case Kilogram:
		return kiloSI
	}
	return gramSI
}

// Known reports whether u is one of the weight units.
func (u WeightUnit) Known() bool { return u == Gram || u == Kilogram || u == Pound }

// Number returns the weight as a number of unit u, unrounded.
func (w Weight) Number(u WeightUnit) float64 {
	if !finite(float64(w.G)) {
		return float64(w.G)
	}
	v := exact(float64(w.G))
	return nearest(v.Quo(v, u.si()))
}

// String prints the weight in its unit as typed, with the digits needed to read
// back the same value: 740 g, 0.74 kg, 1 lb 10 oz, 12½ oz, 1.3 lb. A value that is not
// finite prints as "unknown".
func (w Weight) String() string {
	x := float64(w.G)
	if !finite(x) {
		return "unknown"
	}
	minus := ""
	if x < 0 {
		minus, x = "-", -x
	}
	switch w.Unit {
	case Pound:
		return minus + pairTyped(x, ounceSI, 16, "lb", "oz", true)
	case Kilogram:
		return minus + plain(asTyped(x, kiloSI)) + " kg"
	}
	return minus + plain(asTyped(x, gramSI)) + " g"
}

// Round returns the weight in unit u, rounded to what a spring balance shows: 1 g,
// 0.01 kg, 1 oz. A weight under 10 g, as of a fly, keeps 0.1 g, and under 1 oz 0.01 oz.
func (w Weight) Round(u WeightUnit) Weight {
	x := float64(w.G)
	if !finite(x) {
		return Weight{w.G, u}
	}
	switch u {
	case Pound:
		places := 0
		if x < nearest(ounceSI) {
			places = 2
		}
		x = roundTo(x, ounceSI, places, false)
	case Kilogram:
		places := 2
		if x < 100 {
			places = 4
		}
		x = roundTo(x, kiloSI, places, false)
	default:
		places := 0
		if x < 10 {
			places = 1
		}
		u, x = Gram, roundTo(x, gramSI, places, false)
	}
	return Weight{Grams(x), u}
}

// Format prints the weight in a preferred unit, rounded as Round does; in its own
// unit (or with "") it prints as typed.
func (w Weight) Format(u WeightUnit) string {
	if u == "" || u == w.Unit {
		return w.String()
	}
	return w.Round(u).String()
}

// Within returns nil when the weight lies in [lo, hi], else an *Error naming the
// bound in the unit as typed.
func (w Weight) Within(lo, hi Grams) error {
	switch {
	case !finite(float64(w.G)):
		return refuse(OutOfRange, w.String(), "a weight is a plain number")
	case w.G < lo:
		return refuse(OutOfRange, w.String(), "%s is too light; the least is %s", w, Weight{G: lo}.Round(w.Unit))
	case w.G > hi:
		return refuse(OutOfRange, w.String(), "%s is too heavy; the most is %s", w, Weight{G: hi}.Round(w.Unit))
	}
	return nil
}
