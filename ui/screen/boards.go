package screen

import (
	"math"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// board makes a board with what all three have in common: the keyboard goes to the
// commands, a double click amends, the other button shows a menu.
func (s *Screen) board(paint func(draw.Size) scene.Scene) *own.Board {
	b := own.NewBoard(paint, s.look)
	b.OnKey = s.typedKey
	b.OnRune = s.typedRune
	b.OnOpen = func(p own.Pick) {
		if p.Found && s.selectable(p.Hit.Ref) {
			s.runID("edit.amend")
		}
	}
	b.OnMenu = s.menuAt
	return b
}

// empty is what a board shows without a night.
func (s *Screen) empty(size draw.Size, text string) scene.Scene {
	l := draw.NewList(size)
	k := s.look()
	l.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(k.Panel))
	y := size.H / 2
	for _, line := range draw.Wrap(draw.Font{Size: 14}, text, math.Max(60, size.W-40)) {
		l.Text(draw.Text{S: line, At: draw.Pt(size.W/2, y), Font: draw.Font{Size: 14}, Color: k.Soft, Anchor: draw.Middle})
		y += 20
	}
	return scene.Scene{List: l}
}

func (s *Screen) newSketch() *own.Board {
	b := s.board(func(size draw.Size) scene.Scene {
		n := s.desk.Night()
		if n == nil && s.desk.NightCount() == 0 {
			return s.empty(size, words.EmptyJournal())
		}
		if n == nil {
			return s.empty(size, words.NoNight())
		}
		return scene.Sketch(n, size, s.look(), s.sketchView())
	})
	b.Min = fyne.NewSize(minSketch, 150)
	b.OnPick = func(p own.Pick) {
		switch {
		case s.spotFor(p):
		case p.Found:
			s.pick(p.Hit.Ref)
		default:
			s.desk.Select(journal.Ref{})
		}
	}
	b.OnHover = func(p own.Pick) own.Hint { return own.Hint{Text: s.carryHint(true)} }
	b.OnDrag = func(d own.Drag) {
		if s.carryOnBeat(d) {
			return
		}
		if v := s.desk.Sketch(); v.Zoom > 1 && !d.End {
			v.Pan = v.Pan.Add(d.By)
			s.desk.SetSketch(v)
		}
	}
	b.OnScroll = func(p own.Pick, _, dy float64) { s.zoomSketch(p, math.Pow(1.0035, dy)) }
	return b
}

// sketchView is the desk's view as the scene takes it.
func (s *Screen) sketchView() scene.SketchView {
	v := s.desk.Sketch()
	return scene.SketchView{
		Cursor: s.desk.Cursor(), Selected: s.desk.Selected(), Pool: s.desk.Pool(), Zoom: v.Zoom, Pan: v.Pan, Prefs: s.prefs(),
	}
}

// zoomSketch zooms by a factor and keeps what lies under the pointer there.
func (s *Screen) zoomSketch(p own.Pick, factor float64) {
	v := s.desk.Sketch()
	z := math.Max(1, v.Zoom*factor)
	off := p.At.Sub(draw.Pt(p.Size.W/2, p.Size.H/2)) // of the pointer from the middle
	v.Pan = off.Sub(off.Sub(v.Pan).Mul(z / v.Zoom))
	v.Zoom = z
	s.desk.SetSketch(v)
}

// spotFor hands a click on the sketch to the open card, if that asks for a place and
// the click did not mean an entry.
func (s *Screen) spotFor(p own.Pick) bool {
	c := s.desk.Card()
	n := s.desk.Night()
	if c == nil || n == nil {
		return false
	}
	for _, f := range c.Fields() {
		if f.Kind == state.Spot {
			at := scene.SketchPlace(n, p.Size, s.sketchView(), p.At)
			c.Set(f.ID, words.Position(at))
			return true
		}
	}
	return false
}

