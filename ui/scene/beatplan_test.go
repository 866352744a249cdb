package scene_test

import (
	"fmt"
	"image"
	"image/color"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
)

func planID(n byte) geo.ID { return geo.ID{15: n} }

func xy(x, y float64) geo.Point { return geo.Point{X: units.Metres(x), Y: units.Metres(y)} }

// planned is a beat on a river that bends, with three pools and one of every mark; the last
// pool crosses itself.
func planned(t testing.TB) draft.Draft {
	t.Helper()
	d := draft.New(geo.Beat{ID: planID(1)}).Call("Home Beat", "Larrick Water").Zone("Europe/London")
	step := func(f func(draft.Draft) (draft.Draft, error)) {
		t.Helper()
		next, err := f(d)
		require.NoError(t, err)
		d = next
	}
	step(func(d draft.Draft) (draft.Draft, error) { return d.Place(geo.Place{Lat: 54.984, Lon: -4.428}) })
	line := geo.Path{xy(-30, 40), xy(60, 20), xy(150, 0), xy(260, 10), xy(360, 50), xy(430, 110)}
	step(func(d draft.Draft) (draft.Draft, error) { return d.Banks(line, 24, "", planID(90), planID(91)) })
	for i, p := range []geo.Path{
		{xy(0, 22), xy(60, 9), xy(100, 2), xy(105, 20), xy(60, 31), xy(5, 44)},
		{xy(150, -11), xy(240, -4), xy(245, 16), xy(150, 11)},
		{xy(300, 20), xy(350, 55), xy(355, 35), xy(305, 45)},
	} {
		step(func(d draft.Draft) (draft.Draft, error) {
			return d.AddPool(planID(byte(10+i)), []string{"Alder Pool", "Long Flat", "Kirk Pool"}[i], p)
		})
	}
	for i, role := range []geo.Role{geo.RoleEntry, geo.RoleHazard, geo.RoleLie, geo.RoleMark} {
		step(func(d draft.Draft) (draft.Draft, error) {
			return d.AddPoint(planID(byte(20+i)), role, "", xy(20+float64(i)*60, -22))
		})
	}
	step(func(d draft.Draft) (draft.Draft, error) {
		return d.AddArea(planID(30), geo.RoleTrees, "alders", geo.Path{xy(0, 60), xy(120, 45), xy(130, 70), xy(10, 90)})
	})
	step(func(d draft.Draft) (draft.Draft, error) { return d.MarkEnds(planID(11), xy(155, 0), xy(238, 6)) })
	return d
}

func checker(w, h int) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			v := uint8(60 + 150*((x/20+y/20)%2))
			img.SetRGBA(x, y, color.RGBA{v, v / 2, 90, 255})
		}
	}
	return img
}

// plans are the plan in the states that a person sees.
func plans(t testing.TB) map[string]scene.PlanView {
	d := planned(t)
	base := scene.PlanView{Draft: d, Centre: xy(200, 40), Scale: 1.6, Grid: 1, Findings: d.Findings()}
	with := func(f func(*scene.PlanView)) scene.PlanView { v := base; f(&v); return v }
	lies, err := draft.Trace(draft.Pixel{}, draft.Pixel{X: 600}, xy(-40, 150), xy(430, 190))
	require.NoError(t, err)
	empty := draft.New(geo.Beat{ID: planID(1)})
	return map[string]scene.PlanView{
		"whole":  base,
		"picked": with(func(v *scene.PlanView) { v.Selected = planID(10) }),
		"corner": with(func(v *scene.PlanView) {
			v.Selected, v.Vertex, v.Corner, v.Scale = planID(11), draft.Vertex{Of: planID(11), Index: 2}, true, 4
		}),
		"bank": with(func(v *scene.PlanView) { v.Selected = planID(90) }),
		"pool being drawn": with(func(v *scene.PlanView) {
			v.Pending, v.Round, v.Pen, v.PenOn, v.NoHandles = geo.Path{xy(380, 70), xy(410, 95), xy(400, 108)}, true, xy(370, 84), true, true
		}),
		"refused": with(func(v *scene.PlanView) {
			v.Refused = &draft.Error{At: xy(150, 0), What: "the line crosses the outline of Long Flat once, not twice", Do: "Draw it from bank to bank, straight across the pool."}
		}),
		"traced": with(func(v *scene.PlanView) { v.Trace, v.Lies = checker(600, 300), lies }),
		"marks": with(func(v *scene.PlanView) {
			v.Trace, v.Lies, v.On, v.To = checker(600, 300), lies, geo.Path{xy(60, 100)}, geo.Path{xy(80, -20)}
		}),
		"nothing": {Draft: empty, Scale: 2, Grid: 1, Findings: empty.Findings(), Bare: "First say where the beat is: type or paste its place at the right."},
	}
}

