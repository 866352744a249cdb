package draw

import (
	"image"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Ensure that the lines of a list say all there is to a picture, to 0.01 dp.
func TestListString(t *testing.T) {
	l := NewList(Size{100, 50.5})
	l.Group("pools\n& marks")
	l.Fill(Rectangle(R(1, 2, 3, 4)), NonZero, Solid(Hex("#123456")))
	l.Fill(Circle(Pt(0, 0), 1), EvenOdd, Vertical(Stop{0, Hex("#fff")}, Stop{9.999, Hex("#008")}, Stop{20, Hex("#00000000")}))
	l.PushClip(Line(Pt(-0.001, 0), Pt(1.0/3, 2)))
	l.Stroke(Line(Pt(0, 0), Pt(5, 5)), Stroke{Width: 1.5, Dash: []float64{3}, Phase: 1, Cap: RoundCap, Join: BevelJoin}, Hex("#ffffff80"))
	l.PopClip()
	l.Text(Text{S: "3 lb 2 oz", At: Pt(7, 8), Font: Font{Medium, 12}, Color: Gray(255), Anchor: End, Align: Centre, Angle: -45, Halo: Halo{2, Gray(0)}})
	l.Image(image.NewGray(image.Rect(0, 0, 4, 3)), R(10, 10, 40, 30))
	l.EndGroup()
	assert.Equal(t, strings.TrimLeft(`
size 100,50.5
group "pools & marks"
fill #123456 M1,2 L4,2 L4,6 L1,6 Z
fill evenodd down 0:#ffffff 10:#000088 20:#00000000 M1,0 C1,0.55 0.55,1 0,1 C-0.55,1 -1,0.55 -1,0 C-1,-0.55 -0.55,-1 0,-1 C0.55,-1 1,-0.55 1,0 Z
clip M0,0 L0.33,2
stroke 1.5 dash 3 3 phase 1 round-cap bevel-join #ffffff80 M0,0 L5,5
end clip
text "3 lb 2 oz" at 7,8 end centre turned -45 medium 12 #ffffff halo 2 #000000
image (4,3) at 10,10 size 40,30
end group
`, "\n"), l.String())
}

// Ensure that each kind of odd call is dropped and leaves the list as it was.
func TestOddCallsAreDropped(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good, white := Rectangle(R(0, 0, 9, 9)), Gray(255)
	text := Text{S: "x", Font: Font{Size: 12}, Color: white}
	odd := map[string]func(l *List){
		"empty fill":      func(l *List) { l.Fill(Path{}, NonZero, Solid(white)) },
		"NaN fill":        func(l *List) { l.Fill(Rectangle(R(nan, 0, 1, 1)), NonZero, Solid(white)) },
		"far fill":        func(l *List) { l.Fill(Rectangle(R(0, 0, 1e9, 1)), NonZero, Solid(white)) },
		"unseen fill":     func(l *List) { l.Fill(good, NonZero, Solid(RGBA(1, 1, 1, 0))) },
		"odd stops":       func(l *List) { l.Fill(good, NonZero, Horizontal(Stop{nan, white})) },
		"unseen stops":    func(l *List) { l.Fill(good, NonZero, Horizontal(Stop{0, Color{}}, Stop{1, Color{}})) },
		"infinite stroke": func(l *List) { l.Stroke(Line(Pt(0, 0), Pt(inf, 0)), Stroke{Width: 1}, white) },
		"no width":        func(l *List) { l.Stroke(good, Stroke{}, white) },
		"NaN width":       func(l *List) { l.Stroke(good, Stroke{Width: nan}, white) },
		"unseen stroke":   func(l *List) { l.Stroke(good, Stroke{Width: 1}, Color{}) },
		"no text":         func(l *List) { x := text; x.S = " \n "; l.Text(x) },
		"no size":         func(l *List) { x := text; x.Font.Size = 0; l.Text(x) },
		"NaN size":        func(l *List) { x := text; x.Font.Size = nan; l.Text(x) },
		"NaN place":       func(l *List) { x := text; x.At.Y = nan; l.Text(x) },
		"NaN angle":       func(l *List) { x := text; x.Angle = nan; l.Text(x) },
		"NaN halo":        func(l *List) { x := text; x.Halo = Halo{nan, white}; l.Text(x) },
		"unseen text":     func(l *List) { x := text; x.Color.A = 0; l.Text(x) },
		"no image":        func(l *List) { l.Image(nil, R(0, 0, 1, 1)) },
		"empty image":     func(l *List) { l.Image(image.NewGray(image.Rectangle{}), R(0, 0, 1, 1)) },
		"flat image":      func(l *List) { l.Image(image.NewGray(image.Rect(0, 0, 1, 1)), R(0, 0, 0, 1)) },
		"lone pop":        func(l *List) { l.PopClip() },
		"lone end":        func(l *List) { l.EndGroup() },
		"NaN clip":        func(l *List) { l.PushClip(Rectangle(R(nan, 0, 1, 1))); l.PopClip() },
	}
	for name, call := range odd {
		l := NewList(Size{10, 10})
		call(l)
		assert.Zerof(t, l.Len(), "%s: %s", name, l)
	}
	assert.Equal(t, Size{}, NewList(Size{nan, -3}).Size())
	assert.Equal(t, Size{}, NewList(Size{-1, inf}).Size())
}

// Ensure that dash patterns which cannot be drawn make an unbroken line.
func TestTidyDash(t *testing.T) {
	for _, dash := range [][]float64{nil, {0, 0}, {-1, 2}, {math.NaN()}, {math.Inf(1), 1}, {1e-9, 1e-9}} {
		assert.Emptyf(t, Stroke{Dash: dash}.tidy().Dash, "%v", dash)
	}
	assert.Equal(t, []float64{3, 1, 2, 3, 1, 2}, Stroke{Dash: []float64{3, 1, 2}}.tidy().Dash)
	assert.Zero(t, Stroke{Dash: []float64{3, 1}, Phase: math.NaN()}.tidy().Phase)
}

// Ensure that text comes out as every back end can write it.
func TestTextIsCleaned(t *testing.T) {
	l := NewList(Size{10, 10})
	l.Text(Text{S: "a\tb\x00c\u0085d 鱒 \xff", Font: Font{Size: 9}, Color: Gray(0)})
	require.Equal(t, 1, l.Len())
	assert.Equal(t, "a b c d \uFFFD \uFFFD", l.Op(0).Text.S)
}

// Ensure that the list keeps its own copy of what it is given.
func TestListKeepsCopies(t *testing.T) {
	l := NewList(Size{10, 10})
	p := Rectangle(R(0, 0, 5, 5))
	stops := []Stop{{0, Gray(1)}, {1, Gray(2)}}
	dash := []float64{2, 1}
	l.Fill(p, NonZero, Paint{Stops: stops})
	l.Stroke(p, Stroke{Width: 1, Dash: dash}, Gray(3))
	before := l.String()
	p.points[0], stops[0].Color, dash[0] = Pt(3, 3), Gray(99), 7
	for range 500 { // the store grows and moves
		l.Fill(Circle(Pt(1, 1), 1), NonZero, Solid(Gray(1)))
	}
	assert.True(t, strings.HasPrefix(l.String(), before))
}

// Ensure that Box is what can be seen of a call, and Bounds the sum of them.
func TestBoundsAndClips(t *testing.T) {
	l := NewList(Size{100, 100})
	l.PushClip(Rectangle(R(10, 10, 20, 20)))
	l.Fill(Rectangle(R(0, 0, 15, 15)), NonZero, Solid(Gray(0)))
	l.Text(Text{S: "hidden", At: Pt(50, 50), Font: Font{Size: 10}, Color: Gray(0)})
	l.PopClip()
	assert.Equal(t, R(10, 10, 5, 5), l.Op(1).Box)
	assert.Equal(t, R(10, 10, 5, 5), l.Bounds())
	assert.Empty(t, l.TextBoxes())
	l.Stroke(Line(Pt(50, 50), Pt(60, 50)), Stroke{Width: 2, Join: RoundJoin}, Gray(0))
	assert.Equal(t, Rect{Pt(10, 10), Pt(61, 51)}, l.Bounds())
	l.Text(Text{S: "seen", At: Pt(50, 80), Font: Font{Size: 10}, Color: Gray(0)})
	require.Len(t, l.TextBoxes(), 1)
	assert.Equal(t, "seen", l.Op(l.TextBoxes()[0].Op).Text.S)
}

// nesting follows clips and groups and fails when they cross.
type nesting struct {
	*List
	t    *rapid.T
	open string
}

func (n *nesting) PushClip(Path) { n.open += "c" }
func (n *nesting) Group(string)  { n.open += "g" }
func (n *nesting) PopClip()      { n.shut('c') }
func (n *nesting) EndGroup()     { n.shut('g') }
func (n *nesting) shut(kind byte) {
	if len(n.open) == 0 || n.open[len(n.open)-1] != kind {
		n.t.Fatalf("%c ends within %q", kind, n.open)
	}
	n.open = n.open[:len(n.open)-1]
}

// Ensure that whatever the order of calls, clips and groups reach a back end properly
// nested and ended, also when only the first calls are replayed.
func TestNesting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := NewList(Size{10, 10})
		for _, c := range rapid.SliceOf(rapid.IntRange(0, 5)).Draw(t, "calls") {
			switch c {
			case 0:
				l.PushClip(Rectangle(R(0, 0, 5, 5)))
			case 1:
				l.PopClip()
			case 2:
				l.Group("g")
			case 3:
				l.EndGroup()
			case 4:
				l.PushClip(Rectangle(R(math.NaN(), 0, 5, 5)))
			case 5:
				l.Fill(Rectangle(R(0, 0, 5, 5)), NonZero, Solid(Gray(0)))
			}
		}
		n := &nesting{List: NewList(Size{10, 10}), t: t}
		l.ReplayTo(n, rapid.IntRange(0, l.Len()).Draw(t, "n"))
		if n.open != "" {
			t.Fatalf("left open: %q", n.open)
		}
		l.Replay(n)
		if n.open != "" {
			t.Fatalf("left open: %q", n.open)
		}
	})
}

