package words

import (
	"fmt"
	"math"
	"strings"

	seasons "gloamline/timeline/season"
)

// tableOf is a table of a card by its name, nil if there is none.
func tableOf(c *seasons.Card, name string) *seasons.Table {
	for _, t := range c.Tables {
		if t.Name == name {
			return t
		}
	}
	return nil
}

// firstShare is the first row of a table of shares, if it has anything.
func firstShare(c *seasons.Card, name string) (seasons.Row, bool) {
	t := tableOf(c, name)
	if t == nil || len(t.Rows) == 0 || t.Rows[0].Of == 0 {
		return seasons.Row{}, false
	}
	return t.Rows[0], true
}

// soFar ends a sentence on a share that rests on too few.
func soFar(r seasons.Row) string {
	if r.Enough {
		return "."
	}
	return fmt.Sprintf(": not enough yet, it takes %.0f.", seasons.MinFish)
}

// moonPairs says night for night whether more came with the moon over the pool.
func moonPairs(c *seasons.Card) string {
	r, ok := firstShare(c, "moon_pairs")
	if !ok {
		return ""
	}
	return " Nights with half an hour and more of either, one by one: more an hour with the moon on " + SeasonShare(r) +
		fmt.Sprintf(", %s more alike", plainNumber(int(c.Figures["moon_nights_alike"]))) + soFar(r)
}

// runPairs says run for run whether the later did better.
func runPairs(c *seasons.Card) string {
	pairs := int(c.Figures["run_pairs"])
	if pairs == 0 {
		return ""
	}
	out := fmt.Sprintf(" Run for run, %s through one pool in one night: %s alike", number(pairs, "pair", "pairs"), plainNumber(int(c.Figures["run_pairs_alike"])))
	if r, ok := firstShare(c, "second_run_pairs"); ok {
		return out + "; of the rest the later did better in " + SeasonShare(r) + soFar(r)
	}
	return out + "."
}

// oneSize says which length of fly most fish came to, and what share of the hours it had.
func oneSize(c *seasons.Card) string {
	if c.Which == "" {
		return "No fish came to a fly whose length is known."
	}
	fish, of := c.Figures["fish_of_it"], c.Figures["fish_in_all"]
	out := fmt.Sprintf("Most came to flies of %s: %s of %s fish, in %s of %s fly-hours.",
		RowCode(c.Which), count(fish), count(of), someHours(c.Figures["hours_of_it"]), someHours(c.Figures["hours_in_all"]))
	if of < seasons.MinFish {
		out = "Not enough yet. " + out
	} else {
		out += fmt.Sprintf(" That is %.0f %% of the fish in %.0f %% of the hours.", 100*c.Figures["share_of_fish"], 100*c.Figures["share_of_hours"])
	}
	if n := int(c.Figures["nights_all_to_one"]); n > 0 {
		out += fmt.Sprintf(" On %s with two fish and more all came to one size; on %s of them others had half an hour and more.",
			number(n, "night", "nights"), plainNumber(int(c.Figures["others_were_on"])))
	}
	return out
}

// startAndStop says how much was fished before the first fish and after the last, when half was
// over, and what the last hour brought.
func startAndStop(c *seasons.Card) string {
	rods := int(c.Figures["rod_nights_with_fish"])
	if rods == 0 {
		return "No fish yet."
	}
	out := fmt.Sprintf("On %s with fish, %s h were fished before the first and %s h after the last.",
		number(rods, "rod's night", "rods' nights"), someHours(c.Figures["hours_before_first_fish"]), someHours(c.Figures["hours_after_last_fish"]))
	if h := c.Figures["hours_in_last_hour"]; h > 0 {
		fish, of := c.Figures["fish_in_last_hour"], c.Figures["fish_in_all"]
		out += fmt.Sprintf(" The last hour of each rod's night brought %s of %s fish, in %s of %s h.", count(fish), count(of), someHours(h), someHours(c.Figures["hours_in_all"]))
		if v, ok := c.Figures["last_hour_rate"]; ok {
			out = fmt.Sprintf("%s: %s an hour (%s to %s).", strings.TrimSuffix(out, "."), rate(v), rate(c.Figures["last_hour_rate_lo"]), rate(c.Figures["last_hour_rate_hi"]))
		}
	}
	if c.Figures["fish_in_all"] < seasons.MinFish {
		return out // half of a few says nothing
	}
	hours, okH := c.Figures["half_hours_quarter"]
	fish, okF := c.Figures["half_fish_quarter"]
	if okH && okF {
		out += fmt.Sprintf(" Half of the hours were over by %s, half of the fish had come by %s.", clockTime(hours), clockTime(fish))
	}
	if h, ok := c.Figures["half_hours_dark"]; ok {
		if f, ok := c.Figures["half_fish_dark"]; ok {
			out += fmt.Sprintf(" By the light on the pool, half of the hours were %s or darker, half of the fish came %s or darker.", againstGrey(h), againstGrey(f))
		}
	}
	return out
}

// clockTime prints so many quarters of an hour after noon as a time, to five minutes.
func clockTime(quarters float64) string {
	m := int(math.Round(quarters*3)) * 5
	return fmt.Sprintf("%02d:%02d", (12+m/60)%24, m%60)
}

