package main

import (
	"bytes"
	"encoding/json"
	"maps"
	"math"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/timeline"
	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	"gloamline/ui/words"
)

// seasonRead makes a season of what gloam season --json says of it, and of nothing else. What
// the document says once and a Season holds twice is put in its second place.
func seasonRead(doc []byte) (*season.Season, error) {
	s := &season.Season{}
	if err := json.Unmarshal(doc, s); err != nil {
		return nil, err
	}
	keep := func(t *season.Table) {
		if t != nil && s.Table(t.Name) == nil {
			s.Tables = append(s.Tables, t)
		}
	}
	for _, c := range s.Cards {
		for _, t := range c.Tables {
			keep(t)
		}
	}
	s.Totals = timeline.Totals{
		Landed: int(s.Chain.Landed), Lost: int(s.Chain.Lost), Touches: int(s.Chain.Touches), Shows: int(s.Chain.Shows), Kept: s.Kept,
	}
	return s, nil
}

// shownOf is all that is drawn and written of a season: each card open, with its tests, the list of
// questions, the title, every tip and every table.
func shownOf(s *season.Season, beats []scene.SeasonBeat) (texts []string, drawn string) {
	v := scene.SeasonView{Season: s, Nights: s.Nights, Open: map[int]bool{}, Full: map[int]bool{}, Beats: beats, Picked: -1}
	for n := range state.SeasonCards {
		v.Open[n], v.Full[n] = true, true
	}
	texts = append(texts, words.SeasonTitle(s))
	var all strings.Builder
	for _, sc := range []scene.Scene{scene.Season(1190, scene.Dusk, v), scene.SeasonIndex(draw.Size{W: 206, H: 300}, scene.Dusk, v)} {
		for i := range sc.List.Len() {
			if o := sc.List.Op(i); o.Kind == draw.TextOp {
				texts = append(texts, o.Text.S)
			}
		}
		for _, h := range sc.Hits {
			texts = append(texts, h.Tip)
		}
		all.WriteString(sc.List.String())
	}
	tables := slices.Clone(s.Tables)
	slices.SortFunc(tables, func(a, b *season.Table) int { return strings.Compare(a.Name, b.Name) })
	for _, t := range tables {
		var b bytes.Buffer
		_ = t.WriteCSV(&b)
		texts = append(texts, b.String())
	}
	for _, x := range s.Sheets() {
		var b bytes.Buffer
		_ = x.WriteCSV(&b)
		texts = append(texts, b.String())
	}
	return texts, all.String()
}

// demoSeasons are seasons of the demo under several choices, each with its sketches.
func demoSeasons(t *testing.T, views map[string]season.View) (map[string]*season.Season, map[string][]scene.SeasonBeat) {
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	require.NoError(t, err)
	require.NoError(t, demo.Write(j, demo.Seed))
	nights, err := season.NewBook(j).Read(nil)
	require.NoError(t, err)
	nights.Left = append(nights.Left, season.Left{Trip: journal.Trip{ID: journal.ID{9}, Evening: journal.Date{Year: 2026, Month: time.July, Day: 9}}})
	out, sketches := map[string]*season.Season{}, map[string][]scene.SeasonBeat{}
	for name, v := range views {
		if name == "three nights" {
			for _, d := range nights.Digests[20:23] {
				v.Filter.Trips = append(v.Filter.Trips, d.Trip)
			}
		}
		if name == "one rod" {
			v.Filter.People = []journal.ID{nights.Digests[0].Rods[0].Person}
		}
		out[name] = season.Fold(nights, v).Settle()
		require.NotZero(t, out[name].Nights, name)
		sketches[name], err = state.SeasonSketches(j, nights, v.Filter)
		require.NoError(t, err)
	}
	return out, sketches
}

// Ensure that everything the season shows, figure by figure and mark by mark, can be had from
// its JSON: a season made of that text alone is drawn and written to the last stroke like the
// one it came from. Six digits, which is what is printed, leave every text as it is.
func TestSeasonJSONHoldsAllThatIsShown(t *testing.T) {
	list, sketches := demoSeasons(t, map[string]season.View{
		"all": {}, "three nights": {}, "one rod": {Measure: season.AllContacts},
		"summer": {Filter: season.Filter{Months: []time.Month{time.July, time.August}, Clients: season.OwnNights}, Measure: season.LandedOnly},
	})
	for name, s := range list {
		texts, drawn := shownOf(s, sketches[name])
		figures := 0
		for _, x := range texts {
			figures += len(strings.FieldsFunc(x, func(r rune) bool { return r < '0' || r > '9' }))
		}
		full, err := seasonDocument(s, "")
		require.NoError(t, err)
		six, err := seasonJSON(s, "")
		require.NoError(t, err)
		for digits, doc := range map[string][]byte{"every digit": full, "six digits": []byte(six)} {
			back, err := seasonRead(doc)
			require.NoError(t, err)
			again, drawnAgain := shownOf(back, sketches[name])
			require.Len(t, again, len(texts), name)
			if digits == "every digit" {
				require.Equal(t, texts, again, name)
				require.Equal(t, drawn, drawnAgain, name)
				continue
			}
			apart := 0
			for i := range texts {
				apart += unlike(t, texts[i], again[i])
			}
			// Moments are of whole minutes, so some hours end in a five.
			assert.LessOrEqual(t, apart, figures/100, "%s: figures that lie on the edge between two", name)
		}
		assert.Greater(t, figures, 1000, "%s: what is compared holds figures", name)
	}
}

