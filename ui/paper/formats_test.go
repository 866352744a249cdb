package paper_test

import (
	"bytes"
	"compress/zlib"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/paper"
	"gloamline/ui/scene"
)

// night draws the pages of two nights of the demo: that of show, and the one whose log
// is longest, which goes on overleaf.
func night(t testing.TB) (one, long []*draw.List) {
	t.Helper()
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Unix(0, 0) })
	require.NoError(t, err)
	require.NoError(t, demo.Write(j, demo.Seed))
	trips, err := j.Trips()
	require.NoError(t, err)
	var show, most *timeline.Night
	for _, trip := range trips {
		n, err := timeline.Load(j, trip.ID)
		require.NoError(t, err)
		if trip.Evening == demo.Show {
			show = n
		}
		if most == nil || len(n.Log.Entries) > len(most.Log.Entries) {
			most = n
		}
	}
	one, long = scene.Page(show, scene.Paper, scene.PageView{}), scene.Page(most, scene.Paper, scene.PageView{})
	require.Len(t, one, 1)
	require.Greater(t, len(long), 1)
	return one, long
}

// text is what stands on a page, and where: in points from its corner, left and top.
type text struct {
	s    string
	x, y float64
}

// near rounds to a tenth of a point.
func near(v float64) float64 { return math.Round(v*10) / 10 }

// placed is the texts of a list in their order.
func placed(l *draw.List) []text {
	var out []text
	for i := range l.Len() {
		if o := l.Op(i); o.Kind == draw.TextOp && strings.TrimSpace(o.Text.S) != "" {
			at := o.Text.Origin()
			out = append(out, text{o.Text.S, near(at.X * 0.75), near(at.Y * 0.75)}) // 72 points for 96 dp
		}
	}
	return out
}

// said is the texts of a list without their places.
func said(l *draw.List) []string {
	var out []string
	for i := range l.Len() {
		if o := l.Op(i); o.Kind == draw.TextOp && strings.TrimSpace(o.Text.S) != "" {
			out = append(out, o.Text.S)
		}
	}
	return out
}

var (
	streams = regexp.MustCompile(`(?s)<<([^>]*?/Length (\d+)[^>]*)>>\s*stream\n`)
	shown   = regexp.MustCompile(`(?s)BT ([-\d.]+) ([-\d.]+) Td \((.*?)\) Tj ET`)
)

