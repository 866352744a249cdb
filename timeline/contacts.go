package timeline

import (
	"slices"

	"gloamline/geo"
	"gloamline/journal"
)

// contacts numbers the contacts of a night in its order and says for each on
// which run, in which pool and to which fly it came. Their light is set later.
func contacts(entries []Noted[journal.Entry], rods []RodNight, pool func(geo.ID) (geo.Pool, bool), dress dresser) []Contact {
	var out []Contact
	for _, n := range pick[journal.Contact](entries) {
		k := Contact{Contact: n.Entry, N: len(out) + 1, At: n.At, Run: -1}
		k.Rod = slices.IndexFunc(rods, func(r RodNight) bool { return r.Rod.ID == n.Entry.Rod })
		rod := &rods[k.Rod]
		k.Run = runOf(n.Entry, n.At, rod.Runs)
		if id, ok := n.Entry.Pool.Get(); ok {
			k.Pool, k.HasPool = pool(id)
		} else if k.Run >= 0 {
			k.Pool, k.HasPool = pool(rod.Runs[k.Run].Run.Pool)
		}
		k.Fly, k.HasFly = dress.flyOf(n.Entry, rod.RigAt(n.At.Mid()))
		out = append(out, k)
	}
	return out
}

// setInLight gives a contact its light.
func (n *Night) setInLight(k *Contact) {
	c := &n.Open
	k.TimeOnly = true
	if p, ok := n.PoolNight(k.Pool.ID); ok && k.HasPool {
		c, k.TimeOnly = &p.Curve, false
		k.InMoon = slices.ContainsFunc(p.MoonOver, func(i Interval) bool { return i.Contains(k.At.Mid()) })
	} else {
		k.InMoon = n.Sky.MoonUpAt(k.At.Mid())
	}
	l := lightOver(c, &n.Open, k.At)
	k.Light = l.Lit
	grey := float64(n.Grey.Threshold.Lux)
	k.Darker = decadesBelow(grey, float64(l.Lux))
	k.Rung = reading{
		sunUp: n.Sky.SunUpAt(k.At.Mid()), open: l.open, lux: float64(l.Lux), moonShare: l.moonShare, grey: grey,
	}.rung()
}
