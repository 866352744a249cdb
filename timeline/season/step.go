package season

import (
	"gloamline/journal"
	"gloamline/timeline"
)

// todo is what Step has still to make.
type todo struct {
	trips []journal.Trip
	of    int // nights there are
	greys map[journal.ID]timeline.Threshold
}

// Step makes the digests of up to so many nights, the latest first, and returns how many
// are left for other steps and how many nights there are: a window reads on between its
// frames. Read then has nothing more to make. The first step reads the logs of all nights
// for the thresholds of the beats, a third of the whole cost.
func (b *Book) Step(nights int) (left, of int, err error) {
	if b.todo == nil {
		trips, stale, greys, err := b.stale()
		if err != nil {
			return 0, 0, err
		}
		b.todo = &todo{stale, len(trips), greys}
	}
	n := min(max(nights, 1), len(b.todo.trips))
	if err := b.make(b.todo.trips[:n], b.todo.greys, nil); err != nil {
		return 0, 0, err
	}
	b.todo.trips = b.todo.trips[n:]
	return len(b.todo.trips), b.todo.of, nil
}
