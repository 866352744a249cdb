package gauge_test

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/gauge"
)

func read(t *testing.T, name string, o gauge.Options) *gauge.File {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name)
	require.NoError(t, err)
	f, err := gauge.Read(bytes.NewReader(data), o)
	require.NoError(t, err)
	return f
}

func zone(t testing.TB, name string) *time.Location {
	loc, err := time.LoadLocation(name)
	require.NoError(t, err)
	return loc
}

func told(f *gauge.File) string {
	var s strings.Builder
	for _, w := range f.Warnings {
		fmt.Fprintln(&s, w)
	}
	return s.String()
}

// points prints readings as hour:minute and level to a tenth of a millimetre.
func points(s gauge.Series) string {
	var out []string
	for _, p := range s.Points {
		out = append(out, fmt.Sprintf("%s %.4g", p.At.Format("15:04"), float64(p.Level)))
	}
	return strings.Join(out, ", ")
}

// Ensure that every invented file gives what testdata/invented/MANIFEST.tsv says.
// Where it allows .655 or .656, two values in one cell, the first is taken: it is what the
// instrument sent first, and a warning names both.
func TestManifest(t *testing.T) {
	const usual = "21:00 0.642, 21:15 0.655, 21:30 0.661, 21:45 0.658, 22:00 0.65"
	const gap2130 = "21:00 0.642, 21:15 0.655, 21:45 0.658, 22:00 0.65"
	oslo := zone(t, "Europe/Oslo")
	for _, c := range []struct {
		file, layout, points string
		missing              string // clock of the missing ones
		id, name, unit       string
		warned               []string
		opt                  gauge.Options
	}{
		{file: "ea_flood_readings.csv", layout: "English flood readings CSV", points: usual, id: "000000", unit: "m"},
		{file: "ea_archive_full.csv", layout: "English daily archive CSV", points: "21:00 0.642, 21:15 0.655, 21:30 0.661, 22:00 0.65", missing: "21:45", id: "000000", name: "Example Weir", unit: "m", warned: []string{"line 3: two values in one cell, 0.655 and 0.656: the first"}},
		{file: "ea_hydrology.csv", layout: "English hydrology CSV", points: gap2130, missing: "21:30", id: "00000000-0000-0000-0000-000000000000", unit: "m", warned: []string{"name no zone; read as UTC"}},
		{file: "ea_hydrology.json", layout: "English hydrology JSON", points: "21:00 0.642, 21:30 0.661", missing: "21:15", id: "00000000-0000-0000-0000-000000000000", unit: "m", warned: []string{"name no zone; read as UTC"}},
		{file: "sepa_kiwis.csv", layout: "time series CSV with # lines", points: gap2130, missing: "21:30", id: "00000010", name: "Example Bridge", warned: []string{"names no unit; read as metres"}},
		{file: "sepa_kiwis.json", layout: "time series JSON", points: gap2130, missing: "21:30", id: "00000010", warned: []string{"names no unit; read as metres"}},
		{file: "sepa_old_site.csv", layout: "older Scottish station CSV", points: gap2130, missing: "21:30", name: "Example Bridge", unit: "m", warned: []string{"read as GMT"}},
		{file: "opw_month.csv", layout: "Irish month CSV", points: "21:00 0.642, 21:15 0.655, 21:30 0.661, 22:00 0.65, 22:15 0.645", unit: "m", warned: []string{"read as GMT"}},
		{file: "opw_hydrodata.csv", layout: "time series CSV with # lines", points: "21:00 40.64, 21:15 40.66, 21:45 40.66, 22:00 40.65", missing: "21:30", id: "00000", name: "Example Bridge", unit: "m"},
		{file: "epa_ie_hydronet.csv", layout: "Irish export CSV", points: gap2130, missing: "21:30", id: "00000", name: "EXAMPLE", unit: "m", warned: []string{"name no zone and none was given; read as UTC"}},
		{file: "usgs_iv_dst.rdb", layout: "US tab-separated", points: "04:45 0.954, 05:30 0.9754, 06:30 0.9997, 07:30 0.9906", missing: "07:15", id: "00000000", unit: "ft", warned: []string{`line 11: "Eqp" instead of a value`}},
		{file: "nve_hydapi.json", layout: "Norwegian JSON", points: "18:00 1.642, 19:00 1.655, 21:00 1.658, 22:00 1.65", missing: "20:00", id: "0.0.0", name: "Eksempel", unit: "m"},
		{file: "eccc_datamart_hourly_old.csv", layout: "Canadian hourly CSV", points: "22:00 1.642, 22:05 1.643, 22:15 1.655, 22:20 1.65", missing: "22:10", id: "00XX000", unit: "m"},
		{file: "eccc_datamart_hourly_new.csv", layout: "Canadian hourly CSV", points: "22:00 1.642, 22:05 1.643, 22:10 1.655, 22:15 1.655, 22:20 1.65", id: "00XX000", unit: "m"},
		{file: "plain_comma_decimal.csv", layout: "plain table", points: usual, unit: "cm", warned: []string{"read in the zone given, Europe/Oslo"}, opt: gauge.Options{Zone: oslo}},
	} {
		t.Run(c.file, func(t *testing.T) {
			f := read(t, "invented/"+c.file, c.opt)
			s := f.Series[0]
			assert.Equal(t, c.layout, string(f.Layout))
			assert.Equal(t, c.points, points(s))
			assert.Equal(t, gauge.Level, s.What)
			assert.Equal(t, c.id, s.StationID)
			assert.Equal(t, c.name, s.Station)
			assert.Equal(t, c.unit, s.Unit)
			var missing []string
			for _, m := range s.Missing {
				missing = append(missing, m.At.Format("15:04"))
			}
			assert.Equal(t, c.missing, strings.Join(missing, " "))
			for _, w := range c.warned {
				assert.Contains(t, told(f), w)
			}
			if c.warned == nil {
				assert.Empty(t, f.Warnings)
			}
			assert.Contains(t, []string{"2025-07-14", "2025-11-02"}, s.Points[0].At.Format("2006-01-02"))
			assert.Equal(t, time.UTC, s.Points[0].At.Location())
			assert.Equal(t, c.file == "plain_comma_decimal.csv" || c.file == "epa_ie_hydronet.csv", f.ZoneOpen)
		})
	}
}

