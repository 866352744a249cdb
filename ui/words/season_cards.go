package words

import (
	"fmt"
	"math"

	seasons "gloamline/timeline/season"
)

// CardSentence answers a question in plain words, hours beside fish, and says first when
// there is not enough yet.
func CardSentence(s *seasons.Season, c *seasons.Card) string {
	switch c.N {
	case 3:
		return clockOrLight(s.ClockOrLight)
	case 6:
		return rulesTested(s.Rules)
	case 4:
		return compared(s, c) + moonPairs(c)
	case 11:
		return shares(c.Tables[0], "brought a contact within 20 minutes of fishing", "What was done after 20 quiet minutes")
	case 12:
		return oneSize(c)
	case 13:
		return shares(c.Tables[0], "of those hooked were landed", "Hooks")
	case 15:
		return partOfPool(c) + byBank(c)
	case 18:
		return compared(s, c) + warmWater(c)
	case 19:
		return compared(s, c) + freshFish(c)
	case 20:
		return startAndStop(c)
	case 17:
		return compared(s, c) + runPairs(c)
	case 21:
		return sizes(c)
	case 22:
		return chain(s.Chain) + shares(c.Tables[0], "of those hooked were landed", "By length of fly")
	case 23:
		return alike(c)
	case 24:
		return compared(s, c) + rodNights(c)
	case 25:
		return compared(s, c) + planned(c)
	case 26:
		return fmt.Sprintf("%.0f of %.0f nights lack nothing that the figures could have used.", c.Figures["nights_complete"], c.Figures["nights"])
	}
	return compared(s, c)
}

func total(t *seasons.Table) int {
	sum := 0.0
	for _, r := range t.Rows {
		sum += r.Fish
	}
	return int(math.Round(sum))
}

// compared is the answer of a question that compares rows.
func compared(s *seasons.Season, c *seasons.Card) string {
	t := speaks(c)
	if t == nil {
		return "Nothing was logged about this."
	}
	if t.Kind == seasons.Shares {
		out := shares(t, "", TableTitle(t))
		switch c.Verdict {
		case seasons.NoneSeen:
			return out + " No difference seen; that does not prove there is none."
		case seasons.Idea:
			return out + " An idea to try: among " + looked(t) + ", one may look so by chance."
		}
		return out
	}
	var fish, hours float64
	for _, r := range t.Rows {
		fish, hours = fish+r.Fish, hours+r.Hours
	}
	base := fmt.Sprintf("%s fish in %s %s, from %s", count(fish), someHours(hours), t.Per, number(s.Nights, "night", "nights"))
	switch c.Verdict {
	case seasons.NotEnough:
		if hours < 0.05 && fish == 0 {
			return "Not enough yet: none of the hours bear on this."
		}
		return notEnough(c) + " So far " + base + "."
	case seasons.Inseparable:
		return "They cannot be told apart here: one never varied without the other. " + capital(base) + "."
	case seasons.Open:
		return "Still being worked out. " + capital(base) + "."
	case seasons.NoneSeen:
		return "No difference seen: " + base + ". That does not prove there is none."
	case seasons.Idea:
		return "An idea to try: " + best(t) + " Among " + looked(t) + ", one may look so by chance."
	case seasons.Differs:
		return capital(best(t)) + " It stands among " + looked(t) + "."
	}
	return capital(base) + "."
}

// someHours prints hours, few of them with one digit.
func someHours(h float64) string {
	if h > 0 && h < 0.05 {
		return "under 0.1"
	}
	if h < 9.95 {
		return fmt.Sprintf("%.1f", h)
	}
	return fmt.Sprintf("%.0f", h)
}

// speaks returns the table with the card's verdict, or its first.
func speaks(c *seasons.Card) *seasons.Table {
	for _, t := range c.Tables {
		if t.Verdict == c.Verdict {
			return t
		}
	}
	if len(c.Tables) == 0 {
		return nil
	}
	return c.Tables[0]
}

func looked(t *seasons.Table) string {
	if t.Test == nil {
		return "all that were looked at"
	}
	return number(t.Test.Looked, "table looked at", "tables looked at")
}

// notEnough says what it takes.
func notEnough(c *seasons.Card) string {
	if c.Short == nil {
		return "Not enough yet."
	}
	return fmt.Sprintf("Not enough yet: it takes two rows of its table with %.0f h on %d nights each, and %.0f fish in them.",
		seasons.MinHours, seasons.MinNights, seasons.MinFish)
}

