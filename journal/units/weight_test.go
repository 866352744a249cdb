package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Factors: NIST SP 811 (2008), appendix B.8: pound (avoirdupois) 4.535 924 E-01 kg and
// ounce (avoirdupois) 2.834 952 E-02 kg; the pound is 0.453 592 37 kg exactly.
func TestParseWeight(t *testing.T) {
	for _, c := range []struct {
		text string
		def  WeightUnit
		g    Grams
		unit WeightUnit
		out  string
	}{
		{"1 lb 10 oz", Gram, 737.08760125, Pound, "1 lb 10 oz"},
		{"1lb10", Gram, 737.08760125, Pound, "1 lb 10 oz"},
		{"1lb10oz", Gram, 737.08760125, Pound, "1 lb 10 oz"},
		{"1 LB. 10 OZ.", Gram, 737.08760125, Pound, "1 lb 10 oz"},
		{"1 lb, 10 oz", Gram, 737.08760125, Pound, "1 lb 10 oz"},
		{"1 pound and 10 ounces", Gram, 737.08760125, Pound, "1 lb 10 oz"},
		{"2½ lb", Gram, 1133.980925, Pound, "2 lb 8 oz"},
		{"2 1/2", Pound, 1133.980925, Pound, "2 lb 8 oz"},
		{"2.5", Pound, 1133.980925, Pound, "2 lb 8 oz"},
		{"2.10 lb", Gram, 952.543977, Pound, "2.1 lb"},
		{"8 oz", Gram, 226.796185, Pound, "8 oz"},
		{"1 lb 10½ oz", Gram, 751.2623628125, Pound, "1 lb 10½ oz"},
		{"1.3 lb", Gram, 589.670081, Pound, "1.3 lb"},
		{"1 lb 4.37 oz", Gram, 577.47978605625, Pound, "1 lb 4.37 oz"},
		{"740 g", Pound, 740, Gram, "740 g"},
		{"740", Gram, 740, Gram, "740 g"},
		{"0.74 kg", Gram, 740, Kilogram, "0.74 kg"},
		{"0,74 kg", Gram, 740, Kilogram, "0.74 kg"},
		{"0,740 kg", Gram, 740, Kilogram, "0.74 kg"},
		{"1 kg 200 g", Gram, 1200, Kilogram, "1.2 kg"},
		{"1250 grams", Kilogram, 1250, Gram, "1250 g"},
	} {
		got, err := ParseWeight(c.text, c.def)
		if assert.NoError(t, err, c.text) {
			assert.InDelta(t, float64(c.g), float64(got.G), 1e-9, c.text)
			assert.Equal(t, c.unit, got.Unit, c.text)
			assert.Equal(t, c.out, got.String(), c.text)
		}
	}
}

func TestParseWeightRefuses(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		why  string
	}{
		{"1 10", Ambiguous, "“1 10” has no unit after 1; write 1 lb 10 oz, or one number"},
		{"1-10", Ambiguous, "“1-10” has no unit after 1; write 1 lb 10 oz, or one number"},
		{"2.10", Ambiguous, "2.10 could be 2 lb 10 oz or a decimal; write the unit"},
		{"1 lb 16 oz", OutOfRange, "16 oz is not less than 1 lb, which is 16 oz"},
		{"10 oz 1 lb", Ambiguous, "lb does not follow oz; write one number, or the larger unit first"},
		{"1.5 lb 2 oz", Ambiguous, "write whole lb before oz, or all of it in lb"},
		{"1,250 g", Ambiguous, "1,250 can be read two ways; write 1250 or 1.250"},
		{"1 stone", UnknownUnit, "“stone” is not a unit of weight here; use g, kg, lb and oz"},
		{"about 2 lb", NotANumber, "“about 2 lb” is not a number with its unit"},
		{"-1 lb", OutOfRange, "a weight is not less than nothing"},
		{"0", OutOfRange, "a weight is more than nothing; leave the field empty if it is not known"},
		{"300 kg", OutOfRange, "300 kg is more than any here; the most is 100 kg"},
		{"1 lb -3 oz", NotANumber, "“1 lb -3 oz” is not a number with its unit"},
	} {
		_, err := ParseWeight(c.text, Pound)
		var e *Error
		if assert.ErrorAs(t, err, &e, c.text) {
			assert.Equal(t, c.kind, e.Kind, c.text)
			assert.Equal(t, c.why, e.Error(), c.text)
		}
	}
}

func TestWeightFormat(t *testing.T) {
	for _, c := range []struct {
		w    Weight
		unit WeightUnit
		out  string
	}{
		{WeightOf(740, Gram), Pound, "1 lb 10 oz"},
		{WeightOf(740, Gram), Kilogram, "0.74 kg"},
		{WeightOf(1.625, Pound), Gram, "737 g"},
		{WeightOf(1.625, Pound), Pound, "1 lb 10 oz"},
		{WeightOf(450, Gram), Pound, "1 lb"}, // 15.87 oz rounds to the whole pound
		{WeightOf(0.35, Gram), Gram, "0.35 g"},
		{WeightOf(0.35, Gram), Pound, "0.01 oz"},
		{WeightOf(0.011, Pound), Gram, "5 g"},
	} {
		assert.Equal(t, c.out, c.w.Format(c.unit), c.w.String())
	}
	assert.InDelta(t, 4.7620, WeightOf(2160, Gram).Number(Pound), 1e-4) // 2160 / 453.59237
}

func TestWeightWithin(t *testing.T) {
	assert.EqualError(t, WeightOf(60, Pound).Within(10, 20000), "60 lb is too heavy; the most is 44 lb 1 oz")
	assert.EqualError(t, WeightOf(5, Gram).Within(10, 20000), "5 g is too light; the least is 10 g")
	assert.NoError(t, WeightOf(2, Pound).Within(10, 20000))
}

var weightUnitsAll = []WeightUnit{Gram, Kilogram, Pound}

// Ensure that print then parse gives the same value and unit.
func TestWeightRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := Weight{
			Grams(rapid.Float64Range(weights.min, weights.max).Draw(t, "g")),
			rapid.SampledFrom(weightUnitsAll).Draw(t, "unit"),
		}
		got, err := ParseWeight(w.String(), rapid.SampledFrom(weightUnitsAll).Draw(t, "default"))
		if err != nil || got != w {
			t.Fatalf("%v (%.17g %s) read back as %+v, %v", w, float64(w.G), w.Unit, got, err)
		}
	})
}

// Ensure that every whole number of ounces survives being printed and read.
func TestOuncesRoundTrip(t *testing.T) {
	for oz := 1; oz <= 40*16; oz++ {
		w := WeightOf(float64(oz)/16, Pound)
		got, err := ParseWeight(w.String(), Gram)
		require.NoError(t, err)
		require.Equal(t, w, got)
		require.NotContains(t, w.String(), ".")
	}
}
