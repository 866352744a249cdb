package units

import (
	"encoding/json"
	"fmt"
)

// The JSON forms are kept for ever: {"m":0.0254,"unit":"in"}, {"g":737.0876,"unit":"lb"},
// {"c":14.2,"unit":"C"}. The number is SI (°C for temperature), in the shortest digits
// that give the same float64; the unit is the one typed ("" where none was). Reading
// refuses an unknown unit or a missing number rather than guess; null changes nothing.

type jsonLength struct {
	M    *Metres    `json:"m"`
	Unit LengthUnit `json:"unit"`
}

type jsonWeight struct {
	G    *Grams     `json:"g"`
	Unit WeightUnit `json:"unit"`
}

type jsonTemperature struct {
	C    *Celsius        `json:"c"`
	Unit TemperatureUnit `json:"unit"`
}

// UnmarshalJSON reads {"m":0.0254,"unit":"in"}.
func (l *Length) UnmarshalJSON(b []byte) error {
	var v jsonLength
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	if string(b) == "null" {
		return nil
	}
	if v.M == nil || v.Unit != "" && !v.Unit.Known() {
		return fmt.Errorf("a length needs m, a number of metres, and unit, one of mm, cm, m, in, ft")
	}
	*l = Length{*v.M, v.Unit}
	return nil
}

// UnmarshalJSON reads {"g":737.0876,"unit":"lb"}.
func (w *Weight) UnmarshalJSON(b []byte) error {
	var v jsonWeight
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	if string(b) == "null" {
		return nil
	}
	if v.G == nil || v.Unit != "" && !v.Unit.Known() {
		return fmt.Errorf("a weight needs g, a number of grams, and unit, one of g, kg, lb")
	}
	*w = Weight{*v.G, v.Unit}
	return nil
}

// UnmarshalJSON reads {"c":14.2,"unit":"C"}.
func (t *Temperature) UnmarshalJSON(b []byte) error {
	var v jsonTemperature
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	if string(b) == "null" {
		return nil
	}
	if v.C == nil || v.Unit != "" && !v.Unit.Known() {
		return fmt.Errorf("a temperature needs c, a number of degrees Celsius, and unit, C or F")
	}
	*t = Temperature{*v.C, v.Unit}
	return nil
}
