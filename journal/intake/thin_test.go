package intake_test

import (
	"encoding/json"
	"sort"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/journal/intaketest"
	"gloamline/journal/units"
)

// Ensure that no position left out lies further off than is said, that both ends stay, and
// that what is stored passes the journal's checks and is small.
func TestThin(t *testing.T) {
	for _, seed := range []uint64{1, 2, 3} {
		n := intaketest.Walk(seed, intaketest.Common())
		kept, within := intake.Thin(n.Fixes)
		t.Logf("%d of %d, within %.1f m", len(kept), len(n.Fixes), float64(within))
		require.LessOrEqual(t, len(kept), 4000)
		require.True(t, kept[0].At.Equal(n.Fixes[0].At) && kept[len(kept)-1].At.Equal(n.Fixes[len(n.Fixes)-1].At))
		pl := geo.NewPlane(n.Fixes[0].Place)
		for _, f := range n.Fixes {
			i := sort.Search(len(kept), func(i int) bool { return !kept[i].At.Before(f.At) })
			q := pl.At(kept[i].Place)
			if i > 0 && !kept[i].At.Equal(f.At) {
				p := pl.At(kept[i-1].Place)
				share := units.Metres(float64(f.At.Sub(kept[i-1].At)) / float64(kept[i].At.Sub(kept[i-1].At)))
				q = geo.Point{X: p.X + share*(q.X-p.X), Y: p.Y + share*(q.Y-p.Y)}
			}
			require.LessOrEqual(t, q.Distance(pl.At(f.Place)), within+0.2, f.At)
		}
		track := journal.Track{ID: journal.NewID(), Fixes: kept}
		require.NoError(t, journal.Check(track))
		b, err := json.Marshal(track)
		require.NoError(t, err)
		assert.Less(t, len(b), 400_000)
	}
}

// Ensure that a short track stays whole where it bends, and loses what lies on the way.
func TestThinShort(t *testing.T) {
	at := time.Date(2026, 7, 4, 22, 0, 0, 0, time.UTC)
	fix := func(min int, lat float64) intake.Fix {
		return intake.Fix{At: at.Add(time.Duration(min) * time.Minute), Place: geo.Place{Lat: units.Degrees(lat), Lon: -4}}
	}
	kept, within := intake.Thin([]intake.Fix{fix(0, 55), fix(1, 55.001), fix(2, 55.002), fix(3, 55.001)})
	assert.Len(t, kept, 3)
	assert.InDelta(t, 3, float64(within), 0)
	kept, _ = intake.Thin([]intake.Fix{fix(0, 55), fix(9, 55.001), fix(10, 55.002)}) // on the line, but early
	assert.Len(t, kept, 3)
	kept, _ = intake.Thin([]intake.Fix{fix(0, 55)})
	assert.Len(t, kept, 1)
	kept, _ = intake.Thin(nil)
	assert.Empty(t, kept)
}

func BenchmarkThin(b *testing.B) {
	n := intaketest.Walk(1, intaketest.Common())
	b.ReportAllocs()
	for b.Loop() {
		intake.Thin(n.Fixes)
	}
}
