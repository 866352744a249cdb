package sketch

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
)

// object is a JSON object with its members unread.
type object map[string]json.RawMessage

// members reads an object; nil when raw is none.
func members(raw json.RawMessage) object {
	var o object
	if json.Unmarshal(raw, &o) != nil {
		return nil
	}
	return o
}

// take removes a member and returns it; nil when it is missing or null.
func (o object) take(key string) json.RawMessage {
	raw, ok := o[key]
	delete(o, key)
	if !ok || isNull(raw) {
		return nil
	}
	return raw
}

// rest returns what was not taken, in compact form; nil when nothing is left.
func (o object) rest() map[string]json.RawMessage {
	if len(o) == 0 {
		return nil
	}
	out := make(map[string]json.RawMessage, len(o))
	for k, raw := range o {
		var b bytes.Buffer
		if json.Compact(&b, raw) == nil {
			out[k] = b.Bytes()
		}
	}
	return out
}

func isNull(raw json.RawMessage) bool { return string(bytes.TrimSpace(raw)) == "null" }

// text reads a string; a number is taken as its digits.
func text(raw json.RawMessage) (string, bool) {
	var s string
	if json.Unmarshal(raw, &s) == nil {
		return strings.TrimSpace(s), true
	}
	var n json.Number
	if json.Unmarshal(raw, &n) == nil {
		return n.String(), true
	}
	return "", false
}

// ordered is a JSON object being written, members in the order given.
type ordered struct {
	buf  bytes.Buffer
	keys []string
	err  error
}

// raw adds a member in JSON; one that is already there is not written again.
func (o *ordered) raw(key string, value json.RawMessage) {
	if o.err != nil || len(value) == 0 || slices.Contains(o.keys, key) {
		return
	}
	if len(o.keys) > 0 {
		o.buf.WriteByte(',')
	}
	o.keys = append(o.keys, key)
	o.buf.Write(plain(key))
	o.buf.WriteByte(':')
	o.err = json.Compact(&o.buf, value)
}

// value adds a member made of a Go value; "" and nil are left out.
func (o *ordered) value(key string, v any) {
	if v == "" || v == nil {
		return
	}
	raw, err := encode(v)
	if err != nil && o.err == nil {
		o.err = err
	}
	o.raw(key, raw)
}

// extra adds members kept from a file, by name, except those given.
func (o *ordered) extra(kept map[string]json.RawMessage, except ...string) {
	keys := make([]string, 0, len(kept))
	for k := range kept {
		if !slices.Contains(except, k) {
			keys = append(keys, k)
		}
	}
	slices.Sort(keys)
	for _, k := range keys {
		o.raw(k, kept[k])
	}
}

func (o *ordered) done() (json.RawMessage, error) {
	return json.RawMessage("{" + o.buf.String() + "}"), o.err
}

func plain(s string) []byte {
	b, _ := encode(s) // a string always encodes
	return b
}

// encode is json.Marshal without the escapes meant for web pages.
func encode(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimSpace(b.Bytes()), err
}

// decimals is how many places of a coordinate are kept.
const decimals = 7

// rounded returns x with 7 decimals at most, and never a negative nought.
func rounded(x float64) float64 {
	r, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'f', decimals, 64), 64)
	return r + 0
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
