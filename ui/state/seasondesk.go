package state

import (
	"gloamline/journal"
	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// SeasonDesk is the room of a season: which nights count, what they come to, and which
// questions are open. Nights are read a few at a time by Read; tests and resampled
// figures are worked out beside the window, by Unsettled and Settle. It is remembered by
// Encode and Decode.
type SeasonDesk struct {
	d *Desk

	book  *season.Book
	all   season.Nights
	read  bool // all is up to date
	done  int  // nights read, while it is not
	of    int
	fault error

	view   season.View
	sheet  *SeasonSheet // nil: to be folded
	picked int          // a card; 0 is the first, of all of it
	open   map[int]bool
	begun  bool         // open is somebody's choice, or was chosen
	full   map[int]bool // with the tests
}

// SeasonSheet is what a set of nights comes to.
type SeasonSheet = season.Season

// SeasonAsk is which nights and fish are asked for.
type SeasonAsk = season.View

// Filter is which nights are let through, in the season and side by side.
type Filter = season.Filter

// SeasonMeasures lists what may count as a fish.
var SeasonMeasures = season.Measures

// SeasonCards is how many cards there are: all of it, and the questions.
const SeasonCards = 1 + 26

// Season returns the room of a season.
func (d *Desk) Season() *SeasonDesk {
	if d.season == nil {
		d.season = &SeasonDesk{d: d, book: season.NewBook(d.j), view: season.View{Measure: season.Hooked},
			of: len(d.list.trips), open: map[int]bool{0: true}, full: map[int]bool{}}
		d.j.Subscribe(d.season.follow)
	}
	return d.season
}

// follow has the nights read again as far as a change may have altered them.
func (s *SeasonDesk) follow(journal.Change) {
	s.act(func() { s.read, s.sheet, s.fault = false, nil, nil })
}

func (s *SeasonDesk) act(f func()) {
	s.d.act(func() {
		f()
		s.d.tell(RoomView | Can)
	})
}

// Read reads some more nights, the latest first, and reports whether any are left:
// thousands would make one wait. With the last, figures stand.
func (s *SeasonDesk) Read(nights int) (left bool) {
	if s.read || s.fault != nil {
		return false
	}
	n, of, err := s.book.Step(nights)
	s.done, s.of = of-n, of
	if err == nil && n > 0 {
		return true
	}
	if err == nil {
		s.all, err = s.book.Read(nil)
	}
	s.act(func() { s.read, s.fault, s.sheet = err == nil, err, nil })
	return false
}

// Progress returns how many nights are read, and how many there are.
func (s *SeasonDesk) Progress() (done, of int) { return s.done, s.of }

// Ready reports whether all nights are read.
func (s *SeasonDesk) Ready() bool { return s.read }

// Fault says why the nights cannot be read, nil if they can.
func (s *SeasonDesk) Fault() error { return s.fault }

// Sheet returns what the nights let through come to; nil until all are read.
func (s *SeasonDesk) Sheet() *SeasonSheet {
	if s.sheet == nil && s.read {
		s.sheet = season.Fold(s.all, s.view)
		s.begin()
	}
	return s.sheet
}

// begin opens, for who comes here for the first time, the cards whose pictures tell most: every fish
// as its fly over the hours and, above it, clock or light once there is enough; without a fish, the
// pools with their hours. Without an hour none is.
func (s *SeasonDesk) begin() {
	f := s.sheet
	if s.begun || f.Nights == 0 {
		return
	}
	s.begun = true
	if f.ClockOrLight.Verdict != season.NotEnough {
		s.open[scene.SeasonClock] = true
	}
	switch {
	case f.LengthLight != nil && len(f.LengthLight.Fish) > 0:
		s.open[scene.SeasonLengths] = true
	case f.Hours > 0:
		s.open[scene.SeasonPools] = true
	}
}

// Unsettled returns what is shown without tests and resampled figures, to have them worked out
// by its Settle away from the window; nil if there is nothing to do.
func (s *SeasonDesk) Unsettled() *SeasonSheet {
	if f := s.Sheet(); f != nil && !f.Settled && f.Nights > 0 {
		return f
	}
	return nil
}

// Settle shows what was worked out of a sheet, unless another is shown by now.
func (s *SeasonDesk) Settle(of, settled *SeasonSheet) {
	if of == s.sheet && of != nil {
		s.act(func() { s.sheet = settled })
	}
}

// View returns which nights and fish count.
func (s *SeasonDesk) View() season.View { return s.view }

// Change changes which do.
func (s *SeasonDesk) Change(f func(*season.View)) {
	v := s.view
	f(&v)
	s.act(func() { s.view, s.sheet = v, nil })
}

// Reset takes all nights, and as fish those hooked.
func (s *SeasonDesk) Reset() {
	s.Change(func(v *season.View) { *v = season.View{Measure: season.Hooked} })
}

// Picked returns the card picked out, 0 for the first.
func (s *SeasonDesk) Picked() int { return s.picked }

// Pick picks a card out.
func (s *SeasonDesk) Pick(card int) {
	if card >= 0 && card < SeasonCards && card != s.picked {
		s.act(func() { s.picked = card })
	}
}

// Next picks out the card so many on.
func (s *SeasonDesk) Next(step int) { s.Pick(min(max(s.picked+step, 0), SeasonCards-1)) }

// Toggle opens a card or closes it.
func (s *SeasonDesk) Toggle(card int) {
	s.act(func() {
		s.picked, s.begun = card, true
		s.open[card] = !s.open[card]
	})
}

// Open reports whether a card is open.
func (s *SeasonDesk) Open(card int) bool { return s.open[card] }

// Show picks a card out and opens it.
func (s *SeasonDesk) Show(card int) {
	s.act(func() { s.picked, s.open[card] = card, true })
}

// Full reports whether a card shows the tests behind it.
func (s *SeasonDesk) Full(card int) bool { return s.full[card] }

// ToggleAll opens all cards, or closes them if all are open.
func (s *SeasonDesk) ToggleAll() {
	s.act(func() {
		s.begun = true
		open := false
		for i := range SeasonCards {
			open = open || !s.open[i]
		}
		for i := range SeasonCards {
			s.open[i] = open
		}
	})
}

// ToggleFull shows the tests behind a card, which is opened, or hides them.
func (s *SeasonDesk) ToggleFull(card int) {
	s.act(func() {
		s.picked, s.begun = card, true
		s.full[card] = !s.full[card] || !s.open[card]
		s.open[card] = true
	})
}

// FilterSaid says which nights are let through; empty for all.
func (s *SeasonDesk) FilterSaid() string {
	return words.SeasonFilter(s.view, s.beatName, s.personName)
}

func (s *SeasonDesk) beatName(id journal.ID) string {
	return s.Offers().Beat(id)
}

func (s *SeasonDesk) personName(id journal.ID) string {
	p, err := journal.One[journal.Person](s.d.j, id)
	if err != nil {
		return ""
	}
	return p.Name
}

// Said is the title of what is shown, and what it is made from.
func (s *SeasonDesk) Said() (title, made string) {
	f := s.Sheet()
	if f == nil {
		return words.SeasonRoomTitle(), words.SeasonReading(s.Progress())
	}
	return words.SeasonTitle(f), words.SeasonMade(s.view, s.FilterSaid())
}

// Scene is the room as the scene takes it.
func (s *SeasonDesk) Scene() scene.SeasonView {
	v := scene.SeasonView{Season: s.Sheet(), Picked: s.picked, Open: s.open, Full: s.full, Prefs: s.d.prefs, Nights: len(s.d.list.trips)}
	if v.Season != nil {
		v.Beats = s.sketches()
	}
	if !s.read {
		v.Done, v.Of = s.done, s.of
	}
	return v
}

// Tables returns the tables of the card picked out as CSV, of all cards for the first.
func (s *SeasonDesk) Tables() []Table {
	f := s.Sheet()
	if f == nil || f.Nights == 0 {
		return nil
	}
	from := f.Tables
	if c := f.Card(s.picked); c != nil {
		from = c.Tables
	}
	title, made := s.Said()
	head := []string{words.ProductName(), title, made}
	return append(seasonTables(from, head...), seasonSheets(f, s.picked, head...)...)
}

// Pages draws the card picked out, opened, to keep.
func (s *SeasonDesk) Pages(look scene.Look) []*draw.List {
	title, made := s.Said()
	return scene.SeasonPages(s.Scene(), s.picked, words.SeasonPageTitle(title), made, look)
}

// HasPages reports whether there is anything to keep.
func (s *SeasonDesk) HasPages() bool { f := s.Sheet(); return f != nil && f.Nights > 0 }

// OpenNight opens the night of a fish in its own room, with the fish picked out.
func (s *SeasonDesk) OpenNight(fish journal.Ref) error { return s.d.openAt(fish) }

// HasTables reports whether the card picked out has any.
func (s *SeasonDesk) HasTables() bool {
	f := s.Sheet()
	if f == nil || f.Nights == 0 {
		return false
	}
	c := f.Card(s.picked)
	return s.picked == 0 || c != nil && (len(c.Tables) > 0 || s.picked == 3)
}

// File names files of what is shown.
func (s *SeasonDesk) File() string {
	if f := s.Sheet(); f != nil {
		return words.SeasonFile(f.From, f.To)
	}
	return words.SeasonFile(journal.Date{}, journal.Date{})
}

// sketches are the beats fished, as they are now, for the shades of their pools.
func (s *SeasonDesk) sketches() []scene.SeasonBeat {
	out, _ := SeasonSketches(s.d.j, s.all, s.view.Filter) // a beat that cannot be read has no sketch
	return out
}

// SeasonSketches returns the beats fished on the nights let through, by name, as they were on
// the last of them.
func SeasonSketches(j *journal.Journal, nights season.Nights, f season.Filter) ([]scene.SeasonBeat, error) {
	last, names := map[journal.ID]journal.Date{}, map[journal.ID]string{}
	for _, d := range nights.Digests {
		if f.Takes(d) {
			last[d.Beat], names[d.Beat] = d.Evening, d.BeatName
		}
	}
	var out []scene.SeasonBeat
	var fault error
	for _, b := range byName(names) {
		r, err := journal.One[journal.Beat](j, b.Value)
		if err != nil {
			fault = err
			continue
		}
		out = append(out, scene.SeasonBeat{ID: b.Value, Beat: r.On(last[b.Value])})
	}
	return out, fault
}
