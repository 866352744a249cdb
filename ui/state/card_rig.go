package state

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gloamline/geo"
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
			if m.Fly, err = c.flyOf(s); err != nil {
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

// lineFields are the line and, for one that sinks, how fast.
func (c *Card) lineFields(r *journal.Rig, before func() *journal.Rig) {
	line := &field{Field: Field{ID: "line", Label: "Line", Kind: Pick}}
	line.text = func() string {
		if r.Line.IsNone() {
			return noneWord
		}
		return string(r.Line.Or(journal.Line{}).Kind)
	}
	kind := journal.Field[journal.LineKind]{}
	pick := pickField("line", "Line", &kind, journal.LineKinds, "")
	line.choices = pick.choices
	line.put = func(s string) error {
		if err := pick.put(s); err != nil {
			return err
		}
		old := r.Line.Or(journal.Line{})
		r.Line = journal.Field[journal.Line]{}
		switch k, ok := kind.Get(); {
		case kind.IsNone():
			r.Line = journal.None[journal.Line]()
		case ok && k == old.Kind:
			r.Line = journal.Of(old)
		case ok:
			r.Line = journal.Of(journal.Line{Kind: k})
		}
		return nil
	}
	line.fill = func() string {
		if b := before(); b != nil {
			return string(b.Line.Or(journal.Line{}).Kind)
		}
		return ""
	}
	c.add(line)

	var sink journal.Field[float64]
	speed := textField("sink_ips", "Sinks, inches a second", "6", &sink, func(s string) (float64, error) {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			return 0, wrongf("“%s” is not a number of inches a second", s)
		}
		if !(v >= 0 && v <= 20) {
			return 0, wrongf("a line sinks between 0 and 20 inches a second")
		}
		return v, nil
	}, func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) })
	read := speed.text
	speed.text = func() string {
		sink = r.Line.Or(journal.Line{}).Sink
		return read()
	}
	parse := speed.put
	speed.put = func(s string) error {
		if err := parse(s); err != nil {
			return err
		}
		if l, ok := r.Line.Get(); ok {
			l.Sink = sink
			r.Line = journal.Of(l)
		}
		return nil
	}
	speed.hidden = func() bool {
		k := r.Line.Or(journal.Line{}).Kind
		return k != journal.SinkTip && k != journal.Sinking
	}
	speed.fill = func() string {
		if b := before(); b != nil && b.Line.Or(journal.Line{}).Kind == r.Line.Or(journal.Line{}).Kind {
			if v, ok := b.Line.Or(journal.Line{}).Sink.Get(); ok {
				return strconv.FormatFloat(v, 'f', -1, 64)
			}
		}
		return ""
	}
	c.add(speed).more()
}

func mountText(m journal.Mounted) string {
	if id, ok := m.Fly.Get(); ok {
		return id.String()
	}
	return unnoted
}

// flies are the choices among the flies there are: those not retired, and the one
// that stands.
func (c *Card) flies(stands journal.ID) []Choice {
	evening := c.d.night.Log.Trip.Evening
	var out []Choice
	seen := map[string]int{}
	for _, f := range c.stock {
		if !f.Retired.IsZero() && !evening.Before(f.Retired) && f.ID != stands {
			continue
		}
		label := PrintDress(f.On(evening))
		if f.Label != "" {
			label += " (" + f.Label + ")"
		}
		if seen[label]++; seen[label] > 1 {
			label += fmt.Sprintf(" no. %d", seen[label])
		}
		out = append(out, Choice{f.ID.String(), label})
	}
	slices.SortStableFunc(out, func(a, b Choice) int { return strings.Compare(a.Label, b.Label) })
	return out
}

// flyOf reads a fly: one that there is by its identity, its label or its
// description, else a new one as described.
func (c *Card) flyOf(s string) (journal.Field[journal.ID], error) {
	if strings.EqualFold(s, noneWord) {
		return journal.None[journal.ID](), nil
	}
	s = pickValue(c.flies(journal.ID{}), s)
	if id, err := geo.ParseID(s); err == nil {
		if slices.ContainsFunc(c.stock, func(f journal.Fly) bool { return f.ID == id }) {
			return journal.Of(id), nil
		}
	}
	dress, err := ParseDress(s, typed(c.d.prefs).Fly)
	if err != nil {
		return journal.Field[journal.ID]{}, err
	}
	evening := c.d.night.Log.Trip.Evening
	for _, f := range slices.Concat(c.stock, c.news) {
		if (f.Retired.IsZero() || evening.Before(f.Retired)) && sameDress(f.On(evening), dress) {
			return journal.Of(f.ID), nil
		}
	}
	key := PrintDress(dress)
	if c.coined[key].IsZero() {
		c.coined[key] = journal.NewID()
	}
	c.news = append(c.news, journal.Fly{ID: c.coined[key], Dresses: []journal.Dress{dress}})
	return journal.Of(c.coined[key]), nil
}

// readNew says that a text makes a new fly.
func (c *Card) readNew(text string) string {
	dress, err := ParseDress(text, typed(c.d.prefs).Fly)
	if err != nil {
		return ""
	}
	for _, f := range c.news {
		if sameDress(f.Dresses[0], dress) {
			return "a new fly: " + PrintDress(dress)
		}
	}
	return ""
}

// wayFields are those of how the fly is fished.
func (c *Card) wayFields(w *journal.Way) {
	c.headFields(&w.Head, true, true)
	c.add(pickField("speed", "Speed", &w.Speed, journal.Speeds, ""))
	c.add(pickField("depth", "Depth", &w.Depth, journal.Depths, ""))
	c.noteField(&w.Head)
}
