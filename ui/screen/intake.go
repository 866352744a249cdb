package screen

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

func init() { roomMakers[state.IntakeRoom] = func(s *Screen) room { return newIntakeRoom(s) } }

// intakeRoom is the room in which files become a night: at the left the files, at the right
// what they propose, between them sketch and light of the night with the proposals over what
// is written, and the river's course at its gauge.
type intakeRoom struct {
	s       *Screen
	desk    *state.IntakeDesk
	title   *own.Paragraph
	line    *own.Paragraph
	files   *own.Board
	rows    *own.Board // the proposals
	sketch  *own.Board
	strip   *own.Board
	course  *own.Board
	buttons []toolButton
	asks    *intakeAsks
	body    *fyne.Container
	all     fyne.CanvasObject
	reading string // what is being read now
	queue   []string
	nth, of int
	told    string // see account
}

// intakeTools lists the buttons over the room, by command.
var intakeTools = []struct{ id, icon string }{
	{"import.choose", "add"}, {"proposals.all", ""}, {"proposals.none", ""}, {"import.clear", ""}, {"import.gauge", ""}, {"proposals.store", ""},
}

func newIntakeRoom(s *Screen) *intakeRoom {
	r := &intakeRoom{s: s, desk: s.desk.Intake()}
	r.bind()
	r.desk.DecodeGauges(s.recall("gauges"))
	r.title = own.NewParagraph(intakeTitle, 600, s.ink)
	r.line = own.NewParagraph(draw.Font{Size: 13}, 600, s.soft)
	r.files = s.board(state.Anywhere, func(size draw.Size) scene.Scene {
		return scene.IntakeFiles(size, s.look(), r.desk.FileScene(), words.IntakeFilesEmpty())
	})
	r.rows = s.board(state.Anywhere, func(size draw.Size) scene.Scene {
		return scene.IntakeList(size, s.look(), r.desk.Scene())
	})
	r.sketch = s.board(state.Anywhere, func(size draw.Size) scene.Scene {
		n, ghosts := r.desk.Laid()
		if n == nil {
			return s.empty(size, "")
		}
		return scene.Sketch(n, size, s.look(), scene.SketchView{Selected: r.picked(), Prefs: s.prefs(), Ghosts: ghosts})
	})
	r.strip = s.board(state.Anywhere, func(size draw.Size) scene.Scene {
		n, _ := r.desk.Laid()
		if n == nil {
			return s.empty(size, "")
		}
		return scene.Strip(n, size, s.look(), r.stripView())
	})
	r.course = s.board(state.Anywhere, func(size draw.Size) scene.Scene {
		v, ok := r.desk.Course()
		if !ok {
			return s.empty(size, "")
		}
		return scene.Course(size, s.look(), v)
	})
	for _, b := range []*own.Board{r.files, r.rows} {
		b.Tall = true
	}
	for _, b := range []*own.Board{r.files, r.rows, r.sketch, r.strip, r.course} {
		b.OnMenu, b.OnOpen = nil, nil
		b.OnPick = r.pick
		b.OnHover = func(own.Pick) own.Hint { return own.Hint{Bare: true} }
	}
	r.rows.OnOpen = func(p own.Pick) {
		if p.Found && scene.Changeable(p.Hit.Ref.Kind) {
			s.runID("proposals.amend")
		}
	}
	r.sketch.OnOpen, r.strip.OnOpen = r.rows.OnOpen, r.rows.OnOpen
	r.strip.OnTap = r.cursorAt
	row := container.New(&flowLayout{})
	for _, b := range intakeTools {
		c := s.desk.Command(b.id)
		button := s.button(c.Title(), tipOf(c), b.icon, func() { s.run(c) })
		r.buttons = append(r.buttons, toolButton{button, c, c.Title()})
		if b.id != "proposals.store" {
			row.Add(button)
		}
	}
	store := r.buttons[len(r.buttons)-1].b
	store.Importance = widget.HighImportance
	r.asks = newIntakeAsks(r)
	head := container.NewVBox(container.New(&intakeHead{r}, r.title, r.line), container.NewBorder(nil, nil, nil, store, row))
	r.body = container.New(&intakeBody{r}, s.panel(r.rows), s.panel(r.sketch), s.panel(r.strip), s.panel(r.course), r.asks.all)
	r.all = container.NewBorder(head, nil, nil, nil, r.body)
	return r
}

