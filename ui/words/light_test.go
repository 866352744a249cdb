package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// Ensure that darkness is told in round factors, no finer than the model knows.
func TestDarker(t *testing.T) {
	for _, c := range []struct {
		decades float64
		want    string
	}{
		{0, "as light as trees grey"}, {0.09, "as light as trees grey"}, {-0.09, "as light as trees grey"},
		{0.1, "1.5× darker than trees grey"}, {0.3, "2× darker than trees grey"}, {0.4, "2.5× darker than trees grey"},
		{0.45, "3× darker than trees grey"}, {0.53, "3× darker than trees grey"}, {0.9, "8× darker than trees grey"}, {0.985, "10× darker than trees grey"},
		{1, "10× darker than trees grey"}, {1.2, "20× darker than trees grey"}, {1.98, "100× darker than trees grey"}, {2, "100× darker than trees grey"},
		{2.5, "300× darker than trees grey"}, {3, "over 1000× darker than trees grey"}, {-1, "10× lighter than trees grey"}, {-4, "over 1000× lighter than trees grey"},
	} {
		require.Equal(t, c.want, Darker(c.decades), "%v", c.decades)
	}
}

// Ensure that lux has two digits at most and its band, and no figure where the model
// has none.
func TestLux(t *testing.T) {
	for _, c := range []struct {
		l    timeline.Lit
		want string
	}{
		{timeline.Lit{Lux: 0.0312, Lo: 0.0201, Hi: 0.0496}, "0.031 lx (0.02 to 0.05)"},
		{timeline.Lit{Lux: 1234, Lo: 1010, Hi: 1490}, "1200 lx (1000 to 1500)"},
		{timeline.Lit{Lux: 0.00003, Lo: 0.00001, Hi: 0.00008}, "under 0.0001 lx"},
		{timeline.Lit{Lux: 0.0002, Lo: 0.00005, Hi: 0.0005}, "0.0002 lx (under 0.0005)"},
		{timeline.Lit{Lux: 0.3, Lo: 0.3, Hi: 0.3}, "0.3 lx"},
	} {
		require.Equal(t, c.want, Lux(c.l))
	}
}

// Ensure that every rung has a name, that an owner may rename it, and that a blank
// name changes nothing.
func TestRungName(t *testing.T) {
	for _, r := range timeline.Rungs {
		require.NotEmpty(t, RungName(r, DefaultPrefs), r)
	}
	own := Prefs{Rungs: map[timeline.Rung]string{timeline.Black: "pit-dark", timeline.Dark: " "}}
	require.Equal(t, "pit-dark", RungName(timeline.Black, own))
	require.Equal(t, "dark", RungName(timeline.Dark, own))
}

// Ensure that the cursor reads the open sky out, and that cloud nobody noted is said.
func TestCursorLine(t *testing.T) {
	s := fullNight(t)
	n := s.build(larrick())
	at := s.at("0:42")
	want := RungName(n.Rung(at, geo.ID{}), DefaultPrefs) + ", " + Darker(n.Darker(at, geo.ID{})) + "; 00:42, " + Lux(n.Light(at, geo.ID{})) + ", sun 12° down, moon 6° up"
	require.Equal(t, want, CursorLine(n, at, DefaultPrefs))
	require.Regexp(t, `^\w+, \d+× darker than trees grey; 00:42, 0\.0\d+ lx \(0\.0\d+ to 0\.0\d+\), sun 1\d° down, moon 6° up$`, want)
	require.Regexp(t, `, moon down$`, CursorLine(n, s.at("23:30"), DefaultPrefs))

	require.Contains(t, CursorLine(n, n.Sky.Sunset[0], DefaultPrefs), ", sun on the horizon, moon down", "not 0° down")

	bare := writeUp(t, "2026-07-04", "Europe/London", anna).build(larrick())
	require.Contains(t, CursorLine(bare, at, DefaultPrefs), "), cloud not noted, sun 1")
}

// Ensure that the light at a contact is told with its range, also in the column of
// the page, and that light without a pool says so.
func TestContactLight(t *testing.T) {
	n := fullNight(t).build(larrick())
	exact, rough := n.Contacts[0], n.Contacts[2]
	require.Equal(t, journal.Lost, rough.Touch)
	require.Equal(t, RungName(exact.Rung, DefaultPrefs)+", "+exact.Light.Lux.String(), LightShort(exact, DefaultPrefs))
	require.Regexp(t, ` to \S+ lx$`, LightShort(rough, DefaultPrefs))
	tip := ContactTip(n, exact, DefaultPrefs)
	for _, part := range []string{"1A, Anna, 22:52, Alder Pool: 1 lb 10 oz, dropper; to ½ in full pale; half-light, ", "× lighter than trees grey, ", " lx (", "; herling, 40 cm"} {
		require.Contains(t, tip, part)
	}
	exact.TimeOnly = true
	require.True(t, strings.HasSuffix(Light(n, exact, DefaultPrefs), ", under the open sky"))
}

// Ensure that the zero of the axis says where it comes from.
func TestGreyThreshold(t *testing.T) {
	for _, c := range []struct {
		t    timeline.Threshold
		want string
	}{
		{timeline.Threshold{Lux: 0.3}, "trees grey: 0.3 lx unless logged otherwise"},
		{timeline.Threshold{Lux: 0.3, Logs: 2}, "trees grey: 0.3 lx unless logged otherwise, 2 logged so far"},
		{timeline.Threshold{Lux: 0.2231, Logs: 11, Own: true}, "trees grey on this beat: 0.22 lx, from 11 logged moments"},
		{timeline.Threshold{Lux: units.Lux(0.5), Own: true, Hand: true, Logs: 3}, "trees grey on this beat: 0.5 lx, set by hand"},
	} {
		require.Equal(t, c.want, GreyThreshold(c.t))
	}
}
