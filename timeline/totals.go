package timeline

import (
	"gloamline/journal"
	"gloamline/timeline/tally"
)

// count fills the totals of one rod: its contacts, its hours and its runs.
func count(rod int, r RodNight, all []Contact) Totals {
	t := Totals{OnBank: r.Bank.Length(), InWater: tally.Set(r.Water).Length(), Runs: len(r.Runs)}
	touched := make([]bool, len(r.Runs))
	for _, k := range all {
		if k.Rod != rod {
			continue
		}
		t.tell(k.Contact)
		if k.Run >= 0 {
			touched[k.Run] = true
		}
	}
	for _, is := range touched {
		if !is {
			t.Blank++
		}
	}
	return t
}

func (t *Totals) tell(k journal.Contact) {
	switch k.Touch {
	case journal.Landed:
		t.Landed++
	case journal.Lost:
		t.Lost++
	case journal.Pluck, journal.Pull:
		t.Touches++
	case journal.Follow, journal.Boil:
		t.Shows++
	}
	switch k.Fate.Or("") {
	case journal.Kept:
		t.Kept++
	case journal.Returned:
		t.Returned++
	}
}

// Plus returns the sum of two totals.
func (t Totals) Plus(o Totals) Totals {
	return Totals{
		Landed: t.Landed + o.Landed, Lost: t.Lost + o.Lost, Touches: t.Touches + o.Touches, Shows: t.Shows + o.Shows,
		Kept: t.Kept + o.Kept, Returned: t.Returned + o.Returned,
		OnBank: t.OnBank + o.OnBank, InWater: t.InWater + o.InWater,
		Runs: t.Runs + o.Runs, Blank: t.Blank + o.Blank,
	}
}

// Contacts returns how many contacts the totals hold.
func (t Totals) Contacts() int { return t.Landed + t.Lost + t.Touches + t.Shows }
