package state

import "gloamline/timeline/season"

// seasonTable is the commands of the room of a season.
func (d *Desk) seasonTable(t *tabler) {
	t.room, t.menu = SeasonRoom, "Season"
	defer func() { t.room = "" }()
	r := d.Season
	ready := func() bool { return r().Ready() }
	pick := func(id, title, k, help string, f func(s *SeasonDesk)) {
		t.add(id, title, key(k), help, ready, plain(func() { f(r()) }))
	}
	pick("season.next", "Next question", "Down", "Picks out the next question.", func(s *SeasonDesk) { s.Next(+1) })
	pick("season.before", "Question before", "Up", "Picks out the question before.", func(s *SeasonDesk) { s.Next(-1) })
	pick("season.first", "First question", "Home", "Picks out the first card, of all the nights together.", func(s *SeasonDesk) { s.Pick(0) })
	pick("season.last", "Last question", "End", "Picks out the last question, what is missing.", func(s *SeasonDesk) { s.Pick(SeasonCards - 1) })
	pick("season.open", "Open or close it", "Return", "Opens the question picked out, with its tables and plots, or closes it.", func(s *SeasonDesk) { s.Toggle(s.Picked()) })
	pick("season.open-all", "Open or close all", "A", "Opens every question, or closes them all.", func(s *SeasonDesk) { s.ToggleAll() })
	pick("season.tests", "The tests behind it", "S", "Shows the tests behind the question picked out in statisticians' words, or hides them.", func(s *SeasonDesk) { s.ToggleFull(s.Picked()) })
	step := func(f func(s *SeasonDesk, v *season.View)) func(s *SeasonDesk) {
		return func(s *SeasonDesk) { s.Change(func(v *season.View) { f(s, v) }) }
	}
	of := func(f func(o Offers, f *season.Filter)) func(s *SeasonDesk) {
		return step(func(s *SeasonDesk, v *season.View) { f(s.Offers(), &v.Filter) })
	}
	pick("season.year", "Next year fished", "Y", "Counts the nights of the next year fished, then of any year.", of(nextYear))
	pick("season.month", "Next month fished", "M", "Counts the nights of the next month fished, then of any month.", of(nextMonth))
	pick("season.beat", "Next beat fished", "B", "Counts the nights on the next beat, then on all of them.", of(nextBeat))
	pick("season.person", "Next person's rods", "W", "Counts only the rods of the next person, then all rods.", of(nextPerson))
	pick("season.trend", "Next trend of the river", "V", "Counts the nights with the next trend of the river, then all.", of(nextTrend))
	pick("season.clients", "With clients or without", "C", "Counts the nights with a client, those without, then both.", of(nextClients))
	pick("season.count", "What counts as a fish", "K", "Counts fish hooked, landed, every contact, or those that touched, in turn.",
		step(func(_ *SeasonDesk, v *season.View) { v.Measure = next(season.Measures, v.Measure, +1) }))
	pick("season.reset", "All nights", "0", "Counts all nights again, and as fish those hooked.", func(s *SeasonDesk) { s.Reset() })
	t.window("season.evenings", "From one evening to another …", key("D"), "Asks for the first and the last evening of the nights that count.")
	t.window("season.picture", "Save its page …", ctrl("P"), "Saves the question picked out with its plots and tables, and which nights it counts, as PDF, PNG or SVG.")
	t.window("season.table", "Save its tables …", key("E"), "Saves the tables of the question picked out as CSV, those of all from the first card.")
}