// againstGrey says so many tenths of a decade darker than grey trees.
func againstGrey(tenths float64) string {
	switch f := math.Pow(10, math.Abs(tenths)/10); {
	case f < 1.15:
		return "at grey trees"
	case tenths < 0:
		return twoDigits(f) + " times lighter than grey trees"
	default:
		return twoDigits(f) + " times darker than grey trees"
	}
}

// twoDigits prints a factor above 1 with two digits, which is more than light is known to.
func twoDigits(v float64) string {
	if v >= 10 {
		p := math.Pow(10, math.Floor(math.Log10(v))-1)
		return fmt.Sprintf("%.0f", math.Round(v/p)*p)
	}
	return fmt.Sprintf("%.1f", v)
}

// sizes says what lengths were landed, and how well fed those weighed were.
func sizes(c *seasons.Card) string {
	n := total(c.Tables[0])
	if n == 0 {
		return "No fish landed has a length noted."
	}
	cm := func(name string) string { return fmt.Sprintf("%.0f", 100*c.Figures[name]) }
	out := fmt.Sprintf("%s landed with a length noted: %s to %s cm, half of them over %s.", capital(number(n, "fish", "fish")), cm("shortest_m"), cm("longest_m"), cm("middle_m"))
	switch {
	case n == 1:
		out = fmt.Sprintf("1 fish landed with a length noted: %s cm.", cm("middle_m"))
	case n < int(seasons.MinFish):
		out = "Not enough yet. " + out
	}
	sum, of := 0.0, 0.0
	for m := 1; m <= 12; m++ {
		k := c.Figures[fmt.Sprintf("condition_of_%02d", m)]
		sum, of = sum+k*c.Figures[fmt.Sprintf("condition_%02d", m)], of+k
	}
	if of > 0 {
		out += fmt.Sprintf(" %s measured and weighed: 100 g over the length in cm cubed comes to %.2f on the whole, about 1 for a fish in good order.", capital(number(int(of), "fish", "fish")), sum/of)
	}
	return out
}

// chain says what became of all contacts.
func chain(c seasons.Chain) string {
	all := c.Shows + c.Touches + c.Lost + c.Landed
	if all == 0 {
		return ""
	}
	var parts []string
	for _, k := range []struct {
		n    float64
		what string
	}{{c.Shows, "showed without touching"}, {c.Touches, "touched without being hooked"}, {c.Lost, "came off"}, {c.Landed, "landed"}} {
		if k.n > 0 {
			parts = append(parts, count(k.n)+" "+k.what)
		}
	}
	return fmt.Sprintf("Of %s %s. ", number(int(math.Round(all)), "contact", "contacts"), commas(parts...))
}

// alike says what came of the nights likest to the latest, hours first.
func alike(c *seasons.Card) string {
	t := tableOf(c, "alike")
	if t == nil {
		return "Not enough yet: it takes two nights that were fished."
	}
	var latest, all *seasons.Row
	for i := range t.Rows {
		switch r := &t.Rows[i]; r.Code {
		case "latest":
			latest = r
		case "together":
			all = r
		}
	}
	if latest == nil || all == nil {
		return "Not enough yet: it takes two nights that were fished."
	}
	out := fmt.Sprintf("%s likest to %s: %s h, %s fish", capital(number(all.Nights, "night is", "nights are")), RowLabel(t, *latest), someHours(all.Hours), count(all.Fish))
	if all.Rate != nil {
		out += ", " + SeasonRate(*all)
	} else {
		out = "Not enough yet. " + out
	}
	out += "."
	if r, ok := firstShare(c, "alike_foretold"); ok {
		middle := "the middle"
		if r.Enough {
			middle += fmt.Sprintf(" (%s an hour)", rate(c.Figures["middle_rate"]))
		}
		out += fmt.Sprintf(" Does likeness tell? Nights on the same side of %s as the likest before them, by chance half: ", middle) + SeasonShare(r) + soFar(r)
	}
	return out
}

// rodNights says how many rods' nights brought a fish, and how many a rod's night brought.
func rodNights(c *seasons.Card) string {
	t := tableOf(c, "rod_nights")
	if t == nil {
		return ""
	}
	out := ""
	for _, r := range t.Rows {
		if r.Of == 0 {
			continue
		}
		out += fmt.Sprintf(" Rods' nights with a fish, %s: %s", RowLabel(t, r), SeasonShare(r))
		key := "fish_per_" + r.Code + "_rod_night"
		if v, ok := c.Figures[key]; ok && r.Enough {
			out += fmt.Sprintf("; %.1f fish a rod and night (%.1f to %.1f)", v, c.Figures[key+"_lo"], c.Figures[key+"_hi"])
		}
		out += soFar(r)
	}
	return out
}

// planned says what became of the pools that were planned.
func planned(c *seasons.Card) string {
	n := c.Figures["pools_planned"]
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(" Of %s planned, on %s with a plan, %.0f were fished.", number(int(n), "pool", "pools"), number(int(c.Figures["nights_with_plan"]), "night", "nights"), c.Figures["planned_and_fished"])
}
