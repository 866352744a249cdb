package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Fixed points: NIST SP 811 (2008), appendix B.8: t/°C = (t/°F - 32)/1.8.
func TestParseTemperature(t *testing.T) {
	for _, c := range []struct {
		text string
		def  TemperatureUnit
		c    Celsius
		unit TemperatureUnit
		out  string
	}{
		{"14.2", DegreeCelsius, 14.2, DegreeCelsius, "14.2 °C"},
		{"14,2 °C", DegreeFahrenheit, 14.2, DegreeCelsius, "14.2 °C"},
		{"14.2ºc", DegreeFahrenheit, 14.2, DegreeCelsius, "14.2 °C"},
		{"14 ℃", DegreeFahrenheit, 14, DegreeCelsius, "14 °C"},
		{"58 F", DegreeCelsius, 14.444444444444445, DegreeFahrenheit, "58 °F"},
		{"58°F", DegreeCelsius, 14.444444444444445, DegreeFahrenheit, "58 °F"},
		{"58", DegreeFahrenheit, 14.444444444444445, DegreeFahrenheit, "58 °F"},
		{"32 fahrenheit", DegreeCelsius, 0, DegreeFahrenheit, "32 °F"},
		{"-40", DegreeFahrenheit, -40, DegreeFahrenheit, "-40 °F"},
		{"-2", "", -2, DegreeCelsius, "-2 °C"},
		{"minus 2 degrees", DegreeCelsius, -2, DegreeCelsius, "-2 °C"},
		{"14 degrees celsius", DegreeFahrenheit, 14, DegreeCelsius, "14 °C"},
		{"14 deg. C", DegreeFahrenheit, 14, DegreeCelsius, "14 °C"},
		{"0", DegreeCelsius, 0, DegreeCelsius, "0 °C"},
		{"14½", DegreeCelsius, 14.5, DegreeCelsius, "14.5 °C"},
	} {
		got, err := ParseTemperature(c.text, c.def)
		if assert.NoError(t, err, c.text) {
			assert.Equal(t, Temperature{c.c, c.unit}, got, c.text)
			assert.Equal(t, c.out, got.String(), c.text)
		}
	}
}

func TestParseTemperatureRefuses(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		why  string
	}{
		{"", Empty, "nothing is written here yet"},
		{"°C", NotANumber, "“°C” is not a number with its unit"},
		{"58", OutOfRange, "58 is hotter than any here; if Fahrenheit is meant, write 58 F"},
		{"150 F", OutOfRange, "150 F is hotter than any here; the most is 50 °C"},
		{"287 K", UnknownUnit, "“k” is not a unit of temperature here; use C or F"},
		{"-300", OutOfRange, "-300 is colder than any here; the least is -50 °C"},
		{"14 15", Ambiguous, "“14 15” has more numbers than a temperature"},
		{"14 °C 57 °F", Ambiguous, "“14 °C 57 °F” has more numbers than a temperature"},
		{"nan", NotANumber, "“nan” is not a number with its unit"},
	} {
		_, err := ParseTemperature(c.text, DegreeCelsius)
		var e *Error
		if assert.ErrorAs(t, err, &e, c.text) {
			assert.Equal(t, c.kind, e.Kind, c.text)
			assert.Equal(t, c.why, e.Error(), c.text)
		}
	}
}

func TestTemperatureFormat(t *testing.T) {
	assert.Equal(t, "58 °F", TemperatureOf(14.4, DegreeCelsius).Format(DegreeFahrenheit))
	assert.Equal(t, "14.4 °C", TemperatureOf(58, DegreeFahrenheit).Format(DegreeCelsius))
	assert.Equal(t, "14.2 °C", TemperatureOf(14.2, DegreeCelsius).Format(""))
	assert.InDelta(t, 68, TemperatureOf(20, DegreeCelsius).Number(DegreeFahrenheit), 1e-12)
}

// Ensure that print then parse gives the same value and unit.
func TestTemperatureRoundTrip(t *testing.T) {
	both := []TemperatureUnit{DegreeCelsius, DegreeFahrenheit}
	rapid.Check(t, func(t *rapid.T) {
		x := Temperature{
			Celsius(rapid.Float64Range(float64(coldest), float64(hottest)).Draw(t, "c")),
			rapid.SampledFrom(both).Draw(t, "unit"),
		}
		if x.C != 0 && x.C < 1e-20 && x.C > -1e-20 {
			t.Skip("a hair from zero needs more decimals than are printed")
		}
		got, err := ParseTemperature(x.String(), rapid.SampledFrom(both).Draw(t, "default"))
		require.NoError(t, err)
		if got != x && !(x.C == 0 && got.C == 0) {
			t.Fatalf("%v (%.17g %s) read back as %+v", x, float64(x.C), x.Unit, got)
		}
	})
}
