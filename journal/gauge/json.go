package gauge

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"strings"
)

// readJSON reads the three JSON layouts as a stream of tokens, one reading at a time.
func readJSON(r *bufio.Reader, c *collector) error {
	src := &counted{r: r}
	j := &stream{dec: json.NewDecoder(src), src: src, c: c}
	err := j.document()
	if err == io.EOF {
		err = io.ErrUnexpectedEOF
	}
	if err != nil && err != ErrNoReadings {
		return fmt.Errorf("line %d: this JSON cannot be read further: %w", j.line(), err)
	}
	return err
}

// counted counts the line feeds of what is read ahead, so that an offset can be told as
// a line.
type counted struct {
	r     io.Reader
	at    int64   // bytes read
	feeds []int64 // offsets of line feeds not yet counted
	lines int
}

func (c *counted) Read(p []byte) (int, error) {
	n, err := c.r.Read(p)
	for i, b := range p[:n] {
		if b == '\n' {
			c.feeds = append(c.feeds, c.at+int64(i))
		}
	}
	c.at += int64(n)
	return n, err
}

// line is the line of an offset; offsets only grow.
func (c *counted) line(at int64) int {
	i := 0
	for i < len(c.feeds) && c.feeds[i] < at {
		i++
	}
	c.lines += i
	c.feeds = append(c.feeds[:0], c.feeds[i:]...)
	return c.lines + 1
}

type stream struct {
	dec *json.Decoder
	src *counted
	c   *collector
}

func (j *stream) line() int { return j.src.line(j.dec.InputOffset()) }

func (j *stream) document() error {
	t, err := j.dec.Token()
	if err != nil {
		return err
	}
	if t == json.Delim('[') {
		j.c.file.Layout = HashTableJSON
		return j.each(j.hashSeries)
	}
	return j.members(func(name string) error {
		switch name {
		case "items":
			if j.c.file.Layout == unrecognisedLayout {
				j.c.file.Layout = EnglishFloodJSON
			}
			return j.array(j.englishItem)
		case "data":
			j.c.file.Layout = NorwegianJSON
			return j.array(j.norwegianStation)
		case "@context":
			var where json.RawMessage
			if err := j.dec.Decode(&where); err != nil {
				return err
			}
			if strings.Contains(string(where), "/hydrology/") {
				j.c.file.Layout = EnglishHydroJSON
			}
			return nil
		}
		return j.skip()
	})
}

// members calls f at each member of an object that has been opened.
func (j *stream) members(f func(name string) error) error {
	for j.dec.More() {
		t, err := j.dec.Token()
		if err != nil {
			return err
		}
		name, ok := t.(string)
		if !ok {
			return fmt.Errorf("a name was expected")
		}
		if err := f(name); err != nil {
			return err
		}
	}
	_, err := j.dec.Token()
	return err
}

// array opens an array and calls f at each element; anything else is passed over.
func (j *stream) array(f func() error) error {
	t, err := j.dec.Token()
	if err != nil || t == nil {
		return err
	}
	if t != json.Delim('[') {
		if t == json.Delim('{') {
			return j.close(1)
		}
		return nil
	}
	return j.each(f)
}

func (j *stream) each(f func() error) error {
	for j.dec.More() {
		if err := f(); err != nil {
			return err
		}
	}
	_, err := j.dec.Token()
	return err
}

// skip passes over one value, however deep.
func (j *stream) skip() error {
	t, err := j.dec.Token()
	if err != nil {
		return err
	}
	if t == json.Delim('{') || t == json.Delim('[') {
		return j.close(1)
	}
	return nil
}

func (j *stream) close(depth int) error {
	for depth > 0 {
		j.line() // lets go of the line feeds counted so far
		t, err := j.dec.Token()
		if err != nil {
			return err
		}
		switch t {
		case json.Delim('{'), json.Delim('['):
			depth++
		case json.Delim('}'), json.Delim(']'):
			depth--
		}
	}
	return nil
}

// scalar is the text of a JSON value: a number as written, a string without its quotes,
// nothing for null; of a list, the first, as the archive writes two values.
func scalar(raw json.RawMessage) string {
	s := string(raw)
	switch {
	case s == "" || s == "null":
		return ""
	case s[0] == '"':
		var out string
		if json.Unmarshal(raw, &out) == nil {
			return strings.TrimSpace(out)
		}
	case s[0] == '[':
		var list []json.RawMessage
		if json.Unmarshal(raw, &list) == nil && len(list) > 0 && list[0][0] != '[' {
			return scalar(list[0])
		}
		return ""
	}
	return s
}

