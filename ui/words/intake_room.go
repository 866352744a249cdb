package words

import (
	"fmt"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/gauge"
	"gloamline/journal/intake"
	"gloamline/journal/units"
)

// IntakeTitle heads the room in which files are read in; IntakeHint is its line at the foot
// of the window.
func IntakeTitle() string { return "Read in" }
func IntakeHint() string {
	return "Drop files here, or F chooses some · Space accepts, Return changes, Delete rejects · K, T, B settle · Ctrl+S stores"
}

// IntakeCounts counts proposals nobody decided on before, those accepted, rejected, and
// accepted without what they contradict being settled.
type IntakeCounts struct{ Rows, Accepted, Rejected, Waiting int }

// IntakeLine says what the files come to: Saturday 4 July 2026, Home Beat: 12 proposals, 10
// accepted, 1 to be settled.
func IntakeLine(night string, k IntakeCounts) string {
	count := func(n int, what string) string {
		if n == 0 {
			return ""
		}
		return fmt.Sprintf("%d %s", n, what)
	}
	return night + ": " + commas(number(k.Rows, "proposal", "proposals"), fmt.Sprintf("%d accepted", k.Accepted), count(k.Rejected, "rejected"), count(k.Waiting, "to be settled"))
}

// IntakeNoFiles says what files can be read in, IntakeNoNight that none of the journal's
// nights is theirs, IntakeNoProposals that they propose nothing.
func IntakeNoFiles() []string {
	return []string{
		"Nothing is read in yet.",
		"Let files fall on the window, or choose them: a watch's track (.gpx), photos (.jpg, .heic), a river gauge's readings (.csv, .json, .txt). Several at once.",
		"What they propose stands here, faint on the sketch and in the light, over what is written. Nothing is stored before you say so.",
	}
}
func IntakeNoNight() []string {
	return []string{"No night of the journal holds these files, or several do.", "Choose the night above, or write up a new one for them."}
}
func IntakeNoProposals() []string { return []string{"These files propose nothing for this night."} }

// IntakeFilesEmpty stands where files would be listed.
func IntakeFilesEmpty() string { return "No files yet." }

// IntakeListTitle and IntakeFilesTitle name the lists for those who do not see them.
func IntakeListTitle() string  { return "Proposals" }
func IntakeFilesTitle() string { return "Files" }

// IntakePastTitle heads what was decided before.
func IntakePastTitle() string { return "Decided before; comes again only if you say so" }

// IntakeReading says that a file is being read: Reading night.gpx, 2 of 5 …
func IntakeReading(name string, nth, of int) string {
	if of < 2 {
		return "Reading " + name + " …"
	}
	return fmt.Sprintf("Reading %s, %d of %d …", name, nth, of)
}

// GhostWritten, GhostAccepted and GhostProposed explain how sketch and strip draw what is not
// written.
func GhostWritten() string  { return "written" }
func GhostAccepted() string { return "accepted" }
func GhostProposed() string { return "proposed" }

// NoNumberYet stands for the number of a fish that is not written.
func NoNumberYet() string { return "?" }

// AcceptTip, AcceptLabel, EditLabel, RejectLabel and ClockTip name what can be done with a
// proposal and a file.
func AcceptTip(on bool) string {
	if on {
		return "Leave"
	}
	return "Accept"
}
func AcceptLabel() string { return "Accept" }
func EditLabel() string   { return "Change …" }
func RejectLabel() string { return "Never again" }
func ClockTip() string    { return "Put the clock of this device right" }
func TakeOffTip(name string) string {
	return "Take " + name + " off the list; nothing happens to the file"
}
func MoreNotes(n int) string   { return fmt.Sprintf("and %d more", n) }
func EditedNote() string       { return "changed by hand" }
func WillNotCome() string      { return "will not be proposed again" }
func ChooseFilesTitle() string { return "Read files in" }
func OriginalsLabel() string   { return "The photo files are" }
func OriginalsCopied() string  { return "copied beside the journal" }
func OriginalsLinked() string  { return "left where they are" }
func WhoseTrackLabel() string  { return "Whose track?" }
func ChooseNightLabel() string { return "choose the night" }
func NewNightForFiles() string { return "New night for these …" }
func WhoFishedButton() string  { return "Say who fished …" }
func ColumnsButton() string    { return "Choose columns …" }
func NobodyChosen() string     { return "not chosen" }

