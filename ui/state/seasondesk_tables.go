package state

import (
	"bytes"

	"gloamline/timeline/season"
)

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
