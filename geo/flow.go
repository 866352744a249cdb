package geo

import (
	"gloamline/journal/units"
)

// flow is what is known of the way the water runs.
type flow struct {
	centre Path // middle of the river, downstream; nil without both banks
	guide  Path // any line that runs downstream: centre, a bank, or pool after pool
	left   Path // longest line of each bank, downstream; nil if not drawn
	right  Path //
	sure   bool // the banks or the order of the pools say which way; else only as drawn
	banks  bool // it was the banks
}

// findFlow derives the flow. Where bank lines are drawn and it can be told on which
// side of them the water lies, their names decide: going downstream the true left
// bank is on the left. Else the pools decide by their order; else a bank line counts
// as drawn downstream. water are points on the water, such as the corners of pools;
// middles the middles of the pools in order.
func findFlow(left, right, water, middles Path) flow {
	f := flow{left: left, right: right}
	switch {
	case len(left) > 1 && len(right) > 1:
		if ends(left, right) > ends(left, right.Reversed()) {
			right = right.Reversed()
		}
		if side(left, right.Even(stations)) > 0 {
			left, right = left.Reversed(), right.Reversed()
		}
		f.left, f.right, f.sure, f.banks = left, right, true, true
		f.centre = between(left, right)
		f.guide = f.centre
	case len(left) > 1:
		if side(left, water) > 0 {
			f.left = left.Reversed()
		}
		f.guide, f.sure = f.left, len(water) > 0
		f.banks = f.sure
	case len(right) > 1:
		if side(right, water) < 0 {
			f.right = right.Reversed()
		}
		f.guide, f.sure = f.right, len(water) > 0
		f.banks = f.sure
	case len(middles) > 1:
		f.guide, f.sure = middles, true
	}
	return f
}

// Into how many points a bank is taken apart to compare it with another: as many as it
// was drawn with, within these limits.
const stations, maxStations = 64, 512

// ends is the distance between the ends of two lines, first to first, last to last.
func ends(a, b Path) units.Metres {
	return a[0].Distance(b[0]) + a[len(a)-1].Distance(b[len(b)-1])
}

// side says on which side of a line most points lie: positive for left.
func side(line Path, points []Point) int {
	n := 0
	for _, p := range points {
		if line.Foot(p).Left {
			n++
		} else {
			n--
		}
	}
	return n
}

// between returns the line midway between two banks that run the same way. Each
// point of the left bank is joined to the nearest of the right that lies no further
// back than the one before, so that a bend cannot make the line run backwards.
func between(left, right Path) Path {
	n := min(max(stations, len(left)), maxStations)
	var out Path
	reached := units.Metres(-1)
	for _, p := range left.Even(n) {
		f := right.Foot(p)
		if f.Chainage <= reached {
			continue
		}
		reached = f.Chainage
		out = append(out, p.lerp(f.At, 0.5))
	}
	if len(out) < 2 {
		return nil
	}
	return out
}
