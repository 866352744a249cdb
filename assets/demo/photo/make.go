//go:build ignore

// Draws the pictures that two fish of the demo have: a fish on wet grass by the light of
// a torch. They are drawings; no photograph went into them. From this folder:
//
//	go run make.go
package main

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"log"
	"math"
	"math/rand/v2"
	"os"

	"golang.org/x/image/draw"
	"golang.org/x/image/vector"
)

const wide, high = 1280, 854

// subject is one picture: the fish's length in pixels, how it lies, how fresh from the
// sea it is (1: silver).
type subject struct {
	name   string
	seed   uint64
	long   float64
	turn   float64 // radians
	at     [2]float64
	silver float64
	left   bool // its head is at the right
}

func main() {
	for _, s := range []subject{
		{"fish-1", 11, 830, 0.10, [2]float64{640, 440}, 0.9, false},
		{"fish-2", 29, 1080, -0.07, [2]float64{650, 430}, 0.75, true},
	} {
		c := &canvas{s: s, r: rand.New(rand.NewPCG(s.seed, 7)), pix: make([][3]float64, wide*high)}
		c.ground()
		c.shadow()
		c.fish()
		c.blades(140, true)
		img := c.lit()
		write(s.name+".jpg", img, 78)
		small := image.NewRGBA(image.Rect(0, 0, 512, 512*high/wide))
		draw.CatmullRom.Scale(small, small.Bounds(), img, img.Bounds(), draw.Src, nil)
		write(s.name+"-small.jpg", small, 82)
	}
}

func write(name string, img image.Image, quality int) {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: quality}); err != nil {
		log.Fatal(err)
	}
	if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
		log.Fatal(err)
	}
}

// canvas holds reflectances, 0 to 1; the torch comes last.
type canvas struct {
	s   subject
	r   *rand.Rand
	pix [][3]float64
}

func (c *canvas) over(x, y int, rgb [3]float64, a float64) {
	if x < 0 || y < 0 || x >= wide || y >= high || a <= 0 {
		return
	}
	p := &c.pix[y*wide+x]
	for i := range p {
		p[i] += (rgb[i] - p[i]) * math.Min(a, 1)
	}
}

// fill fills a closed outline; shade gives its colour.
func (c *canvas) fill(pts [][2]float64, a float64, shade func(x, y float64) [3]float64) {
	z := vector.NewRasterizer(wide, high)
	for i, p := range pts {
		if i == 0 {
			z.MoveTo(float32(p[0]), float32(p[1]))
		} else {
			z.LineTo(float32(p[0]), float32(p[1]))
		}
	}
	z.ClosePath()
	m := image.NewAlpha(image.Rect(0, 0, wide, high))
	z.Draw(m, m.Bounds(), image.Opaque, image.Point{})
	x0, y0, x1, y1 := bounds(pts)
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			if k := m.AlphaAt(x, y).A; k > 0 {
				c.over(x, y, shade(float64(x), float64(y)), a*float64(k)/255)
			}
		}
	}
}

func bounds(pts [][2]float64) (x0, y0, x1, y1 int) {
	a, b, d, e := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range pts {
		a, b, d, e = math.Min(a, p[0]), math.Min(b, p[1]), math.Max(d, p[0]), math.Max(e, p[1])
	}
	clamp := func(v float64, most int) int { return max(0, min(most, int(v))) }
	return clamp(a-1, wide-1), clamp(b-1, high-1), clamp(d+1, wide-1), clamp(e+1, high-1)
}

func flat(rgb [3]float64) func(x, y float64) [3]float64 {
	return func(_, _ float64) [3]float64 { return rgb }
}

func (c *canvas) ground() {
	for i := range c.pix {
		c.pix[i] = [3]float64{0.035, 0.05, 0.025}
	}
	c.blades(3400, false)
}