// ChooseFilesHint says how several files are marked.
func ChooseFilesHint() string {
	return "Tracks (.gpx), photos (.jpg, .heic) and river levels (.csv, .json, .txt, .tsv, .rdb). A click or Return marks a file, again takes the mark off. A folder's name gives all in it."
}

// MarkedFiles counts those marked: 3 files marked: night.gpx, fish.jpg, kirk.csv.
func MarkedFiles(names []string) string {
	if len(names) == 0 {
		return "No files marked."
	}
	if len(names) > 4 {
		return fmt.Sprintf("%d files marked: %s and %d more.", len(names), strings.Join(names[:3], ", "), len(names)-3)
	}
	return number(len(names), "file", "files") + " marked: " + and(names) + "."
}

// IntakeStored says what came of storing: 12 records stored as one change; undo takes it back.
func IntakeStored(accepted, rejected int) string {
	what := ""
	if accepted > 0 {
		what = fmt.Sprintf("%d accepted", accepted)
	}
	if rejected > 0 {
		what = commas(what, fmt.Sprintf("%d rejected", rejected))
	}
	return "Stored as one change: " + what + ". Undo takes all of it back."
}

// IntakeNothing is said where nothing was accepted or rejected.
func IntakeNothing() string { return "Nothing new is accepted or rejected, so nothing was stored." }

// StoreIntakeLabel is the button that stores: Store 12.
func StoreIntakeLabel(n int) string {
	if n == 0 {
		return "Store"
	}
	return fmt.Sprintf("Store %d", n)
}

// ProposalTitle heads the card on which a proposal is changed.
func ProposalTitle(times, what string) string {
	return "Proposal: " + strings.TrimSpace(times+" "+what)
}

// NotChangeable is why a track or a gauge's readings have no card.
func NotChangeable() Told {
	return Told{"This proposal has nothing to be changed by hand.", "Accept it as it is, or reject it."}
}

// PastNote says what was decided about a proposal.
func PastNote(v journal.Verdict) string {
	switch v {
	case journal.Accepted:
		return "stored already"
	case journal.Rejected:
		return "rejected before"
	case journal.Deleted:
		return "stored once and removed since"
	}
	return ""
}

// ConflictHeads head the two sides of a conflict.
func (v IntakeView) ConflictHeads(c intake.Conflict, p intake.Proposal) (written, proposed string) {
	name := v.Batch.Sources[p.Source].File.Name
	switch c.Kind {
	case intake.TwoTracks:
		q, _ := v.Batch.Find(c.Rival)
		return v.Batch.Sources[q.Source].File.Name, name
	case intake.OtherReadings:
		return "In the journal", name
	}
	return "Written", name
}

// ConflictSides say both sides of a conflict, without their heads.
func (v IntakeView) ConflictSides(c intake.Conflict, p intake.Proposal) (written, proposed string) {
	proposed = strings.TrimSpace(v.ProposalTimes(p) + " " + v.ProposalWhat(p))
	if c.Kind == intake.OtherReadings {
		return v.readings(c, true), v.readings(c, false)
	}
	written = v.ConflictLine(c)
	if _, rest, ok := strings.Cut(written, ": "); ok {
		written = rest
	}
	return written, proposed
}

// readings says the first values that differ, of the journal or of the file.
func (v IntakeView) readings(c intake.Conflict, old bool) string {
	s, _ := c.Written.(journal.Series)
	have := map[int64]journal.Reading{}
	for _, r := range s.Points {
		have[r.At.Unix()] = r
	}
	const most = 3
	var out []string
	for _, r := range c.Readings[:min(len(c.Readings), most)] {
		if old {
			r = have[r.At.Unix()]
		}
		value := "missing"
		if x, ok := r.Value.Get(); ok {
			value = figure(x) + " " + s.Unit
		}
		out = append(out, r.At.In(v.Zone).Format("2 Jan 15:04")+" "+value)
	}
	if n := len(c.Readings) - most; n > 0 {
		out = append(out, MoreNotes(n))
	}
	return strings.Join(out, ", ")
}

