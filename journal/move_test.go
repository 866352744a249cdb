package journal_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a night written up under the wrong date moves with everything in
// it, keeps what the clock showed, and can be taken back.
func TestMoveTo(t *testing.T) {
	j, s := world(t)
	tr := trip()
	tr.Rods[0].Start, tr.Rods[0].Stop = journal.Of(at(22, 0)), journal.Of(journal.About(clock(2, 0), 0))
	tr.Hours = journal.Of(journal.Span{Start: at(21, 0), Stop: at(3, 0)})
	put(t, j, tr, until(run("run", "anna", at(23, 0)), at(0, 30)), contact("fish", "anna", journal.Within(id("run"))))
	before := contents(t, s)
	l, err := j.Night(id("trip"))
	require.NoError(t, err)
	for _, to := range []journal.Date{evening.Add(1), evening.Add(-30), {Year: 2026, Month: time.October, Day: 24}, {Year: 2027, Month: time.January, Day: 9}} {
		b, err := l.MoveTo(to)
		require.NoError(t, err)
		_, err = j.Do("move trip", b)
		require.NoError(t, err)
		m, err := j.Night(id("trip"))
		require.NoError(t, err)
		loc, err := m.Trip.Location()
		require.NoError(t, err)
		shows := func(at time.Time) string { return at.In(loc).Format("2006-01-02 15:04") }
		assert.Equal(t, to, m.Trip.Evening)
		start, _ := m.Trip.Rods[0].Start.Get()
		assert.Equal(t, to.String()+" 22:00", shows(start.Lo))
		assert.Equal(t, tr.Rods[1], m.Trip.Rods[1])
		r := m.Runs(journal.ID{})[0]
		from, until := m.RunSpan(r)
		assert.Equal(t, to.String()+" 23:00", shows(from.Lo))
		assert.Equal(t, to.Add(1).String()+" 00:30", shows(until.Lo))
		fish, _ := m.Find(id("fish"))
		assert.Equal(t, shows(from.Lo), shows(fish.Base().When.Lo), "kept bounds move along")
		_, err = j.Undo()
		require.NoError(t, err)
		assert.Equal(t, before, contents(t, s))
	}
}

// Ensure that moments stay in order where the clock goes back.
func TestMoveToFold(t *testing.T) {
	// 1:40 before and 1:20 after the clock went back at 2:00 in the night of 24 October 2026
	tr := trip()
	tr.Evening = journal.Date{Year: 2026, Month: time.October, Day: 24}
	l := journal.NewLog(tr, []journal.Entry{note("n", journal.Between(utc("2026-10-25 00:40"), utc("2026-10-25 01:20")))})
	b, err := l.MoveTo(evening)
	require.NoError(t, err)
	w := b.Put[1].(journal.Entry).Base().When
	assert.Equal(t, journal.Between(clock(1, 40), clock(1, 40)), w)
	tr.Zone = "Nowhere/At_All"
	_, err = journal.NewLog(tr, nil).MoveTo(evening)
	assert.Equal(t, journal.Invalid, journal.KindOf(err))
}