// blades of grass; those in front lie over the edge of the fish alone.
func (c *canvas) blades(n int, front bool) {
	for range n {
		x, y := c.r.Float64()*wide*1.1-60, c.r.Float64()*high*1.2-40
		long := 50 + 110*c.r.Float64()
		if front {
			u := c.r.Float64()
			p := c.at(u, bottom(u)-0.03-0.03*c.r.Float64())
			x, y, long = p[0], p[1], 24+34*c.r.Float64()
		}
		lean := -math.Pi/2 + 0.9*c.r.NormFloat64()
		bend := 0.7 * c.r.NormFloat64()
		thick := 2 + 3.4*c.r.Float64()
		k := 0.25 + 0.75*c.r.Float64()
		rgb := [3]float64{0.17 * k, (0.26 + 0.06*c.r.Float64()) * k, 0.07 * k}
		if c.r.IntN(9) == 0 { // last year's
			rgb = [3]float64{0.36 * k, 0.31 * k, 0.17 * k}
		}
		var left, right [][2]float64
		px, py, dir := x, y, lean
		for i := range 9 {
			t := float64(i) / 8
			w := thick * (1 - t*t) / 2
			left = append(left, [2]float64{px + w*math.Sin(dir), py - w*math.Cos(dir)})
			right = append([][2]float64{{px - w*math.Sin(dir), py + w*math.Cos(dir)}}, right...)
			px, py = px+long/8*math.Cos(dir), py+long/8*math.Sin(dir)
			dir += bend / 8
		}
		c.fill(append(left, right...), 0.92, flat(rgb))
		if c.r.IntN(5) == 0 { // a drop of water
			c.disc(px-3*c.r.Float64(), py, 1.2+c.r.Float64(), [3]float64{0.9, 0.95, 0.95}, 0.8)
		}
	}
}

func (c *canvas) disc(x, y, r float64, rgb [3]float64, a float64) {
	var pts [][2]float64
	for i := range 14 {
		s, k := math.Sincos(2 * math.Pi * float64(i) / 14)
		pts = append(pts, [2]float64{x + r*k, y + r*s})
	}
	c.fill(pts, a, flat(rgb))
}

// at is the place of a point of the fish: u along it, 0 at the snout and 1 at the fork of
// the tail, v up from its axis, both in lengths of the fish.
func (c *canvas) at(u, v float64) [2]float64 {
	x, y := (u-0.5)*c.s.long, -v*c.s.long-0.018*c.s.long*math.Cos(3*(u-0.4))
	if c.s.left {
		x = -x
	}
	s, k := math.Sincos(c.s.turn)
	return [2]float64{c.s.at[0] + x*k - y*s, c.s.at[1] + x*s + y*k}
}

// of is the point of the fish at a place.
func (c *canvas) of(px, py float64) (u, v float64) {
	s, k := math.Sincos(-c.s.turn)
	dx, dy := px-c.s.at[0], py-c.s.at[1]
	x, y := dx*k-dy*s, dx*s+dy*k
	if c.s.left {
		x = -x
	}
	u = x/c.s.long + 0.5
	return u, -(y/c.s.long + 0.018*math.Cos(3*(u-0.4)))
}

// The outline of a trout, from memory, in lengths.
var (
	along  = []float64{0, .02, .05, .1, .16, .25, .37, .5, .62, .74, .84, .9}
	back   = []float64{.004, .020, .034, .052, .070, .090, .102, .096, .079, .058, .044, .046}
	breast = []float64{-.004, -.020, -.034, -.052, -.072, -.097, -.114, -.110, -.088, -.060, -.043, -.046}
)

func top(u float64) float64    { return through(along, back, u) }
func bottom(u float64) float64 { return through(along, breast, u) }

// through is a smooth curve through points (cubic, slopes of central differences).
func through(x, y []float64, at float64) float64 {
	at = math.Max(x[0], math.Min(x[len(x)-1], at))
	i := 0
	for i < len(x)-2 && at > x[i+1] {
		i++
	}
	slope := func(j int) float64 {
		a, b := max(j-1, 0), min(j+1, len(x)-1)
		return (y[b] - y[a]) / (x[b] - x[a])
	}
	h := x[i+1] - x[i]
	t := (at - x[i]) / h
	t2, t3 := t*t, t*t*t
	return (2*t3-3*t2+1)*y[i] + (t3-2*t2+t)*h*slope(i) + (3*t2-2*t3)*y[i+1] + (t3-t2)*h*slope(i+1)
}

func (c *canvas) outline(grow float64) (pts [][2]float64) {
	for i := 0; i <= 90; i++ {
		u := 0.9 * float64(i) / 90
		pts = append(pts, c.at(u, top(u)+grow))
	}
	for i := 90; i >= 0; i-- {
		u := 0.9 * float64(i) / 90
		pts = append(pts, c.at(u, bottom(u)-grow))
	}
	return pts
}

func (c *canvas) tail() (pts [][2]float64) {
	pts = append(pts, c.at(.875, .042), c.at(.93, .082), c.at(.995, .122), c.at(1.006, .116))
	for i := 0; i <= 20; i++ {
		v := .112 - .224*float64(i)/20
		pts = append(pts, c.at(1-.034*(1-math.Pow(v/.112, 2)), v))
	}
	return append(pts, c.at(1.006, -.116), c.at(.995, -.122), c.at(.93, -.082), c.at(.875, -.042))
}

