package merge

import (
	"bytes"
	"encoding/json"
	"maps"
	"slices"

	"gloamline/journal"
)

// together are members that say one thing: who changes one means the other too.
var together = [][]string{{"weight", "weight_estimated"}, {"length", "length_estimated"}, {"when", "until"}, {"pool", "part", "spot"}}

// members is the body of a record by its members.
func members(e *journal.Envelope) (map[string]json.RawMessage, bool) {
	var m map[string]json.RawMessage
	return m, json.Unmarshal(e.Body, &m) == nil
}

// differ lists the members on which two bodies differ, in order.
func differ(a, b map[string]json.RawMessage) []string {
	out := map[string]bool{}
	for k := range a {
		if !bytes.Equal(a[k], b[k]) {
			out[k] = true
		}
	}
	for k := range b {
		if _, ok := a[k]; !ok {
			out[k] = true
		}
	}
	return slices.Sorted(maps.Keys(out))
}

// joined puts the changes of both sides into one record, if they touch different
// members and the whole passes the record's own checks.
func joined(base, ours, theirs *journal.Envelope) *journal.Envelope {
	if base == nil || base.Gone || ours.Gone || theirs.Gone || base.Version != ours.Version || base.Version != theirs.Version {
		return nil
	}
	b, ok1 := members(base)
	o, ok2 := members(ours)
	t, ok3 := members(theirs)
	if !ok1 || !ok2 || !ok3 {
		return nil
	}
	mine, yours := widened(differ(b, o)), widened(differ(b, t))
	for k := range mine {
		if yours[k] {
			return nil
		}
	}
	for k := range yours {
		if v, ok := t[k]; ok {
			o[k] = v
		} else {
			delete(o, k)
		}
	}
	body, err := json.Marshal(o)
	if err != nil {
		return nil
	}
	e := *ours
	e.Body = body
	r, err := journal.Unseal(e)
	if err != nil || journal.Check(r) != nil {
		return nil
	}
	// Sealed anew, so that the members stand in one order whichever side joins.
	if e, err = journal.Seal(r); err != nil {
		return nil
	}
	return &e
}

// widened adds to a list of members those that go with them.
func widened(list []string) map[string]bool {
	out := map[string]bool{}
	for _, k := range list {
		out[k] = true
	}
	for _, group := range together {
		if slices.ContainsFunc(group, func(k string) bool { return out[k] }) {
			for _, k := range group {
				out[k] = true
			}
		}
	}
	return out
}
