package photo

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"gloamline/journal/units"
)

func (p *Photo) readFix(t *tiff) {
	p.readPlace(t)
	p.readFixTime(t)
	if v, ok := t.tags[tag{gpsDir, 0x09}]; ok && v.text() == "V" {
		p.warn("the receiver had lost its satellites: position and its time may be old")
	}
	v, ok := t.tags[tag{gpsDir, 0x11}]
	if !ok {
		return
	}
	b, err := v.number(0)
	if err != nil || b < 0 || b > 360 {
		p.warn("GPSImgDirection is no bearing: passed over")
		return
	}
	p.Fix.Bearing, p.Fix.HasBearing = units.Degrees(b), true
	switch t.tags[tag{gpsDir, 0x10}].text() {
	case "T":
		p.Fix.BearingReference = true
	case "M":
		p.Fix.BearingReference, p.Fix.MagneticNorth = true, true
	}
}

func (p *Photo) readPlace(t *tiff) {
	lat, okLat := t.tags[tag{gpsDir, 0x02}]
	lon, okLon := t.tags[tag{gpsDir, 0x04}]
	if !okLat && !okLon {
		return
	}
	if !okLat || !okLon {
		p.warn("half a position: passed over")
		return
	}
	y, err := angle(lat, t.tags[tag{gpsDir, 0x01}].text(), "N", "S")
	if err != nil {
		p.warn("GPSLatitude %s: no position", err)
		return
	}
	x, err := angle(lon, t.tags[tag{gpsDir, 0x03}].text(), "E", "W")
	switch {
	case err != nil:
		p.warn("GPSLongitude %s: no position", err)
	case y == 0 && x == 0:
		p.warn("the position is 0,0, which receivers write when they have none: no position")
	case math.Abs(y) > 90 || math.Abs(x) > 180:
		p.warn("the position %.4f, %.4f lies outside the globe: no position", y, x)
	default:
		p.Fix.Lat, p.Fix.Lon, p.Fix.HasPlace = units.Degrees(y), units.Degrees(x), true
	}
}

// angle reads degrees, minutes and seconds, as three fractions or as text, with the
// letter of the half of the globe. Without a letter the sign must tell.
func angle(v value, half, plus, minus string) (float64, error) {
	var d float64
	if v.typ == typeText {
		text := strings.ToUpper(v.text())
		for _, letter := range []string{plus, minus} {
			if strings.Contains(text, letter) {
				text, half = strings.ReplaceAll(text, letter, ""), letter
			}
		}
		f := strings.FieldsFunc(text, func(r rune) bool { return !(r >= '0' && r <= '9') && r != '.' && r != '-' })
		if len(f) == 0 || len(f) > 3 {
			return 0, fmt.Errorf("is %q, which is no angle", clip(v.text()))
		}
		negative := strings.HasPrefix(f[0], "-")
		for i, s := range f {
			n, err := strconv.ParseFloat(strings.TrimPrefix(s, "-"), 64)
			if err != nil || i > 0 && n >= 60.001 {
				return 0, fmt.Errorf("is %q, which is no angle", clip(v.text()))
			}
			d += n / math.Pow(60, float64(i))
		}
		if negative {
			d = -d
		}
	} else {
		for i := range min(3, v.count) {
			n, err := v.number(i)
			if err != nil && i > 0 && v.typ == typeRational && allZero(v.data[8*i:8*i+8]) {
				continue // 0/0 minutes or seconds: written when the degrees hold it all
			}
			if err != nil {
				return 0, err
			}
			if i > 0 && n >= 60.001 {
				return 0, fmt.Errorf("has %g minutes or seconds", n)
			}
			d += n / math.Pow(60, float64(i))
		}
	}
	switch h := strings.ToUpper(half); {
	case h != "" && strings.HasPrefix(minus, h[:1]) && d >= 0:
		return -d, nil
	case h != "" && (strings.HasPrefix(plus, h[:1]) || strings.HasPrefix(minus, h[:1])), d < 0:
		return d, nil
	}
	return 0, fmt.Errorf("does not say whether %s or %s", plus, minus)
}

func allZero(b []byte) bool {
	for _, x := range b {
		if x != 0 {
			return false
		}
	}
	return true
}

func (p *Photo) readFixTime(t *tiff) {
	f := &p.Fix
	day := time.Date(1, 1, 1, 0, 0, 0, 0, time.UTC)
	if v, ok := t.tags[tag{gpsDir, 0x1d}]; ok {
		s := strings.NewReplacer("-", ":", "/", ":").Replace(v.text())
		if d, err := time.Parse("2006:01:02", s); err == nil {
			day, f.HasDate = d, true
		} else if strings.Trim(s, " :0") != "" {
			p.warn("GPSDateStamp is %q, which is no date: passed over", clip(v.text()))
		}
	}
	if v, ok := t.tags[tag{gpsDir, 0x07}]; ok {
		if d, err := fixClock(v); err == nil {
			day, f.HasClock = day.Add(d), true
		} else {
			p.warn("GPSTimeStamp %s: passed over", err)
		}
	}
	if f.HasDate != f.HasClock {
		p.warn("the receiver noted only the date or only the time of day of its fix")
	}
	if f.HasDate || f.HasClock {
		f.At = day
	}
}

func fixClock(v value) (time.Duration, error) {
	if v.typ == typeText {
		t, err := time.Parse("15:04:05", v.text())
		if err != nil {
			return 0, fmt.Errorf("is %q, which is no time of day", clip(v.text()))
		}
		return t.Sub(t.Truncate(24 * time.Hour)), nil
	}
	var x [3]float64
	for i := range x {
		n, err := v.number(i)
		if err != nil {
			return 0, err
		}
		x[i] = n
	}
	if x[0] < 0 || x[0] >= 24 || x[1] < 0 || x[1] >= 60 || x[2] < 0 || x[2] >= 61 {
		return 0, fmt.Errorf("is %g:%g:%g, which is no time of day", x[0], x[1], x[2])
	}
	return time.Duration(math.Round((x[0]*3600+x[1]*60+x[2])*1000)) * time.Millisecond, nil
}
