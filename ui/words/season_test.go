package words

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/timeline"
	seasons "gloamline/timeline/season"
	"gloamline/timeline/tally"
)

func demoSeason(t *testing.T, f seasons.Filter) *seasons.Season {
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	require.NoError(t, err)
	require.NoError(t, demo.Write(j, demo.Seed))
	n, err := seasons.NewBook(j).Read(nil)
	require.NoError(t, err)
	return seasons.Fold(n, seasons.View{Filter: f}).Settle()
}

// Ensure that every question, table, row and gap has words of its own, whatever the season
// holds, and that nothing of the program's codes is left in them.
func TestSeasonHasWords(t *testing.T) {
	for _, f := range []seasons.Filter{
		{}, {Months: []time.Month{time.July}}, {Months: []time.Month{time.January}}, {Clients: seasons.ClientNights},
		{From: journal.Date{Year: 2026, Month: time.July, Day: 4}, To: journal.Date{Year: 2026, Month: time.July, Day: 4}},
	} {
		s := demoSeason(t, f)
		texts := []string{SeasonTitle(s), SeasonLine(s), UnplacedLine(s), ClockOrLightInFull(s.ClockOrLight)}
		for _, c := range s.Cards {
			q, a := QuestionTitle(c.N), CardSentence(s, c)
			require.True(t, strings.HasSuffix(q, "?"), q)
			require.True(t, strings.HasSuffix(a, "."), a)
			require.Equal(t, strings.ToUpper(a[:1]), a[:1], a)
			texts = append(texts, q, a)
			for _, m := range c.Missing {
				require.Contains(t, missing, m.Code)
				texts = append(texts, MissingLine(m))
			}
			for _, tb := range c.Tables {
				if !strings.HasPrefix(tb.Name, "rule_") {
					require.Contains(t, tableTitles, tb.Name)
				}
				texts = append(texts, TableTitle(tb), PerName(tb.Per), TestInFull(tb))
				for _, r := range tb.Rows {
					require.NotEmpty(t, RowLabel(tb, r), "%s %s", tb.Name, r.Code)
					texts = append(texts, RowLabel(tb, r), SeasonRate(r), SeasonShare(r))
				}
			}
		}
		for _, r := range s.Rules {
			texts = append(texts, RuleSentence(r))
		}
		for _, d := range s.Darkness {
			texts = append(texts, DarknessSentence(d))
		}
		for _, x := range texts {
			require.NotContains(t, x, "_")
			require.NotContains(t, x, "NaN")
			require.NotContains(t, x, "Inf")
			require.NotContains(t, x, "%!")
		}
	}
}

// poorSeason is two nights of the demo of which nothing was written but runs without an end, a fish
// somewhere in the night, and a first run through the same pool.
func poorSeason(t *testing.T) *seasons.Season {
	full, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	require.NoError(t, err)
	require.NoError(t, demo.Write(full, demo.Seed))
	trips, err := full.Trips()
	require.NoError(t, err)
	var gone, put []journal.Record
	for i, trip := range trips {
		if i > 1 {
			_, err := full.Remove(trip.Ref())
			require.NoError(t, err)
			continue
		}
		log, err := full.Night(trip.ID)
		require.NoError(t, err)
		lost := false
		for _, e := range log.Entries {
			switch x := e.(type) {
			case journal.Run:
				x.Until, x.Bank = journal.Field[journal.When]{}, journal.Field[journal.Bank]{}
				put = append(put, x)
			case journal.Contact:
				if x.Touch == journal.Landed && !lost {
					lost = true
					put = append(put, journal.Contact{Head: x.Head, Touch: x.Touch})
					continue
				}
				gone = append(gone, x)
			default:
				gone = append(gone, e)
			}
		}
	}
	rules, err := journal.All[journal.HouseRule](full)
	require.NoError(t, err)
	for _, r := range rules {
		gone = append(gone, r)
	}
	var refs []journal.Ref
	for _, r := range gone {
		refs = append(refs, r.Ref())
	}
	_, err = full.Do("strip", journal.Batch{Put: put, Remove: refs})
	require.NoError(t, err)
	n, err := seasons.NewBook(full).Read(nil)
	require.NoError(t, err)
	return seasons.Fold(n, seasons.View{}).Settle()
}