func TestReplayGivesTheSameList(t *testing.T) {
	a := NewList(Size{50, 50})
	a.Group("g")
	a.PushClip(Circle(Pt(5, 5), 4))
	a.Stroke(Line(Pt(0, 0), Pt(5, 5)), Stroke{Width: 1, Dash: []float64{3, 1}}, Gray(4))
	a.PopClip()
	a.EndGroup()
	b := NewList(Size{50, 50})
	a.Replay(b)
	assert.Equal(t, a.String(), b.String())
}

func TestPlace(t *testing.T) {
	a := NewList(Size{50, 50})
	a.Fill(Rectangle(R(1, 1, 2, 2)), NonZero, Horizontal(Stop{1, Gray(0)}, Stop{3, Gray(9)}))
	a.Stroke(Line(Pt(0, 0), Pt(1, 1)), Stroke{Width: 1, Dash: []float64{2, 1}, Phase: 1}, Gray(4))
	a.Text(Text{S: "x", At: Pt(3, 4), Font: Font{Size: 6}, Color: Gray(0), Halo: Halo{1, Gray(9)}})
	a.PushClip(Rectangle(R(0, 0, 1, 1)))
	a.Image(image.NewGray(image.Rect(0, 0, 1, 1)), R(0, 0, 1, 2))
	b := NewList(Size{200, 200})
	Place(b, a, 2, Pt(100, 10))
	assert.Equal(t, strings.TrimLeft(`
size 200,200
fill across 102:#000000 106:#090909 M102,12 L106,12 L106,16 L102,16 Z
stroke 2 dash 4 2 phase 2 #040404 M100,10 L102,12
text "x" at 106,18 regular 12 #000000 halo 2 #090909
clip M100,10 L102,10 L102,12 L100,12 Z
image (1,1) at 100,10 size 2,4
end clip
`, "\n"), b.String())
}

