package pen

import (
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// evening is the night most tests are written on.
var evening = journal.Date{Year: 2026, Month: time.July, Day: 4}

// instantOf is the instant at which a clock in zone showed a time that night.
func instantOf(t require.TestingT, evening journal.Date, zone, clock string) time.Time {
	loc, err := time.LoadLocation(zone)
	require.NoError(t, err)
	c, err := time.Parse("15:04", clock)
	require.NoError(t, err)
	r, err := journal.ResolveWall(evening, loc, c.Hour(), c.Minute(), time.Time{}, time.Time{})
	require.NoError(t, err)
	return r.At
}
