package words

import (
	"fmt"
	"strings"
	"time"

	"gloamline/journal/units"
	"gloamline/timeline"
)

// ReturnTitle heads the return of one river: Catch return 2026, Larrick Water (Home
// Beat, Kirk Beat).
func ReturnTitle(year int, r timeline.RiverReturn) string {
	name := r.River.Name
	if name == "" {
		name = "a river without a name"
	}
	s := fmt.Sprintf("Catch return %d, %s", year, name)
	if len(r.Beats) > 0 {
		s += " (" + strings.Join(r.Beats, ", ") + ")"
	}
	return s
}

// NoReturn says that nothing of a year is in the journal.
func NoReturn(year int) string {
	return fmt.Sprintf("The journal holds no fishing in %d. Where a return is asked, it is usually asked of a blank season too.", year)
}

// ReturnHeads heads the columns of ReturnCells.
func ReturnHeads() []string {
	return []string{"Month", "Fish", "Number", "Kept", "Weight kept", "Returned", "Weight returned", "Not noted which", "Method"}
}

// ReturnCells is one line of a return, in the columns of ReturnHeads.
func ReturnCells(month time.Month, l timeline.ReturnLine, p Prefs) []string {
	return []string{month.String(), ReturnFish(l), fmt.Sprint(l.Number()), fmt.Sprint(l.Kept.Number), landings(l.Kept, p),
		fmt.Sprint(l.Returned.Number), landings(l.Returned, p), fmt.Sprint(l.Unknown.Number), "fly"}
}

// ReturnTotalCells is the year's line of a return.
func ReturnTotalCells(l timeline.ReturnLine, p Prefs) []string {
	cells := ReturnCells(time.January, l, p)
	cells[0] = "the year"
	return cells
}

// ReturnMissing heads the fish that lack something, ReturnsDue where returns are due;
// NoOwnReminder says how to note one.
func ReturnMissing(n int) string { return "What is missing, of " + counted(n, "fish", "fish") }
func ReturnsDue() string         { return "Where returns are due" }
func NoOwnReminder() string {
	return "You have noted no day of your own. Night, Byelaws and days … keeps one with the beat."
}

// ReturnsTitle, ReturnsHint, AllRods and SaveTableButton are for the dialog of the returns.
func ReturnsTitle() string    { return "Catch returns" }
func AllRods() string         { return "all rods" }
func SaveTableButton() string { return "Save the table …" }
func SaveTableTitle() string  { return "Save the table" }
func SaveTableHint() string {
	return "One row for each line of a month, nil months too, as a table that other programs read (.csv)."
}
func ReturnsFile(year int) string { return fmt.Sprintf("returns %d.csv", year) }

// ReturnFish names the fish of a line: sea trout, finnock, sea trout (kelts).
func ReturnFish(l timeline.ReturnLine) string {
	species := SpeciesName(l.Species)
	if l.Species == "" {
		species = "kind not noted"
	}
	switch l.Class {
	case "":
		return species
	case "kelt":
		return species + " (kelts)"
	}
	return l.Class
}

// landings prints a weight with what stands behind it: 2.4 kg; ~1.2 kg judged; 1 without.
// What was judged is never added to what was weighed.
func landings(l timeline.Landings, p Prefs) string {
	var parts []string
	if l.WeighedN > 0 {
		parts = append(parts, p.total(l.Weighed))
	}
	if l.EstimatedN > 0 {
		parts = append(parts, "~"+p.total(l.Estimated)+" judged")
	}
	if n := l.Unweighed(); n > 0 {
		parts = append(parts, fmt.Sprintf("%d without", n))
	}
	if len(parts) == 0 {
		return "–"
	}
	return strings.Join(parts, "; ")
}

// total prints a sum of weights, in kilograms unless another unit is preferred.
func (p Prefs) total(g units.Grams) string {
	u := p.Weight
	if u == "" {
		u = units.Kilogram
	}
	return units.Weight{G: g}.Format(u)
}

// ReturnDays says how often a month was fished: July: 8 days, 11 rod-days, 7 nights begun, 21.5 h with a fly in the water. Forms
// do not say which they mean where a night goes on after midnight.
func ReturnDays(month string, m timeline.MonthReturn) string {
	return fmt.Sprintf("%s: %s, %s, %s, %s with a fly in the water", month, counted(m.Days, "day", "days"), counted(m.RodDays, "rod-day", "rod-days"), counted(m.Nights, "night begun", "nights begun"), Hours(m.Hours))
}

