package position

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Ensure that a place in any of the usual notations is read as it is meant.
func TestParse(t *testing.T) {
	const lat, lon = 55 + 7.0/60 + 24.42/3600, -(4 + 36.0/60 + 4.428/3600)
	for s, form := range map[string]Form{
		"55.12345, -4.60123":                        Decimal,
		"55.12345,-4.60123":                         Decimal,
		"55.12345 -4.60123":                         Decimal,
		"55.12345;-4.60123":                         Decimal,
		"+55.12345-004.60123/":                      Decimal,
		"55.12345\u00A0\u22124.60123":               Decimal,
		"(55.12345, -4.60123)":                      Decimal,
		"55.12345N 4.60123W":                        Decimal,
		"55.12345° N, 4.60123° W":                   Decimal,
		"N55.12345 W4.60123":                        Decimal,
		"W 4.60123, N 55.12345":                     Decimal,
		"4.60123 west 55.12345 north":               Decimal,
		"lat: 55.12345 lon: -4.60123":               Decimal,
		"longitude=-4.60123, latitude=55.12345":     Decimal,
		"55,12345 -4,60123":                         Decimal,
		"55,12345; -4,60123":                        Decimal,
		"55,12345 N, 4,60123 W":                     Decimal,
		"55.12345\n-4.60123":                        Decimal,
		"55° 7′ 24.42″ N, 4° 36′ 4.428″ W":          Seconds,
		"55°7'24.42\"N 4°36'4.428\"W":               Seconds,
		"55º07’24.42”N 004º36’04.428”W":             Seconds,
		"55°7'24.42''N 4°36'4.428''W":               Seconds,
		"N 55 7 24.42 W 4 36 4.428":                 Seconds,
		"55 07 24.42 N 04 36 04.428 W":              Seconds,
		"55° 7' 24.42\" -4° 36' 4.428\"":            Seconds,
		"55 7 24.42, -4 36 4.428":                   Seconds,
		"55 deg 7 min 24.42 sec N 4 deg 36.0738' W": Seconds,
		"55° 7.407′ N 4° 36.0738′ W":                Minutes,
		"N55° 7,407′ W4° 36,0738′":                  Minutes,
		"  55 7.407 N, 4 36.0738 W ":                Minutes,
		"geo:55.12345,-4.60123":                     URI,
		"GEO:55.12345,-4.60123,12;crs=WGS84;u=40":   URI,
		"geo:55.12345,-4.60123?z=17":                URI,
	} {
		r, err := Parse(s)
		if !assert.NoError(t, err, s) {
			continue
		}
		assert.InDelta(t, lat, float64(r.Place.Lat), 1e-9, s)
		assert.InDelta(t, lon, float64(r.Place.Lon), 1e-9, s)
		assert.Equal(t, form, r.Form, s)
	}
	r, err := Parse("-0 30 0, -0 15 0")
	require.NoError(t, err)
	assert.Equal(t, geo.Place{Lat: -0.5, Lon: -0.25}, r.Place, "the sign of nought degrees counts")
}

