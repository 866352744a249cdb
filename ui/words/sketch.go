package words

import (
	"fmt"
	"time"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// BanksCaption says how the sketch lies.
func BanksCaption() string { return "true left above, true right below; the river runs to the right" }

// NoSketch stands where the sketch would be.
func NoSketch() string { return "No pool of this beat is drawn yet." }

// NorthLetter stands at the arrow to true north.
func NorthLetter() string { return "N" }

// Metres labels a scale bar: 50 m.
func Metres(m units.Metres) string { return units.LengthOf(float64(m), units.Metre).String() }

// SketchCaption says what the sketch shows at a moment: 00:42, moonlit: the trees are
// grey, moon on Long Flat and Sand Bend, Cauldron in the hill's shadow. Without a moment
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
	for _, d := range n.Grey.Dark {
		if d.Contains(t) {
			grey = "the trees are grey"
		}
	}
	return head + ": " + commas(grey, moonOnPools(n, t))
}

// moonOnPools says which pools the moon reaches and which lie in the hill's shadow.
func moonOnPools(n *timeline.Night, t time.Time) string {
	if !n.Sky.MoonUpAt(t) {
		return "no moon"
	}
	var on, off []string
	for i := range n.Pools {
		if over(&n.Pools[i], t) {
			on = append(on, PoolName(n.Pools[i].Pool.Name))
		} else {
			off = append(off, PoolName(n.Pools[i].Pool.Name))
		}
	}
	switch {
	case len(on)+len(off) == 0:
		return "moon up"
	case len(on) == 0:
		return "the moon is behind the hill at every pool"
	case len(off) == 0:
		return "the moon is over the hill at every pool"
	}
	return commas("moon over the hill at "+several(on, "pools"), several(off, "pools")+" in the hill's shadow")
}

// several names up to three, then counts.
func several(names []string, what string) string {
	if len(names) <= 3 {
		return and(names)
	}
	return fmt.Sprintf("%d %s", len(names), what)
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
	geo.RoleHazard: "take care",
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
