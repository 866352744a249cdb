package scene

import (
	"image"
	"image/color"
	"math"
	"sync"

	"gloamline/geo/draft"
	"gloamline/ui/draw"
)

// trace lays the image under the plan, faint, as far as the view shows it.
func (p *plan) trace() {
	if p.p.Trace == nil {
		return
	}
	size := p.list.Size()
	p.list.Image(underlay(p.p.Trace, p.p.Lies, p.PlanFrame, size, p.look), draw.Bounds(size))
}

// faint is how much of the image is left to be seen.
const faint = 0.42

// laid keeps the last underlay: while corners are moved the ground stays still. It is disposable.
var laid = struct {
	sync.Mutex
	key laidKey
	img *image.RGBA
}{}

type laidKey struct {
	img  image.Image
	lies draft.Tracing
	f    PlanFrame
	size draw.Size
	look string
}

// underlay turns, scales and pales an image so that it fills a picture of that size, a pixel a dp.
// Images are compared by identity.
func underlay(img image.Image, lies draft.Tracing, f PlanFrame, size draw.Size, look Look) *image.RGBA {
	laid.Lock()
	defer laid.Unlock()
	key := laidKey{img, lies, f, size, look.Name}
	if laid.img != nil && laid.key == key {
		return laid.img
	}
	w, h := int(math.Ceil(size.W)), int(math.Ceil(size.H))
	out := image.NewRGBA(image.Rect(0, 0, max(1, w), max(1, h)))
	// The way from the picture to the image is a turn, a scale and a shift: three points tell it.
	at := func(x, y float64) draft.Pixel { return lies.Pixel(f.Point(draw.Pt(x, y))) }
	o, ex, ey := at(0.5, 0.5), at(1.5, 0.5), at(0.5, 1.5)
	ux, uy, vx, vy := ex.X-o.X, ex.Y-o.Y, ey.X-o.X, ey.Y-o.Y
	b := img.Bounds()
	pale := paler(look)
	step := max(1, int(math.Hypot(ux, uy)/2)) // farther out than a pixel a dp: the mean of a few
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			sx, sy := o.X+float64(x)*ux+float64(y)*vx, o.Y+float64(x)*uy+float64(y)*vy
			if !(sx >= 0 && sy >= 0 && sx < float64(b.Dx()) && sy < float64(b.Dy())) {
				continue
			}
			out.SetRGBA(x, y, pale(meanAt(img, b.Min.X+int(sx), b.Min.Y+int(sy), step)))
		}
	}
	laid.key, laid.img = key, out
	return out
}

// meanAt is the colour of a few pixels around a place.
func meanAt(img image.Image, x, y, step int) color.RGBA {
	if step == 1 {
		return color.RGBAModel.Convert(img.At(x, y)).(color.RGBA)
	}
	b := img.Bounds()
	var r, g, bl, n int
	for _, d := range [4]image.Point{{}, {X: step}, {Y: step}, {X: step, Y: step}} {
		if q := image.Pt(x, y).Add(d); q.In(b) {
			c := color.RGBAModel.Convert(img.At(q.X, q.Y)).(color.RGBA)
			r, g, bl, n = r+int(c.R), g+int(c.G), bl+int(c.B), n+1
		}
	}
	return color.RGBA{uint8(r / n), uint8(g / n), uint8(bl / n), 255}
}

// paler mixes a colour into the panel's; in the lamp look it is red like all else.
func paler(look Look) func(color.RGBA) color.RGBA {
	mix := func(a, b uint8) uint8 { return uint8(float64(a) + (float64(b)-float64(a))*faint) }
	return func(c color.RGBA) color.RGBA {
		if look.Name == Lamp.Name {
			v := color.GrayModel.Convert(c).(color.Gray).Y
			c = color.RGBA{uint8(int(look.Ink.R) * int(v) / 255), uint8(int(look.Ink.G) * int(v) / 255), uint8(int(look.Ink.B) * int(v) / 255), 255}
		}
		return color.RGBA{mix(look.Panel.R, c.R), mix(look.Panel.G, c.G), mix(look.Panel.B, c.B), 255}
	}
}
