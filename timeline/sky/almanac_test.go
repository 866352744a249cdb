package sky

import (
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal/units"
)

// window is the group of rows of events_public.csv with one window_id.
type window struct {
	id         string
	place      Place
	start, end time.Time
	kind       string
	rows       []row
}

func windows(t testing.TB) []*window {
	var list []*window
	for _, r := range table(t, "events_public.csv") {
		if len(list) == 0 || list[len(list)-1].id != r["window_id"] {
			list = append(list, &window{
				id:    r["window_id"],
				place: Place{units.Degrees(r.num(t, "lat")), units.Degrees(r.num(t, "lon"))},
				start: r.time(t, "start_utc"), end: r.time(t, "end_utc"), kind: r["window"],
			})
		}
		w := list[len(list)-1]
		w.rows = append(w.rows, r)
	}
	return list
}

// Ensure that lists of events agree with npm astronomy-engine 2.1.19 in kind,
// order and count, their times within max(3 s, 0.006 degrees of altitude), and that lines
// never crossed have the same state and margin.
func TestAlmanacAgainstTable(t *testing.T) {
	list := windows(t)
	require.Len(t, list, 23)
	events, states := 0, 0
	for _, w := range list {
		a := NewSpan(w.start, w.end).Almanac(w.place)
		for l := range a.Courses {
			c := a.Courses[l]
			if w.kind == "civil_day" && c.Line != SunLine && c.Line != MoonLine {
				continue // the table holds only risings and settings of these windows
			}
			var want []row
			for _, r := range w.rows {
				if name := r["event"]; name == "no_"+c.Line.String() {
					states++
					margin := r.num(t, "margin_deg")
					assert.InDelta(t, margin, float64(c.Margin), 0.006, "%s %s", w.id, name)
					if margin > 0.01 {
						assert.Equal(t, r["state"], c.State.String(), "%s %s", w.id, name)
						assert.Empty(t, c.Events, "%s %s", w.id, name)
					}
				} else if !strings.HasSuffix(name, "_true_limb") && kindNamed(t, name).Line() == c.Line {
					want = append(want, r)
				}
			}
			if !assert.Len(t, c.Events, len(want), "%s %s", w.id, c.Line) {
				continue
			}
			for i, e := range c.Events {
				r := want[i]
				rate := r.num(t, "rate_deg_per_min")
				tol := max(3, 60*0.006/math.Abs(rate))
				assert.Equal(t, r["event"], e.Kind.String(), w.id)
				assert.InDelta(t, 0, e.At.Sub(r.time(t, "utc")).Seconds(), tol, "%s %s", w.id, e.Kind)
				assert.InDelta(t, rate, e.Rate, 0.001, "%s %s", w.id, e.Kind)
				events++
			}
		}
	}
	// 172 events less 36 by the actual radius of the sun; 32 rows less 5 of the same.
	assert.Greater(t, events, 130)
	assert.Greater(t, states, 25)
}

func kindNamed(t testing.TB, name string) Kind {
	for k := range kindCount {
		if k.String() == name {
			return k
		}
	}
	if !strings.HasPrefix(name, "no_") {
		t.Fatalf("no kind named %s", name)
	}
	return kindCount
}

