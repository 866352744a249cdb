package words

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
)

// GuestSentence is the one plain sentence over a night: Anna and Colm: 4 fish landed, 1
// came off.
func GuestSentence(rods []string, t timeline.Totals) string {
	who := party(rods)
	if who != "" {
		who += ": "
	}
	landed := some(t.Landed, "fish landed", "fish landed")
	lost := ""
	if t.Lost > 0 {
		lost = fmt.Sprintf("%d came off", t.Lost)
	}
	if landed == "" && lost == "" {
		if t.Touches+t.Shows > 0 {
			return sentence(who + commas("no fish landed", some(t.Touches, "touch", "touches"), some(t.Shows, "follow or boil", "follows and boils")))
		}
		return sentence(who + "no fish")
	}
	return sentence(who + commas(landed, lost))
}

// GuestFish is a fish as it is said large: 3. 23:52, landed, sea trout, about 2 lb 4 oz.
func GuestFish(n int, clock string, rest ...string) string {
	return fmt.Sprintf("%d. ", n) + sentence(commas(append([]string{clock}, rest...)...))
}

// GuestMoment is a moment of a night that is played: 23:05, trees grey.
func GuestMoment(clock, rung string) string { return commas(clock, rung) }

// GuestKeys says what keys do.
func GuestKeys(measured bool) string {
	s := "Space plays   ← → fish by fish   Home all of it   + − speed   "
	if !measured {
		s += "C true size   "
	}
	return s + "Escape leaves"
}

// GuestScale says how large a fly is drawn.
func GuestScale(measured bool) string {
	if measured {
		return "at true size on this screen"
	}
	return "not at true size; the rule beside it is 1 in"
}

// GuestAct names a control: 1 before, 2 play, 3 next.
func GuestAct(act int, playing bool) string {
	switch {
	case act == 1:
		return "The fish before"
	case act == 3:
		return "The next fish"
	case playing:
		return "Pause"
	}
	return "Play"
}

// The words of the place where a screen is measured.
func CardTitle() string { return "How large is this screen?" }
func CardHelp() string {
	return "Hold a bank card flat against the frame. Make it as wide as the card: ← and → by a little, ↓ and ↑ by more, or drag its edge. Enter keeps it for this screen; Escape leaves it as it was."
}
func CardWidth() string { return "85.6 mm, a bank card's width" }

// OnePool stands for a pool whose name is not shown.
func OnePool() string { return "one pool" }

// PastSentence is the sentence over all nights on a pool: Alder Pool, Home Beat: 12
// nights, 9.8 rod-hours, 14 landed, 5 lost.
func PastSentence(pool string, nights int, hours time.Duration, t timeline.Totals) string {
	return sentence(pool + ": " + commas(number(nights, "night", "nights"), PastHours(hours), Tally(t)))
}

// PastOver is what stands over them on a screen.
func PastOver(pool string) string { return "All our nights on " + pool }

// PastSaid is the same, said large: 14 landed, 5 came off, in 12 nights and 9.8 rod-hours.
func PastSaid(nights int, hours time.Duration, t timeline.Totals) string {
	what := "nothing landed"
	if t.Landed > 0 {
		what = fmt.Sprintf("%d landed", t.Landed)
	}
	if t.Lost > 0 {
		what = commas(what, fmt.Sprintf("%d came off", t.Lost))
	}
	return sentence(what + " in " + number(nights, "night", "nights") + " and " + PastHours(hours))
}

// GuestTouches are what else came; empty if nothing.
func GuestTouches(t timeline.Totals) string {
	return commas(some(t.Touches, "touch", "touches"), some(t.Shows, "follow or boil", "follows and boils"))
}

// PastHours are hours with a fly in the water, summed over rods: 9.8 rod-hours.
func PastHours(d time.Duration) string { return fmt.Sprintf("%.1f rod-hours", d.Hours()) }

// PastNight is one of the nights: Saturday 4 July 2026: 0.6 rod-hours, 1 landed.
func PastNight(date string, hours time.Duration, t timeline.Totals) string {
	return date + ": " + commas(PastHours(hours), Tally(t))
}

// PastFish is a fish below its night.
func PastFish(said, more string) string { return "   " + strings.TrimSuffix(said, ".") + ", " + more }

// PastPlayed says how many nights have passed.
func PastPlayed(nights int, hours time.Duration, t timeline.Totals) string {
	return commas(number(nights, "night", "nights"), PastHours(hours)) + "; " + Tally(t)
}

// ShowsName names a thing that may be shown, at its tick.
func ShowsName(s journal.Shows) string {
	switch s {
	case journal.ShowPools:
		return "Names of pools"
	case journal.ShowWater:
		return "Names of river and beat"
	case journal.ShowPlaces:
		return "Exact places and times"
	case journal.ShowCoordinates:
		return "Coordinates"
	case journal.ShowPeople:
		return "Other people's names"
	case journal.ShowWeights:
		return "Weights and lengths"
	case journal.ShowNotes:
		return "Notes"
	case journal.ShowPhoto:
		return "Photos"
	}
	return string(s)
}

// ShowsHelp says what showing it, or hiding it, means.
func ShowsHelp(s journal.Shows) string {
	switch s {
	case journal.ShowPools:
		return "Shows pools by name, else by number in the order fished."
	case journal.ShowWater:
		return "Shows the names of river and beat."
	case journal.ShowPlaces:
		return "Shows the true sketch and times to the minute, else pools as boxes and times to five minutes."
	case journal.ShowCoordinates:
		return "Shows where the beat lies, in degrees; with exact places alone."
	case journal.ShowPeople:
		return "Shows what other people are called, else they are another rod."
	case journal.ShowWeights:
		return "Shows what the fish weighed and measured."
	case journal.ShowNotes:
		return "Shows what was written down, but private notes and those that name what is hidden."
	case journal.ShowPhoto:
		return "Shows photos of the fish, without anything they say of themselves."
	}
	return ""
}

// CompareNames orders names as people look for them.
func CompareNames(a, b string) int {
	return cmp.Or(strings.Compare(strings.ToLower(a), strings.ToLower(b)), strings.Compare(a, b))
}

// GuestFile and PoolFile name files of what is shown.
func GuestFile(d journal.Date) string { return "Night " + d.String() }
func PoolFile(pool string) string     { return "All nights on " + plainName(pool) }

// plainName is a name without what a file's may not have.
func plainName(s string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, s)
}

// The words of the room in which something is shown.
func Anybody() string                { return "anybody else" }
func GuestTo(name string) string     { return "For " + name }
func ThisNight() string              { return "This night" }
func AllNightsOn(pool string) string { return "All nights on " + pool }
func GuestMaySee() string            { return "May see" }
func GuestHint() string {
	return "Enter: the whole screen   Space: play   ← →: fish by fish   1 to 8: what may be seen   Ctrl+P: save"
}
func GuestRounds() string {
	return "Places hidden: times to five minutes, light to a quarter of an hour, pools as boxes in the order fished."
}
func GuestReadOnly() string {
	return "This journal may only be read: what is chosen here is forgotten when it is closed."
}
func GuestRemembers() string { return "Remembered in the journal, for each person." }
func GuestPageHint() string {
	return "This is all that leaves. PDF, PNG and SVG are pages; HTML plays in a browser without a network; GIF is a picture that moves."
}

// InARow puts sentences one after the other.
func InARow(parts ...string) string { return join(" ", parts) }
