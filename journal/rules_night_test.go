package journal_test

import (
	"encoding/json"
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/journal/units"
)

// Ensure that entries agree with their trip, beat and flies.
func TestNightRules(t *testing.T) {
	j, _ := world(t)
	elsewhere := func(r journal.Run) journal.Run { r.Pool = id("kirk pool"); return r }
	fish := func(f func(*journal.Contact)) journal.Contact {
		c := contact("x", "anna", at(23, 0))
		f(&c)
		return c
	}
	strayed := note("x", at(23, 0))
	strayed.Trip = id("no such trip")
	plan := journal.Plan{Head: head("x", "anna", at(21, 0)), Pool: journal.Of(id("kirk pool"))}
	tale := note("x", at(23, 0))
	tale.Pool = journal.Of(id("kirk pool"))
	photo := sample(journal.KindPhoto).(journal.Photo)
	photo.ID = id("x")
	for name, c := range map[string]struct {
		field string
		bad   journal.Record
	}{
		"rod not on the trip":             {"rod", run("x", "eilidh", at(23, 0))},
		"run in a pool not on the beat":   {"pool", elsewhere(run("x", "anna", at(23, 0)))},
		"fish in a pool not on the beat":  {"pool", fish(func(c *journal.Contact) { c.Pool = journal.Of(id("kirk pool")) })},
		"ready pool not on the beat":      {"pool", journal.Ready{Head: head("x", "", at(23, 0)), Pool: id("kirk pool")}},
		"plan for a pool not on the beat": {"pool", plan},
		"note on a pool not on the beat":  {"pool", tale},
		"fly missing":                     {"fly", fish(func(c *journal.Contact) { c.Fly = journal.Of(id("lost fly")) })},
		"fly on the leader missing": {"flies", journal.Rig{Head: head("x", "anna", at(23, 0)),
			Setup: journal.Setup{Flies: []journal.Mounted{{Fly: journal.Of(id("lost fly"))}}}}},
		"before the night":             {"when", note("x", journal.Exact(clock(12, 0).Add(-time.Minute)))},
		"after the night":              {"when", note("x", journal.Exact(clock(11, 59).Add(2*time.Minute)))},
		"partly before the night":      {"when", note("x", journal.Between(clock(12, 0).Add(-time.Minute), clock(13, 0)))},
		"end outside the night":        {"until", until(run("x", "anna", at(23, 0)), journal.Exact(clock(11, 0).Add(2*time.Hour)))},
		"ends before it begins":        {"until", until(run("x", "anna", journal.After(id("late"))), at(23, 0))},
		"break ends before it begins":  {"until", journal.Break{Head: head("x", "anna", journal.After(id("late"))), Until: journal.Of(at(23, 0))}},
		"hangs on nothing":             {"when", note("x", journal.After(id("nothing")))},
		"end hangs on nothing":         {"when", until(run("x", "anna", at(23, 0)), journal.After(id("nothing")))},
		"hangs on another night":       {"when", note("x", journal.After(id("elsewhere")))},
		"within what is no run":        {"when", note("x", journal.Within(id("late")))},
		"of a night that is not there": {"trip", strayed},
		"photo of nothing":             {"of", photo},
	} {
		t.Run(name, func(t *testing.T) {
			j, _ := world(t)
			other := trip()
			other.ID = id("other trip")
			far := note("elsewhere", at(23, 0))
			far.Trip = other.ID
			put(t, j, note("late", at(2, 0)), other, far)
			_, err := j.Log(c.bad)
			record := "x"
			if c.field == "trip" {
				record = "no such trip"
			}
			refused(t, err, journal.Conflict, c.field, record)
			assert.Len(t, journal.FieldErrors(err), 1, "%v", err)
		})
	}
	put(t, j, note("first", journal.Exact(clock(12, 0))), note("last", journal.Exact(clock(11, 0).Add(time.Hour))), contact("fish", "anna", at(23, 0)))
}

func TestNightRefusesCircles(t *testing.T) {
	j, _ := world(t)
	put(t, j, note("a", at(23, 0)), note("b", journal.After(id("a"))), note("c", journal.After(id("b"))))
	_, err := j.Amend(note("a", journal.After(id("c"))))
	refused(t, err, journal.Conflict, "when", "a")
	_, err = j.Do("run around a fish", journal.Batch{Put: []journal.Record{
		until(run("run", "anna", at(23, 0)), journal.After(id("fish"))), contact("fish", "anna", journal.Within(id("run")))}})
	refused(t, err, journal.Conflict, "when", "fish")
	brk := func(word, other string) journal.Break {
		return journal.Break{Head: head(word, "anna", at(23, 0)), Until: journal.Of(journal.After(id(other)))}
	}
	_, err = j.Do("two breaks", journal.Batch{Put: []journal.Record{brk("x", "y"), brk("y", "x")}})
	refused(t, err, journal.Conflict, "when", "x")
}

