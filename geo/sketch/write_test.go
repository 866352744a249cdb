package sketch

import (
	"bytes"
	"encoding/json"
	"os"
	"testing"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
)

// Ensure that writing refuses what GeoJSON cannot hold, and puts the rest right.
func TestWrite(t *testing.T) {
	b := geo.Beat{ID: geo.NewID(), Name: "Kirk Beat", At: geo.Place{Lat: 54.96834567891, Lon: -4.417},
		Pools: []geo.Pool{{ID: geo.NewID(), Name: "Yew Pool", Order: 2, Outline: orb.Polygon{
			{{-4.1, 55}, {-4.09, 55.01}, {-4.09, 55}}, // clockwise and open
			{{-4.094, 55.002}, {-4.092, 55.002}, {-4.092, 55.0041234567}, {-4.094, 55.002}},
		}}}}
	var buf bytes.Buffer
	require.NoError(t, Write(&buf, b))
	require.NoError(t, strict(buf.Bytes()), buf.String())
	assert.Contains(t, buf.String(), `"place":[-4.417,54.9683457]`)
	assert.Len(t, b.Pools[0].Outline[0], 3, "the beat itself is not changed")

	for _, spoil := range []func(*geo.Beat){
		func(b *geo.Beat) { b.Pools[0].Outline = orb.Polygon{{{1, 2}, {3, 4}}} },
		func(b *geo.Beat) { b.Pools[0].Outline = orb.Polygon{{{1, 2}, {3, 94}, {4, 5}}} },
		func(b *geo.Beat) { b.Features = []geo.Feature{{Shape: geo.LineShape(orb.LineString{{1, 2}})}} },
		func(b *geo.Beat) { b.Pools[0].Tail = geo.Place{Lat: 99} },
		func(b *geo.Beat) { b.Extra.Members = map[string]json.RawMessage{"x": json.RawMessage("{")} },
	} {
		c := b
		c.Pools = []geo.Pool{b.Pools[0]}
		spoil(&c)
		buf.Reset()
		var e *Error
		require.ErrorAs(t, Write(&buf, c), &e)
		assert.Equal(t, NotWritable, e.Kind)
		assert.Empty(t, buf.String(), "nothing is written by halves")
	}
	buf.Reset()
	require.NoError(t, Write(&buf, geo.Beat{}))
	require.NoError(t, strict(buf.Bytes()))
}

// Ensure that a beat over the 180th meridian has a box that spans it (section 5.2).
func TestBoxAcrossMeridian(t *testing.T) {
	b := geo.Beat{ID: geo.NewID(), Features: []geo.Feature{{ID: geo.NewID(), Role: geo.RoleBank, Bank: geo.TrueLeft,
		Shape: geo.LineShape(orb.LineString{{179.99, 65}, {-179.98, 65.01}})}}}
	var buf bytes.Buffer
	require.NoError(t, Write(&buf, b))
	assert.Contains(t, buf.String(), `"bbox":[179.99,65,-179.98,65.01]`)
	assert.Equal(t, b, again(t, b))
}

func BenchmarkWrite(b *testing.B) {
	data, err := os.ReadFile("testdata/home.geojson")
	require.NoError(b, err)
	beat, _, err := Read(bytes.NewReader(data))
	require.NoError(b, err)
	var buf bytes.Buffer
	for b.Loop() {
		buf.Reset()
		if err := Write(&buf, beat); err != nil {
			b.Fatal(err)
		}
	}
}
