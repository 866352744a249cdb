package words

import (
	"fmt"
	"strconv"
	"time"

	"gloamline/journal"
	seasons "gloamline/timeline/season"
)

// What a choice of nights is called, in every room and on every export.

// SeasonFilter says what was let through, for every page and file that shows figures:
// nothing if everything was. beat and person give the names of records.
func SeasonFilter(v seasons.View, beat, person func(journal.ID) string) string {
	f := v.Filter
	picked := ""
	if n := len(f.Trips); n > 0 {
		picked = number(n, "night picked", "nights picked")
	}
	return commas(evenings(f), spelt("nights of ", Or(named(f.Years, strconv.Itoa))), Or(named(f.Months, time.Month.String)), Or(named(f.Beats, beat)),
		trendsSaid(f.Trends), spelt("rods of ", Or(named(f.People, person))), clientsSaid(f.Clients), picked)
}

// evenings says the first and the last evening let through.
func evenings(f seasons.Filter) string {
	switch {
	case !f.From.IsZero() && !f.To.IsZero():
		return dayAndMonth(f.From) + " to " + dayAndMonth(f.To)
	case !f.From.IsZero():
		return "from " + dayAndMonth(f.From)
	case !f.To.IsZero():
		return "up to " + dayAndMonth(f.To)
	}
	return ""
}

func trendsSaid(list []journal.Trend) string {
	return spelt("river ", Or(named(list, func(t journal.Trend) string {
		if t == "" {
			return "not noted"
		}
		return TrendName(t)
	})))
}

func clientsSaid(c seasons.Clients) string {
	switch c {
	case seasons.ClientNights:
		return "nights with a client"
	case seasons.OwnNights:
		return "nights without a client"
	}
	return ""
}

func named[T any](list []T, name func(T) string) []string {
	var names []string
	for _, v := range list {
		names = append(names, name(v))
	}
	return names
}

// spelt puts a word before what is not empty.
func spelt(before, s string) string {
	if s == "" {
		return ""
	}
	return before + s
}

// AlsoThis and NotThis offer one more to be chosen, and one to be left out.
func AlsoThis(name string) string { return "and " + name }
func NotThis(name string) string  { return "not " + name }

// NotNotedTrend is the choice of nights on which nothing was noted of the river.
func NotNotedTrend() string { return "River not noted" }

// What the ways to choose show while they choose nothing.
func AnyYear() string   { return "year" }
func AnyMonth() string  { return "month" }
func AnyBeat() string   { return "all beats" }
func AnyPerson() string { return "who" }
func AnyTrend() string  { return "any trend of the river" }
func AnyRiver() string  { return "river" }
func AnyMoon() string   { return "moon" }

// AnyClients names a choice of nights with clients or without; of neither it says what
// is chosen by.
func AnyClients(c seasons.Clients) string {
	switch c {
	case seasons.ClientNights:
		return "clients"
	case seasons.OwnNights:
		return "no client"
	}
	return "party"
}

// OtherEvenings is the choice that asks for the first and the last evening.
func OtherEvenings() string { return "from … to …" }

// EveningsShort is a first and a last evening in a narrow column: 4 Jul – 20 Aug.
func EveningsShort(from, to journal.Date) string {
	day := func(d journal.Date) string {
		if d.IsZero() {
			return ""
		}
		return fmt.Sprintf("%d %.3s", d.Day, d.Month)
	}
	switch {
	case from.IsZero():
		return "up to " + day(to)
	case to.IsZero():
		return "from " + day(from)
	}
	return day(from) + " – " + day(to)
}

// EveningsTitle, EveningsHint and the labels are of the dialog that asks for evenings.
func EveningsTitle() string { return "Nights from one evening to another" }
func EveningsHint() string {
	return "Both are counted in. Leave one empty for no end there, both for nights of any date. Write them such as 4 July, 4/7/2026 or yesterday."
}
func EveningFrom() string { return "From the evening of" }
func EveningTo() string   { return "To the evening of" }
func TakeButton() string  { return "Take these nights" }

// EveningsTurned says that the last evening lies before the first.
func EveningsTurned() error {
	return Told{"The last evening is before the first.", "Turn them round, or leave one empty."}
}
