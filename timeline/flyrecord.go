package timeline

import (
	"time"

	"gloamline/journal"
	"gloamline/timeline/tally"
)

// FlyLight is what came of a fly in one half of the light.
type FlyLight struct {
	Water                        time.Duration // rod-hours with the fly in the water, beside another one or not
	Landed, Lost, Touches, Shows float64       // expected: a moment that straddles the two halves is shared out
}

// FlyRecord is what nights say of one fly: how long it was fished and what came to it,
// before the trees were grey and after. Hours and fish of a fly that shared a leader
// with another are whole hours for both. It is no rate and compares nothing.
type FlyRecord struct {
	Nights       int // on which it was in the water or a fish came to it
	Before, Grey FlyLight
}

// Plus adds another record of the same fly, of other nights.
func (r FlyRecord) Plus(o FlyRecord) FlyRecord {
	return FlyRecord{Nights: r.Nights + o.Nights, Before: r.Before.plus(o.Before), Grey: r.Grey.plus(o.Grey)}
}

// Total returns both halves together.
func (r FlyRecord) Total() FlyLight { return r.Before.plus(r.Grey) }

func (l FlyLight) plus(o FlyLight) FlyLight {
	return FlyLight{l.Water + o.Water, l.Landed + o.Landed, l.Lost + o.Lost, l.Touches + o.Touches, l.Shows + o.Shows}
}

// FlyRecords returns what one night says of each fly that was up or took a fish. Contacts
// of which no fly is known are in none.
func (n *Night) FlyRecords() map[journal.ID]FlyRecord {
	out := map[journal.ID]FlyRecord{}
	grey := tally.Union(n.Grey.Dark...)
	seen := map[journal.ID]bool{}
	for _, rod := range n.Rods {
		wet := tally.Set(rod.Water)
		for _, rig := range rod.Rigs {
			up := wet.Intersect(tally.Union(tally.Stretch{From: rig.From.Mid(), To: rig.To}))
			if up.Length() == 0 {
				continue
			}
			for _, f := range rig.Flies {
				if f.Fly.IsZero() {
					continue
				}
				r := out[f.Fly]
				dark := up.Intersect(grey).Length()
				r.Grey.Water += dark
				r.Before.Water += up.Length() - dark
				out[f.Fly], seen[f.Fly] = r, true
			}
		}
	}
	for _, k := range n.Contacts {
		if !k.HasFly || k.Fly.Fly.IsZero() {
			continue
		}
		r := out[k.Fly.Fly]
		share := tally.Moment(k.At).ShareOf(grey)
		r.Grey.tell(k.Touch, share)
		r.Before.tell(k.Touch, 1-share)
		out[k.Fly.Fly], seen[k.Fly.Fly] = r, true
	}
	for id := range seen {
		r := out[id]
		r.Nights = 1
		out[id] = r
	}
	return out
}

func (l *FlyLight) tell(t journal.Touch, share float64) {
	switch t {
	case journal.Landed:
		l.Landed += share
	case journal.Lost:
		l.Lost += share
	case journal.Pluck, journal.Pull:
		l.Touches += share
	case journal.Follow, journal.Boil:
		l.Shows += share
	}
}
