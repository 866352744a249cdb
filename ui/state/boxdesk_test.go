package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// fill fills in a card of the room of flies and commits it.
func (k *kit) fill(c *Card, err error, pairs ...string) {
	k.t.Helper()
	require.NoError(k.t, err)
	for i := 0; i < len(pairs); i += 2 {
		c.Set(pairs[i], pairs[i+1])
	}
	err = c.Commit()
	for _, f := range c.Fields() {
		require.Empty(k.t, f.Error, f.ID)
	}
	require.NoError(k.t, err)
}

func (k *kit) box(name, use string) journal.ID {
	c, err := k.d.BoxCard(journal.ID{})
	k.fill(c, err, "name", name, "use", use)
	return c.Ref().ID
}

// lengths are those of a group's flies, in inches.
func lengths(g FlyGroup) (out []float64) {
	for _, r := range g.Rows {
		l, _ := r.Dress.Length.Get()
		out = append(out, l.Number(units.Inch))
	}
	return out
}

// Ensure that boxes stand by their use with their flies in the order chosen, then the
// flies in no box, then the retired ones.
func TestBoxGroups(t *testing.T) {
	k := newKit(t)
	b := k.d.Boxes()
	night, dusk := k.box("Night box", "night"), k.box("Small", "day and dusk")
	for _, f := range [][]string{
		{"length", "2 in", "silhouette", "full", "tone", "dark", "box", night.String()},
		{"length", "1 in", "silhouette", "slim", "tone", "light", "box", night.String()},
		{"silhouette", "medium", "tone", "medium", "box", night.String()},
		{"length", "1/2 in", "box", dusk.String()},
	} {
		c, err := k.d.FlyCard(journal.ID{})
		k.fill(c, err, f...)
	}
	gs := b.Groups()
	require.Len(t, gs, 3)
	assert.Equal(t, []string{"Small", "Night box", ""}, []string{gs[0].Box.Name, gs[1].Box.Name, gs[2].Box.Name}, "by use")
	assert.Equal(t, "loose", gs[2].Kind)
	assert.Equal(t, []float64{2, 1, 0}, lengths(gs[1]), "as they lie in the box")
	assert.Equal(t, []float64{0.5, 0.75, 1.5}, lengths(gs[2]), "those in none by length")
	for order, want := range map[string][]float64{"length": {1, 2, 0}, "silhouette": {1, 0, 2}, "tone": {2, 0, 1}} {
		b.SetOrder(order)
		assert.Equal(t, want, lengths(b.Groups()[1]), order)
	}
	b.SetOrder("price")
	assert.Contains(t, FlyOrders, b.Order(), "an order there is not is ignored")

	b.SetOrder("box")
	big := b.Groups()[1].Rows[0].Fly
	b.Pick(big.Ref())
	require.NoError(t, b.Shift(1))
	assert.Equal(t, []float64{1, 2, 0}, lengths(b.Groups()[1]))
	require.NoError(t, b.Shift(1))
	require.NoError(t, b.Shift(1), "at the end nothing happens")
	assert.Equal(t, []float64{1, 0, 2}, lengths(b.Groups()[1]))
	require.NoError(t, b.Retire())
	gs = b.Groups()
	assert.Equal(t, "retired", gs[3].Kind)
	assert.Equal(t, []float64{2}, lengths(gs[3]))
	assert.Len(t, gs[1].Rows, 2)
	require.NoError(t, b.Retire(), "the same again brings it back")
	assert.Equal(t, []float64{1, 0, 2}, lengths(b.Groups()[1]), "to its place")
}

// Ensure that a fly can be copied beside itself and removed from its boxes, that keys go
// through all there is, and that each is one change.
func TestBoxActs(t *testing.T) {
	k := newKit(t)
	b := k.d.Boxes()
	box := k.box("Night box", "night")
	b.Pick(journal.Ref{Kind: journal.KindBox, ID: box})
	c, err := k.d.FlyCard(journal.ID{})
	k.fill(c, err, "length", "25 mm", "tone", "dark")
	fly, ok := b.Fly()
	require.True(t, ok, "what was added is picked out")
	require.Len(t, b.Groups()[0].Rows, 1, "a new fly goes into the box picked out")

	require.NoError(t, b.Copy())
	like, ok := b.Fly()
	require.True(t, ok)
	assert.NotEqual(t, fly.ID, like.ID)
	assert.Equal(t, fly.Dresses, like.Dresses)
	require.Len(t, b.Groups()[0].Rows, 2)
	assert.Equal(t, like.ID, b.Groups()[0].Rows[1].Fly.ID)
	require.NoError(t, k.d.Undo())
	assert.Len(t, b.Groups()[0].Rows, 1)
	assert.Zero(t, b.Picked(), "what is gone is not picked out")
	require.NoError(t, k.d.Redo())

	b.Pick(like.Ref())
	require.NoError(t, b.Remove())
	assert.Len(t, b.Groups()[0].Rows, 1)
	box1, err := journal.One[journal.Box](k.j, box)
	require.NoError(t, err)
	assert.NotContains(t, box1.Flies, like.ID)

	require.NoError(t, b.UsualRules())
	assert.Len(t, b.Rules(), 6)
	for _, r := range b.Rules() {
		assert.True(t, r.Practice, "marked as common practice")
	}
	require.NoError(t, b.UsualRules())
	assert.Len(t, b.Rules(), 6, "not twice")
	seen := 0
	b.Pick(journal.Ref{})
	for b.Next(1) {
		seen++
	}
	assert.Equal(t, 1+4+6, seen, "a box, four flies, six rules")
	for b.Next(-1) {
		seen--
	}
	assert.Equal(t, 1, seen)
}