// Ensure that quality is kept as written and in one scale.
func TestQuality(t *testing.T) {
	flags := func(name string) (out []string) {
		for _, p := range read(t, "invented/"+name, gauge.Options{}).Series[0].Points {
			out = append(out, p.Flag+"="+p.Quality.String())
		}
		return out
	}
	assert.Equal(t, []string{"Good=checked", "Good Edited=checked", "Estimated=estimated", "Unchecked=unchecked"}, flags("ea_hydrology.csv"))
	assert.Equal(t, []string{"P=unchecked", "P=unchecked", "P=unchecked", "P:e=estimated"}, flags("usgs_iv_dst.rdb"))
	assert.Equal(t, []string{"1=unchecked", "1=unchecked", "2=checked", "1=unchecked"}, flags("nve_hydapi.json"))
	assert.Equal(t, []string{"50=", "50=", "140=", "254="}, flags("sepa_kiwis.csv"))
	assert.Equal(t, "Provisional/Provisoire=unchecked", flags("eccc_datamart_hourly_new.csv")[0])
	m := read(t, "invented/usgs_iv_dst.rdb", gauge.Options{}).Series[0].Missing[0]
	assert.Equal(t, "Eqp P", m.Flag)
}

// Ensure that the flow beside a level is a series of its own.
func TestFlow(t *testing.T) {
	f := read(t, "invented/eccc_datamart_hourly_new.csv", gauge.Options{})
	require.Len(t, f.Series, 2)
	assert.Equal(t, gauge.Flow, f.Series[1].What)
	assert.InDelta(t, 12.9, f.Series[1].Points[2].FlowM3s, 1e-12)
	d := read(t, "real/usgs_dv_02177000.rdb", gauge.Options{}).Series[0]
	assert.True(t, d.Daily)
	assert.Equal(t, "02177000", d.StationID)
	assert.Equal(t, "CHATTOOGA RIVER NEAR CLAYTON, GA", d.Station)
	peak := d.Points[0]
	for _, p := range d.Points {
		if p.FlowM3s > peak.FlowM3s {
			peak = p
		}
	}
	// 18 September 2012, 1470 ft3/s: the file itself; 1 ft3/s = 0.028316846592 m3/s.
	assert.Equal(t, "2012-09-18", peak.At.Format("2006-01-02"))
	assert.InDelta(t, 41.62576, peak.FlowM3s, 1e-5)
}

// Ensure that the real English series comes out in order of time, whatever its own.
func TestNewestFirst(t *testing.T) {
	f := read(t, "real/ea_flood_readings_690140.json", gauge.Options{})
	s := f.Series[0]
	assert.Equal(t, "English flood readings JSON", string(f.Layout))
	assert.Len(t, s.Points, 34)
	assert.Equal(t, "2015-12-10T16:00:00Z", s.Points[33].At.Format(time.RFC3339))
	assert.InDelta(t, 0.754, float64(s.Points[33].Level), 1e-12)
	assert.Less(t, s.Points[33].Line, s.Points[0].Line)
	assert.Empty(t, f.Warnings)
}
