package font

import (
	"encoding/binary"
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

// Ensure that each glyph's left bearing is its left edge: programs that draw by the
// bearing would otherwise shift letters, while those that draw by outline do not.
func TestLeftBearings(t *testing.T) {
	each(t, func(t *testing.T, weight string, f *sfnt.Font) {
		data := map[string][]byte{"Regular": Regular(), "Medium": Medium(), "Bold": Bold()}[weight]
		table := map[string][]byte{}
		for i := range int(binary.BigEndian.Uint16(data[4:])) {
			e := data[12+16*i:]
			table[string(e[:4])] = data[binary.BigEndian.Uint32(e[8:]):]
		}
		wide := int(binary.BigEndian.Uint16(table["hhea"][34:]))
		short := binary.BigEndian.Uint16(table["head"][50:]) == 0
		seen := 0
		for i := range f.NumGlyphs() {
			at := func(i int) uint32 {
				if short {
					return 2 * uint32(binary.BigEndian.Uint16(table["loca"][2*i:]))
				}
				return binary.BigEndian.Uint32(table["loca"][4*i:])
			}
			if at(i) == at(i+1) {
				continue
			}
			left := int16(binary.BigEndian.Uint16(table["glyf"][at(i)+2:]))
			bearing := int16(binary.BigEndian.Uint16(table["hmtx"][4*wide+2*max(0, i-wide):]))
			if i < wide {
				bearing = int16(binary.BigEndian.Uint16(table["hmtx"][4*i+2:]))
			}
			assert.Equalf(t, left, bearing, "glyph %d", i)
			seen++
		}
		assert.Greater(t, seen, 600)
	})
}
