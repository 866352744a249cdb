package state

import (
	"gloamline/journal"
	"gloamline/ui/words"
)

// labelOf names a stored value for a person. Most texts are plain words already.
func labelOf[T ~string](v T) string {
	s := string(v)
	switch v := any(v).(type) {
	case journal.Touch:
		s = words.TouchName(v)
	case journal.Species:
		s = words.SpeciesName(v)
	case journal.Trend:
		s = words.TrendName(v)
	case journal.Clarity:
		s = words.ClarityName(v)
	case journal.MoonSeen:
		s = words.MoonSeenName(v)
	case journal.Bank:
		s = words.BankName(v)
	case journal.Depth:
		switch v {
		case journal.OnSurface:
			s = "on the surface"
		case journal.UnderSurface:
			s = "just under the surface"
		}
	}
	if s == "" {
		return string(v)
	}
	return s
}

func nounOf(e journal.Entry) string {
	if s, ok := e.(journal.Sky); ok && s.TreesGrey {
		return "trees grey"
	}
	return words.KindName(e.Ref().Kind)
}
