package words

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"gloamline/geo"
	"gloamline/timeline"
)

// The words of the window itself: titles, buttons, tips.

// ProductName is the program's name.
func ProductName() string { return "Gloamline" }

// WindowTitle stands in the window's frame.
func WindowTitle() string { return "Gloamline" }

// NoNight stands where the sketch would be.
func NoNight() string {
	return "No night is open. Choose one at the left, or press Ctrl+N to write up a new one. A night needs its beat: the File menu reads one in."
}

// NoNightTitle stands where the date would be.
func NoNightTitle() string { return "No night open" }

// NightFault stands in the row of a night that cannot be counted.
func NightFault() string { return "cannot be counted" }

// Tool is the word on a button of the row over the sketch.
func Tool(name string) string {
	return map[string]string{
		"fish": "Fish", "run": "Run", "rig": "Flies", "sky": "Sky", "water": "River", "note": "Note", "grey": "Trees grey", "page": "Page to keep",
	}[name]
}

// CommandTip is the tip of a button: what it does and its key.
func CommandTip(title, key string) string {
	title = strings.TrimSuffix(title, "…")
	if key == "" {
		return title
	}
	return title + "  (" + key + ")"
}

// KeyName is a key as it is printed.
func KeyName(key string) string {
	switch key {
	case "Left":
		return "←"
	case "Right":
		return "→"
	case "Up":
		return "↑"
	case "Down":
		return "↓"
	case "PageUp":
		return "Page up"
	case "PageDown":
		return "Page down"
	case "Return":
		return "Enter"
	case ".":
		return "full stop"
	case ";":
		return "semicolon"
	case ":":
		return "colon"
	case ",":
		return "comma"
	}
	return key
}

// FooterHint stands at the foot of the window.
func FooterHint(hasNight bool) string {
	if !hasNight {
		return "F1 shows all keys"
	}
	return "Arrows move the cursor, Space plays the night, F1 shows all keys"
}

// CardHint stands at the foot of the window while a card is open.
func CardHint() string {
	return "Enter stores, Escape puts the card away, Tab goes on, F1 shows all keys"
}

// KeySection heads a part of the sheet of keys: a menu, or what keys mean in one part of
// the window only.
func KeySection(menu string, onSketch, onLog bool) string {
	switch {
	case onSketch:
		return "On the sketch"
	case onLog:
		return "On the log"
	}
	return menu
}

// KeysTitle heads the sheet of keys.
func KeysTitle() string { return "Keys" }

// About tells what this is and where things lie.
func About(version, journal string) string {
	return fmt.Sprintf("Gloamline %s, a journal for fishing rivers at night. Your journal lies in %s; everything you enter is stored there at once, and nowhere else. Times, light and moon are computed on this machine; nothing is sent anywhere.", version, journal)
}

// CrashedBefore tells of a crash last time.
func CrashedBefore(account string) string {
	return "The program ended unexpectedly last time. What was stored stands; an account lies in " + account
}

// OpenJournalTitle, OpenJournalHint and OpenButton are for opening another journal.
func OpenJournalTitle() string { return "Open journal" }
func OpenJournalHint() string {
	return "Write the name of the journal, or take it from the list below. One that may not be written here is opened for reading."
}
func OpenButton() string { return "Open" }

// NewJournalTitle, NewJournalHint and BeginButton are for beginning a journal.
func NewJournalTitle() string { return "New journal" }
func NewJournalHint() string {
	return "An empty journal in a file of its own. The one that is open now stays where it is."
}
func BeginButton() string { return "Begin" }

// ReadButton reads a beat in.
func ReadButton() string { return "Read in" }

// ReadOnlyBanner stands over a journal that may only be read; ReadOnlyWhy is why a
// command does nothing there.
func ReadOnlyBanner(file string) string {
	return file + " is open for reading only: nothing can be added or changed. To write in it, copy it to a folder of your own (Journal, Back up elsewhere …) and open the copy."
}
func ReadOnlyWhy() string { return "open for reading only" }

// FolderAbove is the line of a list of files that goes up.
func FolderAbove() string { return "up one folder" }

// NameTaken is why no new journal is begun over a file; WouldReplace asks before an
// earlier copy is replaced.
func NameTaken(name string) Told {
	return Told{"There is a file " + name + " already, and it was left alone.", "Choose another name, or open that one with Open journal …"}
}
func WouldReplace(name string) Told {
	return Told{"There is a file " + name + " already.", "Copy again replaces it; or choose another name."}
}

