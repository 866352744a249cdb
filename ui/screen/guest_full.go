package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
)

// guestFull is what is shown, on the whole screen and with nothing else. It lies over the
// window, menus too, so that no command reaches what is below.
type guestFull struct {
	r     *guestRoom
	board *own.Board
	hide  func()
	was   bool    // the window filled the screen before
	card  float64 // width of the frame in dp while the screen is measured; 0: it is not
	only  bool    // it is here to measure alone
	grip  bool    // the frame's edge is dragged
}

// fill shows it on the whole screen.
func (r *guestRoom) fill() { r.open(0) }

// measure has the frame of a bank card shown, to measure the screen with.
func (r *guestRoom) measure() {
	f := r.full
	if f == nil {
		r.open(r.cardDp())
		return
	}
	f.card = r.cardDp()
	f.board.Renew()
}

func (r *guestRoom) open(card float64) {
	if r.full != nil {
		return
	}
	s := r.s
	f := &guestFull{r: r, was: s.win.FullScreen(), card: card, only: card > 0}
	f.board = own.NewBoard(f.draw, s.look)
	f.board.Bare = true
	r.wire(f.board)
	pick, drag := f.board.OnPick, f.board.OnDrag
	f.board.OnPick = func(p own.Pick) {
		if f.card == 0 {
			pick(p)
			return
		}
		at := (p.Size.W + f.card) / 2
		f.grip = p.At.X > at-24 && p.At.X < at+24
	}
	f.board.OnDrag = func(d own.Drag) {
		switch {
		case f.card == 0:
			drag(d)
		case f.grip:
			f.resize(2*d.At.X - float64(f.board.Size().Width))
		}
	}
	f.board.OnKey, f.board.OnRune = f.key, f.rune
	r.full = f
	f.hide = s.modal.cover(container.NewStack(f.board), f.board, f.leave)
	s.tips.Hide()
	s.win.SetFullScreen(true)
	s.opt.Log.Debug("guest shown", "measuring", card > 0)
}

// draw is the picture, or the frame of a bank card.
func (f *guestFull) draw(size draw.Size) scene.Scene {
	if f.card > 0 {
		return scene.Scene{List: scene.GuestCard(size, f.r.s.look(), f.card)}
	}
	return f.r.picture(size, true)
}

func (f *guestFull) renew() {
	if f != nil {
		f.board.RenewIfOther()
	}
}

// leave goes back to the room.
func (f *guestFull) leave() {
	r := f.r
	if r.full != f {
		return
	}
	r.full = nil
	r.desk.Play(false)
	if !f.was {
		r.s.win.SetFullScreen(false)
	}
	r.board.Renew()
	r.s.focus(r.board)
	r.s.opt.Log.Debug("guest left")
}

// key takes a key that makes no character.
func (f *guestFull) key(e *fyne.KeyEvent) bool {
	k, ok := ofKey(e, modifiers())
	if !ok {
		return false
	}
	if f.card > 0 {
		return f.cardKey(k)
	}
	switch k.Key {
	case "Escape", "Return", "F11":
		f.hide()
		return true
	}
	return f.do(k)
}

func (f *guestFull) rune(r rune) {
	k := ofRune(r)
	if f.card > 0 {
		f.cardKey(k)
		return
	}
	f.do(k)
}

// do carries out a command of the room, or goes on to the next look.
func (f *guestFull) do(k state.Key) bool {
	if k == (state.Key{Key: "L"}) { // Ctrl is the menus', which are below
		k.Ctrl = true
	}
	c := f.r.s.desk.CommandFor(k)
	if c == nil || !c.Enabled() || c.Room != state.GuestRoom && c.ID != "view.look" || c.ID == "guest.save" {
		return false
	}
	if err := c.Run(); err != nil {
		f.r.s.tellError(err)
	}
	f.board.RenewIfOther()
	return true
}

// cardKey measures: arrows by a dp or ten, Return keeps.
func (f *guestFull) cardKey(k state.Key) bool {
	switch k.Key {
	case "Right":
		f.resize(f.card + 1)
	case "Left":
		f.resize(f.card - 1)
	case "Up", "+":
		f.resize(f.card + 10)
	case "Down", "-":
		f.resize(f.card - 10)
	case "Return":
		f.r.keepCard(f.card)
		f.closeCard()
	case "Escape":
		f.closeCard()
	default:
		return false
	}
	return true
}

func (f *guestFull) closeCard() {
	f.card, f.grip = 0, false
	if f.only {
		f.hide()
		return
	}
	f.board.Renew()
}

func (f *guestFull) resize(wide float64) {
	f.card = min(max(wide, 120), float64(f.board.Size().Width)-40)
	f.board.Renew()
}
