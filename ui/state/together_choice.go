package state

import (
	"encoding/json"
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// NightChoice says which nights are laid together: those fished that fit all of what is set;
// of these the likest to Like, if it is set; without those taken away and with those
// added by hand.
type NightChoice struct {
	Year    int           `json:"year,omitempty"`
	Month   time.Month    `json:"month,omitempty"`
	Beat    journal.ID    `json:"beat,omitzero"`
	Person  journal.ID    `json:"person,omitzero"`
	Trend   journal.Trend `json:"trend,omitempty"`
	Moon    string        `json:"moon,omitempty"` // of timeline.MoonSizes
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
	return (c.Year == 0 || t.Evening.Year == c.Year) &&
		(c.Month == 0 || t.Evening.Month == c.Month) &&
		(c.Beat.IsZero() || t.Beat == c.Beat) &&
		(c.Person.IsZero() || t.Has(c.Person)) &&
		(c.Trend == "" || t.Trend == c.Trend) &&
		(c.Moon == "" || t.Moon().String() == c.Moon)
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
			return NightChoice{Year: x.Evening.Year}
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

// Offered is what there is to choose of one kind.
type Offered[T any] struct {
	Value T
	Name  string
}

// Years, Beats, People are what the nights fished have to choose from, by name.
func (t *Together) Years() []int {
	return distinct(t.Traits(), func(x timeline.Traits) []int { return []int{x.Evening.Year} })
}

// Months returns the months fished in the year chosen, in the order of the year.
func (t *Together) Months() []time.Month {
	out := distinct(t.Traits(), func(x timeline.Traits) []time.Month {
		if t.choice.Year != 0 && x.Evening.Year != t.choice.Year {
			return nil
		}
		return []time.Month{x.Evening.Month}
	})
	slices.Sort(out)
	return out
}

// Trends returns the trends of the river noted.
func (t *Together) Trends() []journal.Trend {
	has := distinct(t.Traits(), func(x timeline.Traits) []journal.Trend { return []journal.Trend{x.Trend} })
	return slices.DeleteFunc(slices.Clone(journal.Trends), func(x journal.Trend) bool { return !slices.Contains(has, x) })
}

// Beats returns the beats fished.
func (t *Together) Beats() []Offered[journal.ID] {
	var out []Offered[journal.ID]
	for _, x := range t.Traits() {
		if x.Fished && !slices.ContainsFunc(out, func(o Offered[journal.ID]) bool { return o.Value == x.Beat }) {
			out = append(out, Offered[journal.ID]{x.Beat, x.BeatName})
		}
	}
	return out
}

// People returns who fished or guided.
func (t *Together) People() []Offered[journal.ID] {
	var out []Offered[journal.ID]
	for _, id := range distinct(t.Traits(), func(x timeline.Traits) []journal.ID { return x.People }) {
		if p, err := journal.One[journal.Person](t.d.j, id); err == nil {
			out = append(out, Offered[journal.ID]{id, p.Name})
		}
	}
	slices.SortFunc(out, func(a, b Offered[journal.ID]) int {
		switch {
		case a.Name < b.Name:
			return -1
		case a.Name > b.Name:
			return 1
		}
		return 0
	})
	return out
}

func distinct[T comparable](all []timeline.Traits, f func(timeline.Traits) []T) []T {
	var out []T
	for _, x := range all {
		if !x.Fished {
			continue
		}
		for _, v := range f(x) {
			if !slices.Contains(out, v) {
				out = append(out, v)
			}
		}
	}
	return out
}

// Said says which nights these are: a title, and how they were chosen.
func (t *Together) Said() (title, how string) {
	c := t.choice
	said := words.Chosen{Count: len(t.lay(timeline.LightAxis).Nights), LeftOut: t.left, Year: c.Year, Month: c.Month, Trend: c.Trend, Moon: c.Moon, Hand: c.hand(), None: c.None}
	name := func(list []Offered[journal.ID], id journal.ID) string {
		for _, o := range list {
			if o.Value == id {
				return o.Name
			}
		}
		return ""
	}
	if !c.Beat.IsZero() {
		said.Beat = name(t.Beats(), c.Beat)
	}
	if !c.Person.IsZero() {
		said.Person = name(t.People(), c.Person)
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
	Choice  NightChoice `json:"choice"`
	Picture string      `json:"picture"`
	Axis    string      `json:"axis"`
	Order   string      `json:"order"`
	Stands  journal.ID  `json:"stands,omitzero"`
}

// Encode writes the room down as a line of text.
func (t *Together) Encode() string {
	b, err := json.Marshal(keptTogether{t.choice, string(t.picture), t.axis.String(), t.order.String(), t.stands})
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
	there := func(id geo.ID) bool { return t.d.RowOf(id) >= 0 }
	m.Choice.Added = slices.DeleteFunc(m.Choice.Added, func(id journal.ID) bool { return !there(id) })
	m.Choice.Removed = slices.DeleteFunc(m.Choice.Removed, func(id journal.ID) bool { return !there(id) })
	if !m.Choice.Like.IsZero() && !there(m.Choice.Like) {
		m.Choice = t.usual()
	}
	t.act(func() {
		t.axis, t.order, t.picture, t.stands = axis, order, scene.Picture(m.Picture), m.Stands
		t.SetChoice(m.Choice)
	})
}
