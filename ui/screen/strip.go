package screen

import (
	"math"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// scrub is a drag that moves the cursor.
type scrub struct {
	on    bool
	frame scene.StripFrame
}

// lineReach is how near to the cursor's line the pointer takes hold of it, and slack how
// far a press may slip before the ground moves with it, in dp.
const (
	lineReach = 5.0
	slack     = 5.0
)

func (s *Screen) newStrip() *own.Board {
	b := s.board(state.OnStrip, func(size draw.Size) scene.Scene {
		n := s.desk.Night()
		if n == nil {
			return s.empty(size, words.NoLight())
		}
		s.noteFrame()
		v := s.stripView()
		v.Like = s.strip.Drawn()
		return scene.Strip(n, size, s.look(), v)
	})
	b.Min = fyne.NewSize(minSketch, 180)
	b.OnPick = func(p own.Pick) {
		s.begin()
		s.scrub = scrub{}
		switch {
		case s.marked(p):
			s.pick(p.Hit.Ref)
		case s.onLine(p):
			s.desk.Play(false)
			s.scrub = scrub{true, scene.Frame(s.desk.Night(), p.Size, s.stripView())}
			s.cursorAt(p, s.scrub.frame)
		}
	}
	b.OnTap = func(p own.Pick) {
		if n := s.desk.Night(); n != nil && !s.marked(p) && !s.scrub.on {
			s.cursorAt(p, scene.Frame(n, p.Size, s.stripView()))
		}
	}
	b.OnDrag = func(d own.Drag) { s.dragStrip(d, size(b)) }
	b.OnHover = s.hoverStrip
	b.OnShape = s.shapeStrip
	b.OnScroll = s.wheelStrip
	return b
}

// onLine reports whether a place takes hold of the cursor: its line, the row of its
// words above the plot, or the clock below.
func (s *Screen) onLine(p own.Pick) bool {
	n := s.desk.Night()
	if n == nil || s.marked(p) {
		return false
	}
	f := scene.Frame(n, p.Size, s.stripView())
	return math.Abs(p.At.X-f.X(s.desk.Cursor())) <= lineReach || p.At.Y > f.Full.Max.Y || p.At.Y < readOut
}

// readOut is the foot of the row in which the cursor's words stand, in dp.
const readOut = 22.0

// dragStrip moves what the pointer took hold of: an entry, the cursor, or the ground.
func (s *Screen) dragStrip(d own.Drag, board draw.Size) {
	n := s.desk.Night()
	s.countDrag(d, s.strip)
	switch {
	case s.carryInTime(d, board), n == nil, d.End:
		return
	case s.scrub.on:
		s.cursorAt(own.Pick{At: d.At, Size: board}, s.scrub.frame)
	case !s.marked(d.From) && d.At.Dist(d.From.At) > slack:
		f := scene.Frame(n, board, s.stripView())
		s.desk.PanStrip(f.At(d.At.X - d.By.X).Sub(f.At(d.At.X)))
	}
}

// cursorAt moves the cursor to the instant under the pointer, to the full minute.
func (s *Screen) cursorAt(p own.Pick, f scene.StripFrame) {
	x := math.Max(f.Plot.Min.X, math.Min(f.Plot.Max.X, p.At.X))
	if s.scrub.on || math.Abs(x-p.At.X) <= 6 {
		s.desk.SetCursor(f.At(x).Round(time.Minute))
	}
}

// hoverStrip tells the light at an instant where nothing lies, and where what is carried
// would come to lie.
func (s *Screen) hoverStrip(p own.Pick) own.Hint {
	n := s.desk.Night()
	if n == nil {
		return own.Hint{}
	}
	if t := s.carryHint(false); t != "" {
		return own.Hint{Text: t, Bare: true}
	}
	f := scene.Frame(n, p.Size, s.stripView())
	if p.At.X < f.Plot.Min.X || p.At.X > f.Plot.Max.X || s.scrub.on {
		return own.Hint{}
	}
	h := own.Hint{X: p.At.X}
	if !p.Found {
		h.Text = words.CursorLine(n, f.At(p.At.X), s.prefs())
	}
	return h
}

// shapeStrip is the shape of the pointer: two ways where something can be moved to and
// fro, a hand on what can be opened.
func (s *Screen) shapeStrip(p own.Pick) desktop.Cursor {
	switch n := s.desk.Night(); {
	case n == nil:
	case s.scrub.on || s.onLine(p):
		return desktop.HResizeCursor
	case p.Found && s.selectable(p.Hit.Ref):
		if s.grip(p, scene.Frame(n, p.Size, s.stripView())) != state.Whole {
			return desktop.HResizeCursor
		}
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// wheelStrip zooms at the pointer; sideways, or with Shift, it moves the strip.
func (s *Screen) wheelStrip(p own.Pick, dx, dy float64) {
	n := s.desk.Night()
	if n == nil {
		return
	}
	f := scene.Frame(n, p.Size, s.stripView())
	if math.Abs(dx) > math.Abs(dy) || modifiers()&fyne.KeyModifierShift != 0 {
		by := dx
		if by == 0 {
			by = dy
		}
		s.desk.PanStrip(f.At(p.At.X).Sub(f.At(p.At.X + by)))
		return
	}
	s.desk.ZoomStrip(math.Pow(1.0035, -dy), f.At(p.At.X))
}