// unlike counts the figures that differ by one in their last place, which is where rounding
// twice may lead; all else is alike.
func unlike(t *testing.T, a, b string) (n int) {
	if a == b {
		return 0
	}
	fa, fb := figure.FindAllString(a, -1), figure.FindAllString(b, -1)
	require.Equal(t, figure.ReplaceAllString(a, "#"), figure.ReplaceAllString(b, "#"))
	for i := range fa {
		if fa[i] == fb[i] {
			continue
		}
		_, places, _ := strings.Cut(fa[i], ".")
		assert.InDelta(t, number(t, fa[i]), number(t, fb[i]), 1.001*math.Pow10(-len(places)), "%s\n%s", a, b)
		n++
	}
	return n
}

var figure = regexp.MustCompile(`\d+(\.\d+)?`)

func number(t *testing.T, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

// notShown are members without which the demo's season looks as it did.
var notShown = map[string]string{
	"schema": "of the document", "title": "in words elsewhere", "said": "in words elsewhere", "question": "in words elsewhere", "answer": "in words elsewhere",
	"settled": "a job's state", "count": "again beside it, as fish", "exposure": "again beside it, as hours", "statistic": "for those who work it out anew",
	"trends": "again in the table of pools by trend", "thin": "follows from enough; no pool of the demo is",
	"never_tested": "follows from the verdicts", "bands_with_two_hours": "follows from the table", "open_hours": "for those who work it out anew",
	"bank_hours": "on the night's page", "rod_nights": "in the table of rods' nights", "trip": "whose night", "practice": "the rule's own",
	// What the demo has none of: eight nights and more, each fish to a known fly in a run and a pool,
	// thresholds of the beats' own, clients on ten rods' nights, rules of lengths in inches.
	"few_nights": "", "left": "", "no_fly": "", "no_length": "", "no_hours": "", "no_pool": "", "no_run": "", "by_hand": "",
	"fish_per_client_rod_night": "", "fish_per_client_rod_night_lo": "", "fish_per_client_rod_night_hi": "",
	"position": "", "silhouettes": "", "tones": "", "unit": "",
}

// Ensure that the test above sees each member by itself: without it something that is shown
// changes, but for those listed with the reason. And that each is named in SEASON.md.
func TestSeasonJSONMembers(t *testing.T) {
	list, sketches := demoSeasons(t, map[string]season.View{"all": {}})
	s := list["all"]
	texts, drawn := shownOf(s, sketches["all"])
	want := strings.Join(texts, "\n") + drawn
	doc, err := seasonDocument(s, "")
	require.NoError(t, err)
	require.False(t, changed(want, doc, sketches["all"]))
	members := map[string]bool{}
	var tree any
	require.NoError(t, json.Unmarshal(doc, &tree))
	walk(tree, func(m map[string]any) {
		for k := range m {
			members[k] = true
		}
	})
	page := bytesOf(t, "../../timeline/season/SEASON.md")
	month := regexp.MustCompile(`_\d\d$`)
	var work sync.WaitGroup
	names := make(chan string)
	for range runtime.GOMAXPROCS(0) {
		work.Go(func() {
			for name := range names {
				assert.True(t, strings.Contains(page, "`"+month.ReplaceAllString(name, "_MM")+"`"), "SEASON.md does not name %s", name)
				without := bytes.ReplaceAll(doc, []byte(`"`+name+`":`), []byte(`"gone":`))
				_, listed := notShown[name]
				assert.Equal(t, listed, !changed(want, without, sketches["all"]), "%s: nothing shown needs it", name)
			}
		})
	}
	for _, name := range slices.Sorted(maps.Keys(members)) {
		names <- name
	}
	close(names)
	work.Wait()
	assert.Greater(t, len(members), 120)
}

func changed(want string, doc []byte, beats []scene.SeasonBeat) (is bool) {
	defer func() { is = is || recover() != nil }() // what cannot be drawn at all is missed
	back, err := seasonRead(doc)
	if err != nil {
		return true
	}
	texts, drawn := shownOf(back, beats)
	return strings.Join(texts, "\n")+drawn != want
}

// walk calls f for every object in it.
func walk(v any, f func(map[string]any)) {
	switch v := v.(type) {
	case map[string]any:
		f(v)
		for _, x := range v {
			walk(x, f)
		}
	case []any:
		for _, x := range v {
			walk(x, f)
		}
	}
}
