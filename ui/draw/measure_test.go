package draw

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"pgregory.net/rapid"
)

func anyFont() *rapid.Generator[Font] {
	return rapid.Custom(func(t *rapid.T) Font {
		return Font{Weight(rapid.IntRange(0, 2).Draw(t, "weight")), rapid.Float64Range(8, 60).Draw(t, "size")}
	})
}

// Ensure that widths are those of the font file as x/image's own text drawer adds
// them up, without kerning (rounded there to 1/64 of a pixel for each letter).
func TestWidthAgreesWithFontFile(t *testing.T) {
	for w := Regular; w <= Bold; w++ {
		f, err := opentype.Parse(w.TTF())
		require.NoError(t, err)
		face, err := opentype.NewFace(f, &opentype.FaceOptions{Size: 15, DPI: 72, Hinting: font.HintingNone})
		require.NoError(t, err)
		for _, s := range []string{"Long Flat", "22:15", "½ in, ŵŷ Àòù – 0.03 lx", ""} {
			want := 0.0
			for _, r := range s {
				adv, ok := face.GlyphAdvance(r)
				require.True(t, ok)
				want += float64(adv) / 64
			}
			assert.InDeltaf(t, want, Measure(Font{w, 15}, s).Width, 0.02*float64(len(s)+1), "%v %q", w, s)
		}
	}
}

// Ensure that the room of a line is sane: capitals as high as their ink, figures of
// one width, heavier cuts wider.
func TestMetrics(t *testing.T) {
	f := Font{Regular, 100}
	m := Measure(f, "H")
	assert.InDelta(t, m.CapHeight, -m.Ink.Min.Y, 0.5)
	assert.InDelta(t, 0, m.Ink.Max.Y, 0.5)
	assert.InDelta(t, Measure(f, "x").XHeight, -Measure(f, "x").Ink.Min.Y, 1)
	assert.Greater(t, m.Ascent, m.CapHeight)
	assert.Greater(t, m.Descent, Measure(f, "gpqy").Ink.Max.Y-1)
	assert.Equal(t, Measure(f, "00:00").Width, Measure(f, "19:47").Width)
	assert.Greater(t, Measure(Font{Bold, 100}, "Sand").Width, Measure(f, "Sand").Width)
	assert.True(t, Measure(f, "  ").Ink.Empty())
	assert.Equal(t, Metrics{Ascent: m.Ascent, Descent: m.Descent, CapHeight: m.CapHeight, XHeight: m.XHeight}, Measure(f, ""))
}

func TestMeasureAllocatesNothing(t *testing.T) {
	Measure(Font{Regular, 12}, "warm")
	assert.Zero(t, testing.AllocsPerRun(100, func() { Measure(Font{Regular, 12}, "Alder Pool, 22:35") }))
}

// Ensure that a shortened name fits, is a beginning of the name, and that nothing is
// shortened that fits.
func TestFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := anyFont().Draw(t, "font")
		s := rapid.String().Draw(t, "s")
		width := rapid.Float64Range(0, 400).Draw(t, "width")
		got := Fit(f, s, width)
		if Measure(f, s).Width <= width {
			assert.Equal(t, s, got)
			return
		}
		assert.LessOrEqual(t, Measure(f, got).Width, width+1e-9)
		if got != "" {
			assert.True(t, strings.HasPrefix(s, strings.TrimSuffix(got, "…")))
		}
	})
	assert.Equal(t, "Long…", Fit(Font{Regular, 12}, "Long Flat", Measure(Font{Regular, 12}, "Long …").Width))
}

// Ensure that wrapping loses no word and no line is too wide, unless it is a single
// character.
func TestWrap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := anyFont().Draw(t, "font")
		s := rapid.StringOf(rapid.RuneFrom([]rune("abc iWŵ\n"))).Draw(t, "s")
		width := rapid.Float64Range(5, 300).Draw(t, "width")
		lines := Wrap(f, s, width)
		squash := func(s string) string { return strings.Join(strings.Fields(s), "") }
		assert.Equal(t, squash(s), squash(strings.Join(lines, " ")))
		for _, l := range lines {
			if len([]rune(l)) > 1 {
				assert.LessOrEqual(t, Measure(f, l).Width, width)
			}
		}
	})
	assert.Equal(t, []string{"one", "two", "", "three"}, Wrap(Font{Regular, 10}, "one two\n\nthree", 30))
}

func TestHas(t *testing.T) {
	assert.True(t, Has('ŵ'))
	assert.True(t, Has('\uFFFD'))
	assert.False(t, Has('鱒'))
	assert.False(t, Has(-1))
	assert.False(t, Has('\u0007'))
}

func BenchmarkMeasure(b *testing.B) {
	for b.Loop() {
		Measure(Font{Medium, 13}, "Alder Pool, Anna, first run 22:35–23:10")
	}
}

func BenchmarkReadCut(b *testing.B) {
	for b.Loop() {
		readCut(Regular.TTF())
	}
}

// Ensure that a figure stays with its unit where a no-break space holds them.
func TestWrapKeepsNoBreakSpaces(t *testing.T) {
	f := Font{Size: 12}
	w := Measure(f, "light 1.2").Width + 1
	require.Equal(t, []string{"light 1.2", "lx"}, Wrap(f, "light 1.2 lx", w))
	require.Equal(t, []string{"light", "1.2\u00a0lx"}, Wrap(f, "light 1.2\u00a0lx", w))
}
