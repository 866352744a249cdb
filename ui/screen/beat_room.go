package screen

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

func init() {
	roomMakers[state.BeatRoom] = func(s *Screen) room { return newBeatRoom(s) }
}

// beatRoom is the screen on which a beat is drawn: tools above the plan, the skyline of a pool
// below it, what is picked out at the right, and the beats with what is drawn on them at the left.
type beatRoom struct {
	s     *Screen
	desk  *state.BeatDesk
	title *own.Paragraph
	note  *own.Paragraph // whether it is stored
	says  *own.Paragraph // what to do next
	tools *beatTools
	plan  *own.Board
	sky   *own.Board
	panel *beatPanel
	rows  *own.Board
	left  fyne.CanvasObject
	all   *fyne.Container

	grasp  state.Grasp // under the press
	found  bool
	stood  bool // it was picked out before
	moving bool // a press became a drag of the ground
	skyOn  bool // a point of the skyline is held
}

func newBeatRoom(s *Screen) *beatRoom {
	r := &beatRoom{s: s, desk: s.desk.Beats()}
	r.title = own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 20}, 600, s.ink)
	r.title.Most = 1
	r.note = own.NewParagraph(draw.Font{Size: 12.5}, 300, s.soft)
	r.note.Most = 1
	r.says = own.NewParagraph(draw.Font{Weight: draw.Medium, Size: 13.5}, 600, s.accent)
	r.says.Most = 2
	r.tools = newBeatTools(r)
	r.plan = r.newPlan()
	r.sky = r.newSky()
	r.panel = newBeatPanel(r)
	r.rows = r.newRows()
	add := s.button(words.NewBeatButton(), tipOf(s.desk.Command("beat.new")), "add", func() { s.runID("beat.new") })
	r.left = container.NewBorder(container.New(inset{6, 0}, container.NewHBox(add)), nil, nil, nil, r.rows)
	l := &beatLayout{r: r, plan: s.panel(r.plan), sky: s.panel(r.sky), panel: s.panel(r.panel.all)}
	r.all = container.New(l, r.title, r.note, r.tools.all, r.says, l.plan, l.sky, l.panel)
	return r
}

func (r *beatRoom) main() fyne.CanvasObject { return r.all }
func (r *beatRoom) list() fyne.CanvasObject { return r.left }
func (r *beatRoom) hint() string            { return words.BeatRoomHint() }
func (r *beatRoom) parts() []fyne.Focusable {
	return append([]fyne.Focusable{r.plan, r.sky}, r.panel.first()...)
}

func (r *beatRoom) hush() {
	r.plan.Say("", draw.Rect{})
	r.sky.Say("", draw.Rect{})
}

// changed brings the room up to date.
func (r *beatRoom) changed(w state.What) {
	if !w.Has(state.RoomView | state.Look | state.Can | state.RoomOpen | state.Nights) {
		return
	}
	if w.Has(state.RoomOpen) || w == state.Everything&^state.RoomOpen {
		r.enter()
	}
	if w == state.RoomView { // the pen, the view or what is held moved: the rest stands
		r.plan.RenewIfOther()
		r.sky.RenewIfOther()
		r.says.SetText(r.desk.Prompt())
		return
	}
	d, ok := r.desk.Drawn()
	r.title.SetText(words.BeatRoomTitle())
	r.note.SetText("")
	if ok {
		r.title.SetText(words.BeatName(d.Beat))
		r.note.SetText(words.DrawingState(r.desk.Changed(), r.desk.Stands()))
	}
	r.says.SetText(r.desk.Prompt())
	r.tools.sync()
	r.panel.sync()
	r.plan.Renew()
	r.sky.Renew()
	r.rows.Renew()
	for _, p := range []fyne.CanvasObject{r.title, r.note, r.says} {
		p.Refresh()
	}
	if err := r.desk.KeepFault(); err != nil {
		r.s.tell(words.DraftUnsaved(err))
	}
}

// enter puts something on the table: the drawing left there, else the beat of the open night, else
// the only one, else an empty drawing.
func (r *beatRoom) enter() {
	if _, ok := r.desk.Drawn(); !ok {
		rows := r.desk.Rows()
		n := r.s.desk.Night()
		switch {
		case n != nil && r.desk.Open(n.Log.Trip.Beat) == nil:
		case len(rows) > 0:
			_ = r.desk.Open(rows[0].ID)
		case !r.s.desk.ReadOnly():
			r.desk.New()
		}
	}
	if path := r.desk.TracingWanted(); path != "" {
		if err := r.s.readTrace(path); err != nil {
			r.s.tell(words.TraceGone(path))
		}
	}
}

// tell writes into the log where things are.
func (r *beatRoom) tell() {
	for _, b := range r.tools.buttons {
		r.s.tellRegion("command "+b.c.ID, b.b)
	}
	for _, b := range []struct {
		name string
		b    *own.Board
	}{{"plan", r.plan}, {"skyline", r.sky}, {"beats", r.rows}} {
		r.s.tellRegion(b.name, b.b)
		r.s.tellHits(b.name, b.b)
	}
	for _, row := range r.panel.rows {
		r.s.tellRegion("field "+row.id, row.in)
		text, selected := held(row.in)
		r.s.opt.Log.Debug("holds", "field", row.id, "text", text, "selected", selected)
	}
	// So that a metre of the plan and a bearing of the skyline can be pointed at.
	v := r.desk.View()
	r.s.logRegion(fmt.Sprintf("ground %g %g %g", v.Scale, float64(v.Centre.X), float64(v.Centre.Y)), r.plan, draw.R(0, 0, float64(r.plan.Size().Width), float64(r.plan.Size().Height)))
	f := scene.FrameOfSkyline(r.skyView(), size(r.sky))
	r.s.logRegion("bearings", r.sky, f.Plot)
	r.s.tellRegion("command beat.store", r.panel.store)
}

