package screen

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// guestPicks is the column at the left: to whom, what, and what that one may see.
type guestPicks struct {
	r         *guestRoom
	who, what *chooser
	ticks     []*tick
	head      *own.Paragraph
	notes     *own.Paragraph
	all       fyne.CanvasObject
}

func newGuestPicks(r *guestRoom) *guestPicks {
	p := &guestPicks{r: r}
	s, d := r.s, r.desk
	choose := func(set func(journal.ID)) *chooser {
		h := &hooks{focus: func() {}, key: r.s.foreign}
		h.set = func(to string) {
			id, _ := geo.ParseID(to) // "" is nobody, or this night
			set(id)
		}
		return newChooser(h)
	}
	p.who, p.what = choose(d.SetWho), choose(d.SetPool)
	p.head = own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 13}, 180, s.soft)
	p.head.SetText(words.GuestMaySee())
	p.notes = own.NewParagraph(draw.Font{Size: 12}, 180, s.soft)
	rows := container.New(layout.NewCustomPaddedVBoxLayout(1), p.who, p.what, container.New(inset{2, 5}, p.head))
	for _, x := range journal.AllShows {
		c := s.desk.Command("guest.show-" + string(x))
		h := &hooks{focus: func() {}, key: r.beyondTick}
		h.set = func(string) { s.run(c) }
		t := newTick(h)
		p.ticks = append(p.ticks, t)
		rows.Add(t)
	}
	rows.Add(container.New(inset{4, 6}, p.notes))
	p.all = container.New(inset{8, 2}, container.NewVScroll(rows))
	return p
}

// beyondTick takes all keys that mean nothing to a tick: those of the room.
func (r *guestRoom) beyondTick(k *fyne.KeyEvent) bool {
	switch k.Name {
	case fyne.KeySpace, fyne.KeyTab:
		return false
	}
	return r.s.typedKey(k)
}

// sync shows the choice as it stands.
func (p *guestPicks) sync() {
	d := p.r.desk
	of := func(list []state.Offered[journal.ID], say func(string) string) (out []state.Choice) {
		for _, o := range list {
			out = append(out, state.Choice{Value: o.Value.String(), Label: say(o.Name)})
		}
		return out
	}
	value := func(id journal.ID) string {
		if id.IsZero() {
			return anyValue
		}
		return id.String()
	}
	people := append([]state.Choice{{Value: anyValue, Label: words.GuestTo(words.Anybody())}}, of(d.People(), words.GuestTo)...)
	p.who.fill(state.Field{Kind: state.Pick, Choices: people, Value: value(d.Who())})
	d.Handout() // so that a pool of another beat is let go of
	pools := append([]state.Choice{{Value: anyValue, Label: words.ThisNight()}}, of(d.Pools(), words.AllNightsOn)...)
	p.what.fill(state.Field{Kind: state.Pick, Choices: pools, Value: value(d.Pool())})
	on, places := map[journal.Shows]bool{}, false
	for _, x := range d.Shows() {
		on[x] = true
		places = places || x == journal.ShowPlaces
	}
	for i, x := range journal.AllShows {
		v := ""
		if on[x] {
			v = "yes"
		}
		p.ticks[i].fill(state.Field{Hint: words.ShowsName(x), Value: v})
	}
	note := ""
	if !places {
		note = words.GuestRounds()
	}
	if held := d.Held(); held > 0 {
		note = words.InARow(note, words.NotesHeld(held))
	}
	if err := d.Fault(); err != nil {
		what, do := words.Explain(err)
		note = words.InARow(note, what, do)
	}
	last := words.GuestRemembers()
	if p.r.s.desk.ReadOnly() {
		last = words.GuestReadOnly()
	}
	p.notes.SetText(words.InARow(note, last))
	p.notes.Refresh()
	p.head.Refresh()
}

func (p *guestPicks) tell() {
	s := p.r.s
	s.tellRegion("choose who", p.who)
	s.tellRegion("choose what", p.what)
	for i, t := range p.ticks {
		text, _ := held(t)
		s.tellRegion("shows "+string(journal.AllShows[i])+" "+text, t)
	}
}

func numberText(n int) string { return strconv.Itoa(n) }