func skylines() map[string]scene.SkylineView {
	london, _ := time.LoadLocation("Europe/London")
	at := geo.Place{Lat: 54.984, Lon: -4.428}
	hill := geo.Skyline{{Bearing: 20, Altitude: 4}, {Bearing: 90, Altitude: 14}, {Bearing: 150, Altitude: 9}, {Bearing: 200, Altitude: 17}, {Bearing: 290, Altitude: 6}}
	pool := geo.Pool{ID: planID(10), Name: "Alder Pool", Skyline: hill}
	v := scene.SkylineView{Pool: pool, At: at, Zone: london, Evening: journal.Date{Year: 2026, Month: time.July, Day: 1}, Point: 1}
	level, south, nowhere, steep := v, v, v, v
	level.Pool.Skyline, level.Point = nil, -1
	south.At = geo.Place{Lat: -53.8, Lon: -67.7}
	nowhere.At = geo.Place{}
	steep.Pool.Skyline = geo.Skyline{{Bearing: 0, Altitude: 70}, {Bearing: 100, Altitude: -3}, {Bearing: 260, Altitude: 60}}
	return map[string]scene.SkylineView{"hills": v, "level": level, "south": south, "no place": nowhere, "steep": steep, "no pool": {Point: -1}}
}

// Ensure that every text on plan and skyline can be read, in all looks and sizes.
func TestPlanCanBeRead(t *testing.T) {
	look := func(name string, l *draw.List) {
		for what, faults := range map[string][]inspect.Fault{"weak": inspect.Weak(l, 4.5, 12), "overlap": inspect.Overlaps(l), "outside": inspect.Outside(l)} {
			for _, f := range faults {
				assert.Fail(t, "a text is hard to read", "%s %s: %s", name, what, f)
			}
		}
	}
	for _, k := range scene.Looks {
		for _, size := range []draw.Size{{W: 560, H: 360}, {W: 820, H: 520}} {
			for name, v := range plans(t) {
				look(fmt.Sprintf("%s plan %s %gx%g", k.Name, name, size.W, size.H), scene.Plan(v, size, k).List)
			}
		}
		for _, size := range []draw.Size{{W: 560, H: 170}, {W: 900, H: 200}} {
			for name, v := range skylines() {
				for day := range 3 {
					v.Evening = v.Evening.Add(day * 5)
					look(fmt.Sprintf("%s skyline %s %gx%g night %d", k.Name, name, size.W, size.H, day), scene.Skyline(v, size, k).List)
				}
			}
		}
	}
}

// Ensure that plan and skyline stay as they were looked at.
func TestGoldenPlan(t *testing.T) {
	for name, v := range plans(t) {
		if name == "traced" || name == "marks" { // an image has no text
			continue
		}
		golden(t, "plan-"+strings.ReplaceAll(name, " ", "-"), scene.Plan(v, draw.Size{W: 560, H: 360}, scene.Dusk).List)
	}
	for name, v := range skylines() {
		golden(t, "skyline-"+strings.ReplaceAll(name, " ", "-"), scene.Skyline(v, draw.Size{W: 560, H: 170}, scene.Dusk).List)
	}
}

// Ensure that frames lead there and back.
func TestPlanFrames(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		size := draw.Size{W: num("w", 100, 2000), H: num("h", 100, 900)}
		f := scene.FrameOfPlan(scene.PlanView{Centre: xy(num("cx", -1e4, 1e4), num("cy", -1e4, 1e4)), Scale: num("k", 0.02, 60)}, size)
		p := xy(num("x", -2e4, 2e4), num("y", -2e4, 2e4))
		q := f.Point(f.At(p))
		require.Less(t, float64(p.Distance(q)), 1e-6)
		v := scene.SkylineView{At: geo.Place{Lat: units.Degrees(num("lat", -60, 60))}}
		s := scene.FrameOfSkyline(v, size)
		d := geo.SkyPoint{Bearing: units.Degrees(num("b", 0, 359.9)), Altitude: units.Degrees(num("a", -5, 44))}
		e := s.Sky(s.At(d))
		off := (e.Bearing - d.Bearing).Bearing()
		require.Less(t, min(float64(off), 360-float64(off)), 1e-3)
		require.InDelta(t, float64(d.Altitude), float64(e.Altitude), 1e-6)
	})
}

