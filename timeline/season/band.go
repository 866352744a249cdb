package season

import (
	"math"
	"slices"
)

// Band is a band of light, a decade wide, counted from the beat's own threshold at
// which the trees go grey.
type Band int8

// The bands, from light to dark. With the default threshold of 0.3 lx their edges lie at
// 30, 3, 0.3, 0.03 and 0.003 lx.
const (
	Bright  Band = iota // a hundred times the threshold and more
	Glow                // ten to a hundred times
	Half                // up to ten times
	AtGrey              // down to a tenth of the threshold
	Darker              // down to a hundredth
	Blackly             // less
	Bands   = 6
)

// bandEdges are the edges in decades darker than the threshold.
var bandEdges = [Bands - 1]float64{-2, -1, 0, 1, 2}

// Code is the band's name in tables that programs read.
func (b Band) Code() string {
	return [Bands]string{"over_100x", "10x_100x", "1x_10x", "grey", "grey_10th", "grey_100th"}[b]
}

// Factors returns the band's edges in multiples of the threshold; the lightest band has
// no upper end and the darkest ends at 0.
func (b Band) Factors() (from, to float64) {
	from, to = math.Inf(1), 0
	if b > 0 {
		from = math.Pow(10, -bandEdges[b-1])
	}
	if int(b) < len(bandEdges) {
		to = math.Pow(10, -bandEdges[b])
	}
	return from, to
}

// edges returns the edges of the open sky's light over the beat, from light to dark in lux:
// the threshold, where day and night part, and those that house rules name.
func edges(grey float64, extra []float64) []float64 {
	out := []float64{grey}
	for _, e := range extra {
		if e > 0 {
			out = append(out, e)
		}
	}
	slices.Sort(out)
	slices.Reverse(out)
	return slices.Compact(out)
}

// bandOf returns the band of so many decades darker than the threshold.
func bandOf(darker float64) Band {
	for i, e := range bandEdges {
		if darker < e {
			return Band(i)
		}
	}
	return Bands - 1
}

// decadeBins is how many bins a decade has in the fine histogram of light, and farBin
// its last bin on either side.
const (
	decadeBins = 10
	farBin     = 6 * decadeBins
)

func darkBin(darker float64) int16 {
	return int16(min(farBin, max(-farBin, math.Floor(darker*decadeBins))))
}