// beatLayout is the room's: heads and tools above, the panel at the right, the skyline at the foot.
type beatLayout struct {
	r                *beatRoom
	plan, sky, panel fyne.CanvasObject
}

const (
	beatPanelWidth = 330
	skyHeight      = 176
)

func (l *beatLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(minSketch+beatPanelWidth+gap, 420)
}

func (l *beatLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	r := l.r
	note := min(300, size.Width*0.4)
	place(r.title, 0, 0, size.Width-note-gap, 28)
	place(r.note, size.Width-beatPanelWidth, 8, beatPanelWidth, 18)
	place(r.title, 0, 0, size.Width-beatPanelWidth-gap, 28)
	th := r.tools.height(size.Width)
	place(r.tools.all, -6, 30, size.Width+12, th)
	y := 30 + th + 2
	left := size.Width - beatPanelWidth - gap
	sh := r.says.HeightFor(left)
	place(r.says, 0, y, left, max(20, sh))
	place(l.panel, left+gap, y, beatPanelWidth, size.Height-y)
	y += max(20, sh) + 4
	sky := min(skyHeight, (size.Height-y)*0.36)
	place(l.plan, 0, y, left, size.Height-y-sky-gap)
	place(l.sky, 0, size.Height-sky, left, sky)
}

// beatTools is the row of tools, each a command of the table.
type beatTools struct {
	r       *beatRoom
	buttons []toolButton
	all     *fyne.Container
}

func newBeatTools(r *beatRoom) *beatTools {
	t := &beatTools{r: r}
	t.all = container.New(&wrapLayout{})
	add := func(id, icon, label string) {
		if c := r.s.desk.Command(id); c != nil {
			b := r.s.button(label, tipOf(c)+". "+c.Help, icon, func() { r.s.run(c); r.s.focus(r.plan) })
			t.buttons = append(t.buttons, toolButton{b, c, label})
			t.all.Add(b)
		}
	}
	for _, tool := range state.Tools {
		add("draw.tool-"+string(tool), "", words.ToolName(string(tool)))
	}
	add("draw.undo", "undo", "")
	add("draw.redo", "redo", "")
	return t
}

// sync marks the tool in hand and what can be done.
func (t *beatTools) sync() {
	for _, b := range t.buttons {
		want := widget.LowImportance
		if b.c.ID == "draw.tool-"+string(t.r.desk.Tool()) {
			want = widget.HighImportance
		}
		if b.b.Importance != want {
			b.b.Importance = want
			b.b.Refresh()
		}
		enable(b.b, b.c.Enabled())
	}
}

func (t *beatTools) height(width float32) float32 {
	return (&wrapLayout{}).height(t.all.Objects, width+12)
}

// wrapLayout puts objects in rows, each at its least size.
type wrapLayout struct{}

func (l *wrapLayout) MinSize(o []fyne.CanvasObject) fyne.Size { return fyne.NewSize(100, toolHeight) }

func (l *wrapLayout) Layout(o []fyne.CanvasObject, size fyne.Size) { l.flow(o, size.Width, true) }

func (l *wrapLayout) height(o []fyne.CanvasObject, width float32) float32 {
	return l.flow(o, width, false)
}

func (l *wrapLayout) flow(o []fyne.CanvasObject, width float32, put bool) float32 {
	x, y := float32(0), float32(0)
	for _, b := range o {
		w := b.MinSize().Width
		if x > 0 && x+w > width {
			x, y = 0, y+toolHeight
		}
		if put {
			place(b, x, y, w, toolHeight)
		}
		x += w
	}
	return y + toolHeight
}

// newRows is the column of beats and of what is drawn on the one on the table.
func (r *beatRoom) newRows() *own.Board {
	b := r.s.board(state.Anywhere, func(size draw.Size) scene.Scene {
		beats, things := r.lines()
		return scene.BeatList(beats, things, size, r.s.look())
	})
	b.Tall = true
	b.Min = fyne.NewSize(minSide-12, 100)
	b.OnPick = func(p own.Pick) {
		if !p.Found {
			return
		}
		if p.Hit.Ref.Kind == scene.BeatKind {
			if err := r.desk.Open(p.Hit.Ref.ID); err != nil {
				r.s.tellError(err)
			}
		} else {
			r.desk.Select(p.Hit.Ref.ID)
		}
		r.s.focus(r.plan)
	}
	b.OnOpen, b.OnMenu = nil, nil
	return b
}

// lines are the rows of the column.
func (r *beatRoom) lines() (beats, things []scene.BeatLine) {
	for _, x := range r.desk.Rows() {
		beats = append(beats, scene.BeatLine{ID: x.ID, Name: x.Name, Under: words.BeatUnder(x.Pools, x.Draft, x.New), On: x.Open, Open: x.Draft})
	}
	d, _ := r.desk.Drawn()
	sel, _, _ := r.desk.Selected()
	for _, p := range d.Beat.InOrder() {
		things = append(things, scene.BeatLine{ID: p.ID, Name: words.PoolName(p.Name), Under: words.PoolUnder(p), Number: words.PoolNumber(p), On: p.ID == sel})
	}
	for _, f := range d.Beat.Features {
		things = append(things, scene.BeatLine{ID: f.ID, Name: words.FeatureLine(f), Role: f.Role, On: f.ID == sel})
	}
	return beats, things
}
