package words

import (
	"fmt"

	"gloamline/journal"
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
