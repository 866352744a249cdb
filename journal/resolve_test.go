package journal_test

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"gloamline/journal"
)

func logOf(es ...journal.Entry) *journal.Log { return journal.NewLog(trip(), es) }

func span(h1, m1, h2, m2 int) journal.Spread {
	return journal.Spread{Lo: clock(h1, m1), Hi: clock(h2, m2)}
}

// Ensure that every anchored moment follows its anchors.
func TestSpreadAnchored(t *testing.T) {
	noon, nextNoon := clock(12, 0), clock(11, 0).Add(time.Hour)
	first := until(run("first", "anna", journal.About(clock(22, 40), 0)), journal.About(clock(23, 20), 0)) // 22:30-22:50 to 23:10-23:30
	second := until(run("second", "anna", at(0, 0)), at(1, 0))
	inFirst := contact("in first", "anna", at(23, 0))
	alone := contact("alone", "anna", at(2, 0))
	colms := contact("colms", "colm", at(0, 30))
	pause := journal.Break{Head: head("pause", "anna", at(1, 10)), Until: journal.Of(at(1, 40))}
	note1, early := note("note", at(0, 30)), note("early", at(12, 20))
	l := logOf(first, second, inFirst, alone, colms, pause, note1, early)
	for name, c := range map[string]struct {
		w    journal.When
		want journal.Spread
	}{
		"exact":                         {at(23, 0), span(23, 0, 23, 0)},
		"within":                        {journal.Within(id("first")), span(22, 30, 23, 30)},
		"after a fish in a run":         {journal.After(id("in first")), span(23, 0, 23, 30)},
		"before a fish in a run":        {journal.Before(id("in first")), span(22, 30, 23, 0)},
		"after a fish in no run":        {journal.After(id("alone")), span(2, 0, 3, 0)},
		"before a fish in no run":       {journal.Before(id("alone")), span(1, 0, 2, 0)},
		"after another rod's fish":      {journal.After(id("colms")), span(0, 30, 1, 30)},
		"after what concerns all":       {journal.After(id("note")), span(0, 30, 1, 30)},
		"after a run":                   {journal.After(id("second")), span(1, 0, 2, 0)},
		"before a run":                  {journal.Before(id("second")), span(23, 0, 0, 0)},
		"after a break":                 {journal.After(id("pause")), span(1, 40, 2, 40)},
		"between two runs":              {journal.When{Kind: journal.BetweenTime, Anchors: []journal.ID{id("first"), id("second")}}, span(23, 10, 0, 0)},
		"between, told the wrong way":   {journal.When{Kind: journal.BetweenTime, Anchors: []journal.ID{id("alone"), id("in first")}}, span(23, 0, 2, 0)},
		"before the first thing":        {journal.Before(id("early")), journal.Spread{Lo: noon, Hi: clock(12, 20)}},
		"anchor gone, bounds kept":      {journal.When{Kind: journal.AfterTime, Anchors: []journal.ID{id("gone")}, Lo: clock(22, 0), Hi: clock(23, 0)}, span(22, 0, 23, 0)},
		"anchor gone, never had bounds": {journal.After(id("gone")), journal.Spread{Lo: noon, Hi: nextNoon}},
		"within what is no run":         {journal.Within(id("alone")), journal.Spread{Lo: noon, Hi: nextNoon}},
		"nothing known":                 {journal.When{}, journal.Spread{Lo: noon, Hi: nextNoon}},
	} {
		t.Run(name, func(t *testing.T) { assert.Equal(t, c.want, l.Spread(c.w)) })
	}
}

// Ensure that of several runs in which a fish may lie the one begun last is
// taken, and of two begun together the one that ended first.
func TestSpreadInWhichRun(t *testing.T) {
	for _, words := range [][2]string{{"a", "b"}, {"b", "a"}} {
		l := logOf(
			until(run(words[0], "anna", at(22, 0)), journal.About(clock(23, 30), 0)),
			until(run(words[1], "anna", journal.About(clock(23, 25), 0)), at(0, 30)),
			contact("fish", "anna", at(23, 30)),
		)
		assert.Equal(t, span(23, 30, 0, 30), l.Spread(journal.After(id("fish"))))
		assert.Equal(t, span(23, 15, 23, 30), l.Spread(journal.Before(id("fish"))))
		l = logOf(
			until(run(words[0], "anna", at(23, 0)), at(0, 0)),
			until(run(words[1], "anna", at(23, 0)), at(0, 30)),
			contact("fish", "anna", at(23, 30)),
		)
		assert.Equal(t, span(23, 30, 0, 0), l.Spread(journal.After(id("fish"))))
	}
}

