package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// kinds lists the sorts of gaps of the open night.
func (k *kit) gaps() (out []GapKind) {
	for _, g := range k.d.Gaps() {
		out = append(out, g.Kind)
	}
	return out
}

func (k *kit) gap(kind GapKind) Gap {
	for _, g := range k.d.Gaps() {
		if g.Kind == kind {
			return g
		}
	}
	k.t.Fatalf("no gap %s", kind)
	return Gap{}
}

// Ensure that what a night lacks is told by what it costs, and that each gap opens a card
// that has the field, in which filling it closes the gap and no other.
func TestGapsAreFilled(t *testing.T) {
	k := newKit(t)
	k.night(true)
	assert.Empty(t, k.gaps(), "an empty night asks for nothing")
	k.add(journal.KindNote, "when", "22:00", "note", "warm evening")
	assert.Empty(t, k.gaps(), "nor does one on which nobody fished")
	k.add(journal.KindRun, "rod", "Anna", "when", "22:35", "pool", "Alder Pool")
	k.fish(journal.Landed, "rod", "Anna", "when", "22:52")
	k.fish(journal.Boil, "rod", "Colm", "when", "23:52")
	s := k.d.NewScribble()
	s.Set("zorble the grumph 2310")
	require.NoError(t, s.Commit())
	require.Equal(t, []GapKind{GapUntil, GapRig, GapPool, GapFly, GapSize, GapFate, GapTemp, GapCloud, GapEnd, GapUnread}, k.gaps())
	var says []string
	for _, g := range k.d.Gaps() {
		says = append(says, g.Says)
	}
	assert.Equal(t, []string{
		"22:35 Alder Pool, Anna, first run: until when?",
		"Anna: which flies?",
		"23:52 fish 2C, boil: in which pool?",
		"22:52 fish 1A, landed: which fly?",
		"22:52 fish 1A, landed: how heavy, or how long?",
		"22:52 fish 1A, landed: returned or kept?",
		"how warm was the water?",
		"how much cloud was there?",
		"when did fishing end?",
		"23:10 “zorble the grumph 2310”: too little of it could be read",
	}, says)

	for kind, fill := range map[GapKind]string{
		GapUntil: "23:10", GapRig: "3/4 slim dark", GapPool: "Long Flat", GapFly: "½ full pale", GapSize: "1 lb 2 oz", GapFate: "returned",
		GapTemp: "14", GapCloud: "3", GapEnd: "01:10",
	} {
		before := k.gaps()
		g := k.gap(kind)
		c, err := k.d.GapCard(g)
		require.NoError(t, err, kind)
		f, ok := c.Field(g.Field)
		require.True(t, ok, "%s: no field %s", kind, g.Field)
		if kind != GapEnd {
			require.Empty(t, f.Error)
		}
		k.write(c, nil, g.Field, fill)
		closes := 1
		if kind == GapRig {
			closes = 2 // it is the only fly on the leader: the fish came to it
		}
		require.Len(t, k.gaps(), len(before)-closes, kind)
		require.NotContains(t, k.gaps(), kind)
		require.NoError(t, k.d.Undo())
		require.Equal(t, before, k.gaps(), "undo opens it again")
	}
	c, err := k.d.GapCard(k.gap(GapRig))
	require.NoError(t, err)
	assert.Equal(t, k.rod(0).ID.String(), field1(t, c, "rod").Value, "the rod that lacks it")
}

// Ensure that “not known” closes a gap for good and changes nothing else, that undo opens
// it again, and that it is told apart from “none”.
func TestGapNotKnown(t *testing.T) {
	k := newKit(t)
	k.night(false)
	k.add(journal.KindRun, "when", "22:35", "until", "23:10", "pool", "Alder Pool")
	k.add(journal.KindRig, "when", "22:35", "flies.0", "3/4 slim dark", "flies.1", "½ full pale")
	fish := k.fish(journal.Landed, "when", "22:52", "weight", "2 lb", "fate", "returned")
	other := k.fish(journal.Lost, "when", "22:58")
	require.Equal(t, []GapKind{GapFly, GapFly, GapTemp, GapCloud, GapEnd}, k.gaps())
	require.NoError(t, k.d.NotKnown(k.gap(GapFly)))
	require.Equal(t, []GapKind{GapFly, GapTemp, GapCloud, GapEnd}, k.gaps())
	assert.Equal(t, other.Ref(), k.gap(GapFly).Ref, "the other fish is still asked about")
	r, err := k.j.Get(fish.Ref())
	require.NoError(t, err)
	assert.Equal(t, fish, r, "the fish is as it was: its fly unknown, not none")
	require.NoError(t, k.d.NotKnown(k.gap(GapTemp)))
	require.NoError(t, k.d.NotKnown(k.gap(GapCloud)))
	require.Equal(t, []GapKind{GapFly, GapEnd}, k.gaps())

	again := New(k.j, k.d.now)
	require.NoError(t, again.Open(k.d.Trip()))
	assert.Len(t, again.Gaps(), 2, "it is stored")
	did, _ := k.j.CanUndo()
	assert.Equal(t, "not known", did)
	require.NoError(t, k.d.Undo())
	require.Equal(t, []GapKind{GapFly, GapCloud, GapEnd}, k.gaps())

	k.add(journal.KindWater, "when", "22:00", "temp", "none")
	require.NotContains(t, k.gaps(), GapTemp)
	k.night(false)
	k.add(journal.KindRun, "when", "22:35", "until", "23:10", "pool", "Alder Pool")
	assert.Contains(t, k.gaps(), GapTemp, "another night is asked for itself")
}

// Ensure that every gap of two written seasons has words and a card with its field.
func TestGapsOfTheDemo(t *testing.T) {
	k := newKit(t)
	d := New(demoJournal(t), k.d.now)
	seen := map[GapKind]int{}
	for i := 0; i < d.NightCount(); i += nightStep() {
		require.NoError(t, d.Open(d.NightRow(i).Trip))
		for _, g := range d.Gaps() {
			seen[g.Kind]++
			c, err := d.GapCard(g)
			require.NoError(t, err)
			_, ok := c.Field(g.Field)
			require.True(t, ok, "%s %s", g.Kind, g.Field)
			require.NotEmpty(t, g.Says)
		}
	}
	t.Log(seen)
	assert.NotEmpty(t, seen)
}

// BenchmarkGaps is what the line of gaps costs when a night is opened.
func BenchmarkGaps(b *testing.B) {
	k, _ := written(&testing.T{})
	for b.Loop() {
		k.d.Gaps()
	}
}
