package state

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// fishFields are those of a contact, from a follow to a fish landed.
func (c *Card) fishFields(k *journal.Contact) {
	c.headFields(&k.Head, true, true)
	touch := journal.Of(k.Touch)
	what := c.add(pickField("touch", "What it did", &touch, journal.Touches, ""))
	what.text = func() string { return string(k.Touch) }
	what.choices = func() []Choice {
		var out []Choice
		for _, t := range journal.Touches {
			out = append(out, Choice{string(t), labelOf(t)})
		}
		return out
	}
	pick := what.put
	what.put = func(s string) error {
		if strings.TrimSpace(s) == "" {
			return wrongf("say what the fish did")
		}
		err := pick(s)
		k.Touch = touch.Or("")
		return err
	}

	pool := c.fishPool(k)
	byTime := pool.fill
	pool.fill = func() string {
		if id, ok := c.poolUnder(c.find("spot").Value); ok {
			return id.String()
		}
		return byTime()
	}
	c.add(c.takenField(k))

	species := c.add(pickField("species", "Species", &k.Species, journal.AllSpecies, ""))
	species.fill = func() string { return string(journal.SeaTrout) }
	weight := c.add(textField("weight", "Weight", "1 lb 10 oz", &k.Weight,
		func(s string) (units.Weight, error) { return units.ParseWeight(s, typed(c.d.prefs).Weight) }, units.Weight.String))
	weight.doubt = func() string {
		w, ok := k.Weight.Get()
		trout := !k.Species.Known() || k.Species.Or("") == journal.SeaTrout
		if !ok || !trout || w.G <= heavySeaTrout || w.G >= refusedWeight {
			return ""
		}
		return words.VeryHeavy(w)
	}
	judged := c.add(tickField("estimated", "Weight judged, not weighed", &k.Estimated))
	length := c.add(lengthField("length", "Length, snout to fork", "42 cm", &k.Length, typed(c.d.prefs).Fish))
	for _, f := range []*field{weight, judged, length} { // of a fish that was never on, hardly anybody knows
		f.seldom = func() bool { return k.Touch != journal.Landed && k.Touch != journal.Lost }
	}

	landed := func() bool { return k.Touch == journal.Landed }
	fate := c.add(pickField("fate", "Returned or kept", &k.Fate, journal.Fates, ""))
	fate.hidden = func() bool { return !landed() }
	c.add(pickText("class", "Age class", &k.Class, journal.Classes)).more()
	c.add(pickText("sex", "Sex", &k.Sex, journal.Sexes)).more()
	c.add(yesNoField("lice", "Sea lice", &k.Lice)).more()
	c.add(pickField("hook_place", "Where hooked", &k.HookPlace, journal.HookPlaces, "")).more()
	c.add(textField("air_seconds", "Out of the water, seconds", "15", &k.AirTime, parseSeconds, strconv.Itoa)).more()
	c.add(textField("tag", "Tag number", "or none", &k.Tag, func(s string) (string, error) { return s, nil }, func(s string) string { return s })).more()
	c.add(pickText("part", "Part of the pool", &k.Part, journal.Parts)).more()
	c.add(c.inWords(spotField("spot", "Place", &k.Spot), func() journal.ID { return c.poolOf(k) }, true))
	c.noteField(&k.Head)

	plain := c.batch
	c.batch = func() journal.Batch {
		if !landed() {
			k.Fate = journal.Field[journal.Fate]{} // only a landed fish has one
		}
		return plain()
	}
}

// unknownPool is the value of a pool that is known to be forgotten, as against one that
// was not thought of.
const unknownPool = "unknown"

// fishPool is the pool of a fish. A new one that falls into no run is not stored until
// the pool is chosen, or said to be unknown: else it would be missing from every count by
// pool unnoticed.
func (c *Card) fishPool(k *journal.Contact) *field {
	get, set := fieldID(&k.Pool)
	f := c.poolField(&k.Head, words.NotChosen(), true, get, set)
	lacking := func() bool { return c.isNew && strings.TrimSpace(f.Value) == "" }
	text, choices, put := f.text, f.choices, f.put
	f.text = func() string {
		if c.isNew || k.Pool.Known() {
			return text()
		}
		return unknownPool
	}
	f.choices = func() []Choice {
		out := choices()
		return append(out[:1:1], append([]Choice{{unknownPool, words.UnknownPool()}}, out[1:]...)...)
	}
	f.put = func(s string) error {
		if strings.EqualFold(strings.TrimSpace(s), unknownPool) {
			s = ""
		}
		return put(s)
	}
	f.read = func() string {
		if lacking() && c.runAt(k.Rod, c.at(&k.Head)) == nil {
			return words.NoPoolNote()
		}
		return ""
	}
	f.want = func() string {
		if lacking() {
			return words.NoPoolChosen()
		}
		return ""
	}
	return f
}

