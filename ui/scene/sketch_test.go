package scene_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// crowd is a night on a winding beat with that many pools, all the fish in the second,
// or the first if it is alone.
func crowd(t *testing.T, pools, fish int, name func(i int) string) *timeline.Night {
	const lat, lon = 54.985, -4.431
	f := newFixture(t, lat, lon, journal.Date{Year: 2026, Month: time.July, Day: 4}, true).rods(2)
	b := f.puts[0].(journal.Beat)
	shape := &b.Revisions[0].Shape
	shape.Pools, shape.Features = nil, nil
	for i := range pools {
		x, y := lon+float64(i)*0.0012, lat+0.0003*float64(i%3)
		ring := orb.Ring{{x, y}, {x + 0.0005, y - 0.00006}, {x + 0.0009, y}, {x + 0.0009, y + 0.0002}, {x + 0.0005, y + 0.00024}, {x, y + 0.0002}, {x, y}}
		p := geo.Pool{ID: fixed(byte(200 + i)), Name: name(i), Order: i + 1, Outline: orb.Polygon{ring}}
		if i%2 == 0 { // the hill keeps the moon from every other pool
			p.Skyline = geo.Skyline{{Bearing: 0, Altitude: 40}, {Bearing: 180, Altitude: 40}}
		}
		shape.Pools = append(shape.Pools, p)
		shape.Features = append(shape.Features, geo.Feature{ID: fixed(byte(160 + i)), Role: geo.RoleHazard, Shape: geo.PointShape(orb.Point{x + 0.0004, y + 0.0001})})
	}
	f.puts[0] = b
	run := journal.Run{Head: f.head(1, f.exact(22, 40)), Until: journal.Of(f.exact(23, 59)), Pool: fixed(byte(200 + min(1, pools-1))), Bank: journal.Of(geo.TrueRight)}
	f.add(run)
	for i := range fish {
		f.add(journal.Contact{Head: f.head(1, f.exact(22, 45+i%14)), Touch: []journal.Touch{journal.Landed, journal.Pull, journal.Lost}[i%3]})
	}
	return f.night()
}

func plain(i int) string { return fmt.Sprintf("Alder Pool %d", i+1) }

// strained are beats that strain a sketch.
func strained(t *testing.T) map[string]*timeline.Night {
	return map[string]*timeline.Night{
		"one pool":   crowd(t, 1, 4, plain),
		"many fish":  crowd(t, 3, 18, plain),
		"twelve":     crowd(t, 12, 6, plain),
		"many pools": crowd(t, 25, 3, plain),
		"no names":   crowd(t, 5, 3, func(int) string { return "" }),
		"long names": crowd(t, 6, 3, func(int) string { return "Linn Dubh na h-Éisge Bàine below the Old Ford" }),
	}
}

var crampedSizes = []draw.Size{{W: 500, H: 200}, {W: 735, H: 272}, {W: 300, H: 150}, {W: 1100, H: 460}}

// Ensure that on crowded, lonely, nameless and long-named beats, at any size, zoom and
// pan, no text lies on another, is cut off, or is a pool's name on a pool not its own.
func TestSketchTextsKeepApart(t *testing.T) {
	nights := strained(t)
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom([]string{"one pool", "many fish", "twelve", "many pools", "no names", "long names"}).Draw(t, "night")
		n := nights[name]
		v := scene.SketchView{Zoom: 1, Cursor: n.From.Add(time.Duration(rapid.Int64Range(0, 360).Draw(t, "minutes")) * time.Minute)}
		if rapid.Bool().Draw(t, "zoomed") {
			v.Zoom = rapid.Float64Range(1, 16).Draw(t, "zoom")
			v.Pan = draw.Pt(rapid.Float64Range(-900, 900).Draw(t, "x"), rapid.Float64Range(-500, 500).Draw(t, "y"))
		}
		if rapid.Bool().Draw(t, "picked") {
			v.Pool = n.Pools[rapid.IntRange(0, len(n.Pools)-1).Draw(t, "pool")].Pool.ID
		}
		size := rapid.SampledFrom(crampedSizes).Draw(t, "size")
		if name == "many fish" && size.H < 200 {
			t.Skip("18 marks have no room there: the last lie under their neighbours")
		}
		l := scene.Sketch(n, size, scene.Dusk, v).List
		for what, faults := range map[string][]inspect.Fault{"overlap": inspect.Overlaps(l), "outside": inspect.Outside(l)} {
			for _, f := range faults {
				t.Fatalf("%s: %s: %s", name, what, f)
			}
		}
	})
}

