package inspect

import (
	"encoding/binary"
	"image"
	"math"

	"gloamline/ui/draw"
)

// Wild turns bytes into calls on s, sane and odd ones alike (not finite, huge, tiny,
// empty, out of order), for tests that no back end ever panics or hangs. The same
// bytes give the same calls.
func Wild(s draw.Surface, data []byte) {
	w := wild{data}
	for len(w.data) > 0 {
		switch w.byte() % 10 {
		case 0, 1:
			s.Fill(w.path(), draw.Rule(w.byte()%3), w.paint())
		case 2, 3:
			s.Stroke(w.path(), w.stroke(), w.colour())
		case 4, 5:
			s.Text(w.text())
		case 6:
			s.Image(w.image(), draw.Rect{Min: w.point(), Max: w.point()})
		case 7:
			s.PushClip(w.path())
		case 8:
			if s.PopClip(); w.byte()%2 == 0 {
				s.EndGroup()
			}
		case 9:
			s.Group(w.string())
		}
	}
}

type wild struct{ data []byte }

func (w *wild) byte() byte {
	if len(w.data) == 0 {
		return 0
	}
	b := w.data[0]
	w.data = w.data[1:]
	return b
}

func (w *wild) take(n int) []byte {
	n = min(n, len(w.data))
	b := w.data[:n]
	w.data = w.data[n:]
	return b
}

func (w *wild) number() float64 {
	switch k := w.byte(); {
	case k < 200:
		return float64(int8(w.byte())) * float64(k) / 20
	case k < 210:
		return 0
	case k < 220:
		return float64(int8(w.byte())) * 1e5
	case k < 228:
		return float64(int8(w.byte())) * 1e-12
	case k < 236:
		var b [8]byte
		copy(b[:], w.take(8))
		return math.Float64frombits(binary.LittleEndian.Uint64(b[:]))
	case k < 240:
		return draw.MaxCoord
	case k < 244:
		return math.NaN()
	case k < 248:
		return math.Inf(int(w.byte()%2)*2 - 1)
	}
	return float64(int8(w.byte()))
}

func (w *wild) point() draw.Point { return draw.Pt(w.number(), w.number()) }

func (w *wild) colour() draw.Color { return draw.RGBA(w.byte(), w.byte(), w.byte(), w.byte()|w.byte()) }

func (w *wild) path() draw.Path {
	switch w.byte() % 6 {
	case 0:
		return draw.Circle(w.point(), w.number())
	case 1:
		return draw.RoundRect(draw.Rect{Min: w.point(), Max: w.point()}, w.number())
	case 2:
		return draw.Arc(w.point(), w.number(), w.number(), w.number())
	case 3:
		return draw.Rectangle(draw.Rect{Min: w.point(), Max: w.point()})
	}
	var p draw.Path
	for range w.byte() % 12 {
		a, b, c := w.point(), w.point(), w.point()
		switch w.byte() % 6 {
		case 0:
			p.Move(a.X, a.Y)
		case 1, 2:
			p.Line(a.X, a.Y)
		case 3:
			p.Quad(a.X, a.Y, b.X, b.Y)
		case 4:
			p.Cubic(a.X, a.Y, b.X, b.Y, c.X, c.Y)
		case 5:
			p.Close()
		}
	}
	return p
}

func (w *wild) paint() draw.Paint {
	var stops []draw.Stop
	for range w.byte() % 5 {
		stops = append(stops, draw.Stop{At: w.number(), Color: w.colour()})
	}
	switch {
	case len(stops) == 0:
		return draw.Solid(w.colour())
	case w.byte()%2 == 0:
		return draw.Vertical(stops...)
	}
	return draw.Horizontal(stops...)
}

func (w *wild) stroke() draw.Stroke {
	s := draw.Stroke{Width: w.number(), Phase: w.number(), Cap: draw.Cap(w.byte() % 4), Join: draw.Join(w.byte() % 4)}
	for range w.byte() % 5 {
		s.Dash = append(s.Dash, w.number())
	}
	return s
}

func (w *wild) text() draw.Text {
	return draw.Text{
		S: w.string(), At: w.point(), Color: w.colour(), Angle: w.number(),
		Font:   draw.Font{Weight: draw.Weight(w.byte() % 5), Size: w.number()},
		Anchor: draw.Anchor(w.byte() % 4), Align: draw.Align(w.byte() % 5),
		Halo: draw.Halo{Width: w.number(), Color: w.colour()},
	}
}

func (w *wild) string() string { return string(w.take(int(w.byte() % 24))) }

func (w *wild) image() image.Image {
	img := image.NewNRGBA(image.Rect(0, 0, int(w.byte()%9), int(w.byte()%9)).Add(image.Pt(int(w.byte()), 3)))
	copy(img.Pix, w.take(len(img.Pix)))
	if w.byte()%8 == 0 {
		return nil
	}
	return img
}
