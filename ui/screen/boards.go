package screen

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// board makes a board with what all three have in common: the keyboard goes to the
// commands, a double click amends, the other button shows a menu.
func (s *Screen) board(part state.Part, paint func(draw.Size) scene.Scene) *own.Board {
	b := own.NewBoard(paint, s.look)
	b.OnKey = s.typedKey
	b.OnRune = s.typedRune
	b.OnFocus = func(on bool) {
		switch {
		case on:
			s.desk.SetPart(part)
		case s.desk.Part() == part:
			s.desk.SetPart(state.Anywhere)
		}
	}
	b.OnOpen = func(p own.Pick) {
		switch {
		case p.Found && s.selectable(p.Hit.Ref):
			s.runID("edit.amend")
		case !s.marked(p) && part != state.OnLog:
			s.runID("view.fit")
		}
	}
	b.OnMenu = func(p own.Pick) {
		s.begin()
		s.menuAt(part, p)
	}
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
	b := s.board(state.OnSketch, func(size draw.Size) scene.Scene {
		n := s.desk.Night()
		if n == nil && s.desk.NightCount() == 0 {
			return s.empty(size, words.EmptyJournal(s.desk.HasBeat(), s.desk.ReadOnly()))
		}
		if n == nil {
			return s.empty(size, words.NoNight())
		}
		return scene.Sketch(n, size, s.look(), s.sketchView())
	})
	b.Min = fyne.NewSize(minSketch, 150)
	b.OnPick = func(p own.Pick) {
		s.begin()
		switch {
		case s.spotFor(p):
		case s.marked(p):
			s.pick(p.Hit.Ref)
		}
	}
	b.OnTap = func(p own.Pick) {
		if !s.marked(p) && s.desk.Card() == nil {
			s.desk.Select(journal.Ref{})
		}
	}
	b.OnHover = func(own.Pick) own.Hint {
		t := s.carryHint(true)
		return own.Hint{Text: t, Bare: t != ""}
	}
	b.OnDrag = func(d own.Drag) {
		if s.carryOnBeat(d) {
			return
		}
		s.countDrag(d, b)
		if v := s.desk.Sketch(); v.Zoom > 1 && !d.End {
			v.Pan = v.Pan.Add(d.By)
			s.desk.SetSketch(v)
		}
	}
	b.OnShape = func(p own.Pick) desktop.Cursor {
		if p.Found && s.selectable(p.Hit.Ref) {
			return desktop.PointerCursor
		}
		return desktop.DefaultCursor
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

func (s *Screen) stripView() scene.StripView {
	from, to := s.desk.StripWindow()
	return scene.StripView{From: from, To: to, Cursor: s.desk.Cursor(), Selected: s.desk.Selected(), Prefs: s.prefs()}
}

func (s *Screen) newLog() *own.Board {
	b := s.board(state.OnLog, func(size draw.Size) scene.Scene {
		n := s.desk.Night()
		if n == nil {
			return s.empty(size, words.NoLog())
		}
		return scene.Log(n, size.W, s.look(), scene.LogView{Cursor: s.desk.Cursor(), Selected: s.desk.Selected(), Prefs: s.prefs()})
	})
	b.Tall = true
	b.Min = fyne.NewSize(minLog, 150)
	b.OnResize = func() {
		if s.log != nil {
			s.revealInLog(state.Cursor)
		}
	}
	b.OnPick = func(p own.Pick) {
		s.begin()
		if p.Found {
			s.pick(p.Hit.Ref)
		}
	}
	return b
}

// renewLog draws the log anew when something in it can look otherwise: while the cursor
// passes nothing it stays as it is.
func (s *Screen) renewLog(w state.What) {
	passed := s.desk.Passed()
	if w == state.Cursor && passed == s.passed {
		return
	}
	s.passed = passed
	s.log.Renew()
	s.revealInLog(w)
}

// revealInLog scrolls the log to what was selected, else to what the cursor passed last.
func (s *Screen) revealInLog(w state.What) {
	sc, _ := s.log.Scene()
	r := s.desk.Selected()
	if r.ID.IsZero() || !w.Has(state.Selection) {
		if !w.Has(state.Cursor | state.NightOpen) {
			return
		}
		e := s.desk.LastPassed()
		if e == nil {
			s.log.Reveal(draw.R(0, 0, 1, 1))
			return
		}
		r = e.Ref()
	}
	if box, ok := sc.Box(r); ok {
		s.log.Reveal(box)
	}
}

// pick selects an entry, a pool or a spot of the beat.
func (s *Screen) pick(r journal.Ref) {
	switch r.Kind {
	case scene.PoolKind:
		r.Kind = state.PoolKind
	case scene.SpotKind:
		r.Kind = state.SpotKind
	}
	s.desk.Select(r)
}

// marked reports whether something lies at a place that can be picked out, rather than
// ground or what only has a tip.
func (s *Screen) marked(p own.Pick) bool {
	return p.Found && (p.Hit.Ref.Kind == scene.PoolKind || p.Hit.Ref.Kind == scene.SpotKind || s.selectable(p.Hit.Ref))
}

// selectable reports whether a hit is an entry of the log, rather than the beat's.
func (s *Screen) selectable(r journal.Ref) bool {
	n := s.desk.Night()
	return n != nil && r.Trip == n.Log.Trip.ID && !r.ID.IsZero()
}
