package state

import (
	"bytes"

	"gloamline/timeline/season"
)

// seasonSheets writes what the pictures of a card show, of all for the first.
func seasonSheets(f *season.Season, card int, head ...string) []Table {
	var out []Table
	for _, x := range f.Sheets() {
		if card != 0 && card != x.Card || len(x.Rows) < 2 {
			continue
		}
		var b bytes.Buffer
		_ = x.WriteCSV(&b, head...) // writing to memory does not fail
		out = append(out, Table{"-" + x.Name, b.Bytes()})
	}
	return out
}

// seasonTables writes tables as CSV, headed by what it is made from.
func seasonTables(list []*season.Table, head ...string) []Table {
	var out []Table
	for _, t := range list {
		var b bytes.Buffer
		_ = t.WriteCSV(&b, head...) // writing to memory does not fail
		out = append(out, Table{"-" + t.Name, b.Bytes()})
	}
	return out
}
