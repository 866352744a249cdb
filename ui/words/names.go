package words

import (
	"gloamline/geo"
	"gloamline/journal"
)

var touches = map[journal.Touch]string{
	journal.Follow: "follow", journal.Boil: "boil", journal.Pluck: "pluck", journal.Pull: "pull",
	journal.Lost: "came off", journal.Landed: "landed",
}

// TouchName names what a fish did.
func TouchName(t journal.Touch) string { return touches[t] }

var kinds = map[journal.Kind]string{
	journal.KindTrip: "night", journal.KindBeat: "beat", journal.KindFly: "fly", journal.KindBox: "box",
	journal.KindRule: "house rule", journal.KindPerson: "person", journal.KindSource: "source",
	journal.KindSeries: "gauge readings", journal.KindTrack: "track", journal.KindDecision: "decision", journal.KindRecipient: "what a guest sees",
	journal.KindRun: "run", journal.KindRig: "fly change", journal.KindWay: "way of fishing", journal.KindContact: "fish",
	journal.KindSky: "sky", journal.KindWeather: "weather", journal.KindWater: "river", journal.KindReady: "pool ready",
	journal.KindBreak: "break", journal.KindEnd: "end of fishing", journal.KindPlan: "plan", journal.KindNote: "note",
	journal.KindPhoto: "photo",
}

// KindName names a sort of record.
func KindName(k journal.Kind) string { return kinds[k] }

// PositionName names a place on the leader: 0 point, 1 dropper; empty if unknown.
func PositionName(position int) string {
	switch {
	case position < 0:
		return ""
	case position == 0:
		return "point"
	case position == 1:
		return "dropper"
	}
	return ordinal(position) + " dropper"
}

// BankName names a bank: true left bank.
func BankName(b geo.Bank) string {
	switch b {
	case geo.TrueLeft:
		return "true left bank"
	case geo.TrueRight:
		return "true right bank"
	}
	return ""
}

var speciesNames = map[journal.Species]string{
	journal.SeaTrout: "sea trout", journal.BrownTrout: "brown trout", journal.Salmon: "salmon", journal.OtherFish: "another fish",
}

// SpeciesName names a kind of fish.
func SpeciesName(s journal.Species) string { return speciesNames[s] }

var compass = []string{"north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"}

// compassName names a bearing by the nearest of eight points.
func compassName(deg float64) string {
	return compass[int(deg/45+0.5)%8]
}

var compassPoints = []string{"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"}

// compassPoint names a bearing from 0 to 360 by the nearest of sixteen points, in
// letters.
func compassPoint(deg float64) string { return compassPoints[int(deg/22.5+0.5)%16] }
