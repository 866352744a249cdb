package state

import (
	"encoding/csv"
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/timeline/season"
	"gloamline/ui/scene"
)

// inTogether enters the room on the demo.
func inTogether(t *testing.T) (*Desk, *Together) {
	d := New(demoJournal(t), func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	require.True(t, d.EnterRoom(TogetherRoom))
	return d, d.Together()
}

func press(t *testing.T, d *Desk, k Key) {
	t.Helper()
	c := d.CommandFor(k)
	require.NotNil(t, c, k.String())
	require.True(t, c.Enabled(), c.ID)
	require.NoError(t, c.Run())
}

// Ensure that the room begins with the latest season, and that each way to choose gives
// the nights it says.
func TestTogetherChoice(t *testing.T) {
	_, r := inTogether(t)
	laid := func() []timeline.Laid { return r.Sides().Light.Nights }
	require.Len(t, laid(), 24)
	for _, l := range laid() {
		assert.Equal(t, 2026, l.Night.Log.Trip.Evening.Year)
	}
	r.Change(func(c *NightChoice) { c.Filter.Years, c.Filter.Months = nil, One(time.July) })
	july := len(laid())
	require.Greater(t, july, 5)
	for _, l := range laid() {
		assert.Equal(t, time.July, l.Night.Log.Trip.Evening.Month)
	}
	beat := r.Offers().Beats[0]
	r.Change(func(c *NightChoice) { c.Filter.Beats = One(beat.Value) })
	assert.Less(t, len(laid()), july)
	for _, l := range laid() {
		assert.Equal(t, beat.Value, l.Night.Log.Trip.Beat)
		assert.Equal(t, beat.Name, l.Night.Beat.Name)
	}
	r.SetChoice(NightChoice{Filter: season.Filter{Trends: One(journal.FiningDown)}, Moons: One("full")})
	require.NotEmpty(t, laid())
	for _, l := range laid() {
		assert.Greater(t, l.Night.Sky.MoonFraction, 0.75)
		assert.Equal(t, journal.FiningDown, l.Night.Waters[0].Entry.Trend.Or(""))
	}
	who := r.Offers().People[0]
	r.SetChoice(NightChoice{Filter: season.Filter{People: One(who.Value)}})
	for _, l := range laid() {
		names := []string{l.Night.Guide}
		for _, rod := range l.Night.Rods {
			names = append(names, rod.Name)
		}
		assert.Contains(t, names, who.Name)
	}
	like := laid()[3].Night.Log.Trip.ID
	r.LikeThis(like)
	require.Len(t, laid(), LikeCount)
	assert.Equal(t, like, r.Stands())
	title, how := r.Said()
	assert.Contains(t, title, "8 nights, like ")
	assert.Contains(t, how, "likest")
	r.Reset()
	assert.Len(t, laid(), 24)
	r.SetChoice(NightChoice{})
	assert.Len(t, laid(), 48)
}

// Ensure that a night can be ticked in and out of any choice, that this is said, and that
// ticking twice changes nothing.
func TestTogetherByHand(t *testing.T) {
	_, r := inTogether(t)
	before := r.Choice()
	one := r.Rows()[4].Trip
	assert.False(t, r.View().Hand)
	r.Toggle(one)
	assert.Len(t, r.Sides().Light.Nights, 23)
	assert.True(t, r.View().Hand)
	assert.Contains(t, strings.Join(r.Sentences(), " "), "Picked by hand")
	r.Toggle(one)
	assert.Len(t, r.Sides().Light.Nights, 24)
	assert.Equal(t, before.hand(), r.Choice().hand())
	var out TogetherRow
	for _, row := range r.Rows() {
		if !row.In {
			out = row
		}
	}
	r.Toggle(out.Trip)
	assert.Len(t, r.Sides().Light.Nights, 25)
	r.None()
	assert.Empty(t, r.Sides().Light.Nights)
	_, how := r.Said()
	assert.Equal(t, "Chosen one by one.", how)
	r.Toggle(one)
	assert.Len(t, r.Sides().Light.Nights, 1)
	assert.Equal(t, "a", r.Rows()[0].Mark)
}

// Ensure that everything in the room can be done by keys, and that Enter opens the night
// at the fish in its own room.
func TestTogetherByKeys(t *testing.T) {
	d, r := inTogether(t)
	press(t, d, key("5"))
	assert.Equal(t, timeline.LightAxis, r.Axis())
	assert.True(t, r.Sides().ByLight)
	press(t, d, key("3"))
	assert.Equal(t, timeline.GreyAxis, r.Sides().Shown().Axis)
	press(t, d, key("S"))
	assert.Equal(t, scene.StripsPicture, r.Picture())
	press(t, d, key("O"))
	assert.Equal(t, timeline.ByDate, r.Order())
	nights := r.Sides().Time.Nights
	for i := 1; i < len(nights); i++ {
		assert.False(t, nights[i].Night.Log.Trip.Evening.Before(nights[i-1].Night.Log.Trip.Evening))
	}
	assert.Equal(t, nights[len(nights)-1].Night.Log.Trip.ID, r.Stands(), "the latest at first")
	press(t, d, key("Escape"))
	assert.Zero(t, r.Stands())
	press(t, d, key("Down"))
	assert.Equal(t, nights[0].Night.Log.Trip.ID, r.Stands())
	assert.False(t, r.NextNight(-1), "there is none before the first")
	press(t, d, key("Down"))
	assert.Equal(t, nights[1].Night.Log.Trip.ID, r.Stands())
	press(t, d, key("Right"))
	fish := r.Fish()
	require.Equal(t, journal.KindContact, fish.Kind)
	assert.Equal(t, fish.Trip, r.Stands())
	press(t, d, key("Right"))
	press(t, d, key("Left"))
	assert.Equal(t, fish, r.Fish())
	press(t, d, key("Escape"))
	assert.Zero(t, r.Fish())
	press(t, d, key("Right"))
	press(t, d, key("Return"))
	assert.Equal(t, NightRoom, d.Room())
	assert.Equal(t, fish.Trip, d.Trip())
	assert.Equal(t, fish, d.Selected())
	require.True(t, d.EnterRoom(TogetherRoom))
	for _, k := range []string{"Y", "M", "B", "W", "V", "N", "L", "0", "C", "P", "1", "2", "4"} {
		press(t, d, key(k))
	}
}

// Ensure that what was looked at comes back in another session, and that nights that are
// gone since are forgotten.
func TestTogetherIsRemembered(t *testing.T) {
	_, r := inTogether(t)
	r.Change(func(c *NightChoice) { c.Filter.Months = One(time.July) })
	r.Toggle(r.Rows()[0].Trip)
	r.SetAxis(timeline.MoonAxis)
	r.SetOrder(timeline.ByCatch)
	r.SetPicture(scene.PoolsPicture)
	r.Stand(r.Rows()[1].Trip)
	text := r.Encode()
	_, again := inTogether(t)
	again.Decode(text)
	assert.Equal(t, text, again.Encode())
	assert.Equal(t, r.Report(), again.Report())

	fresh, _ := inTogether(t)
	before := fresh.Together().Encode()
	for _, bad := range []string{"", "{", `{"axis":"lunar","order":"date","picture":"pools"}`, `{"axis":"moon","order":"date","picture":"none"}`} {
		fresh.Together().Decode(bad)
		assert.Equal(t, before, fresh.Together().Encode(), bad)
	}
	fresh.Together().Decode(`{"choice":{"like":"` + journal.NewID().String() + `"},"axis":"moon","order":"date","picture":"pools"}`)
	assert.Len(t, fresh.Together().Sides().Light.Nights, 24)
}

// Ensure that a fish written down elsewhere stands in the room at once, and that a night
// removed leaves it.
func TestTogetherFollowsTheJournal(t *testing.T) {
	k, _ := written(t)
	require.True(t, k.d.EnterRoom(TogetherRoom))
	r := k.d.Together()
	require.Len(t, r.Sides().Light.Nights, 1)
	had := r.Sides().Light.Totals.Contacts()
	trip := k.d.Trip()
	var news What
	k.d.OnChange(func(w What) { news |= w })
	night := k.d.Night()
	_, err := k.j.Do("add fish", journal.Batch{Put: []journal.Record{journal.Contact{
		Head: journal.Head{ID: journal.NewID(), Trip: trip, Rod: night.Rods[0].Rod.ID, When: journal.Exact(k.at("23:20"))}, Touch: journal.Pull,
	}}})
	require.NoError(t, err)
	assert.True(t, news.Has(RoomView))
	assert.Equal(t, had+1, r.Sides().Light.Totals.Contacts())
	r.Stand(trip)
	_, err = k.j.Remove(journal.Ref{Kind: journal.KindTrip, ID: trip})
	require.NoError(t, err)
	assert.Empty(t, r.Sides().Light.Nights)
	assert.Zero(t, r.Stands())
	assert.Empty(t, r.Rows())
}

// Ensure that the figures of a report are those of its nights, on both axes, in every
// table, and that it can be written.
func TestTogetherReport(t *testing.T) {
	_, r := inTogether(t)
	r.SetAxis(timeline.MoonAxis)
	rep := r.Report()
	var nights, light, time, pools ReportTotals
	add := func(a *ReportTotals, b ReportTotals) {
		a.RodHours, a.Landed, a.Lost, a.Touches, a.Shows = a.RodHours+b.RodHours, a.Landed+b.Landed, a.Lost+b.Lost, a.Touches+b.Touches, a.Shows+b.Shows
	}
	for _, n := range rep.Nights {
		add(&nights, n.ReportTotals)
	}
	for _, b := range rep.Light.Bins {
		add(&light, b.ReportTotals)
	}
	for _, b := range rep.Time.Bins {
		add(&time, b.ReportTotals)
	}
	for _, p := range rep.Pools {
		add(&pools, p.ReportTotals)
	}
	same := func(a, b ReportTotals, what string) {
		assert.InDelta(t, a.RodHours, b.RodHours, 1e-4, what)
		assert.InDelta(t, a.Landed, b.Landed, 1e-4, what)
		assert.InDelta(t, a.Lost+a.Touches+a.Shows, b.Lost+b.Touches+b.Shows, 1e-4, what)
	}
	same(rep.Totals.ReportTotals, nights, "nights")
	same(rep.Totals.ReportTotals, light, "steps of light")
	same(rep.Totals.ReportTotals, pools, "pools")
	off, contacts := 0.0, 0
	for _, x := range rep.Time.Off {
		off, contacts = off+x.RodHours, contacts+x.Contacts
	}
	require.Positive(t, off, "some nights have no moon")
	assert.InDelta(t, rep.Totals.RodHours, time.RodHours+off, 1e-4)
	assert.InDelta(t, float64(len(rep.Fish)-contacts), time.Landed+time.Lost+time.Touches+time.Shows, 1e-3)
	away := 0
	for _, f := range rep.Fish {
		if f.Time.Off != "" {
			away++
			assert.Nil(t, f.Time.At)
		}
		require.NotNil(t, f.Light.At)
	}
	assert.Equal(t, contacts, away)

	text, err := json.Marshal(rep)
	require.NoError(t, err)
	var back Report
	require.NoError(t, json.Unmarshal(text, &back))
	assert.Equal(t, rep, back)
	rows := map[string]int{"-steps": len(rep.Time.Bins) + len(rep.Light.Bins) + len(rep.Time.Off), "-nights": len(rep.Nights), "-fish": len(rep.Fish), "-pools": len(rep.Pools), "-runs": len(rep.Runs), "-rigs": len(rep.Rigs)}
	require.Len(t, rep.Tables(), len(rows))
	for _, table := range rep.Tables() {
		require.True(t, strings.HasPrefix(string(table.CSV), "# "+rep.Title))
		c := csv.NewReader(strings.NewReader(string(table.CSV)))
		c.Comment = '#'
		got, err := c.ReadAll()
		require.NoError(t, err)
		assert.Len(t, got, rows[table.Name]+1, table.Name)
	}
}

// Ensure that more nights than can be told apart are not laid, and that this is said.
func TestTogetherHasAnEnd(t *testing.T) {
	all := make([]timeline.Traits, MostTogether+7)
	for i := range all {
		all[i] = timeline.Traits{Trip: journal.NewID(), Fished: true}
	}
	_, r := inTogether(t)
	r.traits = all
	r.SetChoice(NightChoice{})
	assert.Len(t, r.chosen(), MostTogether)
	assert.Equal(t, 7, r.LeftOut())
}

// BenchmarkTogetherAxis chooses another axis for all nights of the demo: laid, not drawn.
func BenchmarkTogetherAxis(b *testing.B) {
	j, err := demoOnce()
	require.NoError(b, err)
	d := New(j, time.Now)
	r := d.Together()
	r.SetChoice(NightChoice{})
	i := 0
	for b.Loop() {
		r.laid = nil
		i++
		r.SetAxis(timeline.Axes[i%len(timeline.Axes)])
		r.Sides()
	}
}

// Ensure that the keys reach every night of the list, and tick there what is marked.
func TestTogetherListByKeys(t *testing.T) {
	d, r := inTogether(t)
	d.SetPart(OnPicks)
	r.Stand(r.Rows()[0].Trip)
	for range 24 {
		press(t, d, key("Down"))
	}
	rows := r.Rows()
	assert.Equal(t, rows[24].Trip, r.Marked())
	assert.False(t, rows[24].In)
	press(t, d, key("Space"))
	assert.Len(t, r.Sides().Light.Nights, 25)
	press(t, d, key("Space"))
	assert.Len(t, r.Sides().Light.Nights, 24)
	press(t, d, key("Up"))
	assert.Equal(t, r.Rows()[23].Trip, r.Stands(), "one that is laid stands out")
}

// Ensure that the season is asked about just the nights that are laid together, with the question of
// light or clock open, and that a filter that says which they are is handed over as it is.
func TestTogetherWeighed(t *testing.T) {
	d, r := inTogether(t)
	evenings := func() (out []string) {
		for _, l := range r.Sides().Light.Nights {
			out = append(out, l.Night.Log.Trip.Evening.String())
		}
		slices.Sort(out)
		return out
	}
	counted := func() (out []string) {
		for d.Season().Read(50) {
		}
		for _, n := range d.Season().Sheet().List {
			out = append(out, n.Evening.String())
		}
		slices.Sort(out)
		return out
	}
	press(t, d, key("Q"))
	s := d.Season()
	assert.Equal(t, SeasonRoom, d.Room())
	assert.Equal(t, scene.SeasonClock, s.Picked())
	assert.True(t, s.Open(scene.SeasonClock))
	assert.Equal(t, r.Filter(), s.Filter())
	assert.Equal(t, evenings(), counted())
	for _, choose := range []func(){
		func() { r.Toggle(r.Rows()[2].Trip) },
		func() { r.SetChoice(NightChoice{Moons: One("full")}) },
		func() { r.LikeThis(r.Rows()[0].Trip) },
		func() { r.SetChoice(NightChoice{Filter: season.Filter{People: One(r.Offers().People[0].Value)}}) },
		func() { r.SetChoice(NightChoice{Filter: season.Filter{Months: []time.Month{time.June, time.August}}}) },
	} {
		choose()
		r.Weigh()
		require.NotEmpty(t, evenings())
		assert.Equal(t, evenings(), counted())
	}
	assert.Empty(t, s.Filter().Trips)
}
