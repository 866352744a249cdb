package gauge

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"gloamline/journal/units"
)

// row is a reading before its time is settled.
type row struct {
	at      int64 // seconds since 1970; of the clock while naive
	value   float64
	flag    string
	line    int
	naive   bool
	missing bool
}

// key tells the series of a file apart.
type key struct {
	what                       What
	id, name, unit, datum, tag string
}

type builder struct {
	key   key
	scale scale
	daily bool
	rows  []row
}

// collector gathers readings into series and puts them in order at the end.
type collector struct {
	warner
	opt    Options
	series []*builder
	byKey  map[key]*builder
	last   *builder // most rows follow their like
	flags  map[string]string
	total  int

	measure  string // the last one, and what it says
	measured key
	isRiver  bool
}

func newCollector(o Options) *collector {
	f := &File{}
	return &collector{warner: warner{file: f}, opt: o, byKey: map[key]*builder{}, flags: map[string]string{}}
}

// builder finds or opens the series of k.
func (c *collector) builder(k key, s scale) (*builder, error) {
	if c.last != nil && c.last.key == k {
		return c.last, nil
	}
	b := c.byKey[k]
	if b == nil {
		if len(c.series) == MaxSeries {
			return nil, fmt.Errorf("more than %d series in one file", MaxSeries)
		}
		b = &builder{key: k, scale: s}
		c.series, c.byKey[k] = append(c.series, b), b
	}
	c.last = b
	return b, nil
}

// add takes one reading. text is the value as in the file.
func (c *collector) add(b *builder, line int, m moment, text, flag string) error {
	if c.total == MaxReadings {
		return fmt.Errorf("line %d: more than %d readings in one file; take a shorter stretch of time", line, MaxReadings)
	}
	r := row{at: m.wall, line: line, flag: c.intern(flag), naive: !m.zoned}
	if m.zoned {
		r.at -= int64(m.east)
	}
	if !m.clocked {
		b.daily = true
		r.at += 12 * 3600
		c.once("daily", "values of whole days: each is set at noon")
	}
	v, ok := number(text)
	switch {
	case missing(text, v, ok):
		if ok {
			c.once("sentinel "+text, "%s stands for no value", text)
		}
		r.missing = true
	case !ok:
		c.at(line, "text instead of a value", "%q instead of a value: counted as missing", clip(text))
		if r.missing = true; r.flag == "" {
			r.flag = c.intern(clip(text))
		} else {
			r.flag = c.intern(clip(text) + " " + r.flag)
		}
	default:
		r.value = v * b.scale.num / b.scale.den
		if b.scale.what == Warmth && (r.value < -10 || r.value > 50) || b.scale.what == Level && math.Abs(r.value) > 10000 || math.Abs(r.value) > 1e6 {
			c.at(line, "a value no river has", "%s is a value no river has: passed over", clip(text))
			return nil
		}
	}
	c.total++
	b.rows = append(b.rows, r)
	return nil
}

// intern keeps one copy of each flag; a file with too many different ones keeps them all.
func (c *collector) intern(s string) string {
	if s == "" {
		return ""
	}
	if have, ok := c.flags[s]; ok {
		return have
	}
	s = string([]byte(s))
	if len(c.flags) < 1000 {
		c.flags[s] = s
	}
	return s
}

func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

// finish settles times, sorts, drops what stands twice and hands the series over.
func (c *collector) finish() {
	for _, b := range c.series {
		if slices.ContainsFunc(b.rows, func(r row) bool { return r.naive }) {
			localise(b.rows, c.zone(), &c.warner)
		}
		slices.SortStableFunc(b.rows, func(x, y row) int { return cmp.Compare(x.at, y.at) })
		if s := c.build(b); len(s.Points)+len(s.Missing) > 0 {
			c.file.Series = append(c.file.Series, s)
		}
	}
	c.warner.finish()
}

// zone is the zone of times that name none.
func (c *collector) zone() *time.Location {
	switch c.file.Layout {
	case EnglishHydrology, EnglishHydroJSON, EnglishFlood, EnglishFloodJSON, EnglishArchive:
		c.once("zone", "the times name no zone; read as UTC, which the file does not say")
		return time.UTC
	case IrishMonth:
		c.once("zone", "the times name no zone; read as GMT, which these files keep all year (from memory)")
		return time.UTC
	case ScottishOld:
		c.once("zone", "times read as GMT, as these files say or are known to keep (from memory)")
		return time.UTC
	}
	c.file.ZoneOpen = true
	if c.opt.Zone != nil {
		c.once("zone", "the times name no zone; read in the zone given, %s", c.opt.Zone)
		return c.opt.Zone
	}
	c.once("zone", "the times name no zone and none was given; read as UTC")
	return time.UTC
}

func (c *collector) build(b *builder) Series {
	s := Series{What: b.scale.what, StationID: b.key.id, Station: b.key.name, Unit: b.key.unit, Datum: b.key.datum, Daily: b.daily}
	s.Points = make([]Point, 0, len(b.rows))
	for i := 0; i < len(b.rows); {
		j := i + 1
		for j < len(b.rows) && b.rows[j].at == b.rows[i].at {
			j++
		}
		r := c.one(b.rows[i:j])
		i = j
		at := time.Unix(r.at, 0).UTC()
		if r.missing {
			s.Missing = append(s.Missing, Missing{at, r.flag, r.line})
			continue
		}
		p := Point{At: at, Flag: r.flag, Quality: qualityOf(c.file.Layout, r.flag), Line: r.line}
		switch b.scale.what {
		case Flow:
			p.FlowM3s = r.value
		case Warmth:
			p.Celsius = r.value
		default:
			p.Level = units.Metres(r.value)
		}
		s.Points = append(s.Points, p)
	}
	return s
}

// one chooses among rows of one instant: the first with a value.
func (c *collector) one(same []row) row {
	if len(same) == 1 {
		return same[0]
	}
	i := max(0, slices.IndexFunc(same, func(r row) bool { return !r.missing }))
	for k, r := range same {
		switch {
		case k == i:
		case r.missing || r.value == same[i].value:
			c.at(r.line, "a reading that stands twice", "the reading of line %d stands here again: dropped", same[i].line)
		default:
			c.at(r.line, "two values for one moment", "another value for the moment of line %d: the first is kept", same[i].line)
		}
	}
	return same[i]
}
