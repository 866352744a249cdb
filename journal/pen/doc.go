// Package pen reads what people write by hand and prints it so that it reads back:
// the moments of a night (Clock), a fly described (ParseDress, PrintDress), the date of
// an evening (ParseDate).
//
// Instants are UTC; texts are local times of the night. Quantities keep the unit in
// which they were typed. Nothing here reads a clock: the night is an input.
package pen
