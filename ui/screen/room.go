package screen

import (
	"image/color"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// room is a screen of the window other than that of the night. It is made when it is
// entered first, and told of changes only while it is shown.
type room interface {
	// main fills the window but for the column at the left and the footer.
	main() fyne.CanvasObject
	// list stands in the column at the left in place of the nights.
	list() fyne.CanvasObject
	// changed brings the room up to date; on entering with state.Everything.
	changed(w state.What)
	// parts are what F6 gives the keyboard to in turn, the first on entering.
	parts() []fyne.Focusable
	// hint is the footer's line of what pointer and keys can do.
	hint() string
	// hush takes away what was said on its boards.
	hush()
	// tell writes into the log where things are, for TellRegions.
	tell()
}

// roomMakers has a line for each room.
var roomMakers = map[state.Room]func(*Screen) room{}

// rooms holds those that were entered.
type rooms struct {
	s     *Screen
	made  map[state.Room]room
	shown state.Room
	reads *clock          // before the room of nights together is entered
	stack *fyne.Container // the room that is shown, with an open card at its right
	foot  *fyne.Container // the ways from room to room
	ways  map[state.Room]*own.Button
	bars  map[state.Room]*canvas.Rectangle // beside the way to the room one is in
}

func newRooms(s *Screen) *rooms {
	r := &rooms{s: s, made: map[state.Room]room{}, shown: state.NightRoom, ways: map[state.Room]*own.Button{}, bars: map[state.Room]*canvas.Rectangle{}}
	r.stack = container.New(&roomLayout{s})
	r.stack.Hide()
	return r
}

// here is the room that is shown, nil for the night.
func (r *rooms) here() room { return r.made[r.shown] }

// bindRooms gives the commands that lead from room to room their acts.
func (s *Screen) bindRooms() {
	for _, to := range state.Rooms {
		if to != state.NightRoom && roomMakers[to] == nil || len(roomMakers) == 0 {
			continue
		}
		id := "view.room-" + string(to)
		enter := func() {
			if !s.desk.EnterRoom(to) {
				s.tell(words.HoldRoom())
			}
		}
		s.desk.Bind(id, nil, func() error {
			if to == state.TogetherRoom {
				s.rooms.readFirst(enter)
			} else {
				enter()
			}
			return nil
		})
		s.bound[id] = true
	}
}

// Nights are read before the room of nights together is entered, traitsStep at a time with a
// word of how far, unless no more than traitsAtOnce are left.
var traitsAtOnce = 100

const traitsStep = 16

// readFirst reads what nights are chosen by, without holding the window up, and then has the
// room entered, unless another was meanwhile.
func (r *rooms) readFirst(enter func()) {
	s := r.s
	if left, _ := s.desk.ReadTraits(0); left <= traitsAtOnce {
		enter()
		return
	}
	if r.reads != nil {
		return
	}
	from, decoded := s.desk.Room(), false
	r.reads = startClock(seasonTick, func(time.Duration) {
		left, of := 1, 0
		begun := time.Now()
		for left > 0 && time.Since(begun) < seasonSlice {
			left, of = s.desk.ReadTraits(traitsStep)
		}
		s.tell(words.TogetherReading(of-left, of))
		more := left > 0
		if !more {
			t := s.desk.Together()
			if r.made[state.TogetherRoom] == nil && !decoded {
				decoded = true
				t.Decode(s.recall("together")) // what the room will show
			}
			for more = true; more && time.Since(begun) < seasonSlice; {
				more = t.Prepare(1)
			}
		}
		if more && s.desk.Room() == from {
			return
		}
		r.reads.Stop()
		r.reads = nil
		s.tell("")
		if s.desk.Room() == from {
			enter()
		}
	})
}

// buttons makes the ways from room to room, for the foot of the column at the left.
func (r *rooms) buttons() fyne.CanvasObject {
	r.foot = container.NewVBox()
	for _, to := range state.Rooms {
		c := r.s.desk.Command("view.room-" + string(to))
		if c == nil || r.s.missing(c) {
			continue
		}
		b := r.s.button(c.Title(), tipOf(c), "", func() { r.s.run(c) })
		b.Alignment = widget.ButtonAlignLeading
		bar := canvas.NewRectangle(color.Transparent)
		bar.SetMinSize(fyne.NewSize(3, 1))
		r.ways[to], r.bars[to] = b, bar
		r.foot.Add(container.NewBorder(nil, nil, bar, nil, b))
	}
	r.mark()
	return container.New(inset{6, 6}, r.foot)
}

// mark shows which room one is in.
func (r *rooms) mark() {
	for to, b := range r.ways {
		want, bar := widget.LowImportance, color.Color(color.Transparent)
		if to == r.shown {
			want, bar = widget.MediumImportance, r.s.accent()
		}
		r.bars[to].FillColor = bar
		r.bars[to].Refresh()
		if b.Importance != want {
			b.Importance = want
			b.Refresh()
		}
	}
}

// enter shows the room that the desk is in, and reports whether that is another one.
func (r *rooms) enter() bool {
	s, to := r.s, r.s.desk.Room()
	if to == r.shown {
		return false
	}
	if to != state.NightRoom && r.made[to] == nil {
		if make := roomMakers[to]; make != nil {
			r.made[to] = make(s)
			s.side.lists.Add(r.made[to].list())
		}
	}
	r.shown = to
	night := to == state.NightRoom
	s.night.Remove(s.card.all)
	r.stack.RemoveAll()
	if now := r.here(); now != nil {
		r.stack.Add(now.main())
		r.stack.Add(s.card.all)
	} else {
		s.night.Add(s.card.all)
	}
	show(s.night, night)
	show(r.stack, !night)
	show(s.side.nights, night)
	for of, made := range r.made {
		show(made.list(), of == to)
	}
	r.mark()
	s.menus = newMenus(s)
	s.win.SetMainMenu(s.menus.main)
	s.opt.Log.Debug("room", "name", string(to))
	return true
}

// changedElsewhere brings another room than the night's up to date.
func (s *Screen) changedElsewhere(w state.What) {
	s.syncCard(w)
	if w.Has(state.Can | state.NightOpen | state.Selection | state.CardOpen | state.Look) {
		s.menus.sync()
	}
	if r := s.rooms.here(); r != nil {
		r.changed(w)
	}
}

// focusRoom gives the keyboard to the chief part of the room.
func (s *Screen) focusRoom() {
	if r := s.rooms.here(); r != nil {
		if p := r.parts(); len(p) > 0 {
			s.focus(p[0])
		}
		return
	}
	s.focus(s.strip)
}

// roomLayout gives the room all there is, but for an open card at the right.
type roomLayout struct{ s *Screen }

func (l *roomLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(minSketch+cardWidth+gap, minUpper+minStrip)
}

func (l *roomLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	if len(o) == 0 {
		return
	}
	w := size.Width
	open := l.s.desk.Card() != nil
	if len(o) > 1 {
		show(o[1], open)
		if open {
			w -= cardWidth + gap
			place(o[1], w+gap, 0, cardWidth, size.Height)
		}
	}
	place(o[0], 0, 0, w, size.Height)
}
