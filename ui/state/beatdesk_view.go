package state

import (
	"math"
	"slices"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/ui/draw"
)

// PlanView is which part of the plan is in view: north is up.
type PlanView struct {
	Centre geo.Point
	Scale  float64 // dp a metre
}

// The closest and widest view of a plan, in dp a metre.
const (
	closestPlan = 60.0
	widestPlan  = 0.02
)

// View returns the part of the plan in view.
func (b *BeatDesk) View() PlanView {
	if b.view.Scale == 0 {
		return PlanView{Scale: 2}
	}
	return b.view
}

// SetSize says how large the plan is shown, in dp; Fit and keys go by it.
func (b *BeatDesk) SetSize(s draw.Size) {
	first := b.view.Scale == 0
	if s.W > 0 && s.H > 0 {
		b.size = s
	}
	if first {
		b.Fit()
	}
}

// Fit shows the whole of what is drawn.
func (b *BeatDesk) Fit() {
	b.d.act(func() {
		b.d.tell(RoomView)
		d, ok := b.Drawn()
		b.view = PlanView{Scale: 2}
		if !ok {
			return
		}
		lo, hi := d.Beat.LayoutOn(d.Plane).Extent(d.Beat)
		if t := b.top.trace; t != nil && t.img != nil && lo == hi {
			lo, hi = t.extent()
		}
		w, h := float64(hi.X-lo.X), float64(hi.Y-lo.Y)
		b.view.Centre = geo.Point{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2}
		if w > 0 || h > 0 {
			const air = 90
			k := math.Min((b.size.W-air)/math.Max(w, 1), (b.size.H-air)/math.Max(h, 1))
			b.view.Scale = clamp(k, widestPlan, 12)
		}
	})
}

// Zoom shows factor times as large, keeping the point at where it is.
func (b *BeatDesk) Zoom(factor float64, at geo.Point) {
	b.d.act(func() {
		v := b.View()
		k := clamp(v.Scale*factor, widestPlan, closestPlan)
		part := units.Metres(v.Scale / k)
		v.Centre = geo.Point{X: at.X + (v.Centre.X-at.X)*part, Y: at.Y + (v.Centre.Y-at.Y)*part}
		v.Scale = k
		b.view = v
		b.d.tell(RoomView)
	})
}

// Pan moves the view over the plan by dp, to the right and downwards.
func (b *BeatDesk) Pan(by draw.Point) {
	b.d.act(func() {
		v := b.View()
		v.Centre.X += units.Metres(by.X / v.Scale)
		v.Centre.Y -= units.Metres(by.Y / v.Scale)
		const far = 30_000
		v.Centre.X = units.Metres(clamp(float64(v.Centre.X), -far, far))
		v.Centre.Y = units.Metres(clamp(float64(v.Centre.Y), -far, far))
		b.view = v
		b.d.tell(RoomView)
	})
}

// keepInView moves the view as far as a point needs to be seen.
func (b *BeatDesk) keepInView(p geo.Point) {
	const edge = 30
	v := b.View()
	x, y := float64(p.X-v.Centre.X)*v.Scale, -float64(p.Y-v.Centre.Y)*v.Scale
	over := func(at, half float64) float64 {
		return math.Max(0, at-half+edge) + math.Min(0, at+half-edge)
	}
	if dx, dy := over(x, b.size.W/2), over(y, b.size.H/2); dx != 0 || dy != 0 {
		b.Pan(draw.Pt(dx, dy))
	}
}

// Grid returns the width of the grid that drawing catches on; 0 for none.
func (b *BeatDesk) Grid() units.Metres { return b.grid }

// StepGrid makes the grid wider (step 1) or narrower.
func (b *BeatDesk) StepGrid(step int) {
	b.d.act(func() {
		at := max(0, slices.Index(Grids, b.grid))
		b.grid = Grids[min(max(0, at+step), len(Grids)-1)]
		b.tell()
	})
}

func draw2(x, y int) draw.Point { return draw.Pt(float64(x), float64(y)) }
