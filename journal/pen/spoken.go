package pen

import "strings"

// Times as people say them in Britain: half ten, half past ten, quarter to 11, ten to
// eleven, twenty-five past one, eleven o'clock. “Half ten” is half past ten. The night
// decides the half of the day where only one is likely: ten, eleven and twelve are of
// the evening and of midnight, one to five are after it; six to nine may be either and
// are asked about, as in figures.

var spokenHours = map[string]int{"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11,
	"twelve": 12, "midnight": 12}

var spokenMinutes = map[string]int{"five": 5, "ten": 10, "twenty": 20, "twenty five": 25, "5": 5, "10": 10, "20": 20, "25": 25}

// halfWords say which half of the day a spoken time is of: pm is true.
var halfWords = map[string]bool{"pm": true, "p.m.": true, "am": false, "a.m.": false, "in the evening": true, "at night": true, "tonight": true, "in the morning": false}

// maxSpoken is the most words a spoken time has: twenty five minutes to eleven in the
// morning.
const maxSpoken = 8

// spoken reads a time in words, in small letters.
func spoken(text string) (wall, bool) {
	if !saysTime(text) {
		return wall{}, false
	}
	text = strings.ReplaceAll(text, "-", " ")
	text, pm, given := cutHalf(text)
	f := strings.Fields(text)
	if len(f) == 2 && (f[1] == "o'clock" || f[1] == "o’clock") {
		h, ok := spokenHour(f[0])
		return ofHalves(h, 0, pm, given), ok
	}
	if len(f) > 1 && f[0] == "a" && f[1] == "quarter" {
		f = f[1:]
	}
	if len(f) < 2 {
		return wall{}, false
	}
	min, rest, figures := 0, f[1:], false
	switch f[0] {
	case "half":
		if min = 30; rest[0] != "past" {
			h, ok := spokenHour(rest[0])
			return ofHalves(h, min, pm, given), ok && len(rest) == 1 && rest[0] != "midnight"
		}
	case "quarter":
		min = 15
	default:
		if min, rest, figures = minutesOf(f); min == 0 {
			return wall{}, false
		}
	}
	if len(rest) != 2 || rest[0] != "past" && rest[0] != "to" || min == 30 && rest[0] == "to" {
		return wall{}, false
	}
	h, ok := spokenHour(rest[1])
	if _, plain := whole(rest[1]); plain && figures && rest[0] == "to" && min <= 12 {
		return wall{}, false // “10 to 11” may as well be a stretch
	}
	if rest[0] == "to" {
		h, min = h-1, 60-min
		if h == 0 {
			h = 12
		}
	}
	return ofHalves(h, min, pm, given), ok
}

// saysTime is a quick look for a word without which nothing is a spoken time.
func saysTime(text string) bool {
	return strings.HasPrefix(text, "half") || strings.Contains(text, " to ") || strings.Contains(text, "past ") || strings.Contains(text, "-to-") || strings.Contains(text, "clock")
}

// minutesOf takes the minutes from the beginning: those of the hand of a clock, or any
// with the word after them. figures says that they are not words.
func minutesOf(f []string) (min int, rest []string, figures bool) {
	n, isNumber := whole(f[0])
	said := func(rest []string) bool { return len(rest) > 0 && (strings.HasPrefix(rest[0], "min")) }
	if len(f) > 2 && f[0] == "twenty" && f[1] == "five" {
		min, rest = 25, f[2:]
	} else {
		min, rest = spokenMinutes[f[0]], f[1:]
	}
	if said(rest) {
		if isNumber && n < 60 {
			min = n
		}
		return min, rest[1:], false
	}
	return min, rest, isNumber
}

func spokenHour(w string) (int, bool) {
	if h := spokenHours[w]; h > 0 {
		return h, true
	}
	h, ok := whole(w)
	return h, ok && h >= 1 && h <= 12
}

// cutHalf takes the half of the day from the end.
func cutHalf(text string) (rest string, pm, given bool) {
	for w, pm := range halfWords {
		if rest, ok := strings.CutSuffix(text, " "+w); ok {
			return rest, pm, true
		}
	}
	return text, false, false
}

// ofHalves puts an hour of a clock face into the night.
func ofHalves(h, min int, pm, given bool) wall {
	w := wall{hour: h, min: min}
	switch {
	case given && pm && h == 12: // “half past twelve at night” is after midnight
		w.hour = 0
	case given && pm && h < 12, !given && (h == 10 || h == 11):
		w.hour = h + 12
	case h == 12:
		w.hour = 0
	case !given && h >= 6:
		w.half = eitherHalf
	}
	return w
}

// spokenLen returns how many atoms a spoken time has at i, with its half of the day.
func (x *lexer) spokenLen(i int) int {
	switch f := x.fold(i); {
	case strings.HasPrefix(f, "half"), f == "quarter", f == "a" && x.fold(i+1) == "quarter":
	case spokenHours[f] > 0, f == "twenty", strings.HasPrefix(f, "twenty-"), strings.Contains(f, "-to-"):
	case x.atoms[i].kind == numberAtom && len(f) <= 2:
	default:
		return 0
	}
	if next := x.fold(i + 1); next == "" && !strings.Contains(x.fold(i), "-") {
		return 0
	}
	found := 0
	text := x.fold(i)
	for n := 1; n <= maxSpoken && i+n <= len(x.atoms); n++ {
		if n > 1 {
			text += " " + x.fold(i+n-1)
		}
		if _, ok := spoken(cutIsh(text)); ok {
			found = n
		}
	}
	return found
}

// cutIsh takes “ish” from the end of a time.
func cutIsh(s string) string {
	if rest, ok := strings.CutSuffix(s, "ish"); ok {
		return strings.TrimRight(rest, " -")
	}
	return s
}
