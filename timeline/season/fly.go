package season

import (
	"math"

	"gloamline/journal"
)

// The classes of dressing length, by the lengths that flies are tied to: half an inch,
// three quarters, 1, 1 1/2, 2, 3 inches and longer. Each reaches half way to the next.
var (
	lengthCodes = []string{"half_inch", "three_quarter_inch", "1_inch", "1_and_half_inch", "2_inch", "3_inch", "longer"}
	lengthEnds  = []float64{0.625, 0.875, 1.25, 1.75, 2.5, 4.5} // inches
)

const inchMM = 25.4

// LongFly is from which dressing length on a fly counts as a long one, millimetres.
const LongFly = 2.5 * inchMM

// LengthClass returns the index of a dressing's class, -1 if its length is unknown.
func LengthClass(mm float64) int {
	if math.IsNaN(mm) {
		return -1
	}
	for i, e := range lengthEnds {
		if mm < e*inchMM {
			return i
		}
	}
	return len(lengthEnds)
}

// LengthCode names a class in tables that programs read.
func LengthCode(class int) string { return lengthCodes[class] }

// LengthEnds returns from which length to which a class reaches, in millimetres; the last
// has no end.
func LengthEnds(class int) (from, to float64) {
	to = math.Inf(1)
	if class > 0 {
		from = lengthEnds[class-1] * inchMM
	}
	if class < len(lengthEnds) {
		to = lengthEnds[class] * inchMM
	}
	return from, to
}

// byFly makes rows from a property of the fly: hours of every fly on the leader, fish of
// the fly that they came to. class returns -1 where it is unknown.
func byFly(class func(*at, *FlyDigest) int) func(*at, *Fish, []int) []int {
	return func(a *at, f *Fish, out []int) []int {
		if f != nil {
			if !f.HasFly {
				return out
			}
			if k := class(a, &f.Fly); k >= 0 {
				out = append(out, k)
			}
			return out
		}
		rig := a.rig()
		if rig == nil {
			return out
		}
		for i := range rig.Flies {
			k := class(a, &rig.Flies[i])
			if k < 0 {
				continue
			}
			again := false
			for _, o := range out {
				again = again || o == k
			}
			if !again {
				out = append(out, k)
			}
		}
		return out
	}
}

func lengthRow(_ *at, f *FlyDigest) int { return LengthClass(f.LengthMM) }

func hotRow(_ *at, f *FlyDigest) int { return int(f.HotSpot) - int(No) }

func toneRow(_ *at, f *FlyDigest) int { return indexOf(journal.Tones, f.Tone) }

func bulkRow(_ *at, f *FlyDigest) int { return indexOf(journal.Silhouettes, f.Silhouette) }

func indexOf[T comparable](list []T, v T) int {
	for i, x := range list {
		if x == v {
			return i
		}
	}
	return -1
}

func texts[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, v := range list {
		out[i] = string(v)
	}
	return out
}
