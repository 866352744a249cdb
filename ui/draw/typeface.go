package draw

import (
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	files "gloamline/assets/font"
)

// em is the units to the em of our files, in which everything here is kept.
const em = 1000

// replacement stands for what the typeface lacks.
const replacement = '\uFFFD'

// glyph is one character of a cut, in units of 1/1000 em, y downwards.
type glyph struct {
	advance float64
	ink     Rect
	outline Path
}

// cut is one weight, read once; it is never written after that.
type cut struct {
	index                                 [0x2800]uint16 // rune -> glyphs; our typeface ends below
	glyphs                                []glyph        // 0 stands for what is not there
	ascent, descent, capHeight, lowHeight float64
}

var cuts = [...]func() *cut{
	sync.OnceValue(func() *cut { return readCut(files.Regular()) }),
	sync.OnceValue(func() *cut { return readCut(files.Medium()) }),
	sync.OnceValue(func() *cut { return readCut(files.Bold()) }),
}

func cutOf(w Weight) *cut { return cuts[min(w, Bold)]() }

// TTF is the TrueType file of a weight. The bytes are shared: read only.
func (w Weight) TTF() []byte {
	return [...]func() []byte{files.Regular, files.Medium, files.Bold}[min(w, Bold)]()
}

// Family is the name of the typeface.
const Family = files.Family

// Has reports whether the typeface has a glyph for r.
func Has(r rune) bool {
	c := cutOf(Regular)
	return r == replacement || r >= 0 && int(r) < len(c.index) && c.index[r] != 0
}

// Outline is the shape of a character at a size, its baseline beginning at the
// origin; U+FFFD for what the typeface lacks. Fill it NonZero.
func Outline(f Font, r rune) Path {
	return cutOf(f.Weight).find(r).outline.Transformed(f.Size/em, Point{})
}

// Advance is how far a character moves the pen, in dp.
func Advance(f Font, r rune) float64 { return cutOf(f.Weight).find(r).advance * f.Size / em }

func (c *cut) find(r rune) *glyph {
	if r >= 0 && int(r) < len(c.index) {
		return &c.glyphs[c.index[r]]
	}
	return &c.glyphs[0]
}

// readCut reads the whole file, 600 glyphs in a few milliseconds, so that measuring
// needs no lock. The file is inside the program: a fault in it is ours.
func readCut(ttf []byte) *cut {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic("draw: our own typeface: " + err.Error())
	}
	var b sfnt.Buffer
	c := &cut{}
	if m, err := f.Metrics(&b, fixed.I(em), font.HintingNone); err == nil {
		c.ascent, c.descent = units(m.Ascent), units(m.Descent)
		c.capHeight, c.lowHeight = units(m.CapHeight), units(m.XHeight)
	}
	gid, _ := f.GlyphIndex(&b, replacement)
	c.glyphs = append(c.glyphs, readGlyph(f, &b, gid))
	for r := range rune(len(c.index)) {
		if gid, err := f.GlyphIndex(&b, r); err == nil && gid != 0 {
			c.index[r] = uint16(len(c.glyphs))
			c.glyphs = append(c.glyphs, readGlyph(f, &b, gid))
		}
	}
	return c
}

func readGlyph(f *sfnt.Font, b *sfnt.Buffer, gid sfnt.GlyphIndex) glyph {
	var g glyph
	if adv, err := f.GlyphAdvance(b, gid, fixed.I(em), font.HintingNone); err == nil {
		g.advance = units(adv)
	}
	segs, err := f.LoadGlyph(b, gid, fixed.I(em), nil)
	if err != nil {
		return g
	}
	x := func(s sfnt.Segment, i int) float64 { return units(s.Args[i].X) }
	y := func(s sfnt.Segment, i int) float64 { return units(s.Args[i].Y) }
	for i, s := range segs {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				g.outline.Close()
			}
			g.outline.Move(x(s, 0), y(s, 0))
		case sfnt.SegmentOpLineTo:
			g.outline.Line(x(s, 0), y(s, 0))
		case sfnt.SegmentOpQuadTo:
			g.outline.Quad(x(s, 0), y(s, 0), x(s, 1), y(s, 1))
		case sfnt.SegmentOpCubeTo:
			g.outline.Cubic(x(s, 0), y(s, 0), x(s, 1), y(s, 1), x(s, 2), y(s, 2))
		}
	}
	g.outline.Close()
	var pts []Point
	for _, piece := range g.outline.Flatten(1) {
		pts = append(pts, piece.Points...)
	}
	g.ink = around(pts)
	return g
}

func units(v fixed.Int26_6) float64 { return float64(v) / 64 }
