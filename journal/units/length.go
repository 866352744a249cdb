package units

import "math/big"

var (
	inchSI = big.NewRat(254, 10000)
	footSI = big.NewRat(3048, 10000)
)

var lengthUnits = []unit{
	{name: "mm", stored: "mm", si: big.NewRat(1, 1000), words: []string{"mm", "millimetre", "millimetres", "millimeter", "millimeters"}},
	{name: "cm", stored: "cm", si: big.NewRat(1, 100), words: []string{"cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"}},
	{name: "m", stored: "m", si: big.NewRat(1, 1), words: []string{"m", "metre", "metres", "meter", "meters"}, small: "cm", ratio: 100},
	{name: "in", stored: "in", si: inchSI, words: []string{"in", "ins", "inch", "inches", `"`}},
	{name: "ft", stored: "ft", si: footSI, words: []string{"ft", "foot", "feet", "'"}, small: "in", ratio: 12, bare: true},
}

var lengths = quantity{
	noun: "a length", units: lengthUnits, listed: "mm, cm, m, in and ft",
	min: 1e-4, minText: "0.1 mm", max: 1000, maxText: "1000 m",
}

var levels = quantity{
	noun: "a level", units: lengthUnits, listed: "mm, cm, m, in and ft", signed: true,
	min: -1000, minText: "1000 m below the mark", max: 1000, maxText: "1000 m",
}

// ParseLength reads a length above nothing, from 0.1 mm to 1000 m: 52 cm, 1 1/2 in,
// 1½", 3/4 in, 9 ft 6 in, 2'3", 1,5 m. A bare number is in def. The error is an
// *Error with one sentence for the field.
func ParseLength(text string, def LengthUnit) (Length, error) {
	return parseLength(&lengths, text, def)
}

// ParseLevel reads a height against a mark, such as a river level on a gauge
// board: as ParseLength, but it may be nothing or negative, down to -1000 m.
func ParseLevel(text string, def LengthUnit) (Length, error) {
	return parseLength(&levels, text, def)
}

func parseLength(q *quantity, text string, def LengthUnit) (Length, error) {
	m, u, err := q.parse(text, string(def))
	if err != nil {
		return Length{}, err
	}
	return Length{Metres(m), LengthUnit(u)}, nil
}

// LengthOf returns a length given as a number of its unit: LengthOf(1.5, Inch).
// An unknown unit counts as metres.
func LengthOf(n float64, u LengthUnit) Length {
	if !finite(n) {
		return Length{Metres(n), u}
	}
	v := exact(n)
	return Length{Metres(nearest(v.Mul(v, u.si()))), u}
}

func (u LengthUnit) si() *big.Rat {
	if f := lengths.find(string(u)); f != nil {
		return f.si
	}
	return big.NewRat(1, 1)
}

// Known reports whether u is one of the length units.
func (u LengthUnit) Known() bool {
	switch u {
	case Millimetre, Centimetre, Metre, Inch, Foot:
		return true
	}
	return false
}

// Number returns the length as a number of unit u, unrounded.
func (l Length) Number(u LengthUnit) float64 {
	if !finite(float64(l.M)) {
		return float64(l.M)
	}
	v := exact(float64(l.M))
	return nearest(v.Quo(v, u.si()))
}

// String prints the length in its unit as typed, with the digits needed to read
// back the same value: 52 cm, ¾ in, 1½ in, 1.3 in, 9 ft 6 in, 2.35 ft. Inches are
// fractions where they are exact eighths. A value that is not finite prints as "unknown".
func (l Length) String() string {
	x := float64(l.M)
	if !finite(x) {
		return "unknown"
	}
	minus := ""
	if x < 0 {
		minus, x = "-", -x
	}
	switch l.Unit {
	case Inch:
		return minus + mixed(asTyped(x, inchSI)) + " in"
	case Foot:
		return minus + pairTyped(x, inchSI, 12, "ft", "in", false)
	case Millimetre, Centimetre:
		return minus + plain(asTyped(x, l.Unit.si())) + " " + string(l.Unit)
	}
	return minus + plain(asTyped(x, Metre.si())) + " m"
}

// Round returns the length in unit u, rounded to what a tape shows: 1 mm, 0.1 cm,
// 0.01 m, 0.01 in (an eighth when within 0.005 in of it).
func (l Length) Round(u LengthUnit) Length {
	x := float64(l.M)
	if !finite(x) {
		return Length{l.M, u}
	}
	switch u {
	case Millimetre:
		x = roundTo(x, u.si(), 0, false)
	case Centimetre:
		x = roundTo(x, u.si(), 1, false)
	case Inch, Foot:
		x = roundTo(x, inchSI, 2, true)
	default:
		u, x = Metre, roundTo(x, Metre.si(), 2, false)
	}
	return Length{Metres(x), u}
}

// Format prints the length in a preferred unit, rounded as Round does; in its own
// unit (or with "") it prints as typed.
func (l Length) Format(u LengthUnit) string {
	if u == "" || u == l.Unit {
		return l.String()
	}
	return l.Round(u).String()
}

// Within returns nil when the length lies in [lo, hi], else an *Error naming the
// bound in the unit as typed.
func (l Length) Within(lo, hi Metres) error {
	switch {
	case !finite(float64(l.M)):
		return refuse(OutOfRange, l.String(), "a length is a plain number")
	case l.M < lo:
		return refuse(OutOfRange, l.String(), "%s is too short; the least is %s", l, Length{M: lo}.Round(l.Unit))
	case l.M > hi:
		return refuse(OutOfRange, l.String(), "%s is too long; the most is %s", l, Length{M: hi}.Round(l.Unit))
	}
	return nil
}