// best sets the highest rate beside the lowest, among rows that have enough.
func best(t *seasons.Table) string {
	var hi, lo *seasons.Row
	for i := range t.Rows {
		r := &t.Rows[i]
		switch {
		case t.Kind == seasons.Shares && r.Enough:
			if hi == nil || math.Abs(r.Share.Value-.5) > math.Abs(hi.Share.Value-.5) {
				hi = r
			}
		case r.Rate != nil:
			if hi == nil || r.Rate.Value > hi.Rate.Value {
				hi = r
			}
			if lo == nil || r.Rate.Value < lo.Rate.Value {
				lo = r
			}
		}
	}
	switch {
	case hi == nil:
		return "nothing to compare."
	case t.Kind == seasons.Shares:
		return fmt.Sprintf("%s: %s.", RowLabel(t, *hi), SeasonShare(*hi))
	}
	return fmt.Sprintf("%s: %s in %s h on %s; %s: %s in %s h on %s.",
		RowLabel(t, *hi), SeasonRate(*hi), someHours(hi.Hours), number(hi.Nights, "night", "nights"),
		RowLabel(t, *lo), SeasonRate(*lo), someHours(lo.Hours), number(lo.Nights, "night", "nights"))
}

// shares says the rows of a table of shares.
func shares(t *seasons.Table, what, heading string) string {
	var parts []string
	for _, r := range t.Rows {
		if r.Of > 0 {
			parts = append(parts, fmt.Sprintf("%s %s", RowLabel(t, r), SeasonShare(r)))
		}
	}
	if len(parts) == 0 {
		return "Nothing was logged about this."
	}
	out := capital(heading) + ": " + join("; ", parts)
	if what != "" {
		out += " " + what
	}
	out += "."
	for _, r := range t.Rows {
		if r.Enough {
			return out
		}
	}
	return "Not enough yet. " + out
}

func clockOrLight(k seasons.ClockOrLight) string {
	base := fmt.Sprintf("%s fish in %s rod-hours on %s", count(k.Fish), someHours(k.Hours), number(k.Nights, "night", "nights"))
	switch k.Verdict {
	case seasons.NotEnough:
		return fmt.Sprintf("Not enough yet: it takes %.0f fish on 8 nights. So far %s.", seasons.MinFish, base)
	case seasons.Open:
		return "Still being worked out. " + capital(base) + "."
	case seasons.Inseparable:
		return "Fish come at some times more than at others, but clock and light go together too closely on these nights to say which is the guide: " + base + "."
	case seasons.Differs:
		other := map[string]string{"light": "clock", "clock": "light"}[k.Winner]
		return fmt.Sprintf("The %s tells more about when fish come than the %s: %s.", k.Winner, other, base)
	}
	return "Neither clock nor light shows when fish come on these nights: " + base + ". That does not prove that they do not matter."
}

// ClockOrLightInFull is for the fold in which statisticians look.
func ClockOrLightInFull(k seasons.ClockOrLight) string {
	out := fmt.Sprintf("deviance explained by %d bands of about equal hours, each night having its own level: light %.1f, clock %.1f; difference %.1f",
		k.Bands, k.Light.Gain, k.Clock.Gain, k.Difference)
	if k.Interval != nil {
		out += fmt.Sprintf(", 95 %% of resampled nights %.1f to %.1f", k.Interval.Lo, k.Interval.Hi)
	}
	if k.Light.Test != nil && k.Clock.Test != nil {
		out += fmt.Sprintf("; p inside nights: light %s, clock %s", pValue(k.Light.Test.P), pValue(k.Clock.Test.P))
	}
	if k.FewNights {
		out += "; with so few nights the interval is too narrow itself"
	}
	return out
}

func rulesTested(rules []seasons.Rule) string {
	if len(rules) == 0 {
		return "No rule is written down."
	}
	var never []string
	for _, r := range rules {
		if r.Table.Verdict == seasons.NeverTested {
			never = append(never, "“"+r.Words+"”")
		}
	}
	if len(never) == 0 {
		return fmt.Sprintf("%s written down; how much was fished outside stands beside each.", capital(number(len(rules), "rule is", "rules are")))
	}
	return fmt.Sprintf("Never tested: %s. Less than a tenth of the hours went outside.", and(never))
}

// RuleSentence says how far a rule was tested and what came of it.
func RuleSentence(r seasons.Rule) string {
	hours := fmt.Sprintf("%s fly-hours inside, %s outside (%.0f %%)", someHours(r.Inside), someHours(r.Outside), 100*r.OutsideShare())
	switch r.Table.Verdict {
	case seasons.NeverTested:
		return "Never tested: " + hours + "."
	case seasons.NotEnough:
		return "Not enough yet: " + hours + "."
	}
	in, out := r.Table.Rows[0], r.Table.Rows[1]
	hours += fmt.Sprintf(", on %s and %d", number(in.Nights, "night", "nights"), out.Nights)
	return fmt.Sprintf("%s: inside %s, outside %s; %s.", capital(VerdictName(r.Table.Verdict)), SeasonRowRate(r.Table, in), SeasonRowRate(r.Table, out), hours)
}

