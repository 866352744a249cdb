package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/journaltest"
	"gloamline/journal/memory"
	"gloamline/journal/units"
)

// party is a night of two rods on the Larrick, to which entries are added.
type party struct {
	trip    journal.Trip
	entries []journal.Entry
}

var (
	theLarrick = geo.River{ID: journal.ID{1}, Name: "Larrick Water"}
	annaID     = journal.ID{2}
	colmID     = journal.ID{3}
	homeOfLarr = geo.Beat{Name: "Home Beat", River: theLarrick}
)

func outing(evening string) *party {
	d, err := journal.ParseDate(evening)
	if err != nil {
		panic(err)
	}
	return &party{trip: journal.Trip{ID: journal.NewID(), Evening: d, Zone: "Europe/London", Beat: journal.ID{4},
		Rods: []journal.Rod{{ID: journal.NewID(), Person: annaID}, {ID: journal.NewID(), Person: colmID}}}}
}

// clock is a moment of the night by the clock at the river; from midnight on it is the
// day after.
func (p *party) clock(hour, min int) time.Time {
	loc, _ := p.trip.Location()
	e := p.trip.Evening
	day := e.Day
	if hour < 12 {
		day++
	}
	return time.Date(e.Year, e.Month, day, hour, min, 0, 0, loc).UTC()
}

func (p *party) head(rod int, w journal.When) journal.Head {
	return journal.Head{ID: journal.NewID(), Trip: p.trip.ID, Rod: p.trip.Rods[rod].ID, When: w}
}

func (p *party) run(rod, fromH, fromM, toH, toM int) *party {
	p.entries = append(p.entries, journal.Run{Head: p.head(rod, journal.Exact(p.clock(fromH, fromM))), Pool: journal.ID{5},
		Until: journal.Of(journal.Exact(p.clock(toH, toM)))})
	return p
}

func (p *party) fish(rod int, w journal.When, change func(*journal.Contact)) *party {
	k := seaTrout(50, 1200)
	k.Fate = journal.Of(journal.Returned)
	k.Head = p.head(rod, w)
	if change != nil {
		change(&k)
	}
	p.entries = append(p.entries, k)
	return p
}

func returnsOf(t require.TestingT, ask ReturnsAsk, nights ...*party) Returns {
	return fishedOn(t, nights...).Returns(ask)
}

func fishedOn(t require.TestingT, nights ...*party) *Fished {
	f := &Fished{condition: usualCondition}
	for _, p := range nights {
		n, err := newReturnNight(journal.NewLog(p.trip, p.entries), homeOfLarr)
		require.NoError(t, err)
		f.nights = append(f.nights, n)
	}
	return f
}

var year2026 = ReturnsAsk{Year: 2026}

// Ensure that a fish after midnight is one of the next day, even of the next month, that
// days are counted by date, by rod and by evening, and that months without fish are there.
func TestReturnsByDate(t *testing.T) {
	p := outing("2026-07-31")
	p.run(0, 23, 0, 23, 50).run(0, 0, 10, 1, 0).run(1, 22, 0, 23, 0)
	p.fish(0, journal.Exact(p.clock(23, 30)), nil).fish(0, journal.Exact(p.clock(0, 30)), nil)
	r := returnsOf(t, year2026, p)
	require.Len(t, r.Rivers, 1)
	m := r.Rivers[0].Months
	assert.Equal(t, []string{"Home Beat"}, r.Rivers[0].Beats)
	require.Len(t, m[time.July-1].Lines, 1)
	require.Len(t, m[time.August-1].Lines, 1)
	assert.Equal(t, 1, m[time.July-1].Lines[0].Number())
	assert.Equal(t, 1, m[time.August-1].Lines[0].Number())
	for _, c := range []struct {
		month                 time.Month
		days, rodDays, nights int
	}{{time.July, 1, 2, 1}, {time.August, 1, 1, 0}, {time.June, 0, 0, 0}} {
		got := m[c.month-1]
		assert.Equal(t, [3]int{c.days, c.rodDays, c.nights}, [3]int{got.Days, got.RodDays, got.Nights}, c.month)
	}
	assert.True(t, m[time.June-1].Nil())
	assert.Empty(t, r.Doubtful)
	assert.Equal(t, 2, r.Rivers[0].Total().Lines[0].Returned.Number)
}

