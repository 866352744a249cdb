package words

import (
	"fmt"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/merge"
)

// MergeLines says what a merge would do, or did: how much comes over, and how many
// records both sides changed.
func MergeLines(p *merge.Plan) []string {
	if p.Empty() {
		return []string{"There is nothing to take over: this copy holds all that the other does."}
	}
	nights, fish := 0, 0
	for _, e := range p.Added {
		switch r, _ := journal.Unseal(e); r := r.(type) {
		case journal.Trip:
			nights++
		case journal.Contact:
			if r.Touch == journal.Landed {
				fish++
			}
		}
	}
	added := counted(len(p.Added), "record", "records") + " new"
	if nights+fish > 0 {
		added += fmt.Sprintf(", with %s and %s landed", counted(nights, "night", "nights"), counted(fish, "fish", "fish"))
	}
	out := []string{added}
	if n := len(p.Updated); n > 0 {
		out = append(out, counted(n, "record", "records")+" changed there only")
	}
	if n := len(p.Removed); n > 0 {
		out = append(out, counted(n, "record", "records")+" removed there only")
	}
	if n := len(p.Revived); n > 0 {
		out = append(out, counted(n, "record", "records")+" removed on one side and needed on the other: they stand again")
	}
	if n := len(p.Conflicts); n > 0 {
		out = append(out, counted(n, "record", "records")+" changed on both sides")
	}
	return out
}

// ConflictLine says of a record that both sides changed how they differ and how it is
// settled: fish, Sat 4 July 2026, about 23:20: fly, weight differ; both changes are kept.
func ConflictLine(c merge.Conflict, where string) string {
	differ := ""
	switch {
	case c.Ours.Gone:
		differ = "removed here, changed there"
	case c.Theirs.Gone:
		differ = "changed here, removed there"
	default:
		names := make([]string, len(c.Members))
		for i, m := range c.Members {
			names[i] = FieldName(m)
		}
		differ = "on both sides, differing in " + and(names)
	}
	return where + ": " + differ + "; " + settledBy(c)
}

func settledBy(c merge.Conflict) string {
	switch c.Choice {
	case merge.Both:
		return "the changes of both are kept"
	case merge.Ours:
		return "it stays as it is here"
	}
	return "it becomes as it is there"
}

// RecordName names a record by what people know it by: person Anna, night of Sat 4 July
// 2026, fish of the night of Sat 4 July 2026. The evening is that of an entry's night,
// if it is known.
func RecordName(e journal.Envelope, evening journal.Date) string {
	name := KindName(e.Kind)
	if t, err := journal.Unseal(e); err == nil && e.Kind == journal.KindTrip {
		return name + " of " + NightDate(t.(journal.Trip).Evening)
	}
	if detail := RecordDetail(e); detail != "" {
		name += " " + detail
	}
	if !evening.IsZero() {
		name += " of the night of " + NightDate(evening)
	}
	return name
}

// RecordDetail is what a record is called by itself: Anna, Home Beat, landed; empty if
// nothing tells.
func RecordDetail(e journal.Envelope) string {
	r, err := journal.Unseal(e)
	if err != nil {
		r = nil
	}
	detail := ""
	switch r := r.(type) {
	case journal.Person:
		detail = r.Name
	case journal.Box:
		detail = r.Name
	case journal.Source:
		detail = r.Name
	case journal.Beat:
		detail = r.On(journal.Date{Year: 9999}).Name
	case journal.Fly:
		detail = r.Label
		if detail == "" && len(r.Dresses) > 0 {
			detail = Fly(r.Dresses[len(r.Dresses)-1], Prefs{})
		}
	case journal.HouseRule:
		detail = "“" + r.Words + "”"
	case journal.Contact:
		detail = TouchName(r.Touch)
	}
	return strings.TrimSpace(detail)
}

// ConflictSide says when one side changed a record: Here, changed Sat 4 July 2026, 23:15.
func ConflictSide(here bool, t time.Time, zone *time.Location) string {
	where := "There"
	if here {
		where = "Here"
	}
	if t.IsZero() {
		return where
	}
	return where + ", changed " + DayAndClock(t, zone)
}

// AlikeLine names two records that may be one.
func AlikeLine(a merge.Alike) string {
	return fmt.Sprintf("There is a %s “%s” on both sides, each made by itself: two records are kept.", KindName(a.Kind), a.Name)
}
