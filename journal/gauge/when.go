package gauge

import (
	"strings"
	"time"
)

// dateOrder is how a date with strokes or points is to be read.
type dateOrder uint8

const (
	unknownOrder dateOrder = iota
	dayFirst
	monthFirst
)

// moment is a time as a file has it: seconds since 1970 of its own clock, and how far
// that clock is ahead of UTC, if the file says.
type moment struct {
	wall    int64
	east    int // seconds
	zoned   bool
	clocked bool // has a time of day
}

// parseMoment reads 2025-07-14T21:00:00.000Z, 2025-07-14 21:00, 14/07/2025 21:00:00,
// 14.07.2025 and the like. A blank, a T or nothing follows the date. Years are 1800 to 2199.
func parseMoment(s string, order dateOrder) (moment, bool) {
	p := parser{s: strings.TrimSpace(s), ok: true}
	a, na := p.digits()
	sep := p.byte()
	b, _ := p.digits()
	if p.byte() != sep || sep != '-' && sep != '/' && sep != '.' {
		return moment{}, false
	}
	c, nc := p.digits()
	var y, m, d int
	switch {
	case na == 4:
		y, m, d = a, b, c
	case nc == 4 && order == monthFirst:
		y, m, d = c, a, b
	case nc == 4:
		y, m, d = c, b, a
	default:
		return moment{}, false
	}
	if !p.ok || y < 1800 || y > 2199 || m < 1 || m > 12 || d < 1 || d > daysIn(y, m) {
		return moment{}, false
	}
	out := moment{wall: time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC).Unix()}
	if p.s == "" {
		return out, true
	}
	if p.s[0] == 'T' || p.s[0] == 't' || p.s[0] == ' ' {
		p.s = strings.TrimLeft(p.s[1:], " ")
	}
	sec, ok := p.clock()
	if !ok {
		return moment{}, false
	}
	out.wall, out.clocked = out.wall+int64(sec), true
	out.east, out.zoned, ok = p.zone()
	return out, ok
}

// parseClock reads a time of day by itself: 23:00, 9:15:30, 9:15 PM.
func parseClock(s string) (seconds int, ok bool) {
	p := parser{s: strings.TrimSpace(s), ok: true}
	seconds, ok = p.clock()
	return seconds, ok && p.s == ""
}

// orderOf tells which order a date with strokes must have; unknownOrder if it may be both.
func orderOf(s string) dateOrder {
	p := parser{s: strings.TrimSpace(s), ok: true}
	a, na := p.digits()
	p.byte()
	b, _ := p.digits()
	switch {
	case !p.ok || na > 2:
		return unknownOrder
	case a > 12 && b <= 12:
		return dayFirst
	case b > 12 && a <= 12:
		return monthFirst
	}
	return unknownOrder
}

func daysIn(y, m int) int {
	return time.Date(y, time.Month(m)+1, 0, 0, 0, 0, 0, time.UTC).Day()
}

type parser struct {
	s  string
	ok bool
}

func (p *parser) digits() (v, n int) {
	for n < len(p.s) && n < 4 && p.s[n] >= '0' && p.s[n] <= '9' {
		v = v*10 + int(p.s[n]-'0')
		n++
	}
	p.s, p.ok = p.s[n:], p.ok && n > 0
	return v, n
}

func (p *parser) byte() byte {
	if p.s == "" {
		p.ok = false
		return 0
	}
	b := p.s[0]
	p.s = p.s[1:]
	return b
}

func (p *parser) clock() (int, bool) {
	h, _ := p.digits()
	if p.byte() != ':' {
		return 0, false
	}
	m, n := p.digits()
	s := 0
	if strings.HasPrefix(p.s, ":") {
		p.byte()
		s, _ = p.digits()
		if p.ok && p.s != "" && (p.s[0] == '.' || p.s[0] == ',') {
			p.byte()
			p.s = strings.TrimLeft(p.s, "0123456789") // parts of a second say nothing of a river
		}
	}
	if half := strings.ToUpper(strings.TrimSpace(p.s)); half == "AM" || half == "PM" {
		if h < 1 || h > 12 {
			return 0, false
		}
		h, p.s = h%12, ""
		if half == "PM" {
			h += 12
		}
	}
	if !p.ok || n != 2 || h > 24 || m > 59 || s > 60 || h == 24 && m+s > 0 {
		return 0, false
	}
	return h*3600 + m*60 + s, true
}

// zone reads what stands after a time: nothing, Z, GMT, UTC, +01:00, -0800, +01.
func (p *parser) zone() (east int, zoned, ok bool) {
	s := strings.TrimSpace(p.s)
	switch strings.ToUpper(s) {
	case "":
		return 0, false, true
	case "Z", "GMT", "UTC":
		return 0, true, true
	}
	sign := 1
	if s[0] == '-' {
		sign = -1
	} else if s[0] != '+' {
		return 0, false, false
	}
	s = strings.ReplaceAll(s[1:], ":", "")
	if len(s) == 2 {
		s += "00"
	}
	if len(s) != 4 || strings.Trim(s, "0123456789") != "" {
		return 0, false, false
	}
	h, m := int(s[0]-'0')*10+int(s[1]-'0'), int(s[2]-'0')*10+int(s[3]-'0')
	if h > 14 || m > 59 {
		return 0, false, false
	}
	return sign * (h*3600 + m*60), true, true
}

// The letters of tz_cd in the US files, in hours ahead of UTC (IANA time zone data 2025b,
// file northamerica).
var usZones = map[string]float64{
	"EST": -5, "EDT": -4, "CST": -6, "CDT": -5, "MST": -7, "MDT": -6, "PST": -8, "PDT": -7,
	"AKST": -9, "AKDT": -8, "HST": -10, "HDT": -9, "AST": -4, "ADT": -3, "SST": -11, "CHST": 10, "ChST": 10,
	"UTC": 0, "GMT": 0,
}
