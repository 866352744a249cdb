package storetest

import (
	"maps"
	"os"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/journaltest"
)

// walk takes a journal through random acts and follows with a naive model: all
// the states it has been in, one on top of the other.
type walk struct {
	t     *testing.T
	s     journal.Store
	again func() journal.Store
	j     *journal.Journal
	w     *journaltest.World

	nights       map[journal.ID]*journaltest.Night
	now          state
	past, future []state
	ever         map[journal.Ref]bool // records that have been
	seq          uint64
	did          map[string]int
}

const (
	walks     = 3  // at least
	mostWalks = 30 // until every act was done
	acts      = 160
)

func seed() uint64 {
	if n, err := strconv.ParseUint(os.Getenv("GLOAMLINE_SEED"), 10, 64); err == nil {
		return n
	}
	return uint64(time.Now().UnixNano())
}

func testWalk(t *testing.T, open Open) {
	first := seed()
	did := map[string]int{}
	for n := uint64(0); n < walks || n < mostWalks && missing(did) != ""; n++ {
		t.Logf("walk of GLOAMLINE_SEED=%d", first+n)
		s, again := open(t)
		w := &walk{t: t, s: s, again: again, w: journaltest.New(first + n), nights: map[journal.ID]*journaltest.Night{},
			now: state{}, ever: map[journal.Ref]bool{}, did: did}
		w.reopen(s)
		w.run()
	}
	require.Empty(t, missing(did), "never done in %d walks", mostWalks)
}

// missing names an act that no walk has done yet, empty if all were done.
func missing(did map[string]int) string {
	acts := []string{"amend", "remove", "remove trip", "refused", "undo", "redo", "again", "let go"}
	for _, k := range append(slices.Clone(journal.RecordKinds), journal.EntryKinds...) {
		acts = append(acts, "add "+string(k))
	}
	for _, act := range acts {
		if did[act] == 0 {
			return act
		}
	}
	return ""
}

func (w *walk) run() {
	w.put("add", w.w.Base()...)
	w.put("add", w.w.Record(journal.KindTrip))
	for n := range acts {
		w.act()
		w.equal(w.now)
		if n%16 == 0 {
			sound(w.t, w.s)
		}
	}
	for len(w.future) > 0 {
		w.redo()
	}
	end := w.now
	for len(w.past) > 0 {
		w.undo()
	}
	w.equal(state{})
	_, ok := w.j.CanUndo()
	require.False(w.t, ok)
	w.reopen(w.again())
	for len(w.future) > 0 {
		w.redo()
	}
	w.equal(end)
	sound(w.t, w.s)
	_, ok = w.j.CanRedo()
	require.False(w.t, ok)
	require.NoError(w.t, w.j.Close())
}

func (w *walk) act() {
	w.refresh()
	switch n := w.w.Rand.IntN(20); {
	case n < 3:
		k := pick(w, journal.RecordKinds)
		switch { // a night needs its beat and somebody to fish it
		case k == journal.KindTrip && len(w.w.Beats) == 0:
			k = journal.KindBeat
		case k == journal.KindTrip && len(w.w.People) == 0:
			k = journal.KindPerson
		}
		w.put("add", w.w.Record(k))
	case n < 10:
		w.addEntry()
	case n < 13:
		w.amend()
	case n < 15:
		w.remove()
	case n < 17:
		w.undo()
	case n < 19:
		w.redo()
	default:
		w.did["again"]++
		w.reopen(w.again())
	}
}

func pick[T any](w *walk, list []T) T { return list[w.w.Rand.IntN(len(list))] }

func (w *walk) reopen(s journal.Store) {
	w.s = s
	j, err := journal.Open(s, time.Now)
	require.NoError(w.t, err)
	w.j = j
}

// refresh tells the world what new records may refer to.
func (w *walk) refresh() {
	w.w.Beats, w.w.People, w.w.Flies, w.w.Files, w.w.Trips = nil, nil, nil, nil, nil
	for _, n := range w.nights {
		n.Entries = nil
	}
	for _, r := range sorted(w.now) {
		switch rec := w.now[r].(type) {
		case journal.Beat:
			w.w.Beats = append(w.w.Beats, rec)
		case journal.Person:
			w.w.People = append(w.w.People, rec.ID)
		case journal.Fly:
			w.w.Flies = append(w.w.Flies, rec.ID)
		case journal.Source:
			w.w.Files = append(w.w.Files, rec.ID)
		case journal.Trip:
			w.w.Trips = append(w.w.Trips, rec)
		}
	}
	for _, t := range w.w.Trips {
		if w.nights[t.ID] == nil {
			w.nights[t.ID] = w.w.Night(t)
		}
		w.nights[t.ID].Trip = t
		w.nights[t.ID].Entries = w.now.entries(t.ID)
	}
}

// missing reports whether there is too little to make a night of.
func (w *walk) missing() bool {
	return len(w.w.Beats) == 0 || len(w.w.People) == 0
}

