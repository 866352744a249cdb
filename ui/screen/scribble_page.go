package screen

import (
	"errors"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// scribblePage is a wide field for a whole night of notes, beside it each line with what
// it was read as. It is closed and opened again with what stood in it.
type scribblePage struct {
	s     *Screen
	m     *state.Scribble
	in    *pageEntry
	board *own.Board
	store *sheetButton
	sum   *canvas.Text
	hide  func()

	line, way int // picked out in the list
	boxes     []draw.Rect
}

// showScribblePage opens the page.
func (s *Screen) showScribblePage() {
	if s.notes == nil {
		s.notes = &scribblePage{s: s, m: s.desk.NewScribble()}
	}
	s.notes.show()
}

func (p *scribblePage) show() {
	s := p.s
	p.line, p.way = 0, -1
	p.in = newPageEntry(p)
	p.board = own.NewBoard(func(size draw.Size) scene.Scene { return p.draw(size) }, s.look)
	p.board.Tall = true
	p.board.Min = fyne.NewSize(200, 100)
	p.board.OnKey = p.listKey
	p.board.OnRune = p.listRune
	p.board.OnPick = p.pick
	p.store = newSheetButton(s, "", p.doStore)
	p.store.Importance = widget.HighImportance
	closing := newSheetButton(s, words.CloseButton(), func() { p.hide() })
	how := newSheetButton(s, words.HowToScribbleTitle(), s.showHowToScribble)
	title := canvas.NewText(words.ScribblePageTitle(), s.ink())
	title.TextSize, title.TextStyle.Bold = theme.TextSize()+4, true
	p.sum = canvas.NewText("", s.soft())
	p.sum.TextSize = 12.5
	keys := canvas.NewText(words.PageKeys(), s.soft())
	keys.TextSize = 12
	win := s.win.Canvas().Size()
	body := container.New(pageLayout{min(1180, win.Width-90), min(680, win.Height-210)}, p.in, s.panel(p.board))
	foot := container.NewBorder(nil, nil, container.NewHBox(p.store, closing, how), nil, container.New(inset{12, 8}, p.sum))
	content := container.New(inset{16, 12}, container.NewBorder(title, container.NewVBox(container.New(inset{2, 2}, keys), foot), nil, nil, body))
	p.hide = s.modal.show(content, p.in, nil)
	p.in.SetText(p.m.Text())
	p.m.Renew()
	p.sync()
}

// typed takes what was typed or pasted.
func (p *scribblePage) typed(text string) {
	if text == p.m.Text() {
		return
	}
	p.m.Set(text)
	p.follow()
	p.sync()
}

// follow picks out the line of the caret.
func (p *scribblePage) follow() {
	if p.in.CursorRow != p.line {
		p.line, p.way = p.in.CursorRow, -1
	}
}

// sync shows the reading as it stands.
func (p *scribblePage) sync() {
	entries, notes, open, off := p.m.Counts()
	p.store.SetText(words.StoreButton(entries))
	if ready := entries > 0 && open == 0 && p.m.Problem() == ""; ready {
		p.store.Enable()
	} else {
		p.store.Disable()
	}
	p.sum.Text, p.sum.Color = words.PageSum(entries, notes, open, off), p.s.soft()
	if pr := p.m.Problem(); pr != "" {
		p.sum.Text, p.sum.Color = pr, p.s.errorInk()
	}
	p.sum.Refresh()
	p.board.Renew()
	p.reveal()
}

func (p *scribblePage) reveal() {
	p.board.Scene()
	if p.line >= 0 && p.line < len(p.boxes) && p.boxes[p.line].H() > 0 {
		p.board.Reveal(p.boxes[p.line])
	}
}

// draw draws the list of lines.
func (p *scribblePage) draw(size draw.Size) scene.Scene {
	r := p.s.newReading(size.W)
	p.boxes = nil
	f := draw.Font{Size: 12.5, Weight: draw.Medium}
	for i, l := range p.m.Lines() {
		if l.Blank {
			p.boxes = append(p.boxes, draw.Rect{})
			continue
		}
		top := r.y
		here := i == p.line
		made := len(l.Clauses) > 0 && l.Clauses[0].State != state.Elsewhere || l.Off
		tick := draw.R(readingPad, r.y+1, 15, 15)
		if made {
			r.list.Stroke(draw.RoundRect(tick, 3), draw.Stroke{Width: 1.4}, r.look.Ink)
			r.hits = append(r.hits, scene.Hit{Ref: tickRef(i), Box: tick.Inset(-4), Tip: words.TickTip(l.Off)})
		}
		if made && !l.Off {
			r.list.Stroke(draw.Polyline([]draw.Point{draw.Pt(tick.Min.X+3, tick.Min.Y+8), draw.Pt(tick.Min.X+6, tick.Min.Y+11.5), draw.Pt(tick.Min.X+12, tick.Min.Y+3.5)}), draw.Stroke{Width: 1.8}, r.look.Ink)
		}
		ink := r.look.Ink
		if l.Off {
			ink = r.look.Faint
		}
		r.plain = !here
		if r.plain || l.Off {
			r.list.Text(draw.Text{S: draw.Fit(f, tidy(l.Text), size.W-34-readingPad), At: draw.Pt(32, r.y+13), Font: f, Color: ink})
			r.y += 20
		}
		if !l.Off {
			r.at, r.way = -1, -1
			if c, ok := openOf(l); ok && here {
				r.at, r.way = c.At, p.way
			}
			r.line(l, 32)
		}
		r.y += 4
		box := draw.R(1, top-4, size.W-2, r.y-top+1)
		p.boxes = append(p.boxes, box)
		if here {
			r.list.Fill(draw.Rectangle(draw.R(0, top-3, 3, r.y-top-1)), draw.NonZero, draw.Solid(r.look.Accent))
		}
		r.list.Stroke(draw.Line(draw.Pt(readingPad, r.y), draw.Pt(size.W-readingPad, r.y)), draw.Stroke{Width: 1}, r.look.Rule)
		r.y += 6
		r.hits = append([]scene.Hit{{Ref: journal.Ref{Kind: "line", ID: tickRef(i).ID}, Box: box}}, r.hits...)
	}
	return r.scene(size.H)
}

// openOf is the first clause of a line that waits for a choice.
func openOf(l state.ScribbleLine) (state.ScribbleClause, bool) {
	for _, c := range l.Clauses {
		if c.State == state.Open {
			return c, true
		}
	}
	return state.ScribbleClause{}, false
}

// pick does what lies under the pointer: a choice, a tick, else the line is picked out.
func (p *scribblePage) pick(k own.Pick) {
	if !k.Found {
		return
	}
	switch k.Hit.Ref.Kind {
	case wayKind:
		at, way := wayOf(k.Hit.Ref)
		p.choose(at, way)
	case tickKind:
		i := lineOf(k.Hit.Ref)
		p.m.LeaveOut(i, !p.m.Lines()[i].Off)
		p.sync()
	default:
		p.line, p.way = lineOf(k.Hit.Ref), -1
		p.sync()
	}
}

func (p *scribblePage) choose(at, way int) {
	if p.m.Choose(at, way) {
		p.way = -1
		if p.in.Text != p.m.Text() {
			p.in.SetText(p.m.Text())
		}
		p.sync()
	}
}

// listKey deals with keys while the list has the keyboard.
func (p *scribblePage) listKey(k *fyne.KeyEvent) bool {
	step := 0
	switch k.Name {
	case fyne.KeyUp:
		step = -1
	case fyne.KeyDown:
		step = 1
	case fyne.KeyReturn, fyne.KeyEnter:
		if modifiers()&fyne.KeyModifierControl != 0 {
			p.doStore()
		}
		return true
	default:
		return p.s.modal.key(k)
	}
	lines := p.m.Lines()
	for i := p.line + step; i >= 0 && i < len(lines); i += step {
		if !lines[i].Blank {
			p.line, p.way = i, -1
			p.sync()
			break
		}
	}
	return true
}

// listRune deals with characters there: a figure chooses, Space ticks.
func (p *scribblePage) listRune(c rune) {
	lines := p.m.Lines()
	if p.line < 0 || p.line >= len(lines) {
		return
	}
	l := lines[p.line]
	if c == ' ' {
		p.m.LeaveOut(p.line, !l.Off)
		p.sync()
		return
	}
	n, err := strconv.Atoi(string(c))
	if q, ok := openOf(l); ok && err == nil && n >= 1 && n <= len(q.Ways) {
		p.choose(q.At, n-1)
	}
}

// doStore stores the page, or goes to the first line that is open.
func (p *scribblePage) doStore() {
	err := p.m.Commit()
	switch {
	case errors.Is(err, state.ErrUnfinished):
		for i, l := range p.m.Lines() {
			if l.Open() {
				p.line, p.way = i, -1
				p.s.focus(p.board)
				break
			}
		}
		p.sync()
	case err != nil:
		p.s.tellError(err)
	default:
		p.s.opt.Log.Debug("page stored")
		p.hide()
		p.s.focus(p.s.strip)
	}
}

// pageEntry is the field of the page. Ctrl with Return stores.
type pageEntry struct {
	widget.Entry
	p *scribblePage
}

func newPageEntry(p *scribblePage) *pageEntry {
	e := &pageEntry{p: p}
	e.MultiLine = true
	e.Wrapping = fyne.TextWrapOff
	e.PlaceHolder = words.ScribblePageHint()
	e.ExtendBaseWidget(e)
	e.OnChanged = p.typed
	e.OnCursorChanged = func() {
		before := p.line
		if p.follow(); p.line != before {
			p.sync()
		}
	}
	return e
}

// FocusGained is part of fyne.Focusable.
func (e *pageEntry) FocusGained() {
	e.Entry.FocusGained()
	e.p.s.opt.Log.Debug("keyboard", "field", "page")
}

// TypedKey is part of fyne.Focusable.
func (e *pageEntry) TypedKey(k *fyne.KeyEvent) {
	switch k.Name {
	case fyne.KeyEscape:
		e.p.s.modal.key(k)
		return
	case fyne.KeyTab: // the list comes next, as it does for the eye
		e.p.s.focus(e.p.board)
		return
	case fyne.KeyF1:
		e.p.s.showHowToScribble()
		return
	}
	e.Entry.TypedKey(k)
}

// TypedShortcut is part of fyne.Shortcutable.
func (e *pageEntry) TypedShortcut(c fyne.Shortcut) {
	if k, ok := c.(*desktop.CustomShortcut); ok && k.Modifier == fyne.KeyModifierControl && (k.KeyName == fyne.KeyReturn || k.KeyName == fyne.KeyEnter) {
		e.p.doStore()
		return
	}
	e.Entry.TypedShortcut(c)
}

// pageLayout puts the field beside the list, which has the greater part.
type pageLayout struct{ w, h float32 }

func (l pageLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(l.w, l.h) }

func (l pageLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	left := whole(size.Width * 0.42)
	place(o[0], 0, 8, left, size.Height-14)
	place(o[1], left+10, 8, size.Width-left-10, size.Height-14)
}
