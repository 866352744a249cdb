package screen

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
)

// addHere lists what can be written down at a place, by the commands of the table.
var addHere = []string{"add.fish", "add.lost", "add.touch", "add.show", "", "add.run", "add.rig", "add.way", "add.sky", "add.ready", "add.note", "add.any"}

// menuAt shows what can be done with what lies under the pointer. On empty ground of the
// strip the cursor moves there first, in a rod's lane that rod is meant, and a pool of
// the sketch is picked out: the card then begins with that time, rod and pool.
func (s *Screen) menuAt(part state.Part, p own.Pick) {
	n := s.desk.Night()
	if n == nil {
		return
	}
	switch {
	case s.marked(p):
		s.pick(p.Hit.Ref)
	case part == state.OnStrip:
		s.desk.Select(journal.Ref{})
		s.cursorAt(p, scene.Frame(n, p.Size, s.stripView()))
		s.desk.SelectRod(s.rodAt(p))
	}
	s.showMenu(p.Window)
}

// rodAt is the rod in whose lane a place of the strip lies, zero if in none.
func (s *Screen) rodAt(p own.Pick) journal.ID {
	f := scene.Frame(s.desk.Night(), p.Size, s.stripView())
	if p.At.Y <= f.Plot.Max.Y || p.At.Y > f.Full.Max.Y {
		return journal.ID{}
	}
	sc, _ := s.strip.Scene()
	best, found := math.Inf(1), journal.ID{}
	for _, h := range sc.Hits {
		e, ok := s.desk.Night().Log.Find(h.Ref.ID)
		if !ok || e.Base().Rod.IsZero() || h.Box.Max.Y <= f.Plot.Max.Y {
			continue
		}
		away := math.Max(0, math.Max(h.Box.Min.Y-p.At.Y, p.At.Y-h.Box.Max.Y))
		if away < best && away < 24 {
			best, found = away, e.Base().Rod
		}
	}
	return found
}

// showMenu shows the menu of what is picked out: to change or remove it, and to add
// something there.
func (s *Screen) showMenu(at fyne.Position) {
	ids := addHere
	if !s.desk.Selected().ID.IsZero() {
		ids = append([]string{"edit.amend", "edit.remove", ""}, ids...)
	}
	widest := 0.0
	for _, id := range ids {
		if c := s.desk.Command(id); c != nil {
			widest = max(widest, textWidth(c.Title()))
		}
	}
	var items []*fyne.MenuItem
	for _, id := range ids {
		if id == "" {
			items = append(items, fyne.NewMenuItemSeparator())
		} else if c := s.desk.Command(id); c != nil {
			i := s.menus.item(c)
			i.Shortcut = nil // the menu bar hears it
			i.Label = withKey(i.Label, keyText(c.Key), widest)
			items = append(items, i)
		}
	}
	s.noTips()
	widget.ShowPopUpMenuAtPosition(fyne.NewMenu("", items...), s.win.Canvas(), at)
}

// menuByKey shows that menu beside what is picked out, on the board with the keyboard.
func (s *Screen) menuByKey() {
	b := s.boardWithKeys()
	if b == nil {
		b = s.strip
	}
	at := s.app.Driver().AbsolutePositionForObject(b)
	box, ok := s.boxOf(b)
	if !ok {
		box = draw.R(float64(b.Size().Width)/2, b.Offset()+30, 1, 1)
		if b == s.strip && s.desk.Night() != nil {
			f := scene.Frame(s.desk.Night(), size(b), s.stripView())
			box = draw.R(f.X(s.desk.Cursor()), f.Plot.Min.Y+20, 1, 1)
		}
	}
	p := box.Center().Sub(draw.Pt(0, b.Offset()))
	s.showMenu(at.AddXY(float32(p.X), float32(p.Y)))
}

// boxOf is where a board shows what is picked out.
func (s *Screen) boxOf(b *own.Board) (draw.Rect, bool) {
	r := s.desk.Picked()
	switch r.Kind {
	case state.PoolKind:
		r.Kind = scene.PoolKind
	case state.SpotKind:
		r.Kind = scene.SpotKind
	}
	if r.ID.IsZero() {
		return draw.Rect{}, false
	}
	sc, _ := b.Scene()
	return sc.Box(r)
}

// boardWithKeys is the board that has the keyboard, nil if none has.
func (s *Screen) boardWithKeys() *own.Board {
	for _, b := range []*own.Board{s.sketch, s.strip, s.log} {
		if b.Focused() {
			return b
		}
	}
	return nil
}

// tellByKey says on the sketch and the strip what the pointer would be told, after a key
// picked something out.
func (s *Screen) tellByKey() {
	b := s.boardWithKeys()
	if b == nil || b == s.log {
		return
	}
	box, ok := s.boxOf(b)
	if !ok {
		b.Say("", draw.Rect{})
		return
	}
	sc, _ := b.Scene()
	for i := len(sc.Hits) - 1; i >= 0; i-- {
		if sc.Hits[i].Box == box && sc.Hits[i].Tip != "" {
			b.Say(sc.Hits[i].Tip, box)
			return
		}
	}
}

// nextPart gives the keyboard to the next part of the window, or the one before.
func (s *Screen) nextPart(step int) {
	type part struct {
		f  fyne.Focusable
		on bool
	}
	parts := []part{{s.sketch, true}, {s.log, s.log.Visible() && s.logShown()}, {s.strip, true}, {s.side.list, s.sideShown()}}
	if r := s.rooms.here(); r != nil {
		parts = nil
		for _, f := range r.parts() {
			parts = append(parts, part{f, true})
		}
	}
	if len(parts) == 0 {
		return
	}
	at := len(parts) - 1
	if step < 0 {
		at = 0
	}
	for i, p := range parts {
		if s.win.Canvas().Focused() == p.f {
			at = i
		}
	}
	for range parts {
		at = (at + step + len(parts)) % len(parts)
		if parts[at].on {
			s.focus(parts[at].f)
			return
		}
	}
}
