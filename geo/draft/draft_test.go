package draft

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal/units"
)

var larrick = geo.Place{Lat: 54.984, Lon: -4.428}

func id(n byte) geo.ID { return geo.ID{15: n} }

// begun is an empty beat on the globe.
func begun(t require.TestingT) Draft {
	d, err := New(geo.Beat{ID: id(1), Name: "Home Beat"}).Zone("Europe/London").Place(larrick)
	require.NoError(t, err)
	return d
}

func box(x0, y0, x1, y1 units.Metres) geo.Path {
	return geo.Path{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

// three is a straight river running east, 20 m wide, with three pools.
func three(t require.TestingT) Draft {
	d := begun(t)
	d, err := d.Banks(geo.Path{{X: -20}, {X: 400}}, 20, "", id(90), id(91))
	require.NoError(t, err)
	for i, name := range []string{"Alder", "Bield", "Cauld"} {
		x := units.Metres(i) * 120
		d, err = d.AddPool(id(byte(10+i)), name, box(x, -8, x+80, 8))
		require.NoError(t, err)
	}
	return d
}

func m2(d Draft, of geo.ID) float64 {
	p, _ := d.Beat.Pool(of)
	return d.Plane.Area(p.Outline).SquareMetres()
}

func whats(f []Finding) []string {
	var out []string
	for _, x := range f {
		out = append(out, x.What)
	}
	return out
}

// Ensure that a beat can be drawn from nothing to one on which nights can be written.
func TestFromNothing(t *testing.T) {
	d := New(geo.Beat{ID: id(1)})
	assert.False(t, d.Usable())
	_, err := d.AddPool(id(2), "Alder", box(0, 0, 50, 10))
	assert.ErrorContains(t, err, "no place yet")
	d, err = d.Place(larrick)
	require.NoError(t, err)
	d, err = d.AddPool(id(2), "Alder", box(0, 0, 50, 10))
	require.NoError(t, err)
	assert.False(t, d.Usable(), "no zone yet")
	d = d.Zone("Europe/London").Call("Home Beat", "Larrick Water")
	assert.True(t, d.Usable(), "%v", d.Findings())
	assert.InDelta(t, 500, m2(d, id(2)), 1e-3)
	assert.Equal(t, 1, d.Beat.Pools[0].Order)
}

// Ensure that corners move, come and go, and that a ring stays closed.
func TestVertices(t *testing.T) {
	d := three(t)
	d2, err := d.Move(Vertex{id(10), 0, 0}, geo.Point{X: 5, Y: -6})
	require.NoError(t, err)
	ring := d2.Beat.Pools[0].Outline[0]
	assert.Equal(t, ring[0], ring[len(ring)-1])
	assert.NotEqual(t, d.Beat.Pools[0].Outline[0][0], ring[0], "and the draft before is untouched")
	d3, err := d2.Insert(Vertex{id(10), 0, 4}, geo.Point{X: 0, Y: 0})
	require.NoError(t, err)
	assert.Len(t, d3.Strands(id(10))[0].Points, 5)
	for range 2 {
		d3, err = d3.Delete(Vertex{id(10), 0, 0})
		require.NoError(t, err)
	}
	_, err = d3.Delete(Vertex{id(10), 0, 0})
	assert.ErrorContains(t, err, "last 3 points")
	_, err = d.Move(Vertex{id(10), 0, 9}, geo.Point{})
	assert.Error(t, err)
	_, err = d.Move(Vertex{id(10), 0, 0}, geo.Point{X: units.Metres(math.NaN())})
	assert.Error(t, err)
	d4, err := d.Move(Vertex{id(90), 0, 1}, geo.Point{X: 500, Y: 12})
	require.NoError(t, err)
	assert.InDelta(t, 500, float64(d4.Strands(id(90))[0].Points[1].X), 1e-6)
}

// Ensure that pools keep one order, without gaps.
func TestReorder(t *testing.T) {
	d := three(t)
	d, err := d.Reorder(id(12), 1)
	require.NoError(t, err)
	var names []string
	for i, p := range d.Beat.InOrder() {
		names = append(names, p.Name)
		assert.Equal(t, i+1, p.Order)
	}
	assert.Equal(t, []string{"Cauld", "Alder", "Bield"}, names)
	_, err = d.Reorder(id(12), 4)
	assert.ErrorContains(t, err, "1 to 3")
}

// Ensure that faults are told where they are, and hold nothing up but Usable.
func TestFindings(t *testing.T) {
	d := three(t)
	require.Empty(t, whats(d.Findings()))
	bow, err := d.AddPool(id(20), "Bow", geo.Path{{X: 350, Y: -5}, {X: 390, Y: 5}, {X: 390, Y: -5}, {X: 350, Y: 6}})
	require.NoError(t, err, "kept, though it crosses itself")
	assert.False(t, bow.Usable())
	f := bow.Findings()[0]
	assert.Equal(t, geo.CrossesItself, f.Fault)
	assert.InDelta(t, 369.0, float64(f.At.X), 2)
	over, err := d.AddPool(id(21), "Over", box(60, -8, 110, 8))
	require.NoError(t, err)
	assert.Contains(t, whats(over.Findings()), "Alder and Over lie on one another")
	assert.True(t, over.Usable())
	land, err := d.AddPool(id(22), "Land", box(350, 0, 390, 60))
	require.NoError(t, err)
	assert.Contains(t, whats(land.Findings())[0], "Land reaches 50 m over the bank line")
	far, err := d.AddPool(id(23), "Far", box(350, 5000, 390, 5060))
	require.NoError(t, err)
	assert.False(t, far.Usable())
}

// Ensure that the halves of a pool have its area, take their places in the order, and that
// joining them gives the area back.
func TestSplitAndJoin(t *testing.T) {
	d := three(t)
	before := m2(d, id(11))
	s, err := d.Split(id(11), geo.Point{X: 150, Y: 20}, geo.Point{X: 158, Y: -20}, Part{id(30), "Upper Bield"}, Part{id(31), "Lower Bield"})
	require.NoError(t, err)
	assert.InDelta(t, before, m2(s, id(30))+m2(s, id(31)), 1e-6)
	assert.InDelta(t, 34*16, m2(s, id(30)), 1, "the upper one is upstream")
	var names []string
	for _, p := range s.Beat.InOrder() {
		names = append(names, p.Name)
	}
	assert.Equal(t, []string{"Alder", "Upper Bield", "Lower Bield", "Cauld"}, names)
	assert.Equal(t, map[geo.ID][]geo.ID{id(11): {id(30), id(31)}}, s.Successors(d.Beat))
	assert.Empty(t, s.Findings(), "a shared edge is no overlap")
	j, err := s.Join(id(31), id(30), Part{id(32), "Bield"})
	require.NoError(t, err)
	assert.InDelta(t, before, m2(j, id(32)), 1e-6)
	assert.Equal(t, map[geo.ID][]geo.ID{id(11): {id(32)}}, j.Successors(d.Beat), "the halves never stood anywhere else")
	_, err = d.Split(id(11), geo.Point{X: 150, Y: 20}, geo.Point{X: 158, Y: 0}, Part{id(30), "U"}, Part{id(31), "L"})
	assert.ErrorContains(t, err, "once, not twice")
	b, err := d.Join(id(10), id(11), Part{id(33), "Both"})
	require.NoError(t, err, "40 m of water between")
	assert.InDelta(t, 200*16, m2(b, id(33)), 40)
	_, err = d.Join(id(10), id(12), Part{id(33), "Both"})
	assert.ErrorContains(t, err, "too far")
}

// Ensure that splitting by any line across, then joining, keeps the area of any convex pool.
func TestSplitJoinArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var ring geo.Path
		n := rapid.IntRange(5, 14).Draw(t, "n")
		for i := range n {
			r := rapid.Float64Range(20, 30).Draw(t, "r")
			a := 2 * math.Pi * float64(i) / float64(n)
			ring = append(ring, geo.Point{X: units.Metres(r * math.Cos(a) * 2), Y: units.Metres(r * math.Sin(a))})
		}
		d, err := begun(t).AddPool(id(10), "Alder", ring)
		require.NoError(t, err)
		x := units.Metres(rapid.Float64Range(-25, 25).Draw(t, "x"))
		s, err := d.Split(id(10), geo.Point{X: x, Y: -90}, geo.Point{X: x + units.Metres(rapid.Float64Range(-9, 9).Draw(t, "lean")), Y: 90}, Part{id(11), "U"}, Part{id(12), "L"})
		if err != nil {
			t.Skip("the line crossed more than twice")
		}
		require.InDelta(t, m2(d, id(10)), m2(s, id(11))+m2(s, id(12)), 1e-4)
		j, err := s.Join(id(11), id(12), Part{id(13), "J"})
		require.NoError(t, err)
		require.InDelta(t, m2(d, id(10)), m2(j, id(13)), 0.5) // corners within 2 cm are one
	})
}

