package screen

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

func init() {
	roomMakers[state.GuestRoom] = func(s *Screen) room { return newGuestRoom(s) }
}

// guestRoom shows a night, or all nights on a pool, to somebody: at the left to whom and
// what that one may see, in the middle what is seen, as it fills the screen.
type guestRoom struct {
	s     *Screen
	desk  *state.GuestDesk
	board *own.Board
	pick  *guestPicks
	tools []toolButton
	all   fyne.CanvasObject
	clock *clock // while it is played
	reads *clock // while a pool's nights are read
	full  *guestFull
	card  float64 // width of a bank card on this screen, pixels; 0: not measured
	kept  string
}

// guestTools lists the buttons over the picture, by command.
var guestTools = []string{"guest.full", "guest.play", "guest.before", "guest.next", "guest.whole", "guest.card", "guest.save"}

func newGuestRoom(s *Screen) *guestRoom {
	r := &guestRoom{s: s, desk: s.desk.Guest()}
	r.desk.InSteps()
	r.desk.Decode(s.recall("guest"))
	r.card = readCard(s.recall("card"))
	r.board = s.board(state.Anywhere, func(size draw.Size) scene.Scene { return r.picture(size, false) })
	r.board.Min = fyne.NewSize(minSketch, 300)
	r.wire(r.board)
	r.board.OnOpen = func(p own.Pick) {
		if !p.Found {
			s.runID("guest.full")
		}
	}
	bind := func(id string, when func() bool, act func()) {
		s.desk.Bind(id, when, func() error { act(); return nil })
		s.bound[id] = true
	}
	some := func() bool { return r.desk.Handout() != nil }
	bind("guest.full", some, r.fill)
	bind("guest.card", nil, r.measure)
	bind("guest.save", some, r.save)
	row := container.NewHBox()
	for _, id := range guestTools {
		c := s.desk.Command(id)
		b := s.button(c.Title(), tipOf(c), "", func() { s.run(c) })
		r.tools = append(r.tools, toolButton{b, c, c.Title()})
		row.Add(b)
	}
	r.all = container.NewBorder(row, nil, nil, nil, s.panel(r.board))
	r.pick = newGuestPicks(r)
	return r
}

// wire has a board's clicks step and play.
func (r *guestRoom) wire(b *own.Board) {
	b.OnMenu = nil
	b.OnOpen = nil
	b.OnHover = func(p own.Pick) own.Hint {
		if p.Found && p.Hit.Ref.Kind == scene.GuestActKind {
			return own.Hint{Text: p.Hit.Tip, Bare: true}
		}
		return own.Hint{Mute: true}
	}
	b.OnPick = func(p own.Pick) {
		if !p.Found {
			return
		}
		n := scene.GuestNumber(p.Hit.Ref)
		switch p.Hit.Ref.Kind {
		case scene.GuestFishKind:
			r.desk.Pick(n)
		case scene.GuestTimeKind:
			r.desk.SetCursor(n)
		case scene.GuestActKind:
			switch n {
			case scene.GuestBefore:
				r.desk.Next(-1)
			case scene.GuestNext:
				r.desk.Next(+1)
			default:
				r.desk.Play(!r.desk.Playing())
			}
		}
	}
	b.OnDrag = func(d own.Drag) {
		if d.From.Found && d.From.Hit.Ref.Kind == scene.GuestTimeKind {
			if sc, _ := b.Scene(); sc.List != nil {
				if hit, ok := sc.At(draw.Pt(d.At.X, d.From.Hit.Box.Center().Y)); ok && hit.Ref.Kind == scene.GuestTimeKind {
					r.desk.SetCursor(scene.GuestNumber(hit.Ref))
				}
			}
		}
	}
}

// picture is what is seen, on the whole screen or in the room.
func (r *guestRoom) picture(size draw.Size, full bool) scene.Scene {
	h := r.desk.Handout()
	if done, of := r.desk.Reading(); of > 0 {
		return r.s.empty(size, words.PastReading(done, of))
	}
	if h == nil {
		return r.s.empty(size, words.NoNight())
	}
	v := r.desk.View()
	v.Keys = full && v.Cursor == scene.ClientWhole && v.Fish == 0
	v.PerInch = r.perInch()
	return h.Show(size, r.s.look(), v)
}

