// Package draw is the drawing vocabulary of the program: shapes, colours, text and
// a display list, behind a Surface of a few methods. Scenes draw on a Surface;
// package raster paints a List into an image, svg and pdf write one to a file. The
// same List gives the same picture in all of them.
//
// # Units
//
// Every length is in dp, y grows downwards, and angles are degrees clockwise on
// the screen. On screen 1 dp is nominally 1/160 inch and the caller of raster says
// how many pixels it makes. On paper 1 dp is one PostScript point (1/72 inch), so
// that a 12 dp text is 12 point type; a page scene lays itself out in points.
//
// # What there is
//
//	Point, Size, Rect          geometry: Pt, R, Bounds, Inset, Overlaps ...
//	Path                       Move, Line, Quad, Cubic, Close; Flatten, Bounds
//	Line, Polyline, Polygon,
//	Rectangle, RoundRect,
//	Circle, Ellipse, Arc       paths ready made
//	Color                      color.NRGBA; RGBA, Hex, Gray, Fade, Over, Mix (OKLab),
//	                           Desaturate, Luminance, Contrast, Readable
//	Paint                      Solid, or a Horizontal or Vertical gradient of Stops;
//	                           Smooth mixes stops in OKLab
//	Stroke                     Width, Dash, Phase, Cap, Join
//	Font, Measure              the product's typeface in three weights; Fit and Wrap for
//	                           text that people type; Has, Outline, Advance for a letter
//	Text                       Anchor, Align, Angle, Halo; BoxOf, Text.Outline
//	Surface                    what a scene draws on
//	List                       a Surface that records: Replay, String, Bounds, Op,
//	                           TextBoxes
//	Place                      puts one list into another, moved and scaled
//
// A scene is a function that draws on a Surface:
//
//	func Strip(s draw.Surface) {
//		s.Fill(draw.Rectangle(draw.Bounds(s.Size())), draw.NonZero, draw.Solid(draw.Hex("#14181c")))
//		s.Stroke(draw.Polyline(points), draw.Stroke{Width: 2, Join: draw.RoundJoin}, draw.Hex("#e8e6e0"))
//		s.Text(draw.Text{S: "22:00", At: draw.Pt(100, 80), Font: draw.Font{Size: 12}, Color: grey, Anchor: draw.Middle})
//	}
//	l := draw.NewList(draw.Size{W: 1200, H: 420})
//	Strip(l)
//
// Package inspect answers what tests of scenes ask: which text is weak against what
// lies behind it, which texts overlap, are cut off or lie on marks.
//
// # Odd input
//
// A List is the gate to every back end. It drops a call whose coordinates are NaN,
// infinite or beyond MaxCoord, whose size is nought or whose colour is fully
// transparent; it keeps clips and groups in balance; it turns control characters
// in text into spaces and characters that the typeface lacks into U+FFFD, so that
// width and picture agree everywhere.
//
// # Not done
//
// No kerning and no shaping: each character is a glyph with an advance, in every
// back end alike (scripts that need shaping are not in the typeface; accents must
// be composed). No radial gradients, no blend modes, no filters: nothing here needs
// them and three back ends would have to agree on them. A gradient runs between
// colours in plain sRGB since that is what SVG and PDF do; Smooth adds stops mixed
// in OKLab where the way between matters.
package draw
