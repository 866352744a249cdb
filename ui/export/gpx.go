package export

import (
	"io"

	"gloamline/geo/gpx"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// GPX writes a night's fish as waypoints and, with exact places, its tracks. A fish whose
// place is not known is left out, and their number comes back. A GPX file is made of
// coordinates: where none may be shown the error says so in two lines.
func GPX(out io.Writer, n *timeline.Night, tracks []journal.Track, show Show) (left int, err error) {
	if show.Places == NoPlaces {
		return 0, words.NoPlacesInGPX()
	}
	s := sheet{n, show, tracks}
	f := gpx.File{Head: gpx.Head{Name: words.ExportTitle(n.Log.Trip.Evening)}}
	for _, k := range n.Contacts {
		at, ok := s.where(k)
		if !ok {
			left++
			continue
		}
		f.Waypoints = append(f.Waypoints, gpx.Point{LatDeg: float64(at.Lat), LonDeg: float64(at.Lon), At: k.At.Mid().UTC(),
			Name: words.ExportFish(k), Note: words.ExportFishNote(k, s.pool(k.Pool), s.note(k.Head), n.Zone, show.Prefs)})
	}
	if show.Places == ExactPlaces {
		for _, t := range tracks {
			f.Lines = append(f.Lines, line(t, s))
		}
	}
	return left, gpx.Write(out, f)
}

func line(t journal.Track, s sheet) gpx.Line {
	l := gpx.Line{Kind: gpx.Track, Name: s.rod(t.Rod.Or(journal.ID{}))}
	var seg []gpx.Point
	for _, f := range t.Fixes {
		seg = append(seg, gpx.Point{LatDeg: float64(f.Place.Lat), LonDeg: float64(f.Place.Lon), At: f.At})
	}
	if len(seg) > 0 {
		l.Segments = [][]gpx.Point{seg}
	}
	return l
}
