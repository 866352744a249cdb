package draft

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Ensure that no list ends the program, and that what is read is a skyline that can be used.
func FuzzSkyline(f *testing.F) {
	for _, s := range []string{"90 12, 120 15; 200-220 5", "350-10 8", "ne 12\nSSW 4", "bearing;angle\n90;12,5\n10;3", "\uFEFF# x\n90\t1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		var e *TextError
		typed, err := ParseSkyline(s)
		if err != nil {
			require.ErrorAs(t, err, &e)
			require.True(t, e.At >= 0 && e.At <= len(s))
		}
		require.NoError(t, typed.Check())
		list, err := ReadClinometer(strings.NewReader(s), 3)
		if err != nil {
			require.ErrorAs(t, err, &e)
		}
		require.NoError(t, list.Check())
	})
}
