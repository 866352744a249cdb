// Package pen reads what people write by hand and prints it so that it reads back:
// scribbled lines and pages (Read, Print), the moments of a night (Clock), a fly described
// (ParseDress, PrintDress), the date of an evening (ParseDate). GRAMMAR.md is the page for
// those who write.
//
// A line is cut into atoms, atoms become tokens with all their meanings (the table of
// words, the names of the night, times, quantities), tokens become clauses where both sides
// of a comma read by themselves. A clause is tried as each kind of entry with each
// combination of meanings; what holds together is a reading. Equally good readings are all
// given, never one chosen for the person.
//
// Instants are UTC; texts are local times of the night. Quantities keep the unit in which
// they were typed and are read exactly. Spans are bytes. Nothing here reads a clock or a
// store: the night is an input (Context).
//
// Not done, to keep from guessing: spelling put right, counts of fish (“two fish”), sense
// made of sentences, “how much it rose”. Entries already in the night are not
// changed. English only.
package pen
