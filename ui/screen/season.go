package screen

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

func init() {
	roomMakers[state.SeasonRoom] = func(s *Screen) room { return newSeasonRoom(s) }
}

// seasonRoom is what many nights say: at the left which nights count and the list of
// questions, in the middle the questions with their answers.
type seasonRoom struct {
	s      *Screen
	desk   *state.SeasonDesk
	title  *own.Paragraph
	made   *own.Paragraph
	board  *own.Board
	index  *own.Board
	choose *choosers
	tools  []toolButton
	all    fyne.CanvasObject
	side   fyne.CanvasObject
	clock  *clock             // while nights are read
	work   *state.SeasonSheet // what is being settled beside
	shown  shownCard          // the card that was brought into view last
	kept   string
}

// shownCard is a card as it was when it was brought into view.
type shownCard struct {
	card       int
	open, full bool
	there      bool
}

// seasonTools lists the buttons over the cards, by command.
var seasonTools = []string{"season.open-all", "season.tests", "season.picture", "season.table"}

func newSeasonRoom(s *Screen) *seasonRoom {
	r := &seasonRoom{s: s, desk: s.desk.Season()}
	r.desk.Decode(s.recall("season"))
	r.title = own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 21}, 600, s.ink)
	r.made = own.NewParagraph(draw.Font{Size: 13}, 600, s.soft)
	r.board = s.board(state.Anywhere, func(size draw.Size) scene.Scene {
		return scene.Season(size.W, s.look(), r.desk.Scene())
	})
	r.board.Tall = true
	r.board.Min = fyne.NewSize(minSketch, 200)
	r.board.OnMenu = nil
	r.board.OnPick = r.pick
	r.board.OnOpen = func(p own.Pick) {
		switch {
		case !p.Found:
		case p.Hit.Ref.Kind == scene.CardKind:
			r.toggle(scene.SeasonNumber(p.Hit.Ref))
		case p.Hit.Ref.Kind == journal.KindContact:
			if err := r.desk.OpenNight(p.Hit.Ref); err != nil {
				s.tellError(err)
			}
		}
	}
	r.board.OnHover = func(own.Pick) own.Hint { return own.Hint{Bare: true} }
	r.index = s.board(state.Anywhere, func(size draw.Size) scene.Scene {
		return scene.SeasonIndex(size, s.look(), r.desk.Scene())
	})
	r.index.Tall = true
	r.index.OnMenu = nil
	r.index.OnPick = r.pick
	r.index.OnOpen = r.board.OnOpen
	r.index.OnHover = func(own.Pick) own.Hint { return own.Hint{Bare: true} }
	s.desk.Bind("season.table", r.desk.HasTables, func() error { r.saveTables(); return nil })
	s.desk.Bind("season.picture", r.desk.HasPages, func() error { r.savePage(); return nil })
	s.desk.Bind("season.evenings", r.desk.Ready, func() error { s.askEvenings(r.desk); return nil })
	s.bound["season.table"], s.bound["season.picture"], s.bound["season.evenings"] = true, true, true
	row := container.NewHBox()
	for _, id := range seasonTools {
		c := s.desk.Command(id)
		b := s.button(c.Title(), tipOf(c), "", func() { s.run(c) })
		r.tools = append(r.tools, toolButton{b, c, c.Title()})
		row.Add(b)
	}
	choose, ways := newSeasonChoosers(r)
	r.choose = choose
	head := container.NewVBox(container.New(inset{0, 6}, container.NewVBox(r.title, r.made)), row)
	r.all = container.NewBorder(head, nil, nil, nil, s.panel(r.board))
	r.side = container.NewBorder(ways, nil, nil, nil, r.index)
	return r
}

func (r *seasonRoom) main() fyne.CanvasObject { return r.all }
func (r *seasonRoom) list() fyne.CanvasObject { return r.side }
func (r *seasonRoom) hint() string            { return words.SeasonHint() }
func (r *seasonRoom) parts() []fyne.Focusable {
	return append([]fyne.Focusable{r.board, r.index}, r.choose.parts()...)
}

func (r *seasonRoom) hush() {
	for _, b := range []*own.Board{r.board, r.index} {
		b.Say("", draw.Rect{})
	}
}