// Ensure that chains of anchors are followed to their end.
func TestSpreadChain(t *testing.T) {
	l := logOf(
		until(run("r", "anna", at(22, 0)), at(23, 0)),
		contact("a", "anna", journal.Within(id("r"))),
		contact("b", "anna", journal.After(id("a"))),
		contact("c", "anna", journal.After(id("b"))),
		note("d", journal.Before(id("c"))),
	)
	b, _ := l.Find(id("b"))
	assert.Equal(t, span(22, 0, 23, 0), l.At(b))
	d, _ := l.Find(id("d"))
	assert.Equal(t, span(22, 0, 23, 0), l.At(d))
}

// Ensure that moments which go round in a circle keep their own bounds,
// whichever stands first, and that what hangs on them still follows.
func TestSpreadCircle(t *testing.T) {
	round := func(word, anchor string, h int) journal.Note {
		return note(word, journal.When{Kind: journal.AfterTime, Anchors: []journal.ID{id(anchor)}, Lo: clock(h, 0), Hi: clock(h, 30)})
	}
	a, b, c := round("a", "b", 22), round("b", "c", 23), round("c", "a", 0)
	d := note("d", journal.After(id("b")))
	l := logOf(a, b, c, d)
	assert.Equal(t, span(22, 0, 22, 30), l.At(a))
	assert.Equal(t, span(23, 0, 23, 30), l.At(b))
	assert.Equal(t, span(0, 0, 0, 30), l.At(c))
	assert.Equal(t, span(23, 0, 0, 30), l.At(d))

	// a run that ends after a fish within it
	r := until(run("r", "anna", at(22, 0)), journal.After(id("f")))
	f := contact("f", "anna", journal.When{Kind: journal.WithinTime, Anchors: []journal.ID{id("r")}, Lo: clock(22, 0), Hi: clock(23, 0)})
	l = logOf(r, f)
	assert.Equal(t, span(22, 0, 23, 0), l.At(f))
	from, _ := l.RunSpan(r)
	assert.Equal(t, span(22, 0, 22, 0), from)
}

func TestRunSpan(t *testing.T) {
	open := run("open", "anna", at(22, 30))
	stopped := trip()
	stopped.Rods[0].Stop = journal.Of(at(2, 0))
	for name, c := range map[string]struct {
		trip    journal.Trip
		r       journal.Run
		entries []journal.Entry
		to      journal.Spread
	}{
		"its own end":              {trip(), until(open, journal.About(clock(23, 0), 0)), []journal.Entry{run("next", "anna", at(22, 45))}, span(22, 50, 23, 10)},
		"an end before it begins":  {trip(), until(open, at(22, 0)), nil, span(22, 30, 22, 30)},
		"the next run":             {trip(), open, []journal.Entry{run("later", "anna", at(1, 0)), run("next", "anna", journal.About(clock(23, 45), 0))}, span(23, 35, 23, 55)},
		"not another rod's run":    {trip(), open, []journal.Entry{run("next", "colm", at(23, 0)), run("later", "anna", at(1, 0))}, span(1, 0, 1, 0)},
		"not an earlier run":       {trip(), open, []journal.Entry{run("earlier", "anna", at(22, 0)), run("next", "anna", at(23, 0))}, span(23, 0, 23, 0)},
		"a break":                  {trip(), open, []journal.Entry{journal.Break{Head: head("tea", "anna", at(23, 15))}, run("next", "anna", at(0, 0))}, span(23, 15, 23, 15)},
		"everybody's break":        {trip(), open, []journal.Entry{journal.Break{Head: head("tea", "", at(23, 15))}}, span(23, 15, 23, 15)},
		"not another rod's break":  {trip(), open, []journal.Entry{journal.Break{Head: head("tea", "colm", at(23, 15))}}, span(22, 30, 22, 30)},
		"the rod's end":            {trip(), open, []journal.Entry{journal.End{Head: head("end", "anna", at(1, 30))}}, span(1, 30, 1, 30)},
		"everybody's end":          {trip(), open, []journal.Entry{journal.End{Head: head("end", "", at(1, 30))}}, span(1, 30, 1, 30)},
		"not another rod's end":    {trip(), open, []journal.Entry{journal.End{Head: head("end", "colm", at(1, 30))}}, span(22, 30, 22, 30)},
		"the rod stopped":          {stopped, open, nil, span(2, 0, 2, 0)},
		"the last fish":            {trip(), open, []journal.Entry{contact("f1", "anna", at(23, 0)), contact("f2", "anna", journal.About(clock(23, 30), 0)), contact("f3", "colm", at(0, 30))}, span(23, 20, 23, 40)},
		"not a fish that hangs on": {trip(), open, []journal.Entry{contact("f", "anna", journal.When{Kind: journal.WithinTime, Anchors: []journal.ID{id("open")}, Lo: clock(23, 0), Hi: clock(1, 0)})}, span(22, 30, 22, 30)},
		"nothing":                  {trip(), open, nil, span(22, 30, 22, 30)},
		"not a run that hangs on":  {trip(), open, []journal.Entry{contact("f", "anna", journal.Within(id("open"))), run("next", "anna", journal.After(id("f"))), journal.End{Head: head("end", "anna", at(1, 0))}}, span(1, 0, 1, 0)},
		"a run said to come after": {trip(), open, []journal.Entry{run("next", "anna", journal.After(id("open")))}, span(22, 30, 23, 30)},
	} {
		t.Run(name, func(t *testing.T) {
			l := journal.NewLog(c.trip, append([]journal.Entry{c.r}, c.entries...))
			from, to := l.RunSpan(c.r)
			assert.Equal(t, span(22, 30, 22, 30), from)
			assert.Equal(t, c.to, to)
		})
	}
}

