package intake

import (
	"errors"
	"math"
	"time"

	"gloamline/journal/gauge"
)

// Summary is a file in figures, so that a reader can be checked against any file. Its
// JSON has only the members that its kind can have; a time is RFC 3339.
type Summary struct {
	File   string `json:"file"`
	Kind   Kind   `json:"kind,omitempty"`
	Bytes  int64  `json:"bytes"`
	SHA256 string `json:"sha256,omitempty"`
	Error  string `json:"error,omitempty"` // place and cause
	Do     string `json:"do,omitempty"`    // what to do about it

	First string `json:"first,omitempty"` // earliest time of a position or reading
	Last  string `json:"last,omitempty"`

	*TrackSummary
	*PhotoSummary
	*GaugeSummary

	Warnings []string `json:"warnings"`
}

// TrackSummary counts as the file has it: what stands twice counts twice.
type TrackSummary struct {
	Points    int      `json:"points"` // of tracks and routes, usable
	Timed     int      `json:"timed"`  // waypoints too
	Waypoints int      `json:"waypoints"`
	Version   string   `json:"version,omitempty"`
	Creator   string   `json:"creator,omitempty"`
	Passed    []string `json:"extensions,omitempty"` // namespaces passed over
}

// PhotoSummary has null for what is not known.
type PhotoSummary struct {
	Format      string   `json:"format,omitempty"`
	Taken       *string  `json:"taken"`  // UTC, if the file tells its zone
	Local       *string  `json:"local"`  // the camera's clock
	Offset      *string  `json:"offset"` // east of UTC, as noted
	FixAt       *string  `json:"fix_at"` // UTC, of the satellite fix
	Lat         *float64 `json:"lat"`
	Lon         *float64 `json:"lon"`
	Device      string   `json:"device,omitempty"`
	Orientation int      `json:"orientation"`
	Width       int      `json:"width"`
	Height      int      `json:"height"`
}

// GaugeSummary counts the first series of levels, the first of any kind if there is none.
type GaugeSummary struct {
	Layout     string          `json:"layout,omitempty"`
	Readings   int             `json:"readings"` // usable ones
	Missing    int             `json:"missing"`
	Unit       string          `json:"unit"`        // of the values as read
	SourceUnit string          `json:"source_unit"` // as in the file, "" if it gave none
	Station    string          `json:"station,omitempty"`
	Series     []SeriesSummary `json:"series"`
	Columns    []ColumnSummary `json:"columns,omitempty"` // of a plain table, to choose from
}

// SeriesSummary is one series of a gauge's file.
type SeriesSummary struct {
	What       string   `json:"what"`
	Station    string   `json:"station,omitempty"`
	Datum      string   `json:"datum,omitempty"`
	Unit       string   `json:"unit"`
	SourceUnit string   `json:"source_unit"`
	Readings   int      `json:"readings"`
	Missing    int      `json:"missing"`
	Least      *float64 `json:"least"`
	Most       *float64 `json:"most"`
	MostAt     string   `json:"most_at,omitempty"`
	First      string   `json:"first,omitempty"`
	Last       string   `json:"last,omitempty"`
}

// ColumnSummary is a column of a plain table, counted from 1.
type ColumnSummary struct {
	Column  int      `json:"column"`
	Name    string   `json:"name"`
	Kind    string   `json:"kind"`
	Samples []string `json:"samples"`
}

// Unreadable is a file that could not be opened.
func Unreadable(name string, err error) *File {
	return &File{Name: name, Path: name, Fault: &Fault{What: "the file cannot be opened: " + err.Error(), Do: "See that it is there and may be read.", Err: err}}
}

// Summarise puts a file into figures.
func Summarise(f *File) Summary {
	s := Summary{File: f.Name, Kind: f.Kind, Bytes: f.Size, SHA256: f.SHA256, Warnings: f.Warnings()}
	if f.Fault != nil {
		s.Error, s.Do = f.Fault.Error(), f.Fault.Do
	}
	switch {
	case f.Kind == TrackFile:
		h := f.Track
		s.First, s.Last = stamp(h.First), stamp(h.Last)
		s.TrackSummary = &TrackSummary{h.Points, h.Timed, h.Waypoints, h.Version, h.Creator, h.Extensions}
	case f.Photo != nil:
		s.photo(f)
	case f.Gauge != nil:
		s.gauge(f.Gauge, f.Fault)
	}
	return s
}

