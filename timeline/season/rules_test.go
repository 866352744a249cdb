package season

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/timeline/tally"
)

func inches(v float64) journal.Field[units.Length] { return journal.Of(units.LengthOf(v, units.Inch)) }

// Ensure that a fly keeps to a rule or not, or that nothing is said of it.
func TestKeeps(t *testing.T) {
	rule := journal.HouseRule{Min: inches(1), Silhouettes: []journal.Silhouette{journal.Slim}}
	for _, c := range []struct {
		f            FlyDigest
		keeps, known bool
	}{
		{FlyDigest{LengthMM: 25.4, Silhouette: journal.Slim}, true, true},
		{FlyDigest{LengthMM: 25.0, Silhouette: journal.Slim}, false, true},
		{FlyDigest{LengthMM: 38.1, Silhouette: journal.Full}, false, true},
		{FlyDigest{LengthMM: math.NaN(), Silhouette: journal.Slim}, false, false},
		{FlyDigest{LengthMM: 38.1}, false, false},
	} {
		keeps, known := Keeps(rule, c.f)
		assert.Equal(t, c.known, known, "%+v", c.f)
		assert.Equal(t, c.keeps, keeps, "%+v", c.f)
	}
	_, known := Keeps(journal.HouseRule{Max: inches(1), Position: journal.Of(1)}, FlyDigest{LengthMM: 12})
	assert.False(t, known, "a rule for the dropper says nothing of the point")
}

// Ensure that hours outside a rule are those which the nights themselves call against it,
// up to what uncertain changes of fly move.
func TestRuleHoursAgreeWithTheNights(t *testing.T) {
	j := demoJournal(t)
	n, err := NewBook(j).Read(nil)
	require.NoError(t, err)
	s := Fold(n, View{})
	require.Len(t, s.Rules, 4)
	outside := map[journal.ID]float64{}
	for _, d := range n.Digests {
		night, err := timeline.Load(j, d.Trip)
		require.NoError(t, err)
		for _, rule := range s.Rules {
			for i := range night.Rods {
				var up tally.Set // two flies against it at once are an hour once
				for _, a := range night.Against {
					if a.Rule.ID == rule.ID && a.Rod == i {
						up = up.Union(a.When)
					}
				}
				outside[rule.ID] += up.Length().Hours()
			}
		}
	}
	for _, r := range s.Rules {
		assert.InDelta(t, outside[r.ID], r.Outside, 0.05*outside[r.ID]+0.3, r.Words)
		assert.Positive(t, r.Outside)
	}
}

// Ensure that a rule nobody went against is never tested, whatever came inside it.
func TestNeverTested(t *testing.T) {
	nights := made(repeat(10, [Bands]float64{3: 2}), repeat(10, [Bands]float64{3: 3}))
	for _, d := range nights {
		r := &d.Rods[0]
		r.Rigs = []RigDigest{{Flies: []FlyDigest{{LengthMM: 40}}}, {Flies: []FlyDigest{{LengthMM: 12}}}}
		c := r.Cells[0]
		r.Cells[0].Rig, r.Cells[0].Hours = 0, 1.85
		c.Rig, c.Hours = 1, 0.15
		r.Cells = append(r.Cells, c)
	}
	rule := journal.HouseRule{ID: journal.ID{9}, Words: "1 inch and over once the trees are grey", AtGrey: "after", Min: inches(1)}
	s := Fold(Nights{Digests: nights, Rules: []journal.HouseRule{rule}}, View{}).Settle()
	require.Len(t, s.Rules, 1)
	assert.InDelta(t, 18.5, s.Rules[0].Inside, 1e-9)
	assert.InDelta(t, 1.5, s.Rules[0].Outside, 1e-9)
	assert.InDelta(t, 0.075, s.Rules[0].OutsideShare(), 1e-9)
	assert.Equal(t, NeverTested, s.Rules[0].Table.Verdict)
	assert.Nil(t, s.Rules[0].Table.Test)
	assert.Equal(t, NeverTested, s.Card(6).Verdict)

	day := rule
	day.AtGrey = "before"
	s = Fold(Nights{Digests: nights, Rules: []journal.HouseRule{day}}, View{})
	assert.Zero(t, s.Rules[0].Inside+s.Rules[0].Outside, "all of it was fished by night")
}
