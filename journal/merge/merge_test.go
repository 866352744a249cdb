package merge_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/journal/merge"
	"gloamline/journal/units"
)

// twoGuides are two copies of a journal with one night: Anna's rod, a run, a fish in it
// and a fly that nobody has used.
type twoGuides struct {
	a, b side
	anna journal.Person
	beat journal.Beat
	trip journal.Trip
	run  journal.Run
	fish journal.Contact
	fly  journal.Fly
}

var evening = journal.Date{Year: 2026, Month: 7, Day: 4}

func at(hour, min int) time.Time { return time.Date(2026, 7, 4, hour-1, min, 0, 0, time.UTC) }

func guides(t *testing.T) twoGuides {
	a := begin(t, memory.New(journal.NewID()), 0)
	pool := geo.Pool{ID: journal.NewID(), Name: "Alder Pot", Order: 1}
	g := twoGuides{
		anna: journal.Person{ID: journal.NewID(), Name: "Anna"},
		beat: journal.Beat{ID: journal.NewID()},
		fly:  journal.Fly{ID: journal.NewID(), Label: "long dark one", Dresses: []journal.Dress{{Tone: journal.Of(journal.DarkTone)}}},
	}
	g.beat.Revisions = []journal.BeatRevision{{Shape: geo.Beat{ID: g.beat.ID, Name: "Home Beat", Zone: "Europe/London",
		River: geo.River{ID: journal.NewID(), Name: "Larrick Water"}, At: geo.Place{Lat: 55, Lon: -4.5}, Pools: []geo.Pool{pool}}}}
	g.trip = journal.Trip{ID: journal.NewID(), Evening: evening, Zone: "Europe/London", Beat: g.beat.ID,
		Rods: []journal.Rod{{ID: journal.NewID(), Person: g.anna.ID}}}
	head := func(w journal.When) journal.Head {
		return journal.Head{ID: journal.NewID(), Trip: g.trip.ID, Rod: g.trip.Rods[0].ID, When: w}
	}
	g.run = journal.Run{Head: head(journal.Exact(at(23, 0))), Pool: pool.ID, Until: journal.Of(journal.Exact(at(23, 40)))}
	g.fish = journal.Contact{Head: head(journal.About(at(23, 20), 10*time.Minute)), Touch: journal.Landed, Pool: journal.Of(pool.ID)}
	_, err := a.j.Do("add", journal.Batch{Put: []journal.Record{g.anna, g.beat, g.fly, g.trip, g.run, g.fish}})
	require.NoError(t, err)
	g.a, g.b = a, a.fork(journal.NewID(), time.Minute)
	return g
}

func (a side) put(rs ...journal.Record) {
	_, err := a.j.Do("amend", journal.Batch{Put: rs})
	require.NoError(a.t, err)
}

func (a side) remove(r journal.Record) {
	_, err := a.j.Remove(r.Ref())
	require.NoError(a.t, err)
}

func fishOf(t *testing.T, a side, r journal.Ref) journal.Contact {
	rec, err := a.j.Get(r)
	require.NoError(t, err)
	return rec.(journal.Contact)
}

// Ensure that one guide's weight and the other's fly come together in one fish, without
// anybody being asked.
func TestBothChanges(t *testing.T) {
	g := guides(t)
	mine, theirs := g.fish, g.fish
	mine.Weight = journal.Of(units.Weight{G: 737, Unit: units.Pound})
	theirs.Fly = journal.Of(g.fly.ID)
	g.a.put(mine)
	g.b.put(theirs)
	p := g.a.merge(g.b)
	require.Len(t, p.Conflicts, 1)
	c := p.Conflicts[0]
	require.Equal(t, merge.Both, c.Default)
	require.Equal(t, []string{"fly", "weight"}, c.Members)
	got := fishOf(t, g.a, g.fish.Ref())
	require.Equal(t, mine.Weight, got.Weight)
	require.Equal(t, theirs.Fly, got.Fly)
	g.b.merge(g.a)
	require.Equal(t, g.a.stands(), g.b.stands())
}

// Ensure that a weight weighed here and the same weight called estimated there are one
// question, not two answers put together.
func TestWeightAndItsEstimate(t *testing.T) {
	g := guides(t)
	mine, theirs := g.fish, g.fish
	mine.Weight = journal.Of(units.Weight{G: 737, Unit: units.Pound})
	theirs.Estimated = true
	g.a.put(mine)
	g.b.put(theirs)
	c := g.a.look(g.b).Conflicts[0]
	require.Nil(t, c.Joined)
	require.Equal(t, merge.Theirs, c.Default, "changed a minute later")
	require.True(t, c.TheirsAt.After(c.OursAt))
	require.Equal(t, journal.Invalid, journal.KindOf(g.a.look(g.b).Choose(g.fish.Ref(), merge.Both)))
}