// Ensure that what can be read in two ways, or in none, is refused where the cause stands.
func TestRefused(t *testing.T) {
	for s, c := range map[string]struct {
		at  int
		say string
	}{
		"":                    {0, "no place"},
		"55.1":                {0, "one number"},
		"55,4":                {1, "comma may stand"},
		"55,1234,4,5678":      {1, "comma may stand"},
		"55.1 N 4.6":          {5, "the other not"},
		"55.1 N 4.6 N":        {7, "both numbers are a latitude"},
		"55 7 24 4 36 4":      {5, "more than one way"},
		"55 7 24 -4 36 4":     {5, "more than one way"},
		"104.5 12":            {0, "beyond the pole"},
		"55.1 190":            {5, "half way round"},
		"55.1 N, -4.6 W":      {8, "twice"},
		"55 67 N 4 36 W":      {3, "more than the 59"},
		"55 7 61 N 4 36 1 W":  {5, "more than the 59"},
		"55.1 7 N 4 36 W":     {5, "decimals"},
		"48.1 N 11.5 O":       {12, "east in German"},
		"0, 0":                {0, "no reception"},
		"Larrick":             {0, "not known"},
		"55.1 # 4":            {5, "no place in a position"},
		"lat 55 N S 4 E":      {13, "more than two"},
		"geo:55":              {4, "comma"},
		"geo:55,x":            {7, "no number"},
		"geo:91,0":            {4, "not on the earth"},
		"geo:55,-4;crs=nad27": {10, "nad27"},
		"NX 123 45":           {2, "equally long"},
		"NX 12 45":            {2, "kilometre"},
		"NX 123456 123456":    {2, "five figures"},
		"AB 123 456":          {0, "no square"},
		"TZ 123 456":          {0, "off the grid"},
		"C 123 456":           {0, "Irish"},
		"123456, 612345":      {0, "eastings"},
		"  55.1 # 4":          {7, "no place in a position"},
		"55.1° ° 4.6":         {4, "wrong place"},
	} {
		_, err := Parse(s)
		var e *Error
		if !assert.ErrorAs(t, err, &e, s) {
			continue
		}
		assert.Contains(t, e.What, c.say, s)
		assert.Equal(t, c.at, e.At, "%q: %v", s, e)
		assert.NotEmpty(t, e.Do, s)
	}
}

// Ensure that the examples of RFC 5870 (sections 1, 3.4.2 and 6) are read.
func TestRFC5870(t *testing.T) {
	for s, want := range map[string]geo.Place{
		"geo:13.4125,103.8667":                   {Lat: 13.4125, Lon: 103.8667},
		"geo:48.2010,16.3695,183":                {Lat: 48.2010, Lon: 16.3695},
		"geo:48.198634,16.371648;crs=wgs84;u=40": {Lat: 48.198634, Lon: 16.371648},
		"geo:90,-22.43;crs=WGS84":                {Lat: 90},
		"geo:90,46":                              {Lat: 90},
		"geo:66,30;u=6.500;FOo=this%2dthat":      {Lat: 66, Lon: 30},
	} {
		r, err := Parse(s)
		require.NoError(t, err, s)
		assert.Equal(t, want, r.Place, s)
	}
	r, _ := Parse("geo:48.198634,16.371648;crs=wgs84;u=40")
	assert.Equal(t, units.Metres(40), r.AccuracyM)
}

// Ensure that reading what was printed gives the place within 1e-7 degrees.
func TestPrintAndParse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := geo.Place{Lat: units.Degrees(rapid.Float64Range(-90, 90).Draw(t, "lat")), Lon: units.Degrees(rapid.Float64Range(-180, 180).Draw(t, "lon"))}
		if math.Abs(float64(p.Lat)) < 1e-6 && math.Abs(float64(p.Lon)) < 1e-6 {
			return // 0, 0 is none
		}
		f := rapid.SampledFrom([]Form{Decimal, Minutes, Seconds, URI}).Draw(t, "form")
		s := Print(p, f)
		r, err := Parse(s)
		require.NoError(t, err, s)
		require.InDelta(t, float64(p.Lat), float64(r.Place.Lat), 1e-7, s)
		if 90-math.Abs(float64(p.Lat)) > 1e-7 {
			require.InDelta(t, float64(p.Lon), float64(r.Place.Lon), 1e-7, s)
		}
		require.Equal(t, f, r.Form, s)
	})
}

// Ensure that no text ends the program, and that what is read lies on the earth.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"55.1, -4.6", "N 55 7 24.42 W 4 36 4.428", "55°7'24\"N 4°36'4\"W", "NX 12345 67890", "geo:1,2;u=3", "55,1 4,6", "lat 1 lon 2"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		r, err := Parse(s)
		if err != nil {
			var e *Error
			require.ErrorAs(t, err, &e)
			require.True(t, e.At >= 0 && e.At <= len(s), "%d of %d", e.At, len(s))
			return
		}
		require.NoError(t, r.Place.Check())
		require.False(t, r.Place.IsZero())
	})
}
