package state

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/timeline/season"
	"gloamline/ui/scene"
)

// inSeason enters the room on the demo, with every night read.
func inSeason(t *testing.T) (*Desk, *SeasonDesk) {
	d := New(demoJournal(t), func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	require.True(t, d.EnterRoom(SeasonRoom))
	s := d.Season()
	for s.Read(20) {
	}
	require.True(t, s.Ready())
	return d, s
}

// Ensure that nights are read a few at a time, that no figure stands before all are, and
// that it is told how far it is.
func TestSeasonIsReadInSteps(t *testing.T) {
	d := New(demoJournal(t), func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	s := d.Season()
	require.False(t, s.Ready())
	require.True(t, s.Read(10), "first it looks for logged moments")
	done, of := s.Progress()
	assert.Equal(t, [2]int{0, 48}, [2]int{done, of})
	require.True(t, s.Read(10))
	done, of = s.Progress()
	assert.Equal(t, 10, done)
	assert.Equal(t, 48, of)
	assert.Nil(t, s.Sheet())
	assert.Nil(t, s.Scene().Season)
	assert.Equal(t, 10, s.Scene().Done)
	_, made := s.Said()
	assert.Contains(t, made, "10 of 48")
	assert.False(t, d.Command("season.next").Enabled())
	steps := 1
	for s.Read(10) {
		steps++
	}
	assert.Equal(t, 4, steps)
	require.NotNil(t, s.Sheet())
	assert.Equal(t, 48, s.Sheet().Nights)
	assert.False(t, s.Read(10))
}

// Ensure that a change of the journal is followed: figures fall away, and only then come
// anew.
func TestSeasonFollowsTheJournal(t *testing.T) {
	k, es := written(t)
	s := k.d.Season()
	assert.False(t, s.Read(5))
	require.NotNil(t, s.Sheet())
	before := s.Sheet().Totals.Contacts()
	require.Greater(t, before, 0)
	_, err := k.j.Remove(es[3].Ref())
	require.NoError(t, err)
	assert.Nil(t, s.Sheet())
	assert.False(t, s.Read(5))
	assert.Equal(t, before-1, s.Sheet().Totals.Contacts())
}

// Ensure that each filter lets through what it says, is said, and can be undone at once.
func TestSeasonFilters(t *testing.T) {
	d, s := inSeason(t)
	all := s.Sheet().Nights
	hours := s.Sheet().Hours
	try := func(say string, f func(*season.View)) {
		t.Helper()
		s.Change(f)
		assert.Less(t, s.Sheet().Hours, hours)
		assert.Greater(t, s.Sheet().Nights, 0)
		_, made := s.Said()
		assert.Contains(t, strings.ToLower(made), strings.ToLower(say))
		require.NoError(t, d.Command("season.reset").Run())
		assert.Equal(t, all, s.Sheet().Nights)
	}
	require.Equal(t, []int{2026, 2025}, s.Offers().Years)
	try("nights of 2025;", func(v *season.View) { v.Filter.Years = One(2025) })
	try("July", func(v *season.View) { v.Filter.Months = One(time.July) })
	beat, who := s.Offers().Beats[0], s.Offers().People[0]
	try(beat.Name, func(v *season.View) { v.Filter.Beats = One(beat.Value) })
	try("rods of "+who.Name, func(v *season.View) { v.Filter.People = One(who.Value) })
	try("river", func(v *season.View) { v.Filter.Trends = []journal.Trend{s.Offers().Trends[0]} })
	try("with a client", func(v *season.View) { v.Filter.Clients = season.ClientNights })
	fish := s.Sheet().Fish
	s.Change(func(v *season.View) { v.Measure = season.LandedOnly })
	assert.Less(t, s.Sheet().Fish, fish)
}

// Ensure that keys go through every choice and come back to all.
func TestSeasonChoicesByKeys(t *testing.T) {
	d, s := inSeason(t)
	for k, n := range map[string]int{
		"Y": len(s.Offers().Years) + 1, "M": len(s.Offers().Months) + 1, "B": len(s.Offers().Beats) + 1, "W": len(s.Offers().People) + 1,
		"V": len(s.Offers().Trends) + 1, "C": len(ClientChoices), "K": len(season.Measures),
	} {
		seen := map[string]bool{}
		for range n {
			seen[s.Encode()] = true
			press(t, d, key(k))
		}
		assert.Len(t, seen, n, k)
		assert.Equal(t, season.View{Measure: season.Hooked}, normal(s.View()), k)
	}
}

// normal takes empty lists for none.
func normal(v season.View) season.View {
	if len(v.Filter.Trends) == 0 {
		v.Filter.Trends = nil
	}
	return v
}

// Ensure that what was worked out beside is shown, but not if another choice is by then.
func TestSeasonSettles(t *testing.T) {
	_, s := inSeason(t)
	first := s.Unsettled()
	require.NotNil(t, first)
	settled := first.Settle()
	s.Change(func(v *season.View) { v.Filter.Years = One(2026) })
	s.Settle(first, settled)
	assert.Equal(t, 24, s.Sheet().Nights, "what comes late is not shown")
	assert.False(t, s.Sheet().Settled)
	now := s.Unsettled()
	s.Settle(now, now.Settle())
	assert.True(t, s.Sheet().Settled)
	assert.Nil(t, s.Unsettled())
	s.Change(func(v *season.View) { v.Filter.Months = One(time.January) })
	assert.Nil(t, s.Unsettled(), "of no night there is nothing to work out")
}

// Ensure that cards are gone through, opened and closed by keys, and stop at both ends.
func TestSeasonCardsByKeys(t *testing.T) {
	d, s := inSeason(t)
	press(t, d, key("Up"))
	assert.Zero(t, s.Picked())
	press(t, d, key("Down"))
	assert.Equal(t, 1, s.Picked())
	assert.False(t, s.Open(1))
	press(t, d, key("Return"))
	assert.True(t, s.Open(1))
	press(t, d, key("S"))
	assert.True(t, s.Full(1))
	press(t, d, key("S"))
	assert.False(t, s.Full(1))
	press(t, d, key("Return"))
	press(t, d, key("S"))
	assert.True(t, s.Open(1) && s.Full(1), "the tests of a closed card open it")
	press(t, d, key("End"))
	assert.Equal(t, 26, s.Picked())
	press(t, d, key("Down"))
	assert.Equal(t, 26, s.Picked())
	press(t, d, key("Home"))
	assert.Zero(t, s.Picked())
	press(t, d, key("A"))
	press(t, d, key("A"))
	for i := range SeasonCards {
		assert.True(t, s.Open(i) == s.Open(0))
	}
}

// Ensure that tables are those of the card picked out, that each says what it is made
// from and that there is one file to a name.
func TestSeasonTables(t *testing.T) {
	_, s := inSeason(t)
	s.Change(func(v *season.View) { v.Filter.Months = One(time.July) })
	s.Pick(5)
	tables := s.Tables()
	require.Len(t, tables, 4)
	assert.Equal(t, "-fish", tables[3].Name)
	assert.Contains(t, string(tables[3].CSV), "July; counted: fish hooked")
	assert.Equal(t, len(s.Sheet().LengthLight.Fish)+1+3, strings.Count(string(tables[3].CSV), "\n"))
	assert.Equal(t, "-length", tables[0].Name)
	require.NotEmpty(t, s.Pages(scene.Paper))
	text := string(tables[0].CSV)
	assert.Contains(t, text, "July; counted: fish hooked")
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	assert.Len(t, rows, 1+len(s.Sheet().Table("length").Rows))
	for n := range SeasonCards {
		s.Pick(n)
		assert.True(t, s.HasTables(), n)
	}
	s.Pick(0)
	assert.True(t, s.HasTables())
	var names []string
	for _, x := range s.Tables() {
		names = append(names, x.Name)
	}
	slices.Sort(names)
	assert.Len(t, slices.Compact(slices.Clone(names)), len(names))
	assert.Greater(t, len(names), 20)
	s.Change(func(v *season.View) { v.Filter.Months = One(time.January) })
	assert.False(t, s.HasTables())
	assert.Empty(t, s.Tables())
}

// Ensure that who comes for the first time sees a picture: of the fish, or of the pools where none
// came, and nothing opened in an empty journal; and that a choice of one's own is left alone.
func TestSeasonBegins(t *testing.T) {
	_, s := inSeason(t)
	require.NotNil(t, s.Sheet())
	assert.True(t, s.Open(0) && s.Open(scene.SeasonLengths) && s.Open(scene.SeasonClock))
	assert.False(t, s.Open(scene.SeasonPools))
	s.Toggle(scene.SeasonLengths)
	s.Change(func(v *season.View) { v.Filter.Months = One(time.July) })
	require.NotNil(t, s.Sheet())
	assert.False(t, s.Open(scene.SeasonLengths), "once closed it stays so")

	_, s = inSeason(t)
	blank := s.all.Digests[:0:0]
	for _, d := range s.all.Digests {
		if d.Totals.Contacts() == 0 {
			blank = append(blank, d)
		}
	}
	require.NotEmpty(t, blank)
	s.all.Digests = blank
	require.NotNil(t, s.Sheet())
	assert.True(t, s.Open(scene.SeasonPools))
	assert.False(t, s.Open(scene.SeasonLengths) || s.Open(scene.SeasonClock))

	j, err := journal.Open(memory.New(journal.NewID()), time.Now)
	require.NoError(t, err)
	empty := New(j, time.Now).Season()
	for empty.Read(1) {
	}
	require.NotNil(t, empty.Sheet())
	assert.False(t, empty.Open(scene.SeasonPools) || empty.Open(scene.SeasonLengths))
}

// Ensure that the room comes back as it was left, and that a beat or a person that is gone
// and what is no room at all are as if not chosen.
func TestSeasonComesBack(t *testing.T) {
	d, s := inSeason(t)
	s.Change(func(v *season.View) {
		v.Filter.Years = One(2026)
		v.Filter.Beats = One(s.Offers().Beats[1].Value)
		v.Filter.Trends = []journal.Trend{""}
		v.Measure = season.Touched
	})
	s.Toggle(14)
	kept := s.Encode()
	again := &SeasonDesk{d: d, book: season.NewBook(d.j), open: map[int]bool{}, full: map[int]bool{}}
	again.Decode(kept)
	assert.Equal(t, kept, again.Encode())
	assert.True(t, again.Open(14))
	for _, bad := range []string{"", "{", `{"view":{"measure":"x"}}`, `{"view":{"measure":"hooked"},"picked":99}`} {
		again.Decode(bad)
		assert.Equal(t, kept, again.Encode(), bad)
	}
	j, err := journal.Open(memory.New(journal.NewID()), time.Now)
	require.NoError(t, err)
	other := New(j, time.Now).Season()
	other.Decode(kept)
	assert.Empty(t, other.View().Filter.Beats)
	assert.Equal(t, season.Touched, other.View().Measure)
}

// BenchmarkSeasonFilter is what a change of filter costs on the demo, without the tests.
func BenchmarkSeasonFilter(b *testing.B) {
	j, err := demoOnce()
	require.NoError(b, err)
	s := New(j, func() time.Time { return time.Time{} }).Season()
	for s.Read(50) {
	}
	for b.Loop() {
		s.Change(func(v *season.View) { v.Filter.Months = One(time.July) })
		s.Sheet()
	}
}
