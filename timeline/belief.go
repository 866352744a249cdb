package timeline

import (
	"cmp"
	"slices"

	"gloamline/journal"
	"gloamline/timeline/tally"
)

// Against is fishing with a fly other than a house rule says for the light there was.
// It is told, never held against anybody: whoever never leaves a rule never tests it.
type Against struct {
	Rule journal.HouseRule
	Rod  int // index into Night.Rods
	Rig  int // index into the rod's Rigs
	Fly  FlyOn
	Off  []string  // what differs: "length", "silhouette", "tone"
	When tally.Set // with that rig up, a fly in the water, and the light that of the rule
}

// RuleLight returns when the light of the night is that of a rule: the open-sky
// reference over the beat decides, for lux as for the trees. A rule without any light
// is for the whole night.
func (n *Night) RuleLight(r journal.HouseRule) tally.Set {
	whole := tally.Union(tally.Stretch{From: n.Start, To: n.End})
	switch r.AtGrey {
	case "before":
		return whole.Minus(tally.Union(n.Grey.Dark...))
	case "after":
		return tally.Union(n.Grey.Dark...)
	}
	out := whole
	if lux, ok := r.Light.Get(); ok {
		out = out.Minus(n.Open.atLeast(float64(lux)))
	}
	if lux, ok := r.Dark.Get(); ok {
		out = out.Intersect(n.Open.atLeast(float64(lux)))
	}
	return out
}

// Differs returns in what a fly differs from a rule; nothing if the rule does not speak
// of that place on the leader, or if what it asks is not known of the fly.
func Differs(r journal.HouseRule, f FlyOn) []string {
	if p, ok := r.Position.Get(); !f.Known || ok && p != f.Position {
		return nil
	}
	var out []string
	if l, ok := f.Dress.Length.Get(); ok {
		lo, hasLo := r.Min.Get()
		hi, hasHi := r.Max.Get()
		// a tenth of a millimetre is less than anybody measures
		if hasLo && l.M < lo.M-1e-4 || hasHi && l.M >= hi.M-1e-4 {
			out = append(out, "length")
		}
	}
	if s, ok := f.Dress.Silhouette.Get(); ok && len(r.Silhouettes) > 0 && !slices.Contains(r.Silhouettes, s) {
		out = append(out, "silhouette")
	}
	if t, ok := f.Dress.Tone.Get(); ok && len(r.Tones) > 0 && !slices.Contains(r.Tones, t) {
		out = append(out, "tone")
	}
	return out
}

// against lists all fishing of the night against the rules, by rod, rig, fly and rule.
func (n *Night) against(rules []journal.HouseRule) []Against {
	rules = slices.Clone(rules)
	slices.SortFunc(rules, func(a, b journal.HouseRule) int {
		return cmp.Or(cmp.Compare(a.Words, b.Words), slices.Compare(a.ID[:], b.ID[:]))
	})
	var out []Against
	for _, rule := range rules {
		light := n.RuleLight(rule)
		for i, rod := range n.Rods {
			wet := tally.Set(rod.Water).Intersect(light)
			for k, rig := range rod.Rigs {
				var up tally.Set
				for _, f := range rig.Flies {
					off := Differs(rule, f)
					if len(off) == 0 {
						continue
					}
					if up == nil {
						up = wet.Intersect(tally.Union(tally.Stretch{From: rig.From.Mid(), To: rig.To}))
					}
					if up.Length() > 0 {
						out = append(out, Against{Rule: rule, Rod: i, Rig: k, Fly: f, Off: off, When: up})
					}
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Against) int {
		return cmp.Or(cmp.Compare(a.Rod, b.Rod), cmp.Compare(a.Rig, b.Rig), cmp.Compare(a.Fly.Position, b.Fly.Position))
	})
	return out
}