func (r *intakeRoom) bind() {
	bind := func(id string, when func() bool, act func()) {
		r.s.desk.Bind(id, when, func() error { act(); return nil })
		r.s.bound[id] = true
	}
	bind("import.choose", nil, r.chooseFiles)
	bind("import.clock", func() bool { _, ok := r.desk.Clock(); return ok }, r.askClock)
	bind("import.columns", func() bool { f, ok := r.desk.File(); return ok && f.Gauge != nil && len(f.Gauge.Columns) > 0 }, r.askColumns)
	bind("import.gauge", func() bool { _, ok := r.desk.Station(); return ok }, r.askGauge)
	bind("proposals.store", func() bool {
		_, accepted, rejected, waiting := r.desk.Counts()
		return accepted+rejected+waiting > 0
	}, r.store)
}

func (r *intakeRoom) main() fyne.CanvasObject { return r.all }
func (r *intakeRoom) list() fyne.CanvasObject { return r.files }
func (r *intakeRoom) hint() string            { return words.IntakeHint() }

func (r *intakeRoom) parts() []fyne.Focusable {
	return append([]fyne.Focusable{r.rows, r.strip, r.files}, r.asks.parts()...)
}

func (r *intakeRoom) hush() {
	for _, b := range []*own.Board{r.files, r.rows, r.sketch, r.strip, r.course} {
		b.Say("", draw.Rect{})
	}
}

// picked is the record of the proposal picked out.
func (r *intakeRoom) picked() journal.Ref {
	row, _ := r.desk.Picked()
	if row.Record == nil {
		return journal.Ref{}
	}
	return row.Record.Ref()
}

func (r *intakeRoom) stripView() scene.StripView {
	_, ghosts := r.desk.Laid()
	return scene.StripView{Selected: r.picked(), Cursor: time.Time{}, Prefs: r.s.prefs(), Ghosts: ghosts, Like: r.strip.Drawn()}
}

// pick picks out what was pressed, or does what the button drawn there says.
func (r *intakeRoom) pick(p own.Pick) {
	if !p.Found {
		return
	}
	ref := p.Hit.Ref
	switch ref.Kind {
	case scene.SourceKind:
		r.desk.PickFile(state.FileAt(ref.ID))
		return
	case scene.ClockKind:
		r.desk.PickFile(state.FileAt(ref.ID))
		r.s.runID("import.clock")
		return
	case scene.OffKind:
		r.desk.PickFile(state.FileAt(ref.ID))
		r.s.runID("import.take-off")
		return
	}
	if ref.ID.IsZero() {
		return
	}
	r.desk.Pick(ref)
	for kind, id := range map[journal.Kind]string{
		scene.AcceptKind: "proposals.accept", scene.ChangeKind: "proposals.amend", scene.RejectKind: "proposals.reject",
		scene.KeepKind: "proposals.keep", scene.TakeKind: "proposals.take", scene.BothKind: "proposals.both",
	} {
		if ref.Kind == kind {
			r.s.runID(id)
		}
	}
}

// cursorAt moves the moment at which the river is told to the place pressed on the strip.
func (r *intakeRoom) cursorAt(p own.Pick) {
	n, _ := r.desk.Laid()
	if n == nil || p.Found && !p.Hit.Ref.ID.IsZero() {
		return
	}
	f := scene.Frame(n, p.Size, r.stripView())
	if p.At.X >= f.Plot.Min.X && p.At.X <= f.Plot.Max.X {
		r.desk.SetCursor(f.At(p.At.X).Round(time.Minute))
	}
}

// changed brings the room up to date.
func (r *intakeRoom) changed(w state.What) {
	r.heading()
	for _, b := range r.buttons {
		b.b.Tip = tipOf(b.c)
		if b.c.ID == "proposals.store" {
			_, accepted, rejected, waiting := r.desk.Counts()
			if text := words.StoreIntakeLabel(accepted + rejected + waiting); b.b.Text != text {
				b.b.SetText(text)
			}
		}
		enable(b.b, b.c.Enabled())
	}
	if w.Has(state.CardOpen) {
		r.body.Refresh()
	}
	if !w.Has(state.RoomView | state.Look | state.Nights | state.NightOpen | state.RoomOpen) {
		return
	}
	r.account()
	r.asks.sync()
	r.body.Refresh() // the list may take the whole room now, or less
	for _, b := range []*own.Board{r.files, r.rows, r.sketch, r.strip, r.course} {
		b.Renew()
	}
	if sc, _ := r.rows.Scene(); !r.picked().ID.IsZero() {
		if box, ok := sc.Box(r.picked()); ok {
			r.rows.Reveal(box)
		}
	}
}

