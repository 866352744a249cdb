package state

import (
	"time"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/merge"
	"gloamline/journal/store"
	"gloamline/ui/words"
)

// Merging is another copy of the journal being joined into this one. Nothing is changed
// until Keep.Accept.
type Merging struct {
	Path string
	Plan *merge.Plan
	// Names of people, flies, beats and pools of both copies, and the evenings of nights.
	Names    map[string]string
	Evenings map[journal.ID]journal.Date
	zones    map[journal.ID]*time.Location // of nights
}

// LookAt compares another copy with the journal, on any goroutine.
func LookAt(path string, f *Frozen) (*Merging, error) {
	defer f.Close()
	theirs, err := store.Open(path, store.Options{ReadOnly: true})
	if err != nil {
		return nil, err
	}
	defer theirs.Close()
	ours, err := f.Open()
	if err != nil {
		return nil, err
	}
	m := &Merging{Path: path, Names: map[string]string{}, Evenings: map[journal.ID]journal.Date{}, zones: map[journal.ID]*time.Location{}}
	if m.Plan, err = merge.Look(ours, theirs); err != nil {
		return nil, err
	}
	for _, s := range []journal.Store{theirs, ours} { // ours last: its names win
		if err := m.name(s); err != nil {
			return nil, err
		}
	}
	return m, nil
}

// name gathers what records are called.
func (m *Merging) name(s journal.Store) error {
	for _, k := range []journal.Kind{journal.KindPerson, journal.KindFly, journal.KindBeat, journal.KindBox, journal.KindTrip} {
		list, err := s.List(k)
		if err != nil {
			return err
		}
		for _, e := range list {
			r, err := journal.Unseal(e)
			if err != nil {
				continue
			}
			switch r := r.(type) {
			case journal.Trip:
				m.Evenings[r.ID] = r.Evening
				if zone, err := time.LoadLocation(r.Zone); err == nil {
					m.zones[r.ID] = zone
				}
				for _, rod := range r.Rods {
					m.Names[rod.ID.String()] = m.Names[rod.Person.String()]
				}
			case journal.Beat:
				shape := r.On(journal.Date{Year: 9999})
				m.Names[r.ID.String()] = shape.Name
				for _, rev := range r.Revisions {
					for _, p := range rev.Shape.Pools {
						m.Names[p.ID.String()] = words.PoolName(p.Name)
					}
				}
			default:
				m.Names[e.ID.String()] = words.RecordDetail(e)
			}
		}
	}
	return nil
}

// MergeWay is how a record that both copies changed is settled.
type MergeWay = merge.Choice

// MergeBoth keeps the changes of both sides.
const MergeBoth = merge.Both

// MergeWays lists the ways.
var MergeWays = [3]MergeWay{merge.Ours, merge.Theirs, merge.Both}

// MergeChoice is a record that both copies changed, and how it is settled by now.
type MergeChoice struct {
	Name             string
	OursAt, TheirsAt time.Time
	Way              MergeWay
	CanBoth          bool
}

// Choices lists them.
func (m *Merging) Choices() []MergeChoice {
	out := make([]MergeChoice, 0, len(m.Plan.Conflicts))
	for _, c := range m.Plan.Conflicts {
		e := c.Ours
		if e.Gone {
			e = c.Theirs
		}
		out = append(out, MergeChoice{words.RecordName(e, m.Evenings[c.Ref.Trip]), c.OursAt, c.TheirsAt, c.Choice, c.Joined != nil})
	}
	return out
}

// Empty reports whether there is nothing to take over and nothing to decide.
func (m *Merging) Empty() bool { return m.Plan.Empty() }

// Lines says what the merge would do, with what may be there twice.
func (m *Merging) Lines() []string {
	out := words.Sentences(words.MergeLines(m.Plan))
	const most = 3
	for i, a := range m.Plan.Alike {
		if i == most {
			out = append(out, words.AlikeMore(len(m.Plan.Alike)-most))
			break
		}
		out = append(out, words.AlikeLine(a))
	}
	return out
}

// Rows lists the members in which the sides of the i-th choice differ, with what each says.
func (m *Merging) Rows(i int, p words.Prefs) []words.SideBySide {
	c := m.Plan.Conflicts[i]
	zone := m.zones[c.Ref.Trip]
	if c.Ref.Kind == journal.KindTrip {
		zone = m.zones[c.Ref.ID]
	}
	return words.ConflictRows(c, m.Names, zone, p)
}

// Choose settles the i-th choice; what cannot be is refused.
func (m *Merging) Choose(i int, w MergeWay) error { return m.Plan.Choose(m.Plan.Conflicts[i].Ref, w) }

// Accept carries a merge out as one change, and brings over the originals of photographs that
// the other copy keeps. If the journal was changed since it was looked at, nothing happens and the
// error is of kind Conflict.
func (k *Keep) Accept(m *Merging) (err error) {
	k.d.act(func() { _, err = m.Plan.Accept(k.d.j) })
	if err == nil {
		_, err = album.Beside(m.Path).CopyTo(album.Beside(k.Path()))
	}
	return err
}

// Contradictions names what the nights that a merge touched say twice now.
func (k *Keep) Contradictions(m *Merging) (out []string) {
	for _, trip := range m.Plan.Nights() {
		faults, err := k.d.j.NightFaults(trip)
		if err != nil {
			continue // the night was removed
		}
		for _, f := range faults {
			out = append(out, words.Contradiction(m.Evenings[trip], f))
		}
	}
	return out
}