// Ensure that what can be pointed at lies where it is drawn.
func TestPlanHits(t *testing.T) {
	v := plans(t)["picked"]
	size := draw.Size{W: 820, H: 520}
	s := scene.Plan(v, size, scene.Dusk)
	f := scene.FrameOfPlan(v, size)
	at := func(p geo.Point) scene.Hit { h, _ := s.At(f.At(p)); return h }
	assert.Equal(t, scene.CornerKind, at(xy(0, 22)).Ref.Kind)
	assert.Equal(t, "corner 1 of 6", at(xy(0, 22)).Tip)
	h := at(xy(200, -7))
	assert.Equal(t, planID(11), h.Ref.ID)
	assert.Contains(t, h.Tip, "2  Long Flat: 93 m long")
	assert.Equal(t, planID(21), at(xy(80, -22)).Ref.ID, "the hazard")
	assert.Equal(t, planID(30), at(xy(60, 65)).Ref.ID, "the trees")
	assert.Equal(t, planID(90), at(xy(-26, 51.4)).Ref.ID, "the bank")
	var pins []string
	for _, h := range s.Hits {
		if h.Ref.Kind == scene.FindingKind {
			pins = append(pins, h.Tip)
		}
	}
	require.NotEmpty(t, pins)
	assert.Contains(t, fmt.Sprint(pins), "crosses itself", "what is wrong is pinned")
}

// Ensure that an image lies where its two points say, turned and scaled, and is made once.
func TestPlanUnderlay(t *testing.T) {
	v := plans(t)["traced"]
	img := image.NewRGBA(image.Rect(0, 0, 600, 300))
	for i := range img.Pix {
		img.Pix[i] = 255
	}
	dot := draft.Pixel{X: 300, Y: 150}
	for y := 145; y < 155; y++ {
		for x := 295; x < 305; x++ {
			img.SetRGBA(x, y, color.RGBA{0, 0, 0, 255})
		}
	}
	v.Trace = img
	size := draw.Size{W: 820, H: 520}
	of := func() image.Image {
		l := scene.Plan(v, size, scene.Paper).List
		for i := range l.Len() {
			if o := l.Op(i); o.Kind == draw.ImageOp {
				return o.Image
			}
		}
		return nil
	}
	got := of()
	require.NotNil(t, got)
	q := scene.FrameOfPlan(v, size).At(v.Lies.Plane(dot))
	r, _, _, _ := got.At(int(q.X), int(q.Y)).RGBA()
	assert.Less(t, r>>8, uint32(180), "the dot")
	r, _, _, _ = got.At(int(q.X)+15, int(q.Y)).RGBA()
	assert.Greater(t, r>>8, uint32(240), "beside it")
	assert.Same(t, got, of())
	v.Scale = 2
	assert.NotSame(t, got, of())
}

// Ensure that odd views draw without a panic.
func TestPlanOddViews(t *testing.T) {
	for _, v := range plans(t) {
		for _, size := range []draw.Size{{}, {W: 1, H: 1}, {W: 40, H: 30}} {
			for _, k := range []float64{0, -1, 0.001, 500} {
				v.Scale = k
				assert.NotPanics(t, func() { scene.Plan(v, size, scene.Lamp) })
			}
		}
	}
	for _, v := range skylines() {
		assert.NotPanics(t, func() { scene.Skyline(v, draw.Size{W: 3, H: 2}, scene.Lamp) })
	}
}

func BenchmarkPlan(b *testing.B) {
	v := plans(b)["picked"]
	for b.Loop() {
		scene.Plan(v, draw.Size{W: 820, H: 520}, scene.Dusk)
	}
}

func BenchmarkSkyline(b *testing.B) {
	v := skylines()["hills"]
	for b.Loop() {
		scene.Skyline(v, draw.Size{W: 900, H: 200}, scene.Dusk)
	}
}
