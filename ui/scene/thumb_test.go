package scene_test

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

func jpegOf(t testing.TB, w, h int) []byte {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for i := range img.Pix {
		img.Pix[i] = 200
	}
	for x := range w {
		img.SetRGBA(x, h/2, color.RGBA{20, 120, 40, 255})
	}
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, img, &jpeg.Options{Quality: 60}))
	return b.Bytes()
}

func images(l *draw.List) (out []draw.Op) {
	for i := range l.Len() {
		if o := l.Op(i); o.Kind == draw.ImageOp {
			out = append(out, o)
		}
	}
	return out
}

const sha = "aa112233445566778899aabbccddeeff00112233445566778899aabbccddeeff"

// Ensure that a thumbnail stands in the log once, by its fish where it shows one, can
// be pointed at, keeps its shape, and is red in the lamp look.
func TestPhotosStandInTheLog(t *testing.T) {
	f := newFixture(t, 54.985, -4.431, july4, true).rods(1)
	f.run(1, 2, 22, 40, 23, 50)
	f.fish(1, f.exact(23, 0), journal.Landed, 30)
	fish := f.puts[len(f.puts)-1].Ref().ID
	wide := journal.Photo{Head: f.head(1, f.exact(23, 2)), SHA256: sha, Name: "fish.jpg", Thumb: jpegOf(t, 160, 60), Of: journal.Of(fish)}
	alone := journal.Photo{Head: f.head(1, f.exact(23, 30)), SHA256: sha, Name: "pool.jpg", Thumb: jpegOf(t, 90, 120)}
	f.add(wide).add(alone)
	n := f.night()
	for _, look := range scene.Looks {
		sc := scene.Log(n, 400, look, scene.LogView{})
		pics := images(sc.List)
		require.Len(t, pics, 2, look.Name)
		for _, p := range pics {
			b := p.Image.Bounds()
			assert.InDelta(t, float64(b.Dx())/float64(b.Dy()), p.At.W()/p.At.H(), 0.01, "a picture keeps its shape")
			c := color.RGBAModel.Convert(p.Image.At(3, 3)).(color.RGBA)
			assert.Equal(t, look.Name == scene.Lamp.Name, c.G < c.R/2, "%s: %v", look.Name, c)
		}
		again := images(scene.Log(n, 400, look, scene.LogView{}).List)
		assert.True(t, pics[0].Image == again[0].Image, "the same image, so that nothing is painted anew")
		for _, r := range []journal.Ref{wide.Ref(), alone.Ref(), {Kind: journal.KindContact, Trip: n.Log.Trip.ID, ID: fish}} {
			box, ok := sc.Box(r)
			require.True(t, ok)
			hit, _ := sc.At(box.Max.Sub(draw.Pt(2, 2)))
			if r.Kind == journal.KindPhoto {
				assert.Equal(t, r, hit.Ref)
			}
		}
	}
	assert.Len(t, images(scene.Page(n, scene.Paper, scene.PageView{})[0]), 2, "and on the page")
}

// Ensure that what is no picture, or one too large to unpack, is a frame with the name
// of the file.
func TestPhotoWithoutPicture(t *testing.T) {
	for name, thumb := range map[string][]byte{"none": nil, "torn": jpegOf(t, 80, 60)[:200], "noise": []byte("\xff\xd8\xff not a picture"), "huge": jpegOf(t, 1400, 20)} {
		f := newFixture(t, 54.985, -4.431, july4, true).rods(1)
		f.add(journal.Photo{Head: f.head(1, f.exact(23, 2)), SHA256: sha, Name: "torn.jpg", Thumb: thumb})
		l := scene.Log(f.night(), 400, scene.Dusk, scene.LogView{}).List
		assert.Empty(t, images(l), name)
		assert.Equal(t, 1, times(texts(l), "torn.jpg"), name)
	}
}

// Ensure that the sketch has the sign of a photo at its fish, which says so, at the place
// noted, and at the run it shows; that a photo of nothing in particular stands in the log
// alone; and that a photo of a run stands by it in the log.
func TestPhotosOnTheSketch(t *testing.T) {
	f := newFixture(t, 54.985, -4.431, july4, true).rods(1)
	run := f.run(1, 2, 22, 40, 23, 40)
	f.fish(1, f.exact(22, 58), journal.Landed, 26)
	fish := f.puts[len(f.puts)-1].(journal.Contact).ID
	atFish := journal.Photo{Head: f.head(0, f.exact(23, 2)), SHA256: sha, Name: "fish.jpg", Of: journal.Of(fish)}
	atSpot := journal.Photo{Head: f.head(0, f.exact(21, 2)), SHA256: sha, Name: "pool.jpg", Spot: journal.Of(geo.Place{Lat: 54.985, Lon: -4.429})}
	atRun := journal.Photo{Head: f.head(0, f.exact(23, 50)), SHA256: sha, Name: "run.jpg", Of: journal.Of(run)}
	loose := journal.Photo{Head: f.head(0, f.exact(21, 30)), SHA256: sha, Name: "tea.jpg"}
	f.add(atFish).add(atSpot).add(atRun).add(loose)
	n := f.night()
	sc := scene.Sketch(n, draw.Size{W: 680, H: 230}, scene.Dusk, scene.SketchView{})
	for _, h := range sc.Hits {
		if h.Ref.ID == fish {
			assert.Contains(t, h.Tip, "1 photo")
		}
	}
	on := func(p journal.Photo) bool { _, ok := sc.Box(p.Ref()); return ok }
	assert.True(t, on(atSpot))
	assert.True(t, on(atRun))
	assert.False(t, on(atFish), "the fish's mark has it")
	assert.False(t, on(loose))
	log := scene.Log(n, 340, scene.Dusk, scene.LogView{})
	top, _ := log.Box(journal.Ref{Kind: journal.KindRun, Trip: n.Log.Trip.ID, ID: run})
	shown, ok := log.Box(atRun.Ref())
	require.True(t, ok)
	assert.Greater(t, shown.Min.Y, top.Min.Y)
	assert.NotContains(t, log.List.String(), words.LogLoose(false, true), "nothing stands after the run")
}
