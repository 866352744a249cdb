package timeline

import (
	"runtime"
	"sync"

	"gloamline/journal"
)

// abreast fetches the nights of trips one after another, as a journal must, and works on them
// side by side. It returns what came of each and why one failed; err says that the journal
// itself could not be read.
func abreast[T any](trips []journal.Trip, fetch func(journal.Trip) (journal.Sealed, error), work func(journal.Trip, journal.Sealed) (T, error)) (out []T, faults []error, err error) {
	type job struct {
		i     int
		night journal.Sealed
	}
	jobs := make(chan job, 8)
	out, faults = make([]T, len(trips)), make([]error, len(trips))
	var all sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(trips)) {
		all.Go(func() {
			for k := range jobs {
				out[k.i], faults[k.i] = work(trips[k.i], k.night)
			}
		})
	}
	for i, t := range trips {
		var night journal.Sealed
		if night, err = fetch(t); err != nil {
			break
		}
		jobs <- job{i, night}
	}
	close(jobs)
	all.Wait()
	return out, faults, err
}