// Ensure that one rod's runs cannot overlap, but may where nobody can tell.
func TestRunOverlap(t *testing.T) {
	first := until(run("first", "anna", at(23, 0)), at(0, 0))
	vague := until(run("vague", "anna", journal.About(clock(23, 0), 0)), journal.About(clock(0, 0), 0))
	for name, c := range map[string]struct {
		a, b journal.Run
		bad  bool
	}{
		"one after the other":         {first, until(run("x", "anna", at(0, 0)), at(1, 0)), false},
		"begins inside":               {first, until(run("x", "anna", at(23, 59)), at(1, 0)), true},
		"wholly inside":               {first, until(run("x", "anna", at(23, 10)), at(23, 20)), true},
		"around":                      {first, until(run("x", "anna", at(22, 0)), at(1, 0)), true},
		"open, inside":                {first, run("x", "anna", at(23, 30)), true},
		"open before":                 {first, run("x", "anna", at(22, 0)), false},
		"open after":                  {run("first", "anna", at(23, 0)), run("x", "anna", at(23, 1)), false},
		"at the same moment":          {run("first", "anna", at(23, 0)), run("x", "anna", at(23, 0)), true},
		"another rod":                 {first, until(run("x", "colm", at(23, 10)), at(23, 20)), false},
		"perhaps one after the other": {vague, until(run("x", "anna", journal.About(clock(23, 55), 0)), at(1, 0)), false},
		"just possible":               {vague, until(run("x", "anna", at(23, 50)), at(1, 0)), false},
		"possible the other way":      {until(run("first", "anna", journal.Between(clock(22, 0), clock(1, 0))), at(1, 30)), until(run("x", "anna", at(23, 35)), at(23, 40)), false},
		"not possible":                {vague, until(run("x", "anna", at(23, 49)), at(1, 0)), true},
	} {
		t.Run(name, func(t *testing.T) {
			j, _ := world(t)
			put(t, j, c.a)
			_, err := j.Log(c.b)
			if !c.bad {
				assert.NoError(t, err)
				return
			}
			refused(t, err, journal.Conflict, "when", "x")
		})
	}
}

// Ensure that the pool must be on the beat as it was that evening.
func TestPoolOfTheEvening(t *testing.T) {
	j, _ := world(t)
	b := homeBeat()
	next := b.Revisions[0]
	next.From = evening.Add(1)
	next.Shape.Pools = []geo.Pool{pool("alder pool"), pool("new pool")}
	b.Revisions = append(b.Revisions, next)
	put(t, j, b)
	r := run("run", "anna", at(23, 0))
	r.Pool = id("new pool")
	_, err := j.Log(r)
	refused(t, err, journal.Conflict, "pool", "run")
	r.Pool = id("long pool")
	put(t, j, r)

	later := trip()
	later.ID, later.Evening = id("later trip"), evening.Add(1)
	r.ID, r.Trip, r.When = id("later run"), later.ID, journal.Exact(clock(23, 0).AddDate(0, 0, 1))
	_, err = j.Do("later", journal.Batch{Put: []journal.Record{later, r}})
	refused(t, err, journal.Conflict, "pool", "later run")
	r.Pool = id("new pool")
	put(t, j, later, r)
}

// Ensure that a trip cannot be changed so that its entries no longer fit.
func TestTripChangeKeepsEntries(t *testing.T) {
	j, _ := world(t)
	put(t, j, contact("fish", "anna", at(23, 0)))
	bad := trip()
	bad.Rods = bad.Rods[1:]
	_, err := j.Amend(bad)
	refused(t, err, journal.Conflict, "rod", "fish")
	bad = trip()
	bad.Evening = evening.Add(3)
	_, err = j.Amend(bad)
	refused(t, err, journal.Conflict, "when", "fish")
	bad = trip()
	bad.Rods[0].Start = journal.Of(journal.Exact(clock(12, 0).Add(-time.Minute)))
	_, err = j.Amend(bad)
	refused(t, err, journal.Conflict, "start", "rod of anna")
	bad = trip()
	bad.Hours = journal.Of(journal.Span{Start: at(22, 0), Stop: journal.Exact(clock(11, 0).Add(2 * time.Hour))})
	_, err = j.Amend(bad)
	refused(t, err, journal.Conflict, "hours", "trip")
}

