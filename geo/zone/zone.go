package zone

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	tzfrellite "github.com/ringsaturn/tzf-rel-lite"
)

// ErrSea says that the position lies in no land's zone: on the open sea, where a ship
// keeps the time of its longitude.
var ErrSea = errors.New("the position lies on the open sea, in no country's time zone")

// Near is within how many kilometres of the position other zones are named.
const Near = 5.0

// Answer is the zone of a position.
type Answer struct {
	Zone string // IANA name such as Europe/London
	// Others are the zones that the position lies in too, where borders are
	// disputed, or whose border is within 5 km; nearest first.
	Others []string
}

var world = sync.OnceValues(func() (atlas, error) { return newAtlas(tzfrellite.LiteCompressData) })

// At returns the zone at a latitude and longitude on WGS84 in degrees. Beside a border
// or coast, where the simplified map has a gap, it is the nearest zone within 5 km.
func At(latDeg, lonDeg float64) (Answer, error) {
	if !(math.Abs(latDeg) <= 90 && math.Abs(lonDeg) <= 180) {
		return Answer{}, fmt.Errorf("no position has the latitude %v and longitude %v", latDeg, lonDeg)
	}
	a, err := world()
	if err != nil {
		return Answer{}, fmt.Errorf("the map of time zones is damaged: %w", err)
	}
	names := a.at(latDeg, lonDeg)
	if len(names) == 0 {
		return Answer{}, ErrSea
	}
	return Answer{Zone: names[0], Others: names[1:]}, nil
}

// Release returns the release of the borders, such as 2025b; "" if they are damaged.
func Release() string {
	a, _ := world()
	return a.release
}

// found is a zone in or near which the position lies.
type found struct {
	name string
	in   bool
	km   float64 // to the border
	size float64 // square degrees of the area that holds it
}

// at returns the zones that hold the position, the smallest area first, then those
// nearby, the nearest first.
func (a atlas) at(lat, lon float64) []string {
	zones := map[string]found{}
	for _, area := range a.areas {
		if !area.near(lat, lon) || strings.HasPrefix(area.zone, "Etc/") {
			continue
		}
		in, km := area.look(lat, lon)
		f, seen := zones[area.zone]
		if !seen {
			f = found{name: area.zone, km: math.Inf(1)}
		}
		if f.km = min(f.km, km); in {
			f.in, f.size = true, area.size
		}
		if f.in || f.km <= Near {
			zones[f.name] = f
		}
	}
	var out []found
	for _, f := range zones {
		out = append(out, f)
	}
	slices.SortFunc(out, func(a, b found) int {
		switch {
		case a.in && !b.in:
			return -1
		case b.in && !a.in:
			return 1
		case a.in:
			return cmp.Or(cmp.Compare(a.size, b.size), cmp.Compare(a.name, b.name))
		}
		return cmp.Or(cmp.Compare(a.km, b.km), cmp.Compare(a.name, b.name))
	})
	names := make([]string, len(out))
	for i, f := range out {
		names[i] = f.name
	}
	return names
}
