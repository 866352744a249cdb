package screen

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// planReach is how near to a corner, a sign or a line the pointer takes hold of it, in dp.
const planReach = 9.0

// newPlan is the plan on which one draws.
func (r *beatRoom) newPlan() *own.Board {
	s := r.s
	b := s.board(state.OnPlan, func(size draw.Size) scene.Scene {
		r.desk.SetSize(size)
		if _, ok := r.desk.Drawn(); !ok {
			return s.empty(size, words.NoBeatOnTable())
		}
		return scene.Plan(r.planView(), size, s.look())
	})
	b.Tabs = true
	b.Min = fyne.NewSize(minSketch, 150)
	b.OnPick = r.press
	b.OnTap = r.tap
	b.OnOpen = r.double
	b.OnDrag = r.drag
	b.OnMenu = func(p own.Pick) { r.menu(p) }
	b.OnScroll = func(p own.Pick, _, dy float64) { r.desk.Zoom(math.Pow(1.0035, dy), r.point(p)) }
	b.OnHover = func(p own.Pick) own.Hint {
		if r.desk.Tool() == state.Choose {
			return own.Hint{}
		}
		r.desk.Point(r.point(p), r.reach())
		return own.Hint{Mute: true}
	}
	b.OnShape = func(p own.Pick) desktop.Cursor {
		if r.desk.Tool() != state.Choose {
			return desktop.CrosshairCursor
		}
		if p.Found {
			return desktop.PointerCursor
		}
		return desktop.DefaultCursor
	}
	return b
}

// planView is what the plan shows.
func (r *beatRoom) planView() scene.PlanView {
	d, _ := r.desk.Drawn()
	v := r.desk.View()
	out := scene.PlanView{Draft: d, Centre: v.Centre, Scale: v.Scale, Grid: r.desk.Grid(), Findings: r.desk.Findings(), Refused: r.desk.Refused(), Bare: r.desk.Prompt()}
	out.Selected, out.Vertex, out.Corner = r.desk.Selected()
	out.Pending, out.Pen, out.PenOn = r.desk.Pending()
	tool := r.desk.Tool()
	out.Round = tool == state.DrawPool || tool == state.DrawTrees
	out.NoHandles = tool != state.Choose
	if img, lies, ok := r.desk.Tracing(); ok {
		out.Trace, out.Lies = img, lies
		out.On, out.To = r.desk.TracingMarks()
	}
	return out
}

// point is the place on the plan under the pointer, reach how far planReach is there.
func (r *beatRoom) point(p own.Pick) geo.Point { return r.pointAt(p.At, p.Size) }

func (r *beatRoom) pointAt(at draw.Point, size draw.Size) geo.Point {
	return scene.FrameOfPlan(scene.PlanView{Centre: r.desk.View().Centre, Scale: r.desk.View().Scale}, size).Point(at)
}

func (r *beatRoom) reach() units.Metres { return units.Metres(planReach / r.desk.View().Scale) }

// press notes what the button went down on; a corner is picked out at once.
func (r *beatRoom) press(p own.Pick) {
	r.s.begin()
	r.moving = false
	r.grasp, r.found = r.desk.GraspAt(r.point(p), r.reach())
	sel, _, _ := r.desk.Selected()
	r.stood = r.found && r.grasp.ID == sel
	if r.desk.Tool() == state.Choose && r.found && r.grasp.Corner {
		r.desk.SelectVertex(r.grasp.Vertex)
	}
}

// tap is a press that came up where it went down.
func (r *beatRoom) tap(p own.Pick) {
	if r.desk.Tool() != state.Choose {
		if !r.s.desk.ReadOnly() {
			r.told(r.desk.Click(r.point(p), r.reach()))
		}
		return
	}
	switch {
	case r.found && (r.grasp.Corner || r.grasp.Edge):
	case r.found:
		r.desk.Select(r.grasp.ID)
	default:
		r.desk.Select(geo.ID{})
	}
}

// double puts a corner on an edge of what is picked out. With a tool that draws it means nothing:
// the toolkit takes any two quick clicks for a double one, wherever they are, and a second click on
// the last corner closes by itself.
func (r *beatRoom) double(p own.Pick) {
	if r.s.desk.ReadOnly() || r.desk.Tool() != state.Choose {
		return
	}
	if g, ok := r.desk.GraspAt(r.point(p), r.reach()); ok && g.Corner {
		return
	}
	_, err := r.desk.InsertAt(r.point(p), r.reach())
	r.told(err)
}

// drag moves what the press took hold of, else the ground.
func (r *beatRoom) drag(d own.Drag) {
	if d.End {
		if r.desk.Held() {
			r.told(r.desk.Release())
		}
		r.moving = false
		return
	}
	if !r.moving && !r.desk.Held() {
		if d.At.Dist(d.From.At) <= slip {
			return
		}
		r.moving = true
		if r.found && !r.s.desk.ReadOnly() && (r.grasp.Corner || r.grasp.Edge || r.stood) {
			r.desk.Hold(r.grasp, r.point(d.From))
		}
	}
	if r.desk.Held() {
		r.desk.Drag(r.pointAt(d.At, d.From.Size), r.reach())
		return
	}
	r.desk.Pan(draw.Pt(-d.By.X, -d.By.Y))
}

// told shows what went wrong, unless the plan shows it at its place.
func (r *beatRoom) told(err error) {
	if err != nil && r.desk.Refused() == nil {
		r.s.tellError(err)
	}
}

// planMenu lists what can be done with what lies under the pointer, by the commands of the table.
var planMenu = []string{
	"draw.delete", "draw.insert", "draw.tool-ends", "draw.tool-split", "draw.join", "draw.earlier", "draw.later", "",
	"draw.tool-pool", "draw.tool-entry", "draw.tool-hazard", "draw.tool-lie", "draw.tool-trees", "", "plan.fit", "draw.undo",
}

func (r *beatRoom) menu(p own.Pick) {
	r.s.begin()
	if g, ok := r.desk.GraspAt(r.point(p), r.reach()); ok && r.desk.Tool() == state.Choose {
		if g.Corner {
			r.desk.SelectVertex(g.Vertex)
		} else {
			r.desk.Select(g.ID)
		}
	}
	var items []*fyne.MenuItem
	for _, id := range planMenu {
		switch c := r.s.desk.Command(id); {
		case id == "":
			if n := len(items); n > 0 && !items[n-1].IsSeparator {
				items = append(items, fyne.NewMenuItemSeparator())
			}
		case c != nil && c.Enabled():
			i := r.s.menus.item(c)
			i.Shortcut = nil // the menu bar hears it
			items = append(items, i)
		}
	}
	if len(items) > 0 {
		widget.ShowPopUpMenuAtPosition(fyne.NewMenu("", items...), r.s.win.Canvas(), p.Window)
	}
}
