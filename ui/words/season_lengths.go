package words

import (
	"fmt"
	"math"
	"strings"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	seasons "gloamline/timeline/season"
)

// LengthLightTitle heads the picture of length against light.
func LengthLightTitle() string { return "Every fish as the fly it came to, over the fly-hours" }

// LengthRowName names a row of it: 1 in; of a class that a rule cuts, under 1 in, or 1 in
// and over.
func LengthRowName(r seasons.LengthRow, p Prefs) string {
	if !r.Cut {
		return RowCode(seasons.LengthCode(r.Class))
	}
	from, to := seasons.LengthEnds(r.Class)
	switch {
	case r.From == from:
		return "under " + dressing(r.To, p)
	case r.To == 0 || r.To == to:
		return dressing(r.From, p) + " and over"
	}
	return dressing(r.From, p) + " to " + dressing(r.To, p)
}

// dressing prints a length of a fly: in inches where it is of eighths and nothing else is
// preferred, else in millimetres.
func dressing(mm float64, p Prefs) string {
	if e := mm / 25.4 * 8; math.Abs(e-math.Round(e)) < 0.02 {
		return p.fly(units.LengthOf(math.Round(e)/8, units.Inch))
	}
	return p.fly(units.LengthOf(mm, units.Millimetre))
}

// LengthLightTick is a mark of its axis of light, so many decades darker than trees grey.
func LengthLightTick(decades int) string {
	switch {
	case decades < 0:
		return fmt.Sprintf("%.0f× lighter", math.Pow10(-decades))
	case decades > 0:
		return fmt.Sprintf("%.0f× darker", math.Pow10(decades))
	}
	return "trees grey"
}

// LengthLightTickShort is the same where there is little room.
func LengthLightTickShort(decades int) string {
	if decades == 0 {
		return "grey"
	}
	return fmt.Sprintf("%.0f×", math.Pow10(max(decades, -decades)))
}

// LengthLightLux is the lux at such a mark, where all beats have one threshold.
func LengthLightLux(decades int, grey units.Lux) string {
	return fmt.Sprintf("%.2g lx", float64(grey)*math.Pow10(-decades))
}

// LengthLightHours stands in each field: 12.4 h.
func LengthLightHours(h float64) string { return SeasonHours(h) + " h" }

// LengthLightKey says how it is read.
func LengthLightKey(l *seasons.LengthLight, drawn bool) string {
	s := "From left to right the light fails. Behind: fly-hours, the stronger the shade the more of them."
	if drawn {
		s += " A fly with a whole edge: landed; broken: came off; no edge: touched or showed."
	} else {
		s += " So many fish are strokes as long as their flies; with fewer nights each is its fly."
	}
	if len(l.Steps) > 0 {
		s += " Hatched, behind the step: off a house rule."
		if drawn {
			s += " A bar under a fly: it came off the rule."
		}
	}
	return s
}

// LengthLightGrey says where the step stands, and what a rule goes by.
func LengthLightGrey(l *seasons.LengthLight) string {
	if len(l.Greys) == 0 {
		return ""
	}
	var parts []string
	for _, g := range l.Greys {
		parts = append(parts, fmt.Sprintf("%s %s lx", g.Name, lux2(float64(g.Lux))))
	}
	s := "Trees grey: " + commas(parts...) + "."
	if len(l.Steps) > 0 {
		s += " Light is that on the pool; a rule asks the open sky, so in a dark pool a fly may stand past the step and still be by day."
	}
	return s
}

// LengthLightLeft says which fish it cannot show.
func LengthLightLeft(l *seasons.LengthLight) string {
	var parts []string
	if n := l.Left.NoFly; n > 0 {
		parts = append(parts, fmt.Sprintf("%d to an unknown fly", n))
	}
	if n := l.Left.NoLength; n > 0 {
		parts = append(parts, fmt.Sprintf("%d to a fly of unknown length", n))
	}
	switch {
	case len(parts) == 0 && len(l.Fish) == 0:
		return "No fish that counts came on these nights."
	case len(parts) == 0 && len(l.Fish) == 1:
		return "The one fish that counts is here."
	case len(parts) == 0:
		return fmt.Sprintf("All %s that count are here.", number(len(l.Fish), "fish", "fish"))
	}
	return fmt.Sprintf("%s here; not here: %s.", capital(number(len(l.Fish), "fish is", "fish are")), and(parts))
}

// LengthLightMute says that rules cannot be laid into it.
func LengthLightMute(n int) string {
	if n == 0 {
		return ""
	}
	return number(n, "rule is", "rules are") + " not drawn here: without a length, or by lux where beats differ."
}

// DrawnFishTip says which fish a fly stands for.
func DrawnFishTip(f seasons.DrawnFish, rules []seasons.Rule, p Prefs) string {
	out := fmt.Sprintf("%s, no. %d: %s to %s. %s, %s", ShortDate(f.Evening), f.N, TouchName(f.Touch), Fly(DrawnDress(f), p),
		capital(Darker(f.Darker)), Lux(timeline.Lit{Lux: units.Lux(f.Lux), Lo: units.Lux(f.LuxLow), Hi: units.Lux(f.LuxHigh)}))
	var off []string
	for _, id := range f.Outside {
		for _, r := range rules {
			if r.ID == id {
				off = append(off, "“"+r.Words+"”")
			}
		}
	}
	if len(off) > 0 {
		out += ". Off " + and(off)
	}
	if f.NoHours {
		out += ". Outside every run"
	}
	return strings.TrimSuffix(out, ".")
}

// DrawnDress is the fly of such a fish, as far as it is drawn.
func DrawnDress(f seasons.DrawnFish) journal.Dress {
	e := f.Length / 25.4 * 8
	d := journal.Dress{Length: journal.Of(units.LengthOf(f.Length, units.Millimetre))}
	if math.Abs(e-math.Round(e)) < 0.02 {
		d.Length = journal.Of(units.LengthOf(math.Round(e)/8, units.Inch))
	}
	if f.Shape != "" {
		d.Silhouette = journal.Of(f.Shape)
	}
	if f.Tone != "" {
		d.Tone = journal.Of(f.Tone)
	}
	if f.HotSpot {
		d.HotSpot = journal.Of("hot")
	}
	return d
}
