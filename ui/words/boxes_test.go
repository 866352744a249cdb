package words

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/timeline/tally"
)

func inches(v float64) journal.Field[units.Length] { return journal.Of(units.LengthOf(v, units.Inch)) }

func TestRuleWords(t *testing.T) {
	for _, c := range []struct {
		r          journal.HouseRule
		when, asks string
	}{
		{journal.HouseRule{AtGrey: "before", Max: inches(1)}, "until the trees are grey", "under 1 in"},
		{journal.HouseRule{AtGrey: "after", Min: inches(1), Max: inches(2.5)}, "once the trees are grey", "1 in to under 2½ in"},
		{journal.HouseRule{Light: journal.Of(units.Lux(0.05)), Position: journal.Of(0), Silhouettes: []journal.Silhouette{journal.Slim, journal.MediumBulk}}, "below 0.05 lx", "on the point, slim or medium bulk"},
		{journal.HouseRule{Light: journal.Of(units.Lux(3)), Dark: journal.Of(units.Lux(0.3)), Tones: []journal.Tone{journal.LightTone}}, "from 3 lx down to 0.3 lx", "pale"},
		{journal.HouseRule{Dark: journal.Of(units.Lux(0.3)), Min: inches(3)}, "down to 0.3 lx", "3 in and over"},
		{journal.HouseRule{}, "in any light", ""},
	} {
		assert.Equal(t, c.when, RuleWhen(c.r))
		assert.Equal(t, c.asks, RuleAsks(c.r, Prefs{}))
	}
	assert.Equal(t, "25 mm and over", RuleAsks(journal.HouseRule{Min: inches(1)}, Prefs{Fly: units.Millimetre}))
}

func TestOffRule(t *testing.T) {
	from := time.Date(2026, 7, 4, 22, 0, 0, 0, time.UTC)
	a := timeline.Against{
		Rule: journal.HouseRule{Words: "1 inch and over once the trees are grey"}, Off: []string{"length", "tone"},
		Fly: timeline.FlyOn{Position: 1}, When: tally.Union(tally.Stretch{From: from, To: from.Add(65 * time.Minute)}),
	}
	assert.Equal(t, "off a house rule for 1 h 5 min: 1 inch and over once the trees are grey (length, tone of the dropper)", OffRule(a))
	a.Fly.Position = timeline.NoPosition
	assert.Contains(t, OffRule(a), "of the fly)")
	assert.Equal(t, "40 min", Minutes(40*time.Minute))
	assert.Equal(t, "2 h", Minutes(2*time.Hour))
}

func TestFlyWords(t *testing.T) {
	assert.Equal(t, "4.5 h, 2 landed, 0.5 came off, 3 touched or showed", FlyHours(timeline.FlyLight{Water: 270 * time.Minute, Landed: 2, Lost: 0.5, Touches: 1, Shows: 2}))
	assert.Equal(t, "1.0 h, no fish", FlyHours(timeline.FlyLight{Water: time.Hour}))
	assert.Empty(t, FlyHours(timeline.FlyLight{}))
	d := journal.Dress{Length: inches(1.5), HotSpot: journal.Of("Orange"), Built: journal.Of("tube"), Hook: journal.Of("treble"), Barbless: journal.Of(true)}
	assert.Equal(t, "orange spot, tube, treble, barbless", FlyArms(d))
	assert.Equal(t, "old faithful. 1½ in, orange spot; tube, treble, barbless. Once they were grey 1.0 h, no fish",
		FlyCellTip(journal.Fly{ID: geo.NewID(), Label: "old faithful"}, d, timeline.FlyRecord{Grey: timeline.FlyLight{Water: time.Hour}}, Prefs{}))
	assert.Contains(t, BoxesLine(1, 2, 0, 3, 9), "1 fly, 2 boxes, 0 house rules. Hours and fish of 3 nights so far")
	assert.Contains(t, BoxesLine(1, 2, 1, 9, 9), "on 9 nights, before and after")
}
