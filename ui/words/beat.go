package words

import (
	"strings"

	"gloamline/geo"
)

// ReadBeatTitle and ReadBeatHint head the choice of a file with a beat.
func ReadBeatTitle() string { return "Read a beat in" }
func ReadBeatHint() string {
	return "A sketch of a beat in GeoJSON, with its banks and pools. It is copied into the journal; the file stays as it is."
}

// BeatRefused is why a file was not read in as a beat; reason is that of the reader.
func BeatRefused(reason string) Told {
	return Told{"No beat was read in: " + strings.TrimSuffix(reason, ".") + ".", "Nothing was changed. Put the file right, or choose another one: a sketch saved as GeoJSON."}
}

// BeatFaulty is why a sketch that can be read cannot be fished on.
func BeatFaulty(f geo.Fault) Told {
	_, do := SketchFault(f)
	return Told{"No beat was read in: " + f.Error() + ".", do + " Nothing was changed."}
}

// BeatDiffers refuses a changed sketch of a beat that stands already.
func BeatDiffers(b geo.Beat) Told {
	return Told{BeatName(b) + " stands in this journal already, and the file shows it otherwise.",
		"Nothing was changed: the sketch that the nights were written on stays."}
}

// BeatStands says that the file holds what the journal has.
func BeatStands(b geo.Beat) string {
	return BeatName(b) + " stands in this journal already, just as in the file. Nothing was changed."
}

// BeatRead tells what came in, and what was put right or is amiss, a sentence each.
func BeatRead(b geo.Beat, remarks []string) string {
	out := sentence(BeatName(b) + " read in with " + number(len(b.Pools), "pool", "pools"))
	for _, r := range remarks {
		out += " " + sentence(r)
	}
	return out
}

// BeatName names a beat with its river.
func BeatName(b geo.Beat) string {
	name := strings.TrimSpace(b.Name)
	if name == "" {
		name = "A beat without a name"
	}
	return join(", ", []string{strings.TrimSpace(b.River.Name), name})
}

// ZoneGuessed says that the clock of a beat was taken from where it lies.
func ZoneGuessed(zone string) string {
	return "the file names no time zone; from where the beat lies " + zone + " was taken"
}

// BeatUnnamed says that a beat came without a name.
func BeatUnnamed() string { return "the file gives the beat no name" }
