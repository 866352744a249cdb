package words

// ScribbleExample shows how one thing is written: what it is, and lines that say it.
type ScribbleExample struct {
	What  string
	Lines []string
}

// ScribbleExamples are those of the sheet. Each line is read as an entry by a test, on a
// beat with the pools that it names; names of rods, pools and flies are invented.
func ScribbleExamples() []ScribbleExample {
	return []ScribbleExample{
		{"A run", []string{"A alder 2220-2310", "C long flat 2225 till about 2300, left bank", "cauldron half ten to quarter past eleven"}},
		{"A fish", []string{"2241 landed 1lb10 dropper", "about 2250 came off", "2310 pull tail of the alder", "landed hen 48 cm, returned 2315"}},
		{"Both in a line", []string{"2220-2310 alder A, landed 1lb10 dropper 2241"}},
		{"Flies", []string{"point 1in slim dark, dropper 3/4in full pale 2200", "surface lure 2in full dark 0020", "took the dropper off 2310"}},
		{"Line, leader", []string{"sinking line 3 ips, leader 9ft 2200"}},
		{"Way of fishing", []string{"slow strip 2310", "figure of eight, deep 0010"}},
		{"Light and sky", []string{"trees grey 2258", "moon up 0031", "cloud 6/8 2200", "overcast 2200"}},
		{"Weather", []string{"wind SW 3, 2200", "calm 2200", "mist 0110", "air 12C 2200"}},
		{"River", []string{"gauge 0.42 m, water 14C 2130", "fining down 2130", "water clear 2130"}},
		{"Ready, break, end", []string{"alder ready 2245", "break 2330-2350", "packed up 0130, cold"}},
		{"A note", []string{"note: the otter again", "private note: 2310: sore knee"}},
	}
}

// ScribbleRules are the sentences under the examples.
func ScribbleRules() []string {
	return []string{
		"Words come in any order, small or large, with or without accents. Pools by the beginning of a word of their name, three letters at least; rods by name or initial.",
		"Times: 2241, 22.41, 10.41 pm, half ten, ten to eleven, midnight; roughly: about 2250, ~2250, 2250ish, 2250 ±15. Or: between 2300 and 2310, during the run, after fish 3, before trees grey.",
		"A line with a name alone, such as Anna:, holds for all lines after it. A fish without a time lies within the run of its line.",
		"A comma, a full stop, “and”, “then” part things where both sides read by themselves. What stands in (brackets) goes into the note as it is.",
		"What has two meanings is offered both ways: lost point (the fish or the fly), colour gone (trees or water), 14C (air or water), take, touch, hooked, rose. Nothing is chosen for you.",
		"A described fly that is in no box is offered as a new one. A change of one fly keeps the others on the leader.",
		"What cannot be read stays a note, with the reason beside it. Lines with “not”, “nearly”, “thought” and the like always do.",
	}
}
