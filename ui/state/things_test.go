package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
)

func namesOf(things []Thing) []string {
	var out []string
	for _, t := range things {
		out = append(out, t.Name)
	}
	return out
}

// Ensure that each thing of a night has a name of its own by which it is found.
func TestThings(t *testing.T) {
	k, _ := written(t)
	k.add(journal.KindRun, "rod", "Anna", "when", "0:10", "until", "0:40", "pool", "Alder Pool")
	k.add(journal.KindSky, "when", "0:20", "cloud", "3")
	k.add(journal.KindSky, "when", "23:05", "trees_grey", Yes)
	k.add(journal.KindNote, "when", "0:30", "note", "owl")
	things := Things(k.d.Night())
	assert.Equal(t, []string{"Alder Pool run 1", "fish 1", "trees grey", "Long Flat", "fish 2", "Alder Pool run 2", "sky 2", "note 1"}, namesOf(things))
	c := Clock{Evening: evening, Zone: k.d.Night().Zone, Things: things}
	for _, th := range things {
		for _, name := range append(th.Alias, th.Name) {
			r, err := c.Parse("after " + name)
			require.NoError(t, err, name)
			assert.Equal(t, []journal.ID{th.ID}, r.When.Anchors, name)
		}
	}
}

// Ensure that pools whose names cannot be told apart, or read as something else,
// lend their runs no name.
func TestPoolsWithoutAName(t *testing.T) {
	k := newKit(t)
	b := k.beat
	b.Revisions[0].Shape.Pools = []geo.Pool{
		square("Flat", 1, -4.500, ""), square("the flat", 2, -4.496, ""), square("Fish 3", 3, -4.492, ""), square("Run", 4, -4.488, ""), square("Rock and Alder", 5, -4.484, ""),
	}
	_, err := k.j.Amend(b)
	require.NoError(t, err)
	k.night(false)
	for i, p := range b.Revisions[0].Shape.Pools {
		k.add(journal.KindRun, "when", []string{"22:00", "22:20", "22:40", "23:00", "23:20"}[i], "pool", p.ID.String())
	}
	assert.Equal(t, []string{"run 1", "run 2", "run 3", "run 4", "run 5"}, namesOf(Things(k.d.Night())))
}
