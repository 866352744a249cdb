package words_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/words"
)

func aReturn() timeline.RiverReturn {
	r := timeline.RiverReturn{River: geo.River{Name: "Larrick Water"}, Beats: []string{"Home Beat", "Kirk Beat"}}
	r.Months[6] = timeline.MonthReturn{Days: 1, RodDays: 2, Nights: 1, Hours: 150 * time.Minute, Lines: []timeline.ReturnLine{
		{Species: journal.SeaTrout, Returned: timeline.Landings{Number: 4, Weighed: 2400, WeighedN: 2, Estimated: 1200, EstimatedN: 1}},
		{Species: journal.SeaTrout, Class: "herling", Kept: timeline.Landings{Number: 1}},
	}}
	r.Months[7] = timeline.MonthReturn{Days: 3, RodDays: 3, Nights: 3}
	return r
}

// Ensure that a return says number, weight and fate, keeps what was judged apart from
// what was weighed, and names nil months.
func TestReturnLines(t *testing.T) {
	r := aReturn()
	assert.Equal(t, "Catch return 2026, Larrick Water (Home Beat, Kirk Beat)", words.ReturnTitle(2026, r))
	lines := r.Months[6].Lines
	assert.Equal(t, []string{"July", "sea trout", "4", "0", "–", "4", "2.4 kg; ~1.2 kg judged; 1 without", "0", "fly"},
		words.ReturnCells(time.July, lines[0], words.Prefs{}))
	assert.Equal(t, []string{"July", "herling", "1", "1", "1 without", "0", "–", "0", "fly"}, words.ReturnCells(time.July, lines[1], words.Prefs{}))
	assert.Contains(t, words.ReturnCells(time.July, lines[0], words.Prefs{Weight: units.Pound})[6], "lb")
	assert.Len(t, words.ReturnHeads(), len(words.ReturnCells(time.July, lines[0], words.Prefs{})))
	assert.Equal(t, "July: 1 day, 2 rod-days, 1 night begun, 2.5 h with a fly in the water", words.ReturnDays("July", r.Months[6]))
	blanks := words.ReturnBlanks(r)
	require.Len(t, blanks, 2)
	assert.Equal(t, "Fished, no fish landed: August.", blanks[0])
	assert.True(t, strings.HasPrefix(blanks[1], "Not fished: January, "), blanks[1])
}

// Ensure that a fish that lacks something is found again by its date, and that an estimate
// calls itself one.
func TestDoubtfulLine(t *testing.T) {
	for _, d := range timeline.Doubts {
		line := words.DoubtfulLine(timeline.DoubtfulFish{River: "Larrick Water", Date: journal.Date{Year: 2026, Month: 7, Day: 11},
			Other: journal.Date{Year: 2026, Month: 7, Day: 12}, Doubts: []timeline.Doubt{d},
			Fish:     journal.Contact{Length: journal.Of(units.LengthOf(50, units.Centimetre)), Species: journal.Of(journal.SeaTrout)},
			Estimate: timeline.WeightBand{Lo: 1000, Mid: 1250, Hi: 1500}, HasEstimate: true}, words.Prefs{})
		assert.Regexp(t, `^Sat 11 July 2026, Larrick Water, sea trout 50 cm: [a-z]`, line)
		if d == timeline.NoWeight {
			assert.Contains(t, line, "about 1 kg to 1.5 kg, an estimate")
		}
		if d == timeline.TwoDates {
			assert.Contains(t, line, "Sun 12 July 2026?")
		}
	}
}

// Ensure that each reminder says whose text it is, and that the authority has the last word.
func TestReturnReminders(t *testing.T) {
	for _, r := range words.ReturnReminders() {
		assert.NotEmpty(t, r.Source, r.Where)
		assert.True(t, strings.HasSuffix(r.Line(), ")."), r.Line())
	}
	assert.Contains(t, words.ReturnCaution(), "authority")
	assert.Contains(t, words.NoReturn(2026), "blank season")
}
