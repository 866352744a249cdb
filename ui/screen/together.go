package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// togetherRoom lays nights side by side: at the left the ways to choose them and the list
// to pick from, in the middle the picture, over it what is shown and along what.
type togetherRoom struct {
	s       *Screen
	t       *state.Together
	title   *own.Paragraph
	how     *own.Paragraph
	tools   *togetherTools
	board   *own.Board
	picks   *own.Board
	legend  *own.Board
	choose  *choosers
	all     *fyne.Container
	side    fyne.CanvasObject
	keyed   bool // the legend is shown
	kept    string
	revealT journal.ID // the row that was brought into view last
}

func init() {
	roomMakers[state.TogetherRoom] = func(s *Screen) room { return newTogetherRoom(s) }
}

func newTogetherRoom(s *Screen) *togetherRoom {
	r := &togetherRoom{s: s, t: s.desk.Together()}
	r.t.Decode(s.recall("together"))
	r.title = own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 21}, 600, s.ink)
	r.title.Most = 1
	r.how = own.NewParagraph(draw.Font{Size: 13}, 600, s.soft)
	r.how.Most = 2
	r.tools = newTogetherTools(r)
	r.board = r.newBoard()
	r.picks = r.newPicks()
	r.legend = own.NewBoard(func(size draw.Size) scene.Scene {
		return padded(scene.TogetherLegend(size.W-2*legendPad, s.look()), size, s.look())
	}, s.look)
	r.legend.Tall = true
	r.legend.OnKey, r.legend.OnRune = s.typedKey, s.typedRune
	choose, ways := newTogetherChoosers(r)
	r.choose = choose
	l := &togetherLayout{r: r, board: s.panel(r.board), legend: s.panel(r.legend)}
	r.all = container.New(l, r.title, r.how, r.tools.all, l.board, l.legend)
	r.side = container.NewBorder(ways, nil, nil, nil, r.picks)
	bind := func(id string, when func() bool, act func()) {
		s.desk.Bind(id, when, func() error { act(); return nil })
		s.bound[id] = true
	}
	some := func() bool { return len(r.t.Sides().Light.Nights) > 0 }
	bind("together.legend", nil, r.toggleLegend)
	bind("together.evenings", func() bool { return len(r.t.Traits()) > 0 }, func() { s.askEvenings(r.t) })
	bind("together.picture", some, r.savePicture)
	bind("together.table", some, r.saveTables)
	return r
}

// padded puts a legend on a panel.
func padded(legend *draw.List, size draw.Size, look scene.Look) scene.Scene {
	size.H = max(size.H, legend.Size().H+legendPad)
	l := draw.NewList(size)
	l.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(look.Panel))
	draw.Place(l, legend, 1, draw.Pt(legendPad, legendPad/2))
	return scene.Scene{List: l}
}

// newBoard is the picture. Pointing tells, a click picks out, a double click opens the
// night.
func (r *togetherRoom) newBoard() *own.Board {
	s := r.s
	b := own.NewBoard(func(size draw.Size) scene.Scene {
		if len(r.t.Sides().Light.Nights) == 0 {
			return s.empty(size, words.NothingTogether(len(r.t.Traits()) > 0))
		}
		return scene.Together(r.t.Picture(), r.t.Sides(), size, s.look(), r.t.View())
	}, s.look)
	b.Tall = true
	b.Min = fyne.NewSize(minSketch, 220)
	r.keys(b, state.Anywhere)
	b.OnPick = func(p own.Pick) {
		switch {
		case !p.Found:
		case p.Hit.Ref.Kind == journal.KindContact:
			r.t.PickFish(p.Hit.Ref)
		case p.Hit.Ref.Kind == journal.KindTrip:
			r.t.Stand(p.Hit.Ref.ID)
		case !p.Hit.Ref.Trip.IsZero() && !p.Hit.Ref.ID.IsZero() && p.Hit.Ref.Kind != scene.PoolKind && p.Hit.Ref.Kind != scene.SpotKind:
			r.t.Stand(p.Hit.Ref.Trip)
		}
	}
	b.OnOpen = func(p own.Pick) {
		if p.Found && (p.Hit.Ref.Kind == journal.KindTrip || s.desk.RowOf(p.Hit.Ref.Trip) >= 0) {
			if err := r.t.Open(p.Hit.Ref); err != nil {
				s.tellError(err)
			}
		}
	}
	b.OnHover = func(p own.Pick) own.Hint {
		ref := journal.Ref{}
		if p.Found {
			ref = p.Hit.Ref
		}
		if r.t.Hover(ref) {
			b.RenewIfOther()
		}
		return own.Hint{Bare: ref.Kind == scene.BinKind || ref.Kind == journal.KindTrip}
	}
	b.OnLeave = func() {
		if r.t.Hover(journal.Ref{}) {
			b.RenewIfOther()
		}
	}
	return b
}

// keys has a board's keys be those of the room.
func (r *togetherRoom) keys(b *own.Board, part state.Part) {
	b.OnKey, b.OnRune = r.s.typedKey, r.s.typedRune
	b.OnFocus = func(on bool) {
		switch {
		case on:
			r.s.desk.SetPart(part)
		case r.s.desk.Part() == part:
			r.s.desk.SetPart(state.Anywhere)
		}
	}
}