// Ensure that sunrise and sunset agree with Reda & Andreas (2004): the worked
// example and table A2.1, rows W07-W14 of worked_examples.csv. Their algorithm
// serves one day of UT, so that the sunset of the first row, 17:20:19 local time,
// is that of the evening before.
func TestWorkedEvents(t *testing.T) {
	at := func(y int, m time.Month, d, h, mi int, s float64) time.Time {
		return time.Date(y, m, d, h, mi, 0, 0, time.UTC).Add(time.Duration(s * float64(time.Second)))
	}
	for _, c := range []struct {
		lat, lon  units.Degrees
		start     time.Time
		rise, set time.Time
	}{
		{39.742476, -105.1786, at(2003, 10, 17, 0, 0, 0), at(2003, 10, 17, 13, 12, 43), at(2003, 10, 17, 0, 20, 19)},
		{35, 0, at(1994, 1, 2, 0, 0, 0), at(1994, 1, 2, 7, 8, 12.8), at(1994, 1, 2, 16, 59, 55.9)},
		{-35, 0, at(1996, 7, 5, 0, 0, 0), at(1996, 7, 5, 7, 8, 15.4), at(1996, 7, 5, 17, 1, 4.5)},
		{-35, 0, at(2004, 12, 4, 0, 0, 0), at(2004, 12, 4, 4, 38, 57.1), at(2004, 12, 4, 19, 2, 2.5)},
	} {
		events := NewSpan(c.start, c.start.Add(24*time.Hour)).Almanac(Place{c.lat, c.lon}).Course(SunLine).Events
		require.Len(t, events, 2)
		for _, e := range events {
			want := c.set
			if e.Kind == Sunrise {
				want = c.rise
			}
			assert.InDelta(t, 0, e.At.Sub(want).Seconds(), 3, "%v", e)
		}
	}
}

// threshold is altitude less its line, from the full series.
func threshold(l Line, at time.Time, p Place) float64 {
	pos := At(at, p)
	if l == MoonLine {
		return float64(pos.Moon.Alt+pos.MoonRadius()) + horizonLift
	}
	return float64(pos.Sun.Alt) - sunAltitude[l]
}

// Ensure that over any window events lie strictly inside, in order, alternate in
// direction, and stand on their lines; that no event is missed, as a scan of the
// full series every five minutes shows; and that extremes bound every sample.
func TestAlmanacProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		start, p := anyStart(t), anyPlace(t)
		end := start.Add(time.Duration(rapid.Int64Range(1, 50*3600).Draw(t, "seconds")) * time.Second)
		a := NewSpan(start, end).Almanac(p)
		for _, c := range a.Courses {
			before := start
			side := threshold(c.Line, start, p) >= 0
			for _, e := range c.Events {
				assert.True(t, e.At.After(before) && e.At.Before(end), "%v %v", e, before)
				assert.Equal(t, c.Line, e.Kind.Line())
				assert.Equal(t, !side, e.Kind.Rising(), "alternate")
				// 0.01 s of time and 1e-6 degrees of the fit.
				assert.InDelta(t, 0, threshold(c.Line, e.At, p), 1e-6+math.Abs(e.Rate)*0.01/60)
				before, side = e.At, e.Kind.Rising()
			}
			next := 0
			side = threshold(c.Line, start, p) >= 0
			for at := start; at.Before(end); at = at.Add(5 * time.Minute) {
				v := threshold(c.Line, at, p)
				for next < len(c.Events) && !c.Events[next].At.After(at) {
					side = c.Events[next].Kind.Rising()
					next++
				}
				if math.Abs(v) > 1e-5 {
					assert.Equal(t, side, v >= 0, "%v at %v", c.Line, at)
				}
				pos := At(at, p)
				alt := pos.Sun.Alt
				if c.Line == MoonLine {
					alt = pos.Moon.Alt
				}
				const slack = 0.02 // the moon's limb is highest a moment apart from its centre
				assert.True(t, alt > c.Lowest.Alt-slack && alt < c.Highest.Alt+slack, "%v at %v", c.Line, at)
			}
		}
	})
}

