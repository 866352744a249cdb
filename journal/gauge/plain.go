package gauge

import (
	"fmt"
	"slices"
	"strings"

	"gloamline/journal/units"
)

// plainSample is how many lines are looked at before a plain table is understood.
const plainSample = 200

// Column is a column of a plain table as a person can choose among them.
type Column struct {
	Name    string // from the head, "" if there is none
	Kind    ColumnKind
	Samples []string // the first few different values
}

// ColumnKind is what all the sampled values of a column are.
type ColumnKind string

// The kinds of column.
const (
	DateAndTime ColumnKind = "date and time"
	Date        ColumnKind = "date"
	Clock       ColumnKind = "time of day"
	Number      ColumnKind = "number"
	Words       ColumnKind = "words"
)

// Choice says which columns of a plain table to read. Columns count from 0; NoColumn is
// none. Unit is that of the level; "" takes the one in the head, else metres.
type Choice struct {
	When, Clock, Level, Flag int
	Unit                     units.LengthUnit
	MonthFirst               bool // 7/14/2025
}

// NoColumn stands for a column that is not there.
const NoColumn = -1

// levelWords are words for the height of water in a head of English, Norwegian, Swedish,
// Danish, German, French, Icelandic or Welsh tables.
var levelWords = []string{"level", "stage", "height", "vannstand", "vattenstånd", "vandstand", "wasserstand", "pegel", "niveau", "hauteur", "vatnshæð", "lefel"}

// readPlain reads a table without a known head: sample lines first, then the rest.
func readPlain(sample []string, in *lines, c *collector) error {
	c.file.Layout = Plain
	div, body := divider(sample)
	if div == 0 {
		c.file.Layout = unrecognisedLayout
		return ErrNoReadings
	}
	p := survey(sample, body, div)
	if p.first == len(sample) {
		c.file.Layout = unrecognisedLayout
		return ErrNoReadings
	}
	c.file.Columns, c.file.Choice = p.columns, p.guess
	pick := p.guess
	if c.opt.Columns != nil {
		pick = *c.opt.Columns
		c.file.Choice = pick
	} else if p.unsure {
		return ErrChoose
	}
	if err := pick.within(len(p.columns)); err != nil {
		return err
	}
	t := newTable(Plain, div)
	t.when, t.clock, t.level, t.flag = pick.When, pick.Clock, pick.Level, pick.Flag
	t.order = dayFirst
	if pick.MonthFirst {
		t.order = monthFirst
	}
	if t.unit = string(pick.Unit); t.unit == "" {
		t.unit = unitIn(p.columns[pick.Level].Name)
	}
	if s, ok := scaleOf(t.unit); ok && s.what != Level {
		return fmt.Errorf("%q is no unit of a level: choose another column", t.unit)
	}
	if p.ambiguous && c.opt.Columns == nil {
		c.once("order", "the dates may have the day or the month first; read with the day first")
	}
	notes := &preamble{}
	var buf []string
	for i, line := range sample {
		if i < p.first || strings.TrimSpace(line) == "" {
			continue
		}
		buf = fields(line, div, buf)
		if err := readRow(i+1, buf, &t, notes, c); err != nil {
			return err
		}
	}
	for {
		line, ok := in.next()
		if !ok {
			break
		}
		if strings.TrimSpace(line) == "" {
			continue
		}
		buf = fields(line, div, buf)
		if err := readRow(in.n, buf, &t, notes, c); err != nil {
			return err
		}
	}
	if in.latin1 > 0 {
		c.at(in.latin1, "latin1", "letters that are not UTF-8; read as ISO-8859-1")
	}
	return in.err()
}

func (p Choice) within(n int) error {
	for _, i := range []int{p.When, p.Clock, p.Level, p.Flag} {
		if i < NoColumn || i >= n {
			return fmt.Errorf("there is no column %d; the table has %d", i+1, n)
		}
	}
	if p.When == NoColumn || p.Level == NoColumn {
		return ErrChoose
	}
	if p.Unit != "" && !p.Unit.Known() {
		return fmt.Errorf("%q is no unit of a level", string(p.Unit))
	}
	return nil
}

