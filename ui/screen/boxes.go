package screen

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

func init() { roomMakers[state.BoxRoom] = newBoxRoom }

// boxRoom is the room of flies: all there are, box by box, and the house rules.
type boxRoom struct {
	s       *Screen
	desk    *state.BoxDesk
	title   *own.Paragraph
	line    *own.Paragraph
	board   *own.Board
	index   *own.Board
	order   *widget.Select
	buttons []toolButton
	all     fyne.CanvasObject
	side    fyne.CanvasObject
	clock   *clock
	held    float64 // length of the fly taken hold of, inches
	from    draw.Point
}

// boxTools lists the buttons over the flies, by command.
var boxTools = []struct{ id, icon string }{
	{"flies.new", "add"}, {"flies.box", ""}, {"flies.rule", ""}, {"flies.copy", ""}, {"flies.retire", ""},
}

func newBoxRoom(s *Screen) room {
	r := &boxRoom{s: s, desk: s.desk.Boxes()}
	r.title = own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 23}, 600, s.ink)
	r.line = own.NewParagraph(draw.Font{Size: 13}, 600, s.soft)
	r.board = s.board(state.Anywhere, func(size draw.Size) scene.Scene {
		return scene.Boxes(size.W, s.look(), r.desk.View())
	})
	r.board.Tall = true
	r.board.Min = fyne.NewSize(minSketch, 200)
	r.board.OnPick = r.pick
	r.board.OnOpen = func(p own.Pick) {
		if p.Found {
			s.runID("flies.amend")
		}
	}
	r.board.OnMenu = nil
	r.board.OnDrag = r.drag
	r.board.OnHover = func(own.Pick) own.Hint {
		if _, l, ok := r.desk.Dragged(); ok {
			return own.Hint{Text: words.DragFly(l.String()), Bare: true}
		}
		return own.Hint{}
	}
	r.board.OnShape = func(p own.Pick) desktop.Cursor {
		if p.Found && p.Hit.Ref.Kind == scene.LengthKind {
			return desktop.VResizeCursor
		}
		return desktop.DefaultCursor
	}
	r.index = s.board(state.Anywhere, func(size draw.Size) scene.Scene {
		return scene.BoxIndex(size, s.look(), r.desk.View())
	})
	r.index.Tall = true
	r.index.OnMenu, r.index.OnOpen = nil, nil
	r.index.OnPick = func(p own.Pick) {
		if p.Found {
			r.desk.Pick(p.Hit.Ref)
		}
	}
	var names []string
	for _, o := range state.FlyOrders {
		names = append(names, words.FlyOrderName(o))
	}
	r.order = widget.NewSelect(names, func(name string) {
		for _, o := range state.FlyOrders {
			if words.FlyOrderName(o) == name {
				r.desk.SetOrder(o)
			}
		}
	})
	row := container.NewHBox()
	for _, b := range boxTools {
		if c := s.desk.Command(b.id); c != nil {
			button := s.button(c.Title(), tipOf(c), b.icon, func() { s.run(c) })
			r.buttons = append(r.buttons, toolButton{button, c, c.Title()})
			row.Add(button)
		}
	}
	head := container.NewVBox(container.New(inset{0, 6}, container.NewVBox(r.title, r.line)), container.NewBorder(nil, nil, row, r.order))
	r.all = container.NewBorder(head, nil, nil, nil, s.panel(r.board))
	r.side = r.index
	return r
}

func (r *boxRoom) main() fyne.CanvasObject { return r.all }
func (r *boxRoom) list() fyne.CanvasObject { return r.side }
func (r *boxRoom) parts() []fyne.Focusable { return []fyne.Focusable{r.board, r.index} }
func (r *boxRoom) hint() string            { return words.BoxesHint() }

func (r *boxRoom) hush() {
	for _, b := range []*own.Board{r.board, r.index} {
		b.Say("", draw.Rect{})
	}
}

