//go:build e2e

package e2e

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/store"
	"gloamline/journal/units"
)

// photoMark is hidden in the picture of a fish, as a camera might say where it was.
const photoMark = "TAKENATLARRICK"

// withPhoto has the heaviest fish of the demo's night photographed.
func withPhoto(t *testing.T, path string) {
	t.Helper()
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	defer s.Close()
	j, err := journal.Open(s, time.Now)
	require.NoError(t, err)
	trips, err := j.Trips()
	require.NoError(t, err)
	for _, trip := range trips {
		if trip.Evening.String() != demoNight {
			continue
		}
		log, err := j.Night(trip.ID)
		require.NoError(t, err)
		var best journal.Contact
		grams := units.Grams(0)
		for _, e := range log.Entries {
			if k, ok := e.(journal.Contact); ok && k.Touch == journal.Landed {
				if w, known := k.Weight.Get(); known && w.G > grams {
					best, grams = k, w.G
				}
			}
		}
		require.False(t, best.ID.IsZero())
		photo := journal.Photo{Head: journal.Head{ID: journal.NewID(), Trip: trip.ID, Rod: best.Rod, When: best.When}, SHA256: strings.Repeat("ab", 32),
			Name: "fish.jpg", Thumb: fishPicture(t), Of: journal.Of(best.ID)}
		_, err = j.Do("add photo", journal.Batch{Put: []journal.Record{photo}})
		require.NoError(t, err)
	}
}

// fishPicture is a picture of a fish on wet stones, drawn by sums, with a comment in it.
func fishPicture(t *testing.T) []byte {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 512, 340))
	for y := range 340 {
		for x := range 512 {
			fx, fy := float64(x), float64(y)
			stone := 70 + 26*math.Sin(fx/23+2*math.Sin(fy/31))*math.Cos(fy/17+math.Sin(fx/41))
			c := color.RGBA{uint8(stone), uint8(stone + 4), uint8(stone + 2), 255}
			u := (fx - 250) / 190
			if d := math.Abs(fy-178) - 62*(1-u*u)*(1.1-0.25*u); u > -1 && u < 1 && d < 0 || u >= 0.9 && u < 1.2 && math.Abs(fy-178) < 20+110*(u-0.9) {
				v := 120 + 90*math.Exp(-math.Pow((fy-195)/34, 2)) - 30*math.Exp(-math.Pow((fy-130)/20, 2))
				if math.Mod(fx*7+fy*3, 61) < 7 && fy < 190 {
					v -= 70
				}
				c = color.RGBA{uint8(v), uint8(v), uint8(v * 1.04), 255}
			}
			img.Set(x, y, c)
		}
	}
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, img, &jpeg.Options{Quality: 80}))
	comment := append([]byte{0xff, 0xd8, 0xff, 0xfe, 0, byte(2 + len(photoMark))}, photoMark...)
	return append(comment, b.Bytes()[2:]...)
}

var packed = regexp.MustCompile(`base64,([A-Za-z0-9+/=]+)`)

// unpacked is a file with all that is packed in it.
func unpacked(b []byte) string {
	out := string(b)
	for _, m := range packed.FindAllSubmatch(b, -1) {
		if inner, err := base64.StdEncoding.DecodeString(string(m[1])); err == nil {
			out += "\n" + unpacked(inner)
		}
	}
	return out
}

// Ensure that in the real window a recipient's settings are chosen, a night is shown on the
// whole screen, stepped through and played, left, and saved; that nothing hidden is in the
// files; and that the choice is there after the program was started anew.
func TestShowAGuest(t *testing.T) {
	path := demoJournal(t)
	withPhoto(t, path)
	d := newDesktop(t, 1440, 900)
	args := []string{"-v", "-journal", path, "-night", demoNight, "-look", "dusk"}
	p := d.launch(args...)
	p.says("shown", 1)
	p.key("msg=room name=guest", "ctrl+7")
	p.find("choose who")
	p.press("w") // Anna, who fished
	p.click(p.find("shows pools"), "1")
	p.find("shows pools yes")
	p.click(p.find("shows photo"), "1")
	p.find("shows photo yes")
	d.still(p)
	d.shot("g1-room")

	p.key("guest shown", "Return")
	d.still(p)
	d.shot("g2-whole")
	p.press("Right", "Right", "Right")
	p.find("guest at fish 3 ")
	d.still(p)
	d.shot("g3-fish")
	p.click(p.find("guest guest act 3"), "1")
	p.find("guest at fish 4 ")
	p.click(p.find("guest guest fish 6"), "1")
	p.find("guest at fish 6 ")
	d.still(p)
	d.shot("g4-photo")
	p.press("plus", "plus")
	p.key("guest playing", "space")
	d.shot("g5-playing")
	p.says("guest played", 1)
	p.press("c")
	p.press("Up", "Right", "Return")
	p.says("screen measured", 1)
	p.press("Left")
	d.still(p)
	d.shot("g6-measured")
	p.key("guest left", "Escape")

	names := map[string]string{}
	save := func(ending string) {
		names[ending] = filepath.Join(d.home, "night"+ending)
		p.key("dialog open", "ctrl+p")
		p.press("ctrl+a")
		p.write(names[ending])
		p.key("page saved", "Return")
	}
	d.still(p)
	save(".html")
	save(".pdf")
	p.press("p", "p")
	d.still(p)
	d.shot("g7-pool")
	p.key("guest shown", "Return")
	d.still(p)
	d.shot("g8-pool-whole")
	p.key("guest left", "Escape")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()

	html, err := os.ReadFile(names[".html"])
	require.NoError(t, err)
	texts := map[string]string{"html": unpacked(html), "pdf": d.run("pdftotext", names[".pdf"], "-")}
	for name, text := range texts {
		assert.Contains(t, text, "Alder Pool", "%s: shown", name)
		assert.Contains(t, text, "Anna", "%s: the recipient's own", name)
		for _, secret := range []string{"Colm", "Larrick", "Home Beat", "54.9839", "1 lb 10 oz", "Splashing", photoMark} {
			assert.NotContains(t, text, secret, "%s: hidden", name)
		}
	}
	assert.Contains(t, texts["html"], "\xff\xd8\xff", "the photo itself is there")

	q := d.launch(args...)
	q.says("shown", 1)
	q.key("msg=room name=guest", "ctrl+7")
	for _, tick := range []string{"pools yes", "photo yes", "weights ", "people "} {
		q.find("shows " + tick)
	}
	d.still(q)
	d.shot("g9-again")
	q.press("ctrl+q")
	require.NoError(t, q.wait())
	j := reopened(t, path)
	all, err := journal.All[journal.Recipient](j)
	require.NoError(t, err)
	require.Len(t, all, 1)
	assert.Equal(t, []journal.Shows{journal.ShowPools, journal.ShowPhoto}, all[0].Shows)
	person, err := journal.One[journal.Person](j, all[0].Person)
	require.NoError(t, err)
	assert.Equal(t, "Anna", person.Name, fmt.Sprint(all))
}
