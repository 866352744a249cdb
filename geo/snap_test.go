package geo

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal/units"
)

// Ensure that a position in a pool gives that pool and its chainage, one beside it
// snaps within the tolerance only, and one between pools to none.
func TestSnap(t *testing.T) {
	r := newBend(larrick, 250)
	l := r.withBanks().Layout()
	for _, c := range []struct {
		t, off   float64
		within   units.Metres
		pool     int // index in bendIDs; 0 is none
		inside   bool
		distance float64
		chainage float64
		part     Part
	}{
		{55, 0, 5, 1, true, 0, r.arc(20, 55), Body},
		{30, -4, 5, 1, true, 0, r.arc(20, 30), Neck},
		{250, 5, 5, 2, true, 0, r.arc(150, 250), Tail},
		{200, 9, 5, 2, false, 3, r.arc(150, 200), Body},
		{200, 9, 2, 0, false, 0, 0, ""},
		{100, 0, 30, 1, false, r.arc(90, 100), r.arc(20, 90), Tail},
		{330, 0, 20, 0, false, 0, 0, ""},
	} {
		s, ok := l.Snap(PlaceOf(r.at(c.t, c.off)), c.within)
		require.Equal(t, c.pool != 0, ok, "%v", c)
		if !ok {
			continue
		}
		assert.Equal(t, bendIDs[c.pool], s.Pool, "%v", c)
		assert.Equal(t, s.Pool, l.Pools[s.Index].Pool.ID)
		assert.Equal(t, c.inside, s.Inside, "%v", c)
		assert.InDelta(t, c.distance, float64(s.Distance), 0.3, "%v", c)
		assert.InDelta(t, c.chainage, float64(s.Chainage), 4, "%v", c)
		assert.Equal(t, c.part, s.Part, "%v", c)
		assert.Equal(t, c.off > 0, s.Offset > 0.5, "%v", c)
	}
	_, ok := l.Snap(Place{Lat: 95}, 1e9)
	assert.False(t, ok)
}

// Ensure that chainage and offset lead back to where they came from.
func TestSpotAndBack(t *testing.T) {
	r := newBend(larrick, 30)
	l := r.withBanks().Layout()
	rapid.Check(t, func(t *rapid.T) {
		q := l.point(r.at(rapid.Float64Range(410, 550).Draw(t, "t"), rapid.Float64Range(-5, 5).Draw(t, "off")))
		s, ok := l.SnapPoint(q, 0)
		if !ok || !s.Inside {
			t.Fatalf("%v lies in no pool", q)
		}
		if back := l.Pools[s.Index].At(s.Chainage, s.Offset); back.Distance(q) > 0.8 {
			t.Fatalf("%v came back as %v", q, back)
		}
	})
}

// Ensure that in an overlap the smaller pool holds the position.
func TestSnapOverlap(t *testing.T) {
	r := newBend(larrick, 90)
	b := r.beat()
	b.Pools = append(b.Pools, Pool{ID: bendIDs[7], Name: "Inner", Outline: r.pool(450, 480)})
	l := b.Layout()
	s, ok := l.Snap(PlaceOf(r.at(465, 0)), 0)
	require.True(t, ok)
	assert.Equal(t, bendIDs[7], s.Pool)
	p, ok := l.PoolAt(l.point(r.at(420, 0)))
	require.True(t, ok)
	assert.Equal(t, "Kirk Pool", p.Pool.Name)
	_, ok = l.PoolAt(l.point(r.at(330, 0)))
	assert.False(t, ok)
}

func BenchmarkSnap(b *testing.B) {
	r := newBend(larrick, 30)
	l := r.withBanks().Layout()
	at := PlaceOf(r.at(200, 9))
	for b.Loop() {
		l.Snap(at, 15)
	}
}

func BenchmarkHitTest(b *testing.B) {
	r := newBend(larrick, 30)
	l := r.withBanks().Layout()
	q := l.point(r.at(200, 2))
	for b.Loop() {
		l.PoolAt(q)
	}
}
