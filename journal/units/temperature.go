package units

import (
	"math/big"
	"strings"
)

// Bounds of a temperature a person can meet at a river, in degrees Celsius (our own
// choice): outside them a unit was most likely mistaken.
const (
	coldest Celsius = -50
	hottest Celsius = 50
)

// degreeSigns drops the signs for degrees, which say nothing the letter does not.
var degreeSigns = strings.NewReplacer("°", " ", "º", " ", "˚", " ", "℃", " c", "℉", " f")

var temperatureWords = map[string]TemperatureUnit{
	"c": DegreeCelsius, "celsius": DegreeCelsius, "centigrade": DegreeCelsius, "degc": DegreeCelsius,
	"f": DegreeFahrenheit, "fahrenheit": DegreeFahrenheit, "degf": DegreeFahrenheit,
}

// ParseTemperature reads a temperature from -50 to 50 °C: 14.2, 14,2 °C, 58 F, -2.
// A bare number is in def (DegreeCelsius when def is not known). The error is an *Error.
func ParseTemperature(text string, def TemperatureUnit) (Temperature, error) {
	m, bad := scan(text, degreeSigns)
	if bad != nil {
		return Temperature{}, bad
	}
	if len(m.parts) > 1 {
		return Temperature{}, refuse(Ambiguous, m.text, "“%s” has more numbers than a temperature", m.text)
	}
	u, bad := temperatureUnit(m, def)
	if bad != nil {
		return Temperature{}, bad
	}
	n := m.parts[0].value
	if m.negative {
		n.Neg(n)
	}
	t := Temperature{Celsius(nearest(toCelsius(n, u))), u}
	switch {
	case t.C > hottest && u == DegreeCelsius && nearest(n) <= 122:
		return Temperature{}, refuse(OutOfRange, m.text, "%s is hotter than any here; if Fahrenheit is meant, write %s F", m.text, m.parts[0].number)
	case t.C > hottest:
		return Temperature{}, refuse(OutOfRange, m.text, "%s is hotter than any here; the most is 50 °C", m.text)
	case t.C < coldest:
		return Temperature{}, refuse(OutOfRange, m.text, "%s is colder than any here; the least is -50 °C", m.text)
	}
	return t, nil
}

func temperatureUnit(m measure, def TemperatureUnit) (TemperatureUnit, *Error) {
	word := m.parts[0].unitWord
	for _, degrees := range []string{"degrees", "degree", "degs", "deg"} {
		if rest, ok := strings.CutPrefix(word, degrees); ok && (rest == "" || rest[0] == ' ' || rest[0] == '.') {
			word = strings.Trim(rest, " .")
			break
		}
	}
	if word == "" {
		if def.Known() {
			return def, nil
		}
		return DegreeCelsius, nil
	}
	if u, ok := temperatureWords[word]; ok {
		return u, nil
	}
	return "", refuse(UnknownUnit, m.text, "“%s” is not a unit of temperature here; use C or F", word)
}

// TemperatureOf returns a temperature given as a number of its unit.
func TemperatureOf(n float64, u TemperatureUnit) Temperature {
	if !finite(n) {
		return Temperature{Celsius(n), u}
	}
	return Temperature{Celsius(nearest(toCelsius(exact(n), u))), u}
}

func toCelsius(n *big.Rat, u TemperatureUnit) *big.Rat {
	c := new(big.Rat).Set(n)
	if u == DegreeFahrenheit {
		c.Sub(c, big.NewRat(32, 1))
		c.Mul(c, big.NewRat(5, 9))
	}
	return c
}

func fromCelsius(c *big.Rat, u TemperatureUnit) *big.Rat {
	n := new(big.Rat).Set(c)
	if u == DegreeFahrenheit {
		n.Mul(n, big.NewRat(9, 5))
		n.Add(n, big.NewRat(32, 1))
	}
	return n
}

// Known reports whether u is one of the temperature units.
func (u TemperatureUnit) Known() bool { return u == DegreeCelsius || u == DegreeFahrenheit }

// Number returns the temperature as a number of unit u, unrounded.
func (t Temperature) Number(u TemperatureUnit) float64 {
	if !finite(float64(t.C)) {
		return float64(t.C)
	}
	return nearest(fromCelsius(exact(float64(t.C)), u))
}

// String prints the temperature in its unit as typed, with the digits needed to
// read back the same value: 14.2 °C, 58 °F. A value that is not finite prints as
// "unknown".
func (t Temperature) String() string {
	if !finite(float64(t.C)) {
		return "unknown"
	}
	u := t.Unit
	if !u.Known() {
		u = DegreeCelsius
	}
	same := func(d *big.Rat) bool { return nearest(toCelsius(d, u)) == float64(t.C) }
	return plain(shortest(fromCelsius(exact(float64(t.C)), u), same)) + " °" + string(u)
}

// Round returns the temperature in unit u, rounded to a tenth of a degree Celsius
// or a whole degree Fahrenheit.
func (t Temperature) Round(u TemperatureUnit) Temperature {
	if !finite(float64(t.C)) {
		return Temperature{t.C, u}
	}
	places := 1
	if u == DegreeFahrenheit {
		places = 0
	} else {
		u = DegreeCelsius
	}
	n := rounded(fromCelsius(exact(float64(t.C)), u), places)
	return Temperature{Celsius(nearest(toCelsius(n, u))), u}
}

// Format prints the temperature in a preferred unit, rounded as Round does; in its
// own unit (or with "") it prints as typed.
func (t Temperature) Format(u TemperatureUnit) string {
	if u == "" || u == t.Unit {
		return t.String()
	}
	return t.Round(u).String()
}
