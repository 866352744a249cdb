package words

import (
	"fmt"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
)

// UsualRule is a rule that many fish by, in words. Common practice, without a source.
func UsualRule(which string) string {
	return map[string]string{
		"short":         "Under 1 inch until the trees are grey",
		"long":          "1 inch and over once the trees are grey",
		"light dropper": "By day a light fly on the dropper",
		"dark point":    "By day a dark fly on the point",
		"slim point":    "At night a slim fly on the point",
		"full dropper":  "At night a full fly on the dropper",
	}[which]
}

// CommonPractice marks a rule that is nobody's own finding.
func CommonPractice() string { return "common practice" }

// RuleLight says for which light a rule is: before or after the trees are grey, or by
// lux.
func RuleLight(at string) string {
	switch at {
	case "before":
		return "until the trees are grey"
	case "after":
		return "once the trees are grey"
	}
	return "by lux, or always"
}

// RuleWhen says the light of a rule in full.
func RuleWhen(r journal.HouseRule) string {
	if r.AtGrey != "" {
		return RuleLight(r.AtGrey)
	}
	light, hasLight := r.Light.Get()
	dark, hasDark := r.Dark.Get()
	switch {
	case hasLight && hasDark:
		return "from " + light.String() + " down to " + dark.String()
	case hasLight:
		return "below " + light.String()
	case hasDark:
		return "down to " + dark.String()
	}
	return "in any light"
}

// RuleAsks says what flies a rule asks for: on the point, 1 in and over, slim.
func RuleAsks(r journal.HouseRule, p Prefs) string {
	var parts []string
	if at, ok := r.Position.Get(); ok {
		parts = append(parts, "on the "+PositionName(at))
	}
	lo, hasLo := r.Min.Get()
	hi, hasHi := r.Max.Get()
	switch {
	case hasLo && hasHi:
		parts = append(parts, p.fly(lo)+" to under "+p.fly(hi))
	case hasLo:
		parts = append(parts, p.fly(lo)+" and over")
	case hasHi:
		parts = append(parts, "under "+p.fly(hi))
	}
	var sil, tone []string
	for _, s := range r.Silhouettes {
		sil = append(sil, SilhouetteName(s))
	}
	for _, t := range r.Tones {
		tone = append(tone, ToneName(t))
	}
	return commas(append(parts, strings.Join(sil, " or "), strings.Join(tone, " or "))...)
}

// OffRule says for how long a rig lay off a house rule, for a tip: off your rule for 40
// min: 1 inch and over once the trees are grey (length of the dropper).
func OffRule(a timeline.Against) string {
	s := "off a house rule for " + Minutes(a.When.Length()) + ": " + a.Rule.Words
	return s + " (" + strings.Join(a.Off, ", ") + " of the " + orFly(PositionName(a.Fly.Position)) + ")"
}

func orFly(position string) string {
	if position == "" {
		return "fly"
	}
	return position
}

// Minutes says a stretch of time: 40 min, 2 h 5 min.
func Minutes(d time.Duration) string {
	m := int(d.Round(time.Minute) / time.Minute)
	switch {
	case m < 60:
		return fmt.Sprintf("%d min", m)
	case m%60 == 0:
		return fmt.Sprintf("%d h", m/60)
	}
	return fmt.Sprintf("%d h %d min", m/60, m%60)
}

// BoxesTitle heads the room of flies.
func BoxesTitle() string { return "Boxes and flies" }

// BoxesLine says what is there, and how many nights stand behind the figures.
func BoxesLine(flies, boxes, rules, counted, nights int) string {
	s := commas(number(flies, "fly", "flies"), number(boxes, "box", "boxes"), number(rules, "house rule", "house rules"))
	switch {
	case nights == 0:
		return s + ". Hours and fish stand here once nights are written."
	case counted < nights:
		return s + fmt.Sprintf(". Hours and fish of %d nights so far; reading the others.", counted)
	}
	return s + ". Hours are rod-hours with the fly in the water, on " + number(nights, "night", "nights") + ", before and after the trees were grey. The dotted line is 1 inch."
}

