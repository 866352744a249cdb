package state

import (
	"cmp"
	"math"
	"strings"

	"gloamline/journal"
	"gloamline/journal/pen"
)

// DressLabel describes a fly in a list: 1 in slim dark, barbless double, orange spot.
// Unlike PrintDress it leaves out that a hook of a known sort is a hook.
func DressLabel(d journal.Dress) string {
	look, arms := d, d
	look.Hook, look.Built, look.Barbless, look.HotSpot = journal.Field[string]{}, journal.Field[string]{}, journal.Field[bool]{}, journal.Field[string]{}
	arms.Length, arms.Silhouette, arms.Tone, arms.HotSpot = journal.Dress{}.Length, journal.Dress{}.Silhouette, journal.Dress{}.Tone, journal.Dress{}.HotSpot
	if arms.Hook.Known() && arms.Built.Or("") == "hook" {
		arms.Built = journal.Field[string]{}
	}
	var out []string
	for _, part := range []journal.Dress{look, arms} {
		if s := pen.PrintDress(part); s != pen.PrintDress(journal.Dress{}) {
			out = append(out, s)
		}
	}
	if len(out) == 0 {
		out = append(out, pen.PrintDress(journal.Dress{}))
	}
	if h, ok := d.HotSpot.Get(); ok {
		out = append(out, strings.ToLower(h)+" spot")
	} else if d.HotSpot.IsNone() {
		out = append(out, "no spot")
	}
	return strings.Join(out, ", ")
}

// byLength orders flies, the shortest first and those of unknown length last.
func byLength(a, b journal.Dress) int {
	metres := func(d journal.Dress) float64 {
		if l, ok := d.Length.Get(); ok {
			return float64(l.M)
		}
		return math.Inf(1)
	}
	return cmp.Or(cmp.Compare(metres(a), metres(b)), cmp.Compare(DressLabel(a), DressLabel(b)))
}
