package state

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/timeline/season"
)

// Ensure that nights side by side take several of every kind at once, that each narrows, and that
// both rooms mean the same by one filter but for the guide, whose nights are none of a season's.
func TestFilterIsOneInBothRooms(t *testing.T) {
	d, s := inSeason(t)
	r := d.Together()
	nights := func() []string {
		var out []string
		for _, l := range r.Sides().Light.Nights {
			out = append(out, l.Night.Log.Trip.Evening.String()+" "+l.Night.Beat.Name)
		}
		slices.Sort(out)
		return out
	}
	counted := func() []string {
		var out []string
		for _, n := range s.Sheet().List {
			out = append(out, n.Evening.String()+" "+n.Beat)
		}
		slices.Sort(out)
		return out
	}
	o := r.Offers()
	assert.Equal(t, s.Offers().Years, o.Years)
	assert.Equal(t, s.Offers().Beats, o.Beats)
	require.GreaterOrEqual(t, len(o.People), 3)
	day := func(m time.Month, n int) journal.Date { return journal.Date{Year: 2026, Month: m, Day: n} }
	for name, f := range map[string]season.Filter{
		"all":      {},
		"years":    {Years: o.Years},
		"months":   {Months: []time.Month{time.June, time.August}},
		"beats":    {Beats: ids(o.Beats), Years: One(2025)},
		"trends":   {Trends: []journal.Trend{journal.Rising, journal.FiningDown}},
		"clients":  {Clients: season.ClientNights},
		"own":      {Clients: season.OwnNights, Months: One(time.July)},
		"from":     {From: day(time.July, 10)},
		"to":       {To: day(time.July, 10)},
		"evenings": {From: day(time.July, 1), To: day(time.July, 20), Beats: One(o.Beats[0].Value)},
		"people":   {People: []journal.ID{o.People[0].Value, o.People[1].Value}},
	} {
		r.SetChoice(NightChoice{Filter: f})
		s.SetFilter(f)
		require.NotEmpty(t, nights(), name)
		if name != "all" && name != "years" && name != "people" {
			assert.Less(t, len(nights()), 48, name)
		}
		if name == "people" {
			assert.Subset(t, nights(), counted(), name)
			continue
		}
		assert.Equal(t, counted(), nights(), name)
	}
}

// Ensure that several of a kind are said whole below the title, on every table, and that what was
// chosen comes back in another session; but not a beat that is gone.
func TestSeveralTogetherAreSaid(t *testing.T) {
	d, r := inTogether(t)
	o := r.Offers()
	r.SetChoice(NightChoice{Filter: season.Filter{
		Years: One(2026), Months: []time.Month{time.June, time.July, time.August}, Beats: ids(o.Beats), People: ids(o.People)[:2],
		Trends: []journal.Trend{journal.FiningDown, journal.NormalLevel}, Clients: season.OwnNights,
	}, Moons: []string{"thin", "half"}})
	title, how := r.Said()
	assert.True(t, strings.HasSuffix(title, "June and July and August 2026, Home Beat and Kirk Beat"), title)
	said := []string{
		"in June, July or August 2026", "on Home Beat or Kirk Beat", "with " + o.People[0].Name + " or " + o.People[1].Name,
		"river fining down or at its normal level", "nights without a client", "moon under a quarter lit or about half lit",
	}
	for _, part := range said {
		assert.Contains(t, how, part)
		for _, x := range r.Report().Tables() {
			assert.Contains(t, string(x.CSV), part, x.Name)
		}
	}
	kept := r.Encode()
	again := &Together{d: d, picture: r.picture, nights: map[journal.ID]*timeline.Night{}}
	again.Decode(kept)
	assert.Equal(t, kept, again.Encode())
	again.Decode(strings.ReplaceAll(kept, o.Beats[0].Value.String(), journal.NewID().String()))
	assert.Equal(t, One(o.Beats[1].Value), again.Choice().Filter.Beats)
	again.Decode(strings.ReplaceAll(kept, `"without"`, `"some"`))
	assert.Equal(t, One(o.Beats[1].Value), again.Choice().Filter.Beats, "what cannot be asked for changes nothing")
}

// Ensure that the first and the last evening are read as people write them, that either may be
// left out, and that what cannot be is refused with nothing changed.
func TestReadEvenings(t *testing.T) {
	today := journal.Date{Year: 2026, Month: time.September, Day: 1}
	f := season.Filter{Years: One(2025), Months: One(time.July)}
	require.NoError(t, ReadEvenings(&f, "4 July", "20/8/2026", today))
	assert.Equal(t, journal.Date{Year: 2026, Month: time.July, Day: 4}, f.From)
	assert.Equal(t, journal.Date{Year: 2026, Month: time.August, Day: 20}, f.To)
	assert.Empty(t, f.Years, "years would contradict")
	assert.NotEmpty(t, f.Months)
	from, to := Evenings(f)
	before := f
	require.NoError(t, ReadEvenings(&f, from, to, today))
	assert.Equal(t, before, f, "what is written reads back")
	for _, bad := range [][2]string{{"soon", ""}, {"", "32 July"}, {"5 July", "4 July"}} {
		assert.Error(t, ReadEvenings(&f, bad[0], bad[1], today), bad)
		assert.Equal(t, before, f, bad)
	}
	require.NoError(t, ReadEvenings(&f, " ", "yesterday", today))
	assert.True(t, f.From.IsZero())
	assert.Equal(t, journal.Date{Year: 2026, Month: time.August, Day: 31}, f.To)
	require.NoError(t, ReadEvenings(&f, "", "", today))
	assert.Equal(t, season.Filter{Months: One(time.July)}, f)
}
