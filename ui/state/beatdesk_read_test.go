package state

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal"
	"gloamline/ui/words"
)

func reader(s string) io.Reader { return strings.NewReader(s) }

// walked is a track that goes 600 m east along a parallel, with a fix every 30 m.
func walked() string {
	var s strings.Builder
	s.WriteString(`<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>short</name><trkseg><trkpt lat="54.9840" lon="-4.4280"/><trkpt lat="54.9841" lon="-4.4280"/></trkseg></trk><trk><name>bank</name><trkseg>`)
	for i := range 21 {
		fmt.Fprintf(&s, `<trkpt lat="%.6f" lon="%.6f"/>`, 54.984+0.00002*float64(i%3), -4.428+0.00047*float64(i))
	}
	s.WriteString(`</trkseg></trk></gpx>`)
	return s.String()
}

// Ensure that a walk along the bank becomes the river, and gives the beat its place and zone.
func TestBeatFromWalk(t *testing.T) {
	b := emptyDesk(t).Beats()
	ws, err := ReadWalks(reader(walked()))
	require.NoError(t, err)
	require.Len(t, ws, 2)
	assert.Equal(t, "bank", ws[0].Name, "the longest first")
	assert.InDelta(t, 602, float64(ws[0].Length), 5)
	require.NoError(t, b.DrawWalk(ws[0], 18, geo.TrueRight, false))
	s := b.now()
	assert.Equal(t, "Europe/London", s.Beat.Zone)
	require.Len(t, s.Beat.Banks(), 2)
	left, right := s.Strands(s.Beat.Banks()[0].ID)[0].Points, s.Strands(s.Beat.Banks()[1].ID)[0].Points
	assert.Less(t, float64(right[0].X), 0.0, "walked downstream, east")
	assert.InDelta(t, 18, float64(left[0].Distance(right[0])), 0.5)
	assert.Greater(t, float64(left[0].Y), float64(right[0].Y), "the true left lies north of a river that runs east")
	assert.Equal(t, DrawPool, b.Tool())
	assert.Error(t, b.DrawWalk(ws[0], 18, "", false), "not twice")
	require.NoError(t, b.Undo())
	require.NoError(t, b.DrawWalk(ws[0], 18, geo.TrueRight, true))
	right = b.now().Strands(b.now().Beat.Banks()[1].ID)[0].Points
	assert.Greater(t, float64(right[0].X), 0.0, "walked upstream")
	assert.Error(t, b.DrawWalk(ws[0], 9000, "", false))
	_, err = ReadWalks(reader("<gpx/>"))
	what, do := words.Explain(err)
	assert.NotEmpty(t, do)
	assert.Contains(t, what, "no track")
}

// Ensure that a sketch read in lies on the table first, is stored only then, and that a changed
// one of a beat that stands is a change of it.
func TestBeatFromSketch(t *testing.T) {
	d := emptyDesk(t)
	b := d.Beats()
	told, err := b.ReadSketch(reader(homeBeat(t)))
	require.NoError(t, err)
	assert.Contains(t, told, "Home Beat")
	assert.False(t, d.HasBeat())
	require.NoError(t, b.Store())
	require.True(t, d.HasBeat())
	_, err = b.ReadSketch(reader(strings.Replace(homeBeat(t), "Home Beat", "Lower Beat", 1)))
	require.NoError(t, err)
	assert.True(t, b.Changed())
	assert.ErrorIs(t, b.Store(), ErrAsk)
	require.NoError(t, b.Undo())
	assert.False(t, b.Changed(), "reading it in was one step")
	_, err = b.ReadSketch(reader("{}"))
	assert.Equal(t, journal.Invalid, journal.KindOf(err))
}

func picture(t *testing.T, w, h int) []byte {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for i := range img.Pix {
		img.Pix[i] = 200
	}
	img.Set(3, 3, color.Black)
	var out bytes.Buffer
	require.NoError(t, png.Encode(&out, img))
	return out.Bytes()
}

// Ensure that a picture is laid under the plan by two points, by clicks or by typing, and lies
// there again the next time.
func TestBeatTracing(t *testing.T) {
	d := emptyDesk(t)
	keep := &shelf{}
	b := d.Beats()
	require.NoError(t, b.SetKeeper(keep))
	b.New()
	b.Set("place", "54.984, -4.428")
	require.NoError(t, b.ReadTracing("map.png", picture(t, 400, 200)))
	require.Equal(t, PlaceTracing, b.Tool())
	_, lies, ok := b.Tracing()
	require.True(t, ok)
	px := []geo.Point{lies.Plane(pixel(100, 100)), lies.Plane(pixel(300, 100))}
	require.NoError(t, b.Click(px[0], 1))
	require.NoError(t, b.Click(pt(0, 0), 1))
	require.NoError(t, b.Click(px[1], 1))
	require.NoError(t, b.Click(pt(0, 100), 1))
	assert.Equal(t, Choose, b.Tool(), "done")
	_, lies, _ = b.Tracing()
	at := lies.Plane(pixel(300, 100))
	assert.InDelta(t, 0, float64(at.X), 1e-6)
	assert.InDelta(t, 100, float64(at.Y), 1e-6)
	assert.InDelta(t, 0.5, float64(lies.Scale()), 1e-9)

	b.Take(PlaceTracing)
	assert.Error(t, b.TraceTo("100 m"), "no point yet")
	require.NoError(t, b.Click(lies.Plane(pixel(0, 0)), 1))
	require.NoError(t, b.TraceTo("54.984, -4.428"))
	require.NoError(t, b.Click(lies.Plane(pixel(200, 0)), 1))
	require.NoError(t, b.TraceTo("60 m"))
	_, lies, _ = b.Tracing()
	assert.InDelta(t, 0.3, float64(lies.Scale()), 1e-9)
	assert.InDelta(t, 60, float64(lies.Plane(pixel(200, 0)).Distance(geo.Point{})), 1e-6)

	again := New(d.Journal(), d.now).Beats()
	require.NoError(t, again.SetKeeper(keep))
	assert.Equal(t, "map.png", again.TracingWanted())
	require.NoError(t, again.ReadTracing("map.png", picture(t, 400, 200)))
	_, l2, _ := again.Tracing()
	assert.InDelta(t, 0, float64(l2.Plane(pixel(200, 0)).Distance(lies.Plane(pixel(200, 0)))), 1e-3)
	assert.Equal(t, Choose, again.Tool(), "it lies there already")
	b.DropTracing()
	_, _, ok = b.Tracing()
	assert.False(t, ok)
	what, _ := words.Explain(b.ReadTracing("x", []byte("no picture")))
	assert.Contains(t, what, "no picture")
}

func pixel(x, y float64) draft.Pixel { return draft.Pixel{X: x, Y: y} }