// Ensure that a run that is not in the log, such as one being edited, has its
// span as if it were.
func TestRunSpanOfDraft(t *testing.T) {
	l := logOf(run("r", "anna", at(22, 30)), run("next", "anna", at(0, 0)))
	from, to := l.RunSpan(run("r", "anna", at(23, 0)))
	assert.Equal(t, span(23, 0, 23, 0), from)
	assert.Equal(t, span(0, 0, 0, 0), to)
	_, to = l.RunSpan(until(run("r", "anna", at(22, 30)), at(23, 10)))
	assert.Equal(t, span(23, 10, 23, 10), to)
	_, to = l.RunSpan(run("r", "colm", at(22, 30)))
	assert.Equal(t, span(22, 30, 22, 30), to, "given to a rod that has no further run")
	assert.Equal(t, span(1, 0, 1, 0), l.At(run("r", "anna", at(1, 0))))
}

// tangle draws a night in which anything may hang on anything.
func tangle(t *rapid.T, most int) []journal.Entry {
	n := rapid.IntRange(1, most).Draw(t, "entries")
	name := func(i int) string { return fmt.Sprint("entry ", i) }
	when := func() journal.When {
		anchor := func() journal.ID { return id(name(rapid.IntRange(0, n).Draw(t, "anchor"))) }
		min := time.Duration(rapid.IntRange(0, 600).Draw(t, "minute")) * time.Minute
		var w journal.When
		switch rapid.SampledFrom(journal.WhenKinds).Draw(t, "kind") {
		case journal.ExactTime:
			return journal.Exact(clock(21, 0).Add(min))
		case journal.AboutTime:
			return journal.About(clock(21, 0).Add(min), 0)
		case journal.BetweenTime:
			w = journal.When{Kind: journal.BetweenTime, Anchors: []journal.ID{anchor(), anchor()}}
		case journal.WithinTime:
			w = journal.Within(anchor())
		case journal.BeforeTime:
			w = journal.Before(anchor())
		default:
			w = journal.After(anchor())
		}
		if rapid.Bool().Draw(t, "bounds") {
			w.Lo, w.Hi = clock(21, 0).Add(min), clock(21, 30).Add(min)
		}
		return w
	}
	var es []journal.Entry
	for i := range n {
		who := rapid.SampledFrom([]string{"anna", "colm"}).Draw(t, "rod")
		switch rapid.IntRange(0, 4).Draw(t, "sort") {
		case 0, 1:
			r := run(name(i), who, when())
			if rapid.Bool().Draw(t, "until") {
				r.Until = journal.Of(when())
			}
			es = append(es, r)
		case 2:
			es = append(es, contact(name(i), who, when()))
		case 3:
			es = append(es, journal.Break{Head: head(name(i), who, when()), Until: journal.Of(when())})
		default:
			es = append(es, note(name(i), when()))
		}
	}
	return es
}

