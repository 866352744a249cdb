package words

import (
	"strings"

	"gloamline/journal"
)

// Label names a stored value as a card offers it: the words of the other sentences,
// else the stored text, which is plain words for most lists.
func Label(v any) string {
	s := ""
	switch v := v.(type) {
	case journal.Touch:
		s = TouchName(v)
	case journal.Species:
		s = SpeciesName(v)
	case journal.Trend:
		s = TrendName(v)
		if v == journal.FallingFlood { // beside "fining down" the one word would not tell them apart
			s = "falling, still in spate"
		}
	case journal.Clarity:
		s = ClarityName(v)
	case journal.MoonSeen:
		s = strings.TrimPrefix(MoonSeenName(v), "moon ") // the field says that it is the moon
	case journal.Bank:
		s = BankName(v)
	case journal.Depth:
		s = depths[v]
	case journal.Speed:
		s = speeds[v]
	}
	return s
}

// EntryNoun names an entry by what it is: fish, trees grey.
func EntryNoun(e journal.Entry) string {
	if s, ok := e.(journal.Sky); ok && s.TreesGrey {
		return "trees grey"
	}
	return KindName(e.Ref().Kind)
}