func (r *guestRoom) main() fyne.CanvasObject { return r.all }
func (r *guestRoom) list() fyne.CanvasObject { return r.pick.all }
func (r *guestRoom) hint() string            { return words.GuestHint() }
func (r *guestRoom) parts() []fyne.Focusable {
	return []fyne.Focusable{r.board, r.pick.who, r.pick.what}
}
func (r *guestRoom) hush() { r.board.Say("", draw.Rect{}) }

// changed brings the room up to date.
func (r *guestRoom) changed(w state.What) {
	if !w.Has(state.RoomView | state.Look | state.NightOpen | state.Nights | state.RoomOpen | state.Can) {
		return
	}
	if w == state.RoomView { // a step of play
		r.board.RenewIfOther()
		r.full.renew()
		r.run()
		return
	}
	for _, b := range r.tools {
		b.b.Tip = tipOf(b.c)
		if t := b.c.Title(); t != b.b.Text {
			b.b.SetText(t)
		}
		enable(b.b, b.c.Enabled())
	}
	r.pick.sync()
	r.board.Renew()
	r.full.renew()
	r.run()
	r.read()
	r.enlarge()
	if text := r.desk.Encode(); text != r.kept {
		r.kept = text
		r.s.remember("guest", text)
	}
}

// read reads a pool's nights as long as some are left, without holding the window up.
func (r *guestRoom) read() {
	r.desk.Handout() // which begins to read
	if _, of := r.desk.Reading(); of == 0 || r.reads != nil {
		return
	}
	r.reads = startClock(seasonTick, func(time.Duration) {
		here := r.s.rooms.here() == room(r)
		left := here
		for from := time.Now(); left && time.Since(from) < seasonSlice; {
			left = r.desk.Read(1)
		}
		if !left {
			r.reads.Stop()
			r.reads = nil
		} else {
			r.board.Renew()
			r.full.renew()
		}
	})
}

// enlarge has larger copies of the photos shown made, away from the window.
func (r *guestRoom) enlarge() {
	if r.desk.Handout() == nil {
		return
	}
	if work := r.desk.Enlarge(); work != nil {
		job(work, r.desk.Enlarged)
	}
}

// run starts the clock of playing, or stops it.
func (r *guestRoom) run() {
	switch on := r.desk.Playing(); {
	case on && r.clock == nil:
		frames := r.s.countFrames(r.shown())
		r.s.opt.Log.Debug("guest playing")
		r.clock = startClock(frameTime, func(d time.Duration) {
			if r.s.rooms.here() != room(r) {
				r.desk.Play(false)
				r.clock.Stop()
				r.clock = nil
				return
			}
			r.desk.Advance(d)
			if !r.desk.Playing() {
				r.s.opt.Log.Debug("guest played", frames()...)
			}
		})
	case !on && r.clock != nil:
		r.clock.Stop()
		r.clock = nil
	}
}

// shown is the board that is looked at.
func (r *guestRoom) shown() *own.Board {
	if r.full != nil {
		return r.full.board
	}
	return r.board
}

// tell writes into the log where things are.
func (r *guestRoom) tell() {
	for _, b := range r.tools {
		r.s.tellRegion("command "+b.c.ID, b.b)
	}
	r.pick.tell()
	b, name := r.shown(), "guest"
	v := r.desk.View()
	r.s.tellRegion(name+" at fish "+numberText(v.Fish)+" moment "+numberText(v.Cursor), b)
	sc, _ := b.Scene()
	for _, h := range sc.Hits {
		if h.Ref.Kind != scene.GuestTimeKind {
			r.s.logRegion(name+" "+string(h.Ref.Kind)+" "+numberText(scene.GuestNumber(h.Ref)), b, h.Box)
		}
	}
}
