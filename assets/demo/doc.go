// Package demo makes the demo journal: Larrick Water, an invented river in
// south-west Scotland, with its Home Beat and Kirk Beat, invented people, flies
// described but not named, and two seasons of 24 nights. A seeded generator
// writes them through the journal's own doors, so that everything in it could
// have been typed. Sun and moon are those of the dates; fish come by a simple
// Poisson process whose rates are made up for the purpose and prove nothing. Nor is
// the river a model of one: rain lifts it within the day and it falls exponentially,
// so that floods, colour and warmth of one evening follow from those before.
//
// The same seed gives the same journal, identities included.
package demo