// Ensure that the hours with a fly in the water are parted at midnight, also between two months, are those of all rods
// asked for, and leave breaks out.
func TestReturnsHours(t *testing.T) {
	p := outing("2026-07-31").run(0, 23, 0, 1, 30).run(1, 22, 0, 23, 0)
	p.entries = append(p.entries, journal.Break{Head: p.head(0, journal.Exact(p.clock(0, 15))), Until: journal.Of(journal.Exact(p.clock(0, 45)))})
	m := returnsOf(t, year2026, p).Rivers[0].Months
	assert.Equal(t, [2]time.Duration{2 * time.Hour, time.Hour}, [2]time.Duration{m[6].Hours, m[7].Hours})
	m = returnsOf(t, ReturnsAsk{2026, colmID}, p).Rivers[0].Months
	assert.Equal(t, [2]time.Duration{time.Hour, 0}, [2]time.Duration{m[6].Hours, m[7].Hours})
}

// Ensure that a run until midnight sharp touches no second day.
func TestReturnsMidnightSharp(t *testing.T) {
	p := outing("2026-07-10").run(0, 23, 0, 0, 0)
	assert.Equal(t, 1, returnsOf(t, year2026, p).Rivers[0].Months[6].Days)
}

// Ensure that kept, returned and unknown are apart, that first-year fish and kelts are
// apart and other classes are not, and that an estimate is never added to what was weighed.
func TestReturnsLines(t *testing.T) {
	p := outing("2026-07-10").run(0, 22, 0, 23, 59)
	at := journal.Exact(p.clock(23, 0))
	class := func(c string) func(*journal.Contact) {
		return func(k *journal.Contact) { k.Class = journal.Of(c) }
	}
	p.fish(0, at, class("herling")).fish(0, at, class("maiden")).fish(0, at, class("grown")).fish(0, at, class("kelt"))
	p.fish(0, at, func(k *journal.Contact) { k.Fate = journal.Of(journal.Kept); k.Estimated = true })
	p.fish(0, at, func(k *journal.Contact) {
		k.Species, k.Weight, k.Fate = journal.Field[journal.Species]{}, journal.Field[units.Weight]{}, journal.Field[journal.Fate]{}
	})
	p.fish(0, at, func(k *journal.Contact) { k.Touch, k.Fate = journal.Lost, journal.Field[journal.Fate]{} })
	r := returnsOf(t, year2026, p)
	lines := r.Rivers[0].Months[6].Lines
	require.Len(t, lines, 4)
	assert.Equal(t, ReturnLine{Unknown: Landings{Number: 1}}, lines[0])
	assert.Equal(t, ReturnLine{Species: journal.SeaTrout, Kept: Landings{Number: 1, Estimated: 1200, EstimatedN: 1},
		Returned: Landings{Number: 2, Weighed: 2400, WeighedN: 2}}, lines[1])
	assert.Equal(t, "herling", lines[2].Class)
	assert.Equal(t, "kelt", lines[3].Class)

	require.Len(t, r.Doubtful, 1)
	d := r.Doubtful[0]
	assert.Equal(t, []Doubt{NoWeight, NoFate, NoSpecies}, d.Doubts)
	assert.True(t, d.HasEstimate)
	assert.InDelta(t, 1250, float64(d.Estimate.Mid), 1e-9)
}

// Ensure that a class without a species is one of sea trout, which is what the classes are.
func TestReturnsClassIsASeaTrout(t *testing.T) {
	p := outing("2026-07-10")
	p.fish(0, journal.Exact(p.clock(23, 0)), func(k *journal.Contact) {
		k.Species, k.Class = journal.Field[journal.Species]{}, journal.Of("finnock")
	})
	r := returnsOf(t, year2026, p)
	assert.Equal(t, journal.SeaTrout, r.Rivers[0].Months[6].Lines[0].Species)
	assert.Empty(t, r.Doubtful)
	assert.Equal(t, 1, r.Rivers[0].Months[6].Days, "a fish was fished for, though no run is noted")
}

// Ensure that a fish about midnight is told with both dates, and counted once.
func TestReturnsTwoDates(t *testing.T) {
	p := outing("2026-07-10")
	p.fish(0, journal.About(p.clock(23, 57), 10*time.Minute), nil)
	r := returnsOf(t, year2026, p)
	require.Len(t, r.Doubtful, 1)
	assert.Equal(t, []Doubt{TwoDates}, r.Doubtful[0].Doubts)
	assert.Equal(t, "2026-07-10", r.Doubtful[0].Date.String())
	assert.Equal(t, "2026-07-11", r.Doubtful[0].Other.String())
}

