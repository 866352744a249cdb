package paper_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/draw"
	"gloamline/ui/paper"
	"gloamline/ui/scene"
)

func pages(n int) []*draw.List {
	var out []*draw.List
	for range n {
		l := draw.NewList(scene.PageSize)
		l.Text(draw.Text{S: "Alder Pool ½ in", At: draw.Pt(50, 80), Font: draw.Font{Size: 14}, Color: draw.Gray(0)})
		out = append(out, l)
	}
	return out
}

// Ensure that pages are written under the names told, one PDF for all, one picture
// for each, by the ending of the name.
func TestSaveNames(t *testing.T) {
	dir := t.TempDir()
	for ext, want := range map[string][]string{".pdf": {"n.pdf"}, ".png": {"n.png", "n-2.png"}, ".svg": {"n.svg", "n-2.svg"}, ".PNG": {"n.PNG", "n-2.PNG"}} {
		names, err := paper.Save(filepath.Join(dir, "n"+ext), "A night", pages(2))
		require.NoError(t, err)
		var got []string
		for _, n := range names {
			info, err := os.Stat(n)
			require.NoError(t, err)
			assert.Positive(t, info.Size())
			got = append(got, filepath.Base(n))
		}
		assert.Equal(t, want, got)
	}
	_, err := paper.Save(filepath.Join(dir, "n.txt"), "", pages(1))
	assert.ErrorIs(t, err, paper.ErrFormat)
	assert.NoFileExists(t, filepath.Join(dir, "n.txt"))
}

// Ensure that no file is ever written over, and that nothing is left where writing
// fails.
func TestSaveHarmsNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "night.pdf")
	require.NoError(t, os.WriteFile(path, []byte("mine"), 0o600))
	_, err := paper.Save(path, "", pages(1))
	assert.ErrorIs(t, err, fs.ErrExist)
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "mine", string(b))

	missing := filepath.Join(t.TempDir(), "no", "night.png")
	_, err = paper.Save(missing, "", pages(1))
	assert.ErrorIs(t, err, fs.ErrNotExist)
	_, err = paper.Save(filepath.Join(t.TempDir(), "empty.pdf"), "", nil)
	assert.Error(t, err, "no page is no document")
}

// Ensure that each format is what its name says: a PDF of A4 sheets, a PNG of 240
// pixels to the inch, an SVG that is whole and asks for nothing from outside.
func TestFormats(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, paper.PDF(&b, "A night", pages(2)))
	assert.Contains(t, b.String(), "/MediaBox [0 0 595.28 841.89]")
	assert.Regexp(t, regexp.MustCompile(`/Count 2\b`), b.String())

	b.Reset()
	require.NoError(t, paper.PNG(&b, pages(1)[0], paper.Pixels))
	img, err := png.Decode(&b)
	require.NoError(t, err)
	assert.InDelta(t, 8.2677*240, img.Bounds().Dx(), 2, "A4 is 210 mm wide")

	b.Reset()
	require.NoError(t, paper.SVG(&b, "A night", pages(1)[0]))
	d := xml.NewDecoder(bytes.NewReader(b.Bytes()))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
		if e, ok := tok.(xml.StartElement); ok {
			for _, a := range e.Attr {
				if a.Name.Local == "href" {
					assert.Regexp(t, "^(#|data:)", a.Value)
				}
			}
		}
	}
	assert.NotRegexp(t, `url\(["']?https?:`, b.String())
}
