package state

import "gloamline/journal"

// labelOf names a stored value for a person. Most texts are plain words already.
func labelOf[T ~string](v T) string {
	switch any(v) {
	case journal.Lost:
		return "hooked and came off"
	case journal.MoonClear:
		return "moon up"
	case journal.MoonVeiled:
		return "veiled"
	case journal.MoonBehind:
		return "behind cloud or hill"
	case journal.TeaWater:
		return "tea-coloured"
	case journal.OnSurface:
		return "on the surface"
	case journal.UnderSurface:
		return "just under the surface"
	}
	if any(v) == any(journal.Bank("left")) || any(v) == any(journal.Bank("right")) {
		return "true " + string(v)
	}
	return string(v)
}

// kindNouns names what a card is for and what undo takes back.
var kindNouns = map[journal.Kind]string{
	journal.KindRun: "run", journal.KindRig: "fly change", journal.KindWay: "way of fishing", journal.KindContact: "fish",
	journal.KindSky: "sky", journal.KindWeather: "weather", journal.KindWater: "river", journal.KindReady: "pool ready",
	journal.KindBreak: "break", journal.KindEnd: "end of the night", journal.KindPlan: "plan", journal.KindNote: "note",
	journal.KindPhoto: "photo", journal.KindTrip: "night", journal.KindBeat: "beat", journal.KindFly: "fly",
	journal.KindBox: "box", journal.KindRule: "house rule", journal.KindPerson: "person", journal.KindSource: "source",
	journal.KindSeries: "gauge readings", journal.KindTrack: "track", journal.KindDecision: "decision",
}

func nounOf(e journal.Entry) string {
	if s, ok := e.(journal.Sky); ok && s.TreesGrey {
		return "trees grey"
	}
	return kindNouns[e.Ref().Kind]
}
