package scene_test

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// theSeason is the demo read once; nobody changes it.
var theSeason = sync.OnceValues(func() (season.Nights, error) {
	j, err := seasonJournal()
	if err != nil {
		return season.Nights{}, err
	}
	return season.NewBook(j).Read(nil)
})

var seasonJournal = sync.OnceValues(func() (*journal.Journal, error) {
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	if err == nil {
		err = demo.Write(j, demo.Seed)
	}
	return j, err
})

// seasonView has every card open, with its tests or without.
func seasonView(t *testing.T, f season.Filter, measure season.Measure, settled, full bool) scene.SeasonView {
	nights, err := theSeason()
	require.NoError(t, err)
	s := season.Fold(nights, season.View{Filter: f, Measure: measure})
	if settled {
		s = s.Settle()
	}
	v := scene.SeasonView{Season: s, Nights: len(nights.Digests), Open: map[int]bool{}, Full: map[int]bool{}, Picked: 5}
	for n := range 27 {
		v.Open[n], v.Full[n] = true, full
	}
	for _, d := range demoBeats(t) {
		if s.Nights > 0 {
			v.Beats = append(v.Beats, d)
		}
	}
	return v
}

// demoBeats are the beats of the demo as they were last.
func demoBeats(t *testing.T) (out []scene.SeasonBeat) {
	j, err := seasonJournal()
	require.NoError(t, err)
	beats, err := journal.All[journal.Beat](j)
	require.NoError(t, err)
	for _, b := range beats {
		out = append(out, scene.SeasonBeat{ID: b.ID, Beat: b.Revisions[len(b.Revisions)-1].Shape})
	}
	slices.SortFunc(out, func(a, b scene.SeasonBeat) int { return strings.Compare(a.Beat.Name, b.Beat.Name) })
	return out
}

// few is a filter that lets so many nights through.
func few(t *testing.T, n int) season.Filter {
	nights, err := theSeason()
	require.NoError(t, err)
	var f season.Filter
	for _, d := range nights.Digests[:n] {
		f.Trips = append(f.Trips, d.Trip)
	}
	return f
}

// Ensure that all in the room of a season can be read, in every look, narrow and wide,
// with one night, with five, with all and with none, with the tests and without.
func TestSeasonCanBeRead(t *testing.T) {
	views := map[string]scene.SeasonView{
		"none": {}, "reading": {Nights: 48, Done: 7, Of: 48},
		"nothing let through": seasonView(t, season.Filter{Months: []time.Month{time.January}}, season.Hooked, false, false),
		"one":                 seasonView(t, few(t, 1), season.Hooked, true, true),
		"five":                seasonView(t, few(t, 5), season.AllContacts, true, true),
		"all":                 seasonView(t, season.Filter{}, season.Hooked, true, true),
		"not settled":         seasonView(t, season.Filter{}, season.LandedOnly, false, false),
	}
	for name, v := range views {
		widths := []float64{420, 1010}
		if name == "all" {
			widths = []float64{420, 620, 1010, 1190, 1700}
		}
		for _, w := range widths { // looks differ in colour alone
			l := scene.Season(w, scene.Dusk, v).List
			assert.Empty(t, inspect.Overlaps(l), "%s %v: overlaps", name, w)
			assert.Empty(t, inspect.Outside(l), "%s %v: cut off", name, w)
		}
		if v.Season != nil { // each sort of picture once, since every text costs a picture
			v.Open = map[int]bool{0: true, 3: true, 5: true, 6: true, 14: true}
			v.Full = map[int]bool{3: true}
			var cards []*season.Card
			s := *v.Season
			for _, n := range []int{3, 5, 6, 14, 25} {
				cards = append(cards, s.Card(n))
			}
			s.Cards, v.Season = cards, &s
		}
		for _, look := range scene.Looks {
			if name == "all" || name == "five" || look.Name == scene.Dusk.Name {
				assert.Empty(t, inspect.Weak(scene.Season(1010, look, v).List, 4.5, 12), "%s %s: weak", name, look.Name)
			}
			for _, w := range []float64{140, 206, 300} {
				l := scene.SeasonIndex(draw.Size{W: w, H: 300}, look, v).List
				assert.Empty(t, inspect.Overlaps(l), name)
				assert.Empty(t, inspect.Outside(l), name)
				assert.Empty(t, inspect.Weak(l, 4.5, 12), name)
			}
		}
	}
}

