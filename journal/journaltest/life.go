package journaltest

import (
	"errors"

	"gloamline/journal"
)

// Life does random acts to a journal: adds, amends and removes records of every
// kind, takes acts back and does them again. What it knows of the journal it reads
// from it, so several lives may follow one another in copies of one journal.
type Life struct {
	w *World
	j *journal.Journal
}

// Life begins on a journal, which is given a base and a night if it has none.
func (w *World) Life(j *journal.Journal) *Life {
	l := &Life{w, j}
	l.refresh()
	if len(w.Trips) == 0 {
		l.do("add", w.Base()...)
		l.do("add", w.Record(journal.KindTrip))
	}
	return l
}

// Acts does n acts. What the journal refuses since something else stands counts too.
func (l *Life) Acts(n int) {
	for range n {
		l.act()
	}
}

func (l *Life) act() {
	l.refresh()
	if len(l.w.Beats) == 0 || len(l.w.People) == 0 {
		l.do("add", l.w.Base()...)
		return
	}
	switch n := l.w.Rand.IntN(20); {
	case n < 3:
		l.do("add", l.w.Record(pick(l.w, journal.RecordKinds)))
	case n < 10:
		l.addEntry()
	case n < 15:
		l.amend()
	case n < 17:
		l.remove()
	case n < 19:
		l.allow(l.j.Undo())
	default:
		l.allow(l.j.Redo())
	}
}

// allow lets a journal refuse, but not fail.
func (l *Life) allow(_ journal.Change, err error) {
	if err == nil || journal.KindOf(err) == journal.NotFound {
		return
	}
	faults := journal.FieldErrors(err)
	for _, f := range faults {
		if f.Kind != journal.Conflict {
			panic(err)
		}
	}
	if len(faults) == 0 {
		panic(err)
	}
}

func (l *Life) do(did string, rs ...journal.Record) {
	l.allow(l.j.Do(did, journal.Batch{Put: rs}))
}

// refresh tells the world what new records may refer to.
func (l *Life) refresh() {
	w := l.w
	w.People, w.Flies, w.Files = nil, nil, nil
	people, err1 := journal.All[journal.Person](l.j)
	flies, err2 := journal.All[journal.Fly](l.j)
	files, err3 := journal.All[journal.Source](l.j)
	trips, err4 := l.j.Trips()
	beats, err5 := journal.All[journal.Beat](l.j)
	if err := errors.Join(err1, err2, err3, err4, err5); err != nil {
		panic(err)
	}
	for _, p := range people {
		w.People = append(w.People, p.ID)
	}
	for _, f := range flies {
		w.Flies = append(w.Flies, f.ID)
	}
	for _, f := range files {
		w.Files = append(w.Files, f.ID)
	}
	w.Trips, w.Beats, w.day = trips, beats, max(w.day, len(trips))
}

// night returns a night with what stands in it. Its runs have the slots after those
// that are taken.
func (l *Life) night() (*Night, bool) {
	if len(l.w.Trips) == 0 {
		l.do("add", l.w.Record(journal.KindTrip))
		return nil, false
	}
	n := l.w.Night(pick(l.w, l.w.Trips))
	log, err := l.j.Night(n.Trip.ID)
	if err != nil {
		panic(err)
	}
	n.Entries = log.Entries
	for _, r := range log.Runs(journal.ID{}) {
		at := int(log.At(r).Mid().Sub(n.at(evening))/slot) + 1
		n.slots[r.Rod] = max(n.slots[r.Rod], at)
	}
	return n, len(n.pools) > 0
}

func (l *Life) addEntry() {
	if n, ok := l.night(); ok {
		if e, ok := n.Entry(pick(l.w, journal.EntryKinds)); ok {
			l.do("add", e)
		}
	}
}

func (l *Life) amend() {
	n, ok := l.night()
	if !ok {
		return
	}
	if len(n.Entries) > 0 && l.w.Rand.IntN(3) > 0 {
		l.do("amend", n.Vary(pick(l.w, n.Entries)))
		return
	}
	switch l.w.Rand.IntN(4) {
	case 0:
		l.do("amend", l.w.Vary(n.Trip))
	case 1:
		l.do("amend", l.w.Vary(pick(l.w, l.w.Beats)))
	case 2:
		l.do("amend", l.w.record(journal.KindPerson, pick(l.w, l.w.People)))
	case 3:
		if len(l.w.Flies) > 0 {
			l.do("amend", l.w.record(journal.KindFly, pick(l.w, l.w.Flies)))
		}
	}
}

func (l *Life) remove() {
	n, ok := l.night()
	if !ok {
		return
	}
	switch k := l.w.Rand.IntN(8); {
	case k < 5 && len(n.Entries) > 0:
		l.allow(l.j.Remove(pick(l.w, n.Entries).Ref()))
	case k < 6:
		l.allow(l.j.Remove(n.Trip.Ref()))
	case k < 7 && len(l.w.Flies) > 0:
		l.allow(l.j.Remove(journal.Ref{Kind: journal.KindFly, ID: pick(l.w, l.w.Flies)}))
	default:
		l.allow(l.j.Remove(journal.Ref{Kind: journal.KindPerson, ID: pick(l.w, l.w.People)}))
	}
}
