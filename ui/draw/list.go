package draw

import (
	"image"
	"slices"
	"strings"
)

// List records what is drawn, so that it can be painted, written and looked into.
// A finished List may be read by many goroutines at once.
type List struct {
	size   Size
	ops    []Op
	open   []frame
	verbs  []Verb  // one store for all paths
	points []Point // one store for all paths
}

// frame is a clip or group that is still open.
type frame struct {
	clip    bool
	skipped bool   // a clip whose path was odd: not recorded, nor is its PopClip
	title   string // of the innermost group
	box     Rect   // of all clips so far
}

var _ Surface = (*List)(nil)

// NewList makes an empty list for a picture of that size in dp. A size that is not
// a finite positive number becomes 0.
func NewList(s Size) *List {
	l := &List{}
	l.Reset(s)
	return l
}

// NewListLike is NewList with the room that another list took (nil: none), so that the store
// of a picture drawn again and again does not grow anew each time.
func NewListLike(s Size, like *List) *List {
	l := NewList(s)
	if like != nil {
		const more = 16
		l.ops = make([]Op, 0, len(like.ops)+more)
		l.verbs = make([]Verb, 0, len(like.verbs)+more)
		l.points = make([]Point, 0, len(like.points)+more)
	}
	return l
}

// Reset empties the list and keeps its storage; Ops and Paths got from it before
// are no longer valid.
func (l *List) Reset(s Size) {
	if !(s.W > 0) || !sane(s.W) {
		s.W = 0
	}
	if !(s.H > 0) || !sane(s.H) {
		s.H = 0
	}
	clear(l.ops)
	*l = List{size: s, ops: l.ops[:0], open: l.open[:0], verbs: l.verbs[:0], points: l.points[:0]}
}

// Size is the room there is, in dp.
func (l *List) Size() Size { return l.size }

// Fill records a filled path.
func (l *List) Fill(p Path, rule Rule, paint Paint) {
	if p.Empty() || !p.ok() || !paint.ok() || !paint.visible() {
		return
	}
	paint.Stops = slices.Clone(paint.Stops)
	p = l.keep(p)
	l.add(Op{Kind: FillOp, Path: p, Rule: rule, Paint: paint, Box: p.Bounds()})
}

// Stroke records a line.
func (l *List) Stroke(p Path, s Stroke, c Color) {
	if p.Empty() || !p.ok() || !(s.Width > 0) || !sane(s.Width) || c.A == 0 {
		return
	}
	s = s.tidy()
	p = l.keep(p)
	l.add(Op{Kind: StrokeOp, Path: p, Stroke: s, Color: c, Box: p.Bounds().Inset(-s.reach())})
}

// Text records a line of text.
func (l *List) Text(t Text) {
	t.S = clean(t.S)
	if !t.ok() || !(t.Font.Size > 0) || t.Color.A == 0 || strings.Trim(t.S, " ") == "" {
		return
	}
	if !(t.Halo.Width > 0) || t.Halo.Color.A == 0 {
		t.Halo = Halo{}
	}
	t.Halo.Width = min(t.Halo.Width, t.Font.Size)
	box := BoxOf(t).Box
	if !box.ok() {
		return
	}
	l.add(Op{Kind: TextOp, Text: t, Box: box.Inset(-t.Halo.Width)})
}

// Image records a picture. The list keeps the image itself: do not change it.
func (l *List) Image(img image.Image, r Rect) {
	if img == nil || !r.ok() || r.Empty() {
		return
	}
	if b := img.Bounds(); b.Empty() {
		return
	}
	l.add(Op{Kind: ImageOp, Image: img, At: r, Box: r})
}

// PushClip records a clip. An empty path hides all that follows.
func (l *List) PushClip(p Path) {
	f := l.top()
	f.clip, f.skipped = true, !p.ok()
	if !f.skipped {
		p = l.keep(p)
		f.box = f.box.Intersect(p.Bounds())
		l.add(Op{Kind: PushClipOp, Path: p})
	}
	l.open = append(l.open, f)
}

