package scene_test

import (
	"bytes"
	"image"
	"image/jpeg"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// Ensure that every text of what a client sees can be read, on a page and on a phone, in
// all looks, as any recipient sees it.
func TestClientCanBeRead(t *testing.T) {
	nights := demoNights(t)
	step := 8
	if testing.Short() {
		step = 24
	}
	faults := 0
	for i := 0; i < len(nights); i += step {
		for who, s := range map[string]scene.Shown{
			"least": {}, "names": {Pools: scene.PoolNames, People: true},
			"all": {Pools: scene.PoolNames, Water: true, Places: true, Coordinates: true, People: true, Weights: true, Notes: true, Photo: true},
		} {
			c, _ := scene.Share(nights[i], s, words.Prefs{})
			for _, look := range scene.Looks {
				lists := c.Pages(look, words.Prefs{})
				for _, minute := range []int{scene.ClientWhole, 0, c.Minutes / 2} {
					lists = append(lists, c.Frame(draw.Size{W: 360, H: 420}, look, minute, words.Prefs{}),
						c.Frame(draw.Size{W: 1200, H: 600}, look, minute, words.Prefs{}))
					if minute != 0 {
						lists = append(lists, c.Show(draw.Size{W: 1440, H: 900}, look, scene.ClientView{Cursor: minute, Keys: true}).List)
					}
				}
				for k, l := range lists {
					for what, found := range map[string][]inspect.Fault{"weak": inspect.Weak(l, 4.5, 12), "overlap": inspect.Overlaps(l), "outside": inspect.Outside(l)} {
						for _, f := range found {
							if faults++; faults < 12 {
								assert.Fail(t, "a text is hard to read", "%s, %s, list %d, %s, night of %s: %s", who, look.Name, k, what, nights[i].Log.Trip.Evening, f)
							}
						}
					}
				}
			}
		}
	}
	assert.Zero(t, faults)
}

// Ensure that at the end of a played night its counts are those of the night, and that
// they only grow on the way.
func TestClientCounts(t *testing.T) {
	for _, n := range demoNights(t) {
		for _, s := range []scene.Shown{{}, {Places: true}} {
			c, _ := scene.Share(n, s, words.Prefs{})
			last := 0
			for m := 0; m <= c.Minutes; m += scene.ClientStep {
				at := c.At(m)
				sum := at.Landed + at.Lost + at.Touches + at.Shows
				require.GreaterOrEqual(t, sum, last)
				last = sum
			}
			end := c.At(c.Minutes)
			end.Returned = c.Totals.Returned // not told step by step
			assert.Equal(t, c.Totals, end, "night of %s", c.Date)
		}
	}
}

// Ensure that the photo of a fish comes first with its fly at true size: 1½ inches of
// dressing are 144 dp of 1/96 inch.
func TestClientPhotoAndFly(t *testing.T) {
	f := newFixture(t, 54.985, -4.431, journal.Date{Year: 2026, Month: time.July, Day: 4}, true).rods(1)
	fish := f.head(1, f.exact(23, 5))
	f.add(journal.Contact{Head: fish, Touch: journal.Landed, Pool: journal.Of(fixed(2)), Fly: journal.Of(fixed(14))})
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, 60, 40)), nil))
	f.add(journal.Photo{Head: f.head(1, f.exact(23, 6)), SHA256: string(bytes.Repeat([]byte("ab"), 32)), Name: "a.jpg", Thumb: b.Bytes(), Of: journal.Of(fish.ID)})
	c, _ := scene.Share(f.night(), scene.Shown{Photo: true}, words.Prefs{})
	require.Len(t, c.Pictures, 1)
	l := c.Pages(scene.Paper, words.Prefs{})[0]
	image, fly := -1, -1
	for i := range l.Len() {
		switch o := l.Op(i); o.Kind {
		case draw.ImageOp:
			image = i
		case draw.FillOp:
			if b := o.Path.Bounds(); fly < 0 && image >= 0 && b.W() < 40 && b.H() > 100 {
				fly = i
				assert.InDelta(t, 2*96, b.H(), 0.5, "a fly of two inches")
			}
		}
	}
	assert.GreaterOrEqual(t, image, 0)
	assert.Greater(t, fly, image)
	c, _ = scene.Share(f.night(), scene.Shown{}, words.Prefs{})
	assert.Empty(t, c.Pictures)
}
