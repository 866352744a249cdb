package words

import (
	"fmt"
	"math"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline/light"
)

// The words on the plan of a beat and on the strip of a skyline.

// PlanTitle names the plan for those who do not see it.
func PlanTitle(b geo.Beat) string { return "Plan of " + BeatName(b) }

// GridCaption says how wide the lines of the plan are apart and on what corners catch.
func GridCaption(grid, drawn units.Metres) string {
	if grid == 0 {
		return "North is up. Lines every " + Metres(drawn) + "; corners lie anywhere"
	}
	return "North is up. Lines every " + Metres(drawn) + "; corners catch on " + Metres(grid)
}

// PlanPoolTip says a pool's size: 3 Alder Pool: 84 m long, 0.12 ha.
func PlanPoolTip(p geo.Pool, long units.Metres, squareMetres float64) string {
	mean := 0.0
	if long > 0 {
		mean = squareMetres / float64(long)
	}
	return fmt.Sprintf("%s: %s long, %s wide on the average", PoolHeading(p), Metres1(long), Metres1(units.Metres(mean)))
}

// CornerTip names a corner.
func CornerTip(n, of int) string { return fmt.Sprintf("corner %d of %d", n, of) }

// TraceOn and TraceTo stand at the points that place a picture.
func TraceOn(n int) string { return fmt.Sprintf("point %d of the picture", n) }
func TraceTo(n int) string { return fmt.Sprintf("belongs here (%d)", n) }

// Sentence makes a sentence of a clause.
func Sentence(s string) string { return sentence(s) }

// SkylineTitle heads the strip of a pool's skyline.
func SkylineTitle(pool string) string { return "Skyline at " + PoolName(pool) }

// NoSkylineYet stands on the strip while there is no pool.
func NoSkylineYet() string {
	return "Here comes the skyline of a pool, with the moon's way over it, as soon as a pool is drawn."
}

// SkyWantsPlace says why no sun and no moon are shown.
func SkyWantsPlace() string { return "sun and moon can be shown when the beat has its place" }

// DegreesShort is an altitude at a rule.
func DegreesShort(v float64) string { return fmt.Sprintf("%.0f°", v) }

// Wind is one of the eight winds by its bearing: N, NE, E.
func Wind(bearing float64) string {
	names := [...]string{"N", "NE", "E", "SE", "S", "SW", "W", "NW"}
	return names[((int(math.Round(bearing/45))%8)+8)%8]
}

// SkyPoint says a direction: bearing 135°, 12.5° up.
func SkyPoint(p geo.SkyPoint) string {
	return fmt.Sprintf("bearing %.4g°, %.3g° up", float64(p.Bearing), float64(p.Altitude))
}

// What sun and moon do at the hill.
func MoonComes(at string) string { return "moon over the hill " + at }
func MoonGoes(at string) string  { return "moon behind the hill " + at }

// MoonHighest is how high the moon goes, where that is above the picture.
func MoonHighest(alt float64, at string) string {
	return fmt.Sprintf("moon up to %.0f° at %s", alt, at)
}
func SunGoes(at string) string { return "sun gone " + at }

// SkylineNight says what the moon does over a skyline through a night.
func SkylineNight(evening journal.Date, over []light.Spell, fraction float64, waxing bool, zone *time.Location) string {
	moon := fmt.Sprintf("moon %.0f %% and waning", 100*fraction)
	switch {
	case fraction < 0.02:
		moon = "new moon"
	case fraction > 0.98:
		moon = "full moon"
	case waxing:
		moon = fmt.Sprintf("moon %.0f %% and waxing", 100*fraction)
	}
	var when []string
	for _, s := range over {
		switch from, to := Clock(s.From, zone), Clock(s.To, zone); {
		case s.AtStart && s.AtEnd:
			when = append(when, "at all times")
		case s.AtStart:
			when = append(when, "until "+to)
		case s.AtEnd:
			when = append(when, "from "+from+" on")
		default:
			when = append(when, from+" to "+to)
		}
	}
	where := "never over the hill"
	if len(when) > 0 {
		where = "over the hill " + and(when)
	}
	return commas("Night of "+NightDate(evening), moon, where)
}