// Ensure that every text of strained sketches can be read in every look, close up too.
func TestStrainedSketchesCanBeRead(t *testing.T) {
	for name, n := range strained(t) {
		for _, look := range scene.Looks {
			for _, v := range []scene.SketchView{{Cursor: n.From.Add(5 * time.Hour), Pool: n.Pools[0].Pool.ID}, {Zoom: 3, Pan: draw.Pt(300, 20)}} {
				for _, f := range inspect.Weak(scene.Sketch(n, crampedSizes[1], look, v).List, 4.5, 12) {
					assert.Fail(t, "weak", "%s, %s: %s", name, look.Name, f)
				}
			}
		}
	}
}

// Ensure that crowded fish never leave the sketch: each has its mark at fit.
func TestCrowdedFishAllStand(t *testing.T) {
	for name, n := range strained(t) {
		for _, size := range crampedSizes {
			s := scene.Sketch(n, size, scene.Dusk, scene.SketchView{})
			on := countHits(s, journal.KindContact)
			for _, c := range n.Contacts {
				assert.Equal(t, 1, on[c.ID], "%s %v: contact %d", name, size, c.N)
			}
		}
	}
}

// Ensure that at the cursor a pool with the moon over it is paler than one in the
// hill's shadow, in every look, and that the two differ by more than tone.
func TestMoonlitPoolsArePale(t *testing.T) {
	n := crowd(t, 4, 0, plain)
	require.NotEmpty(t, n.Pools[1].MoonOver)
	require.Empty(t, n.Pools[0].MoonOver)
	cursor := n.Pools[1].MoonOver[0].From.Add(time.Minute)
	for n.Sky.SunUpAt(cursor) || n.Rung(cursor, geo.ID{}) < timeline.TreesGrey {
		cursor = cursor.Add(time.Minute)
	}
	fills := func(look scene.Look, t time.Time) []draw.Color {
		l := scene.Sketch(n, crampedSizes[1], look, scene.SketchView{Cursor: t}).List
		var out []draw.Color
		for i := range l.Len() {
			if o := l.Op(i); o.Kind == draw.FillOp && o.Box.W() > 40 && o.Box.W() < 400 {
				out = append(out, o.Paint.Color)
			}
		}
		return out
	}
	for _, look := range scene.Looks {
		f := fills(look, cursor)
		require.Len(t, f, 4, look.Name)
		assert.Greater(t, draw.Contrast(f[1], f[0]), 1.6, look.Name)
		assert.Greater(t, draw.Luminance(f[1]), draw.Luminance(f[0]), look.Name)
	}
	clips := 0
	l := scene.Sketch(n, crampedSizes[1], scene.Lamp, scene.SketchView{Cursor: cursor}).List
	for i := range l.Len() {
		if l.Op(i).Kind == draw.PushClipOp {
			clips++
		}
	}
	assert.Equal(t, 1+2, clips, "the two pools in shadow are ruled")
	assert.Contains(t, words.SketchCaption(n, cursor, words.Prefs{}), "only at Alder Pool 2 and Alder Pool 4")
}

// Ensure that a caption without room for all of it says all in its tip.
func TestCaptionTipIsWhole(t *testing.T) {
	n := crowd(t, 12, 0, plain)
	cursor := n.Pools[1].MoonOver[0].From.Add(time.Minute)
	s := scene.Sketch(n, draw.Size{W: 300, H: 150}, scene.Dusk, scene.SketchView{Cursor: cursor})
	h, ok := s.At(draw.Pt(20, 16))
	require.True(t, ok)
	assert.True(t, h.Ref.ID.IsZero())
	assert.Equal(t, words.SketchCaptionWhole(n, cursor, words.Prefs{}), h.Tip)
}

