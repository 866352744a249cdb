package state

import (
	"strconv"
	"strings"

	"gloamline/journal"
	"gloamline/journal/units"
)

// skyFields are those of what was seen above: cloud, moon, and whether colour has
// gone from the trees.
func (c *Card) skyFields(s *journal.Sky) {
	c.headFields(&s.Head, false, false)
	cloud := c.add(wholeField("cloud", "Cloud", "", &s.Cloud, "a number of eighths, 0 to 8"))
	cloud.Kind, cloud.choices = Pick, eighths
	c.add(pickField("cloud_kind", "Kind of cloud", &s.CloudKind, journal.CloudKinds, "no cloud"))
	c.add(pickField("moon", "Moon", &s.Moon, journal.MoonSeens, "not up"))
	c.add(tickField("trees_grey", "Trees grey: colour gone from the trees", &s.TreesGrey))
	c.add(tickField("step", "It changed at once", &s.Step)).more()
	c.noteField(&s.Head)
}

// waterFields are those of the river as the party found it.
func (c *Card) waterFields(w *journal.Water) {
	c.headFields(&w.Head, false, false)
	level := c.add(textField("level", "Level", "0.46 m on the staff", &w.Level,
		func(s string) (units.Length, error) { return units.ParseLevel(s, typed(c.d.prefs).Level) }, units.Length.String))
	level.Label = "Level"
	c.add(pickField("trend", "The river is", &w.Trend, journal.Trends, ""))
	c.add(pickField("clarity", "Colour of the water", &w.Clarity, journal.Clarities, ""))
	c.add(tempField("temp", "Water temperature", "14.2 °C", &w.Temp, typed(c.d.prefs).Temp))
	c.noteField(&w.Head)
}

// weatherFields are those of wind, mist and air.
func (c *Card) weatherFields(w *journal.Weather) {
	c.headFields(&w.Head, false, false)
	c.add(wholeField("wind", "Wind", "Beaufort force, 0 to 12", &w.Wind, "a Beaufort force, 0 to 12"))
	c.add(textField("wind_from", "Wind from", "SW or 225", &w.From, parseBearing, printBearing))
	c.add(yesNoField("mist", "Mist", &w.Mist))
	c.add(yesNoField("rain", "Rain", &w.Rain))
	c.add(tempField("air", "Air temperature", "9.5 °C", &w.Air, typed(c.d.prefs).Temp))
	c.noteField(&w.Head)
}

// compass names the sixteen winds, clockwise from north.
var compass = []string{"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"}

func parseBearing(s string) (units.Degrees, error) {
	for i, p := range compass {
		if strings.EqualFold(p, s) {
			return units.Degrees(float64(i) * 22.5), nil
		}
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(s, "°")), 64)
	if err != nil || !(v >= 0 && v <= 360) {
		return 0, wrongf("“%s” is no direction: write SW, or degrees from north such as 225", s)
	}
	return units.Degrees(v), nil
}

// printBearing names a direction where it has a name, else gives its degrees.
func printBearing(d units.Degrees) string {
	if i := float64(d) / 22.5; i >= 0 && i < 16 && i == float64(int(i)) {
		return compass[int(i)]
	}
	return strconv.FormatFloat(float64(d), 'f', -1, 64)
}
