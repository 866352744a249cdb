package scene

import (
	"slices"

	"gloamline/ui/draw"
)

// gaps returns what is left of a..b without the stretches that are taken, in order.
func gaps(a, b float64, taken [][2]float64) [][2]float64 {
	taken = slices.Clone(taken)
	slices.SortFunc(taken, func(x, y [2]float64) int {
		switch {
		case x[0] < y[0]:
			return -1
		case x[0] > y[0]:
			return 1
		}
		return 0
	})
	var out [][2]float64
	for _, t := range taken {
		if t[0] > a {
			out = append(out, [2]float64{a, min(t[0], b)})
		}
		a = max(a, t[1])
		if a >= b {
			return out
		}
	}
	return append(out, [2]float64{a, b})
}

// across returns the stretches of x that boxes take of a level line, down those of y
// that they take of an upright one.
func across(boxes []draw.Rect, line draw.Rect) [][2]float64 {
	var out [][2]float64
	for _, b := range boxes {
		if b.Overlaps(line) {
			out = append(out, [2]float64{b.Min.X, b.Max.X})
		}
	}
	return out
}

func down(boxes []draw.Rect, line draw.Rect) [][2]float64 {
	var out [][2]float64
	for _, b := range boxes {
		if b.Overlaps(line) {
			out = append(out, [2]float64{b.Min.Y, b.Max.Y})
		}
	}
	return out
}
