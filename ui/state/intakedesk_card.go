package state

import (
	"gloamline/journal"
	"gloamline/ui/words"
)

// Card is a card on which the proposal picked out is changed: what it stores goes into the
// proposal, not into the journal. The night of the files is opened, since a card lives in
// one.
func (k *IntakeDesk) Card() (*Card, error) {
	row, ok := k.Picked()
	if !ok {
		return nil, errNoNight()
	}
	e, ok := row.Record.(journal.Entry)
	if !ok {
		return nil, &journal.Error{Op: "change", Kind: journal.Invalid, Err: words.NotChangeable()}
	}
	if trip := k.Trip(); trip != k.d.trip || k.d.night == nil {
		if err := k.d.Open(trip); err != nil {
			return nil, err
		}
	}
	c := k.d.entryCard(e, false)
	c.title = words.ProposalTitle(row.Times, row.What)
	draft := c.batch
	c.load = func() bool { // it is not in the journal; it is gone when it is no proposal
		_, ok := k.Row(row.Record.Ref())
		return ok
	}
	c.first = nil
	c.drop = func() { k.Reject(row.Key) }
	c.keep = func() error {
		var with []journal.Record // a fly described on the card
		for _, r := range draft().Put {
			if r.Ref() != e.Ref() {
				with = append(with, r)
			}
		}
		for _, r := range draft().Put {
			if r.Ref() == e.Ref() {
				k.extras[row.Key] = with
				return k.Edit(row.Key, r)
			}
		}
		return nil
	}
	return c.begin(), nil
}
