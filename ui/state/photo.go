package state

import (
	"time"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/timeline"
)

// Shot is what a file holds that may become a photo.
type Shot = album.Shot

// LookAtPhoto reads the file of a picture, which takes a second for a large one. It may
// be called from any goroutine; hand what it returns to ShowShot.
func LookAtPhoto(path string) (Shot, error) { return album.Look(path) }

// SetAlbum says where copies of originals go; nil: nowhere, so that photos are linked.
func (d *Desk) SetAlbum(a *album.Album) { d.album = a }

// ShowShot keeps what was read of a file, so that a card that is given its name does not
// read it again.
func (d *Desk) ShowShot(s Shot) { d.shot = s }

// shotOf reads a file, unless it was read last and has not changed since.
func (d *Desk) shotOf(path string) (Shot, error) {
	if path == d.shot.Path && d.shot.Fresh() {
		return d.shot, nil
	}
	s, err := LookAtPhoto(path)
	if err == nil {
		d.shot = s
	}
	return s, err
}

// takenAt is when a picture was taken, to the minute, if that lies in the night. A clock
// that does not say its zone is taken for one of the beat's.
func takenAt(n *timeline.Night, s Shot) (at time.Time, known, inNight bool) {
	t := s.Taken
	if !t.Known() {
		return at, false, false
	}
	at, zoned := t.Instant()
	if !zoned {
		w := t.Wall
		at = time.Date(w.Year(), w.Month(), w.Day(), w.Hour(), w.Minute(), w.Second(), 0, n.Zone)
		evening := n.Log.Trip.Evening
		if journal.EveningOf(at, n.Zone) == evening { // the one resolver decides where the clock showed it twice
			if r, err := journal.ResolveWall(evening, n.Zone, w.Hour(), w.Minute(), time.Time{}, time.Time{}); err == nil {
				at = r.At
			}
		}
	}
	at = at.Truncate(time.Minute)
	return at, true, journal.EveningOf(at, n.Zone) == n.Log.Trip.Evening
}
