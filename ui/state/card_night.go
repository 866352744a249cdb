package state

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/pen"
	"gloamline/ui/words"
)

// spareRods is how many rods a new night has room for; a standing one has room for
// one more than it has, if that is more.
const spareRods = 6

// nightDraft is a trip with its rods spread over the lines of the card.
type nightDraft struct {
	trip journal.Trip
	rods []journal.Rod // a rod of nobody is a line left empty
	news []journal.Person
}

// NewNightCard returns a card for a new night: evening, beat and who fishes. It
// starts with last evening before noon and this evening after, on the beat fished
// last. A journal without a beat gives an error of kind NotFound.
func (d *Desk) NewNightCard() (*Card, error) {
	beats, err := journal.All[journal.Beat](d.j)
	if len(beats) == 0 {
		if err == nil {
			err = &journal.Error{Op: "write", Kind: journal.NotFound, Err: words.NoBeatYet()}
		}
		return nil, err
	}
	t := journal.Trip{ID: journal.NewID(), Beat: beats[0].ID}
	if len(d.list.trips) > 0 {
		t.Beat = d.list.trips[0].Beat
	}
	c := d.cardOfNight(t, beats)
	c.isNew, c.title = true, "New night"
	return c.begin(), nil
}

func (d *Desk) nightCard(trip journal.ID) (*Card, error) {
	t, err := journal.One[journal.Trip](d.j, trip)
	if err != nil {
		return nil, err
	}
	beats, err := journal.All[journal.Beat](d.j)
	if len(beats) == 0 && err != nil {
		return nil, err
	}
	c := d.cardOfNight(t, beats)
	c.title = words.ChangeTitle(words.KindName(journal.KindTrip))
	return c.begin(), nil
}

func (d *Desk) cardOfNight(stands journal.Trip, beats []journal.Beat) *Card {
	people, _ := journal.All[journal.Person](d.j) // people that cannot be read are not offered
	c := &Card{d: d, ref: stands.Ref(), faults: map[string]string{}, coined: map[string]journal.ID{}}
	lines := max(spareRods, len(stands.Rods)+1)
	n := &nightDraft{}
	c.reset = func() {
		*n = nightDraft{trip: stands, rods: make([]journal.Rod, lines)}
		copy(n.rods, stands.Rods)
		for i := len(stands.Rods); i < lines; i++ {
			n.rods[i].ID = c.coin(fmt.Sprintf("rod %d", i))
		}
	}
	c.load = func() (ok bool) {
		t, err := journal.One[journal.Trip](d.j, stands.ID)
		if err != nil || len(t.Rods) > lines {
			return false
		}
		stands = t
		return true
	}
	c.batch = func() journal.Batch { return n.batch() }
	c.eveningFields(n, beats)
	for i := range lines {
		c.rodFields(n, i, people)
	}
	guide := c.add(c.personField("guide", "Guide who does not fish", n, people, func() journal.ID { return n.trip.Guide.Or(journal.ID{}) },
		func(id journal.ID) { _, set := fieldID(&n.trip.Guide); set(id) }))
	guide.more()
	c.add(linesField("note", "Note", &n.trip.Note)).more()
	return c
}

func (c *Card) coin(key string) journal.ID {
	if c.coined[key].IsZero() {
		c.coined[key] = journal.NewID()
	}
	return c.coined[key]
}

func (n *nightDraft) batch() journal.Batch {
	t := n.trip
	t.Rods = nil
	for _, r := range n.rods {
		if !r.Person.IsZero() {
			t.Rods = append(t.Rods, r)
		}
	}
	var b journal.Batch
	for _, p := range n.news {
		for _, r := range n.rods {
			if r.Person == p.ID {
				p.Client = r.Client
			}
		}
		b.Put = append(b.Put, p)
	}
	b.Put = append(b.Put, t)
	return b
}

func (c *Card) eveningFields(n *nightDraft, beats []journal.Beat) {
	zone := func() *time.Location {
		for _, b := range beats {
			if b.ID == n.trip.Beat {
				if loc, err := time.LoadLocation(b.On(n.trip.Evening).Zone); err == nil {
					return loc
				}
			}
		}
		return time.UTC
	}
	tonight := func() journal.Date { return journal.EveningOf(c.d.now(), zone()) }
	evening := c.add(&field{
		Field: Field{ID: "evening", Label: "Evening of", Hint: "4 July 2026 or last night"},
		text:  func() string { return printDate(n.trip.Evening) },
		fill:  func() string { return printDate(tonight()) },
		put: func(s string) (err error) {
			n.trip.Evening, err = pen.ParseDate(s, tonight())
			return err
		},
	})
	evening.read = func() string {
		if s := printDate(n.trip.Evening); s != evening.Value {
			return s
		}
		return ""
	}
	c.add(idPick("beat", "Beat", "not chosen", func() journal.ID { return n.trip.Beat }, func(id journal.ID) {
		n.trip.Beat, n.trip.Zone = id, ""
		for _, b := range beats {
			if b.ID == id {
				n.trip.Zone = b.On(n.trip.Evening).Zone
			}
		}
	}, func() []Choice {
		var out []Choice
		for _, b := range beats {
			shape := b.On(n.trip.Evening)
			name := shape.Name
			if r := shape.River.Name; r != "" {
				name = r + ", " + name
			}
			out = append(out, Choice{b.ID.String(), name})
		}
		return out
	}))
}

