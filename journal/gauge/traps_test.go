package gauge_test

import (
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/gauge"
	"gloamline/journal/units"
)

func readText(t *testing.T, text string, o gauge.Options) *gauge.File {
	t.Helper()
	f, err := gauge.Read(strings.NewReader(text), o)
	require.NoError(t, err)
	return f
}

func instants(s gauge.Series) (out []string) {
	for _, p := range s.Points {
		out = append(out, p.At.Format("02T15:04Z"))
	}
	return out
}

// Ensure that in the hour a clock showed twice the neighbours decide, in both orders.
// British clocks went back on 26 October 2025 at 01:00Z (IANA 2025b, Europe/London).
func TestHourShownTwice(t *testing.T) {
	rows := []string{"2025-10-26 00:30,0.50", "2025-10-26 01:00,0.51", "2025-10-26 01:30,0.52", "2025-10-26 01:00,0.53", "2025-10-26 01:30,0.54", "2025-10-26 02:00,0.55"}
	want := []string{"25T23:30Z", "26T00:00Z", "26T00:30Z", "26T01:00Z", "26T01:30Z", "26T02:00Z"}
	opt := gauge.Options{Zone: zone(t, "Europe/London")}
	f := readText(t, "when,level (m)\n"+strings.Join(rows, "\n"), opt)
	assert.Equal(t, want, instants(f.Series[0]))
	assert.Contains(t, told(f), "line 3: the clock showed 01:00 on 2025-10-26 twice")
	back := []string{rows[5], rows[4], rows[3], rows[2], rows[1], rows[0]}
	f = readText(t, "when,level (m)\n"+strings.Join(back, "\n"), opt)
	var levels []units.Metres
	for _, p := range f.Series[0].Points {
		levels = append(levels, p.Level)
	}
	assert.IsIncreasing(t, levels)
	assert.Equal(t, want, instants(f.Series[0]))
}

// Ensure that hourly rows show the doubled hour, and a row written twice does not.
func TestDoubledRow(t *testing.T) {
	opt := gauge.Options{Zone: zone(t, "Europe/London")}
	f := readText(t, "when,level (m)\n2025-10-26 00:00,0.50\n2025-10-26 01:00,0.50\n2025-10-26 01:00,0.50\n2025-10-26 02:00,0.50\n", opt)
	assert.Equal(t, []string{"25T23:00Z", "26T00:00Z", "26T01:00Z", "26T02:00Z"}, instants(f.Series[0]))
	f = readText(t, "when,level (m)\n2025-10-26 00:45,0.50\n2025-10-26 01:00,0.50\n2025-10-26 01:00,0.50\n2025-10-26 01:15,0.50\n", opt)
	assert.Equal(t, []string{"25T23:45Z", "26T00:00Z", "26T00:15Z"}, instants(f.Series[0]))
	assert.Contains(t, told(f), "line 4: the reading of line 3 stands here again: dropped")
}

// Ensure that a time the clock skipped is said. British clocks went on 30 March 2025 at 01:00Z.
func TestHourSkipped(t *testing.T) {
	f := readText(t, "when,level (m)\n2025-03-30 00:30,0.50\n2025-03-30 01:30,0.51\n2025-03-30 03:30,0.52\n", gauge.Options{Zone: zone(t, "Europe/London")})
	assert.Equal(t, []string{"30T00:30Z", "30T01:30Z", "30T02:30Z"}, instants(f.Series[0]))
	assert.Contains(t, told(f), "line 3: the clock skipped 01:30 on 2025-03-30")
}

// Ensure that two values for one moment keep the first and say so.
func TestTwoValues(t *testing.T) {
	f := readText(t, "datetime,value\n2025-07-14 21:00,0.642\n2025-07-14 21:00,0.700\n2025-07-14 20:45,0.640\n", gauge.Options{})
	assert.Equal(t, "20:45 0.64, 21:00 0.642", points(f.Series[0]))
	assert.Contains(t, told(f), "line 3: another value for the moment of line 2")
}

// Ensure that a value stands for its moment even after a row without one.
func TestValueAfterMissing(t *testing.T) {
	f := readText(t, "datetime,value\n2025-07-14 21:00,\n2025-07-14 21:00,0.642\n2025-07-14 21:15,0.650\n", gauge.Options{})
	assert.Equal(t, "21:00 0.642, 21:15 0.65", points(f.Series[0]))
	assert.Empty(t, f.Series[0].Missing)
}