// Ensure that polar day and polar night are states, with the extreme and when.
func TestPolarStates(t *testing.T) {
	p := Place{69.66, 24.5}
	summer := time.Date(2025, 6, 21, 10, 0, 0, 0, time.UTC)
	c := NewSpan(summer, summer.Add(24*time.Hour)).Almanac(p).Course(SunLine)
	assert.Equal(t, AlwaysAbove, c.State)
	// Lowest altitude = latitude + declination - 90 = 69.66 + 23.44 - 90 = 3.10, at
	// local midnight, 22:24 UTC with the equation of time of -2 minutes.
	assert.InDelta(t, 3.10, float64(c.Lowest.Alt), 0.01)
	assert.InDelta(t, 0, c.Lowest.At.Sub(time.Date(2025, 6, 21, 22, 24, 0, 0, time.UTC)).Minutes(), 2)
	winter := time.Date(2025, 12, 21, 11, 0, 0, 0, time.UTC)
	a := NewSpan(winter, winter.Add(24*time.Hour)).Almanac(p)
	assert.Equal(t, AlwaysBelow, a.Course(SunLine).State)
	assert.Equal(t, Crosses, a.Course(CivilLine).State)
	assert.InDelta(t, -3.10, float64(a.Course(SunLine).Highest.Alt), 0.01)
}

// Ensure that a civil day may have two moonrises, two moonsets or none (npm
// astronomy-engine 2.1.19, windows P018-P022), and that clock changes make nights of 23 and 25 hours.
func TestMoonLists(t *testing.T) {
	count := func(start time.Time, hours int, p Place) (rises, sets int) {
		for _, e := range NewSpan(start, start.Add(time.Duration(hours)*time.Hour)).Almanac(p).Course(MoonLine).Events {
			if e.Kind == Moonrise {
				rises++
			} else {
				sets++
			}
		}
		return rises, sets
	}
	for _, w := range windows(t) {
		hours := int(w.end.Sub(w.start).Hours())
		rises, sets := count(w.start, hours, w.place)
		switch w.id {
		case "P018":
			assert.Equal(t, [2]int{1, 2}, [2]int{rises, sets})
		case "P019":
			assert.Equal(t, [2]int{2, 1}, [2]int{rises, sets})
		case "P020":
			assert.Zero(t, rises)
		case "P021":
			assert.Zero(t, sets)
		case "P022":
			assert.Equal(t, [2]int{0, 0}, [2]int{rises, sets})
		case "P010":
			assert.Equal(t, 23, hours)
		case "P011":
			assert.Equal(t, 25, hours)
		}
	}
}

// Ensure that the list of all events is in order of time.
func TestEventsInOrder(t *testing.T) {
	noon := time.Date(2026, 4, 15, 11, 0, 0, 0, time.UTC)
	var names []string
	for _, e := range NewSpan(noon, noon.Add(24*time.Hour)).Almanac(Place{55.6, -2.73}).Events() {
		names = append(names, e.Kind.String())
	}
	assert.Subset(t, names, []string{"sunset", "sunrise", "moonset"})
	only := strings.Join(names, " ")
	dusk := "sunset civil_dusk nautical_dusk astronomical_dusk"
	assert.Contains(t, strings.ReplaceAll(strings.ReplaceAll(only, "moonset ", ""), "moonrise ", ""), dusk)
}

// Ensure that a grazing sun is said to touch: at this latitude the lowest sun of 20
// June 2026 is within a hundredth of a degree of its setting line.
func TestTouches(t *testing.T) {
	noon := time.Date(2026, 6, 20, 11, 0, 0, 0, time.UTC)
	s := NewSpan(noon, noon.Add(24*time.Hour))
	at := func(lat units.Degrees) Course { return s.Almanac(Place{lat, 15}).Course(SunLine) }
	low, high := units.Degrees(65.0), units.Degrees(67.0) // sets; does not set
	require.Equal(t, Crosses, at(low).State)
	require.Equal(t, AlwaysAbove, at(high).State)
	for high-low > 1e-7 {
		if mid := (low + high) / 2; at(mid).State == Crosses {
			low = mid
		} else {
			high = mid
		}
	}
	set, not := at(low-0.0001), at(high+0.0001)
	require.Len(t, set.Events, 2, "a pair closer together than the samples")
	assert.Less(t, set.Events[1].At.Sub(set.Events[0].At), 10*time.Minute)
	assert.True(t, set.Touches() && not.Touches())
	assert.InDelta(t, 0.0001, float64(not.Margin), 0.00002)
	assert.False(t, at(high+0.02).Touches())
}
