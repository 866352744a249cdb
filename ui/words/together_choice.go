package words

import (
	"fmt"
	"time"

	"gloamline/journal"
)

// Chosen is how nights side by side were chosen.
type Chosen struct {
	Count, LeftOut int
	Year           int
	Month          time.Month
	Beat, Person   string
	Trend          journal.Trend
	Moon           string // thin, half or full
	Like           journal.Date
	Hand, None     bool
}

// Title counts the nights: 12 nights, July 2026, Home Beat.
func (c Chosen) Title() string {
	when := ""
	switch {
	case c.None || !c.Like.IsZero():
	case c.Month != 0 && c.Year != 0:
		when = fmt.Sprintf("%s %d", c.Month, c.Year)
	case c.Month != 0:
		when = "every " + c.Month.String()
	case c.Year != 0:
		when = fmt.Sprint(c.Year)
	}
	like := ""
	if !c.Like.IsZero() {
		like = "like " + NightDate(c.Like)
	}
	return commas(number(c.Count, "night", "nights"), like, when, c.Beat)
}

// How says how they were chosen, one sentence, as exports print it.
func (c Chosen) How() string {
	if c.None {
		return "Chosen one by one."
	}
	trend, moon, person, hand, beat := "", "", "", "", ""
	if c.Trend != "" {
		trend = "river " + TrendName(c.Trend)
	}
	if c.Moon != "" {
		moon = MoonSizeName(c.Moon)
	}
	if c.Person != "" {
		person = "with " + c.Person
	}
	if c.Hand {
		hand = "some taken in or out by hand"
	}
	if c.Beat != "" {
		beat = "on " + c.Beat
	}
	what := "all nights fished"
	if !c.Like.IsZero() {
		what = "the nights likest to " + NightDate(c.Like) + " by trend, level and temperature of the river, light at the start and time of the year"
	}
	when := ""
	switch {
	case c.Month != 0 && c.Year != 0:
		when = fmt.Sprintf("in %s %d", c.Month, c.Year)
	case c.Month != 0:
		when = "in " + c.Month.String() + " of any year"
	case c.Year != 0:
		when = fmt.Sprintf("in %d", c.Year)
	}
	s := "Chosen: " + commas(what+spaced(when), beat, person, trend, moon, hand) + "."
	if c.LeftOut > 0 {
		s += fmt.Sprintf(" The %d earliest are left out.", c.LeftOut)
	}
	return s
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

// MoonSizeName says how much of the moon is lit.
func MoonSizeName(size string) string {
	switch size {
	case "thin":
		return "moon under a quarter lit"
	case "half":
		return "moon about half lit"
	case "full":
		return "moon over three quarters lit"
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

// What the ways to choose show while they choose nothing.
func AnyYear() string   { return "year" }
func AnyMonth() string  { return "month" }
func AnyBeat() string   { return "all beats" }
func AnyPerson() string { return "who" }
func AnyTrend() string  { return "any trend of the river" }
func AnyMoon() string   { return "moon" }

// TogetherFile names the file of a picture or table.
func TogetherFile(title string) string {
	out := []rune{}
	for _, r := range title {
		switch {
		case r == ' ' || r == ',':
			if len(out) > 0 && out[len(out)-1] != '-' {
				out = append(out, '-')
			}
		case r == '/' || r == '\\' || r == ':' || r < ' ':
		default:
			out = append(out, r)
		}
	}
	return string(out)
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
	return "Four tables (CSV) are written beside each other: steps of the axes, nights, fish, pools. Their names begin with this one. No file is written over."
}

// PictureHint is said below a picture to be saved.
func PictureHint() string {
	return "Saved as it is shown, with how the nights were chosen. The ending says how: PDF for print, PNG or SVG for a screen. It names pools: think before giving it away."
}

// NotSaved says why figures were not saved.
func NotSaved(err error) Told { return Told{"The figures were not saved.", SaveFault(err)} }