func (c *canvas) shadow() {
	for i := 12; i > 0; i-- {
		var pts [][2]float64
		for _, p := range c.outline(0.0045 * float64(i)) {
			pts = append(pts, [2]float64{p[0] + 6, p[1] + 16})
		}
		c.fill(pts, 0.13, flat([3]float64{0.006, 0.008, 0.005}))
	}
}

// fin fills a fin of which the corners are given, with rays from its foot.
func (c *canvas) fin(tone [3]float64, a float64, from [2]float64, corners ...[2]float64) {
	var pts [][2]float64
	for _, p := range corners {
		pts = append(pts, c.at(p[0], p[1]))
	}
	f := c.at(from[0], from[1])
	c.fill(pts, a, func(x, y float64) [3]float64 {
		ray := 0.88 + 0.12*math.Sin(58*math.Atan2(y-f[1], x-f[0]))
		return [3]float64{tone[0] * ray, tone[1] * ray, tone[2] * ray}
	})
}

func mix(a, b [3]float64, t float64) (out [3]float64) {
	t = math.Max(0, math.Min(1, t))
	for i := range out {
		out[i] = a[i] + (b[i]-a[i])*t
	}
	return out
}

func (c *canvas) fish() {
	grey := [3]float64{.30, .30, .27}
	pale := [3]float64{.52, .50, .44}
	c.fin(grey, .96, [2]float64{.86, 0}, func() (q [][2]float64) {
		for _, p := range c.tail() {
			u, v := c.of(p[0], p[1])
			q = append(q, [2]float64{u, v})
		}
		return q
	}()...)
	c.fin(grey, .95, [2]float64{.47, .02}, [2]float64{.425, .095}, [2]float64{.445, .150}, [2]float64{.47, .163}, [2]float64{.545, .132}, [2]float64{.572, .120}, [2]float64{.575, .082})
	c.fin(grey, 1, [2]float64{.74, .03}, [2]float64{.762, .050}, [2]float64{.785, .078}, [2]float64{.805, .080}, [2]float64{.812, .066}, [2]float64{.800, .044})
	c.fin(pale, .95, [2]float64{.67, -.02}, [2]float64{.672, -.072}, [2]float64{.690, -.132}, [2]float64{.712, -.136}, [2]float64{.752, -.098}, [2]float64{.757, -.054})
	c.fin(pale, .95, [2]float64{.49, -.06}, [2]float64{.495, -.104}, [2]float64{.525, -.150}, [2]float64{.550, -.152}, [2]float64{.570, -.120}, [2]float64{.558, -.094})
	c.body()
	c.spots()
	c.head()
	c.fin(mix(grey, pale, .5), .93, [2]float64{.17, -.05}, [2]float64{.197, -.048}, [2]float64{.235, -.060}, [2]float64{.300, -.094}, [2]float64{.302, -.106}, [2]float64{.262, -.104}, [2]float64{.203, -.072})
}

// body is dark above, bright at the flank, white below; scales catch the light.
func (c *canvas) body() {
	olive, steel := [3]float64{.10, .105, .075}, [3]float64{.34, .36, .36}
	silver := mix([3]float64{.56, .50, .38}, [3]float64{.74, .75, .73}, c.s.silver)
	white := [3]float64{.90, .89, .85}
	c.fill(c.outline(0), 1, func(x, y float64) [3]float64 {
		u, v := c.of(x, y)
		t := (v - bottom(u)) / (top(u) - bottom(u))
		rgb := mix(white, silver, (t-.16)/.22)
		rgb = mix(rgb, steel, (t-.55)/.20)
		rgb = mix(rgb, olive, (t-.72)/.20)
		if u > .19 && u < .88 { // rows of scales, leaning
			a, b := u*170+v*60, v*230-u*30
			rgb = mix(rgb, [3]float64{1, 1, .97}, .10*math.Sin(a)*math.Sin(b))
			rgb = mix(rgb, [3]float64{0, 0, 0}, .10*math.Max(0, math.Sin(a)*math.Cos(b)))
		}
		if d := math.Abs(t - .52); d < .012 && u > .2 { // the line along its side
			rgb = mix(rgb, [3]float64{.2, .2, .18}, .45)
		}
		gloss := math.Exp(-math.Pow((t-.66)/.075, 2)) * (0.55 + .3*math.Sin(u*9)) // the torch in its wet side
		rgb = mix(rgb, [3]float64{1, 1, .96}, .75*gloss)
		edge := math.Min(t, 1-t)
		rgb = mix(rgb, [3]float64{.30, .30, .27}, (u-.845)/.05) // into the tail
		return mix([3]float64{.02, .025, .02}, rgb, .55+edge/.12*.45)
	})
}

