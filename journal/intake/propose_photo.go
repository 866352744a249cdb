package intake

import (
	"sort"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/photo"
	"gloamline/journal/units"
)

const (
	// photoSlack is how well a moment is known whose clock nothing vouches for: cameras
	// that are set by hand drift by minutes (common practice, no source).
	photoSlack = 5 * time.Minute
	// vouched is how near a clock must be to its satellite fix to count as right.
	vouched = 2 * time.Minute
	// farM is how far from the beat a position may lie and still be of this night.
	farM = 3000
	// poolM is how far from its water a fish may be photographed.
	poolM = 25
	// trackGap is over how long a silence a track still says where one was.
	trackGap = 5 * time.Minute
)

// photo proposes the picture at its moment and place, and, not ticked, a fish landed there.
func (m *maker) photo(i int) {
	s := &m.Sources[i]
	p := s.File.Photo
	s.Clock = ReadClock(p, m.zone, m.order.Zone)
	if s.Clock.By == ByNothing {
		m.remark(i, Remark{Kind: NoMoment})
		return
	}
	offset, given := m.order.Clocks[s.Device]
	if s.Known {
		offset, given = s.Record.Offset, given || s.Record.Offset != 0
	}
	at := s.Clock.At.Add(offset)
	m.zoneOf(i)
	m.clockRemarks(i, given)
	if !m.inNight(at) {
		m.remark(i, Remark{Kind: OtherNight, At: at})
		return
	}
	w := journal.Exact(at)
	if !given && !(s.Clock.HasFast && s.Clock.Fast.Abs() <= vouched) {
		w = m.inside(journal.About(at, photoSlack))
	}
	spot := m.spot(i, p, at)
	pic := journal.Photo{Head: m.head(i, "photo", keyOf(s.File, "photo"), w), SHA256: s.File.SHA256, Name: s.File.Name, Copied: m.order.Copied, Thumb: s.File.Thumb, Spot: spot}
	pic.Warnings = doubts(s.Clock)
	if !m.order.Copied {
		pic.Link = s.File.Path
	}
	if s.File.Thumb == nil {
		m.remark(i, Remark{Kind: NoThumb})
	}
	fish := journal.Contact{Head: m.head(i, "photo", keyOf(s.File, "fish"), w), Touch: journal.Landed, Spot: spot}
	fish.Warnings = doubts(s.Clock)
	fish.Pool = m.poolOf(spot)
	if near, ok := m.fishAt(w); ok {
		pic.Of = journal.Of(near.ID)
	}
	m.add(Proposal{Key: pic.From.Key, Source: i, Record: pic, At: at, Confidence: 1, Ticked: true})
	if !m.Rod.IsZero() {
		m.add(Proposal{Key: fish.From.Key, Source: i, Record: fish, At: at, Confidence: 1})
	}
}

func doubts(r Reading) []journal.Warning {
	if r.Doubt == "" {
		return nil
	}
	return []journal.Warning{r.Doubt}
}

// zoneOf notes what zone was assumed.
func (m *maker) zoneOf(i int) {
	s := &m.Sources[i]
	switch s.Clock.By {
	case ByNight:
		if m.unzoned = append(m.unzoned, i); !s.Known {
			s.Record.Zone = m.Log.Trip.Zone
		}
		m.remark(i, Remark{Kind: ZoneAssumed, Zone: m.Log.Trip.Zone})
	case ByAnswer:
		s.Record.Zone = m.order.Zone.String()
		m.remark(i, Remark{Kind: ZoneAssumed, Zone: s.Record.Zone})
	}
}

// clockRemarks say what the satellite fix thinks of the clock.
func (m *maker) clockRemarks(i int, given bool) {
	s := &m.Sources[i]
	if s.Clock.OldFix {
		m.remark(i, Remark{Kind: OldFix})
	}
	if !given && s.Clock.HasFast && s.Clock.Fast.Abs() > vouched {
		m.remark(i, Remark{Kind: ClockOff, By: s.Clock.Fast})
		s.Hint = Hint{-s.Clock.Fast, FromSatellite}
	}
}

// spot is where a picture was taken: its own position, else the place of the track.
func (m *maker) spot(i int, p *photo.Photo, at time.Time) journal.Field[journal.Place] {
	if p.Fix.HasPlace {
		place := geo.Place{Lat: p.Fix.Lat, Lon: p.Fix.Lon}
		d := m.away(place)
		if d <= farM {
			return journal.Of(place)
		}
		m.remark(i, Remark{Kind: FarAway, Metres: float64(d)})
	}
	return m.placeAt(at)
}

// away is how far a place lies from the nearest pool, or from the beat if none is drawn.
func (m *maker) away(p geo.Place) units.Metres {
	if len(m.layout.Pools) == 0 {
		if at := m.beat.Place(); !at.IsZero() {
			pl := geo.NewPlane(at)
			return pl.At(p).Distance(geo.Point{})
		}
		return 0
	}
	best := units.Metres(1e9)
	q := m.layout.At(p)
	for i := range m.layout.Pools {
		best = min(best, m.layout.Pools[i].Area.Edge(q).Distance)
	}
	return best
}

// placeAt is where the rod's track was, by the median of a minute; unknown in a silence.
func (m *maker) placeAt(at time.Time) journal.Field[journal.Place] {
	lo := sort.Search(len(m.walked), func(i int) bool { return !m.walked[i].At.Before(at.Add(-30 * time.Second)) })
	hi := sort.Search(len(m.walked), func(i int) bool { return m.walked[i].At.After(at.Add(30 * time.Second)) })
	if lo == hi { // the nearest position before or after
		best, least := -1, trackGap
		for _, i := range []int{lo - 1, hi} {
			if i >= 0 && i < len(m.walked) {
				if d := m.walked[i].At.Sub(at).Abs(); d < least {
					best, least = i, d
				}
			}
		}
		if best < 0 {
			return journal.Field[journal.Place]{}
		}
		return journal.Of(m.walked[best].Place)
	}
	var lat, lon []float64
	for _, f := range m.walked[lo:hi] {
		lat, lon = append(lat, float64(f.Place.Lat)), append(lon, float64(f.Place.Lon))
	}
	return journal.Of(geo.Place{Lat: units.Degrees(median(lat)), Lon: units.Degrees(median(lon))})
}

// poolOf is the pool a place lies in or beside.
func (m *maker) poolOf(spot journal.Field[journal.Place]) (pool journal.Field[journal.ID]) {
	place, ok := spot.Get()
	if !ok {
		return pool
	}
	s, ok := m.layout.Snap(place, poolM)
	if !ok {
		return pool
	}
	return journal.Of(s.Pool)
}

// fishAt is the one fish written down whose moment may be that of the picture.
func (m *maker) fishAt(w journal.When) (found journal.Contact, ok bool) {
	n := 0
	for _, e := range m.Log.Entries {
		c, is := e.(journal.Contact)
		if !is || !m.touches(c, w) {
			continue
		}
		if n++; n > 1 {
			return journal.Contact{}, false
		}
		found = c
	}
	return found, n == 1
}

// touches reports whether a fish may have come at a moment, give or take a minute.
func (m *maker) touches(c journal.Contact, w journal.When) bool {
	s := m.Log.At(c)
	return !s.Hi.Before(w.Lo.Add(-time.Minute)) && !s.Lo.After(w.Hi.Add(time.Minute))
}
