package state

import (
	"strconv"

	"gloamline/journal"
)

// lineFields are the line and, for one that sinks, how fast.
func (c *Card) lineFields(r *journal.Rig, before func() *journal.Rig) {
	line := &field{Field: Field{ID: "line", Label: "Line", Kind: Pick}}
	line.text = func() string {
		if r.Line.IsNone() {
			return noneWord
		}
		return string(r.Line.Or(journal.Line{}).Kind)
	}
	kind := journal.Field[journal.LineKind]{}
	pick := pickField("line", "Line", &kind, journal.LineKinds, "")
	line.choices = pick.choices
	line.put = func(s string) error {
		if err := pick.put(s); err != nil {
			return err
		}
		r.Line = journal.Field[journal.Line]{}
		switch k, ok := kind.Get(); {
		case kind.IsNone():
			r.Line = journal.None[journal.Line]()
		case ok:
			r.Line = journal.Of(journal.Line{Kind: k})
		}
		return nil
	}
	line.fill = func() string {
		if b := before(); b != nil {
			return string(b.Line.Or(journal.Line{}).Kind)
		}
		return ""
	}
	c.add(line)

	var sink journal.Field[float64]
	speed := textField("sink_ips", "Sinks, inches a second", "6", &sink, func(s string) (float64, error) {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			return 0, wrongf("“%s” is not a number of inches a second", s)
		}
		if !(v >= 0 && v <= 20) {
			return 0, wrongf("a line sinks between 0 and 20 inches a second")
		}
		return v, nil
	}, func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) })
	read := speed.text
	speed.text = func() string {
		sink = r.Line.Or(journal.Line{}).Sink
		return read()
	}
	parse := speed.put
	speed.put = func(s string) error {
		if err := parse(s); err != nil {
			return err
		}
		if l, ok := r.Line.Get(); ok {
			l.Sink = sink
			r.Line = journal.Of(l)
		}
		return nil
	}
	speed.hidden = func() bool {
		k := r.Line.Or(journal.Line{}).Kind
		return k != journal.SinkTip && k != journal.Sinking
	}
	speed.fill = func() string {
		if b := before(); b != nil && b.Line.Or(journal.Line{}).Kind == r.Line.Or(journal.Line{}).Kind {
			if v, ok := b.Line.Or(journal.Line{}).Sink.Get(); ok {
				return strconv.FormatFloat(v, 'f', -1, 64)
			}
		}
		return ""
	}
	c.add(speed).more()
}
