package words

import (
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that undo and redo say what they do, for every verb and kind, and that a
// change says what it did.
func TestDeeds(t *testing.T) {
	require.Equal(t, "Undo add fish", UndoLabel("add contact"))
	require.Equal(t, "Redo change fly change", RedoLabel("amend rig"))
	require.Equal(t, "Undo import", UndoLabel("import"))
	require.Equal(t, "Undo", UndoLabel(""))
	require.Equal(t, "Undo add everything", UndoLabel("add everything"), "an unknown code is said as it stands")
	for _, k := range append(journal.EntryKinds, journal.RecordKinds...) {
		require.Equal(t, "remove "+KindName(k), Deed("remove "+string(k)))
	}
	require.Equal(t, "Fish added.", Stored(journal.Change{Did: "add contact"}))
	require.Equal(t, "Night removed.", Stored(journal.Change{Did: "remove trip"}))
	require.Equal(t, "Taken back: add fish.", Stored(journal.Change{Did: "add contact", Undo: id(1)}))
	require.Equal(t, "Done again: add fish.", Stored(journal.Change{Did: "add contact", Redo: id(1)}))
	require.Equal(t, "Trees grey noted.", Stored(journal.Change{Did: NoteGrey}))
	require.Equal(t, "Taken back: note trees grey.", Stored(journal.Change{Did: NoteGrey, Undo: id(1)}))
	require.Equal(t, "Nothing to store.", Stored(journal.Change{}))
}
