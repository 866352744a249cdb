package scene_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// said is all that is written on a list.
func said(l *draw.List) string {
	var out []string
	for _, b := range l.TextBoxes() {
		out = append(out, b.Text.S)
	}
	return strings.Join(out, " ")
}

// lengths is the card of length against light alone, opened.
func lengths(t *testing.T, f season.Filter, width float64) (scene.Scene, *season.Season) {
	v := seasonView(t, f, season.Hooked, false, false)
	s := *v.Season
	s.Cards = []*season.Card{s.Card(scene.SeasonLengths)}
	v.Season, v.Open = &s, map[int]bool{scene.SeasonLengths: true}
	return scene.Season(width, scene.Dusk, v), &s
}

// Ensure that every fish is drawn as a fly that can be pointed at, none over another, from
// left to right as its light failed, and on its own side of the step.
func TestLengthsShowEveryFish(t *testing.T) {
	for _, width := range []float64{420, 1010} {
		sc, s := lengths(t, season.Filter{}, width)
		fish := s.LengthLight.Fish
		require.NotEmpty(t, fish)
		step := 0.0 // where the trees go grey, halfway between the ends of the picture
		for _, b := range sc.List.TextBoxes() {
			if s := b.Text.S; s == words.LengthLightTick(0) || s == words.LengthLightTickShort(0) {
				step = b.Text.At.X
			}
		}
		require.NotZero(t, step)
		var boxes []draw.Rect
		for i, f := range fish {
			box, ok := sc.Box(scene.FishRef(f))
			require.True(t, ok, "fish %d", i)
			hit, _ := sc.At(box.Center())
			assert.Equal(t, scene.FishRef(f), hit.Ref)
			assert.Contains(t, hit.Tip, words.ShortDate(f.Evening))
			if len(f.Outside) > 0 {
				assert.Contains(t, hit.Tip, "Off “")
			}
			if x := box.Center().X; f.Darker < -0.2 {
				assert.Less(t, x, step, f.Darker)
			} else if f.Darker > 0.2 {
				assert.Greater(t, x, step, f.Darker)
			}
			if width > 1000 {
				for _, b := range boxes {
					assert.True(t, b.Intersect(box.Inset(2)).Empty(), "one fly lies on another")
				}
			}
			boxes = append(boxes, box.Inset(2))
		}
		for i := range fish {
			for k := range fish {
				if fish[i].Row > fish[k].Row {
					assert.Less(t, boxes[i].Max.Y, boxes[k].Min.Y+4, "longer flies stand higher")
				}
				if fish[i].Darker+0.15 < fish[k].Darker && width > 1000 && fish[k].Darker < 2.8 {
					assert.Less(t, boxes[i].Center().X, boxes[k].Center().X+1)
				}
			}
		}
	}
}

// Ensure that very many fish become strokes, and that it says so.
func TestLengthsOfVeryMany(t *testing.T) {
	v := seasonView(t, season.Filter{}, season.Hooked, false, false)
	s := *v.Season
	l := *s.LengthLight
	for len(l.Fish) <= 3000 {
		l.Fish = append(l.Fish, l.Fish...)
	}
	s.LengthLight, s.Cards = &l, []*season.Card{s.Card(scene.SeasonLengths)}
	v.Season, v.Open = &s, map[int]bool{scene.SeasonLengths: true}
	sc := scene.Season(1010, scene.Dusk, v)
	_, ok := sc.Box(scene.FishRef(l.Fish[0]))
	assert.False(t, ok)
	assert.Contains(t, said(sc.List), "So many fish are strokes")
	assert.Less(t, sc.List.Size().H, 2500.0)
}

// Ensure that a card can be kept on pages that each say what they are made from, with
// nothing cut off, whatever the card.
func TestSeasonPages(t *testing.T) {
	v := seasonView(t, season.Filter{Clients: season.ClientNights}, season.Hooked, false, false)
	made := words.SeasonMade(v.Season.View, "nights with a client")
	for card := range 27 {
		pages := scene.SeasonPages(v, card, "A title", made, scene.Paper)
		require.NotEmpty(t, pages, card)
		all := ""
		for i, p := range pages {
			assert.Equal(t, scene.PageSize, p.Size())
			assert.Empty(t, inspect.Overlaps(p), "card %d page %d", card, i)
			assert.Empty(t, inspect.Outside(p), "card %d page %d", card, i)
			text := said(p)
			assert.Contains(t, text, "A title")
			assert.Contains(t, text, "client; counted", "each page says what it is made from")
			all += text
		}
		if card > 0 {
			assert.Contains(t, all, strings.Fields(words.QuestionTitle(card))[0])
		}
	}
	assert.Nil(t, scene.SeasonPages(scene.SeasonView{}, 1, "", "", scene.Paper))
}
