package scene_test

import (
	"fmt"
	"image"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/draw/raster"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// leastDifference is how much of the ground that two codes cover must differ by a
// contrast of differs or more, and seen is the contrast from which ground is covered.
const (
	leastDifference = 0.06
	differs, seen   = 1.4, 1.12
)

// legendPicture paints the legend as a column, in which each mark has the same room, as
// one sees it.
func legendPicture(look scene.Look, v inspect.Vision) (*draw.List, *image.RGBA) {
	l := scene.Legend(350, look)
	page := draw.NewList(draw.Size{W: 350, H: l.Size().H + 1})
	page.Fill(draw.Rectangle(draw.Bounds(page.Size())), draw.NonZero, draw.Solid(look.Panel))
	draw.Place(page, l, 1, draw.Point{})
	img := image.NewRGBA(image.Rect(0, 0, 350, int(page.Size().H)))
	new(raster.Painter).Paint(img, page, 1)
	return l, v.SeeAll(img)
}

// sample is the mark that stands before a text of the legend.
func sample(t *testing.T, l *draw.List, img *image.RGBA, text string) *image.RGBA {
	for _, b := range l.TextBoxes() {
		if b.Text.S == text {
			y := int(b.Text.At.Y)
			return img.SubImage(image.Rect(0, y-10, 60, y+11)).(*image.RGBA)
		}
	}
	require.Fail(t, "the legend has no such words", text)
	return nil
}

// difference is the share of what either mark covers that differs in light.
func difference(a, b *image.RGBA, ground draw.Color) float64 {
	at := func(img *image.RGBA, x, y int) draw.Color {
		c := img.RGBAAt(img.Rect.Min.X+x, img.Rect.Min.Y+y)
		return draw.RGBA(c.R, c.G, c.B, 255)
	}
	covered, differ := 0, 0
	for y := range a.Rect.Dy() {
		for x := range a.Rect.Dx() {
			ca, cb := at(a, x, y), at(b, x, y)
			if max(draw.Contrast(ca, ground), draw.Contrast(cb, ground)) > seen {
				covered++
				if draw.Contrast(ca, cb) > differs {
					differ++
				}
			}
		}
	}
	return float64(differ) / float64(max(covered, 1))
}

// Ensure that codes which stand side by side and mean different things differ by more
// than hue: by light or shape, in every look, to common sight, without one kind of
// cone, and in grey.
func TestCodesDifferByMoreThanHue(t *testing.T) {
	pairs := [][2]string{
		{"landed", words.LegendKept()}, {"landed", "came off"}, {words.LegendKept(), "came off"},
		{"pull", "pluck"}, {"pluck", "boil"}, {"boil", "follow"}, {"pluck", "follow"},
		{words.LegendFlySlim(), words.LegendFlyFull()}, {words.LegendFlySlim(), words.LegendFlyUnknown()},
		{words.LegendPoint(), words.LegendDropper()}, {words.LegendPoint(), words.LegendLengthUnknown()}, {words.LegendDropper(), words.LegendLengthUnknown()},
		{words.LegendTrace(0), words.LegendTrace(1)}, {words.LegendTrace(1), words.LegendTrace(2)}, {words.LegendTrace(0), words.LegendOpenSky()},
		{words.LegendThreshold(), words.LegendOpenSky()}, {words.LegendGreyNoted(), words.LegendHazard()},
		{words.LegendMoment(), words.LegendCursor()}, {words.LegendMoonlit(), words.LegendShadow()},
		{words.LegendUncertain(), words.LegendOpenSky()}, {words.LegendCloud(), words.LegendMoon()},
		{words.LegendSelected(), words.LegendShadow()}, {words.LegendEntry(), words.LegendHazard()},
	}
	for _, look := range scene.Looks {
		for _, v := range inspect.Visions {
			l, img := legendPicture(look, v)
			for _, p := range pairs {
				d := difference(sample(t, l, img, p[0]), sample(t, l, img, p[1]), v.See(look.Panel))
				assert.Greater(t, d, leastDifference, "%s, %s: %q and %q", look.Name, v.Name, p[0], p[1])
			}
		}
	}
}

// Ensure that what must be read stays 4.5:1 on its ground, and lines and marks 3:1
// (WCAG 2.1, 1.4.3 and 1.4.11), however one sees colours. The lamp look is for eyes
// that see red: to those without long cones it is dim, which its own pictures show, so
// there text is held to 3 and marks to 2.
func TestContrastHoldsForEveryVision(t *testing.T) {
	for _, look := range scene.Looks {
		for _, v := range inspect.Visions {
			text, mark := 4.5, 3.0
			if look.Name == scene.Lamp.Name && (v.Name == "protanopia" || v.Name == "grey") {
				text, mark = 3, 2
			}
			for name, c := range map[string]draw.Color{"ink": look.Ink, "soft": look.Soft, "faint": look.Faint, "accent": look.Accent, "moon": look.Moon} {
				r := draw.Contrast(v.See(c), v.See(look.Panel))
				assert.GreaterOrEqual(t, r, text, fmt.Sprintf("%s, %s: %s", look.Name, v.Name, name))
			}
			assert.GreaterOrEqual(t, draw.Contrast(v.See(look.Fish), v.See(look.Panel)), mark, "%s, %s: fish", look.Name, v.Name)
			for i := range 2 { // flies: dark, medium, pale stand apart on their plate
				assert.GreaterOrEqual(t, draw.Contrast(v.See(look.Fly[i+1]), v.See(look.Fly[i])), 1.5, "%s, %s: tones %d and %d", look.Name, v.Name, i, i+1)
			}
		}
	}
}
