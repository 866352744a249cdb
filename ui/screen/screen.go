package screen

import (
	"image/color"
	"log/slog"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// Options are what a screen is given by the command.
type Options struct {
	Log     *slog.Logger
	Version string
	Journal string // where the journal lies, to be told
	Remember
	Crash string // the account of a crash last time; empty if there was none
	// OpenJournal opens another journal, beginning it if there is none, in place of
	// this one, which stays if that fails. Backup copies this one to a new file.
	OpenJournal, Backup func(path string) error
	// Keep looks after the journal as a whole; nil: nothing does. PutBack puts a copy in
	// its place and opens that, in a window of its own.
	Keep    *state.Keep
	PutBack func(from string) error
	// Drafts is where drawings of beats are laid by until they are stored; nil: nowhere.
	Drafts state.Keeper
}

// Remember keeps small things from one session to the next.
type Remember interface {
	Get(key string) string
	Set(key, value string)
}

// Screen is the window on a desk.
type Screen struct {
	app  fyne.App
	win  fyne.Window
	desk *state.Desk
	opt  Options

	theme *Theme
	tips  *own.TipLayer
	modal modal

	side     *side
	header   *header
	tools    *tools
	sketch   *own.Board
	start    *start
	log      *own.Board
	strip    *own.Board
	bound    map[string]bool // commands that the window carries out itself
	card     *card
	pen      *scribbler
	gaps     *own.Board
	gapsHigh float32
	notes    *scribblePage // nil until it is opened
	foot     *footer
	banner   *banner
	menus    *menus
	night    *fyne.Container
	all      *fyne.Container
	rooms    *rooms
	play     *clock
	frames   func() []any // how fast the night is played; see countFrames
	steps    int          // of the cursor since playing began
	// sketchSeen is the part of the sketch that was drawn last.
	sketchSeen state.SketchView
	dragged    func() []any // likewise of a drag
	lifted     bool         // something is being moved
	carry      carrying
	kept       string  // the preferences as last remembered
	scale      float32 // how much larger than usual everything is
	settle     *clock  // runs while something is moved by keys
	scrub      scrub
	legend     *own.Board
	shares     *shares
	passed     int  // see renewLog
	framed     bool // the first frame is logged
	pulsing    bool // rings are shown
	edges      []*frame
	whole      *state.Reading // what is reading the whole journal, nil mostly
}

// New makes the window and shows the desk in it. It is not visible until Show.
func New(a fyne.App, d *state.Desk, opt Options) *Screen {
	s := &Screen{app: a, desk: d, opt: opt, shares: &shares{side: sideWidth}}
	s.shares.read(s.recall("shares"))
	s.win = a.NewWindow(words.WindowTitle())
	s.win.SetIcon(AppIcon())
	s.modal = modal{canvas: s.win.Canvas, theme: func() *Theme { return s.theme }, log: opt.Log}
	s.setTheme()
	s.tips = own.NewTipLayer(s.look)

	s.bind()
	s.rooms = newRooms(s)
	s.side = newSide(s)
	s.header = newHeader(s)
	s.tools = newTools(s)
	s.sketch = s.newSketch()
	s.start = newStart(s)
	s.log = s.newLog()
	s.strip = s.newStrip()
	s.legend = s.newLegend()
	s.card = newCard(s)
	s.pen = newScribbler(s)
	s.gaps = s.newGapLine()
	s.foot = newFooter(s)
	s.banner = newBanner(s)
	s.menus = newMenus(s)

	l := &night{
		header: s.header.all, tools: s.tools.all, sketch: s.panel(container.NewStack(s.sketch, s.start.all)), log: s.panel(s.log), strip: s.panel(s.strip),
		legend: s.panel(s.legend), pen: s.panel(s.pen.all), card: s.card.all, cardOpen: func() bool { return d.Card() != nil }, sh: s.shares, legendHeight: s.legendHeight,
		penHeight: s.penHeight, penWanted: s.pen.wanted, gaps: s.panel(s.gaps), gapHeight: s.gapHeight,
	}
	s.dividers(l)
	s.night = container.New(l, l.header, l.tools, l.sketch, l.log, l.strip, l.legend, l.pen, l.gaps, l.card, l.across, l.down)
	all := &window{side: s.side.all, main: container.NewStack(s.night, s.rooms.stack), foot: s.foot.all, edge: s.edge(), cardOpen: l.cardOpen, sh: s.shares}
	s.all = container.New(all, all.side, all.main, all.foot, all.edge)
	s.win.SetPadded(false)
	s.win.SetContent(container.NewStack(container.NewBorder(s.banner.all, nil, nil, nil, s.all), s.tips.Object()))
	s.win.SetMainMenu(s.menus.main)
	s.win.Canvas().SetOnTypedKey(func(e *fyne.KeyEvent) { s.typedKey(e) })
	s.win.Canvas().SetOnTypedRune(s.typedRune)
	s.win.SetOnDropped(s.dropped)
	s.win.Canvas().AddShortcut(&fyne.ShortcutRedo{}, func(fyne.Shortcut) { s.runID("edit.redo") })
	s.restore()
	s.takeDrafts()
	d.OnChange(s.changed)
	s.changed(state.Everything)
	if opt.Crash != "" {
		s.tell(words.CrashedBefore(opt.Crash))
	}
	return s
}

// Window is the window.
func (s *Screen) Window() fyne.Window { return s.win }

// changed brings what is shown up to date with the desk.
func (s *Screen) changed(w state.What) {
	if w.Has(state.RoomOpen) && s.rooms.enter() {
		w = state.Everything &^ state.RoomOpen
		defer s.focusRoom()
	}
	if w.Has(state.Look) {
		s.setTheme()
		s.rooms.mark()
		s.keepPrefs()
	}
	if w.Has(state.Carry) { // before the boards are drawn anew
		s.syncCarry()
	}
	if w.Has(state.Nights | state.NightOpen | state.Look) {
		s.side.sync()
	}
	if w.Has(startNews) {
		s.start.sync()
	}
	if w.Has(state.NightOpen | state.Look) {
		s.header.sync()
		s.foot.sync()
		s.banner.sync()
	}
	if s.desk.Room() != state.NightRoom {
		s.changedElsewhere(w)
		return
	}
	switch {
	case w == state.Cursor:
		s.renewSketch()
		s.strip.RenewIfOther()
		s.pulse()
	case w.Has(state.NightOpen | state.Cursor | state.Selection | state.View | state.Look),
		w.Has(state.Can) && s.desk.Night() == nil: // what to do first may be another thing now
		if w != state.View || s.desk.Sketch() != s.sketchSeen { // a strip that moves leaves the sketch
			s.sketch.Renew()
		}
		s.sketchSeen = s.desk.Sketch()
		s.strip.Renew()
		s.pulse()
	}
	if w.Has(state.NightOpen | state.Cursor | state.Selection | state.Look) {
		s.renewLog(w)
	}
	if w.Has(state.NightOpen | state.Look) {
		s.pen.night()
		s.syncGaps()
	}
	if w.Has(state.Look) {
		s.legend.Renew()
	}
	s.syncCard(w)
	if w.Has(state.Can | state.NightOpen | state.Selection | state.CardOpen | state.Look) {
		s.tools.sync()
		s.menus.sync()
	}
	if w.Has(state.NightOpen) {
		s.rememberNight()
	}
	s.syncPlay(w)
}

// syncCard shows the card that is open, makes room for it and gives it the keyboard.
func (s *Screen) syncCard(w state.What) {
	if !w.Has(state.CardOpen) {
		return
	}
	had := s.card.shown != nil
	fresh := s.card.sync()
	s.all.Refresh() // makes room for the card, or takes it back
	s.night.Refresh()
	s.rooms.stack.Refresh()
	if fresh {
		s.card.focusFirst()
	}
	if has := s.card.shown != nil; has && !had {
		s.opt.Log.Debug("card open")
	} else if had && !has {
		s.opt.Log.Debug("card closed")
	}
	if s.desk.Card() == nil && (had || s.win.Canvas().Focused() == nil) {
		s.focusRoom() // not a field that is gone
	}
}

// prefs are the units and names in which sentences are written.
func (s *Screen) prefs() words.Prefs { return s.desk.Prefs() }

// look is the look as scenes take it.
func (s *Screen) look() scene.Look { return s.theme.Look }

func (s *Screen) setTheme() {
	l := scene.LookNamed(s.desk.Look())
	if s.theme != nil && s.theme.Look.Name == l.Name {
		return
	}
	s.theme = NewTheme(l)
	s.app.Settings().SetTheme(s.theme)
	s.remember("look", l.Name)
	s.opt.Log.Debug("colours", "look", l.Name)
	s.modal.recolour()
	for _, f := range s.edges {
		f.recolour(l)
	}
}

func (s *Screen) ink() color.Color      { return s.look().Ink }
func (s *Screen) soft() color.Color     { return s.look().Soft }
func (s *Screen) accent() color.Color   { return s.look().Accent }
func (s *Screen) errorInk() color.Color { return s.theme.Color(theme.ColorNameError, 0) }

// focus gives something the keyboard.
func (s *Screen) focus(f fyne.Focusable) { s.win.Canvas().Focus(f) }

// button makes a quiet button with a tip and one of our icons. Keys that mean
// nothing to a button are those of the window.
func (s *Screen) button(label, tip, icon string, tapped func()) *own.Button {
	var r fyne.Resource
	if icon != "" {
		r = Icon(icon)
	}
	b := own.NewButton(label, tip, r, s.tips, tapped)
	b.OnKey = s.typedKey
	b.OnRune = s.typedRune
	return b
}

// frame is the edge of a panel. There is no ground under it: what lies in it covers it.
type frame struct{ edge *own.Edges }

func (f *frame) recolour(l scene.Look) { f.edge.Recolour(l.Edge) }

// panel puts an edge around something.
func (s *Screen) panel(o fyne.CanvasObject) fyne.CanvasObject {
	f := &frame{own.NewEdges(1)}
	f.recolour(s.look())
	s.edges = append(s.edges, f)
	return container.New(panelLayout{f}, append([]fyne.CanvasObject{o}, f.edge.Objects()...)...)
}

// panelLayout puts the edge around the first of its objects.
type panelLayout struct{ f *frame }

func (l panelLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return o[0].MinSize().AddWidthHeight(2, 2)
}

func (l panelLayout) Layout(o []fyne.CanvasObject, s fyne.Size) {
	place(o[0], 1, 1, s.Width-2, s.Height-2)
	l.f.edge.Place(fyne.NewPos(0, 0), s)
}

// spacer is room of that width.
func spacer(width float32) fyne.CanvasObject {
	r := canvas.NewRectangle(color.Transparent)
	r.SetMinSize(fyne.NewSize(width, 1))
	return r
}

func plain(c color.Color) func() color.Color { return func() color.Color { return c } }

var dusk = scene.Dusk

// now is asked for what is named by the day.
func (s *Screen) now() time.Time { return time.Now() }

// inset keeps its one object away from the edges.
type inset struct{ x, y float32 }

func (l inset) MinSize(o []fyne.CanvasObject) fyne.Size {
	return o[0].MinSize().AddWidthHeight(2*l.x, 2*l.y)
}

func (l inset) Layout(o []fyne.CanvasObject, s fyne.Size) {
	place(o[0], l.x, l.y, s.Width-2*l.x, s.Height-2*l.y)
}

// size is a board's size as scenes take it.
func size(b fyne.CanvasObject) draw.Size {
	return draw.Size{W: float64(b.Size().Width), H: float64(b.Size().Height)}
}