func TestSameIdentityTwice(t *testing.T) {
	j, _ := world(t)
	put(t, j, note("x", at(23, 0)))
	_, err := j.Log(contact("x", "anna", at(23, 30)))
	refused(t, err, journal.Conflict, "id", "x")
	_, err = j.Do("make a fish of the note", journal.Batch{Put: []journal.Record{contact("x", "anna", at(23, 30))}, Remove: []journal.Ref{note("x", journal.When{}).Ref()}})
	assert.NoError(t, err)
}

// past writes a record behind the back of the rules, as an earlier version with
// looser ones would have.
func past(t *testing.T, s *memory.Store, r journal.Record) {
	e, err := journal.Seal(r)
	require.NoError(t, err)
	require.NoError(t, s.Commit(&journal.Change{ID: journal.NewID(), Edits: []journal.Edit{{After: &e}}}))
}

// Ensure that a fault of long ago does not hold up edits of the same night,
// but is told when its own entry is edited, and that new faults are.
func TestOldFaultsDoNotBlock(t *testing.T) {
	j, s := world(t)
	odd := run("odd", "anna", at(23, 0))
	odd.Pool = id("no pool")
	past(t, s, odd)
	twin := until(run("twin a", "colm", at(1, 0)), at(2, 0))
	past(t, s, twin)
	past(t, s, until(run("twin b", "colm", at(1, 30)), at(2, 30)))

	put(t, j, contact("fish", "anna", at(23, 10)))
	tr := trip()
	tr.Note = "a fine night"
	put(t, j, tr)
	odd.Note = "edited"
	_, err := j.Amend(odd)
	refused(t, err, journal.Conflict, "pool", "odd")
	twin.Note = "edited"
	_, err = j.Amend(twin)
	refused(t, err, journal.Conflict, "when", "twin a")
	_, err = j.Log(until(run("third", "colm", at(1, 50)), at(3, 0)))
	refused(t, err, journal.Conflict, "when", "third")
	tr.Rods = tr.Rods[:1]
	_, err = j.Amend(tr)
	refused(t, err, journal.Conflict, "rod", "twin a")
}

// Ensure that an entry which only comes along, because its anchor is removed,
// is not held to account for an old fault.
func TestOldFaultsDoNotBlockRemoval(t *testing.T) {
	j, s := world(t)
	put(t, j, note("anchor", at(23, 0)))
	odd := contact("odd", "anna", journal.After(id("anchor")))
	odd.Fly = journal.Of(id("lost fly"))
	past(t, s, odd)
	_, err := j.Remove(note("anchor", journal.When{}).Ref())
	require.NoError(t, err)
	assert.Empty(t, get[journal.Contact](t, j, odd).When.Anchors)
}

// Ensure that a night of which something cannot be read is shown as far as it
// can be, and not edited.
func TestUnreadableEntry(t *testing.T) {
	j, s := world(t)
	put(t, j, note("n", at(23, 0)))
	e, err := journal.Seal(note("later", at(23, 0)))
	require.NoError(t, err)
	e.Version, e.Body = 99, json.RawMessage(`{"mood":"good"}`)
	require.NoError(t, s.Commit(&journal.Change{ID: journal.NewID(), Edits: []journal.Edit{{After: &e}}}))
	l, err := j.Night(id("trip"))
	assert.Equal(t, journal.Newer, journal.KindOf(err))
	require.NotNil(t, l)
	assert.Len(t, l.Entries, 1)
	_, err = j.Log(note("m", at(23, 0)))
	assert.Equal(t, journal.Newer, journal.KindOf(err))
}

func BenchmarkDoInFullNight(b *testing.B) {
	j, _ := world(b)
	var rs []journal.Record
	for i := range 25 {
		m := clock(21, 0).Add(time.Duration(i) * 10 * time.Minute)
		rs = append(rs, until(run(fmt.Sprint("run ", i), "anna", journal.Exact(m)), journal.Exact(m.Add(9*time.Minute))))
		c := contact(fmt.Sprint("fish ", i), "anna", journal.Within(id(fmt.Sprint("run ", i))))
		c.Weight = journal.Of(units.WeightOf(2, units.Pound))
		rs = append(rs, c)
	}
	put(b, j, rs...)
	n := 0
	for b.Loop() {
		c := contact("new", "anna", at(3, 0))
		c.Note = fmt.Sprint(n)
		n++
		put(b, j, c)
	}
}
