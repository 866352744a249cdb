package journaltest

import (
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
)

// entry makes any entry but a run.
func (n *Night) entry(k journal.Kind, h journal.Head) journal.Entry {
	w := n.w
	h = n.rest(h)
	switch k {
	case journal.KindRig:
		return journal.Rig{Head: h, Setup: w.setup()}
	case journal.KindWay:
		return journal.Way{Head: h, Speed: field(w, pick(w, journal.Speeds)), Depth: field(w, pick(w, journal.Depths))}
	case journal.KindContact:
		return n.contact(h)
	case journal.KindReady:
		return journal.Ready{Head: h, Pool: n.pool()}
	case journal.KindEnd:
		return journal.End{Head: h, Why: field(w, pick(w, journal.EndWhys))}
	case journal.KindSky:
		s := journal.Sky{Head: h, Cloud: field(w, w.Rand.IntN(9)), CloudKind: field(w, pick(w, journal.CloudKinds)),
			Moon: field(w, pick(w, journal.MoonSeens)), Step: w.yes()}
		s.TreesGrey = s.Cloud.IsZero() && s.CloudKind.IsZero() && s.Moon.IsZero() || w.yes()
		return s
	case journal.KindWeather:
		return journal.Weather{Head: h, Wind: field(w, w.Rand.IntN(13)), From: field(w, units.Degrees(w.between(0, 360))),
			Mist: field(w, w.yes()), Rain: field(w, w.yes()), Air: field(w, w.temperature(-5, 25))}
	case journal.KindWater:
		return journal.Water{Head: h, Level: field(w, w.length(-1, 3)), Trend: field(w, pick(w, journal.Trends)),
			Clarity: field(w, pick(w, journal.Clarities)), Temp: field(w, w.temperature(2, 20))}
	case journal.KindBreak:
		b := journal.Break{Head: h}
		if len(h.When.Anchors) == 0 {
			b.Until = field(w, journal.About(h.When.Hi.Add(20*time.Minute), 5*time.Minute))
		}
		return b
	case journal.KindPlan:
		return journal.Plan{Head: h, Pool: field(w, n.pool()), Order: field(w, w.Rand.IntN(9)), Earliest: field(w, w.lux(0.001, 10))}
	case journal.KindNote:
		h.Note = w.text()
		return journal.Note{Head: h, Pool: field(w, n.pool()), Private: w.yes(), Reason: w.text()}
	case journal.KindPhoto:
		p := journal.Photo{Head: h, SHA256: w.sha256(), Name: w.text(), Copied: w.yes(), Link: w.text(),
			Thumb: w.bytes(w.Rand.IntN(2000)), Spot: field(w, w.place())}
		if len(n.Entries) > 0 {
			if of := pick(w, n.Entries).Base().ID; of != h.ID {
				p.Of = field(w, of)
			}
		}
		return p
	}
	panic("journaltest: no entry of kind " + string(k))
}

func (n *Night) contact(h journal.Head) journal.Contact {
	w := n.w
	k := journal.Contact{
		Head:      h,
		Touch:     pick(w, journal.Touches),
		Pool:      field(w, n.pool()),
		Part:      field(w, pick(w, journal.Parts)),
		Spot:      field(w, w.place()),
		Position:  field(w, w.Rand.IntN(journal.MaxFlies)),
		Species:   field(w, pick(w, journal.AllSpecies)),
		Class:     field(w, pick(w, journal.Classes)),
		Length:    field(w, w.length(0.15, 0.9)),
		Weight:    field(w, w.weight()),
		ByEye:     w.yes(),
		Estimated: w.yes(),
		Sex:       field(w, pick(w, journal.Sexes)),
		Lice:      field(w, w.yes()),
		HookPlace: field(w, pick(w, journal.HookPlaces)),
		AirTime:   field(w, w.Rand.IntN(120)),
		Tag:       field(w, w.text()),
	}
	if len(w.Flies) > 0 {
		k.Fly = field(w, pick(w, w.Flies))
	}
	if k.Touch == journal.Landed {
		k.Fate = field(w, pick(w, journal.Fates))
	}
	return k
}
