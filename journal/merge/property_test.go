package merge_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
	"gloamline/journal/journaltest"
	"gloamline/journal/memory"
	"gloamline/journal/merge"
)

// side is one copy of a journal with its own clock.
type side struct {
	t require.TestingT
	s *memory.Store
	j *journal.Journal
	n *time.Duration
}

func begin(t require.TestingT, s *memory.Store, ahead time.Duration) side {
	n := new(time.Duration)
	*n = ahead
	j, err := journal.Open(s, func() time.Time {
		*n += time.Second
		return time.Date(2026, 7, 5, 9, 0, 0, 0, time.UTC).Add(*n)
	})
	require.NoError(t, err)
	return side{t, s, j, n}
}

// fork returns a copy of it as another machine has it.
func (a side) fork(id journal.ID, ahead time.Duration) side {
	out := memory.New(id)
	cs, err := a.s.Changes(0, 1e6)
	require.NoError(a.t, err)
	for _, c := range cs {
		require.NoError(a.t, out.Commit(&c))
	}
	return begin(a.t, out, *a.n+ahead)
}

// state is what stands, by record; told is every version that the copy can still tell.
func (a side) state() (state map[journal.Ref]string, told map[string]bool) {
	state, told = map[journal.Ref]string{}, map[string]bool{}
	cs, err := a.s.Changes(0, 1e6)
	require.NoError(a.t, err)
	note := func(e *journal.Envelope) {
		if e != nil && !e.Gone {
			told[string(e.Body)] = true
		}
	}
	for _, c := range cs {
		for _, e := range c.Edits {
			note(e.Before)
			note(e.After)
			now, err := a.s.Get(e.Ref())
			require.NoError(a.t, err)
			if delete(state, e.Ref()); !now.Gone {
				state[e.Ref()] = string(now.Body)
			}
		}
		for _, e := range c.Aside {
			note(&e)
		}
	}
	return state, told
}

func (a side) stands() map[journal.Ref]string { s, _ := a.state(); return s }

func (a side) look(b side) *merge.Plan {
	p, err := merge.Look(a.s, b.s)
	require.NoError(a.t, err)
	return p
}

func (a side) merge(b side) *merge.Plan {
	p := a.look(b)
	c, err := p.Accept(a.j)
	require.NoError(a.t, err)
	require.Equal(a.t, p.Empty(), c.ID.IsZero())
	faults, err := a.s.Check()
	require.NoError(a.t, err)
	require.Empty(a.t, faults)
	return p
}

// forked draws a journal and two copies of it that went their own ways.
func forked(t *rapid.T) (a, b side) {
	w := journaltest.New(seed(t, "seed", 0))
	first := begin(t, memory.New(w.ID()), 0)
	w.Life(first.j).Acts(rapid.IntRange(0, 22).Draw(t, "acts before"))
	a = first.fork(w.ID(), time.Millisecond)
	b = first.fork(w.ID(), time.Duration(rapid.IntRange(-60, 60).Draw(t, "seconds apart"))*time.Second)
	for i, s := range []side{a, b} {
		name := []string{"acts here", "acts there"}[i]
		w := journaltest.New(seed(t, "seed "+name, 1+i))
		w.Life(s.j).Acts(rapid.IntRange(0, 22).Draw(t, name))
	}
	return a, b
}

// seed draws a seed of which no other world has the identities.
func seed(t *rapid.T, name string, world int) uint64 {
	return rapid.Uint64().Draw(t, name)*4 + uint64(world)
}

// alike asserts that two copies hold the same.
func alike(t require.TestingT, a, b side, what string) {
	x, y := a.stands(), b.stands()
	for r, body := range x {
		require.Equal(t, body, y[r], "%s: %v", what, r)
	}
	for r, body := range y {
		require.Equal(t, x[r], body, "%s: %v", what, r)
	}
}

var met = map[string]int{}

