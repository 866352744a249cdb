package font

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// what a journal of nights on a river in these islands and in the north can hold.
const needed = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789" +
	" !\"#$%&'()*+,-./:;<=>?@[\\]^_`{|}~" +
	"ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖØÙÚÛÜÝÞßàáâãäåæçèéêëìíîïðñòóôõöøùúûüýþÿ" +
	"ŴŵŶŷẀẁẂẃẄẅỲỳŸÂâÊêÎîÔôÛû" + // Welsh
	"ÀàÈèÌìÒòÙùḂḃĊċḊḋḞḟĠġṀṁṖṗṠṡṪṫ" + // Gaelic
	"ČčĐđŊŋŠšŦŧŽžĀāĒēĢģĪīĶķĻļŅņŪūĄąĖėĘęĮįŲųŁł" +
	"αβγδελμπρσφωΔΣΩ" +
	"½¼¾⅛⅜⅝⅞×÷±°′″–—…·•≤≥≈≠−₂²³€£←↑→↓‘’“”"

func each(t *testing.T, check func(t *testing.T, name string, f *sfnt.Font)) {
	for name, data := range map[string][]byte{"Regular": Regular(), "Medium": Medium(), "Bold": Bold()} {
		t.Run(name, func(t *testing.T) {
			f, err := sfnt.Parse(data)
			require.NoError(t, err)
			check(t, name, f)
		})
	}
}

func advance(t *testing.T, f *sfnt.Font, r rune) fixed.Int26_6 {
	var b sfnt.Buffer
	gid, err := f.GlyphIndex(&b, r)
	require.NoError(t, err)
	adv, err := f.GlyphAdvance(&b, gid, fixed.I(1000), font.HintingNone)
	require.NoError(t, err)
	return adv
}

// Ensure that every character a journal is likely to hold has a glyph.
func TestCharacters(t *testing.T) {
	each(t, func(t *testing.T, _ string, f *sfnt.Font) {
		var b sfnt.Buffer
		for _, r := range needed {
			gid, err := f.GlyphIndex(&b, r)
			require.NoError(t, err)
			assert.NotZerof(t, gid, "no glyph for %q", r)
		}
	})
}

// Ensure that figures are as wide as one another, so that times line up.
func TestTabularFigures(t *testing.T) {
	each(t, func(t *testing.T, _ string, f *sfnt.Font) {
		for _, r := range "0123456789" {
			assert.Equalf(t, advance(t, f, '0'), advance(t, f, r), "%c", r)
		}
		assert.NotEqual(t, advance(t, f, 'i'), advance(t, f, 'm'), "letters are proportional")
	})
}

// Ensure that the em has 1000 units: PDF stores advances in thousandths, so that
// text on paper is as wide as it was measured.
func TestEmOfAThousand(t *testing.T) {
	each(t, func(t *testing.T, _ string, f *sfnt.Font) {
		assert.EqualValues(t, 1000, f.UnitsPerEm())
	})
}

// Ensure that the files carry our name and their licence, since the original's
// name is a trademark and the licence must travel with them.
func TestNameAndLicence(t *testing.T) {
	each(t, func(t *testing.T, weight string, f *sfnt.Font) {
		var b sfnt.Buffer
		full, err := f.Name(&b, sfnt.NameIDFull)
		require.NoError(t, err)
		assert.Equal(t, Family+" "+weight, full)
		text, err := f.Name(&b, sfnt.NameIDLicense)
		require.NoError(t, err)
		assert.Contains(t, text, "Open Font License")
	})
	assert.True(t, strings.HasPrefix(Licence(), "Copyright 2016-2022 The Inter Project Authors"))
	assert.Contains(t, Licence(), "PERMISSION & CONDITIONS")
}

// Ensure that the files stay small: they are inside the program and each picture
// for a browser carries them.
func TestSmall(t *testing.T) {
	for _, data := range [][]byte{Regular(), Medium(), Bold()} {
		assert.Less(t, len(data), 150_000)
	}
}
