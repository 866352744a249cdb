package intake

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
)

// RunSlack is how well the ends of a run are known from a track: on the walks kept for the
// check nine in ten lie within it.
const RunSlack = 3 * time.Minute

// track proposes the track itself and its runs. The part of another night is left out.
func (m *maker) track(i int) {
	s := &m.Sources[i]
	f := s.File
	var fixes []Fix
	for _, x := range f.Fixes {
		if x.At = x.At.Add(s.Record.Offset); m.inNight(x.At) {
			fixes = append(fixes, x)
		}
	}
	switch {
	case len(f.Fixes) == 0:
		m.remark(i, Remark{Kind: NoMoment})
		return
	case len(fixes) == 0:
		m.remark(i, Remark{Kind: OtherNight, At: f.Fixes[0].At.Add(s.Record.Offset)})
		return
	}
	if m.Rod.IsZero() {
		return // a question asks whose it is
	}
	m.walked = append(m.walked, fixes...)
	slices.SortStableFunc(m.walked, func(a, b Fix) int { return a.At.Compare(b.At) })

	kept, within := Thin(fixes)
	if len(kept) < len(fixes) {
		m.remark(i, Remark{Kind: TrackThinned, Count: len(kept), Of: len(fixes), Metres: float64(within)})
	}
	key := keyOf(f, "track/"+m.Log.Trip.Evening.String())
	m.add(Proposal{Key: key, Source: i, At: fixes[0].At, Confidence: 1, Ticked: true,
		Record: journal.Track{ID: m.id(key), Source: s.Record.ID, Trip: journal.Of(m.Log.Trip.ID), Rod: journal.Of(m.Rod), Fixes: kept}})

	detector := Usual()
	if m.order.Detector != nil {
		detector = *m.order.Detector
	}
	visits := Visits(m.layout, fixes, detector)
	if len(visits) == 0 {
		m.remark(i, Remark{Kind: NoRuns})
	}
	slack := max(RunSlack, spacing(fixes))
	for _, v := range visits {
		m.run(i, v, slack)
	}
}

// run proposes one run. Its key has the times of the device's own clock, so that an
// offset found later does not make another proposal of it.
func (m *maker) run(i int, v Visit, slack time.Duration) {
	off := m.Sources[i].Record.Offset
	key := keyOf(m.Sources[i].File, runElement(v, -off))
	d, decided := m.decidedRun(key, v, off)
	if decided {
		key = d.Key // as it was then: a detector may have moved its ends since
	}
	r := journal.Run{Head: m.head(i, "track", key, journal.About(v.From, slack)), Pool: v.Pool,
		Until: journal.Of(journal.About(v.To, slack)), Enter: journal.Of(v.Enter), Leave: journal.Of(v.Leave)}
	r.When, r.Until = m.inside(r.When), journal.Of(m.inside(r.Until.Or(journal.When{})))
	m.add(Proposal{Key: key, Source: i, Record: r, At: v.From, Confidence: v.Confidence, Visit: &v, Ticked: v.Confidence >= Doubtful})
}

// inside keeps a moment within the night.
func (m *maker) inside(w journal.When) journal.When {
	start, end := m.Log.Night()
	if w.Lo.Before(start) {
		w.Lo = start
	}
	if w.Hi.After(end) {
		w.Hi = end
	}
	return w
}

func runElement(v Visit, shift time.Duration) string {
	at := func(t time.Time) string { return t.Add(shift).UTC().Format(time.RFC3339) }
	return fmt.Sprintf("run/%s/%s/%s", v.Pool, at(v.From), at(v.To))
}

// decidedRun looks for a decision on a run of this file at this pool that shares more than
// half of the shorter of the two in time.
func (m *maker) decidedRun(key string, v Visit, off time.Duration) (journal.Decision, bool) {
	sum, _, _ := strings.Cut(key, "#")
	var found journal.Decision
	most := time.Duration(0)
	for _, d := range m.past {
		part := strings.Split(strings.TrimPrefix(d.Key, sum+"#"), "/")
		if len(part) != 4 || part[0] != "run" || part[1] != v.Pool.String() {
			continue
		}
		from, err1 := time.Parse(time.RFC3339, part[2])
		to, err2 := time.Parse(time.RFC3339, part[3])
		if err1 != nil || err2 != nil {
			continue
		}
		both := common(from.Add(off), to.Add(off), v.From, v.To)
		if both > most && 2*both > min(to.Sub(from), v.To.Sub(v.From)) {
			found, most = d, both
		}
	}
	return found, most > 0
}

// common is how long two stretches of time last together.
func common(a, b, c, d time.Time) time.Duration {
	if c.After(a) {
		a = c
	}
	if d.Before(b) {
		b = d
	}
	return max(0, b.Sub(a))
}