// Ensure that a choice made here is taken over there, and is not asked again.
func TestChoiceTravels(t *testing.T) {
	for _, choice := range []merge.Choice{merge.Ours, merge.Theirs} {
		g := guides(t)
		mine, theirs := g.anna, g.anna
		mine.Name, theirs.Name = "Anna R", "Anna of the bridge"
		g.a.put(mine)
		g.b.put(theirs)
		p := g.a.look(g.b)
		require.NoError(t, p.Choose(g.anna.Ref(), choice))
		_, err := p.Accept(g.a.j)
		require.NoError(t, err)
		require.True(t, g.a.look(g.b).Empty())
		q := g.b.merge(g.a)
		require.Empty(t, q.Conflicts)
		want := map[merge.Choice]string{merge.Ours: mine.Name, merge.Theirs: theirs.Name}[choice]
		for _, s := range []side{g.a, g.b} {
			r, err := s.j.Get(g.anna.Ref())
			require.NoError(t, err)
			require.Equal(t, want, r.(journal.Person).Name)
		}
		// And what both write afterwards is compared with that.
		mine.Initials = "AR"
		mine.Name = want
		g.a.put(mine)
		require.Empty(t, g.b.merge(g.a).Conflicts)
		require.Equal(t, g.a.stands(), g.b.stands())
	}
}

// Ensure that a night removed here and written on there stands again, with all its
// entries, and says what needed it.
func TestRemovedNightStandsAgain(t *testing.T) {
	g := guides(t)
	g.a.remove(g.trip)
	more := g.fish
	more.ID, more.Touch = journal.NewID(), journal.Pull
	g.b.put(more)
	p := g.a.merge(g.b)
	require.Len(t, p.Added, 1)
	require.ElementsMatch(t, []merge.Revival{{g.trip.Ref(), more.Ref()}, {g.run.Ref(), g.trip.Ref()}, {g.fish.Ref(), g.trip.Ref()}}, p.Revived)
	log, err := g.a.j.Night(g.trip.ID)
	require.NoError(t, err)
	require.Len(t, log.Entries, 3)
	_, err = g.a.j.Undo()
	require.NoError(t, err)
	_, err = g.a.j.Night(g.trip.ID)
	require.Equal(t, journal.NotFound, journal.KindOf(err))
}

// Ensure that a fly removed there stands again when a fish here came to it, whichever
// side merges; and that a removal nobody minds is taken over.
func TestRemovedFly(t *testing.T) {
	g := guides(t)
	g.b.remove(g.fly)
	c := g.b.fork(journal.NewID(), 0)
	require.Len(t, g.a.look(g.b).Removed, 1)
	fish := g.fish
	fish.Fly = journal.Of(g.fly.ID)
	g.a.put(fish)
	require.Equal(t, []merge.Revival{{g.fly.Ref(), fish.Ref()}}, g.a.merge(g.b).Revived)
	c.merge(g.a)
	require.Equal(t, g.a.stands(), c.stands())
	require.Contains(t, c.stands(), g.fly.Ref())
}

// Ensure that a fish removed here and amended there is not lost.
func TestRemovedAndAmended(t *testing.T) {
	g := guides(t)
	g.a.remove(g.fish)
	fish := g.fish
	fish.Note = "fresh, with lice"
	g.b.put(fish)
	p := g.a.look(g.b)
	require.Equal(t, merge.Theirs, p.Conflicts[0].Default)
	require.NoError(t, p.Choose(fish.Ref(), merge.Ours))
	_, err := p.Accept(g.a.j)
	require.NoError(t, err)
	require.NotContains(t, g.a.stands(), fish.Ref(), "chosen so")
	g.b.merge(g.a)
	require.NotContains(t, g.b.stands(), fish.Ref())
}

// Ensure that what two sound nights make together is told: one rod in two runs at once.
func TestTogetherTheyContradict(t *testing.T) {
	g := guides(t)
	other := g.run
	other.Head.ID = journal.NewID()
	other.When, other.Until = journal.Exact(at(23, 50)), journal.Of(journal.Exact(at(24, 20)))
	g.b.put(other)
	mine := g.run
	mine.Until = journal.Of(journal.Exact(at(24, 10)))
	g.a.put(mine)
	g.a.merge(g.b)
	faults, err := g.a.j.NightFaults(g.trip.ID)
	require.NoError(t, err)
	require.Len(t, faults, 1)
	require.Contains(t, faults[0].Error(), "cannot overlap")
}

// Ensure that a person made on each side by itself is named, and not made one.
func TestAlike(t *testing.T) {
	g := guides(t)
	mine, theirs := journal.Person{ID: journal.NewID(), Name: "Colm "}, journal.Person{ID: journal.NewID(), Name: "colm"}
	g.a.put(mine)
	g.b.put(theirs)
	p := g.a.merge(g.b)
	require.Equal(t, []merge.Alike{{journal.KindPerson, mine.ID, theirs.ID, "colm"}}, p.Alike)
	require.Contains(t, g.a.stands(), mine.Ref())
	require.Contains(t, g.a.stands(), theirs.Ref())
}

