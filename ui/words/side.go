package words

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/merge"
	"gloamline/journal/units"
)

// SideBySide is one member of a record in which two copies differ: its name, and what it
// is here, there, and in the version that both had.
type SideBySide struct{ Name, Here, There, Before string }

// ConflictRows lists the members in which the sides of a conflict differ. Where one side
// removed the record there is one row that says so. names has what IDs stand for; the zone is
// that of the water, nil for UTC.
func ConflictRows(c merge.Conflict, names map[string]string, zone *time.Location, p Prefs) []SideBySide {
	if c.Ours.Gone || c.Theirs.Gone {
		say := func(e journal.Envelope) string {
			if e.Gone {
				return "removed"
			}
			return "changed, and kept"
		}
		return []SideBySide{{KindName(c.Ref.Kind), say(c.Ours), say(c.Theirs), ""}}
	}
	if zone == nil {
		zone = time.UTC
	}
	m := memberTeller{names, zone, p}
	here, there := bodyOf(&c.Ours), bodyOf(&c.Theirs)
	before := bodyOf(c.Base)
	var out []SideBySide
	for _, name := range c.Members {
		row := SideBySide{Name: FieldName(name), Here: m.member(name, here), There: m.member(name, there)}
		if before != nil {
			row.Before = m.member(name, before)
		}
		if row.Here == row.There { // they differ in what nobody reads, such as the unit as typed
			row.Here += " (written differently)"
		}
		out = append(out, row)
	}
	return out
}

func bodyOf(e *journal.Envelope) map[string]any {
	var m map[string]any
	if e == nil || json.Unmarshal(e.Body, &m) != nil {
		return nil
	}
	return m
}

// memberTeller says the JSON of any member of any record in words.
type memberTeller struct {
	names map[string]string
	zone  *time.Location
	p     Prefs
}

func (m memberTeller) member(name string, body map[string]any) string {
	v, ok := body[name]
	if !ok {
		return "–"
	}
	if n, ok := v.(float64); ok && name == "cloud" {
		return fmt.Sprintf("%g eighths", n)
	}
	return m.value(v)
}

func (m memberTeller) value(v any) string {
	switch v := v.(type) {
	case nil:
		return "none"
	case bool:
		if v {
			return "yes"
		}
		return "no"
	case float64:
		return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.4f", v), "0"), ".")
	case string:
		if n := m.names[v]; n != "" {
			return n
		}
		if len(v) == 32 && strings.Trim(v, "0123456789abcdef") == "" {
			return "another record"
		}
		if d, err := journal.ParseDate(v); err == nil {
			return NightDate(d)
		}
		if at, err := time.Parse(time.RFC3339Nano, v); err == nil {
			return DayAndClock(at, m.zone)
		}
		if len(v) > 300 { // a thumbnail
			return counted(len(v), "character", "characters")
		}
		return v
	case []any:
		if len(v) > 6 {
			return counted(len(v), "part", "parts")
		}
		var parts []string
		for _, e := range v {
			parts = append(parts, m.value(e))
		}
		return strings.Join(parts, "; ")
	case map[string]any:
		return m.object(v)
	}
	return fmt.Sprint(v)
}

// object says a quantity, a moment, a place, or whatever else by its members.
func (m memberTeller) object(v map[string]any) string {
	js, _ := json.Marshal(v)
	number := func(k string) (float64, bool) { f, ok := v[k].(float64); return f, ok }
	if _, ok := number("m"); ok {
		var l units.Length
		if json.Unmarshal(js, &l) == nil {
			return l.String()
		}
	}
	if _, ok := number("g"); ok {
		var w units.Weight
		if json.Unmarshal(js, &w) == nil {
			return w.String()
		}
	}
	if _, ok := number("c"); ok {
		var t units.Temperature
		if json.Unmarshal(js, &t) == nil {
			return t.String()
		}
	}
	if lat, ok := number("lat"); ok {
		lon, _ := number("lon")
		return fmt.Sprintf("%.5f, %.5f", lat, lon)
	}
	if _, ok := v["lo"]; ok {
		var w journal.When
		if json.Unmarshal(js, &w) == nil {
			return Moment(w, journal.Spread{Lo: w.Lo, Hi: w.Hi}, m.zone)
		}
	}
	var parts []string
	for _, k := range slices.Sorted(maps.Keys(v)) {
		if k == "id" || k == "extra" {
			continue
		}
		parts = append(parts, FieldName(k)+" "+m.value(v[k]))
	}
	text := strings.Join(parts, ", ")
	if len(text) > 300 {
		return counted(len(v), "part", "parts")
	}
	return text
}

// Contradiction says what a night says twice since a merge.
func Contradiction(evening journal.Date, e *journal.Error) string {
	return "To look at, night of " + NightDate(evening) + ": " + FieldSentence(e)
}

// MergeTitle, MergeHint and CompareButton ask for the other copy; MergeOf heads what is shown.
func MergeTitle() string { return "Merge another copy" }
func MergeHint() string {
	return "Another copy of this journal, from a second computer or another guide, or a backup. First the two are compared: nothing is changed before you say so, and the other file is only read."
}
func CompareButton() string           { return "Compare" }
func MergeOf(name string) string      { return "Merge " + name + " into this journal" }
func TakeOver() string                { return "Take over" }
func AlikeMore(n int) string          { return fmt.Sprintf("And %d more that bear one name on both sides.", n) }
func WasBefore(name, v string) string { return "before either change, " + name + ": " + v }

// ConflictsHint says how the records that both sides changed are settled by keys.
func ConflictsHint() string {
	return "Both sides changed these. Each is settled already so that least is lost; choose otherwise with H for as it is here, T for as it is there, B for both changes. What is not chosen stays in the history."
}

// MergeKeys are the keys of the three ways.
func MergeKeys() [3]rune { return [3]rune{'h', 't', 'b'} }

// MergeWay is the button of a way, MergeSign how it stands in the list.
func MergeWay(way string) string {
	return map[string]string{"ours": "As here (H)", "theirs": "As there (T)", "both": "Both changes (B)"}[way]
}
func MergeSign(way string) string {
	return map[string]string{"ours": "here", "theirs": "there", "both": "both"}[way]
}

// MergeDone says that a merge was made, and what to look at.
func MergeDone(contradictions []string) (what, do string) {
	do = "It is one change: Undo takes all of it back."
	const most = 4
	for i, c := range contradictions {
		if i == most {
			do += fmt.Sprintf(" And %d more.", len(contradictions)-most)
			break
		}
		do += " " + c
	}
	return "The other copy was taken over.", do
}

// Sentences gives each line a capital and a full stop.
func Sentences(lines []string) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = sentence(strings.TrimSuffix(l, "."))
	}
	return out
}
