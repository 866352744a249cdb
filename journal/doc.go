// Package journal owns what a person writes down about nights on a river:
// trips and rods, the closed set of entries, flies, boxes, rigs, house rules,
// people, the beats they fish and the sources a night was rebuilt from. It
// checks what is logged, turns every edit into one Change that can be undone,
// and says which Store it needs. It knows nothing of files, light or screens.
//
// Inputs are stored, results are derived: lux, the fly in hand, hours fished
// and counts are computed elsewhere from what stands here, so a better light
// model improves old nights.
//
// Instants are UTC. A night runs from local noon to the next local noon in the
// zone of its trip and is named by the date of its evening. Quantities carry
// their unit in their type (package units); latitudes and longitudes are WGS84
// degrees.
//
// Moments that hang on other entries are resolved by Log, once, and in a way
// that depends neither on the order of the entries nor on their identities.
// Whatever is stored has been checked by itself (Check), against what it refers
// to and against its night, and has been proved to read back as it was. Faults
// that stood before, in records which an act does not touch, do not hold it up;
// Journal.Check lists them. A version of a kind is for ever: a change of its
// members is a new version with an upcaster, and testdata/envelopes keeps the
// old ones.
//
// Errors are *Error values with a Kind that a program can test; the sentences
// that people read live in ui/words.
//
// Not done here: merging two copies of a journal (Change already carries what
// that needs), keeping a Track from naming a night that was removed later, and any judgement whether fishing or wading is allowed or safe.
package journal
