package scene_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
)

// readable checks that all texts of a picture can be read.
func readable(t *testing.T, l *draw.List, what string) {
	t.Helper()
	assert.Empty(t, inspect.Weak(l, 4.5, 12), what)
	assert.Empty(t, inspect.Overlaps(l), what)
	assert.Empty(t, inspect.Outside(l), what)
}

// ghostsOf makes ghosts of every second run and of every second fish.
func ghostsOf(n *timeline.Night) scene.Ghosts {
	out := scene.Ghosts{}
	for _, r := range n.Rods {
		for i, run := range r.Runs {
			if i%2 == 1 {
				out[run.Run.Ref()] = scene.Ghost(1 + i/2%2)
			}
		}
	}
	for i, c := range n.Contacts {
		if i%2 == 1 {
			out[c.Ref()] = scene.Accepted
		}
	}
	return out
}

func dashed(l *draw.List) (n int) {
	for i := range l.Len() {
		if op := l.Op(i); op.Kind == draw.StrokeOp && len(op.Stroke.Dash) > 0 {
			n++
		}
	}
	return n
}

func says(l *draw.List) string {
	var out []string
	for i := range l.Len() {
		if op := l.Op(i); op.Kind == draw.TextOp {
			out = append(out, op.Text.S)
		}
	}
	return strings.Join(out, "|")
}

// Ensure that ghosts on sketch and strip are drawn with broken edges, that a fish which is not
// written has no number, that all can be pointed at, and that texts can be read with them.
func TestGhosts(t *testing.T) {
	nights := demoNights(t)
	for _, i := range []int{0, len(nights) / 2, len(nights) - 1} {
		n := nights[i]
		ghosts := ghostsOf(n)
		for _, look := range scene.Looks {
			name := look.Name + " " + n.Log.Trip.Evening.String()
			plain, strip := scene.Strip(n, draw.Size{W: 1000, H: 400}, look, scene.StripView{}), scene.Strip(n, draw.Size{W: 1000, H: 400}, look, scene.StripView{Ghosts: ghosts})
			flat, sketch := scene.Sketch(n, draw.Size{W: 620, H: 300}, look, scene.SketchView{}), scene.Sketch(n, draw.Size{W: 620, H: 300}, look, scene.SketchView{Ghosts: ghosts})
			if len(ghosts) > 0 {
				assert.Greater(t, dashed(strip.List), dashed(plain.List), name)
				assert.Greater(t, dashed(sketch.List), dashed(flat.List), name)
			}
			for _, c := range n.Contacts {
				if ghosts[c.Ref()] != scene.NoGhost {
					assert.Contains(t, "|"+says(strip.List)+"|", "|?|", name)
				}
			}
			for ref := range ghosts {
				_, was := plain.Box(ref)
				_, is := strip.Box(ref)
				assert.Equal(t, was, is, "%s: to be pointed at as before", name)
			}
			readable(t, strip.List, "strip "+name)
			readable(t, sketch.List, "sketch "+name)
		}
	}
}

