package state

import (
	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/ui/scene"
)

// intakeTable is the commands of the room in which files are read in.
func (d *Desk) intakeTable(t *tabler) {
	t.menu, t.room = "Import", IntakeRoom
	defer func() { t.room = "" }()
	k := d.Intake
	have := func() bool { return len(k().files) > 0 }
	rows := func() bool { b, _ := k().Batch(); return b != nil && len(b.Proposals) > 0 }
	picked := func() bool { return have() && k().open() }
	edits := func() bool {
		r, ok := k().Picked()
		return ok && r.Past == "" && scene.Changeable(r.Record.Ref().Kind)
	}
	way := func(w intake.Way) func() bool {
		return func() bool { r, ok := k().Picked(); return ok && r.Past == "" && r.allows(w) }
	}

	t.window("import.choose", "Choose files …", key("F"), "Reads tracks, photos and river levels in, several at once.")
	t.window("import.clock", "Clock of the device …", key("C"), "Puts the clock of the device of the file picked out right, by one moment known twice.")
	t.window("import.columns", "Columns …", key("L"), "Chooses which columns of a table are the time and the level.")
	t.window("import.gauge", "Gauge …", key("G"), "Sets a lag from the gauge to the beat, the level before the rise, and whether a dam works it.")
	add := t.add("import.night", "New night for these …", key("N"), "Writes up a night for the files; its evening is theirs.", have, func() error {
		c, err := k().NightCard()
		if err == nil {
			d.OpenCard(c)
		}
		return err
	})
	add.Opens, add.Writes = true, true
	who := t.add("import.rods", "Who fished …", key("W"), "Opens the card of the night, to say who fished.", func() bool { return have() && !k().Trip().IsZero() }, func() error {
		c, err := d.AmendCard(journal.Ref{Kind: journal.KindTrip, ID: k().Trip()})
		if err == nil {
			d.OpenCard(c)
		}
		return err
	})
	who.Opens, who.Writes = true, true
	t.add("import.copied", "Copy photos, or leave them", key("O"), "Says whether photo files are copied beside the journal or left where they are.", func() bool { return d.album != nil },
		plain(func() { k().SetCopied(!k().order.Copied) }))
	t.add("import.file-down", "Next file", ctrl("Down"), "Picks out the next file.", have, plain(func() { k().NextFile(1) }))
	t.add("import.file-up", "File before", ctrl("Up"), "Picks out the file before.", have, plain(func() { k().NextFile(-1) }))
	t.add("import.take-off", "Take the file off", key("X"), "Takes the file picked out off the list; nothing happens to the file.", have, plain(func() {
		if f, ok := k().File(); ok {
			k().Drop(f)
		}
	}))
	t.add("import.clear", "Begin anew", Key{}, "Takes all files off the list, with what was chosen.", have, plain(func() { k().Clear() }))

	t.menu = "Proposals"
	store := t.window("proposals.store", "Store what is accepted", ctrl("S"), "Stores what is accepted, and remembers what is rejected, as one change that one undo takes back.")
	store.Writes = true
	t.add("proposals.accept", "Accept, or leave", key("Space"), "Accepts the proposal picked out; the same again leaves it for another time.", picked, plain(func() { k().Toggle() }))
	t.add("proposals.reject", "Never again", key("Delete"), "Rejects the proposal picked out: once stored, it does not come back. The same again takes that back.",
		func() bool { r, ok := k().Picked(); return ok && r.Past == "" }, plain(func() { k().ToggleReject() }))
	amend := t.add("proposals.amend", "Change …", key("Return"), "Opens the proposal picked out as a card: its times, its pool and the rest.", edits, func() error {
		c, err := k().Card()
		if err == nil {
			d.OpenCard(c)
		}
		return err
	})
	amend.Opens = true
	t.add("proposals.keep", "What is written stands", key("K"), "Settles what the proposal contradicts: what is written stays as it is.", way(intake.KeepWritten), plain(func() { k().SettlePicked(intake.KeepWritten) }))
	t.add("proposals.take", "The proposal stands", key("T"), "Settles what the proposal contradicts: what is written takes its times and places, or gives way.", way(intake.TakeProposed), plain(func() { k().SettlePicked(intake.TakeProposed) }))
	t.add("proposals.both", "Both stand", key("B"), "Settles what the proposal contradicts: both are kept.", way(intake.TakeBoth), plain(func() { k().SettlePicked(intake.TakeBoth) }))
	t.add("proposals.all", "Accept all", key("A"), "Accepts all that is new and contradicts nothing.", rows, plain(func() { k().TickAll(true) }))
	t.add("proposals.none", "Accept none", shift("A"), "Leaves all for another time.", rows, plain(func() { k().TickAll(false) }))
	t.add("proposals.down", "Next proposal", key("Down"), "Picks out the next proposal.", rows, plain(func() { k().Next(1) }))
	t.add("proposals.up", "Proposal before", key("Up"), "Picks out the proposal before.", rows, plain(func() { k().Next(-1) }))
	t.add("proposals.let-go", "Let go of it", key("Escape"), "Puts the card away, else picks out nothing.",
		func() bool { return d.card != nil || !k().picked.ID.IsZero() }, plain(func() {
			if d.card != nil {
				d.CloseCard()
				return
			}
			k().Pick(journal.Ref{})
		}))
}
