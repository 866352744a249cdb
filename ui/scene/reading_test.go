package scene_test

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
)

// demoNights builds every night of the demo journal.
func demoNights(t testing.TB) []*timeline.Night {
	t.Helper()
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Unix(0, 0) })
	require.NoError(t, err)
	require.NoError(t, demo.Write(j, demo.Seed))
	trips, err := j.Trips()
	require.NoError(t, err)
	var out []*timeline.Night
	for _, trip := range trips {
		n, err := timeline.Load(j, trip.ID)
		require.NoError(t, err)
		out = append(out, n)
	}
	return out
}

// pictures draws every scene of a night in a look, the cursor there or nowhere.
func pictures(n *timeline.Night, look scene.Look, cursor time.Time) map[string]*draw.List {
	out := map[string]*draw.List{}
	for _, s := range []draw.Size{{W: 1000, H: 380}, {W: 1400, H: 420}} {
		out[fmt.Sprintf("strip %gx%g", s.W, s.H)] = scene.Strip(n, s, look, scene.StripView{Cursor: cursor}).List
	}
	for _, s := range []draw.Size{{W: 620, H: 300}, {W: 900, H: 420}} {
		out[fmt.Sprintf("sketch %gx%g", s.W, s.H)] = scene.Sketch(n, s, look, scene.SketchView{Cursor: cursor}).List
	}
	out["log"] = scene.Log(n, 340, look, scene.LogView{Cursor: cursor}).List
	if cursor.IsZero() {
		for i, p := range scene.Page(n, look, scene.PageView{}) {
			out[fmt.Sprintf("page %d", i+1)] = p
		}
	}
	return out
}

// Ensure that every text of every scene can be read: at least 4.5:1 against what
// lies behind it (WCAG 2.1, 1.4.3) and 12 dp, whole, and on no other text.
func TestTextsCanBeRead(t *testing.T) {
	nights := demoNights(t)
	step := 8
	if testing.Short() {
		step = 24
	}
	seen := map[string]int{}
	for i := 0; i < len(nights); i += step {
		n := nights[i]
		mid := n.From.Add(n.To.Sub(n.From) / 2)
		for _, look := range scene.Looks {
			for _, cursor := range []time.Time{{}, n.From, mid} {
				for name, l := range pictures(n, look, cursor) {
					for what, faults := range map[string][]inspect.Fault{
						"weak": inspect.Weak(l, 4.5, 12), "overlap": inspect.Overlaps(l), "outside": inspect.Outside(l),
					} {
						for _, f := range faults {
							key := look.Name + " " + name + " " + what
							if seen[key]++; seen[key] <= 3 {
								assert.Fail(t, "a text is hard to read", "%s, night of %s, cursor %s: %s", key, n.Log.Trip.Evening, cursor, f)
							}
						}
					}
				}
			}
		}
	}
	for k, v := range seen {
		t.Logf("%4d %s", v, k)
	}
}