func stamp(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.UTC().Format(time.RFC3339Nano)
}

func (s *Summary) photo(f *File) {
	p := f.Photo
	out := &PhotoSummary{Format: string(p.Format), Device: p.Device(), Orientation: p.Orientation, Width: p.Width, Height: p.Height}
	text := func(v string) *string { return &v }
	if at, ok := p.Taken.Instant(); ok {
		out.Taken = text(stamp(at))
		s.First, s.Last = *out.Taken, *out.Taken
	}
	switch t := p.Taken; {
	case t.Known():
		out.Local = text(t.Wall.Format("2006-01-02T15:04:05.999"))
	case t.HasDate:
		out.Local = text(t.Wall.Format("2006-01-02"))
	case t.HasClock:
		out.Local = text(t.Wall.Format("15:04:05.999"))
	}
	if p.Taken.Zoned {
		zone := time.FixedZone("", int(p.Taken.Offset/time.Second))
		out.Offset = text(time.Unix(0, 0).In(zone).Format("-07:00"))
	}
	switch at := p.Fix.At; {
	case p.Fix.HasDate && p.Fix.HasClock:
		out.FixAt = text(stamp(at))
	case p.Fix.HasClock:
		out.FixAt = text(at.Format("15:04:05.999"))
	}
	if p.Fix.HasPlace {
		lat, lon := float64(p.Fix.Lat), float64(p.Fix.Lon)
		out.Lat, out.Lon = &lat, &lon
	}
	s.PhotoSummary = out
}

func (s *Summary) gauge(g *gauge.File, fault *Fault) {
	out := &GaugeSummary{Layout: string(g.Layout), Series: []SeriesSummary{}}
	first := -1
	for i, x := range g.Series {
		out.Series = append(out.Series, seriesSummary(x))
		if first < 0 || x.What == gauge.Level && g.Series[first].What != gauge.Level {
			first = i
		}
	}
	if first >= 0 {
		x := out.Series[first]
		out.Readings, out.Missing, out.Unit, out.SourceUnit, out.Station = x.Readings, x.Missing, x.Unit, x.SourceUnit, x.Station
		s.First, s.Last = x.First, x.Last
	}
	if g.Layout == gauge.Plain || fault != nil && errors.Is(fault.Err, gauge.ErrChoose) {
		for i, c := range g.Columns {
			out.Columns = append(out.Columns, ColumnSummary{i + 1, c.Name, string(c.Kind), append([]string{}, c.Samples...)})
		}
	}
	s.GaugeSummary = out
}

func seriesSummary(x gauge.Series) SeriesSummary {
	out := SeriesSummary{What: string(x.What), Station: station(x), Datum: x.Datum, Unit: siUnit(x.What), SourceUnit: x.Unit, Readings: len(x.Points), Missing: len(x.Missing)}
	for i, p := range x.Points {
		v := math.Round(valueOf(x.What, p)*1e9) / 1e9
		if out.Least == nil || v < *out.Least {
			out.Least = &v
		}
		if out.Most == nil || v > *out.Most {
			out.Most, out.MostAt = &v, stamp(p.At)
		}
		if i == 0 {
			out.First = stamp(p.At)
		}
		out.Last = stamp(p.At)
	}
	return out
}

// siUnit is the unit of the values as read.
func siUnit(w gauge.What) string {
	switch w {
	case gauge.Flow:
		return "m3/s"
	case gauge.Warmth:
		return "°C"
	}
	return "m"
}

func valueOf(w gauge.What, p gauge.Point) float64 {
	switch w {
	case gauge.Flow:
		return p.FlowM3s
	case gauge.Warmth:
		return p.Celsius
	}
	return float64(p.Level)
}

// station names the gauge: by its name, else its number.
func station(x gauge.Series) string {
	if x.Station != "" {
		return x.Station
	}
	return x.StationID
}