// Ensure that a run lies beside the bank it was fished from and can be pointed at, and
// that one whose bank nobody noted has its line in the middle of the pool.
func TestRunLiesOnItsBank(t *testing.T) {
	for _, bank := range []geo.Bank{geo.TrueLeft, geo.TrueRight} {
		f := newFixture(t, 54.985, -4.431, journal.Date{Year: 2026, Month: time.July, Day: 4}, true).rods(1)
		r := journal.Run{Head: f.head(1, f.exact(23, 0)), Until: journal.Of(f.exact(23, 30)), Pool: fixed(3), Bank: journal.Of(bank)}
		f.add(r)
		other := f.run(1, 2, 23, 40, 23, 50)
		n := f.night()
		s := scene.Sketch(n, draw.Size{W: 700, H: 300}, scene.Dusk, scene.SketchView{})
		require.Len(t, countHits(s, journal.KindRun), 2)
		middle, ok := s.Box(journal.Ref{Kind: journal.KindRun, Trip: n.Log.Trip.ID, ID: other})
		require.True(t, ok)
		first, ok := s.Box(journal.Ref{Kind: scene.PoolKind, Trip: n.Log.Trip.Beat, ID: fixed(2)})
		require.True(t, ok)
		assert.InDelta(t, first.Center().Y, middle.Center().Y, 3)
		line, ok := s.Box(r.Ref())
		require.True(t, ok)
		pool, ok := s.Box(journal.Ref{Kind: scene.PoolKind, Trip: n.Log.Trip.Beat, ID: fixed(3)})
		require.True(t, ok)
		// the fixture's river runs east: true left is above
		assert.Equal(t, bank == geo.TrueLeft, line.Center().Y < pool.Center().Y, bank)
		edge := pool.Min.Y // of the water on that side
		if bank == geo.TrueRight {
			edge = pool.Max.Y
		}
		assert.Greater(t, math.Abs(line.Center().Y-pool.Center().Y), math.Abs(edge-pool.Center().Y)-1, "the line is in the water")
		h, ok := s.At(line.Center())
		require.True(t, ok)
		assert.Equal(t, r.Ref(), h.Ref)
		assert.Contains(t, h.Tip, "true "+string(bank))
	}
}

// Ensure that beats with points only, or a line only, are drawn and say where they are.
func TestSketchOfLittle(t *testing.T) {
	for name, shape := range map[string]geo.Feature{
		"points": {ID: fixed(4), Role: geo.RoleHazard, Shape: geo.PointShape(orb.Point{-4.431, 54.985})},
		"line":   {ID: fixed(4), Role: geo.RoleBank, Bank: geo.TrueLeft, Shape: geo.Shape{Lines: []orb.LineString{{{-4.431, 54.985}, {-4.42, 54.986}}}}},
	} {
		f := newFixture(t, 54.985, -4.431, journal.Date{Year: 2026, Month: time.July, Day: 4}, false).rods(1)
		b := f.puts[0].(journal.Beat)
		b.Revisions[0].Shape.Features = []geo.Feature{shape}
		f.puts[0] = b
		f.run(1, 2, 23, 0, 23, 30)
		n := f.night()
		size := draw.Size{W: 700, H: 300}
		s := scene.Sketch(n, size, scene.Dusk, scene.SketchView{})
		assert.NotContains(t, texts(s.List), words.NoSketch(), name)
		at := scene.SketchPlace(n, size, scene.SketchView{}, draw.Pt(350, 150))
		assert.InDelta(t, 54.985, float64(at.Lat), 0.002, name)
	}
}

// Ensure that the disc beside the words of the moon is faint while the moon is down.
func TestMoonDownIsFaint(t *testing.T) {
	n := showNight(t)
	brightest := func(at time.Time) (most uint8) {
		l := scene.Sketch(n, draw.Size{W: 680, H: 230}, scene.Dusk, scene.SketchView{Cursor: at}).List
		for i := range l.Len() {
			if o := l.Op(i); o.Kind == draw.StrokeOp && o.Box.Min.Y < 16 && o.Box.Max.Y < 34 && o.Box.W() > 12 && o.Box.W() < 26 && o.Box.Min.X > 400 {
				most = max(most, o.Color.A)
			}
		}
		return most
	}
	up := n.Sky.MoonUp[0]
	down, over := brightest(up.From.Add(-time.Hour)), brightest(up.From.Add(time.Hour))
	assert.Positive(t, down)
	assert.Greater(t, over, 2*down)
}