func TestReset(t *testing.T) {
	l := NewList(Size{5, 5})
	l.Group("left open")
	l.PushClip(Rectangle(R(0, 0, 1, 1)))
	l.Reset(Size{7, 7})
	l.Fill(Rectangle(R(0, 0, 5, 5)), NonZero, Solid(Gray(0)))
	assert.Equal(t, Size{7, 7}, l.Size())
	assert.Equal(t, "", l.Op(0).Title)
	assert.Equal(t, R(0, 0, 5, 5), l.Bounds())
}

// Ensure that a list made like another holds nothing of it, and takes as much as that did
// without asking for more room.
func TestNewListLike(t *testing.T) {
	fill := func(l *List) {
		for i := range 100 {
			l.Fill(Circle(Pt(float64(i), 20), 5), NonZero, Solid(Gray(uint8(i))))
		}
	}
	first := NewList(Size{W: 200, H: 100})
	fill(first)
	again := NewListLike(Size{W: 100, H: 100}, first)
	assert.Zero(t, again.Len())
	assert.Equal(t, Size{W: 100, H: 100}, again.Size())
	grown := testing.AllocsPerRun(5, func() { fill(NewList(first.Size())) })
	made := testing.AllocsPerRun(5, func() { fill(NewListLike(first.Size(), first)) })
	assert.Less(t, made, grown-10)
	fill(again)
	assert.Equal(t, 100, again.Len())
	assert.Zero(t, NewListLike(first.Size(), nil).Len())
}
