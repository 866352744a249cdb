package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"gloamline/journal"
	"gloamline/timeline"
)

var trends = map[journal.Trend]string{
	journal.Rising: "rising", journal.Peak: "at its peak", journal.FallingFlood: "falling",
	journal.FiningDown: "fining down", journal.NormalLevel: "at its normal level",
}

// TrendName says what the river is doing.
func TrendName(t journal.Trend) string { return trends[t] }

var clarities = map[journal.Clarity]string{
	journal.ClearWater: "clear", journal.TeaWater: "tea-coloured", journal.ColouredWater: "coloured",
}

// ClarityName says the colour of the water.
func ClarityName(c journal.Clarity) string { return clarities[c] }

// riverWords puts level, trend, colour and temperature together; empty without any.
func riverWords(level string, trend journal.Trend, clarity journal.Clarity, temp string) string {
	what := "river"
	if level != "" {
		what += " " + level
		if t := trends[trend]; t != "" {
			what += " and " + t
		}
	} else if t := trends[trend]; t != "" {
		what += " " + t
	}
	rest := commas(clarities[clarity], temp)
	switch {
	case what == "river" && rest == "":
		return ""
	case what == "river":
		return what + " " + rest
	}
	return commas(what, rest)
}

// WaterLine says the river as the party found it: river 0.46 m and falling, clear,
// 14.2 °C.
func WaterLine(w journal.Water, p Prefs) string {
	level, temp := "", ""
	if l, ok := w.Level.Get(); ok {
		level = p.level(l)
	}
	if t, ok := w.Temp.Get(); ok {
		temp = p.degrees(t)
	}
	if s := riverWords(level, w.Trend.Or(""), w.Clarity.Or(""), temp); s != "" {
		return s
	}
	return "river"
}

// WaterShort labels a reading in the lane of the river: 0.46 m, fining down.
func WaterShort(w journal.Water, p Prefs) string {
	level := ""
	if l, ok := w.Level.Get(); ok {
		level = p.level(l)
	}
	return commas(level, trends[w.Trend.Or("")])
}

// WaterTip says a reading with its time.
func WaterTip(n *timeline.Night, w timeline.Noted[journal.Water], p Prefs) string {
	return commas(Moment(w.Entry.When, w.At, n.Zone)+" "+WaterLine(w.Entry, p), w.Entry.Note)
}

// GaugeName names a gauge's curve: gauge Kirk Bridge, 0.81 to 0.74 m.
func GaugeName(g timeline.Gauge) string {
	name := strings.TrimSpace("gauge " + g.Station)
	if len(g.Points) == 0 {
		return name
	}
	first, last := figure(g.Points[0].Value), figure(g.Points[len(g.Points)-1].Value)
	if first == last {
		return commas(name, strings.TrimSpace(last+" "+g.Unit))
	}
	return commas(name, strings.TrimSpace(first+" to "+last+" "+g.Unit))
}

// figure prints a gauge's value to the millimetre, as gauges give it.
func figure(v float64) string { return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64) }

// WeatherLine says wind, mist, rain and air: wind force 3 from the west, mist, air
// 11 °C.
func WeatherLine(w journal.Weather, p Prefs) string {
	wind, air := "", ""
	if f, ok := w.Wind.Get(); ok {
		wind = fmt.Sprintf("wind force %d", f)
		if f == 0 {
			wind = "no wind"
		}
	}
	if d, ok := w.From.Get(); ok && w.Wind.Or(1) > 0 {
		if wind == "" {
			wind = "wind"
		}
		wind += " from the " + compassName(float64(d))
	}
	if t, ok := w.Air.Get(); ok {
		air = "air " + p.degrees(t)
	}
	if s := commas(wind, yes(w.Mist, "mist", "no mist"), yes(w.Rain, "rain", "no rain"), air); s != "" {
		return s
	}
	return "weather"
}

// yes says a known yes or no, nothing if unknown.
func yes(f journal.Field[bool], on, off string) string {
	v, ok := f.Get()
	switch {
	case !ok:
		return ""
	case v:
		return on
	}
	return off
}
