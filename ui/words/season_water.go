package words

import (
	"fmt"
	"slices"
	"strings"
	"time"

	seasons "gloamline/timeline/season"
)

// warmWater says how much was fished in warm water; nothing if none was, as far as is known.
func warmWater(c *seasons.Card) string {
	all := c.Figures["hours_with_temperature"]
	if all == 0 || c.Figures["hours_from_18_c"] < 0.5 {
		return ""
	}
	return fmt.Sprintf(" At 18 °C and over %s of %s rod-hours were fished, at 20 °C and over %s: in warm water fish tire badly, and the owner of the water may ask that none be fished for.",
		someHours(c.Figures["hours_from_18_c"]), someHours(all), someHours(c.Figures["hours_from_20_c"]))
}

// byBank sets the true banks beside each other, hours first.
func byBank(c *seasons.Card) string {
	for _, t := range c.Tables {
		if t.Name != "bank" {
			continue
		}
		var parts []string
		for _, r := range t.Rows {
			if r.Hours > 0 {
				parts = append(parts, fmt.Sprintf("%s %s h on %s, %s fish, %s", RowLabel(t, r), someHours(r.Hours), number(r.Nights, "night", "nights"), count(r.Fish), SeasonRowRate(t, r)))
			}
		}
		if len(parts) == 0 {
			return ""
		}
		return " By bank: " + strings.Join(parts, "; ") + "."
	}
	return ""
}

// freshFish says how many days after a flood the first fish with lice came, by month.
func freshFish(c *seasons.Card) string {
	const key = "days_to_fresh_fish_"
	var codes []string
	for k := range c.Figures {
		if code, ok := strings.CutPrefix(k, key); ok {
			codes = append(codes, code)
		}
	}
	if len(codes) == 0 {
		return ""
	}
	slices.Sort(codes)
	var parts []string
	for _, code := range codes {
		var m int
		_, _ = fmt.Sscan(strings.TrimPrefix(code, "0"), &m) // as it was written
		parts = append(parts, fmt.Sprintf("%s %.1f", time.Month(m), c.Figures[key+code]))
	}
	return " Days from the peak of a flood to the first fish with sea lice, in the middle: " + commas(parts...) + "."
}