// Ensure that whatever is done, every corner stays on the earth, areas stay positive, and undo
// gives back the very values.
func TestAnyActs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := History{Now: three(t)}
		seen, next := []Draft{h.Now}, byte(100)
		num := func() units.Metres {
			if rapid.IntRange(0, 40).Draw(t, "odd") == 0 {
				return units.Metres(rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), 1e9}).Draw(t, "bad"))
			}
			return units.Metres(rapid.Float64Range(-50, 450).Draw(t, "m"))
		}
		for range rapid.IntRange(1, 25).Draw(t, "acts") {
			d := h.Now
			which := func() geo.ID {
				ids := []geo.ID{id(90), id(91)}
				for _, p := range d.Beat.Pools {
					ids = append(ids, p.ID)
				}
				return rapid.SampledFrom(ids).Draw(t, "which")
			}
			v := Vertex{which(), rapid.IntRange(0, 1).Draw(t, "strand"), rapid.IntRange(-1, 6).Draw(t, "index")}
			p, q := geo.Point{X: num(), Y: num() / 10}, geo.Point{X: num(), Y: -num() / 10}
			next += 2
			var after Draft
			var err error
			switch rapid.IntRange(0, 9).Draw(t, "act") {
			case 0, 1:
				after, err = d.Move(v, p)
			case 2:
				after, err = d.Insert(v, p)
			case 3:
				after, err = d.Delete(v)
			case 4:
				after, err = d.Split(which(), p, q, Part{id(next), "U"}, Part{id(next + 1), "L"})
			case 5:
				after, err = d.Join(which(), which(), Part{id(next), "J"})
			case 6:
				after, err = d.Shift(which(), p.X/10, p.Y/10)
			case 7:
				after, err = d.AddPool(id(next), "N", geo.Path{p, q, {X: num(), Y: num()}})
			case 8:
				after, err = d.Remove(which())
			case 9:
				after, err = d.MarkEnds(which(), p, q)
			}
			if err != nil {
				require.Equal(t, d, after, "what cannot be done changes nothing")
				continue
			}
			h = h.Do(after)
			seen = append(seen, after)
			for _, pool := range after.Beat.Pools {
				for _, r := range pool.Outline {
					require.Equal(t, r[0], r[len(r)-1])
					for _, c := range r {
						require.NoError(t, geo.PlaceOf(c).Check())
					}
				}
			}
			after.Findings() // must bear anything
		}
		for i := len(seen) - 2; i >= 0; i-- {
			var ok bool
			h, ok = h.Undo()
			require.True(t, ok)
			require.Equal(t, seen[i], h.Now)
		}
		_, ok := h.Undo()
		require.False(t, ok)
		for i := 1; i < len(seen); i++ {
			h, _ = h.Redo()
			require.Equal(t, seen[i], h.Now)
		}
	})
}

// Ensure that a corner catches before the grid does, but never itself.
func TestSnap(t *testing.T) {
	d := three(t)
	at, v := d.Snap(geo.Point{X: 80.6, Y: 8.5}, 1, 2, Vertex{})
	assert.Equal(t, Vertex{id(10), 0, 2}, v)
	assert.InDelta(t, 80, float64(at.X), 1e-6)
	at, v = d.Snap(geo.Point{X: 80.6, Y: 8.7}, 1, 1, Vertex{id(10), 0, 2})
	assert.Equal(t, Vertex{}, v)
	assert.Equal(t, geo.Point{X: 81, Y: 9}, at)
	at, _ = d.Snap(geo.Point{X: 3.3, Y: 3.3}, 0, 0, Vertex{})
	assert.Equal(t, geo.Point{X: 3.3, Y: 3.3}, at)
}