func (s *Screen) newStrip() *own.Board {
	b := s.board(func(size draw.Size) scene.Scene {
		n := s.desk.Night()
		if n == nil {
			return s.empty(size, "")
		}
		return scene.Strip(n, size, s.look(), s.stripView())
	})
	b.Min = fyne.NewSize(minSketch, 180)
	b.OnPick = func(p own.Pick) {
		if p.Found {
			s.pick(p.Hit.Ref)
			return
		}
		s.cursorAt(p)
	}
	b.OnDrag = func(d own.Drag) {
		if s.carryInTime(d, size(b)) {
			return
		}
		if !d.From.Found && !d.End {
			s.cursorAt(own.Pick{At: d.At, Size: size(b)})
		}
	}
	b.OnHover = func(p own.Pick) own.Hint {
		n := s.desk.Night()
		if n == nil {
			return own.Hint{}
		}
		if t := s.carryHint(false); t != "" {
			return own.Hint{Text: t}
		}
		f := scene.Frame(n, p.Size, s.stripView())
		if p.At.X < f.Plot.Min.X || p.At.X > f.Plot.Max.X {
			return own.Hint{}
		}
		h := own.Hint{X: p.At.X}
		if !p.Found {
			h.Text = words.CursorLine(n, f.At(p.At.X), s.prefs())
		}
		return h
	}
	b.OnScroll = func(p own.Pick, dx, dy float64) {
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
	return b
}

func (s *Screen) stripView() scene.StripView {
	from, to := s.desk.StripWindow()
	return scene.StripView{From: from, To: to, Cursor: s.desk.Cursor(), Selected: s.desk.Selected(), Prefs: s.prefs()}
}

// cursorAt moves the cursor to the instant under the pointer, to the full minute.
func (s *Screen) cursorAt(p own.Pick) {
	n := s.desk.Night()
	if n == nil {
		return
	}
	f := scene.Frame(n, p.Size, s.stripView())
	if p.At.X >= f.Plot.Min.X-6 && p.At.X <= f.Plot.Max.X+6 {
		s.desk.SetCursor(f.At(p.At.X).Round(time.Minute))
	}
}

func (s *Screen) newLog() *own.Board {
	b := s.board(func(size draw.Size) scene.Scene {
		n := s.desk.Night()
		if n == nil {
			return s.empty(size, "")
		}
		return scene.Log(n, size.W, s.look(), scene.LogView{Cursor: s.desk.Cursor(), Selected: s.desk.Selected(), Prefs: s.prefs()})
	})
	b.Tall = true
	b.Min = fyne.NewSize(minLog, 150)
	b.OnPick = func(p own.Pick) {
		if p.Found {
			s.pick(p.Hit.Ref)
		}
	}
	return b
}

// revealSelected scrolls the log to what is selected.
func (s *Screen) revealSelected(w state.What) {
	if !w.Has(state.Selection|state.NightOpen) || s.desk.Selected().ID.IsZero() {
		return
	}
	sc, _ := s.log.Scene()
	if r, ok := sc.Box(s.desk.Selected()); ok {
		s.log.Reveal(r)
	}
}

// pick selects an entry or a pool.
func (s *Screen) pick(r journal.Ref) {
	if r.Kind == scene.PoolKind {
		r.Kind = state.PoolKind
	}
	s.desk.Select(r)
}

// selectable reports whether a hit is an entry of the log, rather than the beat's.
func (s *Screen) selectable(r journal.Ref) bool {
	n := s.desk.Night()
	return n != nil && r.Trip == n.Log.Trip.ID && !r.ID.IsZero()
}

// menuAt shows what can be done with what lies under the pointer.
func (s *Screen) menuAt(p own.Pick) {
	ids := []string{"add.fish", "add.run", "add.rig", "add.note"}
	if p.Found {
		s.pick(p.Hit.Ref)
		if s.selectable(p.Hit.Ref) {
			ids = append([]string{"edit.amend", "edit.remove", ""}, ids...)
		}
	}
	var items []*fyne.MenuItem
	for _, id := range ids {
		if id == "" {
			items = append(items, fyne.NewMenuItemSeparator())
		} else if c := s.desk.Command(id); c != nil {
			i := s.menus.item(c)
			i.Label = withKey(i.Label, keyText(c.Key), 120)
			items = append(items, i)
		}
	}
	if len(items) > 0 {
		widget.ShowPopUpMenuAtPosition(fyne.NewMenu("", items...), s.win.Canvas(), p.Window)
	}
}

// runID carries out a command by its ID.
func (s *Screen) runID(id string) {
	if c := s.desk.Command(id); c != nil {
		s.run(c)
	}
}
