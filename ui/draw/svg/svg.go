package svg

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"strconv"
	"strings"

	"gloamline/ui/draw"
)

// Options says what goes into a file beside the picture.
type Options struct {
	Title string // of the whole; read out by programs for the blind
	Desc  string // a sentence or two on what is to be seen
	Fonts bool   // carry the letters in use
}

// Write writes the list as an SVG document. The only errors are those of w and of
// an image that cannot be encoded.
func Write(w io.Writer, l *draw.List, o Options) error {
	s := &writer{size: l.Size(), fonts: o.Fonts, gradients: map[string]string{}, used: map[draw.Weight]map[rune]bool{}}
	l.Replay(s)
	if s.err != nil {
		return fmt.Errorf("svg: %w", s.err)
	}
	var out bytes.Buffer
	width, height := num(s.size.W), num(s.size.H)
	out.WriteString(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	fmt.Fprintf(&out, `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" version="1.1" width="%s" height="%s" viewBox="0 0 %s %s" role="img" xml:space="preserve">`, width, height, width, height)
	out.WriteString("<title>" + escape(o.Title) + "</title>")
	if o.Desc != "" {
		out.WriteString("<desc>" + escape(o.Desc) + "</desc>")
	}
	out.WriteString("<style>" + s.style() + "</style>")
	if s.defs.Len() > 0 {
		out.WriteString("<defs>" + s.defs.String() + "</defs>")
	}
	out.Write(s.body.Bytes())
	out.WriteString("</svg>\n")
	_, err := w.Write(out.Bytes())
	return err
}

// writer is the Surface behind Write.
type writer struct {
	size      draw.Size
	fonts     bool
	defs      strings.Builder
	body      bytes.Buffer
	clips     int
	gradients map[string]string // definition -> id
	used      map[draw.Weight]map[rune]bool
	err       error
}

var _ draw.Surface = (*writer)(nil)

func (s *writer) Size() draw.Size { return s.size }

func (s *writer) Fill(p draw.Path, rule draw.Rule, paint draw.Paint) {
	s.body.WriteString("\n<path")
	if rule == draw.EvenOdd {
		s.attr("fill-rule", "evenodd")
	}
	if len(paint.Stops) > 0 {
		s.attr("fill", "url(#"+s.gradient(paint)+")")
	} else {
		s.colour("fill", paint.Color)
	}
	s.attr("d", data(p))
	s.body.WriteString("/>")
}

func (s *writer) Stroke(p draw.Path, st draw.Stroke, c draw.Color) {
	s.body.WriteString("\n<path")
	s.attr("fill", "none")
	s.colour("stroke", c)
	s.attr("stroke-width", num(st.Width))
	if len(st.Dash) > 0 {
		dash := make([]string, len(st.Dash))
		for i, d := range st.Dash {
			dash[i] = num(d)
		}
		s.attr("stroke-dasharray", strings.Join(dash, " "))
		if st.Phase != 0 {
			s.attr("stroke-dashoffset", num(st.Phase))
		}
	}
	switch st.Cap {
	case draw.RoundCap:
		s.attr("stroke-linecap", "round")
	case draw.SquareCap:
		s.attr("stroke-linecap", "square")
	}
	switch st.Join {
	case draw.RoundJoin:
		s.attr("stroke-linejoin", "round")
	case draw.BevelJoin:
		s.attr("stroke-linejoin", "bevel")
	}
	s.attr("d", data(p))
	s.body.WriteString("/>")
}

func (s *writer) Text(t draw.Text) {
	if t.Halo.Width > 0 { // as shapes, so that each text is there once
		s.Stroke(t.Outline(), draw.Stroke{Width: 2 * t.Halo.Width, Join: draw.RoundJoin}, t.Halo.Color)
	}
	o := t.Origin()
	s.body.WriteString("\n<text")
	s.colour("fill", t.Color)
	x := o.X
	if !s.fonts {
		// The anchor is kept, so that other letters stand where they should.
		switch t.Anchor {
		case draw.Middle:
			s.attr("text-anchor", "middle")
			x = t.At.X
		case draw.End:
			s.attr("text-anchor", "end")
			x = t.At.X
		}
		s.attr("textLength", num(draw.Measure(t.Font, t.S).Width))
		s.attr("lengthAdjust", "spacingAndGlyphs")
	}
	s.attr("x", num(x))
	s.attr("y", num(o.Y))
	s.attr("font-size", num(t.Font.Size))
	if t.Font.Weight != draw.Regular {
		s.attr("font-weight", weights[min(t.Font.Weight, draw.Bold)])
	}
	if t.Angle != 0 {
		s.attr("transform", "rotate("+num(t.Angle)+" "+num(t.At.X)+" "+num(t.At.Y)+")")
	}
	s.body.WriteString(">" + escape(t.S) + "</text>")
	used := s.used[t.Font.Weight]
	if used == nil {
		used = map[rune]bool{}
		s.used[t.Font.Weight] = used
	}
	for _, r := range t.S {
		used[r] = true
	}
}

func (s *writer) Image(img image.Image, r draw.Rect) {
	var buf bytes.Buffer
	if err := png.Encode(&buf, img); err != nil {
		s.err = err
		return
	}
	s.body.WriteString("\n<image")
	s.attr("x", num(r.Min.X))
	s.attr("y", num(r.Min.Y))
	s.attr("width", num(r.W()))
	s.attr("height", num(r.H()))
	s.attr("preserveAspectRatio", "none")
	s.attr("xlink:href", "data:image/png;base64,"+base64.StdEncoding.EncodeToString(buf.Bytes()))
	s.body.WriteString("/>")
}

func (s *writer) PushClip(p draw.Path) {
	s.clips++
	id := "c" + strconv.Itoa(s.clips)
	s.defs.WriteString(`<clipPath id="` + id + `"><path d="` + data(p) + `"/></clipPath>`)
	s.body.WriteString("\n<g")
	s.attr("clip-path", "url(#"+id+")")
	s.body.WriteString(">")
}

func (s *writer) PopClip() { s.body.WriteString("</g>") }

func (s *writer) Group(title string) {
	s.body.WriteString("\n<g>")
	if title != "" {
		s.body.WriteString("<title>" + escape(title) + "</title>")
	}
}

func (s *writer) EndGroup() { s.body.WriteString("</g>") }

// gradient defines a gradient, once, and gives its id.
func (s *writer) gradient(p draw.Paint) string {
	from, to := p.Stops[0].At, p.Stops[len(p.Stops)-1].At
	length := to - from
	if length == 0 {
		length = 1 // all stops at one place: a step
	}
	var b strings.Builder
	if p.Vertical {
		fmt.Fprintf(&b, `x1="0" y1="%s" x2="0" y2="%s"`, num(from), num(from+length))
	} else {
		fmt.Fprintf(&b, `x1="%s" y1="0" x2="%s" y2="0"`, num(from), num(from+length))
	}
	b.WriteString(` gradientUnits="userSpaceOnUse">`)
	for _, st := range p.Stops {
		fmt.Fprintf(&b, `<stop offset="%s" stop-color="#%02x%02x%02x"`, fine((st.At-from)/length), st.Color.R, st.Color.G, st.Color.B)
		if st.Color.A < 255 {
			b.WriteString(` stop-opacity="` + fine(float64(st.Color.A)/255) + `"`)
		}
		b.WriteString("/>")
	}
	def := b.String()
	id, ok := s.gradients[def]
	if !ok {
		id = "g" + strconv.Itoa(len(s.gradients)+1)
		s.gradients[def] = id
		s.defs.WriteString(`<linearGradient id="` + id + `" ` + def + `</linearGradient>`)
	}
	return id
}

func (s *writer) attr(name, value string) { s.body.WriteString(" " + name + `="` + value + `"`) }

func (s *writer) colour(name string, c draw.Color) {
	s.attr(name, fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B))
	if c.A < 255 {
		s.attr(name+"-opacity", fine(float64(c.A)/255))
	}
}

