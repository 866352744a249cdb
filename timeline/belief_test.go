package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
	"gloamline/journal/units"
)

func inch(v float64) journal.Field[units.Length] { return journal.Of(units.LengthOf(v, units.Inch)) }

// rules are the two that many fish by (common practice), and one in lux.
var rules = []journal.HouseRule{
	{ID: id(601), Words: "a: under 1 inch until the trees are grey", AtGrey: "before", Max: inch(1)},
	{ID: id(602), Words: "b: 1 inch and over once the trees are grey", AtGrey: "after", Min: inch(1)},
	{ID: id(603), Words: "c: slim on the point in the dark", Light: journal.Of(units.Lux(0.05)), Position: journal.Of(0), Silhouettes: []journal.Silhouette{journal.Full}},
}

// Ensure that fishing against a rule is found for the fly, the rod and the time that it
// was: Anna's inch and a half in daylight, Colm's dropper of half an inch once the trees
// were grey, at 23:21. Her small flies were out of the water by then.
func TestAgainst(t *testing.T) {
	set := setting(larrick())
	set.Rules = rules
	s := twoRods(t)
	s.run(anna, "Mill Neck", "21:50", "22:20")
	s.rig(anna, "21:50", 701)
	n := build(t, s.log(), set)
	grey := n.Grey.At
	require.True(t, grey.After(s.at("23:20")) && grey.Before(s.at("23:22")), "%v", grey)
	type row struct {
		rule     journal.ID
		rod, rig int
		fly      journal.ID
		off      string
		when     string
	}
	var got []row
	for _, a := range n.Against {
		require.Len(t, a.Off, 1)
		when := ""
		for _, w := range a.When {
			when += w.From.In(s.loc).Format(" 15:04") + w.To.In(s.loc).Format("-15:04")
		}
		got = append(got, row{a.Rule.ID, a.Rod, a.Rig, a.Fly.Fly, a.Off[0], when})
	}
	require.Equal(t, []row{
		{id(601), 0, 0, id(701), "length", " 21:50-22:20"},
		{id(603), 0, 2, id(701), "silhouette", " 23:48-00:15 00:30-01:05"},
		{id(603), 1, 0, id(701), "silhouette", " 23:48-00:55 01:10-01:50"},
		{id(602), 1, 0, id(702), "length", " 23:25-00:55 01:10-01:50"},
	}, got)
	require.InEpsilon(t, 0.05, float64(n.Open.At(s.at("23:48")).Lux), 0.06, "to the minute")
	set.Rules = nil
	require.Empty(t, build(t, s.log(), set).Against)
}

// Ensure that what is not known of a fly is not held against it, and that the edges of a
// rule are as it says them: an inch is not under an inch.
func TestDiffers(t *testing.T) {
	on := func(d journal.Dress) FlyOn { return FlyOn{Position: 0, Known: true, Dress: d} }
	under, over := rules[0], rules[1]
	require.Empty(t, Differs(under, on(journal.Dress{})))
	require.Empty(t, Differs(under, FlyOn{Dress: journal.Dress{Length: inch(3)}}), "a fly nobody knows")
	require.Equal(t, []string{"length"}, Differs(under, on(journal.Dress{Length: inch(1)})))
	require.Empty(t, Differs(over, on(journal.Dress{Length: inch(1)})))
	require.Empty(t, Differs(over, on(journal.Dress{Length: journal.Of(units.LengthOf(25.4, units.Millimetre))})))
	require.Equal(t, []string{"length"}, Differs(over, on(journal.Dress{Length: inch(7. / 8)})))
	r := journal.HouseRule{Silhouettes: []journal.Silhouette{journal.Slim}, Tones: []journal.Tone{journal.DarkTone}}
	require.Equal(t, []string{"silhouette", "tone"}, Differs(r, on(journal.Dress{Silhouette: journal.Of(journal.Full), Tone: journal.Of(journal.LightTone)})))
}

// Ensure that the lights of rules that lie end to end share nothing and leave nothing out.
func TestRuleLightsShareTheNight(t *testing.T) {
	n := build(t, twoRods(t).log(), setting(larrick()))
	whole := n.End.Sub(n.Start)
	rapid.Check(t, func(t *rapid.T) {
		edge := journal.Of(units.Lux(rapid.Float64Range(0.0005, 1000).Draw(t, "lux")))
		a := n.RuleLight(journal.HouseRule{Dark: edge})
		b := n.RuleLight(journal.HouseRule{Light: edge})
		require.Zero(t, a.Intersect(b).Length())
		require.InDelta(t, whole.Seconds(), (a.Length() + b.Length()).Seconds(), 61, "but for the last step of the curve")
	})
	require.Equal(t, whole, n.RuleLight(journal.HouseRule{}).Length())
	day, dark := n.RuleLight(rules[0]), n.RuleLight(rules[1])
	require.Equal(t, whole, (day.Length() + dark.Length()).Round(time.Nanosecond))
	require.True(t, dark.Contains(n.Grey.At.Add(time.Minute)))
}
