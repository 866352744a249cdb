package words

import (
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal/units"
)

// DefaultPrefs prints everything as it was typed.
var DefaultPrefs = Prefs{}

// Ensure that figures are printed as typed unless a unit is preferred, and that a
// figure which nobody can have typed is rounded.
func TestPrefs(t *testing.T) {
	typed := units.WeightOf(1.625, units.Pound) // 1 lb 10 oz
	require.Equal(t, "1 lb 10 oz", DefaultPrefs.weight(typed))
	require.Equal(t, "0.74 kg", Prefs{Weight: units.Kilogram}.weight(typed))
	require.Equal(t, "2 lb 3 oz", DefaultPrefs.weight(units.Weight{G: 992.2332500000001, Unit: units.Pound}))
	require.Equal(t, "0.33 m", DefaultPrefs.level(units.Length{M: 1.0 / 3, Unit: units.Metre}))
	require.Equal(t, "14.3 °C", DefaultPrefs.degrees(units.Temperature{C: 14.333333333333334, Unit: units.DegreeCelsius}))
	require.Equal(t, "1⅝ in", DefaultPrefs.fly(units.LengthOf(1.625, units.Inch)))
	require.Equal(t, "16 in", Prefs{Fish: units.Inch}.fish(units.LengthOf(40.64, units.Centimetre)))
	require.Equal(t, "2.74 m", Prefs{Leader: units.Metre}.leader(units.LengthOf(9, units.Foot)))
}
