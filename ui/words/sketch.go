package words

import (
	"fmt"
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// BanksCaption says how the sketch lies.
func BanksCaption() string { return "true left above, true right below; the river runs to the right" }

// NoSketch stands where the sketch would be.
func NoSketch() string { return "No pool of this beat is drawn yet." }

// PoolHead and PoolTail stand at the two ends of a pool.
func PoolHead() string { return "head" }
func PoolTail() string { return "tail" }

// NorthLetter stands at the arrow to true north.
func NorthLetter() string { return "N" }

// Metres labels a scale bar: 50 m.
func Metres(m units.Metres) string { return units.LengthOf(float64(m), units.Metre).String() }

// SketchCaption says what the sketch shows at a moment: 00:42, moonlit: the trees are
// grey, moon over the hill but for Cauldron. Without a moment
// it names the beat.
func SketchCaption(n *timeline.Night, t time.Time, p Prefs) string {
	if t.IsZero() {
		return commas(n.Beat.Name, n.Beat.River.Name)
	}
	head := Clock(t, n.Zone) + ", " + openRung(n, t, p)
	if n.Sky.SunUpAt(t) {
		return head
	}
	grey := "colour still in the trees"
	if slices.ContainsFunc(n.Grey.Dark, func(d timeline.Interval) bool { return d.Contains(t) }) {
		if grey = "the trees are grey"; n.Rung(t, geo.ID{}) == timeline.TreesGrey {
			grey = "" // the rung says it
		}
	}
	return head + ": " + commas(grey, moonOnPools(n, t))
}

// SketchCaptionWhole is the caption with every pool named.
func SketchCaptionWhole(n *timeline.Night, t time.Time, p Prefs) string {
	if t.IsZero() || n.Sky.SunUpAt(t) || !n.Sky.MoonUpAt(t) {
		return SketchCaption(n, t, p)
	}
	on, off := moonAndShadow(n, t)
	if len(on) == 0 || len(off) == 0 {
		return SketchCaption(n, t, p)
	}
	return Clock(t, n.Zone) + ", " + openRung(n, t, p) + ": moon over the hill at " + and(on) + "; in the hill's shadow " + and(off)
}

// moonAndShadow names the pools that the moon reaches and those it does not.
func moonAndShadow(n *timeline.Night, t time.Time) (on, off []string) {
	for i := range n.Pools {
		if name := PoolName(n.Pools[i].Pool.Name); over(&n.Pools[i], t) {
			on = append(on, name)
		} else {
			off = append(off, name)
		}
	}
	return on, off
}

// moonOnPools says which pools the moon reaches, by naming the fewer.
func moonOnPools(n *timeline.Night, t time.Time) string {
	if !n.Sky.MoonUpAt(t) {
		return "no moon"
	}
	on, off := moonAndShadow(n, t)
	switch {
	case len(on)+len(off) == 0:
		return "moon up"
	case len(on) == 0:
		return "moon behind the hill at every pool"
	case len(off) == 0:
		return "moon over the hill at every pool"
	case len(on) <= len(off) && len(on) <= 2:
		return "moon over the hill only at " + and(on)
	case len(off) <= 2:
		return "moon over the hill but for " + and(off)
	}
	return fmt.Sprintf("moon over the hill at %d of %d pools", len(on), len(on)+len(off))
}

// PoolTip says a pool with its light at a moment and how often it was fished.
func PoolTip(n *timeline.Night, pool geo.Pool, t time.Time, p Prefs) string {
	runs := 0
	for _, r := range n.Rods {
		for _, run := range r.Runs {
			if run.Run.Pool == pool.ID {
				runs++
			}
		}
	}
	name := PoolName(pool.Name)
	if !t.IsZero() {
		name = name + ": " + poolLight(n, pool, t, p)
	}
	return commas(name, CanopyName(pool.Canopy), some(runs, "run this night", "runs this night"))
}

var canopies = map[geo.Canopy]string{
	geo.Open: "open sky", geo.Partly: "trees partly over it", geo.Closed: "trees closed over it",
}

// CanopyName says how far trees stand over a pool; empty if nobody said.
func CanopyName(c geo.Canopy) string { return canopies[c] }

var roleNames = map[geo.Role]string{
	geo.RolePool: "pool", geo.RoleBank: "bank", geo.RoleMark: "mark", geo.RoleTrees: "trees", geo.RoleEntry: "way in or out",
	geo.RoleHazard: "take care", geo.RoleLie: "lie",
}

// SpotTip says what a thing on the sketch is: take care: deep edge.
func SpotTip(f geo.Feature) string {
	what := roleNames[f.Role]
	if what == "" {
		what = string(f.Role)
	}
	if f.Name != "" {
		what = join(": ", []string{what, f.Name})
	}
	return commas(what, BankName(f.Bank))
}
