package state

import (
	"fmt"

	"gloamline/journal"
	"gloamline/ui/words"
)

// guestTable is the commands of the room in which things are shown to somebody.
func (d *Desk) guestTable(t *tabler) {
	t.room, t.menu = GuestRoom, "Guest"
	defer func() { t.room = "" }()
	g := d.Guest
	some := func() bool { return d.night != nil }
	seen := func() bool { return some() && g().Handout() != nil } // not while nights are read
	fish := func() bool { return seen() && len(g().Handout().Seen()) > 0 }
	play := t.add("guest.play", "Play", key("Space"), "Plays it as it went on, or stops.", seen, plain(func() { g().Play(!g().Playing()) }))
	play.Title = func() string {
		if d.guest != nil && d.guest.play {
			return words.PauseWord()
		}
		return words.PlayWord()
	}
	t.add("guest.next", "Next fish", key("Right"), "Shows the next fish, with its fly and its light.", fish, plain(func() { g().Next(+1) }))
	t.add("guest.before", "Fish before", key("Left"), "Shows the fish before.", fish, plain(func() { g().Next(-1) }))
	t.add("guest.whole", "All of it", key("Home"), "Shows all of it at once.", seen, plain(func() { g().Whole() }))
	t.add("guest.faster", "Faster", key("+"), "Plays faster.", some, plain(func() { d.ChangeRate(+1) }))
	t.add("guest.slower", "Slower", key("-"), "Plays slower.", some, plain(func() { d.ChangeRate(-1) }))
	t.add("guest.person", "Next recipient", key("W"), "Shows it to the next person, as that one may see it.", some, plain(func() {
		g().SetWho(next(withNone(ids(g().People())), g().Who(), +1))
	}))
	t.add("guest.night", "This night", key("N"), "Shows the open night.", some, plain(func() { g().SetPool(journal.ID{}) }))
	t.add("guest.pool", "All nights on the next pool", key("P"), "Shows every fish of all nights on a pool, then of the next.", some, plain(func() {
		pools := withNone(ids(g().Pools()))
		to := next(pools, g().Pool(), +1)
		if to.IsZero() && len(pools) > 1 {
			to = pools[1]
		}
		g().SetPool(to)
	}))
	for i, x := range journal.AllShows {
		t.add("guest.show-"+string(x), words.ShowsName(x), key(fmt.Sprint(i+1)), words.ShowsHelp(x), some, func() error { return g().Toggle(x) })
	}
	t.window("guest.full", "On the whole screen", key("Return"), "Fills the screen with what is shown and nothing else; Escape leaves.")
	t.window("guest.card", "True size of this screen …", key("C"), "Measures the screen with a bank card, so that flies stand at their true size.")
	t.window("guest.save", "Save what is shown …", ctrl("P"), "Saves what is shown, and nothing else, as a page, as a file that plays in a browser, or as a picture that moves.")
}

// withNone has nobody, or no pool, come first.
func withNone(list []journal.ID) []journal.ID { return append([]journal.ID{{}}, list...) }
