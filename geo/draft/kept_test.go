package draft

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
)

// Ensure that a draft laid by is the same draft again, also what split pools became.
func TestKeepAndResume(t *testing.T) {
	d := three(t)
	begun := d.Beat
	d, err := d.Split(id(11), geo.Point{X: 160, Y: -30}, geo.Point{X: 160, Y: 30}, Part{id(30), "Upper"}, Part{id(31), "Lower"})
	require.NoError(t, err)
	raw, err := json.Marshal(d.Keep())
	require.NoError(t, err)
	var k Kept
	require.NoError(t, json.Unmarshal(raw, &k))
	r := Resume(k)
	assert.Equal(t, d.Beat, r.Beat)
	assert.Equal(t, map[geo.ID][]geo.ID{id(11): {id(30), id(31)}}, r.Successors(begun))
	assert.Error(t, func() error { _, err := r.AddPool(id(11), "again", box(0, 50, 9, 60)); return err }(), "an ID that went is never used again")
}

// Ensure that pools can be numbered by the flow, and are not where nothing tells it.
func TestDownstream(t *testing.T) {
	d := three(t)
	d, err := d.Reorder(id(12), 1)
	require.NoError(t, err)
	d, err = d.Downstream()
	require.NoError(t, err)
	for i, p := range d.Beat.InOrder() {
		assert.Equal(t, id(byte(10+i)), p.ID)
		assert.Equal(t, i+1, p.Order)
	}
	bare, err := begun(t).AddPool(id(2), "Alder", box(0, 0, 50, 10))
	require.NoError(t, err)
	_, err = bare.Downstream()
	assert.ErrorContains(t, err, "which way the river runs")
}

// Ensure that removing a pool leaves no gap in the numbers.
func TestRemoveNumbers(t *testing.T) {
	d, err := three(t).Remove(id(10))
	require.NoError(t, err)
	assert.Equal(t, 1, d.Beat.Pools[0].Order)
	assert.Equal(t, 2, d.Beat.Pools[1].Order)
}
