package draw_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/draw"
)

// marks is three marks, the middle one as told, under a clip of that width.
func marks(mid draw.Color, clip float64, more ...draw.Point) *draw.List {
	l := draw.NewList(draw.Size{W: 300, H: 100})
	l.Fill(draw.Circle(draw.Pt(30, 50), 10), draw.NonZero, draw.Solid(draw.Gray(80)))
	for _, p := range more {
		l.Fill(draw.Circle(p, 5), draw.NonZero, draw.Solid(draw.Gray(120)))
	}
	l.Fill(draw.Circle(draw.Pt(150, 50), 10), draw.NonZero, draw.Solid(mid))
	l.PushClip(draw.Rectangle(draw.R(0, 0, clip, 100)))
	l.Stroke(draw.Line(draw.Pt(0, 90), draw.Pt(300, 90)), draw.Stroke{Width: 2}, draw.Gray(200))
	l.PopClip()
	return l
}

// Ensure that equal lists differ nowhere, and others just where a call came, went,
// changed or was cut otherwise.
func TestDiffer(t *testing.T) {
	var d draw.Differ
	grey, dark := draw.Gray(100), draw.Gray(20)
	boxes, ok := d.Compare(marks(grey, 200), marks(grey, 200))
	require.True(t, ok)
	assert.Empty(t, boxes)

	boxes, _ = d.Compare(marks(grey, 200), marks(dark, 200))
	require.Len(t, boxes, 1)
	assert.InDelta(t, 150, boxes[0].Center().X, 0.5)
	assert.Less(t, boxes[0].W(), 24.0)

	boxes, _ = d.Compare(marks(grey, 200), marks(grey, 212))
	require.Len(t, boxes, 1, "the part that both clips show is the same")
	assert.InDelta(t, 200, boxes[0].Min.X, 0.01)
	assert.InDelta(t, 212, boxes[0].Max.X, 0.01)

	boxes, _ = d.Compare(marks(grey, 200), marks(grey, 200, draw.Pt(250, 20)))
	require.Len(t, boxes, 1)
	assert.InDelta(t, 250, boxes[0].Center().X, 0.5)
	again, _ := d.Compare(marks(grey, 200, draw.Pt(250, 20)), marks(grey, 200))
	assert.Equal(t, boxes, again)

	_, ok = d.Compare(marks(grey, 200), draw.NewList(draw.Size{W: 301, H: 100}))
	assert.False(t, ok, "another size")
	_, ok = d.Compare(nil, marks(grey, 200))
	assert.False(t, ok)
}

// Ensure that a path is known as an upright rectangle only if it is one.
func TestUpright(t *testing.T) {
	r := draw.R(3, 4, 50, 20)
	got, ok := draw.Rectangle(r).Upright()
	require.True(t, ok)
	assert.Equal(t, r, got)
	for name, p := range map[string]draw.Path{
		"nothing": {}, "circle": draw.Circle(draw.Pt(0, 0), 5), "line": draw.Line(draw.Pt(0, 0), draw.Pt(5, 0)),
		"kite":  draw.Polygon([]draw.Point{{X: 0, Y: 5}, {X: 5, Y: 0}, {X: 10, Y: 5}, {X: 5, Y: 10}}),
		"round": draw.RoundRect(r, 4),
	} {
		_, ok := p.Upright()
		assert.False(t, ok, name)
	}
}

// Ensure that what lies a hair from where it lay counts as the same where that is asked
// for, and what lies further off, or has another colour or word, does not.
func TestDifferNear(t *testing.T) {
	list := func(dx float64, c draw.Color, word string) *draw.List {
		l := draw.NewList(draw.Size{W: 300, H: 100})
		l.Stroke(draw.Line(draw.Pt(50+dx, 0), draw.Pt(50, 90)), draw.Stroke{Width: 2}, c)
		l.PushClip(draw.Rectangle(draw.R(0, 0, 200+dx, 100)))
		l.Fill(draw.Rectangle(draw.R(150, 20, 100, 10)), draw.NonZero, draw.Solid(c))
		l.PopClip()
		l.Text(draw.Text{S: word, At: draw.Pt(20+dx, 50), Font: draw.Font{Size: 12}, Color: c})
		return l
	}
	grey := draw.Gray(100)
	base := list(0, grey, "dark")
	for _, c := range []struct {
		near  float64
		other *draw.List
		boxes int
	}{
		{0, list(0.1, grey, "dark"), 3},
		{0.125, list(0.1, grey, "dark"), 0},
		{0.125, list(-0.125, grey, "dark"), 0},
		{0.125, list(0.13, grey, "dark"), 3},
		{0.125, list(0, grey, "grey"), 1},
		{0.125, list(0, draw.Gray(101), "dark"), 3},
	} {
		d := draw.Differ{Near: c.near}
		boxes, ok := d.Compare(base, c.other)
		require.True(t, ok)
		assert.Len(t, boxes, c.boxes, "%v", c)
	}
}
