package geo

import (
	"encoding/json"
	"math"
	"slices"
	"testing"
	_ "time/tzdata"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCheckFindsNothing(t *testing.T) {
	r := newBend(larrick, 120)
	assert.Empty(t, Check(r.beat()))
	assert.Empty(t, Check(r.withBanks()))
	assert.Empty(t, Check(Beat{ID: NewID(), At: larrick, Zone: "Europe/London", Pools: []Pool{{ID: NewID(), Name: "Not drawn yet"}}}))
}

// Ensure that each kind of fault is found, at its place, and by itself.
func TestCheck(t *testing.T) {
	r := newBend(larrick, 120)
	for _, c := range []struct {
		spoil func(*Beat)
		kind  FaultKind
		id    ID
		says  string
	}{
		{func(b *Beat) { b.Zone = "" }, NoZone, ID{}, "the beat has no time zone, such as Europe/London"},
		{func(b *Beat) { b.Zone = "Europe/Larrick" }, UnknownZone, ID{}, `the time zone "Europe/Larrick" is not known; use a name such as Europe/London`},
		{func(b *Beat) { b.Zone = "Local" }, UnknownZone, ID{}, `the time zone "Local" is not known; use a name such as Europe/London`},
		{func(b *Beat) { b.ID = ID{} }, NoID, ID{}, "Home Beat has no ID"},
		{func(b *Beat) { b.Pools[2].ID = bendIDs[1] }, SameID, bendIDs[1], "Alder Pool and Mill Neck have the same ID"},
		{func(b *Beat) { b.Pools[1].Name = " " }, NoName, bendIDs[1], "pool 2 has no name"},
		{func(b *Beat) { b.Pools[2].Name = "mill  NECK" }, SameName, bendIDs[2], "two pools are called mill  NECK"},
		{func(b *Beat) { b.Pools[2].Order = 1 }, SameOrder, bendIDs[2], "Alder Pool and Mill Neck are both number 1"},
		{func(b *Beat) { b.Pools[2].Order = -1 }, NegativeNumber, bendIDs[2], "Alder Pool has the number -1; numbers start at 1"},
		{func(b *Beat) { b.Pools[1].Outline[0] = b.Pools[1].Outline[0][:3] }, TooFewCorners, bendIDs[1], "the outline of Mill Neck encloses nothing; it needs three corners or more"},
		{func(b *Beat) { b.Pools[1].Skyline = Skyline{{400, 5}} }, BadSkyline, bendIDs[1], "Mill Neck: skyline point 1 has the bearing 400; bearings go from 0 to 360 degrees"},
		{func(b *Beat) { b.Pools[1].Canopy = "leafy" }, BadCanopy, bendIDs[1], `Mill Neck has the canopy "leafy"; it is open, partly or closed`},
		{func(b *Beat) { b.Pools[1].Bank = "near" }, BadBank, bendIDs[1], `Mill Neck has the bank "near"; a bank is left or right`},
		{func(b *Beat) { b.Features[0].Bank = "" }, NoBankSide, bendIDs[4], "bank 1 does not say whether it is the true left or the true right bank"},
		{func(b *Beat) { b.Features[0].Bank, b.Features[1].Bank = TrueRight, TrueLeft }, OrderUpstream, bendIDs[0], "the pools are numbered upstream, as the banks are drawn; number 1 is the top of the beat"},
		{func(b *Beat) { b.Features[1].Shape = Shape{} }, NothingDrawn, bendIDs[5], "bank 2 is not drawn anywhere"},
		{func(b *Beat) { b.Features[1].Shape.Lines[0][3][1] = 555 }, BadPosition, bendIDs[5], ""},
		{func(b *Beat) { b.Pools[1].Outline[0][3][0] = math.NaN() }, BadPosition, bendIDs[1], ""},
		{func(b *Beat) { b.Pools[0].Outline = newBend(Place{Lat: 55.02, Lon: -4.428}, 120).pool(400, 560) }, OutsideBeat, bendIDs[3], ""},
		{func(b *Beat) {
			b.Pools[0].Head, b.Pools[0].Tail = PlaceOf(r.at(560, 0)), PlaceOf(r.at(400, 0))
		}, HeadBelowTail, bendIDs[3], "the head of Kirk Pool is marked downstream of its tail"},
	} {
		b := r.withBanks()
		c.spoil(&b)
		faults := Check(b)
		require.Len(t, faults, 1, "%s: %v", c.kind, faults)
		assert.Equal(t, c.kind, faults[0].Kind)
		if c.kind != NoID {
			assert.Equal(t, c.id, faults[0].ID, string(c.kind))
		}
		if c.says != "" {
			assert.Equal(t, c.says, faults[0].Error())
		}
	}
	faults := Check(Beat{ID: NewID(), Zone: "Europe/London"})
	require.Len(t, faults, 1)
	assert.Equal(t, NoPlace, faults[0].Kind)
	assert.True(t, faults[0].Serious())
}

// Ensure that without banks a pool in another valley is found, and the others are not blamed.
func TestCheckStrayPool(t *testing.T) {
	b := newBend(larrick, 120).beat()
	b.Pools[0].Outline = newBend(Place{Lat: 55.2, Lon: -4.428}, 120).pool(400, 560)
	faults := Check(b)
	require.Len(t, faults, 1, "%v", faults)
	assert.Equal(t, OutsideBeat, faults[0].Kind)
	assert.Equal(t, bendIDs[3], faults[0].ID)
	assert.Regexp(t, `^Kirk Pool lies 2\d{4} m away from the rest of the beat$`, faults[0].Error())
}

// Ensure that a self-crossing is named with the very point: the diagonals of a square
// of 40 m drawn corner to corner cross in its middle.
func TestCheckCrossing(t *testing.T) {
	pl := NewPlane(larrick)
	var ring orb.Ring
	for _, p := range []Point{{-20, -20}, {20, 20}, {20, -20}, {-20, 20}, {-20, -20}} {
		ring = append(ring, pl.Place(p).LonLat())
	}
	// A sliver keeps the doubled area from being nothing.
	ring[1] = pl.Place(Point{30, 30}).LonLat()
	b := Beat{ID: NewID(), Zone: "Europe/London", Pools: []Pool{{ID: NewID(), Name: "Mill Neck", Order: 1, Outline: orb.Polygon{ring}}}}
	faults := Check(b)
	require.Len(t, faults, 1)
	assert.Equal(t, CrossesItself, faults[0].Kind)
	assert.InDelta(t, 0, float64(pl.At(faults[0].At).Distance(Point{})), 0.01)
	assert.Equal(t, "the outline of Mill Neck crosses itself at 54.98400, -4.42800", faults[0].Error())
}

func TestCrossing(t *testing.T) {
	for name, c := range map[string]struct {
		p  Path
		at *Point
	}{
		"square":            {square, nil},
		"corner repeated":   {Path{{0, 0}, {30, 0}, {30, 0}, {30, 10}, {0, 10}, {0, 0}}, nil},
		"corner in a side":  {Path{{0, 0}, {15, 0}, {30, 0}, {30, 10}, {0, 10}, {0, 0}}, nil},
		"spike":             {Path{{0, 0}, {40, 0}, {30, 0}, {30, 10}, {0, 10}, {0, 0}}, &Point{40, 0}},
		"touches a side":    {Path{{0, 0}, {30, 0}, {30, 10}, {15, 0}, {0, 10}, {0, 0}}, &Point{15, 0}},
		"touched from afar": {Path{{5, 0}, {30, 0}, {30, -10}, {15, 0}, {0, -10}, {0, 5}, {5, 5}, {5, 0}}, &Point{15, 0}},
		"eight":             {Path{{0, 0}, {10, 10}, {10, 0}, {0, 10}, {0, 0}}, &Point{5, 5}},
		"triangle":          {Path{{0, 0}, {10, 0}, {5, 5}, {0, 0}}, nil},
		"crosses far later": {Path{{0, 0}, {30, 0}, {30, 10}, {20, 10}, {20, -5}, {0, -5}, {0, 0}}, &Point{20, 0}},
	} {
		for _, p := range []Path{c.p, c.p.Reversed()} {
			at, crossed := p.Crossing()
			assert.Equal(t, c.at != nil, crossed, name)
			if c.at != nil {
				assert.InDelta(t, 0, float64(at.Distance(*c.at)), 1e-9, "%s at %v", name, at)
			}
		}
	}
}

// Ensure that every kind has its own sentence.
func TestFaultKindsHaveWords(t *testing.T) {
	seen := map[string]FaultKind{}
	for _, k := range FaultKinds {
		s := Fault{Kind: k, What: "Mill Neck", Other: "Alder Pool", Value: "7"}.Error()
		assert.NotContains(t, s, "Mill Neck: "+string(k))
		assert.NotContains(t, seen, s)
		seen[s] = k
	}
	assert.Len(t, FaultKinds, len(seen))
	assert.False(t, slices.Contains(FaultKinds, ""))
}

// Ensure that a beat survives the JSON kept in the journal.
func TestBeatJSON(t *testing.T) {
	b := newBend(larrick, 120).withBanks()
	b.At, b.Pools[0].Head = larrick, larrick
	b.Extra.Members = map[string]json.RawMessage{"note": json.RawMessage(`{"a":[1,2.50]}`)}
	text, err := json.Marshal(b)
	require.NoError(t, err)
	var again Beat
	require.NoError(t, json.Unmarshal(text, &again))
	assert.Equal(t, b, again)
	small, err := json.Marshal(Beat{ID: bendIDs[0]})
	require.NoError(t, err)
	assert.Equal(t, `{"id":"00000000000000000000000000000001"}`, string(small))
}
