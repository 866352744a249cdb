package scene_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// isCursor picks the line in time out of a list.
func isCursor(o draw.Op) bool { return o.Kind == draw.StrokeOp && o.Title == words.CursorTitle() }

// Ensure that at every zoom from ten minutes to a day, wherever the cursor stands and
// whatever the size, no text of the strip lies on another, is cut off or too weak, and
// the cursor crosses none.
func TestStripCanBeReadAtEveryZoom(t *testing.T) {
	nights := tellingNights(t)
	names := []string{"busy", "unsure", "white", "moonless", "empty", "nobody"}
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(names).Draw(t, "night")
		n := nights[name]
		span := time.Duration(rapid.IntRange(10, 24*60).Draw(t, "minutes")) * time.Minute
		from := n.Start.Add(time.Duration(rapid.Int64Range(0, int64(n.End.Sub(n.Start)-span)/int64(time.Second)).Draw(t, "from")) * time.Second)
		v := scene.StripView{From: from, To: from.Add(span)}
		if rapid.Bool().Draw(t, "with cursor") {
			v.Cursor = from.Add(time.Duration(rapid.Float64Range(0, 1).Draw(t, "cursor") * float64(span)))
		}
		size := draw.Size{W: rapid.Float64Range(760, 1500).Draw(t, "W"), H: rapid.Float64Range(330, 520).Draw(t, "H")}
		look := rapid.SampledFrom(scene.Looks).Draw(t, "look")
		l := scene.Strip(n, size, look, v).List
		for what, faults := range map[string][]inspect.Fault{
			"overlaps": inspect.Overlaps(l), "cut off": inspect.Outside(l), "under the cursor": inspect.Covers(l, isCursor), "weak": inspect.Weak(l, 4.5, 12),
		} {
			require.Empty(t, faults, "%s: %s", name, what)
		}
	})
}

// Ensure that at every zoom the axis has clock times, evenly spread over the clock, and not too many.
func TestClockAtEveryZoom(t *testing.T) {
	n := tellingNights(t)["busy"]
	rapid.Check(t, func(t *rapid.T) {
		minutes := rapid.IntRange(10, 24*60).Draw(t, "minutes")
		from := n.Start.Add(time.Duration(rapid.IntRange(0, 24*60-minutes).Draw(t, "from")) * time.Minute)
		size := draw.Size{W: rapid.Float64Range(760, 1500).Draw(t, "W"), H: 400}
		l := scene.Strip(n, size, scene.Dusk, scene.StripView{From: from, To: from.Add(time.Duration(minutes) * time.Minute)}).List
		var clocks []string
		for _, b := range l.TextBoxes() {
			if b.Text.At.Y > size.H-20 {
				clocks = append(clocks, b.Text.S)
			}
		}
		require.GreaterOrEqual(t, len(clocks), 3, "%v", clocks)
		require.LessOrEqual(t, len(clocks), 20, "%v", clocks)
		at := make([]int, len(clocks)) // minutes of the day
		for i, c := range clocks {
			of, err := time.Parse("15:04", c)
			require.NoError(t, err)
			at[i] = of.Hour()*60 + of.Minute()
		}
		step := (at[1] - at[0] + 24*60) % (24 * 60)
		require.Contains(t, []int{1, 2, 5, 10, 15, 30, 60, 120, 180, 360}, step, "%v", clocks)
		for i := range at { // each a whole number of steps from midnight, none left out
			require.Zero(t, at[i]%step, "%v", clocks)
			require.Equal(t, (at[0]+i*step)%(24*60), at[i], "%v", clocks)
		}
	})
}

// Ensure that trees grey keeps its name where names are many and the strip is narrow.
func TestGreyKeepsItsName(t *testing.T) {
	for name, n := range tellingNights(t) {
		if n.Grey.At.IsZero() {
			continue
		}
		for w := 560.0; w < 1300; w += 60 {
			l := scene.Strip(n, draw.Size{W: w, H: 420}, scene.Dusk, scene.StripView{}).List
			found := false
			for _, b := range l.TextBoxes() {
				found = found || b.Text.S == words.GreyMark(n, n.Grey.At)
			}
			require.True(t, found, "%s at %v", name, w)
		}
	}
}
