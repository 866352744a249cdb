package screen

import (
	"encoding/binary"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// The line of gaps at the foot of the log says quietly what the night lacks, by sort. A
// click on a sort opens the card of the first at its field; a list of all, by key, also
// takes “not known” for an answer. Where nothing is missing there is no line.

const (
	gapKind  journal.Kind = "gap"     // a sort of gap, or one in the list
	moreKind journal.Kind = "gaps"    // all of them
	noKind   journal.Kind = "unknown" // one in the list, answered
	gapRow                = 19.0
)

func gapRef(k journal.Kind, i int) journal.Ref {
	var id geo.ID
	binary.BigEndian.PutUint32(id[:4], uint32(i))
	return journal.Ref{Kind: k, ID: id}
}

func gapOf(r journal.Ref) int { return int(binary.BigEndian.Uint32(r.ID[:4])) }

func (s *Screen) newGapLine() *own.Board {
	b := own.NewBoard(func(size draw.Size) scene.Scene { return s.gapLine(size.W, size.H) }, s.look)
	b.Min = fyne.NewSize(100, gapRow)
	b.OnKey, b.OnRune = s.typedKey, s.typedRune
	b.OnPick = func(p own.Pick) {
		s.begin()
		s.focus(s.strip)
		switch all := s.desk.Gaps(); {
		case !p.Found:
		case p.Hit.Ref.Kind == moreKind:
			s.runID("go.gaps")
		case gapOf(p.Hit.Ref) < len(all):
			s.fillGap(all[gapOf(p.Hit.Ref)])
		}
	}
	return b
}

// gapHeight is the height of the line at a width; 0 if nothing is missing.
func (s *Screen) gapHeight(width float32) float32 {
	if s.desk.Night() == nil || s.desk.ReadOnly() {
		return 0
	}
	return float32(s.gapLine(float64(width), 0).List.Size().H)
}

// gapRows is how many rows the line has at most; what has no room is in the list.
const gapRows = 2

// gapLine draws the sorts of gaps one after the other.
func (s *Screen) gapLine(width, high float64) scene.Scene {
	all := s.desk.Gaps()
	if len(all) == 0 {
		return scene.Scene{List: draw.NewList(draw.Size{W: width, H: high})}
	}
	k := s.look()
	f, head := draw.Font{Size: 12}, draw.Font{Size: 12, Weight: draw.Medium}
	l := draw.NewList(draw.Size{W: width, H: 1000})
	var hits []scene.Hit
	pad := 14.0
	x, y, rows := pad, 4.0, 1
	put := func(text string, font draw.Font, c draw.Color, ref journal.Ref, tip string, room float64) bool {
		w := draw.Measure(font, text).Width
		if x+w > width-pad-room && x > pad {
			if rows == gapRows {
				return false
			}
			x, y, rows = pad, y+gapRow, rows+1
		}
		l.Text(draw.Text{S: text, At: draw.Pt(x, y+12), Font: font, Color: c})
		if ref.Kind != "" {
			l.Stroke(draw.Line(draw.Pt(x, y+15), draw.Pt(x+w, y+15)), draw.Stroke{Width: 1, Dash: []float64{2, 2}}, k.Soft)
			hits = append(hits, scene.Hit{Ref: ref, Box: draw.R(x-4, y-2, w+8, gapRow), Tip: tip})
		}
		x += w + 12
		return true
	}
	put(words.Missing(), head, k.Soft, journal.Ref{}, "", 0)
	left := len(all)
	for _, kind := range state.GapKinds {
		n, first := 0, -1
		for i, g := range all {
			if g.Kind == kind {
				if n++; first < 0 {
					first = i
				}
			}
		}
		if n == 0 {
			continue
		}
		room := 0.0
		if rows == gapRows { // for what leads to the list
			room = 62
		}
		if !put(words.Gap(string(kind), n), f, k.Soft, gapRef(gapKind, first), words.GapTip(string(kind), n), room) {
			break
		}
		left -= n
	}
	put(words.GapsMore(left), f, k.Accent, gapRef(moreKind, 0), tipOf(s.desk.Command("go.gaps")), 0)
	out := draw.NewList(draw.Size{W: width, H: max(high, y+gapRow+3)})
	out.Fill(draw.Rectangle(draw.Bounds(out.Size())), draw.NonZero, draw.Solid(k.Panel))
	draw.Place(out, l, 1, draw.Point{})
	return scene.Scene{List: out, Hits: hits}
}

// fillGap opens the card at the field that a gap asks for.
func (s *Screen) fillGap(g state.Gap) {
	c, err := s.desk.GapCard(g)
	if err != nil {
		s.tellError(err)
		return
	}
	s.desk.OpenCard(c)
	s.card.goTo(g.Field)
}

// goTo gives a field of the card the keyboard, also one that is folded away.
func (c *card) goTo(id string) {
	for range 2 {
		for _, r := range c.rows {
			if r.id == id {
				c.s.focus(r.in)
				c.reveal(r)
				return
			}
		}
		c.more = true
		c.rebuild()
		c.layout()
	}
}

// gapList is the list of all gaps, over the window.
type gapList struct {
	s     *Screen
	board *own.Board
	at    int
	hide  func()
	boxes []draw.Rect
}

func (s *Screen) showGaps() {
	g := &gapList{s: s}
	g.board = own.NewBoard(g.draw, s.look)
	g.board.Tall = true
	win := s.win.Canvas().Size()
	n := float32(len(s.desk.Gaps()))
	g.board.Min = fyne.NewSize(min(660, win.Width-80), min(max(90, n*30+20), win.Height-240))
	g.board.OnKey, g.board.OnRune = g.key, g.char
	g.board.OnPick = func(p own.Pick) {
		if !p.Found {
			return
		}
		g.at = gapOf(p.Hit.Ref)
		if p.Hit.Ref.Kind == noKind {
			g.notKnown()
			return
		}
		g.fill()
	}
	title := canvas.NewText(words.GapsTitle(), s.ink())
	title.TextSize, title.TextStyle.Bold = theme.TextSize()+4, true
	keys := own.NewParagraph(draw.Font{Size: 12}, g.board.Min.Width, s.soft)
	keys.SetText(words.GapsKeys())
	closing := newSheetButton(s, words.CloseButton(), func() { g.hide() })
	content := container.New(inset{16, 12}, container.NewBorder(title, container.NewVBox(keys, container.NewHBox(closing)), nil, nil, s.panel(g.board)))
	g.hide = s.modal.show(content, g.board, nil)
}

func (g *gapList) draw(size draw.Size) scene.Scene {
	const row = 30.0
	k := g.s.look()
	all := g.s.desk.Gaps()
	l := draw.NewList(draw.Size{W: size.W, H: max(size.H, row*float64(len(all))+12)})
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(k.Panel))
	f := draw.Font{Size: 13}
	g.boxes = nil
	var hits []scene.Hit
	if len(all) == 0 {
		l.Text(draw.Text{S: words.NoGaps(), At: draw.Pt(12, 28), Font: f, Color: k.Soft})
	}
	no := words.GapNotKnown()
	noW := draw.Measure(f, no).Width + 20
	for i, gap := range all {
		box := draw.R(4, 6+row*float64(i), size.W-8, row)
		g.boxes = append(g.boxes, box)
		if i == g.at {
			l.Fill(draw.RoundRect(box.Inset(1), 4), draw.NonZero, draw.Solid(draw.Mix(k.Panel, k.Accent, 0.2)))
			l.Fill(draw.Rectangle(draw.R(box.Min.X, box.Min.Y+3, 3, row-6)), draw.NonZero, draw.Solid(k.Accent))
		}
		mid := box.Min.Y + row/2
		room := size.W - noW - 40
		l.Text(draw.Text{S: draw.Fit(f, gap.Says, room), At: draw.Pt(16, mid), Font: f, Color: k.Ink, Align: draw.Centre})
		hits = append(hits, scene.Hit{Ref: gapRef(gapKind, i), Box: box, Tip: fullIfCut(f, gap.Says, room)})
		b := draw.R(size.W-noW-10, box.Min.Y+4, noW, row-8)
		l.Stroke(draw.RoundRect(b, 4), draw.Stroke{Width: 1}, draw.Mix(k.Panel, k.Ink, 0.55))
		l.Text(draw.Text{S: no, At: draw.Pt(b.Center().X, mid), Font: f, Color: k.Soft, Anchor: draw.Middle, Align: draw.Centre})
		hits = append(hits, scene.Hit{Ref: gapRef(noKind, i), Box: b})
	}
	return scene.Scene{List: l, Hits: hits}
}

