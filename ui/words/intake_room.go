package words

import (
	"fmt"
	"strings"

	"gloamline/journal"
	"gloamline/journal/intake"
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
// nights is theirs, IntakeAsked that something asked for comes first, IntakeNoProposals that
// they propose nothing.
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
func IntakeAsked() []string {
	return []string{"Answer what is asked above: then what the files propose stands here."}
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