// rodFields are one line of the party: who, whether a client, and from when to
// when on the bank. Lines come up one after the other as they are filled.
func (c *Card) rodFields(n *nightDraft, i int, people []journal.Person) {
	id := func(part string) string { return fmt.Sprintf("rods.%d.%s", i, part) }
	label := "Rod"
	if i > 0 {
		label = fmt.Sprintf("Rod %d", i+1)
	}
	who := c.add(c.personField(id("person"), label, n, people, func() journal.ID { return n.rods[i].Person },
		func(p journal.ID) { n.rods[i].Person = p }))
	who.hidden = func() bool { return i > 0 && n.rods[i].Person.IsZero() && n.rods[i-1].Person.IsZero() && !who.Touched }
	put := who.put
	who.put = func(s string) error {
		if err := put(s); err != nil {
			return err
		}
		p := n.rods[i].Person
		if i > 0 && !p.IsZero() && slices.ContainsFunc(n.rods[:i], func(r journal.Rod) bool { return r.Person == p }) {
			return wrongf("this person has a rod on this night already")
		}
		return nil
	}
	empty := func() bool { return n.rods[i].Person.IsZero() }
	client := c.add(&field{Field: Field{ID: id("client"), Label: "Client", Kind: Tick}, hidden: empty,
		text: func() string { return tickField("", "", &n.rods[i].Client).text() },
		put:  func(s string) error { return tickField("", "", &n.rods[i].Client).put(s) },
		fill: func() string {
			for _, p := range people {
				if p.ID == n.rods[i].Person && p.Client {
					return Yes
				}
			}
			return ""
		}})
	client.more()
	c.bankField(n, id("start"), "On the bank from", func() *journal.Field[journal.When] { return &n.rods[i].Start }, nil).hidden = empty
	c.bankField(n, id("stop"), "On the bank until", func() *journal.Field[journal.When] { return &n.rods[i].Stop },
		func() time.Time { return n.rods[i].Start.Or(journal.When{}).Lo }).hidden = empty
}

// bankField is a moment of the party, which hangs on nothing.
func (c *Card) bankField(n *nightDraft, id, label string, p func() *journal.Field[journal.When], after func() time.Time) *field {
	clock := func() (Clock, bool) {
		loc, err := time.LoadLocation(n.trip.Zone)
		k := Clock{Evening: n.trip.Evening, Zone: loc}
		if after != nil {
			k.After = after()
		}
		if t := c.d.night; t != nil && t.Log.Trip.ID == n.trip.ID {
			k.Things = Things(t)
		}
		return k, err == nil && n.trip.Zone != "" && !n.trip.Evening.IsZero()
	}
	var ask *Question
	return c.add(&field{
		Field: Field{ID: id, Label: label, Kind: Time, Hint: "21:30 or about 21:30", More: true},
		text: func() string {
			if k, ok := clock(); ok {
				return k.Print(p().Or(journal.When{}))
			}
			return ""
		},
		put: func(s string) error {
			ask = nil
			if *p() = (journal.Field[journal.When]{}); strings.TrimSpace(s) == "" {
				return nil
			}
			k, ok := clock()
			if !ok {
				return wrongf("say the evening and the beat first")
			}
			r, err := k.Parse(s)
			if err == nil {
				*p(), ask = journal.Of(r.When), r.Ask
			}
			return err
		},
		ask: func() *Question { return ask },
	})
}

// personField is somebody known, or a new person by name.
func (c *Card) personField(id, label string, n *nightDraft, people []journal.Person, get func() journal.ID, set func(journal.ID)) *field {
	f := &field{Field: Field{ID: id, Label: label, Kind: Combo, Hint: "a name"}}
	f.text = func() string { return get().String() }
	f.choices = func() []Choice {
		out := []Choice{{"", "nobody"}}
		for _, p := range people {
			if p.Left.IsZero() || n.trip.Evening.Before(p.Left) || p.ID == get() {
				out = append(out, Choice{p.ID.String(), p.Name})
			}
		}
		return out
	}
	f.put = func(s string) error {
		name := strings.Join(strings.Fields(s), " ")
		if name == "" {
			set(journal.ID{})
			return nil
		}
		if known, err := geo.ParseID(name); err == nil && slices.ContainsFunc(people, func(p journal.Person) bool { return p.ID == known }) {
			set(known)
			return nil
		}
		for _, p := range slices.Concat(people, n.news) {
			if strings.EqualFold(p.Name, name) {
				set(p.ID)
				return nil
			}
		}
		p := journal.Person{ID: c.coin("person " + strings.ToLower(name)), Name: name}
		n.news = append(n.news, p)
		set(p.ID)
		return nil
	}
	f.read = func() string {
		if i := slices.IndexFunc(n.news, func(p journal.Person) bool { return p.ID == get() }); i >= 0 {
			return "a new person: " + n.news[i].Name
		}
		return ""
	}
	return f
}