// divider is the sign between columns: the one that gives most lines the same number of
// columns, two or more. A comma comes last, since it may stand within numbers. body is
// that number of columns.
func divider(sample []string) (div byte, body int) {
	for _, line := range sample {
		if rest, ok := strings.CutPrefix(line, "sep="); ok && len(rest) == 1 {
			div = rest[0]
		}
	}
	best := 0
	var buf []string
	for _, d := range []byte{'\t', ';', '|', ','} {
		if div != 0 && d != div {
			continue
		}
		counts := map[int]int{}
		for _, line := range sample {
			buf = fields(line, d, buf)
			if len(buf) > 1 {
				counts[len(buf)]++
			}
		}
		for n, k := range counts {
			if k > best || k == best && div == d && n > body {
				div, body, best = d, n, k
			}
		}
	}
	if best == 0 {
		return 0, 0
	}
	return div, body
}

// plain is what a look at the first lines showed.
type plain struct {
	columns   []Column
	guess     Choice
	first     int // line of the first row, from 0
	unsure    bool
	ambiguous bool // dates may be day or month first
}

func survey(sample []string, width int, div byte) plain {
	p := plain{columns: make([]Column, width), first: len(sample)}
	kinds := make([]map[ColumnKind]bool, width)
	order := unknownOrder
	strokes := false
	for i, line := range sample {
		row := fields(line, div, nil)
		if len(row) < 2 || !slices.ContainsFunc(row, func(s string) bool { k := kindOf(s); return k == Date || k == DateAndTime }) {
			if p.first == len(sample) && len(row) == width {
				for k := range row {
					p.columns[k].Name = row[k]
				}
			}
			continue
		}
		p.first = min(p.first, i)
		for k := range min(width, len(row)) {
			v := row[k]
			kind := kindOf(v)
			if kind == Date || kind == DateAndTime {
				strokes = strokes || strings.ContainsAny(v, "/") && len(v) > 4 && v[4] != '/'
				if o := orderOf(v); o != unknownOrder {
					order = o
				}
			}
			if n, ok := number(v); missing(v, n, ok) {
				continue
			}
			if kinds[k] == nil {
				kinds[k] = map[ColumnKind]bool{}
			}
			kinds[k][kind] = true
			if s := &p.columns[k].Samples; len(*s) < 4 && !slices.Contains(*s, clip(v)) {
				*s = append(*s, clip(v))
			}
		}
	}
	for k := range p.columns {
		p.columns[k].Kind = Words
		if len(kinds[k]) == 1 {
			for kind := range kinds[k] {
				p.columns[k].Kind = kind
			}
		}
	}
	p.ambiguous = strokes && order == unknownOrder
	p.guess, p.unsure = guess(p.columns)
	p.guess.MonthFirst = order == monthFirst
	return p
}

func kindOf(s string) ColumnKind {
	for _, o := range []dateOrder{dayFirst, monthFirst} {
		if m, ok := parseMoment(s, o); ok {
			if m.clocked {
				return DateAndTime
			}
			return Date
		}
	}
	if _, ok := parseClock(s); ok {
		return Clock
	}
	if _, ok := number(s); ok {
		return Number
	}
	return Words
}

// guess picks columns; unsure if more than one could be the level and no name tells.
func guess(cols []Column) (Choice, bool) {
	g := Choice{When: NoColumn, Clock: NoColumn, Level: NoColumn, Flag: NoColumn}
	numbers, named := 0, 0
	for i, col := range cols {
		switch col.Kind {
		case DateAndTime, Date:
			if g.When == NoColumn {
				g.When = i
			}
		case Clock:
			if g.Clock == NoColumn {
				g.Clock = i
			}
		case Number:
			isLevel := slices.ContainsFunc(levelWords, func(w string) bool { return strings.Contains(strings.ToLower(col.Name), w) })
			if isLevel {
				named++
			}
			if numbers == 0 || isLevel && named == 1 {
				g.Level = i
			}
			numbers++
		}
	}
	if g.When != NoColumn && cols[g.When].Kind == DateAndTime {
		g.Clock = NoColumn
	}
	return g, g.When == NoColumn || g.Level == NoColumn || numbers > 1 && named != 1
}