func (c *canvas) spots() {
	for range 135 {
		u := .2 + .66*c.r.Float64()
		t := .44 + .5*math.Sqrt(c.r.Float64())
		v := bottom(u) + t*(top(u)-bottom(u))
		r := c.s.long * (.0026 + .0022*c.r.Float64())
		p := c.at(u, v)
		turn := c.r.Float64() * math.Pi
		var star [][2]float64 // of four blunt points
		for i := range 16 {
			a := 2*math.Pi*float64(i)/16 + turn
			q := r * (1 + .16*math.Cos(4*(a-turn)))
			star = append(star, [2]float64{p[0] + q*math.Cos(a), p[1] + q*math.Sin(a)})
		}
		c.fill(star, .88, flat([3]float64{.03, .03, .03}))
	}
	for range 7 {
		u := .12 + .05*c.r.Float64()
		p := c.at(u, .005+.03*c.r.Float64())
		c.disc(p[0], p[1], c.s.long*.0042, [3]float64{.04, .04, .035}, .85)
	}
}

// stroke draws a line through points of the fish.
func (c *canvas) stroke(width float64, rgb [3]float64, a float64, pts ...[2]float64) {
	for i := 0; i+1 < len(pts); i++ {
		p, q := c.at(pts[i][0], pts[i][1]), c.at(pts[i+1][0], pts[i+1][1])
		d := math.Hypot(q[0]-p[0], q[1]-p[1])
		nx, ny := -(q[1]-p[1])/d*width/2, (q[0]-p[0])/d*width/2
		c.fill([][2]float64{{p[0] + nx, p[1] + ny}, {q[0] + nx, q[1] + ny}, {q[0] - nx, q[1] - ny}, {p[0] - nx, p[1] - ny}}, a, flat(rgb))
	}
}

// head has gill covers, mouth and eye, and the fly in the corner of its mouth.
func (c *canvas) head() {
	dark := [3]float64{.06, .06, .05}
	k := c.s.long / 830
	var gill, cheek [][2]float64
	for i := 0; i <= 16; i++ {
		t := -1 + float64(i)/8
		gill = append(gill, [2]float64{.205 - .045*t*t, .002 + .058*t})
		cheek = append(cheek, [2]float64{.148 - .026*t*t, -.006 + .036*t})
	}
	c.stroke(3.4*k, dark, .75, gill...)
	c.stroke(2*k, dark, .45, cheek...)
	c.stroke(3*k, dark, .85, [2]float64{.002, -.004}, [2]float64{.03, -.012}, [2]float64{.06, -.020}, [2]float64{.092, -.026})
	c.stroke(1.6*k, [3]float64{.8, .8, .76}, .5, [2]float64{.03, -.008}, [2]float64{.06, -.016}, [2]float64{.09, -.021})
	e := c.at(.068, .012)
	r := c.s.long * .0155
	c.disc(e[0], e[1], r*1.12, dark, .8)
	c.disc(e[0], e[1], r, [3]float64{.62, .58, .36}, 1)
	c.disc(e[0], e[1], r*.62, [3]float64{.015, .015, .015}, 1)
	c.disc(e[0]-r*.2, e[1]-r*.28, r*.17, [3]float64{1, 1, 1}, 1)
	// the fly and the leader
	c.stroke(1.5, [3]float64{.75, .78, .75}, .8, [2]float64{.088, -.025}, [2]float64{.04, -.09}, [2]float64{-.02, -.20}, [2]float64{-.06, -.36})
	c.stroke(5.5*k, [3]float64{.05, .05, .055}, 1, [2]float64{.090, -.022}, [2]float64{.068, -.060})
	c.stroke(2.6*k, [3]float64{.55, .56, .58}, 1, [2]float64{.090, -.022}, [2]float64{.098, -.030}, [2]float64{.094, -.040})
}

// lit is the picture by the torch: bright where it points, gone at the corners, with the
// grain of a telephone's picture at night.
func (c *canvas) lit() *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, wide, high))
	for y := range high {
		for x := range wide {
			dx, dy := (float64(x)-c.s.at[0]+40)/wide, (float64(y)-c.s.at[1]+30)/wide
			torch := 1.25*math.Exp(-(dx*dx+1.5*dy*dy)/.11) + .05
			noise := .007 * c.r.NormFloat64()
			var out [3]uint8
			for i, warm := range []float64{1.04, 1, .90} {
				v := c.pix[y*wide+x][i]*torch*warm + noise
				v = v / (1 + .12*v) // highlights do not burn out at once
				out[i] = uint8(255 * math.Pow(math.Max(0, math.Min(1, v)), 1/1.9))
			}
			img.SetRGBA(x, y, color.RGBA{out[0], out[1], out[2], 255})
		}
	}
	return img
}
