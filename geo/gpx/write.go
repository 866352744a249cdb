package gpx

import (
	"bufio"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"time"
)

// Namespace of version 1.1.
const Namespace = "http://www.topografix.com/GPX/1/1"

// Write writes a file as GPX 1.1, elements in the order of its schema: metadata,
// waypoints, routes, tracks. Positions have 7 decimals, about 1 cm; longitude 180 becomes
// -180, as the schema asks. It refuses positions that are not on the earth.
func Write(w io.Writer, f File) error {
	b := bufio.NewWriter(w)
	e := &pen{w: b}
	creator := f.Creator
	if creator == "" {
		creator = "Gloamline"
	}
	e.print(`<?xml version="1.0" encoding="UTF-8"?>` + "\n" + `<gpx version="1.1" creator="` + escape(creator) + `" xmlns="` + Namespace + `">` + "\n")
	if f.Name != "" || !f.At.IsZero() {
		e.print("<metadata>")
		e.text("name", f.Name)
		e.time(f.At)
		e.print("</metadata>\n")
	}
	for _, p := range f.Waypoints {
		e.point("wpt", p)
	}
	for _, kind := range []Kind{Route, Track} {
		for _, l := range f.Lines {
			if l.Kind == kind {
				e.line(l)
			}
		}
	}
	e.print("</gpx>\n")
	if e.err != nil {
		return e.err
	}
	return b.Flush()
}

type pen struct {
	w   *bufio.Writer
	err error
}

func (e *pen) print(s string) {
	if e.err == nil {
		_, e.err = e.w.WriteString(s)
	}
}

func (e *pen) text(name, s string) {
	if s != "" {
		e.print("<" + name + ">" + escape(s) + "</" + name + ">")
	}
}

func (e *pen) time(t time.Time) {
	if !t.IsZero() {
		e.text("time", t.UTC().Format(time.RFC3339Nano))
	}
}

func (e *pen) line(l Line) {
	outer, inner := "trk", "trkpt"
	if l.Kind == Route {
		outer, inner = "rte", "rtept"
	}
	e.print("<" + outer + ">")
	e.text("name", l.Name)
	for _, s := range l.Segments {
		if l.Kind == Track {
			e.print("<trkseg>")
		}
		e.print("\n")
		for _, p := range s {
			e.point(inner, p)
		}
		if l.Kind == Track {
			e.print("</trkseg>")
		}
	}
	e.print("</" + outer + ">\n")
}

// point writes its parts in the order of wptType: ele, time, name, desc, hdop.
func (e *pen) point(name string, p Point) {
	if !(math.Abs(p.LatDeg) <= 90 && math.Abs(p.LonDeg) <= 180) {
		if e.err == nil {
			e.err = fmt.Errorf("a point at latitude %v, longitude %v is not on the earth", p.LatDeg, p.LonDeg)
		}
		return
	}
	lon := degrees(p.LonDeg)
	if p.LonDeg > 0 && strings.HasPrefix(lon, "180") {
		lon = "-" + lon
	}
	e.print("<" + name + ` lat="` + degrees(p.LatDeg) + `" lon="` + lon + `">`)
	if p.HasHeight && !math.IsNaN(p.HeightM) && !math.IsInf(p.HeightM, 0) {
		e.text("ele", strconv.FormatFloat(p.HeightM, 'f', -1, 64))
	}
	e.time(p.At)
	e.text("name", p.Name)
	e.text("desc", p.Note)
	if p.HDOP > 0 && !math.IsInf(p.HDOP, 0) {
		e.text("hdop", strconv.FormatFloat(p.HDOP, 'f', -1, 64))
	}
	e.print("</" + name + ">\n")
}

func degrees(v float64) string { return strconv.FormatFloat(v, 'f', 7, 64) }

// escape makes text fit for XML; letters it cannot hold become a mark.
func escape(s string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(s))
	return b.String()
}
