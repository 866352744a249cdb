package pen

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that times are understood as they are said, alone and within a line, and that
// “half ten” is half past ten.
func TestSpokenTimes(t *testing.T) {
	for text, want := range map[string]string{
		"half ten": "22:30", "half past ten": "22:30", "half-ten": "22:30", "Half 10": "22:30", "half-past ten": "22:30", "half past 10": "22:30",
		"quarter to 11": "22:45", "a quarter to eleven": "22:45", "quarter past eleven": "23:15", "quarter to midnight": "23:45", "ten past midnight": "00:10",
		"ten to eleven": "22:50", "five past eleven": "23:05", "twenty to twelve": "23:40", "twenty-five to one": "00:35", "twenty five past one": "01:25",
		"20 to 11": "22:40", "10 past 11": "23:10", "ten minutes to eleven": "22:50", "12 minutes past eleven": "23:12", "three minutes to eleven": "",
		"eleven o'clock": "23:00", "11 o'clock": "23:00", "twelve o'clock": "00:00", "half twelve": "00:30", "half past twelve at night": "00:30",
		"half one": "01:30", "half four": "04:30", "ten to six": "05:50", "half ten in the morning": "10:30", "half ten am": "10:30", "half nine in the evening": "21:30",
		"half nine pm": "21:30", "ten to eleven at night": "22:50", "half eight tonight": "20:30",
		"10 to 11": "", "half to eleven": "", "half midnight": "", "quarter ten": "", "ten to thirteen": "", "half": "", "ten to": "", "half thirteen": "", "o'clock": "",
	} {
		m, err := clockOn(t, evening).Parse(text)
		if want == "" {
			assert.Error(t, err, text)
			continue
		}
		if assert.NoError(t, err, text) {
			assert.Nil(t, m.Ask, text)
			assert.Equal(t, journal.Exact(instantOf(t, evening, "Europe/London", want)), m.When, text)
		}
		ctx := larrick(t)
		ctx.Rods = ctx.Rods[:1]
		for _, line := range []string{text + " landed", "landed a hen " + text, "pull in the tail of the alder, " + text} {
			p := Read(line, ctx)
			covered(t, p)
			cs := p.Lines[0].Clauses
			require.Len(t, cs, 1, line)
			require.Len(t, cs[0].Readings, 1, "%s: %s", line, cs[0].Note.Reason)
			require.Empty(t, cs[0].Readings[0].Missing, line)
			assert.Equal(t, m.When, cs[0].Readings[0].Entries[0].Base().When, line)
		}
	}
}

// Ensure that spoken times stand wherever times do: roughly, in stretches, as two ends.
func TestSpokenTimesTogether(t *testing.T) {
	at := func(s string) time.Time { return instantOf(t, evening, "Europe/London", s) }
	c := clockOn(t, evening)
	for text, want := range map[string]journal.When{
		"about half ten": journal.About(at("22:30"), 0), "half ten-ish": journal.About(at("22:30"), 0), "half tenish": journal.About(at("22:30"), 0), "~ ten to eleven": journal.About(at("22:50"), 0),
		"half ten?": journal.About(at("22:30"), 0), "2250ish": journal.About(at("22:50"), 0), "half ten +-20": journal.About(at("22:30"), 20*time.Minute),
		"between half ten and quarter to eleven":                journal.Between(at("22:30"), at("22:45")),
		"from quarter to eleven to five past midnight":          journal.Between(at("22:45"), at("00:05")),
		"from 2230 to quarter to 11":                            journal.Between(at("22:30"), at("22:45")),
		"from half past ten to quarter past ten in the evening": {},
	} {
		m, err := c.Parse(text)
		if want.IsZero() {
			assert.Error(t, err, text)
			continue
		}
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, m.When, text)
		}
	}
	ctx := larrick(t)
	ctx.Rods = ctx.Rods[:1]
	for text, want := range map[string][2]string{
		"alder half ten to quarter past eleven":       {"22:30", "23:15"},
		"alder from half ten till ten to twelve":      {"22:30", "23:50"},
		"from quarter to eleven to 2310 in the alder": {"22:45", "23:10"},
		"quarter to eleven until half eleven, alder":  {"22:45", "23:30"},
	} {
		p := Read(text, ctx)
		covered(t, p)
		require.Equal(t, "run", said(p), text)
		run := p.Lines[0].Clauses[0].Readings[0].Entries[0].(journal.Run)
		assert.Equal(t, journal.Exact(at(want[0])), run.When, text)
		assert.Equal(t, journal.Of(journal.Exact(at(want[1]))), run.Until, text)
	}
}

// Ensure that what may be a time or a stretch is not read as either, and that a half of
// the day that the night does not tell is asked about.
func TestSpokenDoubts(t *testing.T) {
	_, err := clockOn(t, evening).Parse("from ten to eleven")
	assert.EqualError(t, err, "“from ten to eleven” may be a time or a stretch: write it in figures, such as 22:00-23:00")
	ctx := larrick(t)
	ctx.Rods = ctx.Rods[:1]
	p := Read("alder from ten to eleven", ctx)
	require.Empty(t, p.Lines[0].Clauses[0].Readings)
	assert.Contains(t, p.Lines[0].Clauses[0].Note.Reason, "a time or a stretch")

	m, err := clockOn(t, evening).Parse("half eight")
	require.NoError(t, err)
	require.NotNil(t, m.Ask)
	assert.Equal(t, journal.Exact(instantOf(t, evening, "Europe/London", "20:30")), m.When)

	fold := journal.Date{Year: 2026, Month: time.October, Day: 24}
	m, err = clockOn(t, fold).Parse("half one")
	require.NoError(t, err)
	require.NotNil(t, m.Ask, "the clock showed it twice")
}
