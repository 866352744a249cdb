package draw

import "image"

// Rule says which parts of a path that crosses itself are inside.
type Rule uint8

// The rules, as in SVG and PDF.
const (
	NonZero Rule = iota
	EvenOdd
)

// Surface is what scenes draw on and back ends offer. Later calls paint over
// earlier ones. Odd input is dropped, not reported.
type Surface interface {
	// Size is the room there is, in dp; the origin is the upper left corner.
	Size() Size
	// Fill paints the inside of p; pieces that are open count as closed.
	Fill(p Path, rule Rule, paint Paint)
	// Stroke paints a line along p.
	Stroke(p Path, s Stroke, c Color)
	// Text paints one line of text.
	Text(t Text)
	// Image paints a picture, stretched into r.
	Image(img image.Image, r Rect)
	// PushClip keeps what follows inside p as well as inside earlier clips.
	PushClip(p Path)
	// PopClip takes the last clip away.
	PopClip()
	// Group begins a part with a title for people who cannot see the picture;
	// groups may lie in groups. It paints nothing.
	Group(title string)
	// EndGroup ends the last group begun.
	EndGroup()
}
