package words

import (
	"fmt"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
)

// SunsetMark labels a sunset: sunset 21:54.
func SunsetMark(n *timeline.Night, t time.Time) string { return "sunset " + Clock(t, n.Zone) }

// SunriseMark labels a sunrise.
func SunriseMark(n *timeline.Night, t time.Time) string { return "sunrise " + Clock(t, n.Zone) }

// GreyMark labels the moment the trees lose their colour by the first full minute at
// which they are grey, that of the cursor on it: trees grey 23:15.
func GreyMark(n *timeline.Night, t time.Time) string {
	return "trees grey " + Clock(timeline.FullMinute(t), n.Zone)
}

// MoonMark labels the moon's coming over the hill; where pools differ, those it
// reaches are named: moon on Long Flat 00:31.
func MoonMark(n *timeline.Night, t time.Time, pools []string, all bool) string {
	if all || len(pools) == 0 {
		return "moon over the hill " + Clock(t, n.Zone)
	}
	return "moon on " + few(pools) + " " + Clock(t, n.Zone)
}

// few names up to two, then counts the rest.
func few(names []string) string {
	if len(names) <= 2 {
		return and(names)
	}
	return fmt.Sprintf("%s and %d more", names[0], len(names)-1)
}

// SunUp says how the sun stands to the level horizon: sun 12° down.
func SunUp(n *timeline.Night, t time.Time) string {
	alt, _ := n.SunAt(t)
	if alt > -0.5 && alt < 0.5 {
		return "sun on the horizon"
	}
	if alt < 0 {
		return fmt.Sprintf("sun %s down", -alt)
	}
	return fmt.Sprintf("sun %s up", alt)
}

// MoonUp says how high the moon stands: moon 9° up, or moon down.
func MoonUp(n *timeline.Night, t time.Time) string {
	if !n.Sky.MoonUpAt(t) {
		return "moon down"
	}
	return fmt.Sprintf("moon %s up", max(0, n.MoonAt(t).Alt))
}

// MoonWhere says where the moon stands: moon SSE, 9° up.
func MoonWhere(n *timeline.Night, t time.Time) string {
	if !n.Sky.MoonUpAt(t) {
		return "moon down"
	}
	m := n.MoonAt(t)
	return fmt.Sprintf("moon %s, %s up", compassPoint(float64(m.Az)), max(0, m.Alt))
}

// MoonPhase says how much of the moon is lit: moon 78 % and waning.
func MoonPhase(s timeline.SkyMarks) string {
	switch {
	case s.MoonFraction < 0.02:
		return "new moon"
	case s.MoonFraction > 0.98:
		return "full moon"
	case s.MoonWaxing:
		return fmt.Sprintf("moon %.0f %% and waxing", 100*s.MoonFraction)
	}
	return fmt.Sprintf("moon %.0f %% and waning", 100*s.MoonFraction)
}

// EclipseSentence warns that the light of an eclipsed moon is not worked out.
func EclipseSentence(s timeline.SkyMarks) string {
	if !s.Eclipse {
		return ""
	}
	return "The moon may be eclipsed this night; its light is then less than shown."
}

// CloudWords says a cover: no cloud, cloud 3 eighths, cloud 8 eighths, dark.
func CloudWords(s journal.Sky) string {
	kind := string(s.CloudKind.Or(""))
	n, ok := s.Cloud.Get()
	switch {
	case s.Cloud.IsNone() || ok && n == 0:
		return "no cloud"
	case ok && kind == string(journal.AverageCloud):
		return "cloud " + eighths(n)
	case ok:
		return commas("cloud "+eighths(n), kind)
	case kind != "":
		return "cloud " + kind
	}
	return ""
}

func eighths(n int) string { return number(n, "eighth", "eighths") }

var moons = map[journal.MoonSeen]string{
	journal.MoonClear: "moon up", journal.MoonVeiled: "moon veiled", journal.MoonBehind: "moon behind cloud or hill",
}

// MoonSeenName names how the moon was seen.
func MoonSeenName(m journal.MoonSeen) string { return moons[m] }

// SkyLine says what was noted of the sky: trees grey, cloud 2 eighths, moon veiled.
func SkyLine(s journal.Sky) string {
	grey, step := "", ""
	if s.TreesGrey {
		grey = "trees grey"
	}
	if s.Step {
		step = "changed at once"
	}
	return commas(grey, CloudWords(s), moons[s.Moon.Or("")], step)
}

// SkyShort labels a sky note on the strip: 3 eighths, grey, veiled.
func SkyShort(s journal.Sky) string {
	cloud, grey := "", ""
	if n, ok := s.Cloud.Get(); ok {
		cloud = eighths(n)
		if n == 0 {
			cloud = "no cloud"
		}
	}
	if s.TreesGrey {
		grey = "trees grey"
	}
	if cloud == "" && grey == "" {
		return commas(string(s.CloudKind.Or("")), moons[s.Moon.Or("")])
	}
	return commas(grey, cloud)
}

// SkyNothing stands in the lane of the sky where nobody noted anything.
func SkyNothing() string { return "cloud not noted" }

// SkyTip says a sky note with its time.
func SkyTip(n *timeline.Night, s timeline.Noted[journal.Sky]) string {
	return commas(Moment(s.Entry.When, s.At, n.Zone)+" "+SkyLine(s.Entry), s.Entry.Note)
}
