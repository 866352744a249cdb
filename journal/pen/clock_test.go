package pen

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal"
)

func london(t require.TestingT) *time.Location {
	loc, err := time.LoadLocation("Europe/London")
	require.NoError(t, err)
	return loc
}

// clockOn is a clock with two runs, of which the first is "the run", and a fish.
func clockOn(t require.TestingT, d journal.Date) Clock {
	return Clock{Evening: d, Zone: london(t), Run: geo.ID{1}, Things: []Thing{
		{ID: geo.ID{1}, Name: "Alder Pool run 1", Run: true, Alias: []string{"run 1"}},
		{ID: geo.ID{2}, Name: "Alder Pool run 2", Run: true, Alias: []string{"run 2"}},
		{ID: geo.ID{3}, Name: "The Cauldron", Run: true, Alias: []string{"run 3", "cauldron run 1"}},
		{ID: geo.ID{4}, Name: "fish 3"}, {ID: geo.ID{5}, Name: "trees grey", Alias: []string{"sky 1"}},
	}}
}

func TestParseTimes(t *testing.T) {
	c := clockOn(t, evening)
	at := func(s string) time.Time { return instantOf(t, evening, "Europe/London", s) }
	ex := func(s string) journal.When { return journal.Exact(at(s)) }
	hang := func(k journal.WhenKind, ids ...byte) journal.When {
		w := journal.When{Kind: k}
		for _, id := range ids {
			w.Anchors = append(w.Anchors, geo.ID{id})
		}
		return w
	}
	for text, want := range map[string]journal.When{
		"2312": ex("23:12"), "23:12": ex("23:12"), " 23.12 ": ex("23:12"), "23h12": ex("23:12"), "at 23:12": ex("23:12"),
		"0:10": ex("00:10"), "00:10": ex("00:10"), "010": ex("00:10"), "24:00": ex("00:00"), "midnight": ex("00:00"),
		"9.40 pm": ex("21:40"), "9:40pm": ex("21:40"), "9 PM": ex("21:00"), "12.15 am": ex("00:15"), "12:15 pm": ex("12:15"), "1.20 a.m.": ex("01:20"),
		"9.40": ex("21:40"), "940": ex("21:40"), "09:40": ex("09:40"), "11.15": ex("23:15"), "12.30": ex("00:30"), "5:10": ex("05:10"),
		"23:12:40":    journal.Exact(at("23:12").Add(40 * time.Second)),
		"about 23:30": journal.About(at("23:30"), 0), "abt 2330": journal.About(at("23:30"), 0), "abt. 2330": journal.About(at("23:30"), 0),
		"~23:30": journal.About(at("23:30"), 0), "~ 2330": journal.About(at("23:30"), 0), "23:30?": journal.About(at("23:30"), 0), "c. 23:30": journal.About(at("23:30"), 0),
		"23:30 +-15": journal.About(at("23:30"), 15*time.Minute), "23:30±15 min": journal.About(at("23:30"), 15*time.Minute),
		"about 23:30 +/- 1 h": journal.About(at("23:30"), time.Hour), "23:30 ±90 s": journal.About(at("23:30"), 90*time.Second),
		"23:20-23:40": journal.Between(at("23:20"), at("23:40")), "2320 – 2340": journal.Between(at("23:20"), at("23:40")), "23:20 to 23:40": journal.Between(at("23:20"), at("23:40")),
		"between 23:50 and 0:10": journal.Between(at("23:50"), at("00:10")), "from 11.50 to 12.10": journal.Between(at("23:50"), at("00:10")),
		"9.40-10.15":     journal.Between(at("21:40"), at("22:15")),
		"during the run": hang(journal.WithinTime, 1), "in this run": hang(journal.WithinTime, 1), "during Alder Pool run 2": hang(journal.WithinTime, 2),
		"within run 2": hang(journal.WithinTime, 2), "during The Cauldron": hang(journal.WithinTime, 3), "in the cauldron": hang(journal.WithinTime, 3),
		"after fish 3": hang(journal.AfterTime, 4), "BEFORE  Fish 3": hang(journal.BeforeTime, 4), "before the run": hang(journal.BeforeTime, 1),
		"after trees grey": hang(journal.AfterTime, 5), "between trees grey and fish 3": hang(journal.BetweenTime, 5, 4),
	} {
		r, err := c.Parse(text)
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, r.When, text)
		}
	}
}

