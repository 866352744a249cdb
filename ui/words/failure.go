package words

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// failure is what happened and what to do, with FILE for the name of the file and
// CAUSE for the cause where the words of the cause are for people.
type failure struct{ what, do string }

// failures has both lines for every class of error.
var failures = map[journal.Fail]failure{
	journal.Internal: {
		"Something went wrong that the program did not foresee: CAUSE.",
		"What was stored before stands. Close FILE and open it again; if it happens again, copy the file before going on.",
	},
	journal.Invalid: {
		"That cannot be stored as it stands: CAUSE.",
		"Put the marked field right, or leave it empty, and store again.",
	},
	journal.NotFound: {
		"What you asked for is not in FILE, or no longer.",
		"It may have been removed or undone. Look in the list of nights, or take the last change back.",
	},
	journal.Conflict: {
		"That contradicts something that stands: CAUSE.",
		"Nothing was changed. Change the one or the other.",
	},
	journal.Newer: {
		"FILE was written by a later version of Gloamline than this one.",
		"Nothing was changed in it. Open it with the later version.",
	},
	journal.Corrupt: {
		"FILE is damaged or was cut short: not everything in it can be read.",
		"Nothing was changed in it. Keep it as it is, make a copy, and open the latest backup.",
	},
	journal.Foreign: {
		"FILE is not a Gloamline journal.",
		"Nothing was changed in it. Choose a file whose name ends in .gloam.",
	},
	journal.Locked: {
		"FILE is open in another window or program.",
		"Close it there, then open it again here.",
	},
	journal.ReadOnly: {
		"FILE may be read here but not written.",
		"Copy it to a folder of your own and open the copy, or ask for leave to write to it.",
	},
	journal.NoRoom: {
		"There is no room left on the disk, so the last change was not stored in FILE.",
		"What was stored before stands. Make room on the disk, then enter the change again.",
	},
	journal.IO: {
		"The computer refused to read or write FILE: CAUSE.",
		"See that the disk or stick is there and works, then try again.",
	},
}

// theJournal stands for a file whose name is not known.
const theJournal = "the journal"

// Explain says an error in two sentences: what happened and what to do.
func Explain(err error) (what, do string) { return ExplainFile(err, "") }

// ExplainFile does so with the name of the journal's file.
func ExplainFile(err error, file string) (what, do string) {
	if err == nil {
		return "", ""
	}
	if told := (Told{}); errors.As(err, &told) {
		return told.What, told.Do
	}
	if path := (*fs.PathError)(nil); errors.As(err, &path) && file == "" {
		file = path.Path
	}
	name := theJournal
	if file != "" {
		name = filepath.Base(file)
	}
	if f, ok := wrongPlace(err, file, name); ok {
		return opening(f.what, name), f.do
	}
	f := failures[journal.KindOf(err)]
	put := strings.NewReplacer("FILE", name, "CAUSE", strings.TrimSuffix(cause(err), "."))
	return opening(put.Replace(f.what), name), opening(put.Replace(f.do), name)
}

// opening capitalises a sentence unless the name of a file begins it.
func opening(s, name string) string {
	if strings.HasPrefix(s, name) && name != theJournal {
		return s
	}
	return capital(s)
}

// cause is the innermost reason in the words of whoever found it. Of several faults
// the first is told; the others stand at their fields.
func cause(err error) string {
	if list := journal.FieldErrors(err); len(list) > 0 {
		return FieldCause(list[0])
	}
	if path := (*fs.PathError)(nil); errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}

// FieldCause is why a field is refused, without capital and full stop.
func FieldCause(e *journal.Error) string {
	var typed *units.Error
	var fault geo.Fault
	var path *fs.PathError
	switch {
	case errors.As(e.Err, &path):
		return path.Err.Error()
	case errors.As(e.Err, &typed):
		return typed.Why
	case errors.As(e.Err, &fault):
		return fault.Error()
	case e.Err != nil:
		return e.Err.Error()
	}
	return FieldName(e.Field) + " cannot be so"
}

// FieldSentence says why a field is refused, to stand at the field.
func FieldSentence(e *journal.Error) string { return sentence(FieldCause(e)) }

// fieldNames are people's names for the members of records that can be refused.
var fieldNames = map[string]string{
	"air": "air temperature", "air_seconds": "time out of water", "at_grey": "before or after trees grey", "bank": "bank",
	"beat": "beat", "canopy": "trees", "clarity": "colour of the water", "class": "class", "cloud": "cloud", "cloud_kind": "kind of cloud",
	"dark_lux": "darker end", "date": "date", "depth": "depth", "dresses": "description", "earliest_lux": "not before",
	"enter": "entry place", "evening": "evening", "fate": "returned or kept", "fixes": "positions of the track", "flies": "flies",
	"fly": "fly", "from": "origin", "grey_lux": "light when the trees go grey", "guide": "guide", "hook": "hook",
	"hook_place": "hook place", "hours": "hours of the party", "id": "identity", "leader": "leader", "leave": "exit place",
	"length": "length", "level": "level", "light_lux": "lighter end", "line": "line", "max": "longest", "min": "shortest",
	"mist": "mist", "moon": "moon", "name": "name", "note": "note", "of": "what the photo shows", "order": "place in the plan",
	"part": "part of the pool", "points": "readings", "pool": "pool", "position": "place on the leader", "revisions": "revisions",
	"rod": "rod", "rods": "rods", "sex": "sex", "sha256": "fingerprint of the file", "silhouette": "silhouette",
	"silhouettes": "silhouettes", "skyline": "skyline", "source": "source", "species": "species", "speed": "speed", "spot": "spot",
	"successors": "successors", "temp": "temperature", "thumb": "small picture", "time": "time", "tone": "tone", "tones": "tones",
	"touch": "what the fish did", "trend": "trend", "trip": "night", "until": "end", "use": "use", "verdict": "verdict",
	"warnings": "doubts", "weight": "weight", "what": "what was measured", "when": "time", "why": "reason", "wind": "wind",
	"wind_from": "wind direction", "words": "words of the rule", "zone": "time zone", "built": "build", "key": "key",
}

// FieldName is people's name for a field, the field itself where it has none.
func FieldName(field string) string {
	if n, ok := fieldNames[field]; ok {
		return n
	}
	return strings.ReplaceAll(field, "_", " ")
}
