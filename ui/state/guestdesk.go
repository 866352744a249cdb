package state

import (
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// GuestDesk is the room in which a night, or all nights on one pool, are shown to somebody:
// to whom, what they may see, and where the showing stands. What each recipient sees is
// kept in the journal; of a journal that may only be read, for as long as it is open.
type GuestDesk struct {
	d *Desk

	who  journal.ID // the recipient; zero: anybody else
	pool journal.ID // zero: the open night
	kept map[journal.ID][]journal.Shows

	cursor float64 // scene.ClientWhole: all of it
	fish   int     // number, 0 none
	play   bool

	hand   scene.Handout // nil: to be made
	of     *timeline.Night
	held   int
	fault  error
	nights map[journal.ID]*timeline.Night
	past   pastNights

	large  map[string][]byte        // by SHA-256 of the original; nil: it has none
	wanted map[string]journal.Photo // shown small so far
}

// Guest returns the room in which things are shown to somebody.
func (d *Desk) Guest() *GuestDesk {
	if d.guest == nil {
		d.guest = &GuestDesk{d: d, cursor: scene.ClientWhole, kept: map[journal.ID][]journal.Shows{}, nights: map[journal.ID]*timeline.Night{},
			past: pastNights{apart: map[journal.ID]bool{}}, large: map[string][]byte{}, wanted: map[string]journal.Photo{}}
		d.j.Subscribe(d.guest.follow)
	}
	return d.guest
}

// follow forgets what a change of the journal may have altered. A threshold of trees grey
// hangs on all nights of a beat.
func (g *GuestDesk) follow(c journal.Change) {
	g.again()
	for _, e := range c.Edits {
		if e.Ref().Kind == journal.KindPhoto {
			clear(g.large) // it may lie elsewhere now
		}
		switch r := e.Ref(); {
		case r.Kind == journal.KindRecipient:
		case r.Kind == journal.KindTrip:
			delete(g.nights, r.ID)
			delete(g.past.apart, r.ID)
		case r.Trip.IsZero() || r.Kind == journal.KindSky:
			clear(g.nights)
			clear(g.past.apart)
		default:
			delete(g.nights, r.Trip)
			delete(g.past.apart, r.Trip)
		}
	}
	g.d.tell(RoomView | Can)
}

func (g *GuestDesk) act(f func()) {
	g.d.act(func() {
		f()
		g.d.tell(RoomView | Can)
	})
}

// Who is the recipient; zero for anybody else.
func (g *GuestDesk) Who() journal.ID { return g.who }

// SetWho shows to another.
func (g *GuestDesk) SetWho(person journal.ID) {
	if person != g.who {
		g.act(func() { g.who = person; g.again() })
	}
}

// People are whom things can be shown to: those of the open night first, then all others
// by name.
func (g *GuestDesk) People() []Offered[journal.ID] {
	all, err := journal.All[journal.Person](g.d.j)
	if err != nil {
		return nil
	}
	here := func(id journal.ID) int {
		if n := g.d.night; n != nil && slices.ContainsFunc(n.Rods, func(r timeline.RodNight) bool { return r.Rod.Person == id }) {
			return 0
		}
		return 1
	}
	slices.SortFunc(all, func(a, b journal.Person) int {
		if d := here(a.ID) - here(b.ID); d != 0 {
			return d
		}
		return words.CompareNames(a.Name, b.Name)
	})
	var out []Offered[journal.ID]
	for _, p := range all {
		out = append(out, Offered[journal.ID]{Value: p.ID, Name: p.Name})
	}
	return out
}

// Shows are what the recipient may see.
func (g *GuestDesk) Shows() []journal.Shows {
	if s, ok := g.kept[g.who]; ok {
		return s
	}
	r, _, err := journal.RecipientOf(g.d.j, g.who)
	if err != nil {
		g.fault = err
	}
	return r.Shows
}

// Toggle shows a thing to the recipient or hides it. Coordinates come and go with places.
func (g *GuestDesk) Toggle(x journal.Shows) (err error) {
	on := map[journal.Shows]bool{}
	for _, s := range g.Shows() {
		on[s] = true
	}
	on[x] = !on[x]
	switch {
	case x == journal.ShowCoordinates && on[x]:
		on[journal.ShowPlaces] = true
	case x == journal.ShowPlaces && !on[x]:
		on[journal.ShowCoordinates] = false
	}
	var shows []journal.Shows
	for _, s := range journal.AllShows {
		if on[s] {
			shows = append(shows, s)
		}
	}
	g.act(func() {
		if g.d.readOnly {
			g.kept[g.who] = shows
			g.again()
			return
		}
		r, found, e := journal.RecipientOf(g.d.j, g.who)
		if err = e; err != nil {
			return
		}
		if !found {
			r = journal.Recipient{ID: journal.NewID(), Person: g.who}
		}
		r.Shows = shows
		_, err = g.d.j.Do("amend "+string(journal.KindRecipient), journal.Batch{Put: []journal.Record{r}})
	})
	return err
}

// Pool is the pool whose nights are shown; zero: the open night is.
func (g *GuestDesk) Pool() journal.ID { return g.pool }

// SetPool shows all nights on a pool, or with zero the open night.
func (g *GuestDesk) SetPool(pool journal.ID) {
	if pool != g.pool {
		g.act(func() {
			g.pool, g.play = pool, false
			g.again()
			clear(g.past.apart)
			g.cursor, g.fish = scene.ClientWhole, 0
		})
	}
}

// Pools are those of the open night's beat.
func (g *GuestDesk) Pools() []Offered[journal.ID] {
	if g.d.night == nil {
		return nil
	}
	var out []Offered[journal.ID]
	for _, p := range g.d.night.Pools {
		out = append(out, Offered[journal.ID]{Value: p.Pool.ID, Name: words.PoolName(p.Pool.Name)})
	}
	return out
}

// Handout is what the recipient sees, nil without an open night and while a pool's nights
// are read; Held is how many notes
// were held back since they name what is hidden.
func (g *GuestDesk) Handout() scene.Handout {
	n := g.d.night
	if n != g.of {
		if g.of == nil || n == nil || g.of.Log.Trip.ID != n.Log.Trip.ID {
			g.cursor, g.fish, g.play = scene.ClientWhole, 0, false
		}
		if n != nil && !g.pool.IsZero() && !slices.ContainsFunc(g.Pools(), func(o Offered[journal.ID]) bool { return o.Value == g.pool }) {
			g.pool = journal.ID{}
		}
		g.of = n
		g.again()
	}
	if g.hand != nil || n == nil {
		return g.hand
	}
	shown := scene.ShownTo(journal.Recipient{Person: g.who, Shows: g.Shows()})
	shown.Larger = g.larger
	if g.pool.IsZero() {
		g.fault = nil
		g.hand, g.held = share(n, shown, g.d.prefs)
	} else if g.hand, g.held = g.pastOf(n.Log.Trip.Beat, shown), 0; g.hand == nil {
		return nil
	}
	if g.fish > len(g.hand.Seen()) {
		g.fish = 0
	}
	g.cursor = min(g.cursor, float64(g.hand.End()))
	return g.hand
}

func share(n *timeline.Night, s scene.Shown, p words.Prefs) (scene.Handout, int) {
	return scene.Share(n, s, p)
}

// Held is how many notes are held back.
func (g *GuestDesk) Held() int { return g.held }

// Fault says why something is not shown, nil if all is.
func (g *GuestDesk) Fault() error { return g.fault }

// View is where the showing stands.
func (g *GuestDesk) View() scene.ClientView {
	return scene.ClientView{Cursor: int(g.cursor), Fish: g.fish, Playing: g.play, Prefs: g.d.prefs}
}

// Playing reports whether it is played.
func (g *GuestDesk) Playing() bool { return g.play }

// Play starts or stops playing; at the end, or where all is shown, from the beginning.
func (g *GuestDesk) Play(on bool) {
	h := g.Handout()
	if h == nil || on == g.play {
		return
	}
	g.act(func() {
		g.play = on
		if on {
			g.fish = 0
			if g.cursor < 0 || g.cursor >= float64(h.End()) {
				g.cursor = 0
			}
		}
	})
}

// Advance plays on by what elapsed, at the rate of the night, to the end.
func (g *GuestDesk) Advance(elapsed time.Duration) {
	h := g.Handout()
	if !g.play || h == nil || elapsed <= 0 {
		return
	}
	was := int(g.cursor)
	g.cursor += h.Pace(g.d.rate) * elapsed.Seconds()
	if end := float64(h.End()); g.cursor >= end {
		g.act(func() { g.cursor, g.play = end, false })
		return
	}
	if int(g.cursor) != was {
		g.d.act(func() { g.d.tell(RoomView) })
	}
}

// SetCursor stands at a moment.
func (g *GuestDesk) SetCursor(at int) {
	if h := g.Handout(); h != nil {
		g.act(func() { g.cursor, g.fish = float64(min(max(at, scene.ClientWhole), h.End())), 0 })
	}
}

// Whole shows all of it at once.
func (g *GuestDesk) Whole() {
	g.act(func() { g.cursor, g.fish, g.play = scene.ClientWhole, 0, false })
}

// Pick picks out a fish by its number, at its moment; 0 for none.
func (g *GuestDesk) Pick(n int) {
	h := g.Handout()
	if h == nil || n < 0 || n > len(h.Seen()) {
		return
	}
	g.act(func() {
		g.fish, g.play = n, false
		if n > 0 {
			g.cursor = float64(h.Moment(n))
		}
	})
}

// Next picks out the fish so many on, round and round.
func (g *GuestDesk) Next(step int) {
	h := g.Handout()
	if h == nil || len(h.Seen()) == 0 {
		return
	}
	all := len(h.Seen())
	at := g.fish + step
	if g.fish == 0 && step < 0 {
		at = all
	}
	switch {
	case at < 1:
		at = all
	case at > all:
		at = 1
	}
	g.Pick(at)
}

// Encode and Decode keep whom something was shown to last.
func (g *GuestDesk) Encode() string { return g.who.String() }

// Decode takes it back; somebody who is gone is anybody else. If nothing was kept it is the
// first client of the open night, if there is one.
func (g *GuestDesk) Decode(text string) {
	if text == "" && g.d.night != nil {
		for _, r := range g.d.night.Rods {
			if r.Rod.Client {
				g.SetWho(r.Rod.Person)
				return
			}
		}
	}
	id, err := geo.ParseID(text)
	if err == nil && slices.ContainsFunc(g.People(), func(o Offered[journal.ID]) bool { return o.Value == id }) {
		g.SetWho(id)
	}
}

// Title is what is shown to whom, File names files of it.
func (g *GuestDesk) Title() string {
	h := g.Handout()
	if done, of := g.Reading(); of > 0 {
		return words.PastReading(done, of)
	}
	if h == nil {
		return words.NoNight()
	}
	return h.Title()
}

// File names files of it by the evening or the pool as the recipient may know it.
func (g *GuestDesk) File() string {
	n := g.d.night
	if n == nil {
		return words.GuestFile(journal.Date{})
	}
	if !g.pool.IsZero() {
		if past, ok := g.Handout().(scene.ClientPast); ok {
			return words.PoolFile(past.Pool)
		}
	}
	return words.GuestFile(n.Log.Trip.Evening)
}