// Ensure that columns are offered with samples when it is not plain which is the level.
func TestChoose(t *testing.T) {
	const text = "Time,Rain,River,Remark\n14/07/2025 21:00,0.2,2.11,ok\n14/07/2025 21:15,0.0,2.15,ok\n"
	f, err := gauge.Read(strings.NewReader(text), gauge.Options{})
	require.ErrorIs(t, err, gauge.ErrChoose)
	require.Len(t, f.Columns, 4)
	assert.Equal(t, gauge.Column{Name: "River", Kind: gauge.Number, Samples: []string{"2.11", "2.15"}}, f.Columns[2])
	assert.Equal(t, gauge.DateAndTime, f.Columns[0].Kind)
	assert.Empty(t, f.Series)

	pick := f.Choice
	pick.Level, pick.Flag, pick.Unit = 2, 3, units.Foot
	f = readText(t, text, gauge.Options{Columns: &pick})
	assert.Equal(t, "21:00 0.6431, 21:15 0.6553", points(f.Series[0])) // 2.11 and 2.15 ft x 0.3048
	assert.Equal(t, "ft", f.Series[0].Unit)
	assert.Equal(t, "ok", f.Series[0].Points[0].Flag)

	pick.Level = 9
	_, err = gauge.Read(strings.NewReader(text), gauge.Options{Columns: &pick})
	require.ErrorContains(t, err, "there is no column 10")
}

// Ensure that a date is read with the month first only where no other reading is left.
func TestDateOrder(t *testing.T) {
	day := func(text string) string {
		return readText(t, "Date;Time;Level m\n"+text, gauge.Options{}).Series[0].Points[0].At.Format("2006-01-02T15:04")
	}
	assert.Equal(t, "2025-07-14T21:15", day("7/14/2025;9:15 PM;0.5"))
	assert.Equal(t, "2025-07-14T21:15", day("14/7/2025;21:15;0.5"))
	f := readText(t, "Date;Time;Level m\n05/07/2025;21:15;0.5\n", gauge.Options{})
	assert.Equal(t, time.July, f.Series[0].Points[0].At.Month())
	assert.Contains(t, told(f), "day or the month first; read with the day first")
	assert.Contains(t, told(f), "names no unit; read as metres")
}

// Ensure that ISO-8859-1 and UTF-16 are read, and the first is said.
func TestEncodings(t *testing.T) {
	text := "Tid;Vattenst\xe5nd (cm)\n2025-07-14 21:00;64,2\n"
	f := readText(t, text, gauge.Options{})
	assert.Equal(t, "Vattenstånd (cm)", f.Columns[1].Name)
	assert.Contains(t, told(f), "line 1: letters that are not UTF-8")
	var wide strings.Builder
	for _, u := range utf16.Encode([]rune("\ufeffTid;Vattenstånd (cm)\r\n2025-07-14 21:00;64,2\r\n")) {
		wide.WriteByte(byte(u))
		wide.WriteByte(byte(u >> 8))
	}
	assert.Equal(t, "21:00 0.642", points(readText(t, wide.String(), gauge.Options{}).Series[0]))
}

// Ensure that several series in one file stay apart, and what is no river is passed over.
func TestSeveralSeries(t *testing.T) {
	const m = "http://example.org/id/measures/"
	f := readText(t, "dateTime,measure,value\n"+
		"2025-07-14T21:00:00Z,"+m+"11-level-stage-i-15_min-m,0.5\n"+
		"2025-07-14T21:00:00Z,"+m+"11-level-downstage-i-15_min-mAOD,9.5\n"+
		"2025-07-14T21:00:00Z,"+m+"11-rainfall-tipping_bucket_raingauge-t-15_min-mm,0.2\n", gauge.Options{})
	require.Len(t, f.Series, 2)
	assert.Equal(t, "Ordnance Datum", f.Series[1].Datum)
	assert.Contains(t, told(f), `line 4: "11-rainfall-tipping_bucket_raingauge-t-15_min-mm" is no level and no flow`)
	f = readText(t, "#station_name;One\n#Timestamp;Value\n2025-07-14T21:00:00Z;0.5\n#station_name;Two\n#Timestamp;Value\n2025-07-14T21:00:00Z;0.7\n", gauge.Options{})
	require.Len(t, f.Series, 2)
	assert.Equal(t, "Two", f.Series[1].Station)
	assert.Equal(t, "21:00 0.7", points(f.Series[1]))
}