// Ensure that one person's return holds that person's rod alone.
func TestReturnsOfOnePerson(t *testing.T) {
	p := outing("2026-07-10").run(0, 22, 0, 23, 0).run(1, 22, 0, 23, 0)
	p.fish(0, journal.Exact(p.clock(22, 30)), nil).fish(1, journal.Exact(p.clock(22, 40)), nil)
	m := returnsOf(t, ReturnsAsk{2026, colmID}, p).Rivers[0].Months[6]
	assert.Equal(t, 1, m.Lines[0].Number())
	assert.Equal(t, 1, m.RodDays)
	assert.Empty(t, returnsOf(t, ReturnsAsk{2026, journal.ID{9}}, p).Rivers)
}

// Ensure that the night of New Year's Eve is parted between the years.
func TestReturnsNewYear(t *testing.T) {
	p := outing("2025-12-31").run(0, 23, 0, 23, 30).run(0, 0, 10, 1, 0)
	p.fish(0, journal.Exact(p.clock(0, 30)), nil)
	r := returnsOf(t, year2026, p).Rivers[0].Months
	assert.Equal(t, 1, r[0].Lines[0].Number())
	assert.Equal(t, 1, r[0].Days)
	assert.Zero(t, r[0].Nights)
	old := returnsOf(t, ReturnsAsk{Year: 2025}, p).Rivers[0].Months
	assert.True(t, old[11].Nil())
	assert.Equal(t, 1, old[11].Nights)
	assert.Empty(t, returnsOf(t, ReturnsAsk{Year: 2024}, p).Rivers)
}

// Ensure that the years to choose among are those in which anything was fished, the newest first: of
// New Year's Eve the new year only if the night went on in it.
func TestReturnYears(t *testing.T) {
	old := outing("2025-12-31").run(0, 23, 0, 23, 30)
	assert.Equal(t, []int{2026, 2025}, fishedOn(t, old, outing("2026-07-10")).Years())
	assert.Equal(t, []int{2025}, fishedOn(t, old).Years())
	assert.Equal(t, []int{2026, 2025}, fishedOn(t, old.run(0, 0, 10, 1, 0)).Years())
	assert.Empty(t, fishedOn(t).Years())
}

// Ensure that over any journal the years together hold every landed fish once, that no
// month has more days than there are, nor fewer rod-days than days, and that every fish without
// a weight is listed.
func TestReturnsHoldEveryFish(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := journaltest.New(rapid.Uint64().Draw(t, "seed"))
		j, err := journal.Open(memory.New(w.ID()), time.Now)
		require.NoError(t, err)
		w.Life(j).Acts(25)
		trips, err := j.Trips()
		require.NoError(t, err)
		landed, weightless := 0, 0
		years := map[int]bool{}
		for _, trip := range trips {
			years[trip.Evening.Year], years[trip.Evening.Add(1).Year] = true, true
			log, err := j.Night(trip.ID)
			require.NoError(t, err)
			for _, e := range log.Entries {
				if k, ok := e.(journal.Contact); ok && k.Touch == journal.Landed {
					landed++
					if !k.Weight.Known() {
						weightless++
					}
				}
			}
		}
		wet := time.Duration(0)
		for _, trip := range trips {
			n, err := Load(j, trip.ID)
			require.NoError(t, err)
			wet += n.Totals.InWater
		}
		got, listed, hours := 0, 0, time.Duration(0)
		for y := range years {
			r, err := LoadReturns(j, ReturnsAsk{Year: y})
			require.NoError(t, err)
			for _, river := range r.Rivers {
				for i, m := range river.Months {
					days := time.Date(y, time.Month(i+2), 0, 0, 0, 0, 0, time.UTC).Day()
					hours += m.Hours
					require.LessOrEqual(t, m.Days, days)
					require.LessOrEqual(t, m.Days, m.RodDays)
					for _, l := range m.Lines {
						got += l.Number()
						require.Positive(t, l.Number())
					}
				}
			}
			for _, d := range r.Doubtful {
				if d.Doubts[0] == NoWeight {
					listed++
				}
			}
		}
		require.Equal(t, landed, got)
		require.Equal(t, weightless, listed)
		require.Equal(t, wet, hours, "the hours are those that the nights say")
	})
}
