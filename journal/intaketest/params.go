package intaketest

import "gloamline/journal/units"

// Range is drawn from evenly.
type Range struct{ Lo, Hi float64 }

// Params are how the person walks and the receiver errs. Lengths in metres, M, times in
// seconds, S, or minutes, Min.
type Params struct {
	Hours float64 // of the track, at one fix a second

	// The beat, where none is given.
	Pools    Range // how many
	PoolM    Range // length of a pool
	WidthM   Range // of the water
	BetweenM Range // from the tail of a pool to the head of the next

	// The person.
	CarM       Range   // from the water to the car
	WalkMS     Range   // metres a second, drawn for each way
	PathM      Range   // of the path behind the water's edge, drawn for each night
	WadeM      Range   // into the water while fishing, drawn for each run
	Prepare    Range   // seconds at the head before the first cast
	ReelIn     Range   // seconds at the tail after the last
	DownMMin   Range   // metres a minute down the pool
	LongestMin float64 // a run that would last longer is fished faster
	Stops      Range   // in a run, to change a fly or land a fish: how many
	StopMin    Range   // and for how long
	StopOutM   Range   // how far back onto the bank
	Second     float64 // chance of a second run at once
	RestMin    Range   // before it, at the head, in half of them; else none
	Skip       float64 // chance of walking past a pool
	Return     float64 // chance, after a pool, of going on at any other pool of the beat
	Pause      float64 // chance of a rest between two pools
	PauseMin   Range
	PauseM     Range // of the place of rest from the water's edge

	// Time at the water without fishing, which no track can tell from fishing.
	Wait     float64 // chance of waiting at the head before a run
	Sit      float64 // chance of sitting at the tail after one
	Watch    float64 // chance of a rest at the water of a pool
	WaterMin Range   // how long each lasts

	// The receiver.
	DriftM     Range // root mean square distance of the slow drift, drawn for each night
	DriftS     Range // its time constant, drawn for each night
	SmoothS    Range // the receiver's own smoothing of the drift
	JitterM    float64
	BiasM      Range // constant for the night, in any direction
	SpikesHour float64
	SpikeM     Range
	SpikeS     Range
	FarNight   Range // single positions a kilometre or more away: how many
	FarM       Range
	GapsHour   float64 // silences
	GapS       Range
	TwinsHour  float64 // fixes recorded twice
}

// Common is a night of pauses away from the water, under some trees.
func Common() Params {
	return Params{
		Hours: 8,
		Pools: Range{4, 7}, PoolM: Range{45, 120}, WidthM: Range{12, 28}, BetweenM: Range{25, 90},
		CarM: Range{150, 400}, WalkMS: Range{0.5, 1.3}, PathM: Range{4, 14}, WadeM: Range{0, 4},
		Prepare: Range{0, 120}, ReelIn: Range{0, 60}, DownMMin: Range{1, 2.6}, LongestMin: 75,
		Stops: Range{0, 3}, StopMin: Range{1, 6}, StopOutM: Range{0, 5},
		Second: 0.35, RestMin: Range{4, 20}, Skip: 0.25, Return: 0.1,
		Pause: 0.35, PauseMin: Range{8, 35}, PauseM: Range{15, 80},
		DriftM: Range{5, 20}, DriftS: Range{60, 400}, SmoothS: Range{15, 40}, JitterM: 0.8, BiasM: Range{0, 6},
		SpikesHour: 8, SpikeM: Range{25, 120}, SpikeS: Range{2, 25},
		FarNight: Range{0, 3}, FarM: Range{1000, 6000}, GapsHour: 1.5, GapS: Range{5, 120}, TwinsHour: 4,
	}
}

// Hard is Common with long stays at the water in which nobody fishes.
func Hard() Params {
	p := Common()
	p.Wait, p.Sit, p.Watch, p.WaterMin = 0.15, 0.1, 0.05, Range{6, 20}
	return p
}

// TuneSeeds are the nights a detector may be tuned on.
func TuneSeeds() []uint64 { return seeds(1, 60) }

// CheckSeeds are kept for the check.
func CheckSeeds() []uint64 { return seeds(1001, 120) }

func seeds(from uint64, n int) []uint64 {
	out := make([]uint64, n)
	for i := range out {
		out[i] = from + uint64(i)
	}
	return out
}

func metres(v float64) units.Metres { return units.Metres(v) }
