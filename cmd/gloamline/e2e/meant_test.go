//go:build e2e

package e2e

import (
	"encoding/json"
	"fmt"
	"sort"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// What a journal holds is compared as lines made from its JSON, as the page on the file
// in DEVELOPERS.md gives it, with names for IDs and instants in UTC. The lines meant are
// written by hand: nothing that reads what is typed has a part in them.

// inWords gives the entries of the only night as such lines, in no order.
func inWords(t *testing.T, j *journal.Journal) []string {
	t.Helper()
	trips, err := j.Trips()
	require.NoError(t, err)
	require.Len(t, trips, 1)
	n := names{trips[0].ID.String(): "the night"}
	people, err := journal.All[journal.Person](j)
	require.NoError(t, err)
	for _, p := range people {
		n[p.ID.String()] = p.Name
	}
	for _, r := range trips[0].Rods {
		n[r.ID.String()] = n[r.Person.String()]
	}
	flies, err := journal.All[journal.Fly](j)
	require.NoError(t, err)
	for _, f := range flies {
		d := f.Dresses[0]
		n[f.ID.String()] = strings.TrimSpace(fmt.Sprintf("%.4f %s %s", d.Length.Or(units.Length{}).M, d.Silhouette.Or(""), d.Tone.Or("")))
	}
	beats, err := journal.All[journal.Beat](j)
	require.NoError(t, err)
	for _, b := range beats {
		n[b.ID.String()] = b.On(trips[0].Evening).Name
		for _, p := range b.On(trips[0].Evening).Pools {
			n[p.ID.String()] = p.Name
		}
	}
	log, err := j.Night(trips[0].ID)
	require.NoError(t, err)
	out := []string{n.line("night", trips[0], "id", "rods") + n.party(trips[0])}
	for _, e := range log.Sorted() {
		out = append(out, n.line(string(e.Ref().Kind), e, "id", "trip"))
	}
	return out
}

// names are what IDs stand for.
type names map[string]string

// party is who fished, in order.
func (n names) party(t journal.Trip) string {
	var out strings.Builder
	for _, r := range t.Rods {
		out.WriteString(n.line(" | rod", r, "id"))
	}
	return out.String()
}

// line is one record: its kind, then its members by name, without those left out.
func (n names) line(kind string, record any, without ...string) string {
	b, err := json.Marshal(record)
	if err != nil {
		return err.Error()
	}
	var m map[string]any
	if err := json.Unmarshal(b, &m); err != nil {
		return err.Error()
	}
	for _, k := range without {
		delete(m, k)
	}
	return kind + " " + n.members(m)
}

func (n names) members(m map[string]any) string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	var out []string
	for _, k := range keys {
		if s := n.value(m[k]); s != "" {
			out = append(out, k+"="+s)
		}
	}
	return strings.Join(out, " ")
}

// value is one value in words; empty for one that says no more than its absence.
func (n names) value(v any) string {
	switch v := v.(type) {
	case nil:
		return "none"
	case string:
		if _, err := geo.ParseID(v); err == nil && n[v] != "" {
			return n[v]
		}
		return v
	case bool:
		if !v {
			return ""
		}
		return "yes"
	case []any:
		var out []string
		for _, e := range v {
			out = append(out, "["+n.value(e)+"]")
		}
		return strings.Join(out, "")
	case map[string]any:
		switch {
		case v["g"] != nil:
			return fmt.Sprintf("%.1fg/%v", v["g"], v["unit"])
		case v["m"] != nil:
			return fmt.Sprintf("%.4fm/%v", v["m"], v["unit"])
		case v["c"] != nil:
			return fmt.Sprintf("%.1fC/%v", v["c"], v["unit"])
		case v["lo"] != nil && v["anchors"] == nil:
			lo, hi := clockUTC(v["lo"]), clockUTC(v["hi"])
			if lo == hi {
				return fmt.Sprintf("%v@%s", v["kind"], lo)
			}
			return fmt.Sprintf("%v@%s-%s", v["kind"], lo, hi)
		}
		return "{" + n.members(v) + "}"
	}
	return fmt.Sprint(v)
}

// clockUTC is an instant of the night, day of the month and time in UTC.
func clockUTC(v any) string {
	at, err := time.Parse(time.RFC3339Nano, fmt.Sprint(v))
	if err != nil {
		return err.Error()
	}
	return at.UTC().Format("2/15:04:05")
}
