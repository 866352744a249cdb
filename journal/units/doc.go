// Package units owns the measured quantities of the journal: light, length,
// weight, temperature and angle.
//
// Bare quantities (Lux, Metres, Grams, Celsius, Degrees) are defined float64
// types, so that a weight cannot be passed for a length. Quantities that a
// person types (Length, Weight, Temperature) keep the metric value together with
// the unit as typed, so that 1 lb 10 oz stays 1 lb 10 oz.
//
// Reading is exact: a typed decimal or fraction is converted by rational
// arithmetic and rounded once, to the nearest float64. Printing with String
// gives the fewest digits that read back to the same value and unit; Format
// prints in a preferred unit, rounded to what a tape or a balance shows.
//
// Conversions are the exact ones of the international yard and pound agreement
// of 1959: 1 in = 25.4 mm, 1 ft = 12 in, 1 lb = 453.59237 g, 1 oz = 1/16 lb; and
// C = (F - 32) x 5/9.
//
// Not done: sentences for people beyond the text of a unit and the reason why an
// input was refused, decimal commas on output, stones, fathoms and kelvin.
// Whether a value makes sense for a fish or a fly is for the journal to say
// (Length.Within, Weight.Within help); the limits here only catch slips of the hand.
package units
