package store

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"hash/crc32"
	"os"
	"regexp"
	"strconv"

	"gloamline/geo"
	"gloamline/journal"
)

// salvage is what can be read of a file, however damaged. Each value in a journal
// lies in one piece behind its own sum and says itself what it is, so values are
// looked for in the bytes; pages only tell which of them still counted.
type salvage struct {
	head    Head
	known   bool // the file's own head was found whole
	format  int
	sound   bool // its structure was whole: what the pages do not lead to is stale
	changes map[uint64][]journal.Change
	stands  map[journal.Ref][]journal.Envelope // what the pages lead to
	loose   map[journal.Ref][]journal.Envelope // what lies about: current or stale
	keys    map[journal.Ref]bool               // records that had a key in a page
	last    uint64                             // the highest number of a change that has a key, read or not
	open    bool                               // there may have been later changes of which nothing tells
}

// gather reads a file into a salvage.
func gather(op, path string) (*salvage, error) {
	b, err := os.ReadFile(path)
	if err != nil {
		return nil, readError(op, err)
	}
	v := &salvage{
		changes: map[uint64][]journal.Change{}, stands: map[journal.Ref][]journal.Envelope{},
		loose: map[journal.Ref][]journal.Envelope{}, keys: map[journal.Ref]bool{},
	}
	r := reach(b)
	v.sound, v.keys = r.sound, r.keys
	v.findHead(b, r)
	for at := 0; at < len(b); {
		n := v.value(b, at, r.reached(at))
		at += max(n, 1)
	}
	v.last = r.last
	for seq := range v.changes {
		v.last = max(v.last, seq)
	}
	// With one header damaged the other may be one change behind, and not more.
	v.open = !r.tail || r.headers == 1 && v.last == r.last
	return v, nil
}

// headBytes is how the values that say what a file is lie in it: keys in order, each
// followed by its value.
var headBytes = regexp.MustCompile(`copy([0-9a-f]{32})created([0-9TZ:.+-]*)format([0-9]{1,9})magic` + magic + `sum([0-9a-f]{8})`)

// findHead prefers the head that the pages lead to, else the one of the latest format.
func (v *salvage) findHead(b []byte, r reached) {
	best := -1
	for _, m := range headBytes.FindAllSubmatchIndex(b, -1) {
		part := func(i int) string { return string(b[m[2*i]:m[2*i+1]]) }
		h := crc32.New(castagnoli)
		for _, s := range []string{magic, part(3), part(1), part(2)} {
			h.Write([]byte(s + "\n"))
		}
		format, _ := strconv.Atoi(part(3))
		id, err := geo.ParseID(part(1))
		rank := format
		if r.reached(m[0]) {
			rank += 1 << 30
		}
		if want, _ := strconv.ParseUint(part(4), 16, 32); uint32(want) != h.Sum32() || err != nil || id.IsZero() || rank <= best {
			continue
		}
		best = rank
		v.head, v.format, v.known = Head{id, part(2)}, format, true
	}
}

// value takes the value that begins at b[at], if one does, and returns its length.
func (v *salvage) value(b []byte, at int, reached bool) int {
	js := b[at:]
	record := bytes.HasPrefix(js, []byte(`{"v":`))
	if at < sumSize || !record && !bytes.HasPrefix(js, []byte(`{"id":"`)) {
		return 0
	}
	n := jsonLength(js)
	if n == 0 || crc32.Checksum(js[:n], castagnoli) != binary.BigEndian.Uint32(b[at-sumSize:]) {
		return 0
	}
	if record {
		var e journal.Envelope
		if json.Unmarshal(js[:n], &e) != nil || e.ID.IsZero() || e.Kind == "" {
			return 0
		}
		e.Body = bytes.Clone(e.Body)
		if reached {
			v.stands[e.Ref()] = append(v.stands[e.Ref()], e)
		} else if !v.sound {
			v.loose[e.Ref()] = append(v.loose[e.Ref()], e)
		}
		return n
	}
	var c journal.Change
	if json.Unmarshal(js[:n], &c) != nil || c.Seq == 0 || wellFormed(&c) != nil {
		return 0
	}
	switch list := v.changes[c.Seq]; {
	case reached: // before those that only lie about
		v.changes[c.Seq] = append([]journal.Change{c}, list...)
	case !v.sound:
		v.changes[c.Seq] = append(list, c)
	}
	return n
}

// jsonLength is the length of the object that b begins with, 0 if none ends in it.
// The JSON of a journal is written without control characters, so whatever holds one
// before its end is none.
func jsonLength(b []byte) int {
	depth, quoted := 0, false
	for i := 0; i < len(b); i++ {
		switch c := b[i]; {
		case c < 0x20:
			return 0
		case quoted && c == '\\':
			i++
		case c == '"':
			quoted = !quoted
		case quoted:
		case c == '{':
			depth++
		case c == '}':
			if depth--; depth == 0 {
				return i + 1
			}
		}
	}
	return 0
}