func (w *walk) addEntry() {
	if len(w.w.Trips) == 0 {
		if !w.missing() {
			w.put("add", w.w.Record(journal.KindTrip))
		}
		return
	}
	if e, ok := w.nights[pick(w, w.w.Trips).ID].Entry(pick(w, journal.EntryKinds)); ok {
		w.put("add", e)
	}
}

func (w *walk) amend() {
	refs := sorted(w.now)
	if len(refs) == 0 {
		return
	}
	r := w.now[pick(w, refs)]
	if e, ok := r.(journal.Entry); ok {
		w.put("amend", w.nights[e.Base().Trip].Vary(e))
		return
	}
	w.put("amend", w.w.Vary(r))
}

// put puts records and says in the model what must come of it.
func (w *walk) put(act string, rs ...journal.Record) {
	next := maps.Clone(w.now)
	for _, r := range rs {
		next[r.Ref()] = r
	}
	for _, r := range rs {
		if e, ok := r.(journal.Entry); ok {
			h := e.Base()
			if len(h.When.Anchors) > 0 && h.When.Lo.IsZero() {
				s := next.log(h.Trip).Spread(h.When)
				h.When.Lo, h.When.Hi = s.Lo.UTC(), s.Hi.UTC()
				next[r.Ref()] = e.WithHead(h)
			}
		}
	}
	c, err := w.j.Do(act, journal.Batch{Put: rs})
	if !w.done(err, act) {
		return
	}
	for _, r := range rs {
		w.did[act+" "+string(r.Ref().Kind)]++
		w.did[act]++
		w.ever[r.Ref()] = true
	}
	w.step(c, next)
}

func (w *walk) remove() {
	refs := sorted(w.now)
	if len(refs) == 0 {
		return
	}
	r := pick(w, refs)
	if hung := w.hungOn(); len(hung) > 0 && w.w.Rand.IntN(3) == 0 {
		r = pick(w, hung)
	}
	next := maps.Clone(w.now)
	delete(next, r)
	act := "remove"
	if r.Kind == journal.KindTrip {
		act = "remove trip"
		maps.DeleteFunc(next, func(e journal.Ref, _ journal.Record) bool { return e.Trip == r.ID })
	}
	if !r.Trip.IsZero() {
		w.letGo(next, r)
	}
	c, err := w.j.Remove(r)
	if !w.done(err, act) {
		return
	}
	w.did[act]++
	w.step(c, next)
}

// hungOn returns the entries that moments of others hang on.
func (w *walk) hungOn() []journal.Ref {
	var out []journal.Ref
	for _, r := range sorted(w.now) {
		if e, ok := w.now[r].(journal.Entry); ok {
			for _, id := range e.Base().When.Anchors {
				out = append(out, journal.Ref{Kind: journal.KindRun, Trip: r.Trip, ID: id})
			}
		}
	}
	return out
}

// letGo says what becomes of entries that hung on the one removed: their
// moments keep the bounds they had, and a photo no longer shows it.
func (w *walk) letGo(next state, removed journal.Ref) {
	before := w.now.log(removed.Trip)
	for _, e := range next.entries(removed.Trip) {
		h := e.Base()
		if slices.Contains(h.When.Anchors, removed.ID) {
			h.When = h.When.Freeze(before.Spread(h.When))
			e = e.WithHead(h)
			w.did["let go"]++
		}
		if p, ok := e.(journal.Photo); ok && p.Of == journal.Of(removed.ID) {
			p.Of = journal.Field[journal.ID]{}
			e = p
		}
		next[e.Ref()] = e
	}
}

// done says whether an act was carried out. What is made is valid, so it can
// only be refused because something else stands.
func (w *walk) done(err error, act string) bool {
	if err == nil {
		return true
	}
	faults := journal.FieldErrors(err)
	require.NotEmpty(w.t, faults, "%s: %v", act, err)
	for _, f := range faults {
		require.Equal(w.t, journal.Conflict, f.Kind, "%s: %v", act, err)
	}
	w.did["refused"]++
	return false
}

// step takes the model to its next state.
func (w *walk) step(c journal.Change, next state) {
	if c.ID.IsZero() { // it changed nothing
		return
	}
	w.seq++
	require.Equal(w.t, w.seq, c.Seq)
	w.past = append(w.past, w.now)
	w.now, w.future = next, nil
}

func (w *walk) undo() {
	_, err := w.j.Undo()
	if len(w.past) == 0 {
		require.Equal(w.t, journal.NotFound, journal.KindOf(err))
		return
	}
	require.NoError(w.t, err)
	w.seq++
	w.did["undo"]++
	last := len(w.past) - 1
	w.future = append(w.future, w.now)
	w.now, w.past = w.past[last], w.past[:last]
}

func (w *walk) redo() {
	_, err := w.j.Redo()
	if len(w.future) == 0 {
		require.Equal(w.t, journal.NotFound, journal.KindOf(err))
		return
	}
	require.NoError(w.t, err)
	w.seq++
	w.did["redo"]++
	last := len(w.future) - 1
	w.past = append(w.past, w.now)
	w.now, w.future = w.future[last], w.future[:last]
}
