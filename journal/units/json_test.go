package units

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that the stored forms never change: these texts stand in people's journals.
func TestJSONForms(t *testing.T) {
	for text, v := range map[string]any{
		`{"m":0.0254,"unit":"in"}`:            LengthOf(1, Inch),
		`{"g":737.08760125,"unit":"lb"}`:      WeightOf(1.625, Pound),
		`{"c":14.2,"unit":"C"}`:               TemperatureOf(14.2, DegreeCelsius),
		`{"c":14.444444444444445,"unit":"F"}`: TemperatureOf(58, DegreeFahrenheit),
	} {
		got, err := json.Marshal(v)
		require.NoError(t, err)
		assert.Equal(t, text, string(got))
	}
	var all struct {
		L Length
		W Weight
		T Temperature
		N Length
	}
	require.NoError(t, json.Unmarshal([]byte(`{"L":{"m":0.0254,"unit":"in","later":1},"W":{"g":740,"unit":"g"},"T":{"c":-2,"unit":"C"},"N":null}`), &all))
	assert.Equal(t, LengthOf(1, Inch), all.L)
	assert.Equal(t, WeightOf(740, Gram), all.W)
	assert.Equal(t, TemperatureOf(-2, DegreeCelsius), all.T)
	assert.Zero(t, all.N)
}

// Ensure that a zero value survives, and that a damaged one is refused, not guessed.
func TestJSONEdges(t *testing.T) {
	b, err := json.Marshal(Length{})
	require.NoError(t, err)
	var l Length
	require.NoError(t, json.Unmarshal(b, &l))
	assert.Zero(t, l)
	for _, bad := range []string{`{"m":1,"unit":"ell"}`, `{"unit":"cm"}`, `"52 cm"`, `{"m":"1","unit":"m"}`} {
		assert.Error(t, json.Unmarshal([]byte(bad), &l), bad)
	}
	var w Weight
	assert.Error(t, json.Unmarshal([]byte(`{"g":1,"unit":"oz"}`), &w))
	var c Temperature
	assert.Error(t, json.Unmarshal([]byte(`{"c":1,"unit":"K"}`), &c))
	_, err = json.Marshal(Weight{Grams(math.NaN()), Gram})
	assert.Error(t, err)
}