// Ensure that each of the 26 questions has its card with a picture or a table, a denominator, a
// sentence and what is missing, in a rich season and in one of which hardly anything is known; and
// that QUESTIONS.md says so, card by card.
func TestEveryQuestionIsAnswered(t *testing.T) {
	text, err := os.ReadFile("../../timeline/season/QUESTIONS.md")
	require.NoError(t, err)
	page := map[int][]string{}
	for _, line := range strings.Split(string(text), "\n") {
		cells := strings.Split(line, "|")
		if len(cells) == 8 {
			if n, err := strconv.Atoi(strings.TrimSpace(cells[1])); err == nil {
				page[n] = cells
			}
		}
	}
	require.Len(t, page, 26)
	rich, poor := demoSeason(t, seasons.Filter{}), poorSeason(t)
	require.Equal(t, 2, poor.Nights)
	for _, s := range []*seasons.Season{rich, poor} {
		require.Len(t, s.Cards, 26)
		for i, c := range s.Cards {
			require.Equal(t, i+1, c.N)
			row := page[c.N]
			assert.NotEmpty(t, PerName(c.Per), "%d", c.N)
			assert.Equal(t, c.Per, strings.TrimSpace(row[3]), "%d", c.N)
			assert.True(t, strings.HasSuffix(QuestionTitle(c.N), "?"), "%d", c.N)
			assert.True(t, strings.HasSuffix(CardSentence(s, c), "."), "%d", c.N)
			for _, tb := range c.Tables {
				name := tb.Name
				if strings.HasPrefix(name, "rule_") {
					name = "rule_1"
				}
				assert.Contains(t, row[4], "`"+name+"`", "%d", c.N)
				if tb.Test != nil {
					assert.Contains(t, row[4], "`"+name+"`*", "%d is tested", c.N)
				}
			}
			for _, m := range c.Missing {
				assert.Contains(t, row[6], "`"+m.Code+"`", "%d", c.N)
				assert.NotEqual(t, m.Code, MissingLine(m))
			}
		}
	}
	for _, c := range rich.Cards {
		assert.True(t, len(c.Tables) > 0 || c.N == 3 && len(rich.ClockOrLight.Light.Rows) > 0, "%d has neither table nor picture", c.N)
	}
	for _, c := range poor.Cards {
		assert.NotEmpty(t, c.Missing, "%d says nothing of what is missing", c.N)
		assert.NotRegexp(t, `\d an hour`, CardSentence(poor, c), "%d", c.N)
	}
}

// Ensure that what is not enough says so before anything else, and shows no rate.
func TestSeasonNotEnoughComesFirst(t *testing.T) {
	s := demoSeason(t, seasons.Filter{Months: []time.Month{time.May}})
	for _, n := range []int{1, 3, 5, 14, 17} {
		a := CardSentence(s, s.Card(n))
		require.True(t, strings.HasPrefix(a, "Not enough yet"), a)
		require.NotContains(t, a, "an hour")
	}
}

// Ensure that a rate is said with its hours' worth of doubt.
func TestSeasonRate(t *testing.T) {
	most := 1.2296
	rate := tally.RateOf(9, 12.5, tally.Level)
	for want, r := range map[string]seasons.Row{
		"never fished":                     {},
		"none, up to 1.2 an hour possible": {Hours: 3, Most: &most},
		"not enough yet":                   {Hours: 3, Fish: 2},
		"0.72 an hour (0.33 to 1.4)":       {Hours: 12.5, Fish: 9, Rate: &rate},
		"0.72 an hour (0.20 to 1.5)":       {Hours: 12.5, Fish: 9, Rate: &rate, Nightly: &tally.Interval{Lo: .2, Hi: 1.5}},
	} {
		require.Equal(t, want, SeasonRate(r))
	}
	share := tally.ShareOf(9, 12, .5, tally.Level)
	require.Equal(t, "9 of 12, 75 % (43 to 95)", SeasonShare(seasons.Row{Fish: 9, Of: 12, Enough: true, Share: &share}))
	require.Equal(t, "9 of 12", SeasonShare(seasons.Row{Fish: 9, Of: 12, Share: &share}))
}

// Ensure that a choice of nights is said in full, and none in nothing.
func TestSeasonFilter(t *testing.T) {
	beat := func(journal.ID) string { return "Home Beat" }
	person := func(journal.ID) string { return "Anna" }
	require.Empty(t, SeasonFilter(seasons.View{}, beat, person))
	require.Equal(t, "from 1 June 2026, July or August, Home Beat, river rising or not noted, rods of Anna, nights without a client",
		SeasonFilter(seasons.View{Filter: seasons.Filter{
			From: journal.Date{Year: 2026, Month: time.June, Day: 1}, Months: []time.Month{time.July, time.August}, Beats: []journal.ID{{1}},
			Trends: []journal.Trend{journal.Rising, ""}, People: []journal.ID{{2}}, Clients: seasons.OwnNights,
		}}, beat, person))
}

// Ensure that a beat's darkness says where it comes from, and bands their lux.
func TestDarknessSentence(t *testing.T) {
	d := seasons.Darkness{Name: "Home Beat", Used: .3, Fit: seasons.GreyFit{Lux: .3, From: "default", Logged: 3}}
	require.Equal(t, "Home Beat: 0.3 lx, the usual figure; 3 moments logged, and from 5 on the beat has its own.", DarknessSentence(d))
	d.Fit = seasons.GreyFit{Lux: .18, Lo: .15, Hi: .21, Spread: .25, From: "beat", Logged: 7, Used: 6}
	require.Equal(t, "Home Beat: 0.18 lx by its own 6 of 7 moments logged, known to 0.15–0.21 lx; single evenings scatter by a factor of 1.8.", DarknessSentence(d))
	d.Hand, d.Used = true, .25
	require.Contains(t, DarknessSentence(d), "0.25 lx, settled by hand")
	grey := timeline.DefaultThreshold().Lux
	require.Equal(t, "0.3 to 0.03 lx", BandLux(seasons.AtGrey, grey))
	require.Equal(t, "over 30 lx", BandLux(seasons.Bright, grey))
	require.Equal(t, "under 0.003 lx", BandLux(seasons.Blackly, grey))
	require.True(t, math.IsInf(func() float64 { f, _ := seasons.Bright.Factors(); return f }(), 1))
}
