package words

import (
	"fmt"

	"gloamline/journal"
	"gloamline/timeline"
)

// gapNames say what is missing, for one and for several.
var gapNames = map[string][2]string{
	"until":  {"end of a run", "ends of %d runs"},
	"rig":    {"flies of a rod", "flies of %d rods"},
	"pool":   {"pool of a fish", "pools of %d fish"},
	"fly":    {"fly of a fish", "flies of %d fish"},
	"size":   {"size of a fish", "sizes of %d fish"},
	"fate":   {"returned or kept", "returned or kept of %d fish"},
	"temp":   {"water temperature", ""},
	"cloud":  {"sky", ""},
	"end":    {"end of fishing", ""},
	"unread": {"a note not read", "%d notes not read"},
}

// Gap names a sort of gap in a written night, by its code: fly of a fish, ends of 2 runs.
func Gap(kind string, n int) string {
	name := gapNames[kind]
	if n == 1 || name[1] == "" {
		return name[0]
	}
	return fmt.Sprintf(name[1], n)
}

// GapLine says one gap in a list: 22:52 fish 1A, 1 lb 10 oz: which fly?
func GapLine(n *timeline.Night, kind string, e journal.Entry, rod string, p Prefs) string {
	ask := map[string]string{
		"until": "until when?", "rig": "which flies?", "pool": "in which pool?", "fly": "which fly?", "size": "how heavy, or how long?",
		"fate": "returned or kept?", "temp": "how warm was the water?", "cloud": "how much cloud was there?", "end": "when did fishing end?", "unread": "what does it say?",
	}[kind]
	if e == nil {
		if rod != "" {
			return rod + ": " + ask
		}
		return ask
	}
	switch e := e.(type) {
	case journal.Contact:
		for _, k := range n.Contacts {
			if k.ID == e.ID {
				return MomentShort(n, e.When) + " " + commas("fish "+ContactNumber(n, k), ContactLine(k, p)) + ": " + ask
			}
		}
	case journal.Run:
		for _, r := range n.Rods {
			for _, run := range r.Runs {
				if run.Run.ID == e.ID {
					return MomentShort(n, e.When) + " " + RunHeading(n, run, r) + ": " + ask
				}
			}
		}
	case journal.Note:
		return MomentShort(n, e.When) + " “" + e.Note + "”: " + commas(e.Reason, "")
	}
	return MomentShort(n, e.Base().When) + " " + KindName(e.Ref().Kind) + ": " + ask
}

// Missing heads the line of gaps.
func Missing() string { return "Missing" }

// GapTip is the tip of a sort of gap.
func GapTip(kind string, n int) string {
	if n == 1 {
		return "A click opens the card at it."
	}
	return "A click opens the card of the first."
}

// GapsTitle, GapsKeys and NoGaps are those of the list of gaps.
func GapsTitle() string { return "What is missing" }
func GapsKeys() string {
	return "Enter opens the card at the gap, N says that it is not known, Escape closes. A gap that is not known does not come back; undo brings it back."
}
func NoGaps() string { return "Nothing is missing that the night asks for." }

// GapNotKnown is the answer that closes a gap; GapsMore leads to the list.
func GapNotKnown() string { return "not known" }
func GapsMore(n int) string {
	if n == 0 {
		return "list"
	}
	return fmt.Sprintf("%d more", n)
}

// NotKnownDeed is the code of a change that closes a gap.
const NotKnownDeed = "not known"
