package words

import (
	"fmt"
	"time"

	"gloamline/timeline"
	seasons "gloamline/timeline/season"
)

// Behind is what stands behind nights laid over each other, along the light: what a verdict
// counts.
type Behind struct {
	Nights, Blank int // blank: without a fish hooked
	Fish          int // hooked: landed or lost
	Water         time.Duration
	Steps, Full   int // steps of light in which somebody fished, and those that may be compared
}

// BehindOf counts it.
func BehindOf(light *timeline.Overlay) Behind {
	b := Behind{Nights: len(light.Nights), Fish: light.Totals.Landed + light.Totals.Lost, Water: light.Totals.InWater}
	for _, l := range light.Nights {
		if l.Night.Totals.Landed+l.Night.Totals.Lost == 0 {
			b.Blank++
		}
	}
	for _, x := range light.Bins {
		if x.Water > 0 {
			b.Steps++
		}
		if x.Water.Hours() >= seasons.MinHours && x.Nights >= seasons.MinNights {
			b.Full++
		}
	}
	return b
}

// Verdict says what may be concluded from nights laid over each other, given the same
// nights along the light: usually that it is not enough. It compares no rate: that is
// for a season, with intervals.
func Verdict(light *timeline.Overlay) string {
	b := BehindOf(light)
	have := fmt.Sprintf("%s in %s on %s", number(b.Fish, "fish hooked", "fish hooked"), RodHours(b.Water), number(b.Nights, "night", "nights"))
	const not = "Not enough yet to say whether light or the clock tells more: "
	switch {
	case b.Nights == 0:
		return "No night is chosen."
	case b.Nights == 1:
		return "One night shows what happened, not what usually happens: " + have + "."
	case b.Nights < seasons.MinNights:
		return fmt.Sprintf(not+"%s; it takes %d nights at least.", have, seasons.MinNights)
	case float64(b.Fish) < seasons.MinFish:
		return fmt.Sprintf(not+"%s; it takes %.0f fish at least.", have, seasons.MinFish)
	case b.Full < 2:
		steps := "none of " + number(b.Steps, "step", "steps") + " of light has"
		if b.Full == 1 {
			steps = "only one of " + number(b.Steps, "step", "steps") + " of light has"
		}
		return fmt.Sprintf(not+"%s, but %s %.0f rod-hours and %d nights behind it.", have, steps, seasons.MinHours, seasons.MinNights)
	}
	return fmt.Sprintf("%s: %d of %d steps of light have %.0f rod-hours and %d nights behind them and may be compared, which the season does with intervals (Light or clock?); this picture shows only where fish came and where they were fished for.",
		capital(have), b.Full, b.Steps, seasons.MinHours, seasons.MinNights)
}

// Blanks says how many of the nights had no fish, whose hours count all the same; empty
// if none was blank.
func Blanks(o *timeline.Overlay) string {
	b := BehindOf(o)
	switch {
	case b.Blank == 0 || b.Nights < 2:
		return ""
	case b.Blank == 1:
		return "One of them had no fish hooked; its hours count."
	}
	return fmt.Sprintf("%d of them had no fish hooked; their hours count.", b.Blank)
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
