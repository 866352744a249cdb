package geo

import (
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/units"
)

// Ensure that the river runs from left to right with its true left bank above,
// whichever way it lies on the ground and whichever way its banks were drawn.
func TestLayoutRunsLeftToRight(t *testing.T) {
	for bearing := units.Degrees(0); bearing < 360; bearing += 45 {
		r := newBend(larrick, bearing)
		for _, backwards := range []bool{false, true} {
			b := r.withBanks()
			if backwards {
				for i := range b.Features {
					b.Features[i].Shape.Lines[0] = turned(b.Features[i].Shape.Lines[0])
				}
				b.Features[0].Shape.Lines[0] = turned(b.Features[0].Shape.Lines[0]) // one each way
			}
			l := b.Layout()
			require.True(t, l.FlowKnown)
			require.NotEmpty(t, l.Centre)
			assert.InDelta(t, r.arc(0, 600), float64(l.Centre.Length()), 12, "the ends of the middle may fall short a little")
			for i, s := range l.Pools {
				if i > 0 {
					assert.Greater(t, s.Area.Centroid().X, l.Pools[i-1].Area.Centroid().X)
				}
				assert.Equal(t, i+1, s.Pool.Order)
				assert.Less(t, s.Axis[0].X, s.Axis[len(s.Axis)-1].X)
				assert.Greater(t, s.Left.Even(3)[1].Y, s.Right.Even(3)[1].Y)
			}
			for _, e := range l.Banks {
				assert.Less(t, e.Path[0].X, e.Path[len(e.Path)-1].X)
				assert.Equal(t, e.Bank == TrueLeft, e.Path.Even(3)[1].Y > l.Centre.Even(3)[1].Y)
			}
			x, y := l.North()
			assert.InDelta(t, 1, math.Hypot(x, y), 1e-12)
		}
	}
}

// Ensure that the axis of a pool follows its bend, head to tail, with and without
// bank lines, and drawn either way round.
func TestPoolAxis(t *testing.T) {
	r := newBend(larrick, 120)
	for _, b := range []Beat{r.beat(), r.withBanks()} {
		for _, clockwise := range []bool{false, true} {
			if clockwise {
				for i := range b.Pools {
					slices.Reverse(b.Pools[i].Outline[0])
				}
			}
			l := b.Layout()
			require.True(t, l.FlowKnown)
			for i, span := range [][2]float64{{20, 90}, {150, 260}, {400, 560}} {
				s := l.Pools[i]
				assert.InEpsilon(t, r.arc(span[0], span[1]), float64(s.Length()), 0.04, s.Pool.Name)
				for _, part := range []float64{0.1, 0.3, 0.5, 0.7, 0.9} {
					m := span[0] + part*(span[1]-span[0])
					f := s.Axis.Foot(l.point(r.at(m, 0)))
					assert.Less(t, float64(f.Distance), 1.5, "%s at %v", s.Pool.Name, part)
					assert.InDelta(t, r.arc(span[0], m), float64(f.Chainage), 4, "%s at %v", s.Pool.Name, part)
				}
				assert.True(t, s.Axis.Foot(l.point(r.at((span[0]+span[1])/2, 3))).Left)
				left, right, ok := s.Across(s.Length() / 2)
				require.True(t, ok)
				assert.InDelta(t, 12, float64(left.Distance(right)), 0.6)
				assert.Greater(t, left.Y, right.Y)
			}
		}
	}
}

// Ensure that a pool that bends back on itself, with both ends side by side, is
// followed round: three quarters of a ring of 50 m.
func TestPoolAxisHorseshoe(t *testing.T) {
	pl := NewPlane(larrick)
	var outer, inner orb.Ring
	for a := 0.0; a <= 330; a += 5 {
		sin, cos := math.Sincos(a * math.Pi / 180)
		outer = append(outer, pl.Place(Point{units.Metres(55 * cos), units.Metres(55 * sin)}).LonLat())
		inner = append(inner, pl.Place(Point{units.Metres(45 * cos), units.Metres(45 * sin)}).LonLat())
	}
	inner.Reverse()
	corners := append(outer, inner...)
	for _, shift := range []int{0, 40, 67, 100} {
		ring := append(append(orb.Ring{}, corners[shift:]...), corners[:shift+1]...)
		for range 2 {
			b := Beat{Pools: []Pool{{Name: "Ox Bow", Outline: orb.Polygon{ring}}}}
			l := b.LayoutOn(pl)
			assert.InEpsilon(t, 50*330*math.Pi/180, float64(l.Pools[0].Length()), 0.05, shift)
			for _, p := range l.Pools[0].Axis[2:30] {
				assert.InDelta(t, 50, float64(p.Distance(Point{})), 3, shift)
			}
			ring.Reverse()
		}
	}
}

