package sketch

import (
	"bytes"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal/units"
)

// again writes a beat, checks the text by the standard, and reads it back.
func again(t require.TestingT, b geo.Beat) geo.Beat {
	var buf bytes.Buffer
	require.NoError(t, Write(&buf, b))
	require.NoError(t, strict(buf.Bytes()), buf.String())
	out, _, err := Read(&buf)
	require.NoError(t, err)
	return out
}

// Ensure that any beat made within the limits is written by the standard and comes
// back equal.
func TestBeatRoundTrip(t *testing.T) {
	name := rapid.StringMatching(`[A-Za-zéøß"<>&\\ ]{0,12}`)
	coordinate := func(t *rapid.T, lim int) float64 { return float64(rapid.IntRange(-lim, lim).Draw(t, "c")) / 1e7 }
	rapid.Check(t, func(t *rapid.T) {
		point := func() orb.Point { return orb.Point{coordinate(t, 1_800_000_000), coordinate(t, 900_000_000)} }
		line := func(n int) (l []orb.Point) {
			for range n {
				l = append(l, point())
			}
			return l
		}
		b := geo.Beat{ID: geo.NewID(), Name: strings.TrimSpace(name.Draw(t, "beat")), Zone: rapid.SampledFrom([]string{"", "Europe/London"}).Draw(t, "zone")}
		for range rapid.IntRange(0, 3).Draw(t, "pools") {
			p := geo.Pool{ID: geo.NewID(), Name: strings.TrimSpace(name.Draw(t, "pool")), Order: rapid.IntRange(0, 20).Draw(t, "order"),
				Bank: rapid.SampledFrom([]geo.Bank{"", geo.TrueLeft, geo.TrueRight}).Draw(t, "bank"), Canopy: rapid.SampledFrom([]geo.Canopy{"", geo.Open, geo.Closed}).Draw(t, "canopy")}
			if n := rapid.IntRange(0, 6).Draw(t, "corners"); n >= 3 {
				ring := orb.Ring(line(n))
				if ring[0] != ring[n-1] {
					ring = append(ring, ring[0])
				}
				if len(ring) >= 4 {
					if area(ring) < 0 {
						ring.Reverse()
					}
					p.Outline = orb.Polygon{ring}
				}
			}
			for range rapid.IntRange(0, 4).Draw(t, "sky") {
				p.Skyline = append(p.Skyline, geo.SkyPoint{Bearing: units.Degrees(rapid.Float64Range(0, 360).Draw(t, "b")), Altitude: units.Degrees(rapid.Float64Range(-5, 90).Draw(t, "a"))})
			}
			b.Pools = append(b.Pools, p)
		}
		for range rapid.IntRange(0, 3).Draw(t, "features") {
			f := geo.Feature{ID: geo.NewID(), Role: rapid.SampledFrom([]geo.Role{geo.RoleBank, geo.RoleMark, geo.RoleHazard, geo.RoleLie, "jetty"}).Draw(t, "role"), Name: strings.TrimSpace(name.Draw(t, "name"))}
			switch rapid.IntRange(0, 2).Draw(t, "shape") {
			case 0:
				f.Shape = geo.PointShape(point())
			case 1:
				f.Shape = geo.LineShape(line(rapid.IntRange(2, 5).Draw(t, "n")))
			}
			b.Features = append(b.Features, f)
		}
		if got := again(t, b); !assert.ObjectsAreEqual(b, got) {
			t.Fatalf("wrote %+v\nread %+v", b, got)
		}
	})
}
