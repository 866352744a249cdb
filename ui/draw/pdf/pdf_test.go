package pdf

import (
	"bytes"
	"errors"
	"image"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
)

func one(show func(l *draw.List)) *draw.List {
	l := draw.NewList(draw.Size{W: 200, H: 100})
	show(l)
	return l
}

func find(objs []object, part string) *object {
	for i := range objs {
		if strings.Contains(objs[i].dict, part) {
			return &objs[i]
		}
	}
	return nil
}

// Ensure that the document says what it is and when it was made, by no clock.
func TestParticulars(t *testing.T) {
	made := time.Date(2026, 7, 5, 3, 15, 0, 0, time.FixedZone("", 3600))
	file, objs := write(t, Options{Title: "Night", Author: "Anna\x00", Created: made}, one(func(*draw.List) {}))
	assert.Contains(t, string(file), "/CreationDate (D:20260705021500")
	assert.Contains(t, string(file), "/ModDate (D:20260705021500")
	info := find(objs, "/CreationDate")
	require.NotNil(t, info)
	assert.Contains(t, info.dict, "\x00N\x00i\x00g\x00h\x00t")
	assert.Contains(t, info.dict, "\x00A\x00n\x00n\x00a")

	file, _ = write(t, Options{}, one(func(*draw.List) {}))
	assert.Contains(t, string(file), "/CreationDate (D:19700101000000")
}

// Ensure that there is a page for each list, each of its own size, in order.
func TestPages(t *testing.T) {
	a := one(func(l *draw.List) {
		l.Text(draw.Text{S: "first", At: draw.Pt(10, 20), Font: draw.Font{Size: 12}, Color: draw.Gray(0)})
	})
	b := draw.NewList(A4)
	b.Text(draw.Text{S: "second", At: draw.Pt(10, 20), Font: draw.Font{Size: 12}, Color: draw.Gray(0)})
	file, objs := write(t, Options{}, a, nil, b)
	pages := contents(objs)
	require.Len(t, pages, 2)
	assert.Equal(t, []run{{10, 80, "first"}}, texts(t, pages[0]))
	assert.Equal(t, []run{{10, 821.89, "second"}}, texts(t, pages[1]))
	assert.Contains(t, string(file), "/MediaBox [0 0 595.28 841.89]")
	assert.Contains(t, pages[1], " Tf ", "each page sets its font anew")

	assert.ErrorIs(t, Write(&bytes.Buffer{}, nil, Options{}), ErrNoPage)
	assert.ErrorIs(t, Write(&bytes.Buffer{}, []*draw.List{nil}, Options{}), ErrNoPage)
}

// Ensure that all letters come back as they went in, among them those whose code has
// a byte that PDF strings treat in their own way: č is 010D hex, Č 010C, ( 0028.
func TestTextComesBack(t *testing.T) {
	const s = `č Č Ċ (a) \b\ ŵŷ ½ – 22:15`
	x := draw.Text{S: s, At: draw.Pt(100, 50), Font: draw.Font{Weight: draw.Bold, Size: 11}, Color: draw.Gray(0), Anchor: draw.Middle}
	_, objs := write(t, Options{}, one(func(l *draw.List) { l.Text(x) }))
	got := texts(t, contents(objs)[0])
	require.Len(t, got, 1)
	assert.Equal(t, s, got[0].s)
	assert.InDelta(t, x.Origin().X, got[0].x, 0.006)
	assert.InDelta(t, 50, got[0].y, 0.006)
}

// Ensure that the widths written for the reader are those that were measured: in
// thousandths of the size for each character code.
func TestWidthsAreMeasured(t *testing.T) {
	const s = "Alder Pool ½ 22:35"
	_, objs := write(t, Options{}, one(func(l *draw.List) {
		l.Text(draw.Text{S: s, At: draw.Pt(0, 50), Font: draw.Font{Size: 10}, Color: draw.Gray(0)})
	}))
	font := find(objs, "gloamlineregular\n/CIDSystemInfo")
	require.NotNil(t, font)
	w := widths(font.dict)
	sum := 0.0
	for _, r := range s {
		require.Contains(t, w, int(r))
		sum += float64(w[int(r)]) / 1000 * 10
	}
	assert.InDelta(t, draw.Measure(draw.Font{Size: 10}, s).Width, sum, 1e-6)
}