// Ensure what a merge promises, whatever the two sides did: nothing that stood on either
// side is lost, nothing contradicts the file, a second merge changes nothing, either side comes
// to the same, and one undo takes all of it back, after which the same is proposed again.
func TestMerge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := forked(t)
		c, d := a.fork(journal.NewID(), 0), b.fork(journal.NewID(), 0) // to merge the other way
		before, theirs := a.stands(), b.stands()

		p := a.merge(b)
		after, told := a.state()
		for what, n := range map[string]int{"added": len(p.Added), "updated": len(p.Updated), "removed": len(p.Removed),
			"conflict": len(p.Conflicts), "revived": len(p.Revived), "ahead": p.Ahead} {
			met[what] += n
		}
		for _, side := range []map[journal.Ref]string{before, theirs} {
			for r, body := range side {
				require.True(t, told[body], "%v is lost", r)
			}
		}
		for r := range after {
			_, here := before[r]
			_, there := theirs[r]
			require.True(t, here || there || revived(p, r), "%v came from nowhere", r)
		}
		for _, c := range p.Conflicts {
			met[string(c.Default)]++
			if !c.Ours.Gone || !c.Theirs.Gone {
				require.Contains(t, after, c.Ref, "what stands on one side stands")
			}
		}
		require.True(t, a.look(b).Empty(), "a second merge")
		require.Empty(t, a.look(b).Conflicts)

		d.merge(c)
		require.Equal(t, after, d.stands(), "the other way round")

		b.merge(a)
		require.Equal(t, after, b.stands(), "back again")
		require.True(t, a.look(b).Empty())
		require.True(t, b.look(a).Empty())

		if !p.Empty() {
			_, err := a.j.Undo()
			require.NoError(t, err)
			require.Equal(t, before, a.stands(), "undone")
			_, err = a.j.Redo()
			require.NoError(t, err)
			require.Equal(t, after, a.stands(), "done again")
		}
	})
	t.Log(met)
	for _, what := range []string{"added", "updated", "removed", "conflict", "ahead", "ours", "theirs"} {
		require.Positive(t, met[what], what)
	}
}

func revived(p *merge.Plan, r journal.Ref) bool {
	for _, v := range p.Revived {
		if v.Ref == r {
			return true
		}
	}
	return false
}

// Ensure that a merge that was undone is proposed again as it was.
func TestUndoneIsProposedAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := forked(t)
		p := a.merge(b)
		if p.Empty() {
			return
		}
		_, err := a.j.Undo()
		require.NoError(t, err)
		q := a.look(b)
		require.Equal(t, len(p.Added), len(q.Added))
		require.Equal(t, p.Updated, q.Updated)
		require.Equal(t, p.Removed, q.Removed)
		require.Equal(t, p.Conflicts, q.Conflicts)
		require.Equal(t, p.Revived, q.Revived)
	})
}

// Ensure that whatever is chosen, no night, person, beat, fly or entry that something
// refers to is missing, and that what was not chosen can still be told.
func TestChoices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := forked(t)
		theirs := b.stands()
		p := a.look(b)
		for _, c := range p.Conflicts {
			choices := []merge.Choice{merge.Ours, merge.Theirs}
			if c.Joined != nil {
				choices = append(choices, merge.Both)
			}
			require.NoError(t, p.Choose(c.Ref, rapid.SampledFrom(choices).Draw(t, "choice")))
		}
		_, err := p.Accept(a.j)
		require.NoError(t, err)
		_, told := a.state()
		for r, body := range theirs {
			require.True(t, told[body], "%v is lost", r)
		}
		require.True(t, a.look(b).Empty())
		faults, err := a.j.Check()
		require.NoError(t, err)
		for _, f := range faults {
			for _, missing := range []string{"not in the journal", "not in this night", "belongs to nobody"} {
				require.False(t, strings.Contains(f.Error(), missing), f.Error())
			}
		}
		b.merge(a)
		require.Equal(t, a.stands(), b.stands(), "the other side takes the choices over")
	})
}

// Ensure that three copies that merge through one of them come to the same.
func TestThreeCopies(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := forked(t)
		c := b.fork(journal.NewID(), time.Hour)
		w := journaltest.New(seed(t, "third seed", 3))
		w.Life(c.j).Acts(rapid.IntRange(0, 20).Draw(t, "third acts"))
		a.merge(b)
		a.merge(c)
		b.merge(a)
		c.merge(a)
		alike(t, a, b, "first and second")
		alike(t, a, c, "first and third")
		require.True(t, a.look(b).Empty())
		require.True(t, b.look(c).Empty())
	})
}