// englishItem reads one reading of the flood or hydrology service.
func (j *stream) englishItem() error {
	var item struct {
		Measure  json.RawMessage `json:"measure"`
		DateTime json.RawMessage `json:"dateTime"`
		Value    json.RawMessage `json:"value"`
		Quality  json.RawMessage `json:"quality"`
		QCode    json.RawMessage `json:"qcode"`
	}
	if err := j.dec.Decode(&item); err != nil {
		return err
	}
	line := j.line()
	id := scalar(item.Measure)
	if strings.HasPrefix(id, "{") {
		var m struct {
			ID string `json:"@id"`
		}
		if json.Unmarshal(item.Measure, &m) == nil {
			id = m.ID
		}
	}
	if len(item.Quality) > 0 {
		j.c.file.Layout = EnglishHydroJSON
	}
	text := scalar(item.Value)
	if len(item.Value) > 0 && item.Value[0] == '[' {
		j.c.at(line, "two values in one cell", "more than one value for a moment: the first is taken")
	}
	t := newTable(j.c.file.Layout, ',')
	t.when, t.level, t.measure, t.flag, t.flag2 = 0, 1, 2, 3, 4
	return readRow(line, []string{scalar(item.DateTime), text, id, scalar(item.Quality), scalar(item.QCode)}, &t, &preamble{}, j.c)
}

// hashSeries reads one series of [{ts_id, columns, data: [[...], ...]}].
func (j *stream) hashSeries() error {
	t, err := j.dec.Token()
	if err != nil {
		return err
	}
	if t != json.Delim('{') {
		if t == json.Delim('[') {
			return j.close(1)
		}
		return nil
	}
	notes := &preamble{}
	head := []string{"Timestamp", "Value", "Quality Code"}
	return j.members(func(name string) error {
		if name == "data" {
			return j.hashRows(head, notes)
		}
		var raw json.RawMessage
		if err := j.dec.Decode(&raw); err != nil {
			return err
		}
		if name == "columns" {
			head = strings.Split(scalar(raw), ",")
		} else {
			notes.read("#" + name + ";" + scalar(raw))
		}
		return nil
	})
}

func (j *stream) hashRows(head []string, notes *preamble) error {
	t, _ := hashTable(head, ',', notes)
	t.layout = HashTableJSON
	if t.when = find(head, "Timestamp"); t.when < 0 || t.level < 0 {
		j.c.at(j.line(), "no columns", "the columns of this series are not named Timestamp and Value: passed over")
		return j.skip()
	}
	return j.array(func() error {
		var raw json.RawMessage
		if err := j.dec.Decode(&raw); err != nil {
			return err
		}
		var cells []json.RawMessage
		if json.Unmarshal(raw, &cells) != nil {
			j.c.at(j.line(), "no row", "a list of values was expected: passed over")
			return nil
		}
		row := make([]string, len(cells))
		for i, v := range cells {
			row[i] = scalar(v)
		}
		return readRow(j.line(), row, &t, notes, j.c)
	})
}

// norwegianStation reads one station and parameter: 1000 is the stage, 1001 the flow, 1003 the water's temperature (the last from memory).
func (j *stream) norwegianStation() error {
	t, err := j.dec.Token()
	if err != nil {
		return err
	}
	if t != json.Delim('{') {
		if t == json.Delim('[') {
			return j.close(1)
		}
		return nil
	}
	notes := &preamble{}
	row := newTable(NorwegianJSON, ',')
	row.when, row.level, row.flag = 0, 1, 2
	return j.members(func(name string) error {
		if name == "observations" {
			row.unit = notes.unit
			return j.array(func() error { return j.norwegianReading(&row, notes) })
		}
		var raw json.RawMessage
		if err := j.dec.Decode(&raw); err != nil {
			return err
		}
		switch text := scalar(raw); name {
		case "stationId":
			notes.id = text
		case "stationName":
			notes.name = text
		case "unit":
			notes.unit = text
		case "parameterNameEng":
			if notes.what == "" { // the number says more
				notes.what = text
			}
		case "parameter":
			switch text {
			case "1000", "1001":
			case "1003":
				notes.what = waterTemperature
			default:
				notes.what = "parameter " + text
			}
		}
		return nil
	})
}

func (j *stream) norwegianReading(t *table, notes *preamble) error {
	var o struct {
		Time    json.RawMessage `json:"time"`
		Value   json.RawMessage `json:"value"`
		Quality json.RawMessage `json:"quality"`
	}
	if err := j.dec.Decode(&o); err != nil {
		return err
	}
	return readRow(j.line(), []string{scalar(o.Time), scalar(o.Value), scalar(o.Quality)}, t, notes, j.c)
}
