package svg

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"errors"
	"image"
	"image/png"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
)

// node is an element of a document.
type node struct {
	XMLName xml.Name
	Attrs   []xml.Attr `xml:",any,attr"`
	Nodes   []node     `xml:",any"`
	Text    string     `xml:",chardata"`
}

func (n node) attr(name string) string {
	for _, a := range n.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (n node) all(name string) []node {
	var out []node
	for _, c := range n.Nodes {
		if c.XMLName.Local == name {
			out = append(out, c)
		}
		out = append(out, c.all(name)...)
	}
	return out
}

func parse(t require.TestingT, l *draw.List, o Options) node {
	var b bytes.Buffer
	require.NoError(t, Write(&b, l, o))
	var n node
	d := xml.NewDecoder(&b)
	require.NoError(t, d.Decode(&n))
	for { // nothing but white space may follow
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		text, ok := tok.(xml.CharData)
		require.True(t, ok && strings.TrimSpace(string(text)) == "")
	}
	return n
}

func one(show func(l *draw.List)) *draw.List {
	l := draw.NewList(draw.Size{W: 100, H: 50.5})
	show(l)
	return l
}

func TestDocument(t *testing.T) {
	n := parse(t, one(func(l *draw.List) { l.Group("pools & <marks>"); l.EndGroup() }), Options{Title: `Night "of" 4 July & <5>`, Desc: "Four landed."})
	assert.Equal(t, "svg", n.XMLName.Local)
	assert.Equal(t, "http://www.w3.org/2000/svg", n.XMLName.Space)
	assert.Equal(t, "0 0 100 50.5", n.attr("viewBox"))
	assert.Equal(t, "100", n.attr("width"))
	assert.Equal(t, "img", n.attr("role"))
	assert.Equal(t, `Night "of" 4 July & <5>`, n.Nodes[0].Text)
	assert.Equal(t, "Four landed.", n.all("desc")[0].Text)
	assert.Equal(t, "pools & <marks>", n.all("g")[0].Nodes[0].Text)
	assert.Contains(t, n.all("style")[0].Text, "tabular-nums")
}

func TestShapes(t *testing.T) {
	n := parse(t, one(func(l *draw.List) {
		l.Fill(draw.Rectangle(draw.R(1, 2, 3, 4)), draw.EvenOdd, draw.Solid(draw.Hex("#12345680")))
		l.Stroke(draw.Line(draw.Pt(0, 0), draw.Pt(1.0/3, 5)), draw.Stroke{Width: 1.5, Dash: []float64{3, 1}, Phase: 2, Cap: draw.SquareCap, Join: draw.BevelJoin}, draw.Gray(255))
	}), Options{})
	p := n.all("path")
	require.Len(t, p, 2)
	assert.Equal(t, "M1 2L4 2L4 6L1 6Z", p[0].attr("d"))
	assert.Equal(t, "#123456", p[0].attr("fill"))
	assert.Equal(t, "0.502", p[0].attr("fill-opacity"))
	assert.Equal(t, "evenodd", p[0].attr("fill-rule"))
	assert.Equal(t, "M0 0L0.333 5", p[1].attr("d"))
	for name, want := range map[string]string{
		"fill": "none", "stroke": "#ffffff", "stroke-width": "1.5", "stroke-dasharray": "3 1", "stroke-dashoffset": "2",
		"stroke-linecap": "square", "stroke-linejoin": "bevel", "stroke-opacity": "",
	} {
		assert.Equal(t, want, p[1].attr(name), name)
	}
}

func TestGradientAndClip(t *testing.T) {
	n := parse(t, one(func(l *draw.List) {
		g := draw.Vertical(draw.Stop{At: 10, Color: draw.Gray(0)}, draw.Stop{At: 15, Color: draw.RGBA(1, 2, 3, 0)}, draw.Stop{At: 30, Color: draw.Gray(255)})
		l.PushClip(draw.Circle(draw.Pt(5, 5), 3))
		l.Fill(draw.Rectangle(draw.R(0, 0, 9, 9)), draw.NonZero, g)
		l.PopClip()
		l.Fill(draw.Rectangle(draw.R(9, 9, 9, 9)), draw.NonZero, g)
	}), Options{})
	defs := n.all("linearGradient")
	require.Len(t, defs, 1, "the same gradient is defined once")
	assert.Equal(t, []string{"10", "30", "userSpaceOnUse"}, []string{defs[0].attr("y1"), defs[0].attr("y2"), defs[0].attr("gradientUnits")})
	stops := defs[0].all("stop")
	require.Len(t, stops, 3)
	assert.Equal(t, []string{"0.25", "#010203", "0"}, []string{stops[1].attr("offset"), stops[1].attr("stop-color"), stops[1].attr("stop-opacity")})
	paths := n.all("path")
	for _, p := range paths[1:] {
		assert.Equal(t, "url(#"+defs[0].attr("id")+")", p.attr("fill"))
	}
	clip := n.all("g")[0]
	assert.Equal(t, "url(#"+n.all("clipPath")[0].attr("id")+")", clip.attr("clip-path"))
	assert.Len(t, clip.all("path"), 1, "what follows the clip is outside it")
}

// Ensure that text is text, stands where it was measured to stand, and keeps its
// width where another typeface has to serve.
func TestText(t *testing.T) {
	x := draw.Text{S: "a  <b> & 22:15", At: draw.Pt(50, 20), Font: draw.Font{Weight: draw.Medium, Size: 12}, Color: draw.Hex("#e8e6e0"), Anchor: draw.End, Align: draw.Centre, Angle: 30, Halo: draw.Halo{Width: 2, Color: draw.Gray(0)}}
	l := one(func(l *draw.List) { l.Text(x) })
	n := parse(t, l, Options{})
	require.Len(t, n.all("text"), 1)
	got := n.all("text")[0]
	assert.Equal(t, x.S, got.Text)
	assert.Equal(t, "500", got.attr("font-weight"))
	assert.Equal(t, "end", got.attr("text-anchor"))
	assert.Equal(t, "rotate(30 50 20)", got.attr("transform"))
	assert.Equal(t, "50", got.attr("x"))
	y, err := strconv.ParseFloat(got.attr("y"), 64)
	require.NoError(t, err)
	assert.InDelta(t, x.Origin().Y, y, 0.001)
	width, err := strconv.ParseFloat(got.attr("textLength"), 64)
	require.NoError(t, err)
	assert.InDelta(t, draw.Measure(x.Font, x.S).Width, width, 0.001)
	assert.Equal(t, "4", n.all("path")[0].attr("stroke-width"), "the halo is on both sides of the outline")

	got = parse(t, l, Options{Fonts: true}).all("text")[0]
	assert.Empty(t, got.attr("textLength"))
	x0, err := strconv.ParseFloat(got.attr("x"), 64)
	require.NoError(t, err)
	assert.InDelta(t, x.Origin().X, x0, 0.001)
}

func TestImage(t *testing.T) {
	src := image.NewNRGBA(image.Rect(0, 0, 2, 1))
	src.SetNRGBA(1, 0, draw.Hex("#ff0000"))
	n := parse(t, one(func(l *draw.List) { l.Image(src, draw.R(1, 2, 30, 40)) }), Options{})
	img := n.all("image")[0]
	assert.Equal(t, []string{"1", "2", "30", "40"}, []string{img.attr("x"), img.attr("y"), img.attr("width"), img.attr("height")})
	data, err := base64.StdEncoding.DecodeString(strings.TrimPrefix(img.attr("href"), "data:image/png;base64,"))
	require.NoError(t, err)
	back, err := png.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	assert.Equal(t, src.Pix, back.(*image.NRGBA).Pix)
}

// Ensure that the same list gives the same bytes, with all primitives and letters.
func TestSameBytes(t *testing.T) {
	var first string
	for range 5 {
		var b bytes.Buffer
		require.NoError(t, Write(&b, inspect.Sample(), Options{Title: "x", Fonts: true}))
		if first == "" {
			first = b.String()
		}
		require.Equal(t, first, b.String())
	}
}

// Ensure that a picture with its letters stays small enough to send to a friend.
func TestSmall(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, Write(&b, inspect.Sample(), Options{Fonts: true}))
	assert.Less(t, b.Len(), 100_000)
}