// heading says which night it is, and how many proposals there are; or what is being read.
func (r *intakeRoom) heading() {
	r.title.SetText(words.IntakeTitle())
	switch n, _ := r.desk.Laid(); {
	case r.reading != "":
		r.line.SetText(words.IntakeReading(r.reading, r.nth, r.of))
	case n != nil:
		r.line.SetText(words.IntakeLine(words.NightTitle(n), r.counts()))
	default:
		r.line.SetText(words.RoomHelp(string(state.IntakeRoom)))
	}
	r.title.Refresh()
	r.line.Refresh()
}

func (r *intakeRoom) counts() words.IntakeCounts {
	rows, accepted, rejected, waiting := r.desk.Counts()
	return words.IntakeCounts{Rows: rows, Accepted: accepted, Rejected: rejected, Waiting: waiting}
}

// account writes down how the proposals stand, when that is news, for whoever drives the
// window from outside.
func (r *intakeRoom) account() {
	row, _ := r.desk.Picked()
	now := fmt.Sprintf("%+v %s %s", r.counts(), row.Times, row.What)
	if now != r.told {
		r.told = now
		k := r.counts()
		r.s.opt.Log.Debug("proposals", "rows", k.Rows, "accepted", k.Accepted, "rejected", k.Rejected, "waiting", k.Waiting, "picked", row.Times+" "+row.What)
	}
}

// store stores what is accepted and rejected.
func (r *intakeRoom) store() {
	k := r.counts()
	c, err := r.desk.Commit()
	switch {
	case err != nil:
		for _, row := range r.desk.Rows() {
			if row.Unsettled {
				r.desk.Pick(row.Record.Ref())
				break
			}
		}
		r.s.tellError(err)
	case c.Did == "":
		r.s.tell(words.IntakeNothing())
	default:
		r.s.tell(words.IntakeStored(k.Accepted, k.Rejected))
		r.s.opt.Log.Info("files stored", "accepted", k.Accepted, "rejected", k.Rejected)
	}
}

// tell writes into the log where things are, for whoever drives the window from outside.
func (r *intakeRoom) tell() {
	for _, b := range r.buttons {
		r.s.tellRegion("command "+b.c.ID, b.b)
	}
	r.asks.tell()
	for name, b := range map[string]*own.Board{"files": r.files, "proposals": r.rows, "import sketch": r.sketch, "import strip": r.strip} {
		r.s.tellRegion(name, b)
		r.s.tellHits(name, b)
	}
}

// intakeHead puts the line behind the title.
type intakeHead struct{ r *intakeRoom }

func (l *intakeHead) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(minSketch, 36) }

func (l *intakeHead) Layout(o []fyne.CanvasObject, size fyne.Size) {
	w := float32(draw.Measure(intakeTitle, l.r.title.Text()).Width) + 2
	place(o[0], 0, 4, w, 28)
	place(o[1], w+14, 11, max(0, size.Width-w-14), 20)
}

// intakeTitle is the font of the room's title.
var intakeTitle = draw.Font{Weight: draw.Bold, Size: 21}

// intakeBody puts the list at the right, sketch, strip and course at the left. Without a
// night to show the list has it all; with a card open in a narrow window it gives way.
type intakeBody struct{ r *intakeRoom }

const (
	intakeListWidth   = 400
	intakeCourse      = 126
	intakeCourseLow   = 112 // in a low window
	intakeLeastPlaces = 420 // of sketch and strip beside the list
)

func (l *intakeBody) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(minSketch, 300) }

func (l *intakeBody) Layout(o []fyne.CanvasObject, size fyne.Size) {
	n, _ := l.r.desk.Laid()
	_, river := l.r.desk.Course()
	wide := size.Width - intakeListWidth - gap
	list := n == nil || wide >= intakeLeastPlaces || l.r.s.desk.Card() == nil
	show(o[0], list)
	for i, b := range o[1:4] {
		show(b, n != nil && (i < 2 || river))
	}
	show(o[4], list)
	x, width := wide+gap, float32(intakeListWidth)
	switch {
	case n == nil:
		x, width = 0, size.Width
	case !list:
		wide = size.Width
	}
	if list {
		h := l.r.asks.heightFor(min(width, askWidest))
		place(o[4], x, 0, min(width, askWidest), h)
		place(o[0], x, h, width, size.Height-h)
	}
	if n == nil {
		return
	}
	foot := float32(0)
	if river {
		h := float32(intakeCourse)
		if size.Height < 680 {
			h = intakeCourseLow
		}
		foot = h + gap
		place(o[3], 0, size.Height-h, wide, h)
	}
	strip := max(260, min(420, size.Height-foot-gap-160))
	sketch := max(120, size.Height-foot-strip-gap)
	place(o[1], 0, 0, wide, sketch)
	place(o[2], 0, sketch+gap, wide, size.Height-foot-sketch-gap)
}