// heavySeaTrout is the weight over which a sea trout is asked about, 30 lb: our own
// rule, meant to catch ounces typed as pounds. From refusedWeight on the journal itself
// refuses a fish.
const (
	heavySeaTrout units.Grams = 13608
	refusedWeight units.Grams = 60000
)

// besidePool is how far from the edge of a pool a fish still counts as in it: a
// click on the sketch is not finer.
const besidePool units.Metres = 10

// poolUnder returns the pool at a position as it stands on the card.
func (c *Card) poolUnder(text string) (journal.ID, bool) {
	p, err := parsePlace(text)
	if err != nil {
		return journal.ID{}, false
	}
	spot, ok := c.d.night.Beat.Layout().Snap(p, besidePool)
	return spot.Pool, ok
}

// poolOf is the pool of a contact as drafted: noted, else that of its run.
func (c *Card) poolOf(k *journal.Contact) journal.ID {
	if id, ok := k.Pool.Get(); ok {
		return id
	}
	if run := c.runAt(k.Rod, c.at(&k.Head)); run != nil {
		return run.Run.Pool
	}
	return journal.ID{}
}

func parseSeconds(s string) (int, error) {
	for _, unit := range []string{"seconds", "secs", "sec", "s"} {
		if t, ok := strings.CutSuffix(s, unit); ok {
			s = strings.TrimSpace(t)
			break
		}
	}
	n, err := strconv.Atoi(s)
	if err != nil {
		return 0, wrongf("“%s” is not a number of seconds", s)
	}
	return n, nil
}

// takenField is the fly a fish came to: one on the leader by its place, another
// one, or a place whose fly was not noted. Its value is "place:fly", either left out
// where it is not known.
func (c *Card) takenField(k *journal.Contact) *field {
	f := &field{Field: Field{ID: "fly", Label: "Fly", Kind: Combo, Hint: "point, dropper, or 1 in slim dark"}}
	mounted := func() []timeline.FlyOn {
		rod := c.rodNight(k.Rod)
		if rod == nil {
			return nil
		}
		if s := rod.RigAt(c.at(&k.Head)); s != nil {
			return s.Flies
		}
		return nil
	}
	value := func(m timeline.FlyOn) string { return fmt.Sprintf("%d:%s", m.Position, m.Fly) }
	f.text = func() string {
		fly := k.Fly.Or(journal.ID{}).String()
		if k.Fly.IsNone() {
			fly = noneWord
		}
		if p, ok := k.Position.Get(); ok {
			return fmt.Sprintf("%d:%s", p, fly)
		}
		return fly
	}
	f.choices = func() []Choice {
		out := []Choice{{"", words.NotKnown()}}
		for _, m := range mounted() {
			out = append(out, Choice{value(m), words.PositionName(m.Position) + ": " + c.nameOf(m.Fly)})
		}
		if v := f.start; v != "" && strings.Contains(v, ":") && !slices.ContainsFunc(out, func(o Choice) bool { return o.Value == v }) {
			p, fly, _ := strings.Cut(v, ":")
			id, _ := geo.ParseID(fly)
			out = append(out, Choice{v, words.PositionName(number(p)) + ": " + c.nameOf(id)})
		}
		return append(out, c.flies(k.Fly.Or(journal.ID{}))...)
	}
	f.fill = func() string {
		if up := mounted(); len(up) == 1 && !up[0].Fly.IsZero() {
			return value(up[0])
		}
		return ""
	}
	f.put = func(s string) (err error) {
		k.Fly, k.Position = journal.Field[journal.ID]{}, journal.Field[int]{}
		s = strings.TrimSpace(s)
		if s == "" {
			return nil
		}
		for _, m := range mounted() {
			if atPosition(s, m.Position) {
				s = value(m)
			}
		}
		if p, fly, ok := strings.Cut(s, ":"); ok && len(p) == 1 && p >= "0" && p <= "9" {
			k.Position = journal.Of(number(p))
			if s = fly; s == "" {
				return nil
			}
		}
		for i := range journal.MaxFlies {
			if atPosition(s, i) {
				k.Position = journal.Of(i)
				return nil
			}
		}
		k.Fly, err = c.flyOf(s, f.ID)
		return err
	}
	f.read = func() string { return c.readNew(f.Value) }
	return f
}

// atPosition reports whether a text names a place on the leader.
func atPosition(s string, i int) bool {
	return strings.EqualFold(s, words.PositionName(i)) || i == 1 && strings.EqualFold(s, "first dropper")
}

// nameOf describes a fly that there is.
func (c *Card) nameOf(id journal.ID) string {
	for _, f := range c.stock {
		if f.ID == id {
			return DressLabel(f.On(c.d.night.Log.Trip.Evening))
		}
	}
	return "not noted"
}
