// Package journaltest makes up valid records of every kind, for tests and
// benchmarks of whatever stores, derives or draws nights.
//
// What it makes passes every check of package journal, uses every field, every
// value of every list and every way of not knowing, and is the same again for
// the same seed. It does not look like real fishing: figures are drawn evenly,
// so nothing can be learnt from them.
//
// The people, the water and its beats are invented: Larrick Water in
// south-west Scotland, its Home Beat and Kirk Beat.
package journaltest
