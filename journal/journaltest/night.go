package journaltest

import (
	"time"

	"gloamline/geo"
	"gloamline/journal"
)

// Night makes entries of one trip. Entries, as the test knows them to stand, are
// what anchored moments and photos may hang on.
type Night struct {
	Trip    journal.Trip
	Entries []journal.Entry
	w       *World
	noon    time.Time
	pools   []geo.Pool
	slots   map[journal.ID]int // runs made so far, by rod
}

// slot is what one run of a rod has to itself, so that no two overlap.
const (
	slot    = 12 * time.Minute
	evening = 9 * time.Hour // the first slot, from noon
	MaxRuns = 60            // of a rod in a night
)

// Night begins on the entries of a trip made by this world.
func (w *World) Night(t journal.Trip) *Night {
	n := w.night(t)
	for _, b := range w.Beats {
		if b.ID == t.Beat {
			n.pools = b.On(t.Evening).Pools
		}
	}
	return n
}

func (w *World) night(t journal.Trip) *Night {
	loc, err := t.Location()
	if err != nil {
		panic(err)
	}
	noon, _ := t.Evening.Night(loc)
	return &Night{Trip: t, w: w, noon: noon, slots: map[journal.ID]int{}}
}

// Fill makes n entries that stand together, without adding them to Entries
// twice; it leaves out a run when its rod has no room for one.
func (n *Night) Fill(count int) []journal.Entry {
	var out []journal.Entry
	for len(out) < count {
		e, ok := n.Entry(pick(n.w, journal.EntryKinds))
		if ok {
			out = append(out, e)
			n.Entries = append(n.Entries, e)
		}
	}
	return out
}

// Entry makes an entry of a kind; false if the rod that was drawn has no room
// for another run.
func (n *Night) Entry(k journal.Kind) (journal.Entry, bool) {
	h := journal.Head{ID: n.w.ID(), Trip: n.Trip.ID}
	if len(n.Trip.Rods) > 0 {
		h.Rod = pick(n.w, n.Trip.Rods).ID
	}
	h.When = n.when(h.ID)
	if k != journal.KindRun {
		return n.entry(k, h), true
	}
	at := n.slots[h.Rod]
	if at >= MaxRuns {
		return nil, false
	}
	n.slots[h.Rod]++
	start := n.at(evening + time.Duration(at)*slot)
	h.When = journal.Exact(start)
	if n.w.yes() {
		h.When = journal.About(start, time.Minute)
	}
	return n.run(h, start), true
}

// Vary makes another entry of the same identity, to amend e with. A run keeps
// its rod and its place in time.
func (n *Night) Vary(e journal.Entry) journal.Entry {
	h := e.Base()
	if r, ok := e.(journal.Run); ok {
		return n.run(r.Head, h.When.Lo.Add(h.When.Hi.Sub(h.When.Lo)/2))
	}
	h.When = n.when(h.ID)
	return n.entry(e.Ref().Kind, h)
}

func (n *Night) at(sinceNoon time.Duration) time.Time { return n.noon.Add(sinceNoon) }

// when draws a moment for the entry own. Only runs are hung on, and runs hang
// on nothing, so nothing goes round in a circle.
func (n *Night) when(own journal.ID) journal.When {
	at := n.at(8*time.Hour + time.Duration(n.w.Rand.Int64N(int64(10*time.Hour))).Round(time.Second))
	var runs []journal.ID
	for _, e := range n.Entries {
		if r, ok := e.(journal.Run); ok && r.ID != own {
			runs = append(runs, r.ID)
		}
	}
	kinds := journal.WhenKinds
	if len(runs) == 0 {
		kinds = []journal.WhenKind{journal.ExactTime, journal.AboutTime}
	}
	switch k := pick(n.w, kinds); k {
	case journal.ExactTime:
		return journal.Exact(at)
	case journal.AboutTime:
		return journal.About(at, time.Duration(n.w.Rand.IntN(20))*time.Minute)
	case journal.BetweenTime:
		if len(runs) > 1 && n.w.yes() {
			i := n.w.Rand.IntN(len(runs) - 1)
			return journal.When{Kind: k, Anchors: []journal.ID{runs[i], runs[i+1]}}
		}
		return journal.Between(at, at.Add(time.Duration(n.w.Rand.IntN(90))*time.Minute))
	default:
		return journal.When{Kind: k, Anchors: []journal.ID{pick(n.w, runs)}}
	}
}

func (n *Night) pool() journal.ID { return pick(n.w, n.pools).ID }

func (n *Night) run(h journal.Head, start time.Time) journal.Run {
	r := journal.Run{Head: n.rest(h), Pool: n.pool(), Bank: field(n.w, pick(n.w, banks)),
		Enter: field(n.w, n.w.place()), Leave: field(n.w, n.w.place())}
	r.Until = field(n.w, journal.Exact(start.Add(slot-2*time.Minute)))
	return r
}

// rest fills what is left of a head.
func (n *Night) rest(h journal.Head) journal.Head {
	h.Note, h.From, h.Warnings = "", journal.Origin{How: pick(n.w, journal.Hows)}, nil
	if n.w.yes() {
		h.Note = n.w.text()
	}
	if n.w.yes() {
		h.From.Source, h.From.Key = n.w.ID(), n.w.text()
	}
	if n.w.Rand.IntN(4) == 0 {
		h.Warnings = []journal.Warning{pick(n.w, journal.Warnings)}
	}
	return h
}
