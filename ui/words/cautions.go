package words

import (
	"fmt"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
)

// Caution reminds of something that harms people or fish at night, in the trade's
// usual words (common practice where no source is named). None of them says what may be done:
// that is for local byelaws, the owner of the water and licensed practice.
type Caution struct{ Topic, Text, Source string }

// Cautions lists the reminders.
var Cautions = []Caution{
	{"Wading", "Wade at night only where you have waded by day, with a stick, a buoyancy aid and a companion who knows where you are. Know your way out before it is dark. This journal says how dark a pool is, never whether it can be waded.",
		"Advice of the lifesaving societies on open water; common practice"},
	{"Floods", "Rivers rise fast after rain far away, and faster below a dam. If the water rises, colours, carries leaves or changes its note, get out on the bank from which you can walk home.",
		"Common practice"},
	{"Lightning", "A rod is a conductor. With thunder about, lay it down, leave the water and the open bank, and wait.",
		"Advice of the weather services; common practice"},
	{"Overhead lines", "Carbon rods and wet lines conduct, and current jumps. Keep every rod and line 30 m from power lines, carry the rod low near them, and mark them on the sketch of the beat as a hazard.",
		"Advice of the electricity industry in Britain: 30 m"},
	{"Alone", "Somebody who is at home should know where you fish, when you will be back and what to do if you are not. Know where the telephone has no signal.",
		"Common practice"},
	{"Hooks", "Wear glasses and a hat when casting in the dark, keep the back-cast clear, and carry cutters. A hook deep in flesh, or anywhere near an eye, is for a doctor.",
		"Common practice"},
	{"Warm water", "From 18 °C fish that are to go back need more care: land them quickly, keep them in the water, fish early and late. At 20 °C and over anglers are asked to stop. " +
		"The figures come from Atlantic salmon; released sea trout were studied in cold water only (4 to 10 °C), so for them they are borrowed. Many rivers set figures of their own.",
		"Natural Resources Wales and the government of Northern Ireland, guidance on salmon and sea trout (18 and 20 °C); Van Leeuwen and others 2020, Atlantic salmon: deaths after release rise above 18 °C"},
	{"The fish", "Wet hands, keep the fish in the water, out of it under 10 seconds in all, unhook it quickly and let it swim off by itself. No flash into its eyes or those of a companion. Kelts go back wherever that is the rule.",
		"Guidance in Wales on air: under 10 s; common practice"},
	{"Rules", "Seasons, hours, days of rest, hooks, limits and tags are set by local byelaws and by the owner of the water, and they change. Ask them, and note with the beat who said what and when: Night, Byelaws and days …",
		"The authority and the owner of the water"},
}

// The water temperatures of the guidance above, °C.
const (
	CareCelsius = 18
	StopCelsius = 20
)

// CautionsTitle and CautionsHint head the list of cautions.
func CautionsTitle() string { return "Cautions" }
func CautionsHint() string {
	return "Reminders, no advice, from texts as they stood in 2026. They judge nothing that you do: byelaws, the owner of the water and licensed practice decide."
}

// CautionSource says whose text stands behind a caution.
func CautionSource(c Caution) string { return "Source: " + c.Source + "." }

// NightCautions are what the header of a night says quietly of care: rising or coloured water,
// warm water, as noted or as a gauge recorded it; nothing where nothing was.
func NightCautions(n *timeline.Night, p Prefs) []string {
	var out []string
	if trend, coloured, at, ok := n.Spate(); ok {
		what := "rising"
		switch {
		case trend == "" && coloured:
			what = "coloured"
		case coloured:
			what = "rising and coloured"
		}
		out = append(out, fmt.Sprintf("Water %s at %s: leave such water by the bank from which you can walk home.", what, Clock(at, n.Zone)))
	}
	if t, at, station, ok := n.Warmest(); ok && t.C >= CareCelsius {
		ask := "more care is asked with fish that go back from 18 °C"
		if t.C >= StopCelsius {
			ask = "anglers are asked to stop at 20 °C and over"
		}
		where := ""
		if station != "" { // the river there, not at a pool
			where = " at the gauge " + station
		}
		out = append(out, fmt.Sprintf("%s%s at %s: %s (Wales, Northern Ireland; measured on Atlantic salmon).", p.degrees(t), where, Clock(at, n.Zone), ask))
	}
	return out
}

