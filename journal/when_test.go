package journal_test

import (
	"encoding/json"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
)

func TestWhenMakers(t *testing.T) {
	t0 := clock(23, 30)
	assert.Equal(t, journal.When{Kind: journal.ExactTime, Lo: t0, Hi: t0}, journal.Exact(t0))
	assert.Equal(t, journal.When{Kind: journal.AboutTime, Lo: clock(23, 20), Hi: clock(23, 40)}, journal.About(t0, 0), "ten minutes either way unless said")
	assert.Equal(t, journal.When{Kind: journal.AboutTime, Lo: clock(23, 20), Hi: clock(23, 40)}, journal.About(t0, -time.Minute))
	assert.Equal(t, journal.When{Kind: journal.AboutTime, Lo: clock(23, 0), Hi: clock(0, 0)}, journal.About(t0, 30*time.Minute))
	assert.Equal(t, journal.When{Kind: journal.BetweenTime, Lo: clock(23, 0), Hi: clock(1, 0)}, journal.Between(clock(23, 0), clock(1, 0)))
	assert.Equal(t, journal.When{Kind: journal.WithinTime, Anchors: []journal.ID{id("a")}}, journal.Within(id("a")))
	assert.Equal(t, journal.When{Kind: journal.BeforeTime, Anchors: []journal.ID{id("a")}}, journal.Before(id("a")))
	assert.Equal(t, journal.When{Kind: journal.AfterTime, Anchors: []journal.ID{id("a")}}, journal.After(id("a")))
	assert.True(t, journal.When{}.IsZero())
	assert.False(t, journal.Exact(t0).IsZero())
}

// Ensure that moments are made and written in UTC whatever zone they come in.
func TestWhenUTC(t *testing.T) {
	local := clock(23, 30).In(zone(t, "Europe/London"))
	want := `{"kind":"exact","lo":"2026-07-04T22:30:00Z","hi":"2026-07-04T22:30:00Z"}`
	for _, w := range []journal.When{journal.Exact(local), {Kind: journal.ExactTime, Lo: local, Hi: local}} {
		b, err := json.Marshal(w)
		require.NoError(t, err)
		assert.Equal(t, want, string(b))
	}
	assert.Equal(t, time.UTC, journal.About(local, 0).Lo.Location())
	assert.Equal(t, time.UTC, journal.Between(local, local).Hi.Location())
	b, err := json.Marshal(journal.Within(id("a")))
	require.NoError(t, err)
	assert.Equal(t, `{"kind":"within","anchors":["`+id("a").String()+`"]}`, string(b))
}

// Ensure that dragging moves the whole, keeps its width and lets go of anchors.
func TestWhenShift(t *testing.T) {
	for _, c := range []struct {
		w    journal.When
		kind journal.WhenKind
	}{
		{at(23, 30), journal.ExactTime},
		{journal.About(clock(23, 30), 0), journal.AboutTime},
		{journal.Between(clock(23, 0), clock(0, 30)), journal.BetweenTime},
		{journal.Within(id("a")), journal.BetweenTime},
		{journal.Before(id("a")), journal.BetweenTime},
		{journal.After(id("a")), journal.BetweenTime},
	} {
		s := journal.Spread{Lo: c.w.Lo, Hi: c.w.Hi}
		if len(c.w.Anchors) > 0 {
			s = journal.Spread{Lo: clock(22, 0), Hi: clock(23, 0)}
		}
		got := c.w.Shift(s, -25*time.Minute)
		assert.Equal(t, journal.When{Kind: c.kind, Lo: s.Lo.Add(-25 * time.Minute), Hi: s.Hi.Add(-25 * time.Minute)}, got)
	}
	s := journal.Spread{Lo: clock(23, 0), Hi: clock(23, 0)}
	assert.Equal(t, at(23, 10), journal.Within(id("a")).Shift(s, 10*time.Minute))
}

func TestWhenFreeze(t *testing.T) {
	wide := journal.Spread{Lo: clock(22, 0), Hi: clock(23, 0)}
	assert.Equal(t, journal.Between(wide.Lo, wide.Hi), journal.After(id("a")).Freeze(wide))
	assert.Equal(t, at(22, 0), journal.Before(id("a")).Freeze(journal.Spread{Lo: clock(22, 0), Hi: clock(22, 0)}))
	about := journal.About(clock(1, 0), 0)
	assert.Equal(t, about, about.Freeze(wide), "what hangs on nothing stays as it is")
}

// Ensure that the shares of a moment over any partition of time add up to one,
// and that none is negative.
func TestSpreadShare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := clock(20, 0).Add(time.Duration(rapid.IntRange(0, 3600*8).Draw(t, "lo")) * time.Second)
		s := journal.Spread{Lo: lo, Hi: lo.Add(time.Duration(rapid.IntRange(0, 7200).Draw(t, "width")) * time.Second)}
		cuts := []time.Time{s.Lo.Add(-time.Hour), s.Hi.Add(time.Hour)}
		for _, sec := range rapid.SliceOfN(rapid.IntRange(-3600, 10800), 0, 20).Draw(t, "cuts") {
			if c := s.Lo.Add(time.Duration(sec) * time.Second); c.After(cuts[0]) && c.Before(cuts[1]) {
				cuts = append(cuts, c)
			}
		}
		if rapid.Bool().Draw(t, "cut at the edge") {
			cuts = append(cuts, s.Lo, s.Hi)
		}
		slices.SortFunc(cuts, time.Time.Compare)
		sum := 0.0
		for i := 1; i < len(cuts); i++ {
			p := s.Share(cuts[i-1], cuts[i])
			assert.GreaterOrEqual(t, p, 0.0)
			sum += p
		}
		assert.InDelta(t, 1, sum, 1e-12)
	})
}

func TestSpreadShareOf(t *testing.T) {
	s := journal.Spread{Lo: clock(23, 0), Hi: clock(0, 0)}
	assert.Equal(t, 0.25, s.Share(clock(23, 0), clock(23, 15)))
	assert.Equal(t, 0.5, s.Share(clock(23, 30), clock(3, 0)))
	assert.Zero(t, s.Share(clock(1, 0), clock(2, 0)))
	assert.Zero(t, s.Share(clock(23, 30), clock(23, 30)))
	assert.Equal(t, clock(23, 30), s.Mid())
	assert.False(t, s.Exact())
	p := journal.Spread{Lo: clock(23, 0), Hi: clock(23, 0)}
	assert.True(t, p.Exact())
	assert.Equal(t, 1.0, p.Share(clock(23, 0), clock(23, 1)), "the lower edge belongs to a stretch")
	assert.Zero(t, p.Share(clock(22, 0), clock(23, 0)), "the upper edge to the next")
}
