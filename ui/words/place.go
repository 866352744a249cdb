package words

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"

	"gloamline/journal"
)

// createJournal is how the store names the act of beginning a file.
const createJournal = "create journal"

// wrongPlace tells of a path that leads nowhere, to a folder, or to a file of another
// sort under a journal's name; false if err is none of these.
func wrongPlace(err error, file, name string) (f failure, ok bool) {
	var je *journal.Error
	if !errors.As(err, &je) {
		return f, false
	}
	gone := errors.Is(err, fs.ErrNotExist)
	switch {
	case je.Kind == journal.NotFound && gone && je.Op == createJournal && file != "":
		return failure{"There is no folder " + filepath.Dir(file) + ".", "Nothing was made. Make the folder first, or name one that is there."}, true
	case je.Kind == journal.NotFound && gone && file != "":
		return failure{"There is no file " + name + ".", "See how its name is written, with its folder, and try again."}, true
	case je.Kind == journal.Foreign && strings.HasPrefix(causeOf(je), "a folder"):
		return failure{name + " is a folder, not a journal.", "Name a file in it; the name of a journal ends in .gloam."}, true
	case je.Kind == journal.Foreign && strings.EqualFold(filepath.Ext(file), ".gloam"):
		return failure{name + " is not a Gloamline journal, though its name ends like one.", "Nothing was changed in it. Choose another file."}, true
	}
	return f, false
}

func causeOf(e *journal.Error) string {
	if e.Err == nil {
		return ""
	}
	return e.Err.Error()
}
