package state

import (
	"errors"
	"slices"

	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// Preview is the night as it would be with what is accepted, and which of its entries
// are not written yet. It is nil while something waits to be settled or answered, or
// cannot be shown.
func (k *IntakeDesk) Preview() (*timeline.Night, map[journal.Ref]bool) {
	if k.preview != nil {
		return k.preview, k.ghosts
	}
	b, _ := k.Batch()
	if b == nil {
		return nil, nil
	}
	plan, err := b.Plan(k.choices(b))
	if err != nil {
		return nil, nil
	}
	set, err := k.d.loader.Setting(b.Log.Trip)
	if err != nil {
		return nil, nil
	}
	ghosts := map[journal.Ref]bool{}
	entries := slices.Clone(b.Log.Entries)
	entries = slices.DeleteFunc(entries, func(e journal.Entry) bool {
		return slices.Contains(plan.Remove, e.Ref()) || slices.ContainsFunc(plan.Put, func(r journal.Record) bool { return r.Ref() == e.Ref() })
	})
	for _, r := range plan.Put {
		switch r := r.(type) {
		case journal.Entry:
			entries = append(entries, r)
			ghosts[r.Ref()] = true
		case journal.Series:
			set.Gauges = append(slices.Clone(set.Gauges), r)
		}
	}
	n, err := timeline.Build(journal.NewLog(b.Log.Trip, entries), set)
	if err != nil {
		return nil, nil
	}
	k.preview, k.ghosts = n, ghosts
	return n, ghosts
}

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