// Ensure that the font is right after a clip ends, which takes it back on the page
// without fpdf knowing.
func TestFontAfterClip(t *testing.T) {
	small := draw.Text{S: "a", At: draw.Pt(10, 20), Font: draw.Font{Size: 10}, Color: draw.Gray(0)}
	large := draw.Text{S: "b", At: draw.Pt(10, 20), Font: draw.Font{Size: 30}, Color: draw.Gray(0)}
	_, objs := write(t, Options{}, one(func(l *draw.List) {
		l.Text(small)
		l.PushClip(draw.Rectangle(draw.R(0, 0, 50, 50)))
		l.Text(large)
		l.PopClip()
		l.Text(large)
		l.Text(small)
	}))
	assert.Equal(t, []string{"a10", "b30", "b30", "a10"}, sizes(contents(objs)[0]))
}

// Ensure that a letter first used after a clip ends is counted to its own font, so
// that its shape is carried along: the font of before the clip is in force again
// without fpdf knowing. (A letter beyond Latin-1, since fpdf lists the widths of
// those up to 255 whether used or not.)
func TestLetterAfterClip(t *testing.T) {
	plain := draw.Text{S: "a", At: draw.Pt(10, 20), Font: draw.Font{Size: 10}, Color: draw.Gray(0)}
	bold, late := plain, plain
	bold.S, bold.Font.Weight, late.S = "b", draw.Bold, "ŵ"
	_, objs := write(t, Options{}, one(func(l *draw.List) {
		l.Text(plain)
		l.PushClip(draw.Rectangle(draw.R(0, 0, 50, 50)))
		l.Text(bold)
		l.PopClip()
		l.Text(late)
	}))
	font := find(objs, "gloamlineregular\n/CIDSystemInfo")
	require.NotNil(t, font)
	assert.Contains(t, widths(font.dict), int('ŵ'))
	font = find(objs, "gloamlinebold\n/CIDSystemInfo")
	require.NotNil(t, font)
	assert.NotContains(t, widths(font.dict), int('ŵ'))
}

func TestShapes(t *testing.T) {
	_, objs := write(t, Options{}, one(func(l *draw.List) {
		l.Fill(draw.Rectangle(draw.R(1, 2, 3, 4)), draw.EvenOdd, draw.Solid(draw.Hex("#ff000080")))
		l.Stroke(draw.Line(draw.Pt(0, 0), draw.Pt(1.0/3, 5)), draw.Stroke{Width: 1.5, Dash: []float64{3, 1}, Phase: -1, Cap: draw.SquareCap, Join: draw.BevelJoin}, draw.Gray(255))
		var q draw.Path
		q.Move(0, 0)
		q.Quad(30, 0, 30, 30)
		l.Stroke(q, draw.Stroke{Width: 1}, draw.Gray(255))
	}))
	page := contents(objs)[0]
	assert.Contains(t, page, "1 0 0 rg\n1 98 m 4 98 l 4 94 l 1 94 l h f*")
	assert.Contains(t, page, "1 1 1 RG 1.5 w 2 J 2 j [3 1] 3 d\n0 100 m 0.333 95 l S")
	assert.Contains(t, page, "0 100 m 20 100 30 90 30 70 c S", "a quadratic curve raised to a cubic")
	require.NotNil(t, find(objs, "/ca 0.502 /CA 0.502"))
}