// FolderButton shows the folders in place of the page, PageButton the page again.
func FolderButton() string { return "Folder …" }
func PageButton() string   { return "Page" }

// TryAgain, BeginAnew and FaultHint are for a journal that does not open.
func TryAgain() string  { return "Try again" }
func BeginAnew() string { return "New journal" }
func FaultHint() string {
	return "Or open another journal, or a backup of this one: write its name or take it from the list. A new journal is begun beside this one, which stays as it is."
}

// NoFile says that there is no file of that name.
func NoFile(path string) (what, do string) {
	return "There is no file " + path + ".", "See how it is written, with its folder, and try again."
}

// BackupTitle, BackupHint and BackupButton are for copying the journal.
func BackupTitle() string { return "Back up" }
func BackupHint() string {
	return "Copies the journal to a new file and checks the copy. A stick or another disk is the better place: a copy beside the journal is lost with it."
}
func BackupButton() string { return "Copy" }

// OK, CloseButton, SaveButton and RemoveButton are the words on buttons.
func OK() string           { return "OK" }
func CloseButton() string  { return "Close" }
func SaveButton() string   { return "Save" }
func RemoveButton() string { return "Remove" }

// CommitButton stores a card.
func CommitButton(isNew bool) string {
	if isNew {
		return "Add  (Enter)"
	}
	return "Change  (Enter)"
}

// CloseCardTip is the tip of a card's cross.
func CloseCardTip() string { return "Close without storing (Escape)" }

// EscapeAgain stands on a card that Escape would close.
func EscapeAgain() string { return "Escape again drops what you typed." }

// CardFirst stands on a card with typing on it when something else is asked for.
func CardFirst() string { return "Finish this first: Enter stores it, Escape drops it." }

// MoreFields and FewerFields fold the seldom fields of a card out and in.
func MoreFields() string  { return "More" }
func FewerFields() string { return "Less" }

// AddTitle and ChangeTitle head a card; TitleOf adds whose it is.
func AddTitle(noun string) string    { return "Add " + noun }
func ChangeTitle(noun string) string { return "Change " + noun }
func TitleOf(title, rod string) string {
	return commas(title, rod)
}

// NoPoolNote stands at the pool of a fish that no run takes in; NoPoolChosen is why
// such a fish is not stored yet.
func NoPoolNote() string { return "no run at this time" }
func NoPoolChosen() string {
	return "Choose the pool, or “unknown”: this rod has no run at this time."
}

// UnknownPool is the choice of a fish whose pool nobody remembers.
func UnknownPool() string { return "unknown" }

// NotChosen is the choice of a field that must be filled in.
func NotChosen() string { return "not chosen" }

// NotKnown is the choice of a field that is left open.
func NotKnown() string { return "not known" }

// Position is a place as a card's field reads it.
func Position(p geo.Place) string { return fmt.Sprintf("%.5f, %.5f", p.Lat, p.Lon) }

// PageFile is the name a page is saved under, without its ending.
func PageFile(n *timeline.Night) string {
	name := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, n.Beat.Name)
	return strings.TrimSpace(n.Log.Trip.Evening.String() + " " + name)
}

// PageHintLamp stands there under the lamp, where the page is shown in red.
func PageHintLamp() string {
	return "Shown in red for your eyes; the file has its own colours, black on white. For printing save it as PDF. The ending of the name says the format."
}

// PageHint stands over the name of a page to be saved.
func PageHint() string {
	return "This is the page as it leaves: for printing save it as PDF. The ending of the name says the format."
}

// Saved tells where a file went.
func Saved(path string) string { return "Saved as " + path }

// WrongEnding asks for a name that says the format.
func WrongEnding() string {
	return "The name must end in .pdf, .png or .svg: the ending says the format."
}

// SaveFault says why a file could not be saved.
func SaveFault(err error) string {
	switch {
	case errors.Is(err, fs.ErrExist):
		return "There is a file of that name already, and it was left alone. Choose another name."
	case errors.Is(err, fs.ErrNotExist):
		return "There is no such folder. Choose one that exists."
	case errors.Is(err, fs.ErrPermission):
		return "That folder cannot be written to. Choose another one."
	}
	return "It could not be saved: " + strings.TrimSuffix(cause(err), ".") + ". See that the disk or stick is there and has room, or choose another folder."
}