// Ensure that a fly nights have known cannot be removed, and that changing it asks what
// that means: corrected, every night has it so; changed from an evening on, nights before
// keep what was true then.
func TestFlyThatNightsKnow(t *testing.T) {
	k := newKit(t)
	k.night(false)
	k.add(journal.KindRun, "when", "22:30", "until", "23:30", "pool", "Alder Pool")
	k.add(journal.KindRig, "when", "22:30", "flies.0", k.slim.ID.String())
	b := k.d.Boxes()
	b.Pick(k.slim.Ref())
	err := b.Remove()
	require.Error(t, err)
	_, do := words.Explain(err)
	assert.Contains(t, do, "etire", "says what can be done instead")

	inches := func() float64 {
		l, _ := k.d.Night().Rods[0].Rigs[0].Flies[0].Dress.Length.Get()
		return l.Number(units.Inch)
	}
	require.NoError(t, b.Longer(1))
	c := k.d.Card()
	require.NotNil(t, c, "a fly that was fished asks")
	assert.Equal(t, "⅞ in", field1(t, c, "length").Value)
	require.ErrorIs(t, c.Commit(), ErrUnfinished)
	assert.NotEmpty(t, field1(t, c, "means").Error)
	assert.InDelta(t, 0.75, inches(), 1e-9)
	c.Set("means", "from")
	c.Set("from", "5 July 2026")
	require.NoError(t, c.Commit())
	assert.InDelta(t, 0.75, inches(), 1e-9, "the night before keeps what was true")
	f, err := journal.One[journal.Fly](k.j, k.slim.ID)
	require.NoError(t, err)
	require.Len(t, f.Dresses, 2)
	assert.Equal(t, journal.Slim, f.Dresses[1].Silhouette.Or(""), "the rest goes along")

	c, err = k.d.FlyCard(k.long.ID) // no night knows it
	require.NoError(t, err)
	c.Set("length", "2 in")
	_, asks := c.Field("means")
	assert.False(t, asks)
	require.NoError(t, c.Commit())

	require.NoError(t, k.d.Undo())
	require.NoError(t, k.d.Undo())
	c, err = k.d.FlyCard(k.slim.ID)
	require.NoError(t, err)
	c.Set("length", "1 in")
	c.Set("means", "correct")
	_, from := c.Field("from")
	assert.False(t, from, "a correction has no date")
	require.NoError(t, c.Commit())
	assert.InDelta(t, 1, inches(), 1e-9, "corrected on every night")
	f, err = journal.One[journal.Fly](k.j, k.slim.ID)
	require.NoError(t, err)
	assert.Len(t, f.Dresses, 1)

	c, err = k.d.FlyCard(k.slim.ID)
	require.NoError(t, err)
	c.Set("label", "old faithful")
	_, asks = c.Field("means")
	assert.False(t, asks, "a word for it changes no fly")
	require.NoError(t, c.Commit())
}

// Ensure that drawing a fly out shows and stores steps that people tie, at once where no
// night knows the fly.
func TestDrawAFlyOut(t *testing.T) {
	k := newKit(t)
	b := k.d.Boxes()
	b.Drag(k.long.ID, units.Length{M: 0.0440, Unit: units.Inch})
	id, l, ok := b.Dragged()
	require.True(t, ok)
	assert.Equal(t, k.long.ID, id)
	assert.Equal(t, "1¾ in", l.String())
	f, err := journal.One[journal.Fly](k.j, k.long.ID)
	require.NoError(t, err)
	assert.Equal(t, k.long, f, "not stored while drawn")
	b.PutBack()
	require.NoError(t, b.Drop(), "nothing is held")
	b.Drag(k.long.ID, units.Length{M: 0.0440})
	require.NoError(t, b.Drop())
	f, err = journal.One[journal.Fly](k.j, k.long.ID)
	require.NoError(t, err)
	assert.Equal(t, journal.Of(units.LengthOf(1.75, units.Inch)), f.Dresses[0].Length)
	did, _ := k.j.CanUndo()
	assert.Equal(t, "amend fly", did)
	b.Drag(k.long.ID, units.LengthOf(1.74, units.Inch))
	require.NoError(t, b.Drop())
	require.NoError(t, k.d.Undo())
	f, _ = journal.One[journal.Fly](k.j, k.long.ID)
	assert.Equal(t, k.long, f, "a drag to where it was is no change")
}

