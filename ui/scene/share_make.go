package scene

import (
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// Rounding where places are hidden.
const (
	hiddenTime  = 5 * time.Minute
	hiddenLight = 15 * time.Minute
)

// Share returns the night as the recipient may see it, and how many notes were held
// back since they name somebody or something hidden.
func Share(n *timeline.Night, s Shown, p words.Prefs) (ClientNight, int) {
	m := newSharer(n, s, p)
	m.c.Date = words.Date(n.Log.Trip.Evening)
	if s.Water {
		m.c.Water = words.ClientWater(n.Beat)
	}
	if at := n.Beat.Place(); s.Places && s.Coordinates && !at.IsZero() {
		m.c.Place = words.ClientPlace(at)
	}
	t := n.Totals
	m.c.Totals = timeline.Totals{Landed: t.Landed, Lost: t.Lost, Touches: t.Touches, Shows: t.Shows, Kept: t.Kept, Returned: t.Returned}
	m.rods()
	m.pools()
	m.light()
	m.fish()
	m.notes()
	m.photos()
	return m.c, m.held
}

// sharer makes one ClientNight.
type sharer struct {
	n          *timeline.Night
	s          Shown
	prefs      words.Prefs
	start, end time.Time
	pool       map[journal.ID]int
	frame      *shareFrame // nil: places are hidden, or none is drawn
	held       int
	c          ClientNight
}

func newSharer(n *timeline.Night, s Shown, p words.Prefs) *sharer {
	m := &sharer{n: n, s: s, prefs: p, start: n.From, end: n.To, pool: map[journal.ID]int{}}
	if !s.Places { // the window of a night begins about sunset: tell of the fishing alone
		m.start, m.end = fishedFrom(n), fishedTo(n)
		m.start, m.end = m.start.Truncate(2*hiddenLight), m.end.Add(2*hiddenLight-1).Truncate(2*hiddenLight)
	} else {
		m.start, m.end = m.start.Truncate(hiddenTime), m.end.Add(hiddenTime-1).Truncate(hiddenTime)
	}
	m.c.Minutes = int(m.end.Sub(m.start) / time.Minute)
	for at := m.start; !at.After(m.end); at = at.Add(ClientStep * time.Minute) {
		m.c.Clocks = append(m.c.Clocks, m.clock(at))
	}
	return m
}

// clock is the time alone, without the offset that the night of a change would bear.
func (m *sharer) clock(t time.Time) string { return t.In(m.n.Zone).Format("15:04") }

// at is a moment as it may be told.
func (m *sharer) at(t time.Time) time.Time {
	if m.s.Places {
		return t.Truncate(time.Minute)
	}
	return t.Round(hiddenTime)
}

func (m *sharer) minute(t time.Time) int {
	return min(max(int(m.at(t).Sub(m.start)/time.Minute), 0), m.c.Minutes)
}

// rods names who fished.
func (m *sharer) rods() {
	hidden := 0
	for _, r := range m.n.Rods {
		if !m.mayName(r.Rod.Person) {
			hidden++
		}
	}
	k := 0
	for _, r := range m.n.Rods {
		name := words.RodName(r)
		if !m.mayName(r.Rod.Person) {
			if k++; hidden > 1 {
				name = words.OtherRod(k)
			} else {
				name = words.AnotherRod()
			}
		}
		m.c.Rods = append(m.c.Rods, name)
	}
}

func (m *sharer) mayName(person journal.ID) bool {
	return m.s.People || !person.IsZero() && person == m.s.Person
}

// light tells the steps of the ladder.
func (m *sharer) light() {
	step := hiddenLight
	if m.s.Places {
		step = time.Minute
	}
	for t := m.start; t.Before(m.end); t = t.Add(step) {
		r := m.n.Rung(t, journal.ID{})
		if k := len(m.c.Light); k == 0 || m.c.Light[k-1].Rung != r {
			m.c.Light = append(m.c.Light, ClientLight{int(t.Sub(m.start) / time.Minute), r})
		}
	}
}

// rung is the step told for a minute; where places are hidden a fish says no more of
// the light than the light does.
func (c ClientNight) rung(minute int) timeline.Rung {
	r := timeline.Daylight
	for _, l := range c.Light {
		if l.Minute <= minute {
			r = l.Rung
		}
	}
	return r
}

func (m *sharer) fish() {
	for _, k := range m.n.Contacts {
		at := k.At.Mid()
		f := ClientFish{N: k.N, Minute: m.minute(at), Clock: m.clock(m.at(at)), About: !k.At.Exact(), Pool: -1, Rod: -1,
			Touch: k.Touch, Species: k.Species.Or(""), Kept: k.Fate.Or("") == journal.Kept, Rung: k.Rung}
		if !m.s.Places {
			f.Rung = m.c.rung(f.Minute)
		}
		if i, ok := m.pool[k.Pool.ID]; ok && k.HasPool {
			f.Pool = i
		}
		if k.Rod >= 0 && k.Rod < len(m.c.Rods) {
			f.Rod = k.Rod
		}
		if spot, ok := k.Spot.Get(); ok && m.frame != nil {
			xy := m.frame.place(spot)
			f.Spot = &xy
		}
		if m.s.Weights {
			f.Size = words.FishSize(k.Contact, m.prefs)
			if w, ok := k.Weight.Get(); ok {
				f.Grams = float64(w.G)
			}
		}
		if k.HasFly && k.Fly.Known {
			f.Fly = shareFly(k.Fly.Dress, m.prefs)
		}
		m.c.Fish = append(m.c.Fish, f)
	}
}

// shareFly takes over what a fly looks like; the colour of its spot is a free text and
// stays behind.
func shareFly(d journal.Dress, p words.Prefs) *ClientFly {
	seen := journal.Dress{Length: d.Length, Silhouette: d.Silhouette, Tone: d.Tone}
	_, hot := d.HotSpot.Get()
	f := &ClientFly{Words: words.Fly(seen, p), Silhouette: d.Silhouette.Or(""), Tone: d.Tone.Or(""), Hot: hot}
	if l, ok := d.Length.Get(); ok {
		f.LengthM = float64(l.M)
	}
	return f
}

// mostPictures is how many photos leave with a night.
const mostPictures = 12

// photos takes a picture of each landed fish that has one, the recipient's own before
// others'.
func (m *sharer) photos() {
	if !m.s.Photo {
		return
	}
	own := func(k timeline.Contact) bool {
		return k.Rod >= 0 && k.Rod < len(m.n.Rods) && m.n.Rods[k.Rod].Rod.Person == m.s.Person
	}
	for _, mine := range []bool{true, false} {
		for _, k := range m.n.Contacts {
			if k.Touch != journal.Landed || own(k) != mine || len(m.c.Pictures) == mostPictures {
				continue
			}
			for _, p := range photosOf(m.n, k.ID) {
				if b := m.picture(p); b != nil {
					m.c.Pictures = append(m.c.Pictures, ClientPhoto{k.N, b})
					break
				}
			}
		}
	}
}

// picture is a photo as it may leave: pixels alone, encoded anew, whatever it was made of.
func (m *sharer) picture(p journal.Photo) []byte {
	if m.s.Larger != nil {
		if b := bare(m.s.Larger(p)); b != nil {
			return b
		}
	}
	return bare(p.Thumb)
}

// fishedFrom and fishedTo bound what was fished; a night with nothing in it has none.
func fishedFrom(n *timeline.Night) time.Time { return slices.MinFunc(moments(n), time.Time.Compare) }
func fishedTo(n *timeline.Night) time.Time   { return slices.MaxFunc(moments(n), time.Time.Compare) }

func moments(n *timeline.Night) []time.Time {
	var out []time.Time
	for _, r := range n.Rods {
		for _, run := range r.Runs {
			out = append(out, run.From.Mid(), run.To.Mid())
		}
	}
	for _, k := range n.Contacts {
		out = append(out, k.At.Mid())
	}
	if out == nil { // nothing happened: an hour about midnight tells nothing
		mid := n.Start.Add(12 * time.Hour)
		out = []time.Time{mid.Add(-30 * time.Minute), mid.Add(30 * time.Minute)}
	}
	return out
}
