package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/timeline/sky"
)

// member is a GeoJSON object.
type member map[string]any

func square(lon, lat float64) [][][]float64 {
	const d = 0.0005
	return [][][]float64{{{lon - d, lat - d}, {lon + d, lat - d}, {lon + d, lat + d}, {lon - d, lat + d}, {lon - d, lat - d}}}
}

func poolFeature(name string, lon, lat float64, more member) member {
	properties := member{"role": "pool", "name": name}
	for k, v := range more {
		properties[k] = v
	}
	return member{"type": "Feature", "properties": properties, "geometry": member{"type": "Polygon", "coordinates": square(lon, lat)}}
}

// beatFile writes the invented Home Beat of Larrick Water with the features given.
func beatFile(t *testing.T, zone string, features ...member) string {
	t.Helper()
	beat := member{"type": "FeatureCollection", "name": "Home Beat", "features": features}
	if zone != "" {
		beat["zone"] = zone
	}
	text, err := json.Marshal(beat)
	require.NoError(t, err)
	name := filepath.Join(t.TempDir(), "home.geojson")
	require.NoError(t, os.WriteFile(name, text, 0o600))
	return name
}

func gorge() member {
	return poolFeature("Gorge", -4.62, 55.05, member{"skyline": [][]float64{{0, 30}}, "canopy": "partly"})
}

// Ensure that a pool's place, zone, skyline and trees count, also against --lat: 30
// degrees of hill all round leave 0.75 of the sky and partly covered water half of that.
func TestLightOfPool(t *testing.T) {
	file := beatFile(t, "Europe/London", gorge(), poolFeature("Meadow", -4.60, 55.06, nil))
	night := []string{"light", "--beat", file, "--night", "2026-09-11", "--cloud", "0", "--step", "10m"} // new moon
	open := run("", night...)
	require.Equal(t, done, open.code, open.err)
	pool := run("", append(night, "--pool", "gorge", "--lat", "10", "--lon", "10")...)
	require.Equal(t, done, pool.code, pool.err)
	a, b := records(t, open.out), records(t, pool.out)
	require.Len(t, b, 145)
	assert.Equal(t, "2026-09-11T12:00:00+01:00", b[0]["local"])
	for i := range b {
		at, err := time.Parse(time.RFC3339, b[i]["utc"])
		require.NoError(t, err)
		p := sky.At(at, sky.Place{Lat: 55.05, Lon: -4.62})
		assert.InDelta(t, float64(p.Sun.Alt), b[i].num(t, "sun_alt"), 2e-4, "at the pool, not at --lat")
		if p.Moon.Alt < -10 && math.Abs(float64(p.Sun.Alt)) > 1 {
			// The two places are 1 km apart: 0.01 degrees, 1 % of the light at most.
			assert.InEpsilon(t, 0.375*a[i].num(t, "lux"), b[i].num(t, "lux"), 0.02)
		}
	}
	meadow := records(t, run("", append(night, "--pool", "Meadow")...).out)
	assert.InEpsilon(t, a[60].num(t, "lux"), meadow[60].num(t, "lux"), 0.01)
}

// Ensure that --zone wins over the zone of the beat, and that --lat and --lon serve a
// beat that has no place.
func TestLightBeatDefaults(t *testing.T) {
	file := beatFile(t, "Europe/London", gorge())
	oslo := run("", "light", "--beat", file, "--zone", "Europe/Oslo", "--night", "2026-06-12", "--step", "12h")
	require.Equal(t, done, oslo.code, oslo.err)
	assert.Equal(t, "2026-06-12T12:00:00+02:00", records(t, oslo.out)[0]["local"])

	empty := beatFile(t, "Europe/London")
	night := []string{"light", "--beat", empty, "--night", "2026-06-12", "--step", "12h", "--cloud", "2"}
	refused(t, run("", night...), "no place", "--lat")
	r := run("", append(night, "--lat", "55.05", "--lon", "-4.62")...)
	require.Equal(t, done, r.code, r.err)
	assert.Contains(t, r.err, "no features", "what the reader remarks is passed on")
}

// Ensure that what is wrong with beat and pool is said in one sentence.
func TestLightBeatRefuses(t *testing.T) {
	file := beatFile(t, "Europe/London", gorge(), poolFeature("Twin", -4.61, 55.05, nil), poolFeature("twin", -4.60, 55.05, nil))
	night := []string{"--night", "2026-06-12"}
	light := func(more ...string) ran { return run("", append(append([]string{"light"}, more...), night...)...) }
	refused(t, light("--beat", file, "--pool", "Kirk"), `"Kirk"`, "Gorge")
	refused(t, light("--beat", file, "--pool", "twin"), "2 pools")
	refused(t, light("--beat", beatFile(t, ""), "--pool", "Gorge", "--zone", "UTC"), "no pool with a name")
	refused(t, light("--pool", "Gorge", "--lat", "55", "--lon", "-4", "--zone", "UTC"), "--beat")
	refused(t, light("--beat", beatFile(t, "", gorge()), "--pool", "Gorge"), "zone")
	refused(t, light("--beat", beatFile(t, "Mars/North", gorge())), "Mars/North")

	bad := filepath.Join(t.TempDir(), "bad.geojson")
	require.NoError(t, os.WriteFile(bad, []byte("not a beat"), 0o600))
	refused(t, light("--beat", bad), "bad.geojson")
	missing := light("--beat", filepath.Join(t.TempDir(), "missing.geojson"))
	assert.Equal(t, broken, missing.code)
	assert.Contains(t, missing.err, "missing.geojson")
}
