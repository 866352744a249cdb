package intake

import (
	"time"

	"gloamline/journal"
	"gloamline/journal/photo"
)

// Moment is one moment known twice: by the clock of a device, and truly. A photo of a
// watch's face gives one, and so does a fish that is both written down and photographed.
type Moment struct{ Shown, True time.Time }

// Offset is what is added to the device's clock to get the true time.
func (m Moment) Offset() time.Duration { return m.True.Sub(m.Shown) }

// ZoneBy says what told the zone of a clock.
type ZoneBy string

// In this order one is preferred to the next.
const (
	ByTag       ZoneBy = "offset tag" // the file notes the offset from UTC
	BySatellite ZoneBy = "satellite"  // the clock against the time of the fix, to a quarter of an hour
	ByNight     ZoneBy = "night"      // the zone of the night was assumed
	ByAnswer    ZoneBy = "answer"     // somebody was asked
	ByNothing   ZoneBy = ""           // not known: ask
)

// Reading is the clock of a camera turned into an instant.
type Reading struct {
	At      time.Time     // UTC, before any offset of the device; zero if not known
	By      ZoneBy        // what told the zone
	East    time.Duration // of UTC
	Fast    time.Duration // how far the clock was ahead of the fix, which may be older than the picture
	HasFast bool
	Doubt   journal.Warning // of a time that the clock showed twice or never
	OldFix  bool            // the fix does not fit the zone of the night and was not used
}

// quarter is the finest step between zones.
const quarter = 15 * time.Minute

// ReadClock turns what a photo says of its moment into an instant. The offset tag counts
// before the satellite fix, that before the answer given for the batch, and that before
// the zone of the night. night and answer may be nil.
func ReadClock(p *photo.Photo, night, answer *time.Location) Reading {
	if !p.Taken.Known() {
		return Reading{}
	}
	wall := p.Taken.Wall
	r := Reading{}
	if at, ok := p.Taken.Instant(); ok {
		r = Reading{At: at, By: ByTag, East: p.Taken.Offset}
	} else if r = bySatellite(p, night); r.By == ByNothing {
		old := r.OldFix
		switch {
		case answer != nil:
			r = inZone(wall, answer, ByAnswer)
		case night != nil:
			r = inZone(wall, night, ByNight)
		}
		r.OldFix = old
	}
	if r.By != ByNothing && p.Fix.HasClock {
		off := dayless(wall.Sub(p.Fix.At)-r.East, 0)
		if off.Abs() < quarter {
			r.Fast, r.HasFast = off, true
		}
	}
	return r
}

// bySatellite takes the clock against the fix. The date of a fix is often wrong by a day,
// so the times of day alone decide. Where the zone of the night is known, a difference
// from it of less than an hour means that the fix is old, not that the zone is odd.
func bySatellite(p *photo.Photo, night *time.Location) Reading {
	if !p.Fix.HasClock {
		return Reading{}
	}
	wall, near := p.Taken.Wall, time.Duration(0)
	if night != nil {
		_, sec := wall.In(night).Zone()
		near = time.Duration(sec) * time.Second
	}
	east := dayless(wall.Sub(p.Fix.At), near).Round(quarter)
	if d := (east - near).Abs(); night != nil && d > 0 && d < time.Hour {
		return Reading{OldFix: true}
	}
	return Reading{At: wall.Add(-east), By: BySatellite, East: east}
}

// dayless takes whole days off a difference, so that it comes nearest to near.
func dayless(d, near time.Duration) time.Duration {
	const day = 24 * time.Hour
	d = (d - near) % day
	switch {
	case d > day/2:
		d -= day
	case d <= -day/2:
		d += day
	}
	return d + near
}

// inZone reads a clock in a zone. What it showed twice is taken for the first time, what
// it skipped as if it had not been put on yet, both with a warning.
func inZone(wall time.Time, loc *time.Location, by ZoneBy) Reading {
	r := Reading{By: by}
	offset := func(t time.Time) time.Duration {
		_, sec := t.In(loc).Zone()
		return time.Duration(sec) * time.Second
	}
	const day = 24 * time.Hour
	before, after := offset(wall.Add(-day)), offset(wall.Add(day))
	early, late := wall.Add(-max(before, after)), wall.Add(-min(before, after))
	fits := func(t time.Time) bool { return t.Add(offset(t)).Equal(wall) }
	switch {
	case fits(early) && fits(late) && !early.Equal(late):
		r.At, r.Doubt = early, journal.WallTwice
	case fits(early):
		r.At = early
	case fits(late):
		r.At = late
	default:
		r.At, r.Doubt = wall.Add(-before), journal.WallSkipped
	}
	r.At = r.At.UTC()
	r.East = wall.Sub(r.At)
	return r
}

// DeviceOf names the device of a file, to tell clocks apart; "" if it does not say.
func DeviceOf(f *File) string {
	switch {
	case f.Photo != nil:
		return f.Photo.Device()
	case f.Kind == TrackFile:
		return f.Track.Creator
	}
	return ""
}
