package units

// Lux is illuminance in lux (lumens per square metre).
type Lux float64

// Metres is a length in metres.
type Metres float64

// Grams is a mass in grams; anglers call it weight.
type Grams float64

// Celsius is a temperature in degrees Celsius.
type Celsius float64

// Degrees is an angle in degrees of arc. Bearings are clockwise from true
// north, altitudes upward from the level horizon.
type Degrees float64

// LengthUnit is the unit in which a length was typed. The texts are the ones
// stored in the journal and must not change.
type LengthUnit string

// The length units. Foot means feet and inches: 9 ft 6 in.
const (
	Millimetre LengthUnit = "mm"
	Centimetre LengthUnit = "cm"
	Metre      LengthUnit = "m"
	Inch       LengthUnit = "in"
	Foot       LengthUnit = "ft"
)

// WeightUnit is the unit in which a weight was typed.
type WeightUnit string

// The weight units. Pound means pounds and ounces: 1 lb 10 oz.
const (
	Gram     WeightUnit = "g"
	Kilogram WeightUnit = "kg"
	Pound    WeightUnit = "lb"
)

// TemperatureUnit is the unit in which a temperature was typed.
type TemperatureUnit string

// The temperature units.
const (
	DegreeCelsius    TemperatureUnit = "C"
	DegreeFahrenheit TemperatureUnit = "F"
)

// Length is a length with the unit as typed. Heights and river levels are
// lengths too and may be negative (see ParseLevel). JSON: {"m":0.0254,"unit":"in"}.
type Length struct {
	M    Metres     `json:"m"`
	Unit LengthUnit `json:"unit"`
}

// Weight is a weight with the unit as typed. JSON: {"g":737.0876,"unit":"lb"}.
type Weight struct {
	G    Grams      `json:"g"`
	Unit WeightUnit `json:"unit"`
}

// Temperature is a temperature with the unit as typed. JSON: {"c":14.2,"unit":"C"}.
type Temperature struct {
	C    Celsius         `json:"c"`
	Unit TemperatureUnit `json:"unit"`
}
