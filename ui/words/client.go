package words

import (
	"fmt"
	"strconv"
	"strings"

	"gloamline/geo"
	"gloamline/timeline"
)

// AnotherRod stands for a person whose name is not shown, where there is one such.
func AnotherRod() string { return "another rod" }

// OtherRod stands for one of several, from 1.
func OtherRod(n int) string { return fmt.Sprintf("another rod (%d)", n) }

// ClientSentence is the one sentence over a night that is shown to somebody: Saturday 4
// July 2026, Home Beat: Anna and another rod, 3 landed, 1 lost. where may be empty.
func ClientSentence(date, where string, rods []string, t timeline.Totals) string {
	return sentence(commas(date, where) + ": " + commas(party(rods), Tally(t)))
}

// party joins those who fished; several whose names are hidden are counted: Anna and two
// other rods.
func party(rods []string) string {
	var known []string
	for _, r := range rods {
		if !strings.HasPrefix(r, AnotherRod()) {
			known = append(known, r)
		}
	}
	switch hidden := len(rods) - len(known); {
	case hidden < 2:
		return and(rods)
	case len(known) == 0:
		return spelled(hidden) + " rods"
	default:
		return and(append(known, spelled(hidden)+" other rods"))
	}
}

// spelled writes a small count in letters.
func spelled(n int) string {
	if small := []string{"no", "one", "two", "three", "four", "five", "six"}; n >= 0 && n < len(small) {
		return small[n]
	}
	return strconv.Itoa(n)
}

// ClientWater is beat and river: Home Beat, Larrick Water. Empty if neither has a name.
func ClientWater(b geo.Beat) string { return commas(b.Name, b.River.Name) }

// ClientPlace is a position in degrees: 54.9850, -4.4310.
func ClientPlace(p geo.Place) string {
	return fmt.Sprintf("%.4f, %.4f", float64(p.Lat), float64(p.Lon))
}

// ClientClock is a time as it is shown to somebody: 23:05, or about 23:05.
func ClientClock(clock string, about bool) string {
	if about {
		return "about " + clock
	}
	return clock
}

// ClientFish is a fish in a line: landed, sea trout, 2 lb, Alder Pool, trees grey, Anna.
func ClientFish(clock string, rest ...string) string {
	return join("  ", []string{clock, commas(rest...)})
}

// ClientPlayed says where a night that is played back stands: 23:05, trees grey; 2 landed.
func ClientPlayed(clock, rung string, t timeline.Totals) string {
	return commas(clock, rung) + "; " + Tally(t)
}

// TrueSize says what the drawing of the fly on a page measures.
func TrueSize(fly string) string { return fly + ", at true size when printed at A4" }

// The words of a page that plays a night.
func PlayWord() string    { return "Play" }
func PauseWord() string   { return "Pause" }
func TimeOfNight() string { return "Time of the night" }
func PlayedNight() string { return "The night, step by step" }
func FishPhoto(n int) string {
	return fmt.Sprintf("Photograph of fish %d", n)
}

// PoolsInOrder says that a sketch is none: places are not shown.
func PoolsInOrder() string { return "Pools in the order fished; not to scale." }

// BeatAsDrawn is over a true sketch.
func BeatAsDrawn() string { return "The beat; the water runs to the right." }

// LightOfNight is over the steps of the light.
func LightOfNight() string { return "The light" }

// FishAtNoPool is said of a fish whose pool is not known.
func FishAtNoPool() string { return "pool not known" }

// NotesHeld says that notes were left out since they name what is hidden.
func NotesHeld(n int) string {
	return number(n, "note was", "notes were") + " left out, naming somebody or something that is hidden."
}
