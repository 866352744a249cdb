package state

import (
	"fmt"
	"slices"
	"strings"

	"gloamline/journal"
	"gloamline/ui/words"
)

// unnoted is the value of a place on the leader whose fly nobody noted.
const unnoted = "?"

// rigFields are those of what hangs on the rod: flies from the point up, line and
// leader. A new rig starts as what the rod fishes at the time, so that a change of
// one fly is one touch.
func (c *Card) rigFields(r *journal.Rig) {
	c.headFields(&r.Head, true, true)
	before := func() *journal.Rig {
		if rod := c.rodNight(r.Rod); rod != nil {
			if s := rod.RigAt(c.at(&r.Head)); s != nil {
				return &s.Rig
			}
		}
		return nil
	}
	for i := range journal.MaxFlies {
		f := c.add(c.mountField(r, i))
		f.fill = func() string {
			if b := before(); b != nil && i < len(b.Flies) {
				return mountText(b.Flies[i])
			}
			return ""
		}
	}
	surface := c.add(tickField("surface", "A surface lure, alone", &r.Surface))
	surface.fill = func() string {
		if b := before(); b != nil && b.Surface {
			return Yes
		}
		return ""
	}
	c.lineFields(r, before)
	leader := c.add(lengthField("leader", "Leader", "9 ft", &r.Leader, typed(c.d.prefs).Leader)).more()
	leader.fill = func() string {
		if b := before(); b != nil {
			if l, ok := b.Leader.Get(); ok {
				return l.String()
			}
		}
		return ""
	}
	c.noteField(&r.Head)
}

// mountField is one place on the leader.
func (c *Card) mountField(r *journal.Rig, i int) *field {
	f := &field{Field: Field{ID: fmt.Sprintf("flies.%d", i), Label: upperFirst(words.PositionName(i)), Kind: Combo, More: i > 1,
		Hint: "1 in slim dark, or one from the list"}}
	f.text = func() string {
		if i < len(r.Flies) {
			return mountText(r.Flies[i])
		}
		return ""
	}
	f.choices = func() []Choice {
		empty := "no fly here"
		if i == 0 {
			empty = words.NotKnown()
		}
		out := []Choice{{"", empty}, {unnoted, "a fly, not noted which"}}
		var stands journal.ID
		if i < len(r.Flies) {
			stands = r.Flies[i].Fly.Or(journal.ID{})
		}
		return append(out, c.flies(stands)...)
	}
	f.put = func(s string) error {
		if i == 0 {
			r.Flies = nil // the first place starts the leader anew
		}
		s = strings.TrimSpace(s)
		if s == "" {
			return nil
		}
		m := journal.Mounted{Position: i}
		if s != unnoted {
			var err error
			if m.Fly, err = c.flyOf(s, f.ID); err != nil {
				return err
			}
		}
		flies := slices.Clone(r.Flies)
		for len(flies) < i { // a place left empty below another holds a fly all the same
			flies = append(flies, journal.Mounted{Position: len(flies)})
		}
		r.Flies = append(flies, m)
		return nil
	}
	f.read = func() string { return c.readNew(f.Value) }
	return f
}

func mountText(m journal.Mounted) string {
	if id, ok := m.Fly.Get(); ok {
		return id.String()
	}
	return unnoted
}

// wayFields are those of how the fly is fished.
func (c *Card) wayFields(w *journal.Way) {
	c.headFields(&w.Head, true, true)
	c.add(pickField("speed", "Speed", &w.Speed, journal.Speeds, ""))
	c.add(pickField("depth", "Depth", &w.Depth, journal.Depths, ""))
	c.noteField(&w.Head)
}