// newPicks is the list from which nights are picked.
func (r *togetherRoom) newPicks() *own.Board {
	b := own.NewBoard(func(size draw.Size) scene.Scene {
		var rows []scene.ListRow

		marked := r.t.Marked()
		on := r.picks != nil && r.picks.Focused()
		for _, x := range r.t.Rows() {
			rows = append(rows, scene.ListRow{
				Trip: journal.Ref{Kind: journal.KindTrip, ID: x.Trip}, Mark: x.Mark, Date: words.ShortDate(x.Evening), Beat: x.Beat,
				What: words.HoursAndFish(x.Totals), In: x.In, Stands: x.Stands, Marked: on && x.Trip == marked,
			})
		}
		return scene.NightPicks(rows, size.W, r.s.look())
	}, r.s.look)
	b.Tall = true
	b.Min = fyne.NewSize(minSide-12, 120)
	r.keys(b, state.OnPicks)
	focus := b.OnFocus
	b.OnFocus = func(on bool) {
		focus(on)
		b.Renew()
	}
	b.OnPick = func(p own.Pick) {
		switch {
		case !p.Found:
		case p.Hit.Ref.Kind == scene.TickKind:
			r.t.Toggle(p.Hit.Ref.ID)
		default:
			r.t.Mark(p.Hit.Ref.ID)
		}
	}
	b.OnOpen = func(p own.Pick) {
		if p.Found && p.Hit.Ref.Kind == journal.KindTrip {
			if err := r.t.Open(p.Hit.Ref); err != nil {
				r.s.tellError(err)
			}
		}
	}
	b.OnHover = func(p own.Pick) own.Hint { return own.Hint{Bare: true} }
	return b
}

func (r *togetherRoom) main() fyne.CanvasObject { return r.all }
func (r *togetherRoom) list() fyne.CanvasObject { return r.side }
func (r *togetherRoom) hint() string            { return words.TogetherHint() }
func (r *togetherRoom) parts() []fyne.Focusable {
	return append([]fyne.Focusable{r.board, r.picks}, r.choose.parts()...)
}
func (r *togetherRoom) hush() {
	r.board.Say("", draw.Rect{})
	r.picks.Say("", draw.Rect{})
}

// changed brings the room up to date.
func (r *togetherRoom) changed(w state.What) {
	if !w.Has(state.RoomView | state.Look | state.Nights | state.RoomOpen) {
		return
	}
	title, how := r.t.Said()
	r.title.SetText(title)
	r.how.SetText(how)
	if err := r.t.Fault(); err != nil {
		what, do := words.Explain(err)
		r.how.SetText(what + " " + do)
	}
	r.choose.sync()
	r.tools.sync()
	r.picks.Renew()
	r.board.Renew()
	if w.Has(state.Look) {
		r.title.Refresh()
		r.how.Refresh()
		r.legend.Renew()
	}
	r.reveal()
	if text := r.t.Encode(); text != r.kept {
		r.kept = text
		r.s.remember("together", text)
	}
	r.all.Refresh()
}

// reveal brings the row marked, and the night that stands out, into view once.
func (r *togetherRoom) reveal() {
	at := r.t.Marked()
	if at == r.revealT || at.IsZero() {
		return
	}
	r.revealT = at
	for _, b := range []*own.Board{r.picks, r.board} {
		if sc, size := b.Scene(); size.H > 0 {
			if box, ok := sc.Box(journal.Ref{Kind: journal.KindTrip, ID: at}); ok {
				b.Reveal(box)
			}
		}
	}
}

func (r *togetherRoom) toggleLegend() {
	r.keyed = !r.keyed
	r.all.Refresh()
}

// tell writes into the log where things are.
func (r *togetherRoom) tell() {
	s := r.s
	for _, b := range r.tools.buttons {
		s.tellRegion("command "+b.c.ID, b.b)
	}
	for _, c := range r.choose.list {
		s.tellRegion("choose "+c.name, c.in)
	}
	for _, b := range []struct {
		name string
		b    *own.Board
	}{{"together", r.board}, {"picks", r.picks}} {
		s.tellRegion(b.name, b.b)
		s.tellHits(b.name, b.b)
	}
}

// togetherLayout stacks title, how, tools and picture; the legend stands below it.
type togetherLayout struct {
	r             *togetherRoom
	board, legend fyne.CanvasObject
}

func (l *togetherLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(minSketch, 400)
}

func (l *togetherLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	r := l.r
	y := r.title.HeightFor(size.Width)
	place(r.title, 0, -3, size.Width, y)
	h := r.how.HeightFor(size.Width)
	place(r.how, 0, y, size.Width, h)
	y += h + 2
	th := r.tools.heightFor(size.Width + 12)
	place(r.tools.all, -6, y, size.Width+12, th)
	y += th + 4
	foot := float32(0)
	show(l.legend, r.keyed)
	if r.keyed {
		want := float32(scene.TogetherLegend(float64(size.Width)-2*legendPad-6, r.s.look()).Size().H) + legendPad + 4
		foot = min(want, (size.Height-y)*0.4)
		place(l.legend, 0, size.Height-foot, size.Width, foot)
		foot += gap
	}
	place(l.board, 0, y, size.Width, size.Height-y-foot)
}

// axisName keeps the buttons of the axes short.
func axisName(a timeline.Axis) string { return words.AxisName(a) }
