package scene_test

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// boxView is a room of flies with every code in it: three boxes, one of them empty, flies
// of every length and tone, one not described, one of eight inches, retired ones, rules of
// every sort.
func boxView() scene.BoxView {
	n := byte(0)
	id := func() journal.ID { n++; return journal.ID{1, 15: n} }
	inch := func(v float64) journal.Field[units.Length] { return journal.Of(units.LengthOf(v, units.Inch)) }
	light := func(h float64, landed, lost, touches, shows float64) timeline.FlyLight {
		return timeline.FlyLight{Water: time.Duration(h * float64(time.Hour)), Landed: landed, Lost: lost, Touches: touches, Shows: shows}
	}
	row := func(d journal.Dress, r timeline.FlyRecord) scene.FlyRow {
		return scene.FlyRow{Fly: journal.Fly{ID: id(), Dresses: []journal.Dress{d}}, Dress: d, Record: r}
	}
	small := row(journal.Dress{Length: inch(0.5), Silhouette: journal.Of(journal.Slim), Tone: journal.Of(journal.DarkTone), HotSpot: journal.Of("orange"), Hook: journal.Of("double"), Barbless: journal.Of(true)},
		timeline.FlyRecord{Nights: 12, Before: light(118.5, 13.3, 10.5, 11.7, 20.4), Grey: light(2.5, 0, 0, 0, 0.2)})
	small.Fly.Label = "the one with the long name that hardly fits beside it"
	full := row(journal.Dress{Length: inch(1), Silhouette: journal.Of(journal.Full), Tone: journal.Of(journal.LightTone)}, timeline.FlyRecord{})
	bare := row(journal.Dress{}, timeline.FlyRecord{Nights: 1, Grey: light(0.5, 0, 0, 0, 0)})
	long := row(journal.Dress{Length: inch(8), Silhouette: journal.Of(journal.MediumBulk), Tone: journal.Of(journal.MediumTone), Built: journal.Of("articulated shank"), Hook: journal.Of("stinger")}, timeline.FlyRecord{})
	old := row(journal.Dress{Length: inch(1.5), Silhouette: journal.Of(journal.Slim), Tone: journal.Of(journal.DarkTone)}, timeline.FlyRecord{Nights: 3, Grey: light(9, 2, 0, 0, 0)})
	old.Retired = true
	v := scene.BoxView{Groups: []scene.FlyGroup{
		{Kind: "box", Box: journal.Box{ID: id(), Name: "Small", Use: "day and dusk"}, Rows: []scene.FlyRow{small, full, bare}},
		{Kind: "box", Box: journal.Box{ID: id(), Name: "A box with a very long name, such as people give who have many", Use: "night"}, Rows: []scene.FlyRow{long}},
		{Kind: "box", Box: journal.Box{ID: id(), Name: "Surface", Use: "surface"}},
		{Kind: "retired", Rows: []scene.FlyRow{old}},
	}, Picked: small.Fly.Ref()}
	for _, r := range []journal.HouseRule{
		{Words: "Under 1 inch until the trees are grey", AtGrey: "before", Max: inch(1), Practice: true},
		{Words: "Slim and dark on the point when it is black, whatever else one may have heard said of it in the hut", Light: journal.Of(units.Lux(0.05)), Dark: journal.Of(units.Lux(0.001)),
			Min: inch(1), Max: inch(2.5), Position: journal.Of(0), Silhouettes: []journal.Silhouette{journal.Slim}, Tones: []journal.Tone{journal.DarkTone, journal.MediumTone}},
		{Words: "Anything"},
	} {
		r.ID = id()
		v.Rules = append(v.Rules, r)
	}
	return v
}

// Ensure that all in the room of flies can be read, in every look, narrow and wide, empty
// and full.
func TestBoxesCanBeRead(t *testing.T) {
	for name, v := range map[string]scene.BoxView{"full": boxView(), "empty": {}} {
		for _, look := range scene.Looks {
			for _, w := range []float64{420, 660, 1010, 1180} {
				l := scene.Boxes(w, look, v).List
				for what, faults := range map[string][]inspect.Fault{
					"overlaps": inspect.Overlaps(l), "cut off": inspect.Outside(l), "weak": inspect.Weak(l, 4.5, 12),
				} {
					assert.Empty(t, faults, "%s %s %v: %s", name, look.Name, w, what)
				}
			}
			l := scene.BoxIndex(draw.Size{W: 214, H: 300}, look, v).List
			assert.Empty(t, inspect.Overlaps(l))
			assert.Empty(t, inspect.Weak(l, 4.5, 12))
		}
	}
}

// Ensure that every fly, box and rule can be pointed at, the top of a fly by itself, and
// that nothing that was counted is left out for want of room.
func TestBoxHits(t *testing.T) {
	v := boxView()
	for _, w := range []float64{420, 1010} {
		sc := scene.Boxes(w, scene.Dusk, v)
		for _, g := range v.Groups {
			if g.Kind == "box" {
				_, ok := sc.Box(g.Box.Ref())
				require.True(t, ok, g.Box.Name)
			}
			for _, r := range g.Rows {
				box, ok := sc.Box(r.Fly.Ref())
				require.True(t, ok)
				grip, ok := sc.Box(journal.Ref{Kind: scene.LengthKind, ID: r.Fly.ID})
				require.True(t, ok)
				hit, _ := sc.At(grip.Center())
				assert.Equal(t, scene.LengthKind, hit.Ref.Kind)
				assert.True(t, box.Contains(grip.Center()))
			}
		}
		for _, r := range v.Rules {
			box, ok := sc.Box(r.Ref())
			require.True(t, ok)
			hit, _ := sc.At(box.Center())
			assert.Contains(t, hit.Tip, r.Words)
		}
		found := map[string]bool{}
		for _, b := range sc.List.TextBoxes() {
			found[b.Text.S] = true
		}
		for _, want := range []string{"13.3", "10.5", "11.7", "20.4", "118.5 h", words.NeverFished()} {
			assert.True(t, found[want], "%s at %v", want, w)
		}
	}
}

// Ensure that a fly that is drawn out is shown at its new length, at one scale for all.
func TestBoxesDrawOut(t *testing.T) {
	v := boxView()
	id := v.Groups[0].Rows[1].Fly.ID
	top := func(v scene.BoxView) float64 {
		sc := scene.Boxes(1010, scene.Dusk, v)
		grip, _ := sc.Box(journal.Ref{Kind: scene.LengthKind, ID: id})
		cell, _ := sc.Box(journal.Ref{Kind: journal.KindFly, ID: id})
		return cell.Max.Y - grip.Center().Y
	}
	before := top(v)
	v.Dragged, v.Length = id, units.LengthOf(2, units.Inch)
	assert.InDelta(t, scene.BoxPerInch(), top(v)-before, 0.01)
	assert.Contains(t, fmt.Sprint(scene.Boxes(1010, scene.Dusk, v).List), "2 in full pale")
}

func TestBoxesGolden(t *testing.T) {
	golden(t, "boxes", scene.Boxes(900, scene.Dusk, boxView()).List)
	golden(t, "box-index", scene.BoxIndex(draw.Size{W: 214, H: 300}, scene.Paper, boxView()).List)
}
