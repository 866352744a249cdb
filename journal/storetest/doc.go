// Package storetest is the one suite that every journal.Store passes: what the
// interface promises, by example, against a model of plain maps in random
// steps, and through a whole journal.Journal in a random walk of adding,
// amending, removing, undoing and doing again.
//
// Random tests print their seed. GLOAMLINE_SEED=n repeats a walk; rapid prints
// how to repeat its own.
package storetest
