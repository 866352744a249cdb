package demo

import (
	"math"
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
)

// rate is how many fish an hour show themselves to a fly: made up, more around dusk
// and in a falling river, fewer in May, in a rising river and under a bright moon.
func (c conditions) rate(d journal.Date, at time.Time) float64 {
	r := map[time.Month]float64{time.May: 0.35, time.June: 0.5, time.July: 0.7, time.August: 0.65, time.September: 0.45}[d.Month]
	switch c.trend {
	case journal.FallingFlood, journal.FiningDown:
		r *= 1.6
	case journal.Rising:
		r *= 0.3
	}
	if d := at.Sub(c.grey); d > -30*time.Minute && d < 70*time.Minute {
		r *= 1.5
	}
	if c.moonAlt(at) > 8 && c.later < 3 {
		r *= 0.6
	}
	return r
}

// fishRun lets fish come to one run by chance; rig is the change of flies before it,
// zero if there was none.
func (m *maker) fishRun(n *night, c conditions, run journal.Run, rig journal.ID, from, to time.Time, flies []string) {
	rate := c.rate(n.trip.Evening, from)
	for t := from; ; {
		t = t.Add(time.Duration(m.r.ExpFloat64() / rate * float64(time.Hour))).Truncate(time.Minute)
		if !t.After(from) {
			t = from.Add(time.Minute).Truncate(time.Minute)
		}
		if !t.Before(to) {
			return
		}
		touch := []journal.Touch{journal.Landed, journal.Landed, journal.Landed, journal.Lost, journal.Pull, journal.Pluck, journal.Boil, journal.Follow}[m.r.IntN(8)]
		h := n.headAt(run.Rod, m.remembered(t, from, to, run.ID, rig))
		i := m.r.IntN(len(flies))
		fly := flies[i]
		if touch != journal.Landed && touch != journal.Lost && m.r.IntN(2) == 0 {
			fly = ""
		}
		k := n.contact(h, touch, fly, i)
		m.where(&k, n, run, float64(t.Sub(from))/float64(to.Sub(from)))
		if touch == journal.Landed {
			m.inHand(&k, n)
		}
		n.add(k)
		n.came++
	}
}

// remembered is how well the moment of a fish was kept in mind; it came between from
// and to.
func (m *maker) remembered(t, from, to time.Time, run, rig journal.ID) journal.When {
	switch m.r.IntN(12) {
	case 0, 1, 2:
		return journal.About(t, 0)
	case 3, 4:
		return journal.Within(run)
	case 5:
		lo, hi := t.Add(-10*time.Minute), t.Add(10*time.Minute)
		if lo.Before(from) {
			lo = from
		}
		if hi.After(to) {
			hi = to
		}
		return journal.Between(lo, hi)
	case 6:
		if rig != none {
			return journal.After(rig)
		}
	}
	return journal.Exact(t)
}

// where says of some fish where they took: the place on the sketch, or the part of
// the pool. An angler comes down the pool, and so do the fish.
func (m *maker) where(k *journal.Contact, n *night, run journal.Run, share float64) {
	share = min(0.95, max(0.05, share+0.08*m.r.NormFloat64()))
	k.Pool = journal.Of(run.Pool)
	switch m.r.IntN(5) {
	case 0, 1:
		k.Spot = m.spot(n.beat, run.Pool, share, 1.4*m.r.Float64()-0.7)
	case 2:
		k.Part = journal.Of(journal.Parts[1+min(2, int(3*share))])
	}
}

// inHand is what is noted of a fish that was landed. Early in the season the few fish
// are large; herling (in their first year after going to sea) come from mid July.
func (m *maker) inHand(k *journal.Contact, n *night) {
	d := n.trip.Evening
	ounces := 0.0
	july := journal.Date{Year: d.Year, Month: time.July, Day: 12}
	switch {
	case !d.Before(july) && m.r.IntN(5) < 2:
		ounces = 11.5 + 2*m.r.NormFloat64()
		k.Class = journal.Of("herling")
	case d.Before(july.Add(-20)):
		ounces = math.Exp(3.75 + 0.38*m.r.NormFloat64())
	default:
		ounces = math.Exp(3.4 + 0.42*m.r.NormFloat64())
	}
	ounces = math.Round(max(6, ounces))
	// 1.1 grams per 100 cubic centimetres of length: a trout in fair order, from memory.
	inches := math.Round(math.Cbrt(ounces*ounceGrams/0.011) / 2.54)
	switch m.r.IntN(7) {
	case 0: // nobody weighed it
	case 1, 2:
		k.Length = journal.Of(units.LengthOf(inches, units.Inch))
		k.ByEye = m.r.IntN(2) == 0
	default:
		k.Weight = pounds(ounces)
		k.Estimated = m.r.IntN(3) > 0
	}
	k.Fate = journal.Of(journal.Returned)
	if !n.kept && m.r.IntN(7) == 0 { // one for the pot is enough
		k.Fate, n.kept = journal.Of(journal.Kept), true
	}
	if m.r.IntN(3) == 0 {
		k.HookPlace = journal.Of([]string{"scissors", "scissors", "upper jaw", "tongue"}[m.r.IntN(4)])
	}
	if m.r.IntN(8) == 0 {
		k.Lice = journal.Of(true)
	}
	if m.r.IntN(4) == 0 {
		k.Sex = journal.Of(journal.Sexes[m.r.IntN(2)])
	}
	if m.r.IntN(4) == 0 && k.Fate.Or("") == journal.Returned {
		k.AirTime = journal.Of(5 * (1 + m.r.IntN(4)))
	}
}
