package words

import (
	"fmt"
	"math"
	"strings"
	"time"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// rungs are our own names for the steps of the ladder of light.
var rungs = map[timeline.Rung]string{
	timeline.Daylight: "daylight", timeline.Glow: "sunset glow", timeline.HalfLight: "half-light",
	timeline.TreesGrey: "trees grey", timeline.Dark: "dark", timeline.Black: "black", timeline.Moonlit: "moonlit",
}

// RungName names a step of the ladder, as the owner calls it if Prefs say so.
func RungName(r timeline.Rung, p Prefs) string {
	if own := strings.TrimSpace(p.Rungs[r]); own != "" {
		return own
	}
	return rungs[r]
}

// Darker says how far the light lies below that of grey trees: 10× darker than trees
// grey, 3× lighter than trees grey, as light as trees grey. decades is positive for
// darker. The factor is rounded to what the model can carry: a half up to 3, then one
// digit, and nothing beyond a thousand.
func Darker(decades float64) string {
	side := "darker"
	if decades < 0 {
		side, decades = "lighter", -decades
	}
	f := math.Pow(10, decades)
	switch {
	case f < 1.25 || math.IsNaN(f):
		return "as light as trees grey"
	case f < 2.75:
		return fmt.Sprintf("%g× %s than trees grey", math.Round(2*f)/2, side)
	case f >= 1000:
		return fmt.Sprintf("over 1000× %s than trees grey", side)
	}
	power := math.Pow(10, math.Floor(math.Log10(f)))
	if f >= 9.5 && f < 10 {
		power = 10
	}
	return fmt.Sprintf("%.0f× %s than trees grey", math.Round(f/power)*power, side)
}

// Lux prints the light with its band: 0.03 lx (0.02 to 0.05).
func Lux(l timeline.Lit) string {
	mid, band := l.Lux.String(), units.LuxRange(l.Lo, l.Hi)
	if mid == band {
		return mid
	}
	return mid + " (" + strings.TrimSuffix(band, " lx") + ")"
}

// Light says the light at a contact in full: rung, darkness, lux. The light of the
// open sky, where no pool is known, and cloud that nobody noted are said.
func Light(n *timeline.Night, k timeline.Contact, p Prefs) string {
	open := ""
	if k.TimeOnly {
		open = "under the open sky"
	}
	return commas(RungName(k.Rung, p), Darker(k.Darker), Lux(k.Light), open, cloudUnknown(n))
}

// LightShort says it in a column: half-light, 1.2 lx; a range when the time is
// uncertain.
func LightShort(k timeline.Contact, p Prefs) string {
	return commas(RungName(k.Rung, p), LuxShort(k))
}

// MomentTip says a moment of sun or moon with the light then: sunset 21:57; half-light, 12
// lx.
func MomentTip(n *timeline.Night, name string, t time.Time, p Prefs) string {
	return semicolon(name, commas(openRung(n, t, p), Lux(n.Light(t, geo.ID{})), SunUp(n, t), MoonUp(n, t)))
}

// CursorBrief is CursorLine where it has to fit whatever the moment: without what the
// header says already.
func CursorBrief(n *timeline.Night, t time.Time, p Prefs) string {
	open := geo.ID{}
	return commas(RungName(n.Rung(t, open), p), Darker(n.Darker(t, open))) + "; " +
		commas(Clock(t, n.Zone), Lux(n.Light(t, open)), SunUp(n, t), MoonUp(n, t))
}

// CursorLine reads the open sky out at a moment, in words first: moonlit, 10× darker
// than trees grey; 00:42, 0.03 lx (0.02 to 0.05), sun 12° down, moon 9° up.
func CursorLine(n *timeline.Night, t time.Time, p Prefs) string {
	open := geo.ID{}
	return commas(openRung(n, t, p), Darker(n.Darker(t, open))) + "; " +
		commas(Clock(t, n.Zone), Lux(n.Light(t, open)), cloudUnknown(n), SunUp(n, t), MoonUp(n, t))
}

// CursorShort is CursorLine where there is little room: moonlit, 00:42, 0.03 lx (0.02
// to 0.05).
func CursorShort(n *timeline.Night, t time.Time, p Prefs) string {
	return commas(openRung(n, t, p), Clock(t, n.Zone), Lux(n.Light(t, geo.ID{})))
}

// openRung names the light of the open sky. Where the moon that makes it moonlit
// reaches no pool of the beat, that is said.
func openRung(n *timeline.Night, t time.Time, p Prefs) string {
	rung := n.Rung(t, geo.ID{})
	name := RungName(rung, p)
	reached := len(n.Pools) == 0
	for i := range n.Pools {
		reached = reached || over(&n.Pools[i], t)
	}
	if rung == timeline.Moonlit && !reached {
		return name + " outside the hill's shadow"
	}
	return name
}

func cloudUnknown(n *timeline.Night) string {
	if n.Open.NoCloud {
		return "cloud not noted"
	}
	return ""
}

// GreyThreshold explains the zero of the axis: trees grey on this beat: 0.3 lx, from
// 11 logged moments.
func GreyThreshold(t timeline.Threshold) string {
	switch {
	case t.Hand:
		return fmt.Sprintf("trees grey on this beat: %s, set by hand", t.Lux)
	case t.Own:
		return fmt.Sprintf("trees grey on this beat: %s, from %s", t.Lux, number(t.Logs, "logged moment", "logged moments"))
	case t.Logs > 0:
		return fmt.Sprintf("trees grey: %s unless logged otherwise, %d logged so far", t.Lux, t.Logs)
	}
	return fmt.Sprintf("trees grey: %s unless logged otherwise", t.Lux)
}

// poolLight says the light on one pool, for tips.
func poolLight(n *timeline.Night, pool geo.Pool, t time.Time, p Prefs) string {
	moon := ""
	if night, ok := n.PoolNight(pool.ID); ok && n.Sky.MoonUpAt(t) {
		moon = "moon behind the hill"
		if over(night, t) {
			moon = "moon over the hill"
		}
	}
	return commas(RungName(n.Rung(t, pool.ID), p), Darker(n.Darker(t, pool.ID)), Lux(n.Light(t, pool.ID)), moon)
}

func over(p *timeline.PoolNight, t time.Time) bool {
	for _, i := range p.MoonOver {
		if i.Contains(t) {
			return true
		}
	}
	return false
}