// printed is the texts of a PDF, page by page: its unpacked streams that show any,
// each text in UTF-16 as a PDF string (ISO 32000-1, 7.3.4.2).
func printed(t testing.TB, file []byte) [][]text {
	t.Helper()
	var pages [][]text
	for _, m := range streams.FindAllSubmatchIndex(file, -1) {
		n, err := strconv.Atoi(string(file[m[4]:m[5]]))
		require.NoError(t, err)
		content := file[m[1] : m[1]+n]
		if !bytes.Contains(file[m[2]:m[3]], []byte("FlateDecode")) {
			continue
		}
		z, err := zlib.NewReader(bytes.NewReader(content))
		require.NoError(t, err)
		plain, err := io.ReadAll(z)
		require.NoError(t, err)
		var page []text
		for _, s := range shown.FindAllSubmatch(plain, -1) {
			raw := strings.NewReplacer(`\\`, `\`, `\(`, `(`, `\)`, `)`, `\r`, "\r").Replace(string(s[3]))
			var units []uint16
			for i := 0; i+1 < len(raw); i += 2 {
				units = append(units, uint16(raw[i])<<8|uint16(raw[i+1]))
			}
			x, err := strconv.ParseFloat(string(s[1]), 64)
			require.NoError(t, err)
			y, err := strconv.ParseFloat(string(s[2]), 64)
			require.NoError(t, err)
			page = append(page, text{string(utf16.Decode(units)), near(x), near(841.89 - y)})
		}
		if page != nil {
			pages = append(pages, page)
		}
	}
	return pages
}

// Ensure that a PDF has a sheet of A4 for each page and says on it what the page says,
// at the place where the page says it, as text that can be searched and copied.
func TestPDF(t *testing.T) {
	one, long := night(t)
	for _, list := range [][]*draw.List{one, long} {
		var b bytes.Buffer
		require.NoError(t, paper.PDF(&b, "A night", list))
		assert.Equal(t, len(list), strings.Count(b.String(), "/Type /Page\n"))
		assert.Contains(t, b.String(), "/MediaBox [0 0 595.28 841.89]") // 210 by 297 mm at 72 to the inch
		pages := printed(t, b.Bytes())
		require.Len(t, pages, len(list))
		for i, l := range list {
			want := placed(l)
			require.Greater(t, len(want), 20)
			require.Len(t, pages[i], len(want), "page %d", i+1)
			for k, w := range want {
				got := pages[i][k]
				assert.Equal(t, w.s, got.s)
				assert.InDelta(t, w.x, got.x, 0.11, w.s)
				assert.InDelta(t, w.y, got.y, 0.11, w.s)
			}
		}
	}
}

// Ensure that the PDF of a page is the same whenever it is made.
func TestPDFKnowsNoClock(t *testing.T) {
	one, _ := night(t)
	var a, b bytes.Buffer
	require.NoError(t, paper.PDF(&a, "A night", one))
	require.NoError(t, paper.PDF(&b, "A night", one))
	assert.True(t, bytes.Equal(a.Bytes(), b.Bytes()))
}

// Ensure that a PNG has 240 pixels to the inch of A4, or as many as asked for, and
// that something is drawn from edge to edge of the text.
func TestPNG(t *testing.T) {
	one, _ := night(t)
	for scale, perInch := range map[float64]float64{paper.Pixels: 240, 1: 96} {
		var b bytes.Buffer
		require.NoError(t, paper.PNG(&b, one[0], scale))
		img, err := png.Decode(&b)
		require.NoError(t, err)
		size := img.Bounds().Size()
		assert.InDelta(t, 210/25.4*perInch, size.X, 1.5, "A4 is 210 mm wide")
		assert.InDelta(t, 297/25.4*perInch, size.Y, 1.5, "and 297 mm high")
		r, g, bl, a := img.At(2, 2).RGBA()
		assert.Equal(t, [4]uint32{0xffff, 0xffff, 0xffff, 0xffff}, [4]uint32{r, g, bl, a}, "paper is white, not clear")
		dark := 0
		for y := range size.Y {
			for x := range size.X {
				if r, _, _, _ := img.At(x, y).RGBA(); r < 0x4000 {
					dark++
				}
			}
		}
		assert.Greater(t, float64(dark)/float64(size.X*size.Y), 0.005, "there is hardly any ink")
	}
}

// Ensure that an SVG is whole, says what the page says, names the night, and asks for
// nothing from outside and runs nothing.
func TestSVG(t *testing.T) {
	_, long := night(t)
	for _, l := range long {
		var b bytes.Buffer
		require.NoError(t, paper.SVG(&b, "A night <&>", l))
		var texts []string
		var title string
		d, in := xml.NewDecoder(bytes.NewReader(b.Bytes())), []string{}
		for {
			tok, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err)
			switch e := tok.(type) {
			case xml.StartElement:
				in = append(in, e.Name.Local)
				assert.NotContains(t, []string{"script", "foreignObject", "iframe"}, e.Name.Local)
				if e.Name.Local == "text" {
					texts = append(texts, "")
				}
				for _, a := range e.Attr {
					if a.Name.Local == "href" || a.Name.Local == "src" {
						assert.Regexp(t, "^(#|data:)", a.Value)
					}
					assert.False(t, strings.HasPrefix(a.Name.Local, "on"), a.Name.Local)
				}
			case xml.EndElement:
				in = in[:len(in)-1]
			case xml.CharData:
				switch {
				case len(in) == 2 && in[1] == "title":
					title += string(e)
				case len(in) > 0 && in[len(in)-1] == "text":
					texts[len(texts)-1] += string(e)
				}
			}
		}
		assert.Equal(t, "A night <&>", title)
		assert.Equal(t, said(l), texts)
		for _, m := range regexp.MustCompile(`url\(([^)]{0,20})`).FindAllStringSubmatch(b.String(), -1) {
			assert.Regexp(t, `^["']?(#|data:)`, m[1])
		}
		assert.NotContains(t, b.String(), "@import")
		assert.NotContains(t, b.String(), "<?xml-stylesheet")
		assert.Contains(t, b.String(), "@font-face", "the letters are in it")
	}
}

// BenchmarkSave makes one page of a night in each format.
func BenchmarkSave(b *testing.B) {
	one, _ := night(b)
	for name, write := range map[string]func(io.Writer) error{
		"pdf": func(w io.Writer) error { return paper.PDF(w, "A night", one) },
		"png": func(w io.Writer) error { return paper.PNG(w, one[0], paper.Pixels) },
		"svg": func(w io.Writer) error { return paper.SVG(w, "A night", one[0]) },
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				require.NoError(b, write(io.Discard))
			}
		})
	}
}