// GroupTitle heads a box, the flies in none, or those put aside.
func GroupTitle(kind, name string) string {
	switch kind {
	case "loose":
		return "In no box"
	case "retired":
		return "Retired"
	}
	return name
}

// GroupUse says what a box is for and how many flies it holds.
func GroupUse(kind, use string, flies int) string {
	n := number(flies, "fly", "flies")
	switch kind {
	case "loose":
		return n
	case "retired":
		return n + ", kept for the nights that know them"
	}
	return commas(use, n)
}

// EmptyBox stands in a box without flies; EmptyBoxes in the room without any.
func EmptyBox() string { return "Empty. New flies can be put here on their card." }
func EmptyBoxes() string {
	return "No flies yet. F adds one; B adds a box to put it in. On a night, describing a fly on the card of a fly change adds it too."
}

// RulesTitle, RulesKey and NoRules are of the house rules.
func RulesTitle() string { return "House rules" }
func RulesKey() string {
	return "light from left to right, the trees grey at the upright; length upwards, to 3 inches"
}
func NoRules() string {
	return "None yet. A rule says which flies you fish in which light; what lies off it is marked on the strip, and nothing is blocked. “The usual rules” in the menu Flies adds those of common practice."
}

// FlyHours says what nights tell of a fly in one half of the light: 4.5 h, 2 landed, 1 came
// off. Empty if it was never in the water then.
func FlyHours(l timeline.FlyLight) string {
	if l.Water == 0 && l.Landed+l.Lost+l.Touches+l.Shows == 0 {
		return ""
	}
	parts := []string{Hours(l.Water)}
	for _, p := range []struct {
		n    float64
		what string
	}{{l.Landed, "landed"}, {l.Lost, "came off"}, {l.Touches + l.Shows, "touched or showed"}} {
		if p.n > 0.005 {
			parts = append(parts, Expected(p.n)+" "+p.what)
		}
	}
	if len(parts) == 1 {
		parts = append(parts, "no fish")
	}
	return commas(parts...)
}

// Expected prints an expected number: whole where it is, else to a tenth.
func Expected(n float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", n), ".0") }

// BeforeGrey and AfterGrey name the two halves of the light on a fly's cell: the trees
// still in colour, or grey.
func BeforeGrey() string { return "in colour" }
func AfterGrey() string  { return "trees grey" }

// NeverFished says that no night knows the fly.
func NeverFished() string { return "not fished yet" }

// FlyOrderName names an order in which flies are shown.
func FlyOrderName(order string) string {
	switch order {
	case "box":
		return "As in the box"
	case "length":
		return "By length"
	case "silhouette":
		return "By silhouette"
	}
	return "By tone"
}

// The question about a fly that nights have known, and what a card without it needs.
func CorrectFly() string { return "corrects it, on every night" }
func FlyFrom() string    { return "is how it is tied from an evening on" }
func NotSaid() string    { return "choose" }
func SayWhatFlyMeans() string {
	return "Nights have fished this fly. Say whether this corrects what was noted, on all of them, or is how it is tied from an evening on."
}

// AnyPosition is any place on the leader.
func AnyPosition() string { return "any place" }

// DragFly tells what a fly would be if it were let go now.
func DragFly(length string) string { return length + ". Let go to keep it, Escape to leave it." }

// BoxesHint is the footer's line in the room of flies.
func BoxesHint() string {
	return "Click picks out, double click or Enter changes · draw out a fly by its top, or < > · F fly · B box · F1 keys"
}

// FlyCellTip tells of a fly under the pointer, with its hours and fish in words.
func FlyCellTip(f journal.Fly, d journal.Dress, r timeline.FlyRecord, p Prefs) string {
	told := func(when string, l timeline.FlyLight) string {
		if s := FlyHours(l); s != "" {
			return when + " " + s
		}
		return ""
	}
	return join(". ", []string{f.Label, FlyInFull(d, p), told("While the trees had colour", r.Before), told("Once they were grey", r.Grey)})
}

// RuleTip tells a rule in full.
func RuleTip(r journal.HouseRule, p Prefs) string {
	practice := ""
	if r.Practice {
		practice = CommonPractice()
	}
	return join("; ", []string{r.Words, RuleWhen(r), RuleAsks(r, p), practice})
}