// PopClip takes the last clip away. It does nothing if the current group has none.
func (l *List) PopClip() {
	n := len(l.open)
	if n == 0 || !l.open[n-1].clip {
		return
	}
	f := l.open[n-1]
	l.open = l.open[:n-1]
	if !f.skipped {
		l.add(Op{Kind: PopClipOp})
	}
}

// Group records the beginning of a group.
func (l *List) Group(title string) {
	f := l.top()
	f.clip, f.skipped, f.title = false, false, cleanTitle(title)
	l.open = append(l.open, f)
	l.add(Op{Kind: GroupOp})
}

// EndGroup ends the last group and any clip begun in it; without a group it does
// nothing.
func (l *List) EndGroup() {
	if !slices.ContainsFunc(l.open, func(f frame) bool { return !f.clip }) {
		return
	}
	for l.open[len(l.open)-1].clip {
		l.PopClip()
	}
	l.add(Op{Kind: EndGroupOp})
	l.open = l.open[:len(l.open)-1]
}

// Len is the number of calls recorded.
func (l *List) Len() int { return len(l.ops) }

// Op is the i-th call.
func (l *List) Op(i int) Op { return l.ops[i] }

// Replay makes all calls on s, and ends the clips and groups that were left open.
// Clips and groups always lie properly in one another.
func (l *List) Replay(s Surface) { l.ReplayTo(s, len(l.ops)) }

// ReplayTo makes the first n calls on s and ends what is then open.
func (l *List) ReplayTo(s Surface, n int) {
	var open []Kind
	for i := range min(n, len(l.ops)) {
		o := &l.ops[i]
		o.Send(s)
		switch o.Kind {
		case PushClipOp, GroupOp:
			open = append(open, o.Kind)
		case PopClipOp, EndGroupOp:
			open = open[:len(open)-1]
		}
	}
	for i := len(open) - 1; i >= 0; i-- {
		if open[i] == PushClipOp {
			s.PopClip()
		} else {
			s.EndGroup()
		}
	}
}

// Bounds is the box around all paint, within the clips.
func (l *List) Bounds() Rect {
	var r Rect
	for i := range l.ops {
		if l.ops[i].Paints() {
			r = r.Union(l.ops[i].Box)
		}
	}
	return r
}

// String has one call a line; see Op.String.
func (l *List) String() string {
	var b strings.Builder
	b.WriteString("size " + num(l.size.W) + "," + num(l.size.H) + "\n")
	for i := range l.ops {
		b.WriteString(l.ops[i].String())
		b.WriteByte('\n')
	}
	return b.String()
}

// TextBoxes is the room that each text takes, in order of drawing, without those
// that lie wholly outside the clips.
func (l *List) TextBoxes() []TextBox {
	var out []TextBox
	for i := range l.ops {
		if o := &l.ops[i]; o.Kind == TextOp && !o.Box.Empty() {
			b := BoxOf(o.Text)
			b.Op = i
			out = append(out, b)
		}
	}
	return out
}

// Place draws src on dst, scaled by k and then moved by d.
func Place(dst Surface, src *List, k float64, d Point) {
	src.Replay(placed{dst, src.size, k, d})
}

func (l *List) add(o Op) {
	f := l.top()
	o.Title = f.title
	if o.Paints() {
		o.Box = o.Box.Intersect(f.box)
	}
	l.ops = append(l.ops, o)
}

func (l *List) top() frame {
	if n := len(l.open); n > 0 {
		return l.open[n-1]
	}
	return frame{box: Rect{Point{-2 * MaxCoord, -2 * MaxCoord}, Point{2 * MaxCoord, 2 * MaxCoord}}}
}

func (l *List) keep(p Path) Path {
	v, n := len(l.verbs), len(l.points)
	l.verbs = append(l.verbs, p.verbs...)
	l.points = append(l.points, p.points...)
	return Path{l.verbs[v:len(l.verbs):len(l.verbs)], l.points[n:len(l.points):len(l.points)]}
}

func cleanTitle(s string) string {
	return strings.Map(shown, strings.ToValidUTF8(s, "\uFFFD"))
}
