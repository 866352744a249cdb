package gauge

import "strings"

// Quality is what the file says about a reading, in one scale over all layouts.
type Quality uint8

// The qualities. Unsaid is also what stands for codes whose meaning is not published.
const (
	Unsaid Quality = iota
	Checked
	Unchecked
	Estimated
	Suspect
)

func (q Quality) String() string {
	return [...]string{"", "checked", "unchecked", "estimated", "suspect"}[min(q, Suspect)]
}

// qualityOf reads the words of the English hydrology service (Good, Estimated, Suspect,
// Unchecked) and the Irish exports, the US codes (A approved, P provisional, e estimated)
// and the Canadian words, which stand twice with a stroke. Numbers differ by service: the
// Norwegian ones (0 unknown, 1 uncontrolled, 2 primary, 3 secondary control) are from
// memory; no list of the Scottish ones was found, so they stay Unsaid.
func qualityOf(l Layout, flag string) Quality {
	if flag == "" {
		return Unsaid
	}
	if l == NorwegianJSON {
		switch flag {
		case "1":
			return Unchecked
		case "2", "3":
			return Checked
		}
		return Unsaid
	}
	if l == USTabbed {
		best := Unsaid
		for part := range strings.SplitSeq(flag, ":") {
			switch part {
			case "e", "E":
				return Estimated
			case "A":
				best = Checked
			case "P":
				best = Unchecked
			}
		}
		return best
	}
	word, _, _ := strings.Cut(strings.ToLower(flag), "/")
	word, _, _ = strings.Cut(strings.TrimSpace(word), " ") // Good Edited
	switch word {
	case "good", "approved", "final":
		return Checked
	case "unchecked", "provisional", "preliminary":
		return Unchecked
	case "estimated", "estimate":
		return Estimated
	case "suspect", "poor":
		return Suspect
	}
	return Unsaid
}
