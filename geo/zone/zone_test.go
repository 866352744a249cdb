package zone

import (
	"bufio"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	tzfrellite "github.com/ringsaturn/tzf-rel-lite"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Places whose zone anybody can look up, to a kilometre or so.
func TestAt(t *testing.T) {
	for _, c := range []struct {
		where    string
		lat, lon float64
		zone     string
	}{
		{"a valley in south-west Scotland", 54.984, -4.428, "Europe/London"},
		{"Stornoway", 58.21, -6.39, "Europe/London"},
		{"Letterkenny", 54.95, -7.73, "Europe/Dublin"},
		{"Omagh", 54.60, -7.30, "Europe/London"},
		{"Cardiff", 51.48, -3.18, "Europe/London"},
		{"Torshavn", 62.01, -6.77, "Atlantic/Faroe"},
		{"Akureyri", 65.68, -18.10, "Atlantic/Reykjavik"},
		{"Alta", 69.97, 23.27, "Europe/Oslo"},
		{"Ribe", 55.33, 8.76, "Europe/Copenhagen"},
		{"Slupsk", 54.46, 17.03, "Europe/Warsaw"},
		{"Rovaniemi", 66.50, 25.73, "Europe/Helsinki"},
		{"Murmansk", 68.97, 33.08, "Europe/Moscow"},
		{"Gaspe", 48.83, -64.48, "America/Toronto"},
		{"Rio Grande", -53.79, -67.71, "America/Argentina/Ushuaia"},
		{"Stanley", -51.70, -57.86, "Atlantic/Stanley"},
		{"Hobart", -42.88, 147.33, "Australia/Hobart"},
		{"Gore", -46.10, 168.94, "Pacific/Auckland"},
		{"Waitangi, Chatham Islands", -43.95, -176.56, "Pacific/Chatham"},
		{"Phoenix", 33.45, -112.07, "America/Phoenix"},
	} {
		a, err := At(c.lat, c.lon)
		if assert.NoError(t, err, c.where) {
			assert.Equal(t, c.zone, a.Zone, c.where)
			_, err := time.LoadLocation(a.Zone)
			assert.NoError(t, err, c.where)
		}
	}
}

// Ensure that at a border the other side is named too.
func TestAtBorder(t *testing.T) {
	a, err := At(54.99, -7.36) // Derry, beside Donegal
	require.NoError(t, err)
	assert.Equal(t, "Europe/London", a.Zone)
	assert.Equal(t, []string{"Europe/Dublin"}, a.Others)
	a, err = At(-29.5, 28.3) // inside Lesotho, which is a hole in its neighbour
	require.NoError(t, err)
	assert.Equal(t, Answer{Zone: "Africa/Maseru", Others: []string{}}, a)
	a, err = At(65.84, 24.13) // Tornio, opposite Haparanda
	require.NoError(t, err)
	assert.ElementsMatch(t, []string{"Europe/Helsinki", "Europe/Stockholm"}, append(a.Others, a.Zone))
}

func TestAtSeaAndNowhere(t *testing.T) {
	_, err := At(50, -30)
	assert.ErrorIs(t, err, ErrSea)
	for _, p := range [][2]float64{{91, 0}, {0, 181}, {math.NaN(), 0}} {
		_, err := At(p[0], p[1])
		assert.ErrorContains(t, err, "no position has the latitude")
	}
	assert.Equal(t, "2025b", Release())
}

// The principal places of all zones: zone.tab of the IANA time zone database, release
// 2025b (public domain), to the minute of arc. One of them lies at a border and is the
// second answer.
func TestAgainstZoneTable(t *testing.T) {
	f, err := os.Open("testdata/zone.tab")
	require.NoError(t, err)
	defer f.Close()
	rows, right, close := 0, 0, 0
	for s := bufio.NewScanner(f); s.Scan(); {
		col := strings.Split(s.Text(), "\t")
		if strings.HasPrefix(s.Text(), "#") || len(col) < 3 {
			continue
		}
		rows++
		lat, lon := isoPosition(t, col[1])
		a, err := At(lat, lon)
		switch {
		case err == nil && a.Zone == col[2]:
			right++
		case err == nil && slices.Contains(a.Others, col[2]):
			close++
		default:
			t.Logf("%s at %.3f, %.3f: %v %v", col[2], lat, lon, a, err)
		}
	}
	require.Greater(t, rows, 400)
	t.Logf("%d rows, %d right, %d named beside it", rows, right, close)
	assert.GreaterOrEqual(t, right, rows-1)
	assert.Equal(t, rows, right+close)
}

// isoPosition reads +DDMM+DDDMM or +DDMMSS+DDDMMSS.
func isoPosition(t *testing.T, s string) (lat, lon float64) {
	cut := 1 + strings.IndexAny(s[1:], "+-")
	part := func(s string, degrees int) float64 {
		n := func(s string) float64 {
			x, err := strconv.ParseFloat(s, 64)
			require.NoError(t, err)
			return x
		}
		v := n(s[1:1+degrees]) + n(s[1+degrees:3+degrees])/60
		if len(s) > 3+degrees {
			v += n(s[3+degrees:]) / 3600
		}
		if s[0] == '-' {
			v = -v
		}
		return v
	}
	return part(s[:cut], 2), part(s[cut:], 3)
}

// Ensure that a map cut short anywhere is an error, and never a wrong zone in silence.
func TestDamagedMap(t *testing.T) {
	line := []byte("_p~iF~ps|U_ulLnnqC_mqNvxq`@") // the example of the encoding's description
	area := append([]byte{fieldPoints<<3 | 2, byte(len(line))}, line...)
	zone := append([]byte{fieldArea<<3 | 2, byte(len(area))}, area...)
	zone = append(zone, fieldName<<3|2, 1, 'Z')
	all := append([]byte{fieldMethod << 3, methodPolyline, fieldZone<<3 | 2, byte(len(zone))}, zone...)
	// As written there: 38.5, -120.2; 40.7, -120.95; 43.252, -126.453. Longitude stands first here.
	a, err := newAtlas(all)
	require.NoError(t, err)
	require.Len(t, a.areas, 1)
	assert.Equal(t, []string{"Z"}, a.at(-121.5, 40.6))
	assert.Empty(t, a.at(-120.5, 41.5))
	assert.InDelta(t, (2.2*6.253-0.75*4.752)/2, a.areas[0].size, 1e-9) // by hand, from the first corner
	for n := 3; n < len(all); n++ {
		_, err := newAtlas(all[:n])
		assert.Error(t, err, n)
	}
	all[1] = 2
	_, err = newAtlas(all)
	assert.ErrorContains(t, err, "not known here")
	assert.ErrorIs(t, points([]byte("\x7f\x7f\x7f"), func(int, float64, float64) {}), errTruncated)
}

// Ensure that east and west count by the latitude: 0.06 degrees of longitude at 60
// degrees north are 3.3 km.
func TestDistanceToBorder(t *testing.T) {
	p := probe{lat: 60, cos: 0.5, km: math.Inf(1)}
	p.side(0.06, -1, 0.06, 1)
	assert.InDelta(t, 3.34, p.km, 0.01)
	p = probe{lat: 60, cos: 0.5, km: math.Inf(1)}
	p.side(-1, -0.02, 1, -0.02)
	assert.InDelta(t, 2.22, p.km, 0.01)
}

func BenchmarkFirst(b *testing.B) {
	for b.Loop() {
		if _, err := newAtlas(tzfrellite.LiteCompressData); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAt(b *testing.B) {
	for b.Loop() {
		if _, err := At(54.984, -4.428); err != nil {
			b.Fatal(err)
		}
	}
}
