package state

import (
	"bytes"

	"gloamline/timeline/season"
)

// seasonTables writes tables as CSV, each once, headed by what it is made from.
func seasonTables(list []*season.Table, head ...string) []Table {
	var out []Table
	seen := map[string]bool{}
	for _, t := range list {
		if seen[t.Name] {
			continue
		}
		seen[t.Name] = true
		var b bytes.Buffer
		_ = t.WriteCSV(&b, head...) // writing to memory does not fail
		out = append(out, Table{"-" + t.Name, b.Bytes()})
	}
	return out
}
