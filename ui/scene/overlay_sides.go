package scene

import (
	"math"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Picture is one of the pictures of nights side by side.
type Picture string

// The pictures; their texts are stored and never change.
const (
	JoinedPicture Picture = "joined" // the same fish by the clock and by the light
	StripsPicture Picture = "strips" // night under night
	PoolsPicture  Picture = "pools"  // all on one sketch
)

// Pictures lists every picture.
var Pictures = []Picture{JoinedPicture, StripsPicture, PoolsPicture}

// Sides are the same nights, in the same order, along an axis of time and along the
// light, and which of the two was chosen.
type Sides struct {
	Time, Light *timeline.Overlay
	ByLight     bool
}

// Shown is the overlay along the axis chosen.
func (s Sides) Shown() *timeline.Overlay {
	if s.ByLight {
		return s.Light
	}
	return s.Time
}

// Together draws one picture of nights side by side.
func Together(p Picture, s Sides, size draw.Size, look Look, v TogetherView) Scene {
	switch p {
	case StripsPicture:
		return Strips(s.Shown(), size, look, v)
	case PoolsPicture:
		return PoolsTogether(s.Shown(), size, look, v)
	}
	return Joined(s.Time, s.Light, size, look, v)
}

// TogetherPage draws a picture of nights side by side to keep: its title, how the nights
// were chosen, the picture, what may be concluded and the legend on one A4 page.
func TogetherPage(p Picture, s Sides, title string, lines []string, look Look, v TogetherView) *draw.List {
	const m = pageMargin
	w := PageSize.W - 2*m
	l := draw.NewList(PageSize)
	l.Fill(draw.Rectangle(draw.Bounds(PageSize)), draw.NonZero, draw.Solid(look.Back))
	l.Group(title)
	defer l.EndGroup()
	head := draw.Font{Weight: draw.Bold, Size: 21}
	y := paragraph(l, head, look.Ink, title, draw.Pt(m, m+16), w, 26)
	for _, line := range lines {
		y = paragraph(l, draw.Font{Size: 12.5}, look.Soft, line, draw.Pt(m, y-3), w, 17) + 3
	}
	lg := TogetherLegend(w, look)
	foot := PageSize.H - m - 26 - lg.Size().H - 10
	room := foot - y
	scene := Together(p, s, draw.Size{W: w, H: math.Min(room, 800)}, look, v)
	k := math.Min(1, room/scene.List.Size().H)
	draw.Place(l, scene.List, k, draw.Pt(m+(w-w*k)/2, y))
	frame(l, look, draw.R(m, y, w, scene.List.Size().H*k))
	at := PageSize.H - m - 26
	draw.Place(l, lg, 1, draw.Pt(m, at-lg.Size().H))
	paragraph(l, textFont, look.Faint, words.TogetherCaution(), draw.Pt(m, at+12), w, 15)
	return l
}
