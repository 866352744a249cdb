package state

import (
	"errors"

	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/ui/words"
)

// Commit stores what is accepted and rejected as one change, taken back by one undo, with
// the originals asked for copied before. The files stay: what is left can be chosen still.
func (k *IntakeDesk) Commit() (journal.Change, error) {
	b, err := k.Batch()
	if b == nil {
		return journal.Change{}, err
	}
	plan, err := b.Plan(k.choices(b))
	if unsettled := (*intake.UnsettledError)(nil); errors.As(err, &unsettled) {
		return journal.Change{}, words.Unsettled(len(unsettled.Keys))
	}
	if err != nil {
		return journal.Change{}, err
	}
	if len(plan.Put)+len(plan.Remove) == 0 {
		return journal.Change{}, nil
	}
	for key, c := range k.choices(b) {
		if c.Do == intake.Accept && c.Record != nil {
			plan.Put = append(plan.Put, k.extras[key]...)
		}
	}
	if err := k.d.j.Try(plan); err != nil {
		return journal.Change{}, err
	}
	for _, x := range b.Originals(plan) {
		if k.d.album == nil {
			break // SetCopied does not let it come to this
		}
		if err := k.d.album.Keep(x.Path, x.SHA256, x.Format); err != nil {
			what, do := words.NotCopied(err, x.Path)
			return journal.Change{}, words.Told{What: what, Do: do}
		}
	}
	var c journal.Change
	k.d.act(func() {
		if c, err = k.d.j.Do("import", plan); err == nil {
			k.chosen = intake.Choices{}
			k.forget()
		}
	})
	return c, err
}
