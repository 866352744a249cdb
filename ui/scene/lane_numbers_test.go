package scene_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// inLanes counts each fish's number below the plot, and the runs' names there.
func inLanes(n *timeline.Night, size draw.Size) map[string]int {
	v := scene.StripView{Cursor: n.To}
	l, f := scene.Strip(n, size, scene.Dusk, v).List, scene.Frame(n, size, v)
	out := map[string]int{}
	for _, b := range l.TextBoxes() {
		if b.Box.Min.Y > f.Plot.Max.Y {
			out[l.Op(b.Op).Text.S]++
		}
	}
	return out
}

// Ensure that every fish's number stands in its rod's lane in a window of 1280 by 800, and
// that the pools keep their names there.
func TestLanesHaveTheirNumbers(t *testing.T) {
	all, lacking := 0, 0
	for _, n := range sharedDemo(t) {
		got := inLanes(n, draw.Size{W: 680, H: 393})
		for _, c := range n.Contacts {
			all++
			if got[words.ContactNumber(n, c)] == 0 {
				lacking++
				t.Logf("%s: %s", n.Log.Trip.Evening, words.ContactNumber(n, c))
			}
		}
	}
	assert.Zero(t, lacking, "of %d", all)
	for _, n := range sharedDemo(t) {
		bare := *n
		bare.Contacts = nil
		assert.GreaterOrEqual(t, poolNames(n), poolNames(&bare), "%s: a number has taken the place of a name", n.Log.Trip.Evening)
	}
}

// poolNames counts the names of pools in the lanes, whole or shortened.
func poolNames(n *timeline.Night) (names int) {
	for s, k := range inLanes(n, draw.Size{W: 680, H: 393}) {
		for _, p := range n.Beat.Pools {
			head, _, cut := strings.Cut(s, "…")
			if s == p.Name || strings.HasPrefix(s, p.Name+",") || strings.HasPrefix(s, p.Name+" ") || cut && strings.HasPrefix(p.Name, head) {
				names += k
				break
			}
		}
	}
	return names
}