func partOfPool(c *seasons.Card) string {
	n := total(c.Tables[0])
	if n == 0 {
		return "No fish has its part of the pool noted."
	}
	var parts []string
	for _, r := range c.Tables[0].Rows {
		parts = append(parts, fmt.Sprintf("%s %s", r.Code, count(r.Fish)))
	}
	return fmt.Sprintf("Places, not rates, of %s: %s.", number(n, "fish", "fish"), commas(parts...))
}

// MissingLine says what the records lack for a question.
func MissingLine(m seasons.Missing) string {
	text, ok := missing[m.Code]
	if !ok {
		return m.Code
	}
	if m.Of <= 1 && m.N == m.Of && plainly[m.Code] {
		return text
	}
	if m.Code == "no_rig_hours" || m.Code == "no_way_hours" {
		return fmt.Sprintf("%.1f of %.0f rod-hours %s", m.N, m.Of, text)
	}
	return fmt.Sprintf("%.0f of %.0f %s", m.N, m.Of, text)
}

// plainly marks what is missing altogether, without a number.
var plainly = map[string]bool{"no_rule": true, "no_later_run": true, "no_client": true, "no_hours_within_pool": true, "no_hours_since_peak": true, "no_common_staff": true, "several_rivers": true}

var missing = map[string]string{
	"wide_times": "contacts have a time known only to half an hour or worse", "no_sky": "nights have no cloud noted",
	"no_pool": "contacts have no pool", "no_trend": "nights have nothing of what the river did", "no_part": "fish have no part of the pool noted",
	"no_hours_within_pool": "nothing says how long each part of a pool was fished", "no_temperature": "nights have no temperature of the water",
	"no_hours_since_peak": "hours since the peak of a flood need a gauge's file", "no_common_staff": "levels on the staffs of several beats, or on too few nights, have nothing in common",
	"several_rivers": "nights on several rivers have no flood in common: choose the beats of one", "no_gauge": "nights are not covered by the gauge's file, ten days back",
	"no_evening_before": "nights have no temperature from the evening before on that beat", "no_wind": "nights have no wind noted", "no_bank": "runs do not say which bank was fished",
	"no_hook_place": "fish landed do not say where the hook was",
	"no_fly":        "contacts have no fly", "no_rig_hours": "have no flies noted", "no_rule": "no house rule is written down",
	"unknown_of_two": "contacts with two flies up do not say which was taken", "no_plan": "nights have no plan", "no_length": "fish landed have no length",
	"no_class": "fish landed have no class", "no_lice": "fish landed say nothing of lice", "open_runs": "runs have no end of their own",
	"no_later_run": "no pool was fished twice in one night", "no_client": "no client's rod is among these", "no_level": "nights have no level read on the staff",
	"later_no_flies": "later runs do not say which flies were on then, or on the run before", "later_no_way": "later runs say nothing of speed or depth, or the run before does not",
	"no_way_hours": "have no speed of the fly noted", "never_grey": "nights never got dark enough for the trees to go grey", "not_weighed": "fish landed have no length and weight that were measured",
	"cut_short": "nights that say why ended with enough, with the limit, or because no fish showed: that leans on rates of the last hours",
	"no_run":    "contacts came outside every run", "no_size": "fish landed have neither length nor weight", "no_end": "nights do not say why they ended",
}

// DarknessSentence says a beat's own threshold with its spread and count.
func DarknessSentence(d seasons.Darkness) string {
	f := d.Fit
	logs := number(f.Logged, "moment logged", "moments logged")
	if f.Logged == 0 {
		logs = "no moment logged"
	}
	switch {
	case d.Hand:
		return fmt.Sprintf("%s: %s lx, settled by hand; %s.", d.Name, lux2(d.Used), logs)
	case f.From == "default":
		return fmt.Sprintf("%s: %s lx, the usual figure; %s, and from %d on the beat has its own.", d.Name, lux2(d.Used), logs, seasons.OwnFrom)
	}
	return fmt.Sprintf("%s: %s lx by its own %d of %s, known to %s–%s lx; single evenings scatter by a factor of %.1f.",
		d.Name, lux2(f.Lux), f.Used, logs, lux2(f.Lo), lux2(f.Hi), math.Pow(10, f.Spread))
}

func lux2(v float64) string { return fmt.Sprintf("%.2g", v) }