func TestTimesRefused(t *testing.T) {
	c := clockOn(t, evening)
	for text, want := range map[string]string{
		"":                      "say when it was, such as 23:12 or about 23:12",
		"dusk":                  "“dusk” is not a time: write it such as 23:12, about 23:12 or 23:05-23:20",
		"23":                    "“23” is no full time: write 23:00 or 2300",
		"25:10":                 "“25:10” is not a time of day",
		"23:71":                 "“23:71” is not a time of day",
		"23:10 pm":              "“23:10 pm” mixes the clocks of 12 and 24 hours",
		"0:10 am":               "“0:10 am” mixes the clocks of 12 and 24 hours",
		"23:40-23:20":           "the later time comes before the earlier one",
		"23:30 +-0":             "give or take nothing is an exact time: write it alone",
		"after 23:10":           "“after” needs a thing of this night; for a stretch write 23:10-23:40",
		"after fish 9":          "there is no “fish 9” in this night, such as after Alder Pool run 1",
		"during fish 3":         "“during” needs a run, such as during Alder Pool run 1",
		"between fish 3 and 23": "“between” joins two times or two things of the night, not one of each",
		"23:10 PST":             "the clock did not show PST that night",
	} {
		_, err := c.Parse(text)
		if assert.Error(t, err, text) {
			assert.Equal(t, want, err.Error(), text)
		}
	}
	c.Run = geo.ID{}
	_, err := c.Parse("during the run")
	assert.EqualError(t, err, "which run? Name it, such as during Alder Pool run 1")
	_, err = Clock{Evening: evening, Zone: london(t)}.Parse("during the run")
	assert.Error(t, err)
}

// Ensure that a reading that may be either half of the day is asked about, that the
// likelier stands until then, and that neighbours settle it.
func TestHalfOfTheDay(t *testing.T) {
	c := clockOn(t, evening)
	at := func(s string) time.Time { return instantOf(t, evening, "Europe/London", s) }
	r, err := c.Parse("9.40")
	require.NoError(t, err)
	require.NotNil(t, r.Ask)
	assert.Empty(t, r.Warnings)
	require.Len(t, r.Ask.Answers, 2)
	for i, want := range []string{"21:40", "09:40"} {
		a, err := c.Parse(r.Ask.Answers[i].Text)
		require.NoError(t, err)
		assert.Nil(t, a.Ask)
		assert.Equal(t, journal.Exact(at(want)), a.When)
	}
	r, err = c.Parse("about 11.15")
	require.NoError(t, err)
	a, err := c.Parse(r.Ask.Answers[1].Text)
	require.NoError(t, err)
	assert.Equal(t, journal.About(at("11:15"), 0), a.When, "the answer keeps how well it is known")

	r, err = c.Parse("9.40-10.15")
	require.NoError(t, err)
	assert.Equal(t, "21:40–10.15", r.Ask.Answers[0].Text)
	r, err = c.Parse(r.Ask.Answers[0].Text)
	require.NoError(t, err)
	assert.Nil(t, r.Ask, "the other end follows soon after")
	assert.Equal(t, journal.Between(at("21:40"), at("22:15")), r.When)

	c.After = at("21:30")
	r, err = c.Parse("9.40")
	require.NoError(t, err)
	assert.Nil(t, r.Ask, "soon after a neighbour there is no doubt")
	c.After = at("22:30")
	r, err = c.Parse("9.40")
	require.NoError(t, err)
	require.NotNil(t, r.Ask, "neither the evening before the neighbour nor the morning long after it is taken for granted")
	c.After = at("04:30")
	r, err = c.Parse("9.40")
	require.NoError(t, err)
	assert.Nil(t, r.Ask)
	assert.Equal(t, journal.Exact(at("09:40")), r.When)
}

