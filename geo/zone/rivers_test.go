package zone

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that the zone is right on rivers of six continents; the file names its sources.
func TestRivers(t *testing.T) {
	data, err := os.ReadFile("testdata/rivers.tsv")
	require.NoError(t, err)
	n, continents := 0, map[string]bool{}
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n") {
		if strings.HasPrefix(line, "#") {
			continue
		}
		col := strings.Split(line, "\t")
		require.Len(t, col, 4, line)
		lon, err1 := strconv.ParseFloat(col[1], 64)
		lat, err2 := strconv.ParseFloat(col[2], 64)
		require.NoError(t, err1)
		require.NoError(t, err2)
		a, err := At(lat, lon)
		if assert.NoError(t, err, col[0]) {
			assert.Equal(t, col[3], a.Zone, "%s, near it %v", col[0], a.Others)
		}
		n++
		continents[strings.SplitN(col[3], "/", 2)[0]] = true
	}
	assert.GreaterOrEqual(t, n, 30)
	assert.GreaterOrEqual(t, len(continents), 5)
}
