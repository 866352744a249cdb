package timeline_test

import (
	"flag"
	"fmt"
	"go/parser"
	"go/token"
	"math"
	"runtime"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/timeline/season"
)

// How far the conclusions of a season can be trusted, in a world whose truth is known.
//
// Each season is written as a journal's log, set in its light by this program, boiled down,
// added up and settled as anybody's would be. The rule of decision is the program's own, the
// verdicts of package season; decided before the first run:
//
//   - Clock or light: at least 10 fish and 8 nights. "light" is claimed if the 95 % interval
//     of the difference in deviance lies above 0 when nights are resampled and the bands of
//     light differ inside nights at p <= 0.025; "clock" the other way round. A claim is false if it
//     names what does not matter.
//   - Tables: a difference is claimed if p <= 0.05 after Holm's correction for all tables
//     looked at. Where neither light nor clock matters, nights apart nothing does, and a season
//     in which any table claims a difference claims falsely.
//
// At most 5 % of the seasons may claim falsely, plus what chance allows: twice the standard
// error of a share of 5 %.
var truthSeasons = flag.Int("truth", 0, "seasons to make for each truth; 0 tries a handful")

// result counts the claims over the seasons of one truth.
type result struct {
	seasons, fish, enough     int
	light, clock, unsure      int // verdicts of clock or light
	tables, lightTable, ideas int // seasons in which any table, or that of light, claims; or has an idea
	poolTable, lengthTable    int
	hours                     float64
}

func TestTruth(t *testing.T) {
	seasons := *truthSeasons
	if seasons == 0 {
		seasons = 3
	}
	all := truths()
	results := make([]result, len(all))
	type job struct{ truth, season int }
	jobs := make(chan job)
	var mu sync.Mutex
	var work sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		work.Go(func() {
			for j := range jobs {
				r, err := claims(all[j.truth], uint64(j.truth)<<32|uint64(j.season))
				mu.Lock()
				assert.NoError(t, err)
				results[j.truth].add(r)
				mu.Unlock()
			}
		})
	}
	for s := range seasons {
		for k := range all {
			jobs <- job{k, s}
		}
	}
	close(jobs)
	work.Wait()
	fmt.Print(table(all, results))
	limit := 0.05 + 2*math.Sqrt(0.05*0.95/float64(seasons))
	for i, r := range results {
		require.Equal(t, seasons, r.seasons)
		if *truthSeasons > 0 {
			assert.LessOrEqual(t, float64(r.falseAxis(all[i]))/float64(seasons), limit, "%+v", all[i])
			if i == 0 {
				assert.LessOrEqual(t, float64(r.tables)/float64(seasons), limit, "%+v", all[i])
			}
		}
	}
	// A handful says nothing of shares, but that strong effects make more fish where they
	// are, and that fish come at all.
	assert.Greater(t, results[0].fish, 20*seasons)
}

// claims makes one season and tells what the program says to it.
func claims(tr truth, seed uint64) (result, error) {
	w := newWorld(seed)
	flies := map[journal.ID]journal.Fly{}
	for _, f := range w.fly {
		flies[f.ID] = f
	}
	var nights season.Nights
	for _, log := range w.season(tr) {
		n, err := timeline.Build(log, timeline.Setting{
			Beat: w.beat, Flies: flies, Grey: timeline.DefaultThreshold(), Figures: true,
		})
		if err != nil {
			return result{}, err
		}
		nights.Digests = append(nights.Digests, season.DigestOf(n, nil))
	}
	s := season.Fold(nights, season.View{}).Settle()
	r := result{seasons: 1, fish: int(s.Fish), hours: s.Hours}
	switch k := s.ClockOrLight; {
	case k.Winner == "light":
		r.light = 1
	case k.Winner == "clock":
		r.clock = 1
	case k.Verdict == season.Inseparable:
		r.unsure = 1
	}
	if s.ClockOrLight.Verdict != season.NotEnough {
		r.enough = 1
	}
	for _, t := range s.Tables {
		claim := t.Verdict == season.Differs
		if t.Verdict == season.Idea {
			r.ideas = 1
		}
		if claim {
			r.tables = 1
		}
		switch {
		case claim && t.Name == "light":
			r.lightTable = 1
		case claim && t.Name == "pools":
			r.poolTable = 1
		case claim && t.Name == "length":
			r.lengthTable = 1
		}
	}
	return r, nil
}

func (r *result) add(o result) {
	r.seasons += o.seasons
	r.fish += o.fish
	r.enough += o.enough
	r.light += o.light
	r.clock += o.clock
	r.unsure += o.unsure
	r.tables += o.tables
	r.lightTable += o.lightTable
	r.poolTable += o.poolTable
	r.lengthTable += o.lengthTable
	r.ideas += o.ideas
	r.hours += o.hours
}

// falseAxis counts the seasons in which clock or light claims what is not so.
func (r result) falseAxis(tr truth) int {
	n := 0
	if tr.light == 1 {
		n += r.light
	}
	if tr.clock == 1 {
		n += r.clock
	}
	return n
}

// table prints what README quotes.
func table(all []truth, results []result) string {
	var b strings.Builder
	n := results[0].seasons
	fmt.Fprintf(&b, "%d seasons for each truth, %d nights each; share of seasons in percent\n\n", n, truthNights)
	b.WriteString("| truth | times | fish | hours | says light | says clock | something, not which | false | table of light differs | any table differs | any idea |\n")
	b.WriteString("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n")
	for i, r := range results {
		of := func(k int) string { return fmt.Sprintf("%.1f", 100*float64(k)/float64(r.seasons)) }
		fmt.Fprintf(&b, "| %s | %.0f | %.0f | %.0f | %s | %s | %s | %s | %s | %s | %s |\n",
			all[i].name, max(all[i].light, all[i].clock), float64(r.fish)/float64(r.seasons), r.hours/float64(r.seasons),
			of(r.light), of(r.clock), of(r.unsure), of(r.falseAxis(all[i])), of(r.lightTable), of(r.tables), of(r.ideas))
	}
	fmt.Fprintf(&b, "\nChance alone may put a true 5 %% anywhere up to %.1f %%.\n", 100*(0.05+2*math.Sqrt(0.05*0.95/float64(n))))
	return b.String()
}

// Ensure that the world does not borrow the light or the counting it is there to try.
func TestTruthStandsApart(t *testing.T) {
	f, err := parser.ParseFile(token.NewFileSet(), "truthworld_test.go", nil, parser.ImportsOnly)
	require.NoError(t, err)
	for _, i := range f.Imports {
		assert.NotContains(t, i.Path.Value, "gloamline/timeline", "the world has its own light and its own counting")
	}
}