// ReturnBlanks names the months of a river that were fished without a fish, and those
// not fished: a return asks for nil months too.
func ReturnBlanks(r timeline.RiverReturn) []string {
	var nilMonths, idle []string
	for i, m := range r.Months {
		switch name := time.Month(i + 1).String(); {
		case m.Nil() && m.Days > 0:
			nilMonths = append(nilMonths, name)
		case m.Nil():
			idle = append(idle, name)
		}
	}
	var out []string
	if len(nilMonths) > 0 {
		out = append(out, "Fished, no fish landed: "+and(nilMonths)+".")
	}
	if len(idle) > 0 {
		out = append(out, "Not fished: "+and(idle)+".")
	}
	return out
}

var doubts = map[timeline.Doubt]string{
	timeline.NoWeight: "no weight", timeline.NoFate: "not noted whether returned or kept", timeline.NoSpecies: "kind of fish not noted",
	timeline.TwoDates: "the date is in doubt",
}

// DoubtfulLine says what a return lacks of one fish: Sat 11 July 2026, Larrick Water, sea
// trout 50 cm: no weight (by its length about 1 to 1.5 kg).
func DoubtfulLine(d timeline.DoubtfulFish, p Prefs) string {
	fish := SpeciesName(d.Fish.Species.Or(""))
	if fish == "" {
		fish = "fish"
	}
	if l, ok := d.Fish.Length.Get(); ok {
		fish += " " + p.fish(l)
	}
	var what []string
	for _, k := range d.Doubts {
		s := doubts[k]
		switch {
		case k == timeline.TwoDates:
			s += " (" + NightDate(d.Other) + "?)"
		case k == timeline.NoWeight && d.HasEstimate:
			s += fmt.Sprintf(" (by its length about %s to %s, an estimate)", p.total(d.Estimate.Lo), p.total(d.Estimate.Hi))
		}
		what = append(what, s)
	}
	return NightDate(d.Date) + ", " + commas(d.River, fish) + ": " + strings.Join(what, ", ")
}

// ConditionLine says what estimates of weight rest on.
func ConditionLine(c timeline.Condition) string {
	if c.Own {
		return fmt.Sprintf("Weights by length rest on %d weighed sea trout of this journal: K %.2f, 10 to 90 %% of them %.2f to %.2f.", c.Fish, c.Mid, c.Lo, c.Hi)
	}
	return fmt.Sprintf("Weights by length take K %.2f to %.2f, which holds thin and fat fish; ten weighed sea trout make it your own (%d so far).", c.Lo, c.Hi, c.Fish)
}

// Reminder says where a return is due, as somebody's text put it at some time. It is
// no more than that: the authority decides.
type Reminder struct {
	Where, What string
	Source      string // whose text, and of when
}

// ReturnReminders lists where catch returns are known to be asked.
func ReturnReminders() []Reminder {
	return []Reminder{
		{"England and Wales", "every holder of a licence for salmon and sea trout returns the catch, nil too, by 1 January", "Environment Agency as quoted in the press, December 2017"},
		{"Scotland", "the owner or occupier of the fishery makes the return, month by month and nil months too: hand in your figures there; finnock have been counted apart since 2004", "Scottish Government pages on monitoring; Salmon and Freshwater Fisheries (Consolidation) (Scotland) Act 2003, s. 64"},
		{"Foyle and Carlingford", "every holder of a licence returns catch and times fished, nil too, within 21 days of the end of the season", "Loughs Agency texts of 2015 to 2020"},
		{"Northern Ireland, elsewhere", "returns and tags are asked; no text was at hand", "ask DAERA"},
		{"Ireland", "logbook and unused tags go back within 7 days of the end of the licence, by 19 October at the latest, with nothing caught too", "S.I. 585/2018 and its yearly successors"},
		{"Norway", "everybody who fishes reports to the holder of the rights, on some rivers the same day, blanks too", "Norwegian Environment Agency page on reporting catches"},
	}
}

// Line prints a reminder in one sentence.
func (r Reminder) Line() string {
	return r.Where + ": " + r.What + " (" + r.Source + ")."
}

// ReturnCaution stands under every return.
func ReturnCaution() string {
	return "Rules on returns change every season. What counts is what the authority and the owner of the water say this year: ask them, and note with the beat what they said and when."
}
