package inspect

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/draw"
)

var (
	white = draw.Gray(255)
	black = draw.Gray(0)
	page  = draw.Rectangle(draw.R(0, 0, 200, 100))
)

func text(s string, x, y float64, c draw.Color) draw.Text {
	return draw.Text{S: s, At: draw.Pt(x, y), Font: draw.Font{Size: 14}, Color: c}
}

func list(show func(l *draw.List)) *draw.List {
	l := draw.NewList(draw.Size{W: 200, H: 100})
	show(l)
	return l
}

// Ensure that the backdrop is what lies under the text when it is drawn: not what is
// far from it, nor what comes after it, nor what a clip hides.
func TestBackdrop(t *testing.T) {
	l := list(func(l *draw.List) {
		l.Fill(page, draw.NonZero, draw.Solid(draw.Hex("#224466")))
		l.Fill(draw.Rectangle(draw.R(100, 0, 100, 100)), draw.NonZero, draw.Solid(draw.Hex("#ff0000")))
		l.PushClip(draw.Rectangle(draw.R(0, 0, 200, 20)))
		l.Fill(page, draw.NonZero, draw.Solid(draw.Hex("#00ff00")))
		l.PopClip()
		l.Text(text("Cauldron", 10, 60, white))
		l.Fill(page, draw.NonZero, draw.Solid(white))
	})
	op := l.TextBoxes()[0].Op
	assert.Equal(t, Ground{{draw.Hex("#224466"), 1}}, Backdrop(l, op))
	assert.Empty(t, Backdrop(l, 0), "no text, no ground")

	l.Text(text("half", 90, 60, white)) // on white by now
	assert.Equal(t, Ground{{white, 1}}, Backdrop(l, l.Len()-1))

	bare := list(func(l *draw.List) { l.Text(text("paper", 10, 60, black)) })
	assert.Equal(t, Ground{{white, 1}}, Backdrop(bare, 0), "unpainted counts as paper")
}

// Ensure that a text half on light and half on dark is judged by the worse half, that
// transparency is seen through, and that a halo of its own saves it.
func TestContrastOfGround(t *testing.T) {
	halves := func(x draw.Text) float64 {
		l := list(func(l *draw.List) {
			l.Fill(page, draw.NonZero, draw.Solid(black))
			l.Fill(draw.Rectangle(draw.R(50, 0, 150, 100)), draw.NonZero, draw.Solid(draw.RGBA(255, 255, 255, 200)))
			l.Text(x)
		})
		return Backdrop(l, l.Len()-1).Contrast(x.Color)
	}
	x := text("Sand Bend", 20, 60, white)
	assert.InDelta(t, draw.Contrast(white, draw.Gray(200)), halves(x), 0.05)
	x.Halo = draw.Halo{Width: 2, Color: black}
	assert.InDelta(t, 21, halves(x), 2)
	assert.Equal(t, 21.0, Ground(nil).Contrast(white))
}

func TestGradientBackdrop(t *testing.T) {
	l := list(func(l *draw.List) {
		l.Fill(page, draw.NonZero, draw.Horizontal(draw.Stop{At: 0, Color: black}, draw.Stop{At: 200, Color: white}))
		l.Text(text("through the dusk", 5, 60, white))
	})
	g := Backdrop(l, 1)
	assert.Greater(t, len(g), 50)
	end := l.TextBoxes()[0].Box.Max.X
	want := draw.Contrast(white, draw.Horizontal(draw.Stop{At: 0, Color: black}, draw.Stop{At: 200, Color: white}).Along(end))
	assert.InDelta(t, want, g.Contrast(white), 0.35)
}

func TestWeak(t *testing.T) {
	l := list(func(l *draw.List) {
		l.Fill(page, draw.NonZero, draw.Solid(white))
		l.Text(text("good", 10, 30, draw.Hex("#767676")))
		l.Text(text("pale", 10, 60, draw.Hex("#777777")))
		small := text("small", 10, 90, black)
		small.Font.Size = 11.9
		l.Text(small)
	})
	faults := Weak(l, 4.5, 12)
	require.Len(t, faults, 2)
	assert.Equal(t, `"pale" (call 2): contrast 4.48 is below 4.50: #777777 on mostly #ffffff`, faults[0].String())
	assert.Equal(t, `"small" (call 3): 11.9 dp is smaller than 12.0`, faults[1].String())
}

func TestOverlapsAndOutside(t *testing.T) {
	l := list(func(l *draw.List) {
		l.Text(text("Kirk Stream", 10, 30, black))
		l.Text(text("Alder Pool", 60, 35, black))
		l.Text(text("clear of both", 10, 60, black))
		l.Text(text("runs off the page", 150, 90, black))
		l.PushClip(draw.Rectangle(draw.R(0, 0, 30, 100)))
		l.Text(text("clipped", 10, 80, black))
	})
	over := Overlaps(l)
	require.Len(t, over, 1)
	assert.Equal(t, `"Alder Pool" (call 1): overlaps "Kirk Stream"`, over[0].String())
	out := Outside(l)
	require.Len(t, out, 2)
	assert.Equal(t, "runs off the page", out[0].Text)
	assert.Equal(t, "clipped", out[1].Text)
}

// Ensure that a text on a mark is found, whichever was drawn first, by the paint of
// the mark and not by its box.
func TestCovers(t *testing.T) {
	marks := func(o draw.Op) bool { return o.Title == "marks" }
	diagonal := draw.Line(draw.Pt(0, 0), draw.Pt(200, 100))
	l := list(func(l *draw.List) {
		l.Fill(page, draw.NonZero, draw.Solid(white))
		l.Text(text("on the line", 70, 55, black))
		l.Group("marks")
		l.Stroke(diagonal, draw.Stroke{Width: 2}, black)
		l.PushClip(draw.Rectangle(draw.R(0, 90, 10, 10)))
		l.Fill(page, draw.NonZero, draw.Solid(black)) // hidden but for a corner
		l.PopClip()
		l.EndGroup()
		l.Text(text("off the line", 110, 20, black))
		l.Text(text("also on it", 20, 25, black))
	})
	faults := Covers(l, marks)
	require.Len(t, faults, 2)
	assert.Equal(t, []string{"on the line", "also on it"}, []string{faults[0].Text, faults[1].Text})
	assert.Empty(t, Covers(l, func(draw.Op) bool { return false }))

	// A mark drawn faint, as one that lies after the cursor, is a mark still.
	faint := list(func(l *draw.List) {
		l.Group("marks")
		l.Stroke(diagonal, draw.Stroke{Width: 2}, draw.Fade(black, 0.3))
		l.EndGroup()
		l.Text(text("on the line", 70, 55, black))
	})
	assert.Len(t, Covers(faint, marks), 1)
}

// Ensure that the sample has what it is there for: every kind of call, nothing dropped.
func TestSample(t *testing.T) {
	kinds := map[draw.Kind]int{}
	l := Sample()
	for i := range l.Len() {
		kinds[l.Op(i).Kind]++
	}
	assert.Len(t, kinds, int(draw.EndGroupOp)+1)
	assert.Equal(t, kinds[draw.PushClipOp], kinds[draw.PopClipOp])
	assert.Equal(t, kinds[draw.GroupOp], kinds[draw.EndGroupOp])
}
