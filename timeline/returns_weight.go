package timeline

import (
	"math"
	"slices"

	"gloamline/journal"
	"gloamline/journal/units"
)

// Condition is how heavy fish are for their length: Fulton's factor K = 100 W / L³ with W
// in grams and L in centimetres, snout to fork. W = a L^b with b near 3 for most fish
// (Froese 2006, Journal of Applied Ichthyology 22, 241-253, as its abstract says).
type Condition struct {
	Lo, Mid, Hi float64
	Own         bool // from the journal's own weighed fish
	Fish        int  // how many of them, also while they are too few
}

// What is taken until ten own fish were weighed. 1.00 with 0.80 to 1.20 holds sea
// trout as guidance for anglers in Denmark and Norway describes them, thin to very fat; kelts
// are common practice, without a source that could be checked.
var (
	usualCondition = Condition{Lo: 0.80, Mid: 1.00, Hi: 1.20}
	keltCondition  = Condition{Lo: 0.60, Mid: 0.75, Hi: 0.85}
)

// enoughWeighed is how many weighed fish make a condition of one's own.
const enoughWeighed = 10

// ConditionOf returns the condition of a journal's own sea trout: the median of K and
// its 10 and 90 % points, once ten were both measured and weighed, else the usual
// one. Estimates of either do not count, nor do kelts, nor what is not called a sea trout.
func ConditionOf(fish []journal.Contact) Condition {
	var ks []float64
	for _, k := range fish {
		l, okL := k.Length.Get()
		w, okW := k.Weight.Get()
		if !okL || !okW || k.ByEye || k.Estimated || k.Class.Or("") == "kelt" || k.Species.Or("") != journal.SeaTrout {
			continue
		}
		cm := float64(l.M) * 100
		ks = append(ks, 100*float64(w.G)/(cm*cm*cm))
	}
	if len(ks) < enoughWeighed {
		c := usualCondition
		c.Fish = len(ks)
		return c
	}
	slices.Sort(ks)
	return Condition{Lo: quantile(ks, 0.1), Mid: quantile(ks, 0.5), Hi: quantile(ks, 0.9), Own: true, Fish: len(ks)}
}

// quantile interpolates between the order statistics of a sorted list (Hyndman and Fan 1996,
// The American Statistician 50, 361-365, definition 7).
func quantile(sorted []float64, p float64) float64 {
	at := p * float64(len(sorted)-1)
	i := int(math.Floor(at))
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}

// WeightBand is an estimate with its band; it is never a measurement.
type WeightBand struct{ Lo, Mid, Hi units.Grams }

// Weight estimates what a fish of a length weighs. The band is that of the condition
// alone: 3 % in length are 9 % in weight more.
func (c Condition) Weight(l units.Length) WeightBand {
	cm := float64(l.M) * 100
	of := func(k float64) units.Grams { return units.Grams(k / 100 * cm * cm * cm) }
	return WeightBand{of(c.Lo), of(c.Mid), of(c.Hi)}
}

// EstimateWeight estimates the weight of a fish whose length is noted. Only sea trout,
// brown trout and fish of unknown kind are estimated; kelts by a condition of their own.
func EstimateWeight(k journal.Contact, c Condition) (WeightBand, bool) {
	l, ok := k.Length.Get()
	switch k.Species.Or("") {
	case journal.Salmon, journal.OtherFish:
		ok = false
	}
	if !ok {
		return WeightBand{}, false
	}
	if k.Class.Or("") == "kelt" {
		c = keltCondition
	}
	return c.Weight(l), true
}
