package pdf

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"codeberg.org/go-pdf/fpdf"

	"gloamline/ui/draw"
)

// page is the Surface that writes one page. It speaks the page language itself and
// leaves fonts, images, shadings and transparency, which need objects, to fpdf.
type page struct {
	f      *fpdf.Fpdf
	size   draw.Size
	width  float64
	height float64
	now    state
	saved  []state
	font   draw.Font // what fpdf thinks is set
	widths map[int]bool
	names  map[string]string
	err    error
}

// state is what the reader of the page has set; nought means unknown.
type state struct {
	font  draw.Font
	alpha uint8
}

var _ draw.Surface = (*page)(nil)

func (p *page) Size() draw.Size { return p.size }

func (p *page) Fill(path draw.Path, rule draw.Rule, paint draw.Paint) {
	if len(paint.Stops) > 0 {
		p.gradient(path, rule, paint)
		return
	}
	p.alpha(paint.Color.A)
	p.out(rgb(paint.Color) + " rg")
	p.out(p.data(path) + [...]string{"f", "f*"}[min(rule, draw.EvenOdd)])
}

func (p *page) Stroke(path draw.Path, s draw.Stroke, c draw.Color) {
	p.alpha(c.A)
	var dash []string
	for _, d := range s.Dash {
		dash = append(dash, num(d))
	}
	caps := [...]int{draw.ButtCap: 0, draw.RoundCap: 1, draw.SquareCap: 2}
	joins := [...]int{draw.MiterJoin: 0, draw.RoundJoin: 1, draw.BevelJoin: 2}
	phase := 0.0
	if len(dash) > 0 {
		phase = pattern(s)
	}
	p.out(fmt.Sprintf("%s RG %s w %d J %d j [%s] %s d", rgb(c), num(s.Width),
		caps[min(s.Cap, draw.SquareCap)], joins[min(s.Join, draw.BevelJoin)], strings.Join(dash, " "), num(phase)))
	p.out(p.data(path) + "S")
}

// pattern is the phase brought into the pattern, since PDF knows none below nought.
func pattern(s draw.Stroke) float64 {
	total := 0.0
	for _, d := range s.Dash {
		total += d
	}
	phase := math.Mod(s.Phase, total)
	if phase < 0 {
		phase += total
	}
	return phase
}

func (p *page) Text(t draw.Text) {
	if t.Halo.Width > 0 { // as shapes, so that each text is there once
		p.Stroke(t.Outline(), draw.Stroke{Width: 2 * t.Halo.Width, Join: draw.RoundJoin}, t.Halo.Color)
	}
	p.setFont(t.Font)
	o := t.Origin()
	if t.Angle != 0 {
		// Turn about the anchor: the page has y upwards, so clockwise is minus.
		sin, cos := math.Sincos(-t.Angle * math.Pi / 180)
		x, y := t.At.X, p.height-t.At.Y
		p.save()
		p.out(fmt.Sprintf("%s %s %s %s %s %s cm", fine(cos), fine(sin), fine(-sin), fine(cos),
			fine(x-cos*x+sin*y), fine(y-sin*x-cos*y)))
		defer p.restore()
	}
	p.alpha(t.Color.A)
	p.out(rgb(t.Color) + " rg")
	p.f.Text(o.X, o.Y, t.S)
}

func (p *page) PushClip(path draw.Path) {
	p.save()
	if path.Empty() {
		p.out("0 0 0 0 re W n")
		return
	}
	p.out(p.data(path) + "W n")
}

func (p *page) PopClip() { p.restore() }

func (p *page) Group(string) {}
func (p *page) EndGroup()    {}

func (p *page) save() {
	p.out("q")
	p.saved = append(p.saved, p.now)
}

func (p *page) restore() {
	p.out("Q")
	p.now = p.saved[len(p.saved)-1]
	p.saved = p.saved[:len(p.saved)-1]
}

func (p *page) out(s string) { p.f.RawWriteStr(s) }

func (p *page) alpha(a uint8) {
	if p.now.alpha != a {
		p.f.SetAlpha(float64(a)/255, "Normal")
		p.now.alpha = a
	}
}

// setFont sets the font, for the reader and for fpdf, which keeps count of the letters
// used by each font: both must agree, and a restore changes only the reader's. fpdf
// writes nothing when it believes the font to be set already, which a restore or a new
// page may have undone: then it is led astray first.
func (p *page) setFont(f draw.Font) {
	f.Weight = min(f.Weight, draw.Bold)
	if p.now.font == f && p.font == f {
		return
	}
	if p.font == f {
		p.f.SetFont(family(f.Weight), "", f.Size+1)
	}
	p.f.SetFont(family(f.Weight), "", f.Size)
	p.font, p.now.font = f, f
}

// data is the path in the language of the page, without the painting word.
func (p *page) data(path draw.Path) string {
	var b []byte
	var at draw.Point
	put := func(pt draw.Point) {
		b = append(b, num(pt.X)...)
		b = append(b, ' ')
		b = append(b, num(p.height-pt.Y)...)
		b = append(b, ' ')
	}
	path.Each(func(v draw.Verb, pts []draw.Point) {
		switch v {
		case draw.MoveTo:
			put(pts[0])
			b = append(b, "m "...)
		case draw.LineTo:
			put(pts[0])
			b = append(b, "l "...)
		case draw.QuadTo: // raised to a cubic: same curve
			put(at.Lerp(pts[0], 2.0/3))
			put(pts[1].Lerp(pts[0], 2.0/3))
			put(pts[1])
			b = append(b, "c "...)
		case draw.CubicTo:
			put(pts[0])
			put(pts[1])
			put(pts[2])
			b = append(b, "c "...)
		case draw.Close:
			b = append(b, "h "...)
		}
		if len(pts) > 0 {
			at = pts[len(pts)-1]
		}
	})
	return string(b)
}

func rgb(c draw.Color) string {
	v := func(b uint8) string { return fine(float64(b) / 255) }
	return v(c.R) + " " + v(c.G) + " " + v(c.B)
}

func num(v float64) string  { return decimals(v, 1e3) }
func fine(v float64) string { return decimals(v, 1e5) }

func decimals(v, k float64) string {
	v = math.Round(v*k) / k
	if v == 0 {
		v = 0 // no minus nought
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
