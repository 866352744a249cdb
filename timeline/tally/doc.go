// Package tally counts things and sums time: stretches of time, their union,
// intersection and difference, cutting at boundaries, and the expected number
// of moments in each part when the moments are known only to within a spread.
// It has never heard of what it counts.
//
// # Units and rules
//
// Instants are time.Time, lengths time.Duration (whole nanoseconds), so that
// cutting a stretch in any way and adding the parts gives exactly the whole.
// Every stretch is half open: it holds its beginning and not its end, so two
// stretches that meet share nothing and miss nothing.
//
// An uncertain moment is uniform on [Lo, Hi]. Counts per part are therefore
// expected values and need not be whole numbers; over parts that cover
// everything they add up to the number of moments, to rounding (1e-12 of it).
//
// # Uncertain ends
//
// A total of time takes each uncertain end at the middle of its spread: for ends
// in a certain order that is the expected length. Where a stretch with uncertain
// ends is cut, Loose gives the expected time in each part, and the parts again
// add up to the expected length.
//
// Not done: spreads other than the uniform, and ends that depend on each other.
package tally
