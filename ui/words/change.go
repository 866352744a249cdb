package words

import (
	"strings"

	"gloamline/journal"
)

// NoteGrey is the code of a change that notes the moment of grey trees.
const NoteGrey = "note grey"

// deeds are the codes of acts that are not a verb and a kind.
var deeds = map[string]string{
	NoteGrey: "note trees grey", Scribbled: "scribbled lines", NotKnownDeed: "not known", "import": "import", "merge": "merge of two journals", "set up demo": "set up the demo", "restore": "restore",
	"copy fly": "another fly like it", "bring back fly": "bring the fly back", "add usual rules": "add the usual rules",
}

var verbs = map[string][2]string{ // to do it, done
	"add": {"add", "added"}, "move": {"move", "moved"}, "amend": {"change", "changed"}, "remove": {"remove", "removed"}, "retire": {"retire", "retired"},
}

// Deed says what an act does, from the code a change carries: "add contact" is add
// fish. A code that is not known is said as it stands.
func Deed(did string) string {
	verb, kind, _ := strings.Cut(did, " ")
	if v, ok := verbs[verb]; ok && kinds[journal.Kind(kind)] != "" {
		return v[0] + " " + kinds[journal.Kind(kind)]
	}
	if d, ok := deeds[did]; ok {
		return d
	}
	return did
}

// UndoLabel says what undo would take back: Undo add fish.
func UndoLabel(did string) string { return strings.TrimSpace("Undo " + Deed(did)) }

// RedoLabel says what redo would do again: Redo add fish.
func RedoLabel(did string) string { return strings.TrimSpace("Redo " + Deed(did)) }

// Stored says what has just been stored: Fish added. Taken back: add fish.
func Stored(c journal.Change) string {
	switch {
	case !c.Undo.IsZero():
		return "Taken back: " + Deed(c.Did) + "."
	case !c.Redo.IsZero():
		return "Done again: " + Deed(c.Did) + "."
	case c.Did == "":
		return "Nothing to store."
	}
	verb, kind, _ := strings.Cut(c.Did, " ")
	if c.Did == NoteGrey {
		return "Trees grey noted."
	}
	if c.Did == NotKnownDeed {
		return "Noted as not known."
	}
	if c.Did == Scribbled {
		return "Scribbled lines stored."
	}
	if v, ok := verbs[verb]; ok && kinds[journal.Kind(kind)] != "" {
		return sentence(kinds[journal.Kind(kind)] + " " + v[1])
	}
	return sentence("stored: " + Deed(c.Did))
}
