package season

import (
	"slices"

	"gloamline/journal"
)

// Rule is a house rule with what the journal says of it.
type Rule struct {
	ID    journal.ID        `json:"id"`
	Words string            `json:"words"`
	Rule  journal.HouseRule `json:"rule"`
	// Inside and Outside are fly-hours that kept to the rule and that went against it, in
	// the light it is for; Open those of flies that are not known well enough.
	Inside  float64 `json:"inside_hours"`
	Outside float64 `json:"outside_hours"`
	Open    float64 `json:"open_hours"`
	Table   *Table  `json:"table"` // rows "inside" and "outside"
}

// NeverShare is the share of the hours below which going against a rule does not count as
// having tried.
const NeverShare = 0.1

// OutsideShare returns which part of the hours went against the rule, 0 to 1.
func (r Rule) OutsideShare() float64 {
	if sum := r.Inside + r.Outside; sum > 0 {
		return r.Outside / sum
	}
	return 0
}

// Keeps reports whether a fly keeps to the rule, and whether that can be said. A rule for
// one place on the leader says nothing of flies elsewhere on it.
func Keeps(rule journal.HouseRule, f FlyDigest) (keeps, known bool) {
	if p, ok := rule.Position.Get(); ok && f.Position != p {
		return false, false
	}
	keeps = true
	lo, okLo := rule.Min.Get()
	hi, okHi := rule.Max.Get()
	if okLo || okHi {
		if f.LengthMM != f.LengthMM {
			return false, false
		}
		if okLo && f.LengthMM < float64(lo.M)*1000-ruleSlack || okHi && f.LengthMM >= float64(hi.M)*1000-ruleSlack {
			keeps = false
		}
	}
	if len(rule.Silhouettes) > 0 {
		if f.Silhouette == "" {
			return false, false
		}
		keeps = keeps && slices.Contains(rule.Silhouettes, f.Silhouette)
	}
	if len(rule.Tones) > 0 {
		if f.Tone == "" {
			return false, false
		}
		keeps = keeps && slices.Contains(rule.Tones, f.Tone)
	}
	return keeps, true
}

// lit reports whether a rule is for the light of a cell.
func lit(rule journal.HouseRule, a *at) bool {
	switch rule.AtGrey {
	case "before":
		return !a.c.Night
	case "after":
		return a.c.Night
	}
	// The cell lies between two edges, of which those of the rule are some.
	e := a.d.Edges
	i := int(a.c.Sky)
	if dark, ok := rule.Dark.Get(); ok && (i == len(e) || e[i] < float64(dark)) {
		return false
	}
	if light, ok := rule.Light.Get(); ok && (i == 0 || e[i-1] > float64(light)) {
		return false
	}
	return true
}

// ruleSplit counts a rule's hours: rows inside, outside, and what is open.
func ruleSplit(rule journal.HouseRule, name string) *split {
	rows := byFly(func(a *at, f *FlyDigest) int {
		if !lit(rule, a) {
			return -1
		}
		keeps, known := Keeps(rule, *f)
		switch {
		case !known:
			return -1
		case keeps:
			return 0
		}
		return 1
	})
	return newSplit(name, "fly-hours", within, []string{"inside", "outside"}, rows).like("night and band of light", Bands, band)
}

// openSplit counts the fly-hours in a rule's light about which nothing can be said.
func openSplit(rule journal.HouseRule, name string) *split {
	return newSplit(name, "fly-hours", plain, []string{"open"}, func(a *at, f *Fish, out []int) []int {
		if f != nil || !lit(rule, a) {
			return out
		}
		rig := a.rig()
		if rig == nil || len(rig.Flies) == 0 {
			return append(out, 0)
		}
		for _, f := range rig.Flies {
			if p, ok := rule.Position.Get(); ok && f.Position != p {
				continue
			}
			if _, known := Keeps(rule, f); !known {
				return append(out, 0)
			}
		}
		return out
	})
}

func band(a *at) int { return int(a.c.Band) }
