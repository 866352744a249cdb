package words

import (
	"fmt"
	"strings"
	"time"
	"unicode"

	"gloamline/journal"
	"gloamline/timeline"
)

// Scribbled is the code of a change that stores several scribbled entries.
const Scribbled = "scribble"

// ScribbleLine says an entry as a scribble would make it: 22:41 Anna: 1 lb 10 oz,
// dropper; Alder Pool.
func ScribbleLine(n *timeline.Night, e journal.Entry, p Prefs) string {
	head := MomentShort(n, e.Base().When)
	if len(n.Rods) > 1 {
		for _, r := range n.Rods {
			if r.Rod.ID == e.Base().Rod {
				head += " " + RodName(r)
			}
		}
	}
	lines := EntryLines(n, e, p)
	switch e := e.(type) {
	case journal.Run:
		lines = runScribbled(n, e)
	case journal.Note:
		lines = append([]string{"a note"}, lines...)
		if e.Private {
			lines[0] = "a private note"
		}
	case journal.Contact:
		for _, k := range n.Contacts {
			if k.ID != e.ID {
				continue
			}
			where := "no run at this time, the pool is not known"
			if k.HasPool {
				where = PoolName(k.Pool.Name)
			}
			lines = append(lines[:1:1], append([]string{where}, lines[1:]...)...)
		}
	}
	return head + ": " + Paragraph(lines)
}

// runScribbled is a run without its beginning, which stands before it.
func runScribbled(n *timeline.Night, e journal.Run) []string {
	out := []string{"run through " + poolOf(n, e.Pool)}
	if b, ok := e.Bank.Get(); ok {
		out[0] += " from the " + BankName(b)
	}
	if u, ok := e.Until.Get(); ok {
		out[0] += " until " + End(n.Log.Spread(u), n.Zone)
	}
	if e.Note != "" {
		out = append(out, e.Note)
	}
	return out
}

// NewFlyLine says that a scribble makes a fly: a new fly, 1½ in slim pale.
func NewFlyLine(d journal.Dress, p Prefs) string { return "a new fly: " + FlyInFull(d, p) }

// AsNote is the choice of leaving a scribble as it stands.
func AsNote() string { return "leave it a note" }

// AtCursor is the choice of the cursor's moment for a scribble without a time.
func AtCursor(t time.Time, zone *time.Location) string {
	return "at " + Clock(t, zone) + ", the cursor"
}

// DuringRun is the choice of a run for a fish without a time.
func DuringRun(name string) string { return "during " + name }

// Which asks which of several readings is meant.
func Which(text string) string { return "Which is meant by “" + text + "”?" }

// WhenWasIt asks for a time that a scribble lacks.
func WhenWasIt(text string) string { return "When was “" + text + "”?" }

// StaysNote says that a scribble stays a note and why.
func StaysNote(why string) string {
	if why == "" {
		return "stays a note"
	}
	return "stays a note: " + why
}

// OtherNightLine says of a line of a page that it belongs to another night.
func OtherNightLine(d journal.Date) string {
	return fmt.Sprintf("Of the night of %s %s: open that night to write this down.", DayOfMonth(d), d.Month)
}

// ThisNightLine says that a line names the open night.
func ThisNightLine() string { return "this night" }

// LinesOf says that a line names whose the next lines are.
func LinesOf(name string) string { return "what follows is " + name + "’s" }

// NobodyFishes is why a fish or run without a rod cannot be written down.
func NobodyFishes() string {
	return "Nobody is down as fishing: change the night and say who fished."
}

// ScribbleHint stands in the empty line.
func ScribbleHint() string { return "2241 landed 1lb10 dropper" }

// ScribbleRest stands in the empty line while it has not the keyboard.
func ScribbleRest(key string) string { return "Scribble a line (" + key + ")" }

// ScribbleTip is the tip of the line's buttons.
func ScribbleTip() string { return "Write a page … (:)" }

// ScribbleKeys says what the keys do, by how the line stands.
func ScribbleKeys(open, any bool) string {
	switch {
	case open:
		return "Tab and arrows choose, Enter takes the choice, Escape leaves and keeps the text"
	case any:
		return "Enter stores, Escape leaves and keeps the text"
	}
	return "Shift+F1 shows how to scribble"
}

// PageTitle and the following are those of the page of notes.
func ScribblePageTitle() string { return "Write a page" }

// ScribblePageHint stands in the empty page.
func ScribblePageHint() string {
	return "Paste or type your notes, a line for each:\n\nAnna:\nalder 2220-2310\n2241 landed 1lb10 dropper\n2258 trees grey\nColm:\nflat 2225 till about 2300"
}

// StoreButton says what storing a page comes to.
func StoreButton(entries int) string { return "Store " + number(entries, "entry", "entries") }

// PageSum counts what a page comes to: 31 entries, 2 of them notes; 3 questions open.
func PageSum(entries, notes, open, off int) string {
	s := number(entries, "entry", "entries")
	switch {
	case notes == 1 && entries == 1:
		s += ", a note"
	case notes == 1:
		s += ", one of them a note"
	case notes > 0:
		s += fmt.Sprintf(", %d of them notes", notes)
	}
	if open > 0 {
		s += "; " + number(open, "question", "questions") + " open"
	}
	if off > 0 {
		s += "; " + number(off, "line", "lines") + " left out"
	}
	return s
}

// PageKeys says what the keys do in the list of a page's lines.
func PageKeys() string {
	return "In the list: Up and Down go from line to line, 1 to 9 choose, Space leaves a line out. Ctrl+Enter stores."
}

// HowToScribbleTitle heads the sheet of the grammar.
func HowToScribbleTitle() string { return "How to scribble" }

// AsRead is the choice of taking a scribble as it was read after all.
func AsRead() string { return "as it was read" }

// Meanings stands under a word that may mean several things.
func Meanings(n int) string { return fmt.Sprintf("%d meanings", n) }

// HasLetters reports whether a text is more than marks.
func HasLetters(s string) bool {
	return strings.ContainsFunc(s, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) })
}

// NotRead stands under a word that could not be read.
func NotRead() string { return "not read" }

// SameWords reports whether a meaning says no more than the word it stands under.
func SameWords(word, says string) bool {
	return says == "" || strings.EqualFold(strings.TrimSpace(word), says)
}

// WhoseLines stands before the line while it is somebody's: Anna:
func WhoseLines(name string) string {
	if name == "" {
		return ""
	}
	return name + ":"
}

// WhoseTip is the tip of that name.
func WhoseTip() string {
	return "Lines that name nobody are for this rod. A click ends that."
}

// TickTip is the tip of the box before a line of a page.
func TickTip(off bool) string {
	if off {
		return "left out: a click takes it in again"
	}
	return "a click leaves this line out"
}
