package season

import (
	"gloamline/journal"
	"gloamline/timeline"
)

// todo is what Step has still to do: first to look for logged moments, which decide the
// thresholds of the beats, then to make digests.
type todo struct {
	look  []journal.Trip
	found bool // all were looked through: what follows holds
	trips []journal.Trip
	of    int // nights there are
	greys map[journal.ID]timeline.Threshold
}

// lookAtOnce is for how many nights one can look for logged moments in the time of a digest.
const lookAtOnce = 3

// Step makes the digests of up to so many nights, the latest first, and returns how many
// are left for other steps and how many nights there are: a window reads on between its
// frames. Read then has nothing more to make. The first steps look through the nights for
// logged moments of trees going grey, and leave as many as there were.
func (b *Book) Step(nights int) (left, of int, err error) {
	nights = max(nights, 1)
	if b.todo == nil {
		if b.shared == nil {
			if b.shared, err = b.readShared(); err != nil {
				b.shared = nil
				return 0, 0, err
			}
		}
		trips, err := b.j.Trips()
		if err != nil {
			return 0, 0, err
		}
		b.todo = &todo{look: b.loader.Unread(trips), of: len(trips)}
	}
	t := b.todo
	if n := min(nights*lookAtOnce, len(t.look)); n > 0 {
		if err := b.loader.ReadMoments(t.look[:n], b.shared.beats); err != nil {
			return 0, 0, err
		}
		if t.look = t.look[n:]; len(t.look) > 0 {
			return t.of, t.of, nil
		}
	}
	if !t.found {
		trips, stale, greys, err := b.stale()
		if err != nil {
			return 0, 0, err
		}
		t.found, t.trips, t.of, t.greys = true, stale, len(trips), greys
	}
	n := min(nights, len(t.trips))
	if err := b.make(t.trips[:n], t.greys, nil); err != nil {
		return 0, 0, err
	}
	t.trips = t.trips[n:]
	return len(t.trips), t.of, nil
}