// Ensure that an opaque gradient is shadings with its colours, and one with
// transparency a picture.
func TestGradients(t *testing.T) {
	box := draw.Rectangle(draw.R(0, 0, 100, 100))
	stops := []draw.Stop{{At: 20, Color: draw.Hex("#ff0000")}, {At: 60, Color: draw.Hex("#0000ff")}, {At: 80, Color: draw.Hex("#00ff00")}}
	_, objs := write(t, Options{}, one(func(l *draw.List) { l.Fill(box, draw.NonZero, draw.Horizontal(stops...)) }))
	page := contents(objs)[0]
	assert.Equal(t, 2, count(page, "sh"))
	require.NotNil(t, find(objs, "/C0 [1.000 0.000 0.000] /C1 [0.000 0.000 1.000]"))
	require.NotNil(t, find(objs, "/C0 [0.000 0.000 1.000] /C1 [0.000 1.000 0.000]"))
	require.NotNil(t, find(objs, "/Coords [0.00000 0.00000 0.50000 0.00000]"), "from 20 to 60 in a part from 20 to 100")
	assert.Nil(t, find(objs, "/Subtype /Image"))

	stops[1].Color.A = 10
	_, objs = write(t, Options{}, one(func(l *draw.List) { l.Fill(box, draw.NonZero, draw.Vertical(stops...)) }))
	assert.Zero(t, count(contents(objs)[0], "sh"))
	require.NotNil(t, find(objs, "/SMask"))
}

// Ensure that what is saved is restored, on every page, whatever was drawn.
func TestSavesAreRestored(t *testing.T) {
	_, objs := write(t, Options{}, inspect.Sample(), inspect.Sample())
	pages := contents(objs)
	require.Len(t, pages, 2)
	for _, p := range pages {
		assert.Positive(t, count(p, "q"))
		assert.Equal(t, count(p, "q"), count(p, "Q"))
	}
}

// Ensure that the same pages give the same bytes, also with several pictures of one
// width, whose order fpdf leaves to chance.
func TestSameBytes(t *testing.T) {
	page := inspect.Sample()
	for i := range 6 {
		img := image.NewNRGBA(image.Rect(0, 0, 20, 20))
		for k := range img.Pix {
			img.Pix[k] = uint8(k * (i + 1))
		}
		page.Image(img, draw.R(float64(30*i), 0, 20, 20))
		page.Image(img, draw.R(float64(30*i), 30, 20, 20))
	}
	first, objs := write(t, Options{Title: "x"}, page, page)
	pictures := 0
	for _, o := range objs {
		if strings.Contains(o.dict, "/Subtype /Image") && strings.Contains(o.dict, "/SMask") {
			pictures++
		}
	}
	assert.Equal(t, 6+1, pictures, "each picture and gradient once")
	for range 8 {
		again, _ := write(t, Options{Title: "x"}, page, page)
		require.True(t, bytes.Equal(first, again))
	}
}

// Ensure that no input makes it fail or write figures that no reader takes.
func TestOddInput(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.SampledFrom([]float64{0, 80, 1e6, math.NaN()}).Draw(t, "w"), rapid.SampledFrom([]float64{60, -1, 20000}).Draw(t, "h")
		l := draw.NewList(draw.Size{W: w, H: h})
		inspect.Wild(l, rapid.SliceOfN(rapid.Byte(), 0, 600).Draw(t, "data"))
		_, objs := write(t, Options{Title: rapid.String().Draw(t, "title")}, l)
		pages := contents(objs)
		require.Len(t, pages, 1)
		assert.Equal(t, count(pages[0], "q"), count(pages[0], "Q"))
		for _, word := range words(pages[0]) {
			if strings.HasPrefix(word, "/") {
				continue // a name
			}
			if strings.Contains(word, "NaN") || strings.Contains(word, "Inf") || strings.ContainsAny(word[:1], "+-.0123456789") && strings.ContainsAny(word, "eE") {
				t.Fatalf("word %q", word) // PDF 32000-1, 7.3.3: a number has no exponent
			}
		}
	})
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestWriterError(t *testing.T) {
	assert.ErrorContains(t, Write(broken{}, []*draw.List{inspect.Sample()}, Options{}), "disk full")
}

func BenchmarkWrite(b *testing.B) {
	l := inspect.Sample()
	b.ReportAllocs()
	for b.Loop() {
		var buf bytes.Buffer
		if err := Write(&buf, []*draw.List{l}, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