// pick picks out a fly, a box or a rule, and takes hold of a fly by its top.
func (r *boxRoom) pick(p own.Pick) {
	ref := p.Hit.Ref
	r.held, r.from = 0, p.At
	if !p.Found {
		r.desk.Pick(journal.Ref{})
		return
	}
	if ref.Kind == scene.LengthKind {
		ref = journal.Ref{Kind: journal.KindFly, ID: ref.ID}
	}
	r.desk.Pick(ref)
}

// drag draws the fly whose top was taken hold of out or in.
func (r *boxRoom) drag(d own.Drag) {
	if !d.From.Found || d.From.Hit.Ref.Kind != scene.LengthKind || r.s.desk.ReadOnly() {
		return
	}
	id := d.From.Hit.Ref.ID
	if d.End {
		if err := r.desk.Drop(); err != nil {
			r.s.tellError(err)
		}
		r.held = 0
		return
	}
	if r.held == 0 {
		if d.At.Dist(d.From.At) <= slip {
			return
		}
		r.held = 1
		if f, ok := r.desk.Fly(); ok && f.ID == id {
			if l, ok := f.On(r.desk.Today()).Length.Get(); ok {
				r.held = l.Number(units.Inch)
			}
		}
	}
	r.desk.Drag(id, units.LengthOf(max(0, r.held+(d.From.At.Y-d.At.Y)/scene.BoxPerInch()), units.Inch))
}

// changed brings the room up to date.
func (r *boxRoom) changed(w state.What) {
	flies, boxes := map[journal.ID]bool{}, 0
	for _, g := range r.desk.Groups() {
		if g.Kind == "box" {
			boxes++
		}
		for _, f := range g.Rows {
			flies[f.Fly.ID] = true
		}
	}
	done, nights := r.desk.Counted()
	r.title.SetText(words.BoxesTitle())
	r.line.SetText(words.BoxesLine(len(flies), boxes, len(r.desk.Rules()), done, nights))
	r.title.Refresh()
	r.line.Refresh()
	if name := words.FlyOrderName(r.desk.Order()); r.order.Selected != name {
		r.order.SetSelected(name)
	}
	for _, b := range r.buttons {
		b.b.Tip = tipOf(b.c)
		if title := b.c.Title(); b.b.Text != title {
			b.b.SetText(title)
		}
		enable(b.b, b.c.Enabled())
	}
	if w.Has(state.RoomView | state.Look | state.Nights | state.NightOpen) {
		r.board.Renew()
		r.index.Renew()
		r.reveal()
	}
	r.count()
}

// reveal scrolls to what is picked out.
func (r *boxRoom) reveal() {
	if _, _, dragging := r.desk.Dragged(); dragging {
		return
	}
	if sc, _ := r.board.Scene(); !r.desk.Picked().ID.IsZero() {
		if box, ok := sc.Box(r.desk.Picked()); ok {
			r.board.Reveal(box)
		}
	}
}

// countStep is how many nights are read into the flies' records between two frames.
const countStep = 6

// count reads nights as long as some are left, without holding the window up.
func (r *boxRoom) count() {
	if done, all := r.desk.Counted(); done == all || r.clock != nil {
		return
	}
	r.clock = startClock(30*time.Millisecond, func(time.Duration) {
		if r.s.rooms.here() != room(r) || !r.desk.Count(countStep) {
			r.clock.Stop()
			r.clock = nil
		}
		if r.s.rooms.here() == room(r) {
			r.changed(state.RoomView)
		}
	})
}

// tell writes down where things are, for whoever drives the window from outside.
func (r *boxRoom) tell() {
	for _, b := range r.buttons {
		r.s.tellRegion("command "+b.c.ID, b.b)
	}
	r.s.tellRegion("boxes", r.board)
	r.s.tellHits("boxes", r.board)
	r.s.tellHits("box index", r.index)
}
