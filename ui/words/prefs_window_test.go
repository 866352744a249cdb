package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/journal/units"
)

// Ensure that every choice of every setting is taken, kept and read back, and that none
// touches another.
func TestSettings(t *testing.T) {
	for _, s := range Settings() {
		assert.NotEmpty(t, s.Label)
		for _, o := range s.Choices {
			var p Prefs
			s.Set(&p, o.Value)
			assert.Equal(t, o.Value, s.Get(p), "%s %s", s.ID, o.Label)
			back := DecodePrefs(p.Encode())
			assert.Equal(t, p, back, "%s %s", s.ID, o.Label)
			for _, other := range Settings() {
				if other.ID != s.ID {
					assert.Equal(t, other.Choices[0].Value, other.Get(back), "%s by %s", other.ID, s.ID)
				}
			}
		}
	}
}

// Ensure that preferences that cannot be read are the usual ones.
func TestDecodePrefs(t *testing.T) {
	for _, text := range []string{"", "null", "{", `{"fly":"fathom"}`, `{"weight":"stone","temp":"K"}`, `{"text":9}`, `{"text":-1}`} {
		assert.Equal(t, Prefs{}, DecodePrefs(text), text)
	}
	p := DecodePrefs(`{"fly":"mm","fish":"ell","weight":"kg","text":2}`)
	assert.Equal(t, Prefs{Fly: units.Millimetre, Weight: units.Kilogram, Text: 2}, p)
	assert.InDelta(t, 1.2, p.Text.Factor(), 1e-6)
}

// Ensure that what is preferred is printed rounded in that unit, and what is not as it
// was typed. 1 lb 10 oz are 737.1 g and 1½ in 38.1 mm, by the pound of 453.59237 g and the
// inch of 25.4 mm; 57 °F are 13.9 °C.
func TestPreferredUnits(t *testing.T) {
	w, err := units.ParseWeight("1 lb 10 oz", units.Pound)
	assert.NoError(t, err)
	l := units.LengthOf(1.5, units.Inch)
	f := units.TemperatureOf(57, units.DegreeFahrenheit)
	assert.Equal(t, "1 lb 10 oz", Prefs{}.weight(w))
	assert.Equal(t, "0.74 kg", Prefs{Weight: units.Kilogram}.weight(w))
	assert.Equal(t, "38 mm", Prefs{Fly: units.Millimetre}.fly(l))
	assert.Equal(t, "1½ in", Prefs{}.fly(l))
	assert.Equal(t, "13.9 °C", Prefs{Temp: units.DegreeCelsius}.degrees(f))
}
