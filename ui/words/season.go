package words

import (
	"fmt"
	"math"
	"strings"

	"gloamline/journal"
	seasons "gloamline/timeline/season"
	"gloamline/timeline/tally"
)

// SeasonTitle says which nights a season is made from: 48 nights, 19 May 2025 to 10
// September 2026.
func SeasonTitle(s *seasons.Season) string {
	nights := number(s.Nights, "night", "nights")
	switch {
	case s.Nights == 0:
		return "No nights"
	case s.From == s.To:
		return nights + ", " + dayAndMonth(s.From)
	}
	return nights + ", " + dayAndMonth(s.From) + " to " + dayAndMonth(s.To)
}

func dayAndMonth(d journal.Date) string { return fmt.Sprintf("%d %s %d", d.Day, d.Month, d.Year) }

// MeasureName says which contacts count as a fish.
func MeasureName(m seasons.Measure) string {
	return map[seasons.Measure]string{
		seasons.AllContacts: "every contact", seasons.Touched: "fish that touched",
		seasons.Hooked: "fish hooked", seasons.LandedOnly: "fish landed",
	}[m]
}

// VerdictName is a verdict in a word or two.
func VerdictName(v seasons.Verdict) string { return string(v) }

// SeasonLine says what the season comes to: hours first.
func SeasonLine(s *seasons.Season) string {
	if s.Nights == 0 {
		return "No night is let through."
	}
	blank := ", " + plainNumber(s.Blank) + " of them blank"
	if s.Nights == 1 {
		blank = ""
	}
	out := fmt.Sprintf("%s rod-hours with a fly in the water on %s%s; %s.", someHours(s.Hours), number(s.Nights, "night", "nights"), blank, Tally(s.Totals))
	if s.Rate != nil {
		out += " " + capital(MeasureName(s.View.Measure)) + ": " + perHour(*s.Rate, s.Nightly) + "."
	}
	return out
}

func plainNumber(n int) string {
	if n == 0 {
		return "none"
	}
	return fmt.Sprint(n)
}

// UnplacedLine says how many of the fish counted could not be set against hours, flies or
// pools; nothing if all could.
func UnplacedLine(s *seasons.Season) string {
	p := s.Placed
	var parts []string
	for _, x := range []struct {
		n    int
		what string
	}{
		{p.NoRun, "came outside every run and are in no rate"},
		{p.NoFly, "to an unknown fly"},
		{p.NoPool, "in an unknown pool"},
		{p.Wide, "at a time known only to half an hour or worse, shared out over it"},
	} {
		if x.n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", x.n, x.what))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return fmt.Sprintf("Of %s: %s.", number(p.Fish, "fish", "fish"), strings.Join(parts, "; "))
}

// perHour prints a rate with the interval to be believed: that of resampled nights where it
// is wider than the exact one, since fish of one night are not independent.
func perHour(r tally.Rate, nightly *tally.Interval) string {
	i := r.Interval
	if nightly != nil {
		i.Lo, i.Hi = math.Min(i.Lo, nightly.Lo), math.Max(i.Hi, nightly.Hi)
	}
	return fmt.Sprintf("%s an hour (%s)", rate(r.Value), between(i, rate))
}

// rate prints a rate with two digits at most.
func rate(v float64) string {
	switch {
	case v == 0:
		return "0"
	case v < 0.01:
		return "under 0.01"
	case v < 0.995:
		return fmt.Sprintf("%.2f", v)
	case v < 9.95:
		return fmt.Sprintf("%.1f", v)
	}
	return fmt.Sprintf("%.0f", v)
}

func between(i tally.Interval, print func(float64) string) string {
	if math.IsInf(i.Hi, 1) {
		return print(i.Lo) + " or more"
	}
	return print(i.Lo) + " to " + print(i.Hi)
}

// SeasonRate prints the rate of a row: with its interval if it has enough, else the hours
// and, for a blank, how much may be missed all the same.
func SeasonRate(r seasons.Row) string {
	switch {
	case r.Hours == 0:
		return "never fished"
	case r.Rate != nil && r.Fish > 0:
		return perHour(*r.Rate, r.Nightly)
	case r.Most != nil:
		return fmt.Sprintf("none, up to %s an hour possible", rate(*r.Most))
	}
	return "not enough yet"
}

// SeasonShare prints the share of a row.
func SeasonShare(r seasons.Row) string {
	if r.Share == nil {
		return "none"
	}
	out := fmt.Sprintf("%s of %s", count(r.Fish), count(r.Of))
	if r.Enough {
		out += fmt.Sprintf(", %.0f %% (%.0f to %.0f)", 100*r.Share.Value, 100*r.Share.Interval.Lo, 100*r.Share.Interval.Hi)
	}
	return out
}

// count prints an expected count: whole where it is, else with one digit.
func count(v float64) string {
	if math.Abs(v-math.Round(v)) < 0.05 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.1f", v)
}

// TestInFull is for the fold in which statisticians look: the one test of a table.
func TestInFull(t *seasons.Table) string {
	if t.Test == nil {
		return ""
	}
	how := fmt.Sprintf("%d draws", t.Test.Draws)
	if t.Test.Exact {
		how = "exact"
	}
	like := ""
	if t.Like != "" {
		like = ", compared inside each " + t.Like
	}
	return fmt.Sprintf("one test of %s%s: p %s (%s); corrected by Holm for %s looked at: %s",
		number(t.Test.Rows, "row", "rows"), like, pValue(t.Test.P), how, number(t.Test.Looked, "table", "tables"), pValue(t.Test.Holm))
}

func pValue(p float64) string {
	if p < 0.001 {
		return "under 0.001"
	}
	return fmt.Sprintf("%.2g", p)
}