// Ensure that in the night when summer time ends in London (25 October 2026, 02:00
// BST becomes 01:00 GMT: Summer Time Order 2002) neighbours decide, a runs' frame
// decides, and otherwise the earlier is taken with a warning and a question.
func TestFoldNight(t *testing.T) {
	fold := journal.Date{Year: 2026, Month: time.October, Day: 24}
	first := time.Date(2026, 10, 25, 0, 30, 0, 0, time.UTC)
	second := first.Add(time.Hour)
	c := clockOn(t, fold)

	r, err := c.Parse("1:30")
	require.NoError(t, err)
	assert.Equal(t, journal.Exact(first), r.When)
	assert.Equal(t, []journal.Warning{journal.WallTwice}, r.Warnings)
	require.NotNil(t, r.Ask)
	assert.Equal(t, "The clock showed 01:30 twice that night. Which was it?", r.Ask.Text)
	assert.Equal(t, "the first (BST)", r.Ask.Answers[0].Label)
	for i, want := range []time.Time{first, second} {
		a, err := c.Parse(r.Ask.Answers[i].Text)
		require.NoError(t, err)
		assert.Equal(t, Moment{When: journal.Exact(want)}, a)
	}
	for text, want := range map[string]time.Time{"first 1:30": first, "second 0130": second, "1:30 BST": first, "01:30 gmt": second, "later 1.30": second, "01:30 second": second} {
		a, err := c.Parse(text)
		require.NoError(t, err, text)
		assert.Equal(t, Moment{When: journal.Exact(want)}, a, text)
	}

	c.After = first.Add(5 * time.Minute)
	r, err = c.Parse("1:30")
	require.NoError(t, err)
	assert.Equal(t, Moment{When: journal.Exact(second)}, r, "the entry before decides")
	c.After, c.Before = time.Time{}, second.Add(-10*time.Minute)
	r, err = c.Parse("1:30")
	require.NoError(t, err)
	assert.Equal(t, Moment{When: journal.Exact(first)}, r, "the entry after decides")
	c.Before = time.Time{}
	c.Fits = func(t time.Time) bool { return t.Equal(second) }
	r, err = c.Parse("1:30")
	require.NoError(t, err)
	assert.Equal(t, Moment{When: journal.Exact(second)}, r, "what fits decides")
	c.Fits = nil

	r, err = c.Parse("1:40-1:20")
	require.NoError(t, err)
	assert.Equal(t, journal.Between(first.Add(10*time.Minute), second.Add(-10*time.Minute)), r.When, "the start decides the end")

	// In the night when it begins, 29 March 2026, the clock skips from 01:00 to 02:00.
	spring := clockOn(t, journal.Date{Year: 2026, Month: time.March, Day: 28})
	r, err = spring.Parse("1:30")
	require.NoError(t, err)
	assert.Equal(t, journal.Exact(time.Date(2026, 3, 29, 1, 30, 0, 0, time.UTC)), r.When)
	assert.Equal(t, []journal.Warning{journal.WallSkipped}, r.Warnings)
	assert.Equal(t, "02:30", spring.Print(r.When))
}

func TestPrintTimes(t *testing.T) {
	c := clockOn(t, evening)
	at := func(s string) time.Time { return instantOf(t, evening, "Europe/London", s) }
	for want, w := range map[string]journal.When{
		"":                              {},
		"23:12":                         journal.Exact(at("23:12")),
		"23:12:05":                      journal.Exact(at("23:12").Add(5 * time.Second)),
		"10:30 am":                      journal.Exact(at("10:30")),
		"about 23:30":                   journal.About(at("23:30"), 0),
		"23:30 ±15 min":                 journal.About(at("23:30"), 15*time.Minute),
		"23:30 ±90 s":                   journal.About(at("23:30"), 90*time.Second),
		"23:50–00:10":                   journal.Between(at("23:50"), at("00:10")),
		"during Alder Pool run 1":       journal.Within(geo.ID{1}),
		"before The Cauldron":           journal.Before(geo.ID{3}),
		"between trees grey and fish 3": {Kind: journal.BetweenTime, Anchors: []journal.ID{{5}, {4}}},
		"23:00–23:30":                   {Kind: journal.WithinTime, Anchors: []journal.ID{{99}}, Lo: at("23:00"), Hi: at("23:30")},
	} {
		assert.Equal(t, want, c.Print(w))
	}
}