// step goes to another gap of the list.
func (g *gapList) step(by int) {
	n := len(g.s.desk.Gaps())
	g.at = min(max(0, g.at+by), max(0, n-1))
	g.board.Renew()
	g.board.Scene()
	if g.at < len(g.boxes) {
		g.board.Reveal(g.boxes[g.at])
	}
}

func (g *gapList) key(e *fyne.KeyEvent) bool {
	switch e.Name {
	case fyne.KeyUp:
		g.step(-1)
	case fyne.KeyDown:
		g.step(+1)
	case fyne.KeyReturn, fyne.KeyEnter:
		g.fill()
	case fyne.KeyDelete:
		g.notKnown()
	default:
		return g.s.modal.key(e)
	}
	return true
}

func (g *gapList) char(r rune) {
	if r == 'n' || r == 'N' {
		g.notKnown()
	}
}

func (g *gapList) fill() {
	all := g.s.desk.Gaps()
	if g.at >= len(all) {
		return
	}
	g.hide()
	g.s.fillGap(all[g.at])
}

func (g *gapList) notKnown() {
	all := g.s.desk.Gaps()
	if g.at >= len(all) {
		return
	}
	if err := g.s.desk.NotKnown(all[g.at]); err != nil {
		g.s.tellError(err)
	}
	g.step(0)
}

// syncGaps draws the line of gaps anew and gives it the room it needs now.
func (s *Screen) syncGaps() {
	was := s.gapsHigh
	if s.gapsHigh = s.gapHeight(max(s.gaps.Size().Width, minLog)); was != s.gapsHigh {
		s.night.Refresh()
	}
	s.gaps.Renew()
}