// Ensure that one picture that was read into one night on each side is named, that another one is not, nor the
// same in another night.
func TestAlikePhotos(t *testing.T) {
	g := guides(t)
	pic := func(sum string) journal.Photo {
		at := journal.Exact(time.Date(2026, 7, 4, 22, 0, 0, 0, time.UTC))
		return journal.Photo{Head: journal.Head{ID: journal.NewID(), Trip: g.trip.ID, When: at}, SHA256: strings.Repeat(sum, 64), Name: "fish.jpg", Copied: true}
	}
	mine, theirs, other := pic("a"), pic("a"), pic("b")
	g.a.put(mine)
	g.b.put(theirs)
	g.b.put(other)
	p := g.a.merge(g.b)
	require.Equal(t, []merge.Alike{{journal.KindPhoto, mine.ID, theirs.ID, "fish.jpg"}}, p.Alike)
	require.Contains(t, g.a.stands(), other.Ref())
}

// Ensure that nothing is taken over from a later version, and that a journal that has
// changed since it was looked at is not changed by an old plan.
func TestRefuses(t *testing.T) {
	g := guides(t)
	e, err := journal.Seal(journal.Person{ID: journal.NewID(), Name: "Isla"})
	require.NoError(t, err)
	later := e
	later.Version = 99
	fork := g.b.fork(journal.NewID(), 0)
	require.NoError(t, fork.s.Commit(&journal.Change{ID: journal.NewID(), Copy: fork.s.Copy(), Edits: []journal.Edit{{After: &later}}}))
	_, err = merge.Look(g.a.s, fork.s)
	require.Equal(t, journal.Newer, journal.KindOf(err))

	renamed := g.anna
	renamed.Name = "Anna R"
	g.b.put(renamed)
	p := g.a.look(g.b)
	renamed.Name = "Anna Q"
	g.a.put(renamed)
	before := g.a.stands()
	_, err = p.Accept(g.a.j)
	require.Equal(t, journal.Conflict, journal.KindOf(err))
	require.Equal(t, before, g.a.stands())
	require.Equal(t, journal.NotFound, journal.KindOf(p.Choose(journal.Ref{}, merge.Ours)))
}

// Ensure that two journals that have nothing in common become one with both.
func TestStrangers(t *testing.T) {
	g, h := guides(t), guides(t)
	want := len(g.a.stands()) + len(h.a.stands())
	p := g.a.merge(h.a)
	require.Len(t, p.Added, 6)
	require.Len(t, g.a.stands(), want)
	require.Len(t, p.Alike, 3, "Anna, the Home Beat and the fly by its label")
}

// Ensure that a rod taken off a night here, whose fish was written down there, stands again,
// whichever side merges: without it the night could not be shown.
func TestRodComesBack(t *testing.T) {
	g := guides(t)
	colm := journal.Person{ID: journal.NewID(), Name: "Colm"}
	two := g.trip
	two.Rods = append(two.Rods[:1:1], journal.Rod{ID: journal.NewID(), Person: colm.ID})
	g.a.put(colm, two)
	a := g.a
	b, c := a.fork(journal.NewID(), time.Minute), a.fork(journal.NewID(), time.Minute)
	a.put(g.trip) // one rod
	fish := g.fish
	fish.ID, fish.Rod = journal.NewID(), two.Rods[1].ID
	for _, s := range []side{b, c} {
		s.put(fish)
	}
	p := a.merge(b)
	require.Equal(t, []merge.Revival{{g.trip.Ref(), fish.Ref()}}, p.Revived)
	faults, err := a.j.NightFaults(g.trip.ID)
	require.NoError(t, err)
	require.Empty(t, faults)
	require.True(t, a.look(b).Empty())
	b.merge(a)
	require.Equal(t, a.stands(), b.stands())
	c.merge(a)
	require.Equal(t, a.stands(), c.stands())
}

// Ensure that a record written alike by an earlier and a later program is no conflict, and
// that both sides come to the later form.
func TestAnotherVersionIsNoConflict(t *testing.T) {
	a := guides(t).a
	cs, err := a.s.Changes(0, 1e6)
	require.NoError(t, err)
	s := memory.New(journal.NewID())
	for _, c := range cs { // the same records, from another start, by the earlier program
		c.ID, c.Copy = journal.NewID(), s.Copy()
		for i, e := range c.Edits {
			if e.After != nil && e.After.Kind == journal.KindBeat {
				require.Equal(t, 2, e.After.Version)
				was := *e.After
				was.Version = 1
				c.Edits[i].After = &was
			}
		}
		require.NoError(t, s.Commit(&c))
	}
	p, err := merge.Look(a.s, s)
	require.NoError(t, err)
	require.Empty(t, p.Conflicts)
	require.Empty(t, p.Updated)
	p, err = merge.Look(s, a.s)
	require.NoError(t, err)
	require.Empty(t, p.Conflicts)
	require.Len(t, p.Updated, 1)
}