// Ensure that what is printed reads back as the same moment, in every night, also
// when clocks change, whatever the kind.
func TestPrintThenParse(t *testing.T) {
	zones := []string{"Europe/London", "UTC", "Asia/Kolkata", "Australia/Lord_Howe", "America/St_Johns", "Pacific/Auckland", "America/Argentina/Ushuaia"}
	days := []journal.Date{evening, {Year: 2026, Month: time.October, Day: 24}, {Year: 2026, Month: time.March, Day: 28},
		{Year: 2026, Month: time.April, Day: 4}, {Year: 2026, Month: time.November, Day: 1}, {Year: 2026, Month: time.October, Day: 31}}
	rapid.Check(t, func(t *rapid.T) {
		c := clockOn(t, rapid.SampledFrom(days).Draw(t, "day"))
		var err error
		c.Zone, err = time.LoadLocation(rapid.SampledFrom(zones).Draw(t, "zone"))
		require.NoError(t, err)
		start, end := c.Evening.Night(c.Zone)
		when := func(label string) time.Time {
			return start.Add(time.Duration(rapid.Int64Range(0, int64(end.Sub(start)/time.Second)).Draw(t, label)) * time.Second)
		}
		thing := func(label string) journal.ID { return rapid.SampledFrom(c.Things).Draw(t, label).ID }
		var w journal.When
		switch k := rapid.SampledFrom([]string{"exact", "about", "slack", "between", "within", "before", "after", "both"}).Draw(t, "kind"); k {
		case "exact":
			w = journal.Exact(when("at"))
		case "about":
			w = journal.About(when("at"), 0)
		case "slack":
			w = journal.About(when("at"), time.Duration(rapid.IntRange(1, 999).Draw(t, "slack"))*rapid.SampledFrom([]time.Duration{time.Second, time.Minute}).Draw(t, "unit"))
		case "between":
			a, b := when("a"), when("b")
			if b.Before(a) {
				a, b = b, a
			}
			w = journal.Between(a, b)
		case "within":
			w = journal.Within(geo.ID{byte(rapid.IntRange(1, 3).Draw(t, "run"))})
		case "before":
			w = journal.Before(thing("thing"))
		case "after":
			w = journal.After(thing("thing"))
		case "both":
			w = journal.When{Kind: journal.BetweenTime, Anchors: []journal.ID{thing("a"), thing("b")}}
			if w.Anchors[0] == w.Anchors[1] {
				t.Skip("one thing twice")
			}
		}
		text := c.Print(w)
		r, err := c.Parse(text)
		require.NoError(t, err, text)
		require.Nil(t, r.Ask, text)
		require.Empty(t, r.Warnings, text)
		require.Equal(t, w, r.When, text)
	})
}

// Ensure that no text makes the reader fail.
func FuzzParseTime(f *testing.F) {
	for _, s := range []string{"2312", "about 23:30", "23:20-23:40", "during the run", "between a and b", "9.40 pm", "23:30 +-15", "first 01:30"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c := clockOn(t, journal.Date{Year: 2026, Month: time.October, Day: 24})
		r, err := c.Parse(s)
		if err != nil {
			if err.Error() == "" {
				t.Fatal("an error without words")
			}
			return
		}
		if r.When.Hi.Before(r.When.Lo) {
			t.Fatalf("%q reads backwards: %v", s, r.When)
		}
		if back, err := c.Parse(c.Print(r.When)); err != nil || fmt.Sprint(back.When) != fmt.Sprint(r.When) {
			t.Fatalf("%q prints as %q, which reads %v, %v", s, c.Print(r.When), back.When, err)
		}
	})
}