// Ensure that the lists of files and proposals can be read in each look, that each row and
// button can be pointed at, and that none lies under another.
func TestIntakeLists(t *testing.T) {
	run := journal.Ref{Kind: journal.KindRun, ID: geo.ID{1}}
	sides := scene.IntakeSides{WrittenHead: "Written", Written: "22:35–23:12 run, Alder Pool", ProposedHead: "a very long name of a track from a watch.gpx", Proposed: "22:44–23:29 run, Cauldron"}
	ways := []scene.IntakeWay{{Kind: scene.KeepKind, Label: "keep what is written", Chosen: true}, {Kind: scene.TakeKind, Label: "take the track's run instead"}, {Kind: scene.BothKind, Label: "keep both"}}
	v := scene.IntakeListView{Picked: run}
	for i, do := range []scene.IntakeDo{scene.IntakeLeft, scene.IntakeAccepted, scene.IntakeRejected, scene.IntakeWaits, scene.IntakePast} {
		v.Rows = append(v.Rows, scene.IntakeRow{Ref: journal.Ref{Kind: journal.KindRun, ID: geo.ID{byte(i + 1)}}, Times: "22:44–23:29", What: "run, Cauldron, second run there", Sure: "0.96", Share: 0.96,
			Doubt: "doubtful: it stayed in one place", Do: do, Notes: []string{"changed by hand"}, Conflicts: []scene.IntakeSides{sides, sides}, Ways: ways})
	}
	files := []scene.IntakeFile{
		{ID: geo.ID{1}, Name: "a track with a name that is far too long for the column.gpx", Kind: "gpx", Says: "track of “watch”, 28,515 positions", Notes: []string{"from line 7: out of order"}, More: "and 3 more", Clock: "Clock of “watch”: as it is …", Hint: "its clock was put right by +1 min last time", Picked: true},
		{ID: geo.ID{2}, Name: "broken.gpx", Fault: []string{"Line 1: the file breaks off before its first point.", "Copy or export it again."}},
		{ID: geo.ID{3}, Name: "fish.jpg", Kind: "photo"}, {ID: geo.ID{4}, Name: "river.csv", Kind: "gauge"},
	}
	for _, look := range scene.Looks {
		for _, w := range []float64{400, 900} {
			s := scene.IntakeList(draw.Size{W: w, H: 300}, look, v)
			readable(t, s.List, look.Name)
			for _, k := range []journal.Kind{journal.KindRun, scene.AcceptKind, scene.ChangeKind, scene.RejectKind, scene.KeepKind, scene.TakeKind, scene.BothKind} {
				box, ok := s.Box(journal.Ref{Kind: k, ID: run.ID})
				require.True(t, ok, k)
				if k != journal.KindRun {
					hit, _ := s.At(box.Center())
					assert.Equal(t, k, hit.Ref.Kind, "nothing lies over it")
				}
			}
			_, ok := s.Box(journal.Ref{Kind: scene.AcceptKind, ID: geo.ID{5}})
			assert.False(t, ok, "what was decided before has no box")
		}
		s := scene.IntakeFiles(draw.Size{W: 212, H: 300}, look, files, "none")
		readable(t, s.List, look.Name)
		for _, ref := range []journal.Ref{{Kind: scene.ClockKind, ID: geo.ID{1}}, {Kind: scene.OffKind, ID: geo.ID{1}}, {Kind: scene.SourceKind, ID: geo.ID{2}}} {
			box, ok := s.Box(ref)
			require.True(t, ok, ref.Kind)
			hit, _ := s.At(box.Center())
			assert.Equal(t, ref, hit.Ref)
		}
		readable(t, scene.IntakeList(draw.Size{W: 400, H: 300}, look, scene.IntakeListView{Empty: []string{"Nothing is read in yet.", "Let files fall on the window."}}).List, look.Name)
	}
}

// Ensure that the course of a gauge says its levels, its peak and how it stood, and breaks off
// where nothing was recorded.
func TestCourse(t *testing.T) {
	begin := time.Date(2026, 7, 3, 21, 0, 0, 0, time.UTC)
	v := scene.CourseView{Title: "River at the gauge Kirk Bridge, not at the pool", From: begin, To: begin.Add(33 * time.Hour), Night: [2]time.Time{begin.Add(24 * time.Hour), begin.Add(33 * time.Hour)},
		Cursor: begin.Add(26 * time.Hour), Base: 0.5, Zone: time.UTC, Unit: "m", Says: []string{"at the gauge at 23:00: 0.69 m, falling flood, 9 h since the peak, 32 % of the rise left, 2.4 cm an hour down"}}
	for i := range 132 {
		h := float64(i) / 4
		level := 0.5 + 0.6*math.Exp(-math.Abs(h-16)/8)
		v.Points = append(v.Points, scene.CoursePoint{At: begin.Add(time.Duration(i) * 15 * time.Minute), V: level, Gap: i == 40})
	}
	v.Peak = v.Points[64]
	lines := func(l *draw.List) (n int) {
		for i := range l.Len() {
			if op := l.Op(i); op.Kind == draw.StrokeOp && op.Stroke.Width == 1.6 {
				n++
			}
		}
		return n
	}
	for _, look := range scene.Looks {
		for _, size := range []draw.Size{{W: 1000, H: 126}, {W: 620, H: 112}} {
			l := scene.Course(size, look, v).List
			readable(t, l, look.Name)
			assert.Contains(t, says(l), "1.10 m")
			assert.Contains(t, says(l), "peak 4 Jul 13:00")
			assert.Equal(t, 2, lines(l), "a gap is no line")
		}
	}
	v.Points = v.Points[:1]
	readable(t, scene.Course(draw.Size{W: 620, H: 112}, scene.Dusk, v).List, "one reading")
}
