package gauge

import (
	"cmp"
	"fmt"
	"math"
	"strings"
)

// preamble is what lines before a table say of it.
type preamble struct {
	service, id, name, unit, datum, what string
}

// read takes in one line before a head: #key;value, a # comment of the US files, or the
// labelled lines of the older Scottish download.
func (p *preamble) read(line string) {
	if strings.HasPrefix(line, "SEPA") {
		p.service = "SEPA"
	}
	if rest, ok := strings.CutPrefix(line, "Station Name:"); ok {
		p.name = strings.Trim(rest, " ,;\t")
	}
	text, ok := strings.CutPrefix(line, "#")
	if !ok {
		return
	}
	if _, site, ok := strings.Cut(text, "Data provided for site "); ok {
		p.id = strings.TrimSpace(site)
		return
	}
	if words := strings.Fields(text); len(words) > 2 && words[0] == "USGS" && len(words[1]) >= 8 {
		p.name = strings.Join(words[2:], " ")
		return
	}
	i := strings.IndexAny(text, ";,\t")
	if i < 0 {
		return
	}
	value := strings.Trim(text[i+1:], " ;,\t\"")
	switch strings.ReplaceAll(strings.ToLower(strings.TrimSpace(text[:i])), " ", "_") {
	case "station_name":
		p.name = value
	case "station_no", "station_number":
		p.id = value
	case "ts_id":
		if p.id == "" {
			p.id = value
		}
	case "ts_unitsymbol", "unit_symbol":
		p.unit = value
	case "stationparameter_name", "station_parameter_name":
		p.what = value
	case "ts_shortname":
		if strings.HasSuffix(value, ".Absolute") {
			p.datum = "Ordnance Datum"
		}
	case "station_gauge_datum_unit":
		p.datum = "staff gauge; its zero in " + value
	}
}

// isRiver reports whether a parameter of a # table is a level, a flow or the water's temperature.
func (p *preamble) isRiver() bool {
	switch strings.ToLower(p.what) {
	case waterTemperature, "", "s", "sg", "stage", "water level", "level", "q", "flow", "discharge":
		return true
	}
	return false
}

// waterTemperature is a parameter by its name, in small letters.
const waterTemperature = "water temperature"

// readRows reads the rows under the head of a known table. A further block of # lines
// with a head of its own begins another series.
func readRows(in *lines, t table, notes *preamble, c *collector) error {
	var buf []string
	fresh := (*preamble)(nil)
	first := true
	for {
		line, ok := in.next()
		if !ok {
			return nil
		}
		switch {
		case strings.TrimSpace(line) == "":
			continue
		case line[0] == '#' || strings.HasPrefix(line, "agency_cd\t"):
			if fresh == nil {
				fresh = &preamble{}
			}
			if next, ok := recognise(line, fresh); ok {
				t, notes, fresh, first = next, fresh, nil, true
			} else {
				fresh.read(line)
			}
			continue
		}
		if first && t.types {
			first = false
			if strings.HasPrefix(line, "5s\t") || looksLikeTypes(line) {
				continue
			}
		}
		buf = fields(line, t.div, buf)
		if err := readRow(in.n, buf, &t, notes, c); err != nil {
			return err
		}
	}
}

// looksLikeTypes tells the line of widths and types of the US files: 5s 15s 20d 6s.
func looksLikeTypes(line string) bool {
	for f := range strings.SplitSeq(line, "\t") {
		if n := len(f); n < 2 || strings.Trim(f[:n-1], "0123456789") != "" || !strings.Contains("sdn", f[n-1:]) {
			return false
		}
	}
	return true
}

func cell(row []string, i int) string {
	if i < 0 || i >= len(row) {
		return ""
	}
	return row[i]
}

