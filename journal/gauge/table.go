package gauge

import (
	"bufio"
	"strings"
)

// table says where in a row things stand; -1 is nowhere.
type table struct {
	layout                   Layout
	div                      byte
	when, clock, level, flow int
	warm, warmFlag           int // temperature of the water
	flag, flag2              int // of the level
	flowFlag                 int
	zone, measure, id, name  int
	unitCol                  int
	unit, datum              string
	order                    dateOrder
	types                    bool // a line of column types follows, to be passed over
}

func newTable(l Layout, div byte) table {
	return table{layout: l, div: div, when: -1, clock: -1, level: -1, flow: -1, warm: -1, warmFlag: -1, flag: -1, flag2: -1, flowFlag: -1, zone: -1, measure: -1, id: -1, name: -1, unitCol: -1}
}

// find is the place of a column, by name without regard to case; -1 if there is none.
func find(head []string, name string) int {
	for i, h := range head {
		if strings.EqualFold(strings.TrimPrefix(h, "#"), name) {
			return i
		}
	}
	return -1
}

// recognise looks whether a line is the head of a known table.
func recognise(line string, notes *preamble) (table, bool) {
	var buf []string
	for _, div := range []byte{'\t', ';', ','} {
		if strings.IndexByte(line, div) < 0 {
			continue
		}
		head := fields(line, div, buf)
		if t, ok := known(head, div, notes); ok {
			return t, true
		}
	}
	return table{}, false
}

func known(head []string, div byte, notes *preamble) (table, bool) {
	value, when := find(head, "value"), find(head, "dateTime")
	switch {
	case head[0] == "agency_cd" && div == '\t':
		return usTable(head)
	case strings.EqualFold(head[0], "#Timestamp") && value > 0:
		return hashTable(head, div, notes)
	case when >= 0 && value >= 0 && find(head, "measure") >= 0:
		t := newTable(EnglishFlood, div)
		t.when, t.level, t.measure = when, value, find(head, "measure")
		switch {
		case find(head, "quality") >= 0:
			t.layout = EnglishHydrology
			t.flag, t.flag2 = find(head, "quality"), find(head, "qcode")
		case find(head, "stationReference") >= 0:
			t.layout = EnglishArchive
			t.id, t.name, t.unitCol = find(head, "stationReference"), find(head, "label"), find(head, "unitName")
		}
		return t, true
	case when == 0 && value == 1 && len(head) == 2 && head[0] == "datetime":
		t := newTable(IrishMonth, div)
		t.when, t.level = 0, 1
		t.unit = "m"
		return t, true
	case strings.EqualFold(head[0], "Date and Time") && len(head) > 1 && strings.HasPrefix(head[1], "Stage") && notes.service == "SEPA":
		t := newTable(ScottishOld, div)
		t.when, t.level, t.unit, t.order = 0, 1, unitIn(head[1]), dayFirst
		return t, true
	case strings.EqualFold(head[0], "ID") && len(head) > 2 && strings.EqualFold(head[1], "Date"):
		return canadianTable(head, div)
	}
	return table{}, false
}

// canadianTable: the names Grade, Symbol and QA/QC or Approval stand twice, once after
// the level and once after the flow, so they are found by place.
func canadianTable(head []string, div byte) (table, bool) {
	t := newTable(Canadian, div)
	t.id, t.when = 0, 1
	for i, h := range head {
		into := &t.flag
		switch {
		case strings.HasPrefix(h, "Water Level"):
			t.level, t.unit = i, unitIn(h)
			continue
		case strings.HasPrefix(h, "Discharge"):
			t.flow = i
			continue
		case t.flow >= 0:
			into = &t.flowFlag
		}
		if strings.HasPrefix(h, "Approval") || h == "QA/QC" {
			*into = i
		}
	}
	return t, t.level >= 0
}

// usTable: columns are named series_parameter, with _cd for the codes. 00065 is gauge
// height in feet, 00060 flow in cubic feet a second, 00010 the water's temperature in °C.
func usTable(head []string) (table, bool) {
	t := newTable(USTabbed, '\t')
	t.id, t.zone, t.types, t.unit = find(head, "site_no"), find(head, "tz_cd"), true, "ft"
	t.when = find(head, "datetime")
	for i, h := range head {
		switch parts := strings.Split(h, "_"); {
		case h == "site_no", h == "tz_cd", h == "datetime", len(parts) < 2, parts[len(parts)-1] == "cd":
		case parts[1] == "00065" && t.level < 0:
			t.level, t.flag = i, find(head, h+"_cd")
		case parts[1] == "00060" && t.flow < 0:
			t.flow, t.flowFlag = i, find(head, h+"_cd")
		case parts[1] == "00010" && t.warm < 0:
			t.warm, t.warmFlag = i, find(head, h+"_cd")
		}
	}
	return t, t.when >= 0 && (t.level >= 0 || t.flow >= 0 || t.warm >= 0)
}

// hashTable: lines of # give the station; the export has an absolute value beside the
// one on the staff, which is not the level asked for.
func hashTable(head []string, div byte, notes *preamble) (table, bool) {
	t := newTable(HashTable, div)
	t.when, t.level, t.unit, t.datum = 0, find(head, "Value"), notes.unit, notes.datum
	if t.flag = find(head, "Quality Code"); t.flag < 0 {
		t.flag = find(head, "Quality Code Name")
	}
	if find(head, "Absolute Value") >= 0 {
		t.layout = IrishExport
	}
	return t, true
}

// readTable finds the head of a table and reads what follows it. What has no known head
// is a plain table.
func readTable(r *bufio.Reader, c *collector) error {
	in := newLines(r)
	notes := &preamble{}
	var t table
	found := false
	var kept []string // lines that may belong to a plain table
	for len(kept) < plainSample {
		line, ok := in.next()
		if !ok {
			break
		}
		if t, found = recognise(line, notes); found {
			break
		}
		notes.read(line)
		kept = append(kept, line)
	}
	if err := in.err(); err != nil {
		return err
	}
	if !found {
		return readPlain(kept, in, c)
	}
	c.file.Layout = t.layout
	err := readRows(in, t, notes, c)
	if in.latin1 > 0 {
		c.at(in.latin1, "latin1", "letters that are not UTF-8; read as ISO-8859-1")
	}
	if err == nil {
		err = in.err()
	}
	return err
}
