package gpx

import (
	"cmp"
	"slices"
	"time"
)

// Kind says what a point is part of.
type Kind string

// The kinds.
const (
	Track    Kind = "track"
	Route    Kind = "route"
	Waypoint Kind = "waypoint"
)

// Point is one position. At is the zero time when the file gives none that can be read.
type Point struct {
	LatDeg, LonDeg float64
	At             time.Time // UTC
	HeightM        float64   // above sea level as the device sees it, if HasHeight
	HDOP           float64   // horizontal dilution of precision, no unit; 0: not given
	Line           int       // of the file, from 1
	HasHeight      bool
	Zoneless       bool // At had no zone and was taken as UTC
	Name           string
	Note           string // comment or description
}

// Part says where in the file a point stands: which track, route or waypoint, and
// which segment of a track, counted from 0.
type Part struct {
	Kind    Kind
	Number  int
	Segment int
}

// Line is a track or a route. A route has one segment at most.
type Line struct {
	Kind     Kind
	Name     string
	Segments [][]Point
}

// Head is what a file says of itself, with counts and warnings.
type Head struct {
	Version    string // "1.0", "1.1" or what stands there
	Creator    string // program or device, as written
	Name       string
	At         time.Time // when the file was made, if it says so; UTC
	Points     int       // of tracks and routes, that can be used
	Waypoints  int
	Timed      int       // points and waypoints with a time
	First      time.Time // earliest time of any point
	Last       time.Time
	Extensions []string // namespaces of what was passed over, at most 32
	Warnings   []Warning
}

// File is a whole file in memory.
type File struct {
	Head
	Lines     []Line // tracks and routes in the order of the file
	Waypoints []Point
}

// Fixes returns the timed points of all tracks by time. Of points equal in time and
// place one is kept; points of one time at different places all are, in file order.
func (f File) Fixes() []Point {
	var out []Point
	for _, l := range f.Lines {
		if l.Kind != Track {
			continue
		}
		for _, s := range l.Segments {
			for _, p := range s {
				if !p.At.IsZero() {
					out = append(out, p)
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Point) int { return a.At.Compare(b.At) })
	return dropTwins(out)
}

// dropTwins compares all points of one time: equal ones need not lie side by side.
func dropTwins(in []Point) []Point {
	out, from := in[:0], 0
	for _, p := range in {
		if from < len(out) && !out[from].At.Equal(p.At) {
			from = len(out)
		}
		if !slices.ContainsFunc(out[from:], func(q Point) bool { return samePlace(p, q) }) {
			out = append(out, p)
		}
	}
	return out
}

func samePlace(p, q Point) bool {
	return cmp.Compare(p.LatDeg, q.LatDeg) == 0 && cmp.Compare(p.LonDeg, q.LonDeg) == 0
}
