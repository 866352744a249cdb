package draw

import (
	"image"
	"math"
	"strconv"
	"strings"
)

// Kind says which method of Surface was called.
type Kind uint8

// The kinds.
const (
	FillOp Kind = iota
	StrokeOp
	TextOp
	ImageOp
	PushClipOp
	PopClipOp
	GroupOp
	EndGroupOp
)

// Op is one recorded call. Only the fields of its kind are set.
type Op struct {
	Kind   Kind
	Path   Path   // fill, stroke, push
	Rule   Rule   // fill
	Paint  Paint  // fill
	Stroke Stroke // stroke
	Color  Color  // stroke
	Text   Text   // text
	Image  image.Image
	At     Rect   // image
	Title  string // group: its own title; other calls: the title of the innermost group
	Box    Rect   // fill, stroke, text, image: box around the paint, within the clips
}

// Paints reports whether the call leaves paint.
func (o Op) Paints() bool { return o.Kind <= ImageOp }

// Send makes the call on s.
func (o Op) Send(s Surface) {
	switch o.Kind {
	case FillOp:
		s.Fill(o.Path, o.Rule, o.Paint)
	case StrokeOp:
		s.Stroke(o.Path, o.Stroke, o.Color)
	case TextOp:
		s.Text(o.Text)
	case ImageOp:
		s.Image(o.Image, o.At)
	case PushClipOp:
		s.PushClip(o.Path)
	case PopClipOp:
		s.PopClip()
	case GroupOp:
		s.Group(o.Title)
	case EndGroupOp:
		s.EndGroup()
	}
}

// String is the call on one line with lengths to 0.01 dp, for comparing pictures by
// their meaning. Its form may change between versions of the program.
func (o Op) String() string {
	var b strings.Builder
	switch o.Kind {
	case FillOp:
		b.WriteString("fill ")
		if o.Rule == EvenOdd {
			b.WriteString("evenodd ")
		}
		b.WriteString(o.Paint.string())
		o.Path.write(&b)
	case StrokeOp:
		b.WriteString("stroke " + num(o.Stroke.Width))
		if len(o.Stroke.Dash) > 0 {
			b.WriteString(" dash")
			for _, d := range o.Stroke.Dash {
				b.WriteString(" " + num(d))
			}
			if o.Stroke.Phase != 0 {
				b.WriteString(" phase " + num(o.Stroke.Phase))
			}
		}
		b.WriteString([...]string{"", " round-cap", " square-cap"}[min(o.Stroke.Cap, SquareCap)])
		b.WriteString([...]string{"", " round-join", " bevel-join"}[min(o.Stroke.Join, BevelJoin)])
		b.WriteString(" " + HexString(o.Color))
		o.Path.write(&b)
	case TextOp:
		t := o.Text
		b.WriteString("text " + strconv.Quote(t.S) + " at " + num(t.At.X) + "," + num(t.At.Y))
		b.WriteString([...]string{"", " middle", " end"}[min(t.Anchor, End)])
		b.WriteString([...]string{"", " centre", " top", " bottom"}[min(t.Align, Bottom)])
		if t.Angle != 0 {
			b.WriteString(" turned " + num(t.Angle))
		}
		b.WriteString(" " + t.Font.Weight.String() + " " + num(t.Font.Size) + " " + HexString(t.Color))
		if t.Halo.Width > 0 {
			b.WriteString(" halo " + num(t.Halo.Width) + " " + HexString(t.Halo.Color))
		}
	case ImageOp:
		px := o.Image.Bounds().Size()
		b.WriteString("image " + px.String() + " at " + num(o.At.Min.X) + "," + num(o.At.Min.Y) +
			" size " + num(o.At.W()) + "," + num(o.At.H()))
	case PushClipOp:
		b.WriteString("clip")
		o.Path.write(&b)
	case PopClipOp:
		b.WriteString("end clip")
	case GroupOp:
		b.WriteString("group " + strconv.Quote(o.Title))
	case EndGroupOp:
		b.WriteString("end group")
	}
	return b.String()
}

func (p Paint) string() string {
	if len(p.Stops) == 0 {
		return HexString(p.Color)
	}
	s := "across"
	if p.Vertical {
		s = "down"
	}
	for _, st := range p.Stops {
		s += " " + num(st.At) + ":" + HexString(st.Color)
	}
	return s
}

func (p Path) write(b *strings.Builder) {
	p.Each(func(v Verb, pts []Point) {
		b.WriteByte(' ')
		b.WriteByte("MLQCZ"[v])
		for i, pt := range pts {
			if i > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(num(pt.X) + "," + num(pt.Y))
		}
	})
}

// num writes v to 0.01 without needless noughts.
func num(v float64) string {
	v = math.Round(v*100) / 100
	if v == 0 {
		v = 0 // no minus nought
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
