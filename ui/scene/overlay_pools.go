package scene

import (
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// manyFish is from how many fish on one sketch those of the nights that recede lose
// their numbers, so that the others keep theirs.
const manyFish = 40

// PoolsTogether draws the fish of all nights on one sketch, each with the letter of its
// night, and at each pool's name its hooked fish beside its rod-hours. It shows the beat
// of the night that stands out, else of the first; what lies on other beats is told.
func PoolsTogether(o *timeline.Overlay, size draw.Size, look Look, v TogetherView) Scene {
	g := newTogether(o, size, look, v)
	s := g.list
	s.Group(words.PoolsTitle())
	defer s.EndGroup()
	base := g.baseNight()
	if base == nil {
		return Scene{List: s}
	}
	beat := base.Log.Trip.Beat
	said := []string{words.PoolsCaption(base)}
	if elsewhere := g.elsewhere(beat); elsewhere.Contacts() > 0 || elsewhere.InWater > 0 {
		said = append(said, words.OnOtherBeats(elsewhere))
	}
	if g.noPool(beat) > 0 {
		said = append(said, words.WithoutPool(g.noPool(beat)))
	}
	if v.Hand {
		said = append(said, words.PickedByHand())
	}
	foot := g.foot(said)
	g.title(words.Commas(words.PoolsTitle(), base.Beat.Name), 17)

	// The sketch of that evening, without its own night.
	bare := *base
	bare.Rods, bare.Contacts = nil, nil
	bare.Beat = g.counted(base.Beat, beat)
	k := newSketch(&bare, draw.Size{W: size.W, H: size.H - foot - 22}, look, SketchView{Paper: true, Prefs: v.Prefs})
	k.counted = true
	k.rim()
	k.list.PushClip(draw.Rectangle(k.view))
	k.river()
	k.trees()
	k.pools()
	k.chevrons()
	k.spots()
	marks := g.settleAll(k, beat)
	k.names()
	g.drawAll(k, marks)
	k.ends()
	k.list.PopClip()
	const down = 22
	draw.Place(s, k.list, 1, draw.Pt(0, down))
	for _, h := range k.hits {
		h.Box = h.Box.Move(draw.Pt(0, down))
		h.Area = h.Area.Transformed(1, draw.Pt(0, down))
		g.hits = append(g.hits, h)
	}
	return Scene{List: s, Hits: g.hits}
}

func (g *together) baseNight() *timeline.Night {
	for _, l := range g.o.Nights {
		if l.Night.Log.Trip.ID == g.v.Night {
			return l.Night
		}
	}
	if len(g.o.Nights) > 0 {
		return g.o.Nights[0].Night
	}
	return nil
}

// counted is the beat with each pool's fish and hours at its name.
func (g *together) counted(b geo.Beat, beat journal.ID) geo.Beat {
	sums := map[geo.ID]timeline.PoolSum{}
	for _, p := range g.o.Pools {
		if p.Beat == beat {
			sums[p.Pool] = p
		}
	}
	pools := make([]geo.Pool, len(b.Pools))
	for i, p := range b.Pools {
		if s, ok := sums[p.ID]; ok {
			p.Name = words.PoolCount(p.Name, s)
		}
		pools[i] = p
	}
	b.Pools = pools
	return b
}

// elsewhere is what the nights had on other beats.
func (g *together) elsewhere(beat journal.ID) timeline.Totals {
	var t timeline.Totals
	for _, l := range g.o.Nights {
		if l.Night.Log.Trip.Beat != beat {
			t = t.Plus(l.Night.Totals)
		}
	}
	return t
}

// noPool is how many contacts on the beat have no pool.
func (g *together) noPool(beat journal.ID) int {
	n := 0
	for _, l := range g.o.Nights {
		for _, f := range l.Fish {
			if l.Night.Log.Trip.Beat == beat && !f.Contact.HasPool {
				n++
			}
		}
	}
	return n
}

// laidMark is a contact on the sketch of several nights.
type laidMark struct {
	contactMark
	tip string
	w   weight
}

// settleAll finds places for the contacts of all nights on the beat, those of the night
// that stands out first.
func (g *together) settleAll(k *sketch, beat journal.ID) []laidMark {
	var marks []laidMark
	total := 0
	for _, l := range g.o.Nights {
		if l.Night.Log.Trip.Beat == beat {
			total += len(l.Fish)
		}
	}
	for _, pass := range []weight{stands, even, recedes} {
		for _, l := range g.o.Nights {
			w := g.weight(l.Night)
			if w != pass || l.Night.Log.Trip.Beat != beat {
				continue
			}
			own := *k // to find places by that night's runs
			own.n = l.Night
			for _, f := range l.Fish {
				p, ok := own.contactPlace(*f.Contact)
				if !f.Contact.HasPool || !ok || !k.view.Contains(p) {
					continue
				}
				m := laidMark{w: w, tip: words.LaidFishTip(g.marks[l.Night.Log.Trip.ID], f, l.Night, g.v.Prefs)}
				m.c, m.place, m.size, m.strength = *f.Contact, p, contactSize(f.Contact.Contact), w.strength()
				m.width = m.size.W + 2
				if w != recedes || total <= manyFish {
					m.num = draw.Text{S: words.LaidNumber(g.marks[l.Night.Log.Trip.ID], l.Night, *f.Contact), Font: textFont, Color: g.look.Soft, Halo: draw.Halo{Width: 2.6, Color: draw.Fade(g.look.Panel, 0.92)}}
					if w == stands {
						m.num.Font, m.num.Color = boldFont, g.look.Ink
					}
					m.width += draw.Measure(m.num.Font, m.num.S).Width + 4
				}
				k.settle(&m.contactMark)
				k.labels.block(m.box())
				marks = append(marks, m)
			}
		}
	}
	return marks
}

func (g *together) drawAll(k *sketch, marks []laidMark) {
	for _, m := range marks {
		if m.centre.Dist(m.place) > aside {
			k.list.Stroke(draw.Line(m.place, m.centre), draw.Stroke{Width: 0.9}, draw.Fade(g.look.Ink, 0.45*m.strength))
			k.list.Fill(draw.Circle(m.place, 1.6), draw.NonZero, draw.Solid(draw.Fade(g.look.Fish, m.strength)))
		}
	}
	for _, m := range marks {
		if m.c.Ref() == g.v.Fish {
			k.list.Stroke(draw.RoundRect(m.box().Inset(-2), 6), ringStroke, g.look.Accent)
		}
		strength := m.strength
		if g.picked(m.c.Ref()) {
			strength = 1
		}
		drawContact(k.list, g.look, m.c.Contact, m.centre, strength)
		if m.num.S != "" {
			m.num.At = draw.Pt(m.centre.X+m.size.W/2+3, m.centre.Y-1)
			k.list.Text(m.num)
		}
		k.hits = append(k.hits, Hit{Ref: m.c.Ref(), Box: m.box().Inset(-2), Tip: m.tip})
	}
}
