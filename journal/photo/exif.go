package photo

import (
	"fmt"
	"strings"
	"time"
)

// The tags in use; names and numbers from CIPA DC-008-2019 (EXIF 2.32), tables 3 to 8 and 15.
var tagNames = map[tag]string{
	{mainDir, 0x010f}: "Make", {mainDir, 0x0110}: "Model", {mainDir, 0x0112}: "Orientation", {mainDir, 0x0132}: "DateTime",
	{exifDir, 0x9003}: "DateTimeOriginal", {exifDir, 0x9004}: "DateTimeDigitized",
	{exifDir, 0x9010}: "OffsetTime", {exifDir, 0x9011}: "OffsetTimeOriginal", {exifDir, 0x9012}: "OffsetTimeDigitized",
	{exifDir, 0x9290}: "SubSecTime", {exifDir, 0x9291}: "SubSecTimeOriginal", {exifDir, 0x9292}: "SubSecTimeDigitized",
	{gpsDir, 0x01}: "GPSLatitudeRef", {gpsDir, 0x02}: "GPSLatitude", {gpsDir, 0x03}: "GPSLongitudeRef", {gpsDir, 0x04}: "GPSLongitude",
	{gpsDir, 0x07}: "GPSTimeStamp", {gpsDir, 0x09}: "GPSStatus", {gpsDir, 0x10}: "GPSImgDirectionRef", {gpsDir, 0x11}: "GPSImgDirection", {gpsDir, 0x1d}: "GPSDateStamp",
}

// The three times a file may hold, best first, with offset and parts of a second.
var clocks = []struct {
	date, offset, part tag
	warn               string
}{
	{tag{exifDir, 0x9003}, tag{exifDir, 0x9011}, tag{exifDir, 0x9291}, ""},
	{tag{exifDir, 0x9004}, tag{exifDir, 0x9012}, tag{exifDir, 0x9292}, "when it was taken is not said; the time it was stored stands in for it"},
	{tag{mainDir, 0x0132}, tag{exifDir, 0x9010}, tag{exifDir, 0x9290}, "when it was taken is not said; the time the file was last changed stands in for it"},
}

func (p *Photo) read(t *tiff) {
	p.Make, p.Model = t.tags[tag{mainDir, 0x010f}].text(), t.tags[tag{mainDir, 0x0110}].text()
	if v, ok := t.tags[tag{mainDir, 0x0112}]; ok {
		n, err := v.number(0)
		if err != nil || n < 1 || n > 8 {
			p.warn("Orientation is none of 1 to 8; taken as upright")
		} else {
			p.Orientation = int(n)
		}
	}
	p.readTaken(t)
	p.readFix(t)
}

func (p *Photo) readTaken(t *tiff) {
	for _, c := range clocks {
		v, ok := t.tags[c.date]
		if !ok {
			continue
		}
		name := tagNames[c.date]
		taken, err := parseTaken(v.text())
		if err != nil {
			p.warn("%s %s", name, err)
			continue
		}
		if c.warn != "" {
			p.warn("%s", c.warn)
		}
		taken.Tag = name
		if v, ok := t.tags[c.part]; ok && taken.HasClock {
			taken.Wall = taken.Wall.Add(part(v.text()))
		}
		if v, ok := t.tags[c.offset]; ok {
			if taken.Offset, taken.Zoned = parseOffset(v.text()); !taken.Zoned && v.text() != "" && strings.Trim(v.text(), " :") != "" {
				p.warn("%s is %q, which is no offset: passed over", tagNames[c.offset], clip(v.text()))
			}
		}
		switch {
		case !taken.HasDate:
			p.warn("%s has a time of day but no date", name)
		case !taken.HasClock:
			p.warn("%s has a date but no time of day", name)
		case taken.Wall.Year() < 2000:
			p.warn("the camera's clock says %d: it may never have been set", taken.Wall.Year())
		}
		p.Taken = taken
		return
	}
	p.warn("when it was taken is not said")
}

// parseTaken reads 2025:07:15 00:37:12. Blanks or zeros stand for what is not known, as
// the standard has it; strokes, hyphens and a T are met too.
func parseTaken(s string) (Taken, error) {
	date, clock, _ := strings.Cut(strings.Replace(s, "T", " ", 1), " ")
	if i := strings.IndexAny(s, "0123456789"); i > 0 && strings.Trim(s[:i], " :") == "" { // blanks for the date
		date, clock = "", s[i:]
	}
	if strings.Trim(s, " :0") == "" && !strings.Contains(clock, "0") {
		return Taken{}, fmt.Errorf("is empty")
	}
	date = strings.NewReplacer("/", ":", "-", ":", ".", ":").Replace(date)
	var t Taken
	var day, hour time.Time
	var err error
	if strings.Trim(date, " :0") != "" {
		if day, err = time.Parse("2006:01:02", date); err != nil {
			return Taken{}, fmt.Errorf("is %q, which is no date", clip(s))
		}
		t.HasDate = true
	} else {
		day = time.Date(1, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	if clock = strings.TrimSpace(clock); strings.Trim(clock, " :") != "" {
		if i := strings.IndexAny(clock, ".+-Z "); i > 0 {
			clock = clock[:i]
		}
		if hour, err = time.Parse("15:04:05", clock); err != nil {
			if hour, err = time.Parse("15:04", clock); err != nil {
				return Taken{}, fmt.Errorf("is %q, which is no time of day", clip(s))
			}
		}
		t.HasClock = true
		day = day.Add(time.Duration(hour.Hour())*time.Hour + time.Duration(hour.Minute())*time.Minute + time.Duration(hour.Second())*time.Second)
	}
	t.Wall = day
	if !t.HasDate && (!t.HasClock || strings.Trim(clock, ":0") == "") {
		return Taken{}, fmt.Errorf("is empty") // all zeros
	}
	return t, nil
}

// part reads decimals of a second: 05 is five hundredths.
func part(s string) time.Duration {
	d, unit := time.Duration(0), time.Second
	for i := 0; i < len(s) && i < 9 && s[i] >= '0' && s[i] <= '9'; i++ {
		unit /= 10
		d += time.Duration(s[i]-'0') * unit
	}
	return d
}

// parseOffset reads +01:00, as OffsetTime has it; Z is met too.
func parseOffset(s string) (time.Duration, bool) {
	if s == "Z" {
		return 0, true
	}
	t, err := time.Parse("-07:00", s)
	if err != nil {
		return 0, false
	}
	_, sec := t.Zone()
	return time.Duration(sec) * time.Second, sec >= -14*3600 && sec <= 14*3600
}

func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
