package words

import (
	"fmt"
	"strings"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// The words of the room in which beats are drawn.

func BeatsTitle() string  { return "Beats" }
func NoBeats() string     { return "none yet" }
func ThingsTitle() string { return "On this beat" }
func NewBeatButton() string {
	return "New beat"
}

// BeatUnder says below a beat's name how far it is.
func BeatUnder(pools int, draft, isNew bool) string {
	state := ""
	switch {
	case isNew:
		state = "not stored yet"
	case draft:
		state = "changed, not stored"
	}
	return commas(number(pools, "pool", "pools"), state)
}

// PoolUnder says below a pool's name what is known of it, and what is not.
func PoolUnder(p geo.Pool) string {
	sky := "no skyline"
	if len(p.Skyline) > 0 {
		sky = "skyline"
	}
	return commas(canopies[p.Canopy], sky)
}

// FeatureLine names a feature in the list.
func FeatureLine(f geo.Feature) string {
	if f.Role == geo.RoleBank {
		if b := BankName(f.Bank); b != "" {
			return capital(b)
		}
		return "a bank line"
	}
	return capital(SpotTip(f))
}

// DrawingState says beside the beat's name whether it is stored.
func DrawingState(changed, stands bool) string {
	switch {
	case !changed:
		return "stored as it is shown"
	case stands:
		return "changed; kept, and not stored yet"
	}
	return "kept, and not stored yet"
}

// BeatRoomTitle stands above the plan while no beat lies on the table.
func BeatRoomTitle() string { return "Draw a beat" }

// BeatRoomHint is the footer's line while one draws.
func BeatRoomHint() string {
	return "Wheel zooms, dragging the ground moves the plan, Tab and arrows move corners, F1 shows all keys"
}

// FindingsTitle heads what is still wanting.
func FindingsTitle(n int) string {
	if n == 0 {
		return "Nothing is wanting."
	}
	return "Still wanting"
}

// Dialogs.
func WalkTitle() string { return "Read a walk in" }
func WalkHint() string {
	return "A track in GPX, recorded while walking along the water. Both banks are drawn from it and the width of the river."
}
func WalkWidthLabel() string { return "How wide is the river?" }
func WalkAlongLabel() string { return "What was walked?" }
func WalkWayLabel() string   { return "Which way?" }
func WalkDrawButton() string { return "Draw the banks" }
func WalkAlong(b geo.Bank) string {
	switch b {
	case geo.TrueLeft:
		return "the true left bank"
	case geo.TrueRight:
		return "the true right bank"
	}
	return "the middle of the river"
}
func WalkWay(up bool) string {
	if up {
		return "upstream"
	}
	return "downstream"
}

// WalkFound names the walk that was read: 1240 m long.
func WalkFound(name string, l units.Metres) string {
	if name = strings.TrimSpace(name); name == "" {
		name = "The walk"
	}
	return fmt.Sprintf("%s is %.0f m long.", name, float64(l))
}

func SketchTitleRead() string { return "Read a sketch in" }
func SketchHintRead() string {
	return "A sketch of a beat in GeoJSON. It is laid on the table; nothing is stored before you say so."
}
func TraceTitle() string { return "Picture to trace from" }
func TraceHintFile() string {
	return "A photograph or a scanned map, as JPEG, PNG or GIF. It lies faintly under the plan and is not stored with the beat."
}
func SkyListTitle() string { return "Read a skyline in" }
func SkyListHint(pool string) string {
	return "A list of bearings and altitudes for " + PoolName(pool) + ", one reading a line, taken with compass and clinometer."
}
func DeclinationLabel() string { return "Magnetic declination, degrees, east positive" }
func DeclinationFault() string {
	return "The declination is a number of degrees, such as -1.5 for one and a half west."
}

// StoreQuestionTitle and the lines below ask what a change of a standing beat means.
func StoreQuestionTitle(beat string) string { return "Store the change of " + beat }
func StoreQuestionText(since journal.Date, nights int) string {
	if nights == 0 {
		return "No night was written on the sketch that stands. Was it drawn wrong, or has the river changed?"
	}
	from := ""
	if !since.IsZero() {
		from = " since " + NightDate(since)
	}
	return number(nights, "night was", "nights were") + " written on the sketch that stands" + from + ". Was it drawn wrong, or has the river changed?"
}
func CorrectButton() string { return "Correct it" }
func CorrectHint() string   { return "All those nights show it as drawn now." }
func ChangeButton() string  { return "Changed from this evening on" }
func ChangeHint() string    { return "Nights before that evening keep what was true then." }
func ChangeFromLabel() string {
	return "Evening"
}

// LostPools warns that a correction takes the ground from under what nights hold.
func LostPools(pools []string) string {
	return "Nights were fished in " + and(pools) + ", which this drawing no longer has. Corrected, what they hold would lose its place on the sketch; changed from an evening on, it keeps it."
}

// ChangedElsewhere warns that the beat was changed meanwhile.
func ChangedElsewhere() string {
	return "The beat was changed since this drawing was begun; storing puts this drawing in its place. Undo takes that back."
}

func DropTitle(beat string) string { return "Drop what is not stored of " + beat + "?" }
func DropHint(stands bool) string {
	if stands {
		return "The beat goes back to how the journal has it. This cannot be taken back."
	}
	return "The journal does not have this beat: the whole drawing goes. This cannot be taken back."
}
func DropButton() string { return "Drop it" }

// DraftsUnread says that the drawings laid by could not be taken up.
func DraftsUnread(path string, err error) string {
	return "Drawings that were not stored lie in " + path + " and cannot be read: " + err.Error() + ". They are left there."
}

// DraftUnsaved says that a drawing could not be laid by.
func DraftUnsaved(err error) string {
	return "The drawing cannot be kept on the disk (" + err.Error() + "). Store the beat, or make room, before the window is closed."
}

// TraceGone says that the picture under a drawing is not where it was.
func TraceGone(path string) string {
	return "The picture to trace from, " + path + ", is not there any more."
}

// PoolNumber is a pool's number in fishing order, a dash where it has none.
func PoolNumber(p geo.Pool) string {
	if p.Order > 0 {
		return fmt.Sprint(p.Order)
	}
	return "–"
}