func readRow(line int, row []string, t *table, notes *preamble, c *collector) error {
	if last := min(t.at(t.level), t.at(t.flow), t.at(t.warm)); t.when >= len(row) || last >= len(row) {
		c.at(line, "a row too short", "this row has only %d columns: passed over", len(row))
		return nil
	}
	m, ok := t.moment(row)
	if !ok {
		c.at(line, "no time", "no time can be read from %q: passed over", clip(row[t.when]))
		return nil
	}
	if word := cell(row, t.zone); t.zone >= 0 {
		hours, ok := usZones[word]
		if !ok {
			c.at(line, "unknown zone", "the zone %q is not known: passed over", clip(word))
			return nil
		}
		m.east, m.zoned = int(hours*3600), true
	}
	k := key{id: notes.id, name: notes.name, unit: t.unit, datum: t.datum}
	if s := cell(row, t.id); s != "" {
		k.id = s
	}
	if s := cell(row, t.name); s != "" {
		k.name = s
	}
	if t.level >= 0 {
		if err := readLevel(line, row, t, notes, k, m, c); err != nil {
			return err
		}
	}
	if t.warm >= 0 {
		k.unit, k.datum, k.what = "°C", "", Warmth
		b, err := c.builder(k, scales["°c"])
		if err != nil {
			return err
		}
		if err := c.add(b, line, m, cell(row, t.warm), cell(row, t.warmFlag)); err != nil {
			return err
		}
	}
	if t.flow < 0 {
		return nil
	}
	k.unit, k.datum, k.what = "m3/s", "", Flow
	if t.layout == USTabbed {
		k.unit = "ft3/s"
	}
	s, _ := scaleOf(k.unit)
	b, err := c.builder(k, s)
	if err != nil {
		return err
	}
	return c.add(b, line, m, cell(row, t.flow), cell(row, t.flowFlag))
}

// at is a column, or one behind all where there is none.
func (t *table) at(column int) int {
	if column < 0 {
		return math.MaxInt
	}
	return column
}

func (t *table) moment(row []string) (moment, bool) {
	m, ok := parseMoment(row[t.when], t.order)
	if !ok || t.clock < 0 {
		return m, ok
	}
	sec, ok := parseClock(cell(row, t.clock))
	m.wall, m.clocked = m.wall+int64(sec), true
	return m, ok
}

func readLevel(line int, row []string, t *table, notes *preamble, k key, m moment, c *collector) error {
	if t.measure >= 0 {
		if id := cell(row, t.measure); id != c.measure {
			c.measure, c.measured = id, key{}
			c.isRiver = c.measured.measured(id)
		}
		k.id, k.tag, k.unit, k.datum = cmp.Or(k.id, c.measured.id), c.measured.tag, c.measured.unit, c.measured.datum
		if !c.isRiver {
			c.at(line, "not a level or flow", "%q is no level and no flow: passed over", tail(cell(row, t.measure)))
			return nil
		}
		if u := cell(row, t.unitCol); u != "" {
			k.unit = u
		}
	}
	if !notes.isRiver() {
		c.at(line, "not a level or flow", "%q is no level and no flow: passed over", clip(notes.what))
		return nil
	}
	s, ok := scaleOf(k.unit)
	if k.unit == "" {
		s, ok = scales["m"], true
		c.once("unit", "the file names no unit; read as metres")
	}
	if (s.what == Warmth) != strings.EqualFold(notes.what, waterTemperature) { // °C alone may be the air's
		ok = false
	}
	if !ok {
		c.at(line, "unknown unit", "the unit %q is not one of a level or a flow: passed over", clip(k.unit))
		return nil
	}
	k.what = s.what
	b, err := c.builder(k, s)
	if err != nil {
		return err
	}
	text, flag := cell(row, t.level), cell(row, t.flag)
	if x := cell(row, t.flag2); x != "" {
		flag += " " + x
	}
	if one, other, two := strings.Cut(text, "|"); two {
		c.at(line, "two values in one cell", "two values in one cell, %s and %s: the first is taken", clip(one), clip(other))
		text = one
	}
	if t.layout == EnglishHydrology && strings.EqualFold(cell(row, t.flag), "Missing") {
		text = ""
	}
	return c.add(b, line, m, text, strings.TrimSpace(flag))
}

// measured takes station, unit and datum from the identifier of an English measure, whose
// tail reads level-stage-i-15_min-m or level-i-900-m-qualified. It reports whether the
// measure is a level or a flow.
func (k *key) measured(id string) bool {
	name := tail(id)
	station, rest, isLevel := strings.Cut(name, "-level-")
	if !isLevel {
		var isFlow bool
		if station, rest, isFlow = strings.Cut(name, "-flow-"); !isFlow {
			return false
		}
	}
	if k.id == "" {
		k.id = station
	}
	k.tag = name
	parts := strings.Split(strings.TrimSuffix(rest, "-qualified"), "-")
	k.unit = strings.ReplaceAll(parts[len(parts)-1], "_", "/")
	switch k.unit {
	case "mAOD":
		k.datum = "Ordnance Datum"
	case "mASD":
		k.datum = "station datum"
	case "m":
		k.datum = "local"
	}
	return true
}

// tail is what stands after the last stroke of an address.
func tail(id string) string {
	return clipTo(id[strings.LastIndexByte(id, '/')+1:], 200)
}

func clipTo(s string, n int) string {
	if len(s) > n {
		return fmt.Sprintf("%.*s", n, s)
	}
	return s
}