// data is the path in the words of SVG.
func data(p draw.Path) string {
	var b []byte
	p.Each(func(v draw.Verb, pts []draw.Point) {
		b = append(b, "MLQCZ"[v])
		for i, pt := range pts {
			if i > 0 {
				b = append(b, ' ')
			}
			b = append(b, num(pt.X)...)
			b = append(b, ' ')
			b = append(b, num(pt.Y)...)
		}
	})
	return string(b)
}

// num writes a length to 0.001 units.
func num(v float64) string { return decimals(v, 1e3) }

// fine writes a ratio to 0.0001.
func fine(v float64) string { return decimals(v, 1e4) }

func decimals(v, k float64) string {
	v = math.Round(v*k) / k
	if v == 0 {
		v = 0 // no minus nought
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// escape makes text safe in XML 1.0: markup is quoted, and characters that may not
// stand in a document at all are left out.
func escape(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '&':
			b.WriteString("&amp;")
		case r == '<':
			b.WriteString("&lt;")
		case r == '>':
			b.WriteString("&gt;")
		case r == '"':
			b.WriteString("&quot;")
		case r == '\t' || r == '\n' || r == '\r':
			b.WriteByte(' ')
		case r < 0x20 || r >= 0x7f && r < 0xa0 || r == 0xfffe || r == 0xffff:
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
