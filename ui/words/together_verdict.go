package words

import (
	"fmt"
	"time"

	"gloamline/timeline"
)

// The least that may be compared: a cell of so many rod-hours and nights, a table of so
// many fish. Our own choice.
const (
	leastHours  = 5 * time.Hour
	leastNights = 3
	leastFish   = 10
)

// Verdict says what may be concluded from nights laid over each other, given the same
// nights along the light: usually that it is not enough. It compares no rate: that is
// for a season, with intervals.
func Verdict(light *timeline.Overlay) string {
	t := light.Totals
	fish := t.Landed + t.Lost
	have := fmt.Sprintf("%s in %s on %s", number(fish, "fish hooked", "fish hooked"), RodHours(t.InWater), number(len(light.Nights), "night", "nights"))
	full, hours := 0, 0
	for _, b := range light.Bins {
		if b.Water > 0 {
			hours++
		}
		if b.Water >= leastHours && b.Nights >= leastNights {
			full++
		}
	}
	switch {
	case len(light.Nights) == 0:
		return "No night is chosen."
	case len(light.Nights) == 1:
		return "One night shows what happened, not what usually happens: " + have + "."
	case len(light.Nights) < leastNights:
		return fmt.Sprintf("Not enough yet to say whether light or the clock tells more: %s; it takes %d nights at least.", have, leastNights)
	case fish < leastFish:
		return fmt.Sprintf("Not enough yet to say whether light or the clock tells more: %s; it takes %d fish at least.", have, leastFish)
	case full < 2:
		steps := "none of " + number(hours, "step", "steps") + " of light has"
		if full == 1 {
			steps = "only one of " + number(hours, "step", "steps") + " of light has"
		}
		return fmt.Sprintf("Not enough yet to say whether light or the clock tells more: %s, but %s %.0f rod-hours and %d nights behind it.",
			have, steps, leastHours.Hours(), leastNights)
	}
	return fmt.Sprintf("%s: %d of %d steps of light have %.0f rod-hours and %d nights behind them and may be compared, which takes intervals; this picture shows only where fish came and where they were fished for.",
		capital(have), full, hours, leastHours.Hours(), leastNights)
}

// Blanks says how many of the nights had no fish, whose hours count all the same; empty
// if none was blank.
func Blanks(o *timeline.Overlay) string {
	blank := 0
	for _, l := range o.Nights {
		if l.Night.Totals.Landed+l.Night.Totals.Lost == 0 {
			blank++
		}
	}
	switch {
	case blank == 0 || len(o.Nights) < 2:
		return ""
	case blank == 1:
		return "One of them had no fish hooked; its hours count."
	}
	return fmt.Sprintf("%d of them had no fish hooked; their hours count.", blank)
}

// PickedByHand warns of nights that were picked one by one.
func PickedByHand() string {
	return "Picked by hand: nights remembered for their fish say little about the light."
}

// OffAxis says what has no place on the axis, a sentence for each reason.
func OffAxis(o *timeline.Overlay) []string {
	var out []string
	for _, x := range o.Off {
		why := map[timeline.OffWhy]string{
			timeline.NoSunset:  "where the sun did not set",
			timeline.NeverGrey: "where the trees never went grey",
			timeline.NoMoon:    "where the moon came over no hill of the pool concerned by dawn",
			timeline.NoPool:    "of which the pool is not known",
		}[x.Why]
		water := ""
		if x.Water > 0 {
			water = RodHours(x.Water)
		}
		what := join(" and ", []string{water, some(x.Contacts, "fish or touch", "fish and touches")})
		out = append(out, fmt.Sprintf("Not on this axis: %s on %s, %s.", what, number(x.Nights, "night", "nights"), why))
	}
	return out
}

// TogetherCaution is the small print of nights side by side.
func TogetherCaution() string {
	return "A record of nights, no advice: light is computed and may be out by the factor shown. Wading, floods, lightning and hooks are dangers at night; byelaws and the owner of the water decide what may be done."
}
