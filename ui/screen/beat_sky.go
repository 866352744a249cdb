package screen

import (
	"math"
	"time"

	"fyne.io/fyne/v2"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// newSky is the strip of bearings with the skyline of a pool and the ways of sun and moon.
func (r *beatRoom) newSky() *own.Board {
	s := r.s
	b := s.board(state.OnSkyline, func(size draw.Size) scene.Scene { return scene.Skyline(r.skyView(), size, s.look()) })
	b.Tabs = true
	b.Min = fyne.NewSize(minSketch, 90)
	frame := func(size draw.Size) scene.SkyFrame { return scene.FrameOfSkyline(r.skyView(), size) }
	grasp := func(p own.Pick) {
		if s.desk.ReadOnly() {
			return
		}
		f := frame(p.Size)
		db, da := f.Degrees(planReach)
		r.desk.GraspSky(f.Sky(p.At), db, da)
	}
	b.OnPick = func(p own.Pick) {
		s.begin()
		r.skyOn = false
		if p.Found && p.Hit.Ref.Kind == scene.SkyPointKind {
			grasp(p)
			r.skyOn = true
		}
	}
	b.OnTap = func(p own.Pick) {
		if !r.skyOn && frame(p.Size).Plot.Contains(p.At) {
			grasp(p)
		}
		r.told(r.desk.ReleaseSky())
	}
	b.OnDrag = func(d own.Drag) {
		switch {
		case d.End:
			r.told(r.desk.ReleaseSky())
			return
		case d.At.Dist(d.From.At) <= slip:
			return
		case !r.skyOn:
			if !frame(d.From.Size).Plot.Contains(d.From.At) {
				return
			}
			grasp(d.From)
			r.skyOn = true
		}
		r.desk.DragSky(frame(d.From.Size).Sky(d.At))
	}
	b.OnOpen = nil
	b.OnMenu = func(p own.Pick) {
		if p.Found && p.Hit.Ref.Kind == scene.SkyPointKind {
			grasp(p)
			r.told(r.desk.ReleaseSky())
			r.told(r.desk.DropSky())
		}
	}
	b.OnScroll = func(_ own.Pick, _, dy float64) {
		if dy > 0 {
			r.desk.StepEvening(+1)
		} else if dy < 0 {
			r.desk.StepEvening(-1)
		}
	}
	b.OnHover = func(p own.Pick) own.Hint {
		if f := frame(p.Size); f.Plot.Contains(p.At) {
			return own.Hint{Text: words.SkyPoint(rounded(f.Sky(p.At))), X: p.At.X, Bare: !p.Found}
		}
		return own.Hint{}
	}
	return b
}

// skyView is what the strip shows.
func (r *beatRoom) skyView() scene.SkylineView {
	d, ok := r.desk.Drawn()
	p, on := r.desk.SkyPool()
	if !ok || !on {
		return scene.SkylineView{Point: -1}
	}
	p.Skyline = p.Skyline.Sorted()
	v := scene.SkylineView{Pool: p, At: d.Beat.Place(), Evening: r.desk.Evening(), Point: r.desk.SkyPoint()}
	if loc, err := time.LoadLocation(d.Beat.Zone); err == nil && d.Beat.Zone != "" {
		v.Zone = loc
	}
	return v
}

// rounded is a direction to the degree, as the pointer can mean it.
func rounded(p geo.SkyPoint) geo.SkyPoint {
	whole := func(v units.Degrees) units.Degrees { return units.Degrees(math.Round(float64(v))) }
	return geo.SkyPoint{Bearing: whole(p.Bearing), Altitude: whole(p.Altitude)}
}