// Ensure that however entries hang on each other every moment is resolved, runs
// forward, and is the same whatever order the entries come in.
func TestResolveTangles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		es := tangle(t, 12)
		l := logOf(es...)
		shuffled := append([]journal.Entry{}, es...)
		rand.New(rand.NewPCG(1, rapid.Uint64().Draw(t, "seed"))).Shuffle(len(es), func(a, b int) { shuffled[a], shuffled[b] = shuffled[b], shuffled[a] })
		m := logOf(shuffled...)
		for _, e := range es {
			s := l.At(e)
			assert.False(t, s.Lo.IsZero() || s.Hi.IsZero())
			assert.False(t, s.Hi.Before(s.Lo), "%v", s)
			assert.Equal(t, s, m.At(e))
			if r, ok := e.(journal.Run); ok {
				from, to := l.RunSpan(r)
				assert.False(t, to.Hi.Before(from.Lo), "%v %v", from, to)
				assert.False(t, to.Hi.Before(to.Lo))
				from2, to2 := m.RunSpan(r)
				assert.Equal(t, [2]journal.Spread{from, to}, [2]journal.Spread{from2, to2})
			}
		}
		assert.Equal(t, l.Sorted(), m.Sorted())
	})
}

// Ensure that a long night in which every open run hangs on the one before is
// resolved at once, not in exponential time.
func TestResolveLongChain(t *testing.T) {
	es := []journal.Entry{run("run 0", "anna", at(21, 0))}
	for i := 1; i < 200; i++ {
		es = append(es, run(fmt.Sprint("run ", i), "anna", journal.After(id(fmt.Sprint("run ", i-1)))))
	}
	l := logOf(es...)
	assert.Len(t, l.Runs(id("rod of anna")), 200)
}

func night50() []journal.Entry {
	var es []journal.Entry
	for i := range 50 {
		who := []string{"anna", "colm"}[i%2]
		word := fmt.Sprint("entry ", i)
		minute := clock(21, 30).Add(time.Duration(i/2) * 15 * time.Minute)
		switch i / 2 % 5 {
		case 0:
			es = append(es, run(word, who, journal.About(minute, 0)))
		case 1:
			es = append(es, contact(word, who, journal.Within(id(fmt.Sprint("entry ", i-2)))))
		case 2:
			es = append(es, contact(word, who, journal.After(id(fmt.Sprint("entry ", i-2)))))
		case 3:
			es = append(es, until(run(word, who, journal.Exact(minute)), journal.Exact(minute.Add(20*time.Minute))))
		default:
			es = append(es, note(word, journal.Exact(minute)))
		}
	}
	return es
}

func BenchmarkNewLogSorted50(b *testing.B) {
	es, tr := night50(), trip()
	for b.Loop() {
		journal.NewLog(tr, es).Sorted()
	}
}

// renamed returns the entry with every identity exchanged for another.
func renamed(e journal.Entry, salt string) journal.Entry {
	other := func(w journal.When) journal.When {
		var as []journal.ID
		for _, a := range w.Anchors {
			as = append(as, id(salt+a.String()))
		}
		w.Anchors = as
		return w
	}
	h := e.Base()
	h.ID, h.When = id(salt+h.ID.String()), other(h.When)
	switch v := e.WithHead(h).(type) {
	case journal.Run:
		if u, ok := v.Until.Get(); ok {
			v.Until = journal.Of(other(u))
		}
		return v
	case journal.Break:
		v.Until = journal.Of(other(v.Until.Or(journal.When{})))
		return v
	default:
		return v
	}
}

// Ensure that a night means the same whatever random identities its entries
// were given.
func TestResolveIgnoresIdentities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		es := tangle(t, 8)
		var rs []journal.Entry
		for _, e := range es {
			rs = append(rs, renamed(e, "other"))
		}
		l, m := logOf(es...), logOf(rs...)
		for i, e := range es {
			assert.Equal(t, l.At(e), m.At(rs[i]))
			if r, ok := e.(journal.Run); ok {
				_, a := l.RunSpan(r)
				_, b := m.RunSpan(rs[i].(journal.Run))
				assert.Equal(t, a, b)
			}
		}
	})
}