// Ensure that each id is there once and each reference has its target.
func TestReferences(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, Write(&b, inspect.Sample(), Options{}))
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(b.String(), -1) {
		assert.False(t, ids[m[1]], m[1])
		ids[m[1]] = true
	}
	refs := regexp.MustCompile(`url\(#([^)]*)\)`).FindAllStringSubmatch(b.String(), -1)
	assert.NotEmpty(t, refs)
	for _, m := range refs {
		assert.True(t, ids[m[1]], m[1])
	}
}

// Ensure that whatever is drawn or typed gives a well formed document.
func TestOddInput(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := draw.NewList(draw.Size{W: 80, H: 60})
		inspect.Wild(l, rapid.SliceOfN(rapid.Byte(), 0, 600).Draw(t, "data"))
		title := rapid.String().Draw(t, "title") + string(rapid.SliceOf(rapid.Byte()).Draw(t, "bytes"))
		n := parse(t, l, Options{Title: title, Desc: title, Fonts: rapid.Bool().Draw(t, "fonts")})
		texts := 0
		for i := range l.Len() {
			if l.Op(i).Kind == draw.TextOp {
				texts++
			}
		}
		assert.Len(t, n.all("text"), texts)
	})
}

func FuzzWrite(f *testing.F) {
	f.Add([]byte("\x04\x03<&>\x00\x01"), "title \x00 ]]> \ufffe")
	f.Fuzz(func(t *testing.T, data []byte, title string) {
		l := draw.NewList(draw.Size{W: 80, H: 60})
		inspect.Wild(l, data)
		parse(t, l, Options{Title: title, Desc: title})
	})
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestWriterError(t *testing.T) {
	assert.ErrorContains(t, Write(broken{}, inspect.Sample(), Options{}), "disk full")
}
