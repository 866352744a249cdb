package state

import (
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// besideRun is how far from the water a place is still told by the pool it lies at: where
// a rod went in lies on the bank.
const besideRun units.Metres = 30

// midStream is how near to the middle, as a share of the way to the bank, a place is told
// as lying there.
const midStream = 0.3

// inWords has a field of a position offer the parts of the pool by their names, and tell
// the position that stands by them; a click on the sketch is finer and stays as it is. The
// way in and out of a run is on a bank; a fish may lie in the middle too.
func (c *Card) inWords(f *field, pool func() journal.ID, middle bool) *field {
	f.Hint = words.SpotHint()
	f.choices = func() []Choice {
		lay := c.d.night.Beat.Layout()
		out := []Choice{{"", words.NotKnown()}}
		if s := shapeOf(lay, pool()); s != nil {
			out = append(out, partsOf(lay, s, middle)...)
		}
		at, err := parsePlace(f.Value) // the draft is not read yet
		if err != nil {
			return out
		}
		text := f.Value
		for _, o := range out {
			if o.Value == text {
				return out
			}
		}
		if said := placeWords(lay, at, pool()); said != "" {
			out = append(out, Choice{text, words.AsMarked(said)})
		}
		return out
	}
	return f
}

// partsOf are the places of a pool that have a name, from its head down.
func partsOf(lay *geo.Layout, s *geo.PoolShape, middle bool) (out []Choice) {
	for i, part := range []geo.Part{geo.Neck, geo.Body, geo.Tail} {
		at := s.Length() * units.Metres(2*i+1) / 6
		left, right, ok := s.Across(at)
		if !ok {
			continue
		}
		add := func(q geo.Point, side string) {
			out = append(out, Choice{printPlace(lay.Place(q)), words.PoolPart("", string(part), side)})
		}
		add(left, words.TrueSide(geo.TrueLeft))
		if middle {
			add(s.At(at, 0), words.MidStream())
		}
		add(right, words.TrueSide(geo.TrueRight))
	}
	return out
}

// placeWords tells a position by the part of the pool and the side: tail, true right; with
// the pool's name where that is another one than the card's; empty where no pool is near.
func placeWords(lay *geo.Layout, p geo.Place, pool journal.ID) string {
	spot, ok := lay.Snap(p, besideRun)
	if !ok {
		return ""
	}
	s := &lay.Pools[spot.Index]
	side, reach := geo.TrueLeft, units.Metres(0)
	if left, right, ok := s.Across(spot.Chainage); ok {
		mid := s.At(spot.Chainage, 0)
		if reach = mid.Distance(left); spot.Offset < 0 {
			reach = mid.Distance(right)
		}
	}
	if spot.Offset < 0 {
		side = geo.TrueRight
	}
	where := words.TrueSide(side)
	if spot.Inside && max(spot.Offset, -spot.Offset) < midStream*reach {
		where = words.MidStream()
	}
	name := ""
	if spot.Pool != pool {
		name = words.PoolName(s.Pool.Name)
	}
	return words.PoolPart(name, string(spot.Part), where)
}

func shapeOf(lay *geo.Layout, pool journal.ID) *geo.PoolShape {
	for i := range lay.Pools {
		if lay.Pools[i].Pool.ID == pool {
			return &lay.Pools[i]
		}
	}
	return nil
}
