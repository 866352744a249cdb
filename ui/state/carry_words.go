package state

import (
	"reflect"
	"strings"

	"gloamline/journal"
	"gloamline/ui/words"
)

// refusal says for people why a lifted entry cannot be put down: the first thing
// wrong, with the name of the other run where two overlap.
func (d *Desk) refusal(moved journal.Entry, err error) error {
	parts := journal.FieldErrors(err)
	if len(parts) == 0 {
		return err
	}
	what := words.FieldSentence(parts[0])
	if run, ok := moved.(journal.Run); ok && overlaps(parts) {
		if other := overlapped(d.night, run); other != "" {
			what = other
		}
	}
	return words.StaysWhereItWas(what)
}

// overlaps reports whether a fault is that of two runs.
func overlaps(parts []*journal.Error) bool {
	for _, e := range parts {
		if strings.Contains(e.Err.Error(), "overlap") {
			return true
		}
	}
	return false
}

// Moved says what became of an entry that stood as before and was put down: where it is
// now and what that changed. It is empty if nothing did.
func (d *Desk) Moved(before journal.Entry) string {
	if d.night == nil || before == nil {
		return ""
	}
	after, ok := d.night.Log.Find(before.Base().ID)
	if !ok || reflect.DeepEqual(before, after) {
		return ""
	}
	return words.Moved(d.night, before, after, d.left)
}

// Lifted returns the entry that is lifted as it stands in the journal, nil if none is.
func (d *Desk) Lifted() journal.Entry {
	if d.carry == nil {
		return nil
	}
	return d.carry.entry
}
