package state

import (
	"encoding/json"
	"slices"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/timeline/season"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// NightChoice says which nights are laid together: those fished that the filter lets through, with
// one of the moons; of these the likest to Like, if it is set; without those taken away and with
// those added by hand. Its people fished or guided.
type NightChoice struct {
	Filter  season.Filter `json:"filter,omitzero"`
	Moons   []string      `json:"moons,omitempty"` // of timeline.MoonSizes
	Like    journal.ID    `json:"like,omitzero"`
	Added   []journal.ID  `json:"added,omitempty"`
	Removed []journal.ID  `json:"removed,omitempty"`
	None    bool          `json:"none,omitempty"` // only those added
}

// LikeCount is how many nights "like this one" takes, that one among them.
const LikeCount = 8

func (c NightChoice) hand() bool { return len(c.Added) > 0 || len(c.Removed) > 0 || c.None }

// fits reports whether a night fits what is set.
func (c NightChoice) fits(t timeline.Traits) bool {
	return c.Filter.Lets(subjectOf(t)) && (len(c.Moons) == 0 || slices.Contains(c.Moons, t.Moon().String()))
}

// subjectOf is what a filter asks of a night.
func subjectOf(t timeline.Traits) season.Subject {
	return season.Subject{Trip: t.Trip, Beat: t.Beat, Evening: t.Evening, Trend: t.Trend, Clients: t.Clients, People: t.People}
}

// moonSizes are the names of the sizes of the moon.
func moonSizes() (out []string) {
	for _, m := range timeline.MoonSizes {
		out = append(out, m.String())
	}
	return out
}

// Select returns the nights of a choice among all, in the order of all.
func (c NightChoice) Select(all []timeline.Traits) []timeline.Traits {
	var base []timeline.Traits
	if !c.None {
		for _, t := range all {
			if t.Fished && c.fits(t) || t.Trip == c.Like {
				base = append(base, t)
			}
		}
		if !c.Like.IsZero() {
			base = timeline.LikeThis(base, c.Like, LikeCount)
		}
	}
	in := map[journal.ID]bool{}
	for _, t := range base {
		in[t.Trip] = true
	}
	for _, id := range c.Removed {
		delete(in, id)
	}
	for _, id := range c.Added {
		in[id] = true
	}
	var out []timeline.Traits
	for _, t := range all {
		if in[t.Trip] {
			out = append(out, t)
		}
	}
	return out
}

// usual is what is shown at first: the latest year fished.
func (t *Together) usual() NightChoice {
	for _, x := range t.Traits() {
		if x.Fished {
			return NightChoice{Filter: season.Filter{Years: One(x.Evening.Year)}}
		}
	}
	return NightChoice{}
}

// Choice returns which nights are laid together.
func (t *Together) Choice() NightChoice { return t.choice }

// SetChoice chooses others.
func (t *Together) SetChoice(c NightChoice) {
	t.act(func() {
		t.choice, t.laid = c, nil
		t.fish, t.over = journal.Ref{}, journal.Ref{}
	})
}

// Change changes one thing about the choice: hand-picked nights are given up.
func (t *Together) Change(f func(*NightChoice)) {
	c := t.choice
	c.Added, c.Removed, c.None = nil, nil, false
	f(&c)
	t.SetChoice(c)
}

// Reset goes back to the latest year.
func (t *Together) Reset() { t.SetChoice(t.usual()) }

// None takes all nights away, so that they can be picked one by one.
func (t *Together) None() { t.SetChoice(NightChoice{None: true}) }

// LikeThis chooses the nights likest to one.
func (t *Together) LikeThis(trip journal.ID) {
	if !trip.IsZero() {
		t.SetChoice(NightChoice{Like: trip})
		t.Stand(trip)
	}
}

// Toggle takes a night in or out by hand.
func (t *Together) Toggle(trip journal.ID) {
	if trip.IsZero() {
		return
	}
	c := t.choice
	c.Added, c.Removed = slices.Clone(c.Added), slices.Clone(c.Removed)
	without := func(list []journal.ID) []journal.ID {
		return slices.DeleteFunc(list, func(id journal.ID) bool { return id == trip })
	}
	in := slices.ContainsFunc(c.Select(t.Traits()), func(x timeline.Traits) bool { return x.Trip == trip })
	c.Added, c.Removed = without(c.Added), without(c.Removed)
	now := slices.ContainsFunc(c.Select(t.Traits()), func(x timeline.Traits) bool { return x.Trip == trip })
	if now == in { // the rest of the choice has it otherwise
		if in {
			c.Removed = append(c.Removed, trip)
		} else {
			c.Added = append(c.Added, trip)
		}
	}
	t.SetChoice(c)
}

// chosen are the trips laid together, the latest first, at most MostTogether.
func (t *Together) chosen() []journal.ID {
	all := t.choice.Select(t.Traits())
	t.left = max(0, len(all)-MostTogether)
	var out []journal.ID
	for _, x := range all[:min(len(all), MostTogether)] {
		out = append(out, x.Trip)
	}
	return out
}

// Offers returns what the nights fished have to choose from.
func (t *Together) Offers() Offers {
	var nights []season.Subject
	beats, people := map[journal.ID]string{}, map[journal.ID]string{}
	for _, x := range t.Traits() {
		if !x.Fished {
			continue
		}
		nights = append(nights, subjectOf(x))
		if _, had := beats[x.Beat]; !had { // as it was called last
			beats[x.Beat] = x.BeatName
		}
		for _, id := range x.People {
			if _, had := people[id]; had {
				continue
			}
			if p, err := journal.One[journal.Person](t.d.j, id); err == nil {
				people[id] = p.Name
			}
		}
	}
	return offersOf(nights, beats, people)
}

// Subjects are all nights, the latest first, as a filter asks of them.
func (t *Together) Subjects() (out []season.Subject) {
	for _, x := range t.Traits() {
		out = append(out, subjectOf(x))
	}
	return out
}

// Filter returns which nights are let through.
func (t *Together) Filter() season.Filter { return t.choice.Filter }

// SetFilter lets others through.
func (t *Together) SetFilter(f season.Filter) { t.Change(func(c *NightChoice) { c.Filter = f }) }

// Said says which nights these are: a title, and how they were chosen.
func (t *Together) Said() (title, how string) {
	c, o := t.choice, t.Offers()
	said := words.Chosen{Count: len(t.lay(timeline.LightAxis).Nights), LeftOut: t.left, Filter: c.Filter, Moons: c.Moons, Hand: c.hand(), None: c.None,
		Beat: o.Beat, Person: o.Person,
	}
	for _, x := range t.Traits() {
		if x.Trip == c.Like {
			said.Like = x.Evening
		}
	}
	return said.Title(), said.How()
}

// keptTogether is what is kept of the room from one session to the next.
type keptTogether struct {
	Choice  *NightChoice `json:"which"` // missing: the usual
	Picture string       `json:"picture"`
	Axis    string       `json:"axis"`
	Order   string       `json:"order"`
	Stands  journal.ID   `json:"stands,omitzero"`
}

// Encode writes the room down as a line of text.
func (t *Together) Encode() string {
	b, err := json.Marshal(keptTogether{&t.choice, string(t.picture), t.axis.String(), t.order.String(), t.stands})
	if err != nil {
		return ""
	}
	return string(b)
}

// Decode brings back what Encode wrote. What cannot be read, or names nights that are
// gone, is as if it had not been chosen.
func (t *Together) Decode(text string) {
	var m keptTogether
	if json.Unmarshal([]byte(text), &m) != nil {
		return
	}
	axis, errAxis := timeline.ParseAxis(m.Axis)
	order, errOrder := timeline.ParseNightOrder(m.Order)
	if errAxis != nil || errOrder != nil || !slices.Contains(scene.Pictures, scene.Picture(m.Picture)) {
		return
	}
	if m.Choice == nil {
		usual := t.usual()
		m.Choice = &usual
	}
	there := func(id geo.ID) bool { return t.d.RowOf(id) >= 0 }
	m.Choice.Added = slices.DeleteFunc(m.Choice.Added, func(id journal.ID) bool { return !there(id) })
	m.Choice.Removed = slices.DeleteFunc(m.Choice.Removed, func(id journal.ID) bool { return !there(id) })
	if !m.Choice.Like.IsZero() && !there(m.Choice.Like) {
		*m.Choice = t.usual()
	}
	o := t.Offers()
	if !sound(&m.Choice.Filter, func(id journal.ID) bool { return o.Beat(id) != "" }, func(id journal.ID) bool { return o.Person(id) != "" }) {
		return
	}
	m.Choice.Moons = slices.DeleteFunc(m.Choice.Moons, func(s string) bool { return !slices.Contains(moonSizes(), s) })
	t.act(func() {
		t.axis, t.order, t.picture, t.stands = axis, order, scene.Picture(m.Picture), m.Stands
		t.SetChoice(*m.Choice)
	})
}