// ClockLabel is the button for a device's clock: Clock of “Larrick Eye”: +1 min 32 s …
func ClockLabel(device string, offset time.Duration, set bool) string {
	name := "Clock"
	if device != "" {
		name = "Clock of “" + device + "”"
	}
	if !set {
		return name + ": as it is …"
	}
	return name + ": " + Offset(offset) + " …"
}

// ClockTitle, ClockHelp, ClockShownLabel, ClockTrueLabel, ClockOffsetLabel and the rest word the
// window in which a clock is put right.
func ClockTitle(device string) string {
	if device == "" {
		return "Put the clock right"
	}
	return "Put the clock of “" + device + "” right"
}
func ClockHelp(files int) string {
	return "One moment known twice tells by how much it was off: what it showed, and what it truly was. A photo of a watch's face tells it, and so does a fish both written down and photographed. It holds for " + number(files, "file", "files") + " of this device, and is stored with them."
}
func ClockShownLabel() string  { return "It showed" }
func ClockTrueLabel() string   { return "Truly it was" }
func ClockFishLabel() string   { return "Or it shows" }
func ClockNoFish() string      { return "no fish that is written" }
func ClockOffsetLabel() string { return "Added to its clock" }
func ClockSetButton() string   { return "Put right" }
func ClockAsIsButton() string  { return "Leave it as it is" }
func ClockHintButton(d time.Duration) string {
	return "Take " + Offset(d)
}
func ClockTrueHint() string   { return "23:12:40, or with its date" }
func ClockOffsetHint() string { return "said by the two, or typed: +1 min 32 s" }
func ClockFault() Told {
	return Told{"That is no time.", "Write 23:12, 23:12:40 or 2026-07-04 23:12:40."}
}
func OffsetFault() Told {
	return Told{"What is to be added to the clock is not known.", "Say what it truly was, or write +1 min 32 s, -1h or 0."}
}

// ParseOffset reads what Offset prints, and durations such as -1m32s.
func ParseOffset(s string) (time.Duration, bool) {
	t := strings.NewReplacer("−", "-", " ", "", "days", "d", "day", "d", "min", "m").Replace(strings.ToLower(strings.TrimSpace(s)))
	if t == "0" || t == "" {
		return 0, t == "0"
	}
	sign := time.Duration(1)
	if rest, ok := strings.CutPrefix(t, "-"); ok {
		sign, t = -1, rest
	}
	t = strings.TrimPrefix(t, "+")
	days := time.Duration(0)
	if d, rest, ok := strings.Cut(t, "d"); ok {
		var n int
		if _, err := fmt.Sscanf(d, "%d", &n); err != nil || n < 0 || n > 100000 {
			return 0, false
		}
		days, t = time.Duration(n)*24*time.Hour, rest
		if t == "" {
			return sign * days, true
		}
	}
	d, err := time.ParseDuration(t)
	if err != nil || d < 0 {
		return 0, false
	}
	return sign * (days + d), true
}

// ZoneChoice names a zone among those offered; ZoneOfNight and ZoneAssumed what is taken
// without an answer.
func ZoneChoice(name string) string {
	switch {
	case strings.HasPrefix(name, "Etc/GMT-"):
		return "UTC+" + strings.TrimPrefix(name, "Etc/GMT-")
	case strings.HasPrefix(name, "Etc/GMT+"):
		return "UTC−" + strings.TrimPrefix(name, "Etc/GMT+")
	}
	return name
}
func ZoneOfNight(name string) string { return "that of the night, " + name }
func ZoneAssumed() string            { return "not said; read as UTC" }

// ColumnsTitle and its kin word the window in which columns of a table are chosen.
func ColumnsTitle(name string) string { return "Columns of " + name }
func ColumnsHelp() string {
	return "The table does not say which column is which, or not surely. Choose what is the time and what the level."
}
func ColumnWhenLabel() string  { return "Date, or date and time" }
func ColumnClockLabel() string { return "Time of day, if apart" }
func ColumnLevelLabel() string { return "Level" }
func ColumnUnitLabel() string  { return "Unit of the level" }
func ColumnMonthLabel() string { return "The month stands before the day, as in 7/14/2026" }
func ColumnNone() string       { return "none" }
func ColumnRead() string       { return "Read so" }