// Ensure that each question can be pointed at and its fold by itself, that its sentence
// stands there whether it is open or not, and its tables only when it is.
func TestSeasonCards(t *testing.T) {
	v := seasonView(t, season.Filter{}, season.Hooked, true, false)
	shut := v
	shut.Open = map[int]bool{}
	open, closed := scene.Season(1010, scene.Dusk, v), scene.Season(1010, scene.Dusk, shut)
	assert.Greater(t, open.List.Size().H, 2*closed.List.Size().H)
	index := scene.SeasonIndex(draw.Size{W: 206, H: 300}, scene.Dusk, v)
	folds := 0
	for n := range 27 {
		for _, sc := range []scene.Scene{open, closed, index} {
			box, ok := sc.Box(scene.SeasonCard(n))
			require.True(t, ok, n)
			hit, _ := sc.At(draw.Pt(box.Max.X-2, box.Min.Y+2))
			assert.Equal(t, scene.SeasonCard(n), hit.Ref)
			assert.Equal(t, n, scene.SeasonNumber(hit.Ref))
		}
		if box, ok := open.Box(scene.SeasonFold(n)); ok {
			folds++
			hit, _ := open.At(box.Center())
			assert.Equal(t, scene.SeasonFold(n), hit.Ref, "it lies on its card")
		}
		_, ok := closed.Box(scene.SeasonFold(n))
		assert.False(t, ok)
	}
	assert.Greater(t, folds, 15)
	said := fmt.Sprint(closed.List)
	for _, c := range v.Season.Cards {
		assert.Contains(t, said, draw.Wrap(draw.Font{Size: 13}, words.CardSentence(v.Season, c), 952)[0], "%d", c.N)
	}
}

// Ensure that pools are shaded by their rates, the richest most, that thin ones are ruled,
// and that each can be pointed at on its card.
func TestSeasonSketch(t *testing.T) {
	v := seasonView(t, season.Filter{}, season.Hooked, true, false)
	v.Open = map[int]bool{scene.SeasonPools: true}
	sc := scene.Season(1190, scene.Paper, v)
	sums := 0
	for _, b := range v.Beats {
		for _, p := range b.Beat.Pools {
			ref := journal.Ref{Kind: scene.PoolKind, Trip: b.ID, ID: p.ID}
			if box, ok := sc.Box(ref); ok {
				sums++
				card, _ := sc.Box(scene.SeasonCard(scene.SeasonPools))
				assert.True(t, card.Contains(box.Center()))
			}
		}
	}
	assert.Equal(t, len(v.Season.Pools), sums)
	thin := seasonView(t, few(t, 3), season.Hooked, true, false)
	thin.Open = v.Open
	said := func(v scene.SeasonView) (ruled int) {
		for _, h := range scene.Season(1190, scene.Paper, v).Hits {
			if h.Ref.Kind == scene.PoolKind && strings.Contains(h.Tip, "thin") {
				ruled++
			}
		}
		return ruled
	}
	assert.Zero(t, said(v))
	assert.Greater(t, said(thin), 3)
	bare := v
	bare.Beats = []scene.SeasonBeat{{}}
	_, ok := scene.Season(1190, scene.Paper, bare).Box(scene.SeasonCard(scene.SeasonPools))
	assert.True(t, ok, "a beat without a sketch draws none")
}

// Ensure that hours and nights stand beside every rate, that no rate stands where there is
// not enough, and that statisticians' words stand in the fold alone.
func TestSeasonSaysWhatIsBehind(t *testing.T) {
	texts := func(v scene.SeasonView) (out []string) {
		for _, b := range scene.Season(1190, scene.Dusk, v).List.TextBoxes() {
			out = append(out, b.Text.S)
		}
		return out
	}
	all := seasonView(t, season.Filter{}, season.Hooked, true, false)
	got := texts(all)
	for _, r := range all.Season.Table("light").Rows {
		if r.Hours > 0 {
			assert.Contains(t, got, words.SeasonHours(r.Hours))
			assert.Contains(t, got, words.SeasonCount(r.Nights))
		}
	}
	for _, s := range got {
		for _, word := range []string{"Holm", "p 0.", "gamma", "deviance"} {
			assert.NotContains(t, s, word)
		}
	}
	assert.Contains(t, fmt.Sprint(texts(seasonView(t, season.Filter{}, season.Hooked, true, true))), "Holm")

	five := seasonView(t, few(t, 5), season.Hooked, true, false)
	light := five.Season.Table("light")
	require.Equal(t, season.NotEnough, light.Verdict)
	five.Open = map[int]bool{1: true}
	for _, s := range texts(five)[3:] { // after the head, whose rate is of all hours
		assert.NotRegexp(t, `^0?\.?\d+ an hour`, s)
	}
}

func TestSeasonGolden(t *testing.T) {
	golden(t, "season", scene.Season(900, scene.Dusk, seasonView(t, season.Filter{}, season.Hooked, true, true)).List)
	golden(t, "season-index", scene.SeasonIndex(draw.Size{W: 206, H: 300}, scene.Paper, seasonView(t, few(t, 5), season.Hooked, true, true)).List)
}
