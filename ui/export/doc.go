// Package export hands a night and a year's returns to other programs: GPX 1.1,
// GeoJSON (RFC 7946) and CSV (RFC 4180).
//
// Who may see what is an input, Show, and its zero value hides whatever gives a water
// or a person away: no coordinates, pools by number, no names, no notes, times to 5
// minutes and no lux, since an exact moment with its light tells a latitude. Notes marked private
// leave in no case, nor do thumbnails.
//
// Units stand in the names of columns and members: mm, g, lx, °C as celsius, m. Times are
// UTC in RFC 3339; a column with the local clock stands beside. An uncertain moment has
// its two ends. Unknown is an empty cell or a missing member; "none" is said so.
//
// GeoJSON has its box (section 5), which tells no more than the places in it. What the GPX 1.1 schema asks of
// elements, their order and number, and values is restated in a table (gpxschema_test.go), and all nights of the demo are held against
// it; a few were also held against such a restatement by xmllint 2.9.14. The schema itself is not kept here: it names no licence.
// GeoJSON was read back by orb/geojson 0.14 by hand, the same again; that package drags too much in for a test.
//
// Not done: what a journal holds beyond its nights (the archive has all of it), and
// shapes across the 180th meridian.
package export

import (
	"fmt"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// Places says how exactly positions are told.
type Places int

const (
	NoPlaces    Places = iota // none at all
	PoolPlaces                // the middle of the pool
	ExactPlaces               // as noted, with outlines and tracks
)

// Show says what leaves. The zero value hides the most.
type Show struct {
	Places    Places
	People    bool // names; else rod 1, rod 2
	PoolNames bool // else pool 1, pool 2, as they lie along the beat
	Notes     bool // but not those marked private
	Prefs     words.Prefs
}

// rounding is to what times are rounded where places are hidden.
const rounding = 5 * time.Minute

// sheet is a night as it is shown.
type sheet struct {
	n      *timeline.Night
	show   Show
	tracks []journal.Track
}

func (s sheet) at(t time.Time) time.Time {
	if s.show.Places == NoPlaces {
		return t.Round(rounding)
	}
	return t
}

func (s sheet) utc(t time.Time) string { return s.at(t).UTC().Format(time.RFC3339) }

func (s sheet) rod(id journal.ID) string {
	for i, r := range s.n.Rods {
		if r.Rod.ID == id {
			if s.show.People {
				return r.Name
			}
			return fmt.Sprintf("rod %d", i+1)
		}
	}
	return ""
}

func (s sheet) pool(p geo.Pool) string {
	if s.show.PoolNames {
		return p.Name
	}
	for i, q := range s.n.Beat.InOrder() {
		if q.ID == p.ID {
			return fmt.Sprintf("pool %d", i+1)
		}
	}
	return ""
}

func (s sheet) poolOf(id journal.ID) (geo.Pool, bool) {
	if id.IsZero() {
		return geo.Pool{}, false
	}
	return s.n.Beat.Pool(id)
}

// where returns where a fish was, as exactly as is shown.
func (s sheet) where(k timeline.Contact) (geo.Place, bool) {
	if at, ok := k.Spot.Get(); ok && s.show.Places == ExactPlaces {
		return at, true
	}
	if s.show.Places == NoPlaces || !k.HasPool {
		return geo.Place{}, false
	}
	at := k.Pool.Place()
	return at, !at.IsZero()
}

func (s sheet) note(h journal.Head) string {
	if !s.show.Notes {
		return ""
	}
	return h.Note
}