// ColumnsWanted is why a table is not read.
func ColumnsWanted() Told {
	return Told{"A table needs a time and a level, in two columns.", "Choose a column for each."}
}

// LagText prints a lag as it is typed; LagFault is said of what is none.
func LagText(d time.Duration) string { return strings.TrimSuffix(d.String(), "0s") }
func LagFault() Told {
	return Told{"That is no lag.", "Write hours and minutes as 1h30m, up to seven days; or leave it empty."}
}

// ColumnName names a column: 2 level: 0.61, 0.60, 0.59.
func ColumnName(n int, c gauge.Column) string {
	s := fmt.Sprintf("%d %s", n, c.Name)
	if c.Name == "" {
		s = fmt.Sprintf("column %d", n)
	}
	if len(c.Samples) > 0 {
		s += ": " + strings.Join(c.Samples[:min(3, len(c.Samples))], ", ")
	}
	return s
}

// UnitChoices are the units a level may stand in.
var UnitChoices = []units.LengthUnit{units.Metre, units.Centimetre, units.Millimetre, units.Foot, units.Inch}

// UnitName is a unit as it is chosen; the empty one is that of the head.
func UnitName(u units.LengthUnit) string {
	if u == "" {
		return "as in the head, else metres"
	}
	return string(u)
}

// CourseTitle heads the course of a gauge.
func CourseTitle(station string) string {
	return strings.TrimSpace("River at the gauge "+station) + ", not at the pool"
}

// CourseLevel prints a level beside the curve.
func CourseLevel(v float64, unit string) string { return fmt.Sprintf("%.2f %s", v, unit) }

// CoursePeak names the peak: peak 4 July 13:00, 1.10 m.
func CoursePeak(at time.Time, v float64, unit string, zone *time.Location) string {
	return "peak " + at.In(zone).Format("2 Jan 15:04") + ", " + CourseLevel(v, unit)
}

// CourseTick labels the axis of a course of days.
func CourseTick(t time.Time, zone *time.Location) string {
	if l := t.In(zone); l.Hour() == 0 && l.Minute() == 0 {
		return l.Format("2 Jan")
	}
	return Clock(t, zone)
}

// GaugeSettingsTitle and its kin word the window with what is known of a gauge.
func GaugeSettingsTitle(station string) string { return strings.TrimSpace("Gauge " + station) }
func GaugeSettingsHelp() string {
	return "Only what you know yourself: without a lag the river is told at the gauge's own time. Nothing here says how the river stands at a pool."
}
func GaugeLagLabel() string       { return "Lag to the beat" }
func GaugeLagHint() string        { return "1h30m; empty if not known" }
func GaugeBaseLabel() string      { return "Level before the rise" }
func GaugeBaseHint() string       { return "0.45 m; empty to take the lowest before" }
func GaugeRegulatedLabel() string { return "A dam or melting snow makes it rise and fall each day" }
func GaugeSetButton() string      { return "Use this" }

// NightChoice names a night among those to choose from.
func NightChoice(t journal.Trip, beat string) string { return commas(Date(t.Evening), beat) }

// AfterName is what a line says of a file behind its name.
func AfterName(line, name string) string {
	if line == name {
		return ""
	}
	return strings.TrimPrefix(line, name+": ")
}

// Sure is how sure a run is, of 1; Doubt why a run is doubtful, as a sentence.
func Sure(v float64) string          { return fmt.Sprintf("%.2f", v) }
func Doubt(p intake.Proposal) string { return doubt(p) }

// WhichNight, ZoneAnswered and GaugeZoneAnswered are said of what was answered.
func WhichNight() string                   { return "Which night are the files set against?" }
func ZoneAnswered() string                 { return "Zone of cameras that name none" }
func GaugeZoneAnswered(name string) string { return "Zone of the times in " + name }