// pick picks out a card, or shows and hides the tests behind it.
func (r *seasonRoom) pick(p own.Pick) {
	switch {
	case !p.Found:
	case p.Hit.Ref.Kind == scene.FoldKind:
		r.desk.ToggleFull(scene.SeasonNumber(p.Hit.Ref))
	case p.Hit.Ref.Kind == scene.CardKind:
		r.desk.Pick(scene.SeasonNumber(p.Hit.Ref))
	case p.Hit.Ref.Kind == scene.PoolKind:
		r.desk.Pick(scene.SeasonPools)
	case p.Hit.Ref.Kind == journal.KindContact:
		r.desk.Pick(scene.SeasonLengths)
	}
}

func (r *seasonRoom) toggle(card int) { r.desk.Toggle(card) }

// changed brings the room up to date.
func (r *seasonRoom) changed(w state.What) {
	if !w.Has(state.RoomView | state.Look | state.Nights | state.RoomOpen | state.Can) {
		return
	}
	title, made := r.desk.Said()
	if err := r.desk.Fault(); err != nil {
		what, do := words.Explain(err)
		made = what + " " + do
	}
	r.title.SetText(title)
	r.made.SetText(made)
	r.title.Refresh()
	r.made.Refresh()
	for _, b := range r.tools {
		b.b.Tip = tipOf(b.c)
		enable(b.b, b.c.Enabled())
	}
	r.choose.sync()
	r.board.Renew()
	r.index.Renew()
	r.reveal()
	if text := r.desk.Encode(); text != r.kept {
		r.kept = text
		r.s.remember("season", text)
	}
	r.read()
	r.settle()
}

// reveal brings the card picked out into view, when it is another one or has grown.
func (r *seasonRoom) reveal() {
	n := r.desk.Picked()
	at := shownCard{n, r.desk.Open(n), r.desk.Full(n), true}
	if at == r.shown {
		return
	}
	for _, b := range []*own.Board{r.index, r.board} {
		if sc, size := b.Scene(); size.H > 0 {
			if box, ok := sc.Box(scene.SeasonCard(n)); ok {
				r.shown = at
				box.Max.Y = min(box.Max.Y, box.Min.Y+size.H-60) // of a tall one its head
				b.Reveal(box)
			}
		}
	}
}

// While nights are read, each tick reads seasonStep at a time for seasonSlice at most.
const (
	seasonTick  = 30 * time.Millisecond
	seasonSlice = 18 * time.Millisecond
	seasonStep  = 4
)

// read reads nights as long as some are left, without holding the window up.
func (r *seasonRoom) read() {
	if r.desk.Ready() || r.desk.Fault() != nil || r.clock != nil {
		return
	}
	r.clock = startClock(seasonTick, func(time.Duration) {
		here := r.s.rooms.here() == room(r)
		left := here
		for from := time.Now(); left && time.Since(from) < seasonSlice; {
			left = r.desk.Read(seasonStep)
		}
		if !left {
			r.clock.Stop()
			r.clock = nil
		}
		if here && left {
			_, made := r.desk.Said()
			r.made.SetText(made)
			r.made.Refresh()
			r.board.Renew()
		}
	})
}

// settle has tests and resampled figures worked out beside the window, for one sheet
// at a time; if another is shown by then, for that.
func (r *seasonRoom) settle() {
	sheet := r.desk.Unsettled()
	if sheet == nil || r.work != nil {
		return
	}
	r.work = sheet
	job(sheet.Settle, func(settled *state.SeasonSheet) {
		r.work = nil
		r.desk.Settle(sheet, settled)
		if r.s.rooms.here() == room(r) {
			r.settle()
		}
	})
}

// savePage shows the card picked out as it will leave, and saves it.
func (r *seasonRoom) savePage() {
	title, _ := r.desk.Said()
	r.s.showSheet(leaf{
		title: words.SeasonPageTitle(title), file: words.SeasonPageFile(r.desk.File(), r.desk.Picked()), hint: words.SeasonPageHint(),
		draw: r.desk.Pages,
	})
}

// saveTables asks where to and saves the tables of the card picked out.
func (r *seasonRoom) saveTables() {
	r.s.askTables(r.desk.Tables(), words.SeasonTablesTitle(), words.SeasonTablesHint(), r.desk.File(), "season tables saved")
}

// tell writes into the log where things are.
func (r *seasonRoom) tell() {
	for _, b := range r.tools {
		r.s.tellRegion("command "+b.c.ID, b.b)
	}
	for _, c := range r.choose.list {
		r.s.tellRegion("choose "+c.name, c.in)
	}
	r.s.tellRegion("season", r.board)
	r.s.tellHits("season", r.board)
	r.s.tellHits("season index", r.index)
}