// PageCaution stands at the foot of a page that is given away.
func PageCaution() string {
	return "A record of one night, no advice: light is computed and may be out by the factor shown. Wading, floods, lightning, power lines, hooks and being alone are dangers at night; byelaws and the owner of the water decide what may be done."
}

// StartCaution stands, small, where a journal begins.
func StartCaution() string {
	return "A journal, no guide: it tells what was, and how dark it was, never what may be done. Wading at night, rising water, lightning, power lines, hooks and being alone are dangers; Help, Cautions says more."
}

// NoticeLine says one of the user's own notes on a beat: Home Beat: hooks without barbs (the
// keeper; checked 3 March 2026, 8 months ago: ask again).
func NoticeLine(beat string, n journal.Notice, today journal.Date) string {
	checked := "checked " + plainDate(n.Checked)
	if n.Old(today) {
		checked += ", " + ago(n.Checked, today) + ": ask again"
	}
	due := ""
	if !n.Due.IsZero() {
		due = ", by " + plainDate(n.Due)
	}
	said := ""
	if n.Said != "" {
		said = n.Said + "; "
	}
	return beat + ": " + n.Words + due + " (" + said + checked + ")"
}

// NoticesHeader is what the header of a night says of a beat's notes: how many, and whether
// one is old.
func NoticesHeader(beat string, list []journal.Notice, today journal.Date) string {
	switch len(list) {
	case 0:
		return ""
	case 1:
		return "Noted of " + NoticeLine(beat, list[0], today) + "."
	}
	newest, old := list[0], 0
	for _, n := range list {
		if newest.Checked.Before(n.Checked) {
			newest = n
		}
		if n.Old(today) {
			old++
		}
	}
	s := "Noted of " + NoticeLine(beat, newest, today) + fmt.Sprintf(", and %d more", len(list)-1)
	if old > 0 && !newest.Old(today) {
		s += fmt.Sprintf(", %d of them to be checked again", old)
	}
	return s + "."
}

// ago prints how long a day lies back: 8 months ago, 2 years ago.
func ago(d, today journal.Date) string {
	from, _ := d.Night(time.UTC)
	to, _ := today.Night(time.UTC)
	days := int(to.Sub(from).Hours() / 24)
	if months := days / 30; months < 24 {
		return counted(months, "month", "months") + " ago"
	}
	return counted(days/365, "year", "years") + " ago"
}

func plainDate(d journal.Date) string { return fmt.Sprintf("%d %s %d", d.Day, d.Month, d.Year) }

// The words of the dialog of a beat's notes.

// NoticesTitle and NoticesHint head it.
func NoticesTitle(beat string) string { return "Byelaws and days, " + beat }
func NoticesHint() string {
	return "Your own notes on what is asked at this beat: what you were told, by whom, and when you last checked. The journal reminds and never judges; the authority and the owner of the water have the last word. Notes go stale with the season: older than half a year, they are shown to be asked again."
}

// NoticeWords and so on label its fields.
func NoticeWords() string   { return "What is asked" }
func NoticeSaid() string    { return "Who said so" }
func NoticeChecked() string { return "Checked on" }
func NoticeDue() string     { return "Due by" }

// NoticeNew and so on are words on its buttons and rows.
func NoticeNew() string    { return "a new note" }
func StoreNotice() string  { return "Store" }
func RemoveNotice() string { return "Remove" }
func CheckedToday() string { return "Checked today" }

// NoticeDate is why a date was not read.
func NoticeDate() Told {
	return Told{"That is no day.", "Write it as 2026-10-31 or 31 October 2026."}
}
func NoticeEmpty() Told {
	return Told{"A note needs its words.", "Write what is asked, or close without storing."}
}

// NoticeRow is a note in the list; today is a date as it is written.
func NoticeRow(n journal.Notice, today string) string {
	day, err := journal.ParseDate(today)
	if err != nil {
		day = n.Checked
	}
	row := n.Words
	if !n.Due.IsZero() {
		row += ", by " + plainDate(n.Due)
	}
	row += " · checked " + plainDate(n.Checked)
	if n.Old(day) {
		row += ", ask again"
	}
	return row
}