// Ensure that steps up and down meet, whatever the unit, and stay within what is tied.
func TestFlySteps(t *testing.T) {
	k := newKit(t)
	b := k.d.Boxes()
	for _, unit := range []units.LengthUnit{units.Inch, units.Millimetre} {
		k.d.SetPrefs(words.Prefs{Fly: unit})
		rapid.Check(t, func(t *rapid.T) {
			l := b.Tied(units.Length{M: units.Metres(rapid.Float64Range(-0.1, 0.5).Draw(t, "m"))})
			if !(l.M > 0 && l.M <= longestFly+1e-9) || l.Unit != unit {
				t.Fatalf("%v", l)
			}
			if again := b.Tied(l); again != l {
				t.Fatalf("%v becomes %v", l, again)
			}
			if up := b.step(l, 1); l.M < 0.29 && b.step(up, -1) != l {
				t.Fatalf("%v up %v down %v", l, up, b.step(up, -1))
			}
		})
	}
}

// Ensure that the hours and fish of a fly are counted night by night, and anew after a
// change.
func TestFlyRecordsAreCounted(t *testing.T) {
	k := newKit(t)
	b := k.d.Boxes()
	k.night(false)
	k.add(journal.KindRun, "when", "22:30", "until", "23:00", "pool", "Alder Pool")
	k.add(journal.KindRig, "when", "22:30", "flies.0", k.slim.ID.String())
	hours := func() time.Duration { return b.sum(k.slim.ID).Total().Water }
	assert.Zero(t, hours())
	done, all := b.Counted()
	assert.Equal(t, []int{0, 1}, []int{done, all})
	assert.True(t, b.Count(0))
	assert.False(t, b.Count(8))
	assert.Equal(t, 30*time.Minute, hours())
	k.add(journal.KindRun, "when", "23:10", "until", "23:20", "pool", "Long Flat")
	assert.Zero(t, hours(), "the night is to be read again")
	b.Count(8)
	assert.Equal(t, 40*time.Minute, hours())
	for _, g := range b.Groups() {
		for _, r := range g.Rows {
			if r.Fly.ID == k.slim.ID {
				assert.Equal(t, 40*time.Minute, r.Record.Total().Water)
			}
		}
	}
}

// Ensure that a rule is stored as its card says it.
func TestRuleCard(t *testing.T) {
	k := newKit(t)
	c, err := k.d.RuleCard(journal.ID{})
	k.fill(c, err, "words", "Slim and dark on the point when it is black", "light_lux", "0.05", "dark_lux", "0.001 lx",
		"min", "1 in", "max", "2½ in", "position", "0", "silhouettes.slim", Yes, "tones.dark", Yes, "tones.medium", Yes)
	got, err := journal.One[journal.HouseRule](k.j, c.Ref().ID)
	require.NoError(t, err)
	assert.Equal(t, journal.HouseRule{ID: got.ID, Words: "Slim and dark on the point when it is black",
		Light: journal.Of(units.Lux(0.05)), Dark: journal.Of(units.Lux(0.001)), Min: journal.Of(units.LengthOf(1, units.Inch)), Max: journal.Of(units.LengthOf(2.5, units.Inch)),
		Position: journal.Of(0), Silhouettes: []journal.Silhouette{journal.Slim}, Tones: []journal.Tone{journal.DarkTone, journal.MediumTone}}, got)
	c, err = k.d.RuleCard(got.ID)
	k.fill(c, err, "at_grey", "after", "light_lux", "", "dark_lux", "", "tones.dark", "")
	got, err = journal.One[journal.HouseRule](k.j, got.ID)
	require.NoError(t, err)
	assert.Equal(t, "after", got.AtGrey)
	assert.Equal(t, []journal.Tone{journal.MediumTone}, got.Tones)
	c, err = k.d.RuleCard(journal.ID{})
	require.NoError(t, err)
	c.Set("light_lux", "dark")
	assert.Contains(t, field1(t, c, "light_lux").Error, "0.3 lx")
	require.ErrorIs(t, c.Commit(), ErrUnfinished)
}
