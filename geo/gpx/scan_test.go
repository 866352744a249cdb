package gpx

import (
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that Scan holds on to nothing: at the last of 30,000 points the heap is
// hardly larger than at the first.
func TestScanKeepsNothing(t *testing.T) {
	held := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	var first, last uint64
	n := 0
	_, err := Scan(endless(2<<20), Options{}, func(Part, Point) error {
		switch n++; n {
		case 1:
			first = held()
		case 25_000:
			last = held()
		}
		return nil
	})
	require.NoError(t, err)
	require.Greater(t, n, 25_000)
	assert.Less(t, last, first+(256<<10))
}
