package scene_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// readOut is what the strip says at the cursor.
func readOut(l *draw.List) draw.TextBox {
	for _, b := range l.TextBoxes() {
		if o := l.Op(b.Op); o.Text.Font.Size == 13 && o.Text.Font.Weight == draw.Bold && b.Box.Min.Y < 24 {
			return b
		}
	}
	return draw.TextBox{}
}

// showNight is the night of the demo that is shown first.
func showNight(t *testing.T) *timeline.Night {
	for _, n := range sharedDemo(t) {
		if n.Log.Trip.Evening == demo.Show {
			return n
		}
	}
	t.Fatal("the demo has lost its first night")
	return nil
}

// Ensure that at one width the cursor's words keep one form through every night of the
// demo, cut at no minute, and stay within the picture.
func TestReadOutKeepsItsForm(t *testing.T) {
	for _, n := range sharedDemo(t) {
		for _, width := range []float64{480, 680, 930} {
			forms := map[string]bool{}
			for at := n.From; at.Before(n.To); at = at.Add(23 * time.Minute) {
				l := scene.Strip(n, draw.Size{W: width, H: 390}, scene.Dusk, scene.StripView{Cursor: at}).List
				b := readOut(l)
				s := l.Op(b.Op).Text.S
				require.NotEmpty(t, s)
				assert.False(t, strings.HasSuffix(s, "…"), s)
				assert.LessOrEqual(t, b.Box.Max.X, width, s)
				switch s {
				case words.CursorLine(n, at, words.Prefs{}):
					forms["whole"] = true
				case words.CursorBrief(n, at, words.Prefs{}):
					forms["brief"] = true
				default:
					forms["short"] = true
				}
			}
			if forms["whole"] && forms["brief"] { // where nothing is left out they are the same
				delete(forms, "brief")
			}
			assert.Len(t, forms, 1, "%s at %v: %v", n.Log.Trip.Evening, width, forms)
		}
	}
}

// Ensure that the uprights of sunset, trees grey and the moon, and their names, have a tip.
func TestUprightsHaveTips(t *testing.T) {
	n := showNight(t)
	size := draw.Size{W: 680, H: 390}
	sc := scene.Strip(n, size, scene.Dusk, scene.StripView{Cursor: n.From})
	f := scene.Frame(n, size, scene.StripView{Cursor: n.From})
	for what, at := range map[string]time.Time{words.SunsetMark(n, n.Sky.Sunset[0]): n.Sky.Sunset[0], words.GreyMark(n, n.Grey.At): n.Grey.At} {
		h, ok := sc.At(draw.Pt(f.X(at), f.Plot.Min.Y+3))
		require.True(t, ok, what)
		assert.Contains(t, h.Tip, what)
		assert.Contains(t, h.Tip, "lx")
		assert.Equal(t, journal.Ref{}, h.Ref, "nothing to pick out")
	}
}

// Ensure that the cursor's line crosses no word at any place of the strip.
func TestCursorCrossesNoWord(t *testing.T) {
	size, lines := draw.Size{W: 680, H: 390}, 0
	nights := sharedDemo(t)
	for i, step := 0, 0.0; i < len(nights); i, step = i+5, step+1 {
		lines += crossings(t, nights[i], size, 7+step)
	}
	assert.Greater(t, lines, 200, "the cursor's line was not found")
}

// crossings draws a strip with the cursor at every few dp and counts the pieces of its line.
func crossings(t *testing.T, n *timeline.Night, size draw.Size, step float64) (lines int) {
	f := scene.Frame(n, size, scene.StripView{Cursor: n.From})
	for x := f.Plot.Min.X; x < f.Plot.Max.X; x += step {
		l := scene.Strip(n, size, scene.Dusk, scene.StripView{Cursor: f.At(x)}).List
		boxes := l.TextBoxes()
		for i := range l.Len() {
			o := l.Op(i)
			if o.Kind != draw.StrokeOp || o.Stroke.Width != 1.5 || o.Box.W() > 6 || o.Box.H() < 3 || o.Color != scene.Dusk.Accent {
				continue
			}
			lines++
			for _, b := range boxes {
				line := draw.R(x-0.75, o.Box.Min.Y+3, 1.5, o.Box.H()-6) // the box allows for a cap at each end
				assert.False(t, b.Box.Overlaps(line), "%v crosses %q", x, l.Op(b.Op).Text.S)
			}
		}
	}
	return lines
}
