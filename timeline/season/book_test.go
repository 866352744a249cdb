package season

import (
	"math"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/timeline"
)

func clock() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) }

// demoJournal is the demo in memory: 48 nights on two beats.
func demoJournal(t testing.TB) *journal.Journal {
	j, err := journal.Open(memory.New(journal.NewID()), clock)
	require.NoError(t, err)
	require.NoError(t, demo.Write(j, demo.Seed))
	return j
}

// Ensure that hours and contacts of every cell add up to what the night itself says,
// so that no figure of a season can contradict a night's page.
func TestDigestAddsUpToTheNight(t *testing.T) {
	j := demoJournal(t)
	nights, err := NewBook(j).Read(nil)
	require.NoError(t, err)
	require.Len(t, nights.Digests, 2*demo.Nights)
	require.Empty(t, nights.Left)
	placed := 0
	for _, d := range nights.Digests {
		n, err := timeline.Load(j, d.Trip)
		require.NoError(t, err)
		assert.Equal(t, n.Totals, d.Totals)
		k := 0
		for i, r := range d.Rods {
			sum := 0.0
			for _, c := range r.Cells {
				sum += c.Hours
			}
			assert.InDelta(t, n.Rods[i].Totals.InWater.Hours(), sum, 1e-6, "%s rod %d", d.Evening, i)
			assert.InDelta(t, sum, r.Hours, 1e-9)
			assert.InDelta(t, sum, total(r.Clock), 1e-9)
			assert.InDelta(t, sum, total(r.Dark), 1e-9)
			for _, f := range r.Fish {
				k++
				if f.Run < 0 {
					assert.Empty(t, f.In)
					continue
				}
				placed++
				share := 0.0
				for _, p := range f.In {
					share += p.Share
					assert.Equal(t, f.Run, int(r.Cells[p.Cell].Run))
				}
				assert.InDelta(t, 1, share, 1e-9)
				assert.InDelta(t, 1, total(f.Clock), 1e-9)
				assert.InDelta(t, 1, total(f.Dark), 1e-9)
			}
		}
		assert.Equal(t, n.Totals.Contacts(), k)
	}
	assert.Greater(t, placed, 100)
}

func total(bins []Bin) float64 {
	sum := 0.0
	for _, b := range bins {
		sum += b.V
	}
	return sum
}

// Ensure that cells lie where the night's own curves say: a minute's walk through each
// run, without the cutter, comes to the same hours in each band within the minutes that
// uncertain ends and edges move.
func TestDigestAgainstAWalkByMinutes(t *testing.T) {
	j := demoJournal(t)
	nights, err := NewBook(j).Read(nil)
	require.NoError(t, err)
	for _, d := range nights.Digests[:20] {
		n, err := timeline.Load(j, d.Trip)
		require.NoError(t, err)
		var walked, cut [Bands]float64
		grey := float64(n.Grey.Threshold.Lux)
		for i, r := range n.Rods {
			for _, run := range r.Runs {
				for at := run.From.Mid(); at.Before(run.To.Mid()); at = at.Add(10 * time.Second) {
					if in(r.Water, at) {
						darker := math.Log10(grey / float64(n.Light(at, run.Run.Pool).Lux))
						walked[bandOf(darker)] += 10. / 3600
					}
				}
			}
			for _, c := range d.Rods[i].Cells {
				cut[c.Band] += c.Hours
			}
		}
		for b := range walked {
			assert.InDelta(t, walked[b], cut[b], 0.06, "%s band %d", d.Evening, b)
		}
	}
}

func in(list []timeline.Interval, t time.Time) bool {
	for _, i := range list {
		if i.Contains(t) {
			return true
		}
	}
	return false
}

// Ensure that the book makes anew what a change touches and nothing else.
func TestBookFollowsChanges(t *testing.T) {
	j := demoJournal(t)
	b := NewBook(j)
	before, err := b.Read(nil)
	require.NoError(t, err)
	which := slices.IndexFunc(before.Digests, func(d *Digest) bool { return d.Totals.Contacts() > 0 })
	trip := before.Digests[which].Trip
	log, err := j.Night(trip)
	require.NoError(t, err)
	var contact journal.Entry
	for _, e := range log.Entries {
		if _, ok := e.(journal.Contact); ok {
			contact = e
		}
	}
	require.NotNil(t, contact)
	_, err = j.Do("remove contact", journal.Batch{Remove: []journal.Ref{contact.Ref()}})
	require.NoError(t, err)
	told := 0
	after, err := b.Read(func(done, of int) { told = of })
	require.NoError(t, err)
	assert.Equal(t, 1, told)
	assert.Equal(t, before.Digests[which].Totals.Contacts()-1, after.Digests[which].Totals.Contacts())
	for i := range before.Digests {
		if i != which {
			assert.Same(t, before.Digests[i], after.Digests[i])
		}
	}
}
