package state

import (
	"strconv"

	"gloamline/journal/gauge"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// IntakeColumns is which columns of a table are read. Values are places, counted from 0; an
// empty one is none.
type IntakeColumns struct {
	Name                     string
	Columns, Clocks, Units   []Choice
	When, Clock, Level, Unit string
	MonthFirst               bool

	path string
}

// Columns are those of the table picked out; false if it is none to choose from.
func (k *IntakeDesk) Columns() (IntakeColumns, bool) {
	f, ok := k.File()
	if !ok || f.Gauge == nil || len(f.Gauge.Columns) == 0 {
		return IntakeColumns{}, false
	}
	c := IntakeColumns{Name: f.Name, path: f.Path, Clocks: []Choice{{"", words.ColumnNone()}}}
	for i, col := range f.Gauge.Columns {
		x := Choice{strconv.Itoa(i), words.ColumnName(i+1, col)}
		c.Columns, c.Clocks = append(c.Columns, x), append(c.Clocks, x)
	}
	c.Units = []Choice{{"", words.UnitName("")}}
	for _, u := range words.UnitChoices {
		c.Units = append(c.Units, Choice{string(u), words.UnitName(u)})
	}
	place := func(i int) string {
		if i < 0 || i >= len(f.Gauge.Columns) {
			return ""
		}
		return strconv.Itoa(i)
	}
	now := f.Gauge.Choice
	c.When, c.Clock, c.Level, c.Unit, c.MonthFirst = place(now.When), place(now.Clock), place(now.Level), string(now.Unit), now.MonthFirst
	return c, true
}

// ChooseColumns says which columns are read; what it returns is to be read again. Without a
// time and a level nothing is.
func (k *IntakeDesk) ChooseColumns(c IntakeColumns) (read []string, err error) {
	place := func(s string) int {
		if n, err := strconv.Atoi(s); err == nil {
			return n
		}
		return gauge.NoColumn
	}
	pick := gauge.Choice{When: place(c.When), Clock: place(c.Clock), Level: place(c.Level), Flag: gauge.NoColumn, Unit: units.LengthUnit(c.Unit), MonthFirst: c.MonthFirst}
	if pick.When == gauge.NoColumn || pick.Level == gauge.NoColumn || pick.When == pick.Level {
		return nil, words.ColumnsWanted()
	}
	o := k.reads[c.path]
	o.Columns = &pick
	k.reads[c.path] = o
	return []string{c.path}, nil
}
