package gpx

import (
	"encoding/xml"
	"math"
	"strconv"
	"strings"
)

// parser is what is known between two tokens. Exactly one of skip (an element is
// passed over) and want (the text of an element is wanted) is in force, or neither.
type parser struct {
	o       Options
	in      *text
	dec     *xml.Decoder
	sink    func(Part, Point) error
	begin   func(Kind)
	segment func()
	title   func(string)

	head   Head
	space  string // namespace of the root
	rooted bool
	depth  int
	skip   int

	part    Part
	lines   int // tracks and routes so far
	inLine  bool
	inPoint int // depth of the point's element; 0: in none
	bad     bool
	point   Point
	before  Point // the timed point before, of the same line
	want    func(string)
	wantAt  int
	chars   []byte
	at      map[WarningKind]int // index in head.Warnings
}

// element takes one of GPX's own elements.
func (p *parser) element(e xml.StartElement) error {
	switch name := e.Name.Local; {
	case p.inPoint > 0:
		if p.depth == p.inPoint+1 {
			p.inside(name)
		}
	case name == "trkpt", name == "rtept", name == "wpt":
		return p.open(e)
	case name == "trk" || name == "rte":
		if p.lines++; p.lines > maxLines {
			return p.fail("the file holds more tracks than is read here", "Cut it into smaller ones.")
		}
		p.part = Part{Kind: Track, Number: p.lines - 1, Segment: -1}
		if name == "rte" {
			p.part.Kind = Route
		}
		p.inLine, p.before = true, Point{}
		p.begin(p.part.Kind)
	case name == "trkseg" && p.inLine:
		p.part.Segment++
		p.before = Point{}
		p.segment()
	case name == "name" && p.inLine:
		p.wants(p.title)
	case name == "name":
		p.wants(func(s string) { p.head.Name = s })
	case name == "time" && !p.inLine:
		p.wants(func(s string) { p.head.At, _, _ = parseTime(s) })
	}
	return nil
}

func (p *parser) inside(name string) {
	switch name {
	case "time":
		p.wants(p.time)
	case "ele":
		p.wants(func(s string) {
			if v, ok := number(s); ok {
				p.point.HeightM, p.point.HasHeight = v, true
			}
		})
	case "hdop":
		p.wants(func(s string) {
			if v, ok := number(s); ok && v > 0 {
				p.point.HDOP = v
			}
		})
	case "name":
		p.wants(func(s string) { p.point.Name = s })
	case "cmt", "desc":
		p.wants(func(s string) {
			if p.point.Note == "" {
				p.point.Note = s
			}
		})
	}
}

func (p *parser) wants(f func(string)) {
	p.want, p.wantAt, p.chars = f, p.depth, p.chars[:0]
}

// open begins a point.
func (p *parser) open(e xml.StartElement) error {
	line, _ := p.dec.InputPos()
	p.inPoint, p.point, p.bad = p.depth, Point{Line: line}, false
	var lat, lon string
	for _, a := range e.Attr {
		switch a.Name {
		case xml.Name{Local: "lat"}:
			lat = a.Value
		case xml.Name{Local: "lon"}:
			lon = a.Value
		}
	}
	if strings.Contains(lat+lon, ",") {
		lat, lon = strings.ReplaceAll(lat, ",", "."), strings.ReplaceAll(lon, ",", ".")
		p.warn(DecimalComma, "")
	}
	la, ok1 := number(lat)
	lo, ok2 := number(lon)
	switch {
	case !ok1 || !ok2 || math.Abs(la) > 90 || math.Abs(lo) > 180:
		p.bad = true
		p.warn(BadPosition, clip("latitude "+strconv.Quote(lat)+", longitude "+strconv.Quote(lon), 120))
	case la == 0 && lo == 0:
		p.bad = true
		p.warn(ZeroPosition, "")
	}
	p.point.LatDeg, p.point.LonDeg = la, lo
	return nil
}

func (p *parser) time(s string) {
	at, zoneless, ok := parseTime(s)
	if !ok {
		p.warn(BadTime, clip(strconv.Quote(s), 60))
		return
	}
	p.point.At, p.point.Zoneless = at, zoneless
}

func (p *parser) end() error {
	depth := p.depth
	p.depth--
	if p.skip > 0 {
		p.skip--
		return nil
	}
	switch {
	case p.want != nil && p.wantAt == depth:
		p.want(strings.TrimSpace(string(p.chars)))
		p.want = nil
	case p.inPoint == depth && depth > 0:
		p.inPoint = 0
		return p.close()
	case depth == 2:
		p.inLine = false
	}
	return nil
}

// close counts a point and hands it on.
func (p *parser) close() error {
	if p.bad {
		return nil
	}
	at := p.part
	if !p.inLine {
		at = Part{Kind: Waypoint, Number: p.head.Waypoints}
		p.head.Waypoints++
	} else {
		at.Segment = max(0, at.Segment)
		p.head.Points++
	}
	if p.o.MaxPoints > 0 && p.head.Points+p.head.Waypoints > p.o.MaxPoints {
		return p.fail("the file holds more than "+strconv.Itoa(p.o.MaxPoints)+" points", "Cut it into smaller ones, by day for instance.")
	}
	if !p.point.At.IsZero() {
		p.timed()
	}
	return p.sink(at, p.point)
}

// timed looks at the time of a point, and at that of the point before in its segment.
func (p *parser) timed() {
	q := p.point
	p.head.Timed++
	if p.head.First.IsZero() || q.At.Before(p.head.First) {
		p.head.First = q.At
	}
	if q.At.After(p.head.Last) {
		p.head.Last = q.At
	}
	if q.Zoneless {
		p.warn(Zoneless, "")
	}
	if kind, detail := clock(q.At, p.o.Now); kind != "" {
		p.warn(kind, detail)
	}
	if !p.inLine {
		return
	}
	if b := p.before; !b.At.IsZero() {
		switch {
		case q.At.Before(b.At):
			p.warn(OutOfOrder, "")
		case q.At.Equal(b.At) && samePlace(q, b):
			p.warn(Duplicate, "")
		case q.At.Equal(b.At):
			p.warn(SameTime, "")
		}
	}
	p.before = q
}

func (p *parser) finish() {
	all := p.head.Points + p.head.Waypoints
	switch {
	case all == 0:
		p.whole(NoPoints, 1)
	case p.head.Timed == 0:
		p.whole(NoTimes, all)
	case p.head.Timed < all:
		p.whole(SomeUntimed, all-p.head.Timed)
	}
	if p.in.odd > 0 {
		p.whole(NotText, p.in.odd)
	}
}

// warn counts a warning, with the place of the first.
func (p *parser) warn(k WarningKind, detail string) {
	i, ok := p.at[k]
	if !ok {
		i = len(p.head.Warnings)
		p.at[k] = i
		line, _ := p.dec.InputPos()
		p.head.Warnings = append(p.head.Warnings, Warning{Kind: k, Line: line, Detail: detail})
	}
	p.head.Warnings[i].Count++
}

func (p *parser) whole(k WarningKind, n int) {
	p.head.Warnings = append(p.head.Warnings, Warning{Kind: k, Count: n})
}

// number reads a finite decimal number.
func number(s string) (float64, bool) {
	v, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
	return v, err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}
