package season

import (
	"math"

	"gloamline/journal"
)

// Again says what a later run of the night through a pool did otherwise than the run before
// it there, whichever rod that was.
type Again uint8

// What it may say. Flies are compared if both leaders are known, speed and depth if both are.
const (
	FliesKnown Again = 1 << iota
	OtherFlies
	OtherSize // the longest dressing differs, by over a millimetre
	SpeedKnown
	OtherSpeed
	DepthKnown
	OtherDepth
)

// Has reports whether it says all of these.
func (a Again) Has(what Again) bool { return a&what == what }

// again fills in RunDigest.Again. A run is what it was for most of its hours.
func (d *Digest) again() {
	type fished struct {
		run *RunDigest
		rig *RigDigest
		way *WayDigest
	}
	type nth struct {
		pool journal.ID
		n    int
	}
	runs := map[nth]fished{}
	later := false
	for ri := range d.Rods {
		r := &d.Rods[ri]
		rigs, ways := mostly(r)
		for i := range r.Runs {
			f := fished{run: &r.Runs[i]}
			if k := rigs[i]; k >= 0 {
				f.rig = &r.Rigs[k]
			}
			if k := ways[i]; k >= 0 {
				f.way = &r.Ways[k]
			}
			runs[nth{f.run.Pool, f.run.Nth}] = f
			later = later || f.run.Nth > 1
		}
	}
	if !later {
		return
	}
	for key, now := range runs {
		if then, ok := runs[nth{key.pool, key.n - 1}]; ok {
			now.run.Again = compareRuns(then.rig, now.rig, then.way, now.way)
		}
	}
}

// mostly returns the rig and the way that each run had for most of its hours, -1 for none.
func mostly(r *RodDigest) (rigs, ways []int) {
	rigs, ways = make([]int, len(r.Runs)), make([]int, len(r.Runs))
	type share struct {
		run int16
		k   int16
	}
	byRig, byWay := map[share]float64{}, map[share]float64{}
	for _, c := range r.Cells {
		byRig[share{c.Run, c.Rig}] += c.Hours
		byWay[share{c.Run, c.Way}] += c.Hours
	}
	pick := func(by map[share]float64, run, n int) int {
		best, most := -1, by[share{int16(run), -1}]
		for k := range n {
			if h := by[share{int16(run), int16(k)}]; h > most {
				best, most = k, h
			}
		}
		return best
	}
	for i := range r.Runs {
		rigs[i], ways[i] = pick(byRig, i, len(r.Rigs)), pick(byWay, i, len(r.Ways))
	}
	return rigs, ways
}

func compareRuns(rig, rigNow *RigDigest, way, wayNow *WayDigest) (a Again) {
	if rig != nil && rigNow != nil && len(rig.Flies) > 0 && len(rigNow.Flies) > 0 {
		a |= FliesKnown
		if !sameFlies(rig.Flies, rigNow.Flies) {
			a |= OtherFlies
		}
		if was, is := longestOf(rig.Flies), longestOf(rigNow.Flies); known(was) && known(is) && math.Abs(was-is) > 1 {
			a |= OtherSize
		}
	}
	if way == nil || wayNow == nil {
		return a
	}
	if way.Speed != "" && wayNow.Speed != "" {
		a |= SpeedKnown
		if way.Speed != wayNow.Speed {
			a |= OtherSpeed
		}
	}
	if way.Depth != "" && wayNow.Depth != "" {
		a |= DepthKnown
		if way.Depth != wayNow.Depth {
			a |= OtherDepth
		}
	}
	return a
}

func sameFlies(a, b []FlyDigest) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].Fly != b[i].Fly || a[i].Position != b[i].Position {
			return false
		}
	}
	return true
}

// longestOf is the longest dressing on a leader in millimetres, not a number if that of some
// fly is unknown.
func longestOf(flies []FlyDigest) float64 {
	most := 0.0
	for _, f := range flies {
		if !known(f.LengthMM) {
			return math.NaN()
		}
		most = math.Max(most, f.LengthMM)
	}
	return most
}
