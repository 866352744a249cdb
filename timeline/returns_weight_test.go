package timeline

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
	"gloamline/journal/units"
)

func seaTrout(cm, grams float64) journal.Contact {
	return journal.Contact{Touch: journal.Landed, Species: journal.Of(journal.SeaTrout),
		Length: journal.Of(units.LengthOf(cm, units.Centimetre)), Weight: journal.Of(units.WeightOf(grams, units.Gram))}
}

// Ensure that 40 cm weigh 512, 640 and 768 g at K 0.8, 1.0 and 1.2 (arithmetic), and
// 77 cm 5.5 kg at K 1.205 (an example of Danish guidance for anglers).
func TestWeightFromLength(t *testing.T) {
	b := usualCondition.Weight(units.LengthOf(40, units.Centimetre))
	assert.InDelta(t, 512, float64(b.Lo), 1e-9)
	assert.InDelta(t, 640, float64(b.Mid), 1e-9)
	assert.InDelta(t, 768, float64(b.Hi), 1e-9)
	c := Condition{Mid: 1.205}
	assert.InDelta(t, 5500, float64(c.Weight(units.LengthOf(77, units.Centimetre)).Mid), 5)
}

// Ensure that the standard weight of river brown trout, log10 W = -4.867 + 2.960 log10 L
// with W in g and L in mm (Milewski and Brown 1994, as the documentation of FSA gives it; 684 g
// at 400 mm), the 75 % point of many waters, lies within the band and above its middle.
func TestStandardWeightIsInTheBand(t *testing.T) {
	standard := func(mm float64) float64 { return math.Pow(10, -4.867+2.960*math.Log10(mm)) }
	require.InDelta(t, 684, standard(400), 0.5)
	for mm := 250.0; mm <= 800; mm += 25 {
		b := usualCondition.Weight(units.LengthOf(mm, units.Millimetre))
		assert.Greater(t, standard(mm), float64(b.Mid), "%v mm", mm)
		assert.Less(t, standard(mm), float64(b.Hi), "%v mm", mm)
	}
}

// Ensure that ten weighed sea trout make a condition of one's own, that nine do not, and
// that estimates, kelts and other fish do not count.
func TestOwnCondition(t *testing.T) {
	var fish []journal.Contact
	for i := range 9 {
		fish = append(fish, seaTrout(50, 1250*(0.9+0.05*float64(i)))) // K 0.90 to 1.30
	}
	byEye, judged, kelt, salmon := seaTrout(50, 5000), seaTrout(50, 5000), seaTrout(50, 600), seaTrout(50, 5000)
	byEye.ByEye, judged.Estimated = true, true
	kelt.Class = journal.Of("kelt")
	salmon.Species = journal.Of(journal.Salmon)
	others := append(fish, byEye, judged, kelt, salmon, journal.Contact{})
	assert.Equal(t, Condition{Lo: 0.80, Mid: 1.00, Hi: 1.20, Fish: 9}, ConditionOf(others))

	c := ConditionOf(append(others, seaTrout(50, 1250*1.35)))
	assert.True(t, c.Own)
	assert.Equal(t, 10, c.Fish)
	// K 0.90, 0.95, ... 1.35: the median lies between the fifth and the sixth, the 10 %
	// point nine tenths of the way from the first to the second.
	assert.InDelta(t, 1.125, c.Mid, 1e-9)
	assert.InDelta(t, 0.945, c.Lo, 1e-9)
	assert.InDelta(t, 1.305, c.Hi, 1e-9)
}

// Ensure that a kelt is estimated thin, that a salmon is not estimated, and that a fish
// without a length is not.
func TestEstimateWeight(t *testing.T) {
	k := seaTrout(60, 0)
	b, ok := EstimateWeight(k, usualCondition)
	require.True(t, ok)
	assert.InDelta(t, 2160, float64(b.Mid), 1e-9)
	k.Class = journal.Of("kelt")
	b, ok = EstimateWeight(k, usualCondition)
	require.True(t, ok)
	assert.InDelta(t, 1620, float64(b.Mid), 1e-9)
	k.Species = journal.Of(journal.Salmon)
	_, ok = EstimateWeight(k, usualCondition)
	assert.False(t, ok)
	_, ok = EstimateWeight(journal.Contact{}, usualCondition)
	assert.False(t, ok)
}

// Ensure that the condition of fish made with one K is that K, whatever their lengths,
// that its points are in order, and that the order of the fish does not matter.
func TestConditionProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ks := rapid.SliceOfN(rapid.Float64Range(0.6, 1.6), 10, 40).Draw(t, "K")
		var fish []journal.Contact
		for i, k := range ks {
			cm := 25 + float64(i)
			fish = append(fish, seaTrout(cm, k/100*cm*cm*cm))
		}
		c := ConditionOf(fish)
		require.True(t, c.Own)
		require.LessOrEqual(t, c.Lo, c.Mid)
		require.LessOrEqual(t, c.Mid, c.Hi)
		perm := rapid.Permutation(fish).Draw(t, "order")
		require.Equal(t, c, ConditionOf(perm))
		for i := range fish {
			cm := 25 + float64(i)
			fish[i] = seaTrout(cm, ks[0]/100*cm*cm*cm)
		}
		same := ConditionOf(fish)
		require.InDelta(t, ks[0], same.Lo, 1e-9)
		require.InDelta(t, ks[0], same.Hi, 1e-9)
	})
}
