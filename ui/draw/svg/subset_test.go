package svg

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"io"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"gloamline/ui/draw"
)

// unpack turns a WOFF back into a TrueType file, checking sizes and sums on the way.
func unpack(t *testing.T, woff []byte) []byte {
	u32 := func(b []byte) int { return int(binary.BigEndian.Uint32(b)) }
	require.Equal(t, "wOFF", string(woff[:4]))
	require.Equal(t, len(woff), u32(woff[8:]))
	n := int(binary.BigEndian.Uint16(woff[12:]))
	out := header(n)
	var body []byte
	for i := range n {
		e := woff[44+20*i:]
		from, packed, size := u32(e[4:]), u32(e[8:]), u32(e[12:])
		assert.Zero(t, from%4)
		data := woff[from : from+packed]
		if packed < size {
			z, err := zlib.NewReader(bytes.NewReader(data))
			require.NoError(t, err)
			data, err = io.ReadAll(z)
			require.NoError(t, err)
		}
		require.Len(t, data, size)
		if string(e[:4]) == "head" {
			plain := bytes.Clone(data)
			binary.BigEndian.PutUint32(plain[8:], 0)
			assert.EqualValues(t, u32(e[16:]), sum(plain))
		} else {
			assert.EqualValues(t, u32(e[16:]), sum(data))
		}
		out = append(out, e[:4]...)
		out = binary.BigEndian.AppendUint32(out, uint32(u32(e[16:])))
		out = binary.BigEndian.AppendUint32(out, uint32(12+16*n+len(body)))
		out = binary.BigEndian.AppendUint32(out, uint32(size))
		body = append(body, data...)
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
	}
	out = append(out, body...)
	require.Equal(t, len(out), u32(woff[16:]))
	assert.EqualValues(t, 0xB1B0AFBA, sum(out), "sum over the whole font (OpenType, table head)")
	return out
}

// Ensure that the packed file is a whole font whose letters in use are the original
// ones, and whose other letters are empty.
func TestSubset(t *testing.T) {
	for w := draw.Regular; w <= draw.Bold; w++ {
		woff, err := subset(w.TTF(), []rune("Aŵ½2"))
		require.NoError(t, err)
		assert.Less(t, len(woff), 12_000)
		got, err := sfnt.Parse(unpack(t, woff))
		require.NoError(t, err)
		want, err := sfnt.Parse(w.TTF())
		require.NoError(t, err)
		var b sfnt.Buffer
		load := func(f *sfnt.Font, r rune) sfnt.Segments {
			gid, err := f.GlyphIndex(&b, r)
			require.NoError(t, err)
			s, err := f.LoadGlyph(&b, gid, fixed.I(1000), nil)
			require.NoError(t, err)
			return append(sfnt.Segments(nil), s...)
		}
		for _, r := range "Aŵ½2" {
			assert.NotEmpty(t, load(got, r))
			assert.Equal(t, load(want, r), load(got, r))
		}
		assert.Empty(t, load(got, 'B'))
		assert.NotEmpty(t, load(want, 'B'))
	}
}

func TestSubsetOfNoFont(t *testing.T) {
	for _, data := range [][]byte{nil, []byte("too short"), make([]byte, 12), bytes.Repeat([]byte{0xff}, 500), draw.Regular.TTF()[:900]} {
		_, err := subset(data, []rune("A"))
		assert.Error(t, err)
	}
}
