package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Factors: NIST SP 811 (2008), appendix B.8: 1 in = 2.54 E-02 m, 1 ft = 3.048 E-01 m, exact.
func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		text string
		def  LengthUnit
		m    Metres
		unit LengthUnit
		out  string
	}{
		{"52 cm", Millimetre, 0.52, Centimetre, "52 cm"},
		{"52cm", Inch, 0.52, Centimetre, "52 cm"},
		{"52", Centimetre, 0.52, Centimetre, "52 cm"},
		{"52.", Centimetre, 0.52, Centimetre, "52 cm"},
		{"52,5 cm", Centimetre, 0.525, Centimetre, "52.5 cm"},
		{"1 1/2 in", Centimetre, 0.0381, Inch, "1½ in"},
		{"1-1/2 in", Centimetre, 0.0381, Inch, "1½ in"},
		{"1½", Inch, 0.0381, Inch, "1½ in"},
		{"1 ½ ins.", Millimetre, 0.0381, Inch, "1½ in"},
		{`1.5"`, Centimetre, 0.0381, Inch, "1½ in"},
		{"1.5''", Centimetre, 0.0381, Inch, "1½ in"},
		{"1.5″", Centimetre, 0.0381, Inch, "1½ in"},
		{"3/4 in", Centimetre, 0.01905, Inch, "¾ in"},
		{"3⁄4 in", Centimetre, 0.01905, Inch, "¾ in"},
		{"7/8 inch", Centimetre, 0.022225, Inch, "⅞ in"},
		{"1.3 in", Centimetre, 0.03302, Inch, "1.3 in"},
		{"32 mm", Inch, 0.032, Millimetre, "32 mm"},
		{"9 ft 6 in", Metre, 2.8956, Foot, "9 ft 6 in"},
		{"9ft6", Metre, 2.8956, Foot, "9 ft 6 in"},
		{`9'6½"`, Metre, 2.9083, Foot, "9 ft 6½ in"},
		{"9’ 6”", Metre, 2.8956, Foot, "9 ft 6 in"},
		{"9 feet and 6 inches", Metre, 2.8956, Foot, "9 ft 6 in"},
		{"9.5 ft", Metre, 2.8956, Foot, "9 ft 6 in"},
		{"2.35 ft", Metre, 0.71628, Foot, "2.35 ft"},
		{"9 ft 10.3 in", Metre, 3.00482, Foot, "9 ft 10.3 in"},
		{"0 ft 3 in", Metre, 0.0762, Foot, "0 ft 3 in"},
		{"12 ft", Metre, 3.6576, Foot, "12 ft"},
		{"1 m 20 cm", Foot, 1.2, Metre, "1.2 m"},
		{"1,25 m", Foot, 1.25, Metre, "1.25 m"},
		{"0,125 m", Foot, 0.125, Metre, "0.125 m"},
		{" \u00a052\u202fCM ", Inch, 0.52, Centimetre, "52 cm"},
		{".5 m", Inch, 0.5, Metre, "0.5 m"},
		{"+2 m", Inch, 2, Metre, "2 m"},
	} {
		got, err := ParseLength(c.text, c.def)
		if assert.NoError(t, err, c.text) {
			assert.Equal(t, Length{c.m, c.unit}, got, c.text)
			assert.Equal(t, c.out, got.String(), c.text)
		}
	}
}

