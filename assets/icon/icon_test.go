package icon

import (
	"bytes"
	"image/png"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that each icon is one shape that a look can recolour: no stroke, no colour
// of its own.
func TestIconsAreOfOneColour(t *testing.T) {
	entries, err := files.ReadDir(".")
	require.NoError(t, err)
	n := 0
	for _, e := range entries {
		name, ok := strings.CutSuffix(e.Name(), ".svg")
		if !ok || name == "app" {
			continue
		}
		n++
		s := string(SVG(name))
		assert.Contains(t, s, `viewBox="0 0 24 24"`, name)
		for _, not := range []string{"stroke", "fill", "#", "rgb", "style"} {
			assert.NotContains(t, s, not, name)
		}
	}
	assert.Greater(t, n, 10)
	assert.Nil(t, SVG("nothing"))
}

func TestAppIcon(t *testing.T) {
	img, err := png.Decode(bytes.NewReader(App()))
	require.NoError(t, err)
	assert.Equal(t, 256, img.Bounds().Dx())
	assert.Equal(t, 256, img.Bounds().Dy())
}
