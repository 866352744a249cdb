package season

import (
	"fmt"
	"math/rand/v2"
	"runtime"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/timeline"
)

// many are journals of invented nights with 50 entries each, made once for all
// benchmarks: 26 nights a season on the demo's Home Beat.
var many = map[int]func(testing.TB) *journal.Journal{}

func init() {
	for _, n := range []int{26, 260, 2600} {
		var once sync.Once
		var j *journal.Journal
		many[n] = func(t testing.TB) *journal.Journal {
			once.Do(func() { j = manyNights(t, n) })
			return j
		}
	}
}

func manyNights(t testing.TB, nights int) *journal.Journal {
	from := demoJournal(t)
	beats, err := journal.All[journal.Beat](from)
	require.NoError(t, err)
	flies, err := journal.All[journal.Fly](from)
	require.NoError(t, err)
	people, err := journal.All[journal.Person](from)
	require.NoError(t, err)
	rules, err := journal.All[journal.HouseRule](from)
	require.NoError(t, err)
	j, err := journal.Open(memory.New(journal.NewID()), clock)
	require.NoError(t, err)
	var b journal.Batch
	beat := beats[0]
	b.Put = append(b.Put, beat)
	for _, f := range flies {
		b.Put = append(b.Put, f)
	}
	for _, p := range people {
		b.Put = append(b.Put, p)
	}
	for _, r := range rules {
		b.Put = append(b.Put, r)
	}
	_, err = j.Do("set up", b)
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(7, 8))
	loc, err := time.LoadLocation("Europe/London")
	require.NoError(t, err)
	for i := range nights {
		d := journal.Date{Year: 2026 - i/26, Month: time.May, Day: 20}.Add(i % 26 * 4)
		trip := journal.Trip{ID: journal.NewID(), Evening: d, Zone: "Europe/London", Beat: beat.ID}
		rod := journal.Rod{ID: journal.NewID(), Person: people[i%2].ID}
		trip.Rods = []journal.Rod{rod}
		batch := journal.Batch{Put: []journal.Record{trip}}
		start, _ := d.Night(loc)
		at := start.Add(10 * time.Hour)
		head := func(minute int) journal.Head {
			return journal.Head{ID: journal.NewID(), Trip: trip.ID, Rod: rod.ID, When: journal.Exact(at.Add(time.Duration(minute) * time.Minute))}
		}
		pools := beat.On(d).InOrder()
		put := func(e journal.Entry) { batch.Put = append(batch.Put, e) }
		put(journal.Sky{Head: head(0), Cloud: journal.Of(r.IntN(9)), CloudKind: journal.Of(journal.AverageCloud)})
		put(journal.Water{Head: head(1), Trend: journal.Of(journal.Trends[r.IntN(5)])})
		for k := range 8 {
			run := journal.Run{Head: head(30 * k), Pool: pools[k%len(pools)].ID}
			run.Until = journal.Of(journal.About(at.Add(time.Duration(30*k+25)*time.Minute), 4*time.Minute))
			put(run)
			put(journal.Rig{Head: head(30 * k), Setup: journal.Setup{Flies: []journal.Mounted{
				{Position: 0, Fly: journal.Of(flies[r.IntN(len(flies))].ID)}, {Position: 1, Fly: journal.Of(flies[r.IntN(len(flies))].ID)},
			}}})
			put(journal.Way{Head: head(30*k + 10), Speed: journal.Of(journal.Speeds[r.IntN(5)])})
			put(journal.Contact{Head: journal.Head{ID: journal.NewID(), Trip: trip.ID, Rod: rod.ID, When: journal.About(at.Add(time.Duration(30*k+12)*time.Minute), 8*time.Minute)},
				Touch: journal.Touches[r.IntN(6)], Pool: journal.Of(run.Pool)})
			if k%2 == 0 {
				put(journal.Contact{Head: head(30*k + 17), Touch: journal.Touches[r.IntN(6)]})
			}
			put(journal.Note{Head: journal.Head{ID: journal.NewID(), Trip: trip.ID, When: head(30*k + 20).When, Note: "a note of the night"}})
		}
		for len(batch.Put) < 51 {
			put(journal.Weather{Head: journal.Head{ID: journal.NewID(), Trip: trip.ID, When: head(len(batch.Put)).When}, Wind: journal.Of(2)})
		}
		_, err := j.Do("add night", batch)
		require.NoError(t, err)
	}
	return j
}

// BenchmarkFirstPass reads the journal and makes every digest. grown-MB is how far the heap
// grew beyond the journal in memory that it reads from, kept-MB what stays.
func BenchmarkFirstPass(b *testing.B) {
	for _, n := range []int{26, 260, 2600} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			j := many[n](b)
			var before, after runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&before)
			var nights Nights
			var book *Book
			for b.Loop() {
				book = NewBook(j)
				var err error
				nights, err = book.Read(nil)
				require.NoError(b, err)
			}
			runtime.ReadMemStats(&after)
			b.ReportMetric(float64(after.HeapSys-before.HeapSys)/1e6, "grown-MB")
			runtime.GC()
			runtime.ReadMemStats(&after)
			b.ReportMetric((float64(after.HeapAlloc)-float64(before.HeapAlloc))/1e6, "kept-MB")
			require.Len(b, nights.Digests, n)
			runtime.KeepAlive(book)
		})
	}
}

// BenchmarkFilter is a change of filter or measure once the digests are there: from the
// choice to every table.
func BenchmarkFilter(b *testing.B) {
	for _, n := range []int{26, 260, 2600} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			nights, err := NewBook(many[n](b)).Read(nil)
			require.NoError(b, err)
			for b.Loop() {
				Fold(nights, View{Measure: Touched})
			}
		})
	}
}

// BenchmarkSettle is what follows off the window's thread: tests and resampling.
func BenchmarkSettle(b *testing.B) {
	for _, n := range []int{26, 260, 2600} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			nights, err := NewBook(many[n](b)).Read(nil)
			require.NoError(b, err)
			s := Fold(nights, View{})
			for b.Loop() {
				s.Settle()
			}
		})
	}
}

// BenchmarkDigest is one night without its building.
func BenchmarkDigest(b *testing.B) {
	j := many[26](b)
	trips, err := j.Trips()
	require.NoError(b, err)
	n, err := timeline.Load(j, trips[3].ID)
	require.NoError(b, err)
	b.Run("build", func(b *testing.B) {
		set, err := timeline.NewLoader(j).Setting(n.Log.Trip)
		require.NoError(b, err)
		for b.Loop() {
			_, err := timeline.Build(n.Log, set)
			require.NoError(b, err)
		}
	})
	b.Run("digest", func(b *testing.B) {
		for b.Loop() {
			DigestOf(n, nil)
		}
	})
	b.Run("read", func(b *testing.B) {
		for b.Loop() {
			_, err := j.Night(n.Log.Trip.ID)
			require.NoError(b, err)
		}
	})
}