// Ensure that bad rows are told by line, five in full, the rest by count.
func TestBadRows(t *testing.T) {
	f := readText(t, "datetime,value\n2025-07-14 21:00,0.642\n"+strings.Repeat("2025-02-30 21:00,0.5\n", 8)+"2025-07-14 21:15,999999\n2025-07-14 21:30,-999999\n", gauge.Options{})
	assert.Contains(t, told(f), `line 7: no time can be read from "2025-02-30 21:00"`)
	assert.NotContains(t, told(f), "line 8: no time")
	assert.Contains(t, told(f), "3 more lines like it: no time")
	assert.Contains(t, told(f), "line 11: 999999 is a value no river has")
	assert.Contains(t, told(f), "-999999 stands for no value")
	assert.Len(t, f.Series[0].Missing, 1)
}

// Ensure that what is no table of readings is refused with a sentence and a line.
func TestRefused(t *testing.T) {
	for text, want := range map[string]string{
		"":                                 "no readings of a river",
		"Dear Anna,\nthe river is up.\n":   "no readings of a river",
		"{\"a\":{\"b\":[1,2,{}]}}":         "no readings of a river",
		"{\"items\":[\n{\"dateTime\":":     "line 2: this JSON cannot be read further: unexpected EOF",
		"a,b\n" + strings.Repeat("x", 1e5): "line 2 is longer than",
	} {
		_, err := gauge.Read(strings.NewReader(text), gauge.Options{})
		require.ErrorContains(t, err, want, "%.20q", text)
	}
}

// Ensure that the temperature of the water is read where the file says that it is that, and neither that of the
// air nor one that may be either.
func TestWaterTemperature(t *testing.T) {
	rdb := "# us\nagency_cd\tsite_no\tdatetime\ttz_cd\t112_00010\t112_00010_cd\t111_00065\t111_00065_cd\n5s\t15s\t20d\t6s\t14n\t10s\t14n\t10s\n" +
		"USGS\t00000000\t2025-07-14 22:00\tEDT\t18.4\tP\t3.13\tP\nUSGS\t00000000\t2025-07-14 22:15\tEDT\t\tP\t3.14\tP\n"
	hash := func(what, unit string) string {
		return "#ts_id;1\n#station_name;Example Bridge\n#stationparameter_name;" + what + "\n#ts_unitsymbol;" + unit + "\n#Timestamp;Value;Quality Code\n2025-07-14T21:00:00Z;18.4;50\n"
	}
	norwegian := func(parameter string) string {
		return `{"data":[{"stationId":"0.0.0","stationName":"Eksempel","parameter":` + parameter + `,"parameterNameEng":"Some words","unit":"°C","observations":[{"time":"2025-07-14T21:00:00Z","value":18.4,"quality":1}]}]}`
	}
	for name, text := range map[string]string{"US": rdb, "#": hash("Water Temperature", "°C"), "Norway": norwegian("1003")} {
		f := readText(t, text, gauge.Options{})
		i := slices.IndexFunc(f.Series, func(s gauge.Series) bool { return s.What == gauge.Warmth })
		require.GreaterOrEqual(t, i, 0, name)
		s := f.Series[i]
		require.Len(t, s.Points, 1, name)
		assert.Equal(t, 18.4, s.Points[0].Celsius, name)
		assert.Zero(t, s.Points[0].Level, name)
		assert.Equal(t, "°C", s.Unit, name)
		assert.Equal(t, name == "US", len(f.Series) == 2, "the level stands beside it")
		if name == "US" {
			assert.Len(t, s.Missing, 1)
		}
	}
	for name, text := range map[string]string{"of the air": hash("Air Temperature", "°C"), "of no parameter": hash("", "°C"), "no unit of it": hash("Water Temperature", "m"), "of the air in Norway": norwegian("17")} {
		f, err := gauge.Read(strings.NewReader(text), gauge.Options{})
		if err == nil {
			assert.Empty(t, f.Series, name)
		}
	}
}
