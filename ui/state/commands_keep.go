package state

// keepTable is the menu of the journal as a whole.
func (d *Desk) keepTable(t *tabler) {
	t.menu, t.room = "Journal", ""
	t.window("journal.backups", "Backups …", Key{}, "Lists the copies taken at each start, says what each holds, and puts one back.")
	t.window("journal.backup", "Back up elsewhere …", Key{}, "Copies the journal, checked, with its photographs, to another place.")
	t.window("journal.archive", "Write an archive …", Key{}, "Writes the whole journal as text, with its photographs if you like, to be kept for ever.")
	t.window("journal.restore", "Restore from a file …", Key{}, "Says what a backup or an archive holds, and makes a journal of it again.")
	t.window("journal.merge", "Merge another copy …", Key{}, "Joins another copy of this journal into it, without anything twice, as one change.").Writes = true
	t.window("journal.returns", "Catch returns …", Key{}, "Adds a year's landed fish up per river and month, names what is missing, and reminds where returns are due.")
	t.window("journal.check", "Check …", Key{}, "Reads the whole journal and its photographs, and names each fault.")
}
