package scene_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// Ensure that a year's returns can be read in every look and at every width, on no other
// text and whole, and that what is missing and the user's own days stand there.
func TestReturnsCanBeRead(t *testing.T) {
	month := timeline.MonthReturn{Days: 16, RodDays: 28, Nights: 10, Lines: []timeline.ReturnLine{{Species: journal.SeaTrout,
		Kept:     timeline.Landings{Number: 3, Weighed: 1220, WeighedN: 1, Estimated: 1620, EstimatedN: 2},
		Returned: timeline.Landings{Number: 24, Weighed: 3120, WeighedN: 4, Estimated: 13490, EstimatedN: 12}}, {Species: journal.SeaTrout, Class: "herling", Unknown: timeline.Landings{Number: 2}}}}
	r := timeline.Returns{Year: 2026, Rivers: []timeline.RiverReturn{{River: geo.River{Name: "Larrick Water"}, Beats: []string{"Home Beat", "Kirk Beat"}}},
		Doubtful: []timeline.DoubtfulFish{{River: "Larrick Water", Date: journal.Date{Year: 2026, Month: 7, Day: 4}, Doubts: timeline.Doubts[:1]}}}
	r.Rivers[0].Months[6] = month
	for _, look := range scene.Looks {
		for _, width := range []float64{560, 860} {
			l := scene.Returns(r, []string{"Home Beat: return to the owner"}, width, look, words.Prefs{}).List
			for _, list := range [][]inspect.Fault{inspect.Weak(l, 4.5, 12), inspect.Overlaps(l), inspect.Outside(l)} {
				for _, f := range list {
					assert.Fail(t, "a text is hard to read", "%s at %v: %s", look.Name, width, f)
				}
			}
		}
	}
}