// Ensure that a backwater beside the river keeps an axis of its own.
func TestPoolAxisBackwater(t *testing.T) {
	r := newBend(larrick, 90)
	b := r.withBanks()
	ring := orb.Ring(r.line(150, 210, 14))
	ring = append(ring, r.line(210, 150, 24)...)
	b.Pools = []Pool{{ID: bendIDs[7], Name: "Backwater", Outline: orb.Polygon{append(ring, ring[0])}}}
	l := b.Layout()
	s := l.Pools[0]
	for _, p := range s.Axis[2:31] {
		assert.True(t, s.Area.Holds(p))
	}
	assert.Less(t, s.Axis[0].X, s.Axis[len(s.Axis)-1].X)
}

// Ensure that the middle of the river never runs back, however ragged a bank is.
func TestCentreRunsOn(t *testing.T) {
	left := Path{{0, 10}, {10, 10}, {6, 12}, {20, 10}, {30, 11}, {25, 14}, {40, 10}}
	centre := between(left, Path{{0, 0}, {40, 0}})
	require.NotEmpty(t, centre)
	for i := 1; i < len(centre); i++ {
		assert.Greater(t, centre[i].X, centre[i-1].X)
	}
	f := findFlow(left, Path{{40, 0}, {0, 0}}, nil, nil)
	require.True(t, f.sure)
	assert.Equal(t, Point{0, 0}, f.right[0])
}

// Ensure that a single bank line and the side the pools lie on tell the flow, even
// when the line was drawn upstream.
func TestFlowFromOneBank(t *testing.T) {
	r := newBend(larrick, 200)
	for _, bank := range []Bank{TrueLeft, TrueRight} {
		off := 8.0
		if bank == TrueRight {
			off = -8
		}
		b := r.beat()
		b.Pools = b.Pools[:1] // one pool has no order to go by
		b.Features = []Feature{{ID: bendIDs[4], Role: RoleBank, Bank: bank, Shape: LineShape(turned(r.line(0, 600, off)))}}
		l := b.Layout()
		require.True(t, l.FlowKnown)
		assert.Nil(t, l.Centre)
		assert.Less(t, float64(l.Pools[0].Axis[0].Distance(l.point(r.at(400, 0)))), 3.0, "the head is upstream")
	}
}

// Ensure that marks by hand beat what the outline suggests.
func TestMarkedHeadAndTail(t *testing.T) {
	r := newBend(larrick, 90)
	b := r.beat()
	b.Pools = b.Pools[:1]
	b.Pools[0].Head, b.Pools[0].Tail = PlaceOf(r.at(560, 0)), PlaceOf(r.at(400, 0)) // against the order of drawing
	l := b.Layout()
	assert.False(t, l.FlowKnown)
	assert.Less(t, float64(l.Pools[0].Axis[0].Distance(l.point(r.at(560, 0)))), 1.0)
	assert.Less(t, l.Pools[0].Axis[0].X, l.Pools[0].Axis[len(l.Pools[0].Axis)-1].X, "and the picture follows")
}

func TestTreeEdges(t *testing.T) {
	r := newBend(larrick, 90)
	b := r.withBanks()
	wood := r.line(100, 200, 9)
	wood = append(wood, turned(r.line(100, 200, 30))...)
	wood = append(wood, wood[0])
	b.Features = append(b.Features, Feature{ID: bendIDs[6], Role: RoleTrees, Shape: AreaShape(orb.Polygon{orb.Ring(wood)})})
	edges := b.Layout().TreeEdges(3)
	require.Len(t, edges, 1)
	assert.Equal(t, TrueLeft, edges[0].Bank)
	assert.InDelta(t, r.arc(100, 200), float64(edges[0].Path.Length()), 20)

	b.Features = b.Features[2:] // no bank lines: the pools' edges stand in
	edges = b.Layout().TreeEdges(5)
	require.Len(t, edges, 1)
	assert.Equal(t, bendIDs[2], edges[0].Feature)
	assert.Equal(t, TrueLeft, edges[0].Bank)
}

// Ensure that nothing drawn, or only half of it, is no trouble.
func TestLayoutOfLittle(t *testing.T) {
	assert.NotPanics(t, func() {
		l := Beat{}.Layout()
		assert.Empty(t, l.Pools)
		_, ok := l.Snap(larrick, 100)
		assert.False(t, ok)
		assert.Empty(t, l.TreeEdges(5))
		b := Beat{At: larrick, Pools: []Pool{{Name: "Not drawn"}, {Outline: orb.Polygon{}}, {Outline: orb.Polygon{{{}, {}, {}, {}}}}}}
		assert.Len(t, b.Layout().Pools, 1)
		lo, hi := b.Layout().Extent(b)
		assert.Equal(t, lo, hi)
		b.Features = []Feature{{Role: RoleBank, Bank: TrueLeft, Shape: LineShape(nil)}, {Role: RoleBank, Bank: TrueRight}}
		b.Layout()
	})
}

func BenchmarkLayout(b *testing.B) {
	beat := newBend(larrick, 120).withBanks()
	for b.Loop() {
		beat.Layout()
	}
}