// Ensure that what cannot be read is refused in one sentence that says why.
func TestParseLengthRefuses(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		why  string
	}{
		{"", Empty, "nothing is written here yet"},
		{"  \t", Empty, "nothing is written here yet"},
		{"long", NotANumber, "“long” is not a number with its unit"},
		{"NaN", NotANumber, "“NaN” is not a number with its unit"},
		{"Inf cm", NotANumber, "“Inf cm” is not a number with its unit"},
		{"1e3 m", UnknownUnit, "“e” is not a unit of length here; use mm, cm, m, in and ft"},
		{"0x10 m", UnknownUnit, "“x” is not a unit of length here; use mm, cm, m, in and ft"},
		{"52 lb", UnknownUnit, "“lb” is not a unit of length here; use mm, cm, m, in and ft"},
		{"1 1/0 in", NotANumber, "“1 1/0 in” has a fraction that cannot be worked out"},
		{"1 5/4 in", Ambiguous, "the fraction after 1 should be less than one"},
		{"1 10", Ambiguous, "“1 10” has no unit after 1; write 1 ft 10 in, or one number"},
		{"20-22 cm", Ambiguous, "“20-22 cm” has no unit after 20; write 20 ft 22 in, or one number"},
		{"1,500 m", Ambiguous, "1,500 can be read two ways; write 1500 or 1.500"},
		{"1.500,5 m", Ambiguous, "“1.500,5 m” has two separators; write the number with one decimal point"},
		{"9 ft 14 in", OutOfRange, "14 in is not less than 1 ft, which is 12 in"},
		{"9.5 ft 2 in", Ambiguous, "write whole ft before in, or all of it in ft"},
		{"2 in 9 ft", Ambiguous, "ft does not follow in; write one number, or the larger unit first"},
		{"1 m 20", Ambiguous, "“1 m 20” has no unit after 20"},
		{"1 ft 2 in 3 cm", Ambiguous, "“1 ft 2 in 3 cm” has more numbers than a length"},
		{"-3 cm", OutOfRange, "a length is not less than nothing"},
		{"−3 cm", OutOfRange, "a length is not less than nothing"},
		{"0 cm", OutOfRange, "a length is more than nothing; leave the field empty if it is not known"},
		{"0.01 mm", OutOfRange, "0.01 mm is less than any here; the least is 0.1 mm"},
		{"99999 m", OutOfRange, "99999 m is more than any here; the most is 1000 m"},
		{"9999999999999999999999999999999999999999999999999999999999999999999", NotANumber, "that is too long for one measurement"},
		{"5 \xff", NotANumber, "that is not readable text"},
	} {
		_, err := ParseLength(c.text, Centimetre)
		var e *Error
		if assert.ErrorAs(t, err, &e, c.text) {
			assert.Equal(t, c.kind, e.Kind, c.text)
			assert.Equal(t, c.why, e.Error(), c.text)
		}
	}
}

// Ensure that a river level may stand at or below the mark.
func TestParseLevel(t *testing.T) {
	for text, want := range map[string]Length{
		"-0.12 m":     {-0.12, Metre},
		"minus 3 in":  {-0.0762, Inch},
		"0":           {0, Metre},
		"+0,35":       {0.35, Metre},
		"-1 ft 3 in":  {-0.381, Foot},
		"1.219 m":     {1.219, Metre},
		"−12 cm":      {-0.12, Centimetre},
		"2 ft 1½ in.": {0.6477, Foot},
	} {
		got, err := ParseLevel(text, Metre)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
		again, err := ParseLevel(got.String(), Millimetre)
		require.NoError(t, err, got.String())
		assert.Equal(t, got, again)
	}
	_, err := ParseLevel("-2000 m", Metre)
	assert.ErrorContains(t, err, "the least is 1000 m below the mark")
}

// Ensure that a preferred unit is printed as a tape shows it.
func TestLengthFormat(t *testing.T) {
	for _, c := range []struct {
		l    Length
		unit LengthUnit
		out  string
	}{
		{LengthOf(32, Millimetre), Inch, "1.26 in"}, // 1.2598: no eighth within 0.005
		{LengthOf(19, Millimetre), Inch, "¾ in"},    // 0.7480
		{LengthOf(52, Centimetre), Inch, "20.47 in"},
		{LengthOf(1.5, Inch), Millimetre, "38 mm"},
		{LengthOf(1.5, Inch), Inch, "1½ in"},
		{LengthOf(1.5, Inch), "", "1½ in"},
		{LengthOf(20.5, Inch), Centimetre, "52.1 cm"},
		{LengthOf(3, Metre), Foot, "9 ft 10.11 in"},
		{LengthOf(9, Foot), Metre, "2.74 m"},
		{LengthOf(36.576, Metre), Foot, "120 ft"},
	} {
		assert.Equal(t, c.out, c.l.Format(c.unit), c.l.String())
	}
	assert.InDelta(t, 20.4724, LengthOf(52, Centimetre).Number(Inch), 1e-4)
}

func TestLengthWithin(t *testing.T) {
	fish := LengthOf(52, Metre)
	assert.EqualError(t, fish.Within(0.05, 2), "52 m is too long; the most is 2 m")
	assert.EqualError(t, LengthOf(1, Inch).Within(0.0508, 2), "1 in is too short; the least is 2 in")
	assert.NoError(t, LengthOf(52, Centimetre).Within(0.05, 2))
}

var lengthUnitsAll = []LengthUnit{Millimetre, Centimetre, Metre, Inch, Foot}

// Ensure that print then parse gives the same value and unit, for any value within
// the limits and not only for typed ones.
func TestLengthRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Length{
			Metres(rapid.Float64Range(lengths.min, lengths.max).Draw(t, "m")),
			rapid.SampledFrom(lengthUnitsAll).Draw(t, "unit"),
		}
		got, err := ParseLength(l.String(), rapid.SampledFrom(lengthUnitsAll).Draw(t, "default"))
		if err != nil || got != l {
			t.Fatalf("%v (%.17g %s) read back as %+v, %v", l, float64(l.M), l.Unit, got, err)
		}
	})
}
