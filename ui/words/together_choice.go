package words

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"gloamline/journal"
	seasons "gloamline/timeline/season"
)

// Chosen is how nights side by side were chosen.
type Chosen struct {
	Count, LeftOut int
	Filter         seasons.Filter
	Beat, Person   func(journal.ID) string // the names of records
	Moons          []string                // thin, half or full
	Like           journal.Date
	Hand, None     bool
}

// mostNamed is how many of a kind a title names.
const mostNamed = 3

// Title counts the nights: 12 nights, July 2026, Home Beat.
func (c Chosen) Title() string {
	when, like, beats := "", "", ""
	f := c.Filter
	if !c.None && c.Like.IsZero() {
		months := titled(f.Months, time.Month.String, "month", "months")
		years := titled(f.Years, strconv.Itoa, "year", "years")
		switch {
		case months != "" && years != "":
			when = months + " " + years
		case months != "" && evenings(f) == "":
			when = every(f.Months, months)
		case months != "":
			when = months
		default:
			when = years
		}
		when = commas(evenings(f), when)
	}
	if !c.Like.IsZero() {
		like = "like " + NightDate(c.Like)
	}
	if !c.None {
		beats = titled(f.Beats, c.Beat, "beat", "beats")
	}
	return commas(number(c.Count, "night", "nights"), like, when, beats)
}

// every says that months are of any year.
func every(list []time.Month, months string) string {
	if len(list) > mostNamed {
		return months + " of any year"
	}
	return "every " + months
}

// titled joins a few names, and counts many.
func titled[T any](list []T, name func(T) string, one, many string) string {
	if len(list) > mostNamed {
		return number(len(list), one, many)
	}
	return join(" and ", named(list, name))
}

// How says how they were chosen, one sentence, as exports print it.
func (c Chosen) How() string {
	if c.None {
		return "Chosen one by one."
	}
	f := c.Filter
	hand := ""
	if c.Hand {
		hand = "some taken in or out by hand"
	}
	what := "all nights fished"
	if !c.Like.IsZero() {
		what = "the nights likest to " + NightDate(c.Like) + " by trend, level and temperature of the river, light at the start and time of the year"
	}
	s := "Chosen: " + commas(what+spaced(when(f)), spelt("on ", Or(named(f.Beats, c.Beat))), spelt("with ", Or(named(f.People, c.Person))),
		clientsSaid(f.Clients), trendsSaid(f.Trends), moonsSaid(c.Moons), hand) + "."
	if c.LeftOut > 0 {
		s += fmt.Sprintf(" The %d earliest are left out.", c.LeftOut)
	}
	return s
}

// when says when nights were, within a sentence: in July or August 2026.
func when(f seasons.Filter) string {
	span := evenings(f)
	years := Or(named(f.Years, strconv.Itoa))
	months := Or(named(f.Months, time.Month.String))
	in := ""
	switch {
	case months != "" && years != "":
		in = "in " + months + " " + years
	case months != "" && span == "":
		in = "in " + months + " of any year"
	case months+years != "":
		in = "in " + months + years
	}
	if !f.From.IsZero() && !f.To.IsZero() {
		span = "from " + span
	}
	return commas(span, in)
}

func moonsSaid(sizes []string) string {
	if len(sizes) == 0 {
		return ""
	}
	return "moon " + Or(named(sizes, moonSaid))
}

func spaced(s string) string {
	if s == "" {
		return ""
	}
	return " " + s
}

// LikeMeasure says by what nights are called alike.
func LikeMeasure() string {
	return "Likeness: same trend 0, another 2; each 10 cm of level on one beat, 2 °C of the river, half decade of light at the start and 30 days of the year count 1, at most 2; what is not known counts 1. The least sum is likest."
}

func moonSaid(size string) string {
	switch size {
	case "thin":
		return "under a quarter lit"
	case "half":
		return "about half lit"
	case "full":
		return "over three quarters lit"
	}
	return size
}

// OrderName names the order of the nights.
func OrderName(order string) string {
	switch order {
	case "darkest":
		return "darkest light first"
	case "date":
		return "by date"
	case "level":
		return "lowest river first"
	case "catch":
		return "most landed first"
	}
	return order
}

// PictureName names a picture of nights side by side.
func PictureName(p string) string {
	switch p {
	case "joined":
		return "Clock and light"
	case "strips":
		return "Night under night"
	case "pools":
		return "Pool by pool"
	}
	return p
}

// longestName is how long a name made up for a file is at most, in characters.
const longestName = 48

// TogetherFile names the file of a picture or table. Of a long title it takes what comes first.
func TogetherFile(title string) string {
	out := ""
	for _, word := range strings.FieldsFunc(title, func(r rune) bool { return r == ' ' || r == ',' || r == '/' || r == '\\' || r == ':' || r < ' ' }) {
		if len([]rune(out))+1+len([]rune(word)) > longestName {
			break
		}
		out = strings.TrimPrefix(out+"-"+word, "-")
	}
	return out
}

// TogetherHint is the footer's line in the room.
func TogetherHint() string {
	return "Up and down change the night, left and right the fish; 1 to 5 the axis; Enter opens the night; F1 shows all keys"
}

// NothingTogether is shown where no night is chosen.
func NothingTogether(journal bool) string {
	if !journal {
		return "No night is written down yet. Once there are some, they are laid side by side here."
	}
	return "No night is chosen. Tick some in the list, or widen the choice above it."
}

// PictureHelp says what a picture of nights side by side shows, one sentence.
func PictureHelp(p string) string {
	switch p {
	case "joined":
		return "Shows the same fish along the clock above and along the light below, over the hours fished."
	case "strips":
		return "Shows one strip a night; up to four nights lie over each other as curves too."
	case "pools":
		return "Shows the fish of all nights on one sketch, with the hours at each pool."
	}
	return ""
}

// PicksTitle names the list from which nights are picked.
func PicksTitle() string { return "Nights to lay side by side" }

// OtherNights heads the nights that are not laid with the others.
func OtherNights() string { return "Other nights" }

// PickTip says what a click on a tick does.
func PickTip(in bool) string {
	if in {
		return "Takes this night out (Space)"
	}
	return "Lays this night with the others (Space)"
}

// Buttons of the room.
func WeighButton() string   { return "Light or clock?" }
func LikeButton() string    { return "Like this one" }
func NoneButton() string    { return "None" }
func SeasonButton() string  { return "Latest season" }
func PictureButton() string { return "Picture" }
func FiguresButton() string { return "Figures" }

// MonthName names a month of any year in a narrow column.
func MonthName(m time.Month) string { return m.String()[:3] }

// FiguresTitle and FiguresHint head the dialog that saves tables.
func FiguresTitle() string { return "Save the figures" }
func FiguresHint() string {
	return "Six tables (CSV) are written beside each other: steps of the axes, nights, fish, pools, runs, changes of flies. Their names begin with this one. No file is written over."
}

// PictureHint is said below a picture to be saved.
func PictureHint() string {
	return "Saved as it is shown, with how the nights were chosen. The ending says how: PDF for print, PNG or SVG for a screen. It names pools: think before giving it away."
}

// NotSaved says why figures were not saved.
func NotSaved(err error) Told { return Told{"The figures were not saved.", SaveFault(err)} }
