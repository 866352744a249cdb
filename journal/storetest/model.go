package storetest

import (
	"bytes"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
)

// model is a store as plain as can be. Few records, so that they meet often.
type model struct {
	refs    []journal.Ref
	stands  map[journal.Ref]journal.Envelope
	changes []journal.Change
}

// small returns an identity that shows in a failure.
func small(n byte) journal.ID { return journal.ID{15: n} }

func newModel() *model {
	m := &model{stands: map[journal.Ref]journal.Envelope{}}
	for n := byte(1); n <= 4; n++ {
		m.refs = append(m.refs,
			journal.Ref{Kind: journal.KindPerson, ID: small(n)},
			journal.Ref{Kind: journal.KindFly, ID: small(n)},
			journal.Ref{Kind: journal.KindNote, Trip: small(101), ID: small(n)},
			journal.Ref{Kind: journal.KindWay, Trip: small(101), ID: small(n)},
			journal.Ref{Kind: journal.KindNote, Trip: small(102), ID: small(n)})
	}
	return m
}

func (m *model) before(r journal.Ref) *journal.Envelope {
	e, ok := m.stands[r]
	if !ok {
		return nil
	}
	return &e
}

// after draws what an edit leaves.
func after(t *rapid.T, r journal.Ref) *journal.Envelope {
	if rapid.IntRange(0, 3).Draw(t, "gone") == 0 {
		return tombstone(r)
	}
	text := rapid.StringN(0, 20, -1).Draw(t, "text")
	head := journal.Head{ID: r.ID, Trip: r.Trip, Note: text}
	var rec journal.Record
	switch r.Kind {
	case journal.KindPerson:
		rec = journal.Person{ID: r.ID, Name: text}
	case journal.KindFly:
		rec = journal.Fly{ID: r.ID, Label: text}
	case journal.KindNote:
		rec = journal.Note{Head: head}
	case journal.KindWay:
		rec = journal.Way{Head: head}
	}
	e, err := journal.Seal(rec)
	require.NoError(t, err)
	return &e
}

// edits draws edits that start from what stands.
func (m *model) edits(t *rapid.T) []journal.Edit {
	refs := rapid.Permutation(m.refs).Draw(t, "refs")
	var out []journal.Edit
	for _, r := range refs[:rapid.IntRange(1, 6).Draw(t, "edits")] {
		out = append(out, edit(m.before(r), after(t, r)))
	}
	return out
}

func (m *model) list(of func(journal.Ref) bool) []journal.Envelope {
	var out []journal.Envelope
	for r, e := range m.stands {
		if of(r) && !e.Gone {
			out = append(out, e)
		}
	}
	slices.SortFunc(out, func(a, b journal.Envelope) int {
		if c := bytes.Compare(a.ID[:], b.ID[:]); c != 0 {
			return c
		}
		return bytes.Compare([]byte(a.Kind), []byte(b.Kind))
	})
	return out
}

// equal asserts that everything a store tells is what the model knows.
func (m *model) equal(t require.TestingT, s journal.Store) {
	for _, r := range m.refs {
		want, ok := m.stands[r]
		if !ok {
			absent(t, s, r)
			continue
		}
		got, err := s.Get(r)
		require.NoError(t, err)
		require.Equal(t, want, got)
	}
	for _, k := range []journal.Kind{journal.KindPerson, journal.KindFly, journal.KindNote} {
		got, err := s.List(k)
		require.NoError(t, err)
		require.Equal(t, m.list(func(r journal.Ref) bool { return r.Kind == k && r.Trip.IsZero() }), got)
	}
	for _, trip := range []journal.ID{small(101), small(102), small(103)} {
		got, err := s.Entries(trip)
		require.NoError(t, err)
		require.Equal(t, m.list(func(r journal.Ref) bool { return r.Trip == trip }), got)
	}
	last, err := s.Last()
	require.NoError(t, err)
	require.Equal(t, uint64(len(m.changes)), last)
	cs, err := s.Changes(0, len(m.changes)+1)
	require.NoError(t, err)
	require.Equal(t, m.changes, cs)
}

// testModel takes random steps with a store and with the model.
func testModel(t *testing.T, open Open) {
	rapid.Check(t, func(rt *rapid.T) {
		s, again := open(t)
		m := newModel()
		rt.Repeat(map[string]func(*rapid.T){
			"commit": func(rt *rapid.T) {
				c := commit(rt, s, m.edits(rt)...)
				require.Equal(rt, uint64(len(m.changes)+1), c.Seq)
				m.changes = append(m.changes, c)
				for _, e := range c.Edits {
					m.stands[e.Ref()] = *e.After
				}
			},
			"conflict": func(rt *rapid.T) {
				edits := m.edits(rt)
				i := rapid.IntRange(0, len(edits)-1).Draw(rt, "wrong")
				r := edits[i].Ref()
				var wrong *journal.Envelope
				if rapid.Bool().Draw(rt, "something") {
					wrong = after(rt, r)
				}
				now := m.before(r)
				if now == nil && wrong == nil || now != nil && wrong != nil && now.Equal(*wrong) {
					rt.Skip("that is not wrong")
				}
				edits[i].Before = wrong
				refused(rt, s, journal.Conflict, edits...)
			},
			"twice": func(rt *rapid.T) {
				edits := m.edits(rt)
				refused(rt, s, journal.Internal, append(edits, edits[0])...)
			},
			"page": func(rt *rapid.T) {
				after := rapid.IntRange(0, len(m.changes)+1).Draw(rt, "after")
				n := rapid.IntRange(0, 5).Draw(rt, "n")
				got, err := s.Changes(uint64(after), n)
				require.NoError(rt, err)
				from := min(after, len(m.changes))
				want := m.changes[from:min(from+n, len(m.changes))]
				require.Equal(rt, len(want), len(got))
				for i := range want {
					require.Equal(rt, want[i], got[i])
				}
			},
			"again": func(rt *rapid.T) {
				s = again()
				sound(rt, s)
			},
			"": func(rt *rapid.T) { m.equal(rt, s) },
		})
		sound(rt, s)
		require.NoError(rt, s.Close())
	})
}
