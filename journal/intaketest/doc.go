// Package intaketest walks a beat through a night with known truth, and records it as a
// receiver of satellites would: for tests of whatever makes a night of a track.
//
// A person comes from the car, fishes pools from the head down a pace at a time, stops to
// change a fly or land a fish, walks back up for a second run, rests away from the
// water, walks past pools without fishing them, and goes home. The receiver adds a slow
// drift, jitter, reflections (multipath), single wild positions and silences, at one fix a
// second. Params has every figure with its unit; they are guesses at what a watch does in a
// valley under trees, made before anything was tuned to them, and no measurement.
//
// The seeds for tuning and those for the check are apart (TuneSeeds, CheckSeeds). Whoever
// tunes with the second set has no check left.
//
// The same seed and parameters give the same night. Water and pools are invented. Not done:
// heights, deep wading and crossing the river.
package intaketest
