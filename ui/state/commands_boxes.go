package state

import (
	"slices"

	"gloamline/journal"
)

// boxTable is the menu of the room of flies.
func (d *Desk) boxTable(t *tabler) {
	t.menu, t.room = "Flies", BoxRoom
	defer func() { t.room = "" }()
	open := func(make func() (*Card, error)) func() error {
		return func() error {
			c, err := make()
			if err == nil {
				d.OpenCard(c)
			}
			return err
		}
	}
	picked := func(kinds ...journal.Kind) func() bool {
		return func() bool {
			r := d.Boxes().Picked()
			return !r.ID.IsZero() && (len(kinds) == 0 || slices.Contains(kinds, r.Kind))
		}
	}
	fly := picked(journal.KindFly)
	writes := func(c *Command) *Command { c.Writes = true; return c }
	opens := func(c *Command) *Command { c.Opens = true; return writes(c) }

	opens(t.add("flies.new", "New fly …", key("F"), "Adds a fly: its length, silhouette and tone.", always, open(func() (*Card, error) { return d.FlyCard(journal.ID{}) })))
	opens(t.add("flies.box", "New box …", key("B"), "Adds a box and says what it is for.", always, open(func() (*Card, error) { return d.BoxCard(journal.ID{}) })))
	opens(t.add("flies.rule", "New house rule …", key("R"), "Adds a rule one fishes by: which flies in which light.", always, open(func() (*Card, error) { return d.RuleCard(journal.ID{}) })))
	writes(t.add("flies.usual", "The usual rules", Key{}, "Adds the rules that many fish by, marked as common practice.", always, func() error { return d.Boxes().UsualRules() }))
	opens(t.add("flies.amend", "Change …", key("Return"), "Opens the card of the fly, box or rule picked out.", picked(), open(d.boxRoomCard)))
	writes(t.add("flies.copy", "Another like it", key("D"), "Adds a fly like the one picked out, behind it in the same box.", fly, func() error { return d.Boxes().Copy() }))
	retire := writes(t.add("flies.retire", "Retire", key("T"), "Has the fly not offered from today on; nights keep it. The same again brings it back.", fly, func() error { return d.Boxes().Retire() }))
	retire.Title = func() string {
		if f, ok := d.Boxes().Fly(); ok && !f.Retired.IsZero() {
			return "Bring back"
		}
		return "Retire"
	}
	writes(t.add("flies.remove", "Remove what is picked out", key("Delete"), "Takes the fly, box or rule away; a fly that nights know can only be retired.", picked(), func() error { return d.Boxes().Remove() }))
	writes(t.add("flies.longer", "Longer", key(">"), "Makes the fly picked out a step longer.", fly, func() error { return d.Boxes().Longer(1) }))
	writes(t.add("flies.shorter", "Shorter", key("<"), "Makes the fly picked out a step shorter.", fly, func() error { return d.Boxes().Longer(-1) }))
	writes(t.add("flies.on", "A place on in its box", ctrl("Right"), "Moves the fly picked out one place on in its box.", fly, func() error { return d.Boxes().Shift(1) }))
	writes(t.add("flies.back", "A place back in its box", ctrl("Left"), "Moves the fly picked out one place back in its box.", fly, func() error { return d.Boxes().Shift(-1) }))
	step := func(by int) func() error { return plain(func() { d.Boxes().Next(by) }) }
	t.add("flies.next", "Next fly", key("Right"), "Picks out the next fly, box or rule.", always, step(1))
	t.add("flies.previous", "Fly before", key("Left"), "Picks out the fly, box or rule before.", always, step(-1))
	t.add("flies.down", "Next one", key("Down"), "Picks out the next one, as the arrow to the right does.", always, step(1))
	t.add("flies.up", "One before", key("Up"), "Picks out the one before, as the arrow to the left does.", always, step(-1))
	t.add("flies.order", "Next order", key("O"), "Shows the flies as they lie in the box, by length, by silhouette, by tone, in turn.", always, plain(func() {
		b := d.Boxes()
		b.SetOrder(FlyOrders[(slices.Index(FlyOrders, b.order)+1)%len(FlyOrders)])
	}))
	t.add("flies.let-go", "Let go of it", key("Escape"), "Puts the card away, or what is being drawn out back, else picks out nothing.",
		func() bool { b := d.Boxes(); return d.card != nil || b.drag != nil || !b.Picked().ID.IsZero() },
		plain(func() {
			b := d.Boxes()
			switch {
			case b.drag != nil:
				b.PutBack()
			case d.card != nil:
				d.CloseCard()
			default:
				b.Pick(journal.Ref{})
			}
		}))
}

// boxRoomCard is the card of what is picked out.
func (d *Desk) boxRoomCard() (*Card, error) {
	switch r := d.Boxes().Picked(); r.Kind {
	case journal.KindBox:
		return d.BoxCard(r.ID)
	case journal.KindRule:
		return d.RuleCard(r.ID)
	default:
		return d.FlyCard(r.ID)
	}
}
