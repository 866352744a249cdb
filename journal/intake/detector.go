package intake

import "time"

// Detector are the settings by which runs are found in a track. Most were settled once, on
// the tuning nights of package intaketest; changing any of them by a third either way
// costs at most four in a hundred ends there.
type Detector struct {
	// Positions.
	Window time.Duration // a position is the median over this time
	Memory time.Duration // positions nearer in time err together, and count as one
	Apart  time.Duration // a longer silence parts a track in two
	AlongM float64       // standard error of a position along a pool, metres
	OutM   float64       // and beside its water
	Cap    float64       // log likelihood that one position can cost at most

	// What the log likelihood of a position is that belongs to no pool.
	Elsewhere float64 // while resting: the border of a pool lies where both are alike
	Walking   float64

	// Speeds over the window, metres a second.
	WalkMS, WalkSpread, StandMS float64
	SpeedWeight                 float64 // speeds of neighbouring moments say the same

	// The course through a pool, in steps of ten seconds. Chances need not add up to one.
	BinM                float64 // a pool is parted into lengths of about this, metres
	Down, Skip, Back    float64 // to the next length, the one after, and back up
	LeaveTail, LeaveMid float64
	WalkStop, WalkRest  float64
	RestStop, Stray     float64

	// What counts as a run.
	Least   time.Duration // shorter ones do not
	Advance float64       // least share of the pool's length gone down it
	StayOut float64       // one who does not go down must stand so near the water, metres
	StayMin time.Duration // for so long
	Bridge  time.Duration // leaving the pool for less does not end a run
	Settle  time.Duration // from coming to the head to the first cast
	ReelIn  time.Duration // from the last cast to walking off
}

// Usual returns the settings in use.
func Usual() Detector {
	return Detector{
		Window: time.Minute, Memory: 3 * time.Minute, Apart: 2 * time.Hour, AlongM: 12, OutM: 10, Cap: 6,
		Elsewhere: 2.5, Walking: 2,
		WalkMS: 0.9, WalkSpread: 0.35, StandMS: 0.2, SpeedWeight: 0.25,
		BinM: 8, Down: 0.5, Skip: 0.1, Back: 0.1, LeaveTail: 1. / 20, LeaveMid: 1. / 500,
		WalkStop: 1. / 30, WalkRest: 1. / 60, RestStop: 1. / 90, Stray: 1e-4,
		Least: 5 * time.Minute, Advance: 0.45, StayOut: 4, StayMin: 20 * time.Minute, Bridge: 2 * time.Minute,
		Settle: 50 * time.Second, ReelIn: 30 * time.Second,
	}
}
