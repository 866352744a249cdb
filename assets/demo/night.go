package demo

import (
	"fmt"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// ounceGrams is exact: 1 lb is 453.59237 g (Weights and Measures Act 1985, Schedule 1).
const ounceGrams = 453.59237 / 16

// night gathers one trip before it is written.
type night struct {
	m       *maker
	beat    journal.Beat
	shape   geo.Beat // the beat as it was that evening
	trip    journal.Trip
	loc     *time.Location
	entries []journal.Record
	came    int  // fish that showed themselves so far
	kept    bool // one was kept
}

func (m *maker) night(b journal.Beat, d journal.Date) *night {
	shape := b.On(d)
	zone := shape.Zone
	loc, err := time.LoadLocation(zone)
	if err != nil {
		loc = time.UTC // the journal will refuse the zone in words
	}
	return &night{m: m, beat: b, shape: shape, loc: loc, trip: journal.Trip{ID: m.id(), Evening: d, Zone: zone, Beat: b.ID}}
}

func (n *night) batch() journal.Batch {
	return journal.Batch{Put: append([]journal.Record{n.trip}, n.entries...)}
}

func (n *night) add(e journal.Entry) { n.entries = append(n.entries, e) }

func (n *night) rod(name string, client bool) journal.ID {
	id := n.m.id()
	n.trip.Rods = append(n.trip.Rods, journal.Rod{ID: id, Person: n.m.people[name].ID, Client: client})
	return id
}

func (n *night) onBank(rod journal.ID, start, stop string) {
	for i := range n.trip.Rods {
		if n.trip.Rods[i].ID == rod {
			n.trip.Rods[i].Start = journal.Of(journal.Exact(n.clock(start)))
			n.trip.Rods[i].Stop = journal.Of(journal.Exact(n.clock(stop)))
		}
	}
}

// clock reads a local time of the night.
func (n *night) clock(s string) time.Time {
	var h, min int
	if _, err := fmt.Sscanf(s, "%d:%d", &h, &min); err != nil {
		return time.Time{} // the journal refuses an entry without a time
	}
	r, err := journal.ResolveWall(n.trip.Evening, n.loc, h, min, time.Time{}, time.Time{})
	if err != nil {
		return time.Time{}
	}
	return r.At
}

func (n *night) head(rod journal.ID, at string) journal.Head {
	return n.headAt(rod, journal.Exact(n.clock(at)))
}

func (n *night) headAt(rod journal.ID, w journal.When) journal.Head {
	return journal.Head{ID: n.m.id(), Trip: n.trip.ID, Rod: rod, When: w, From: journal.Origin{How: "memory"}}
}

func (n *night) run(rod journal.ID, name, from, to string) journal.ID {
	p := pool(n.beat, name)
	r := journal.Run{Head: n.head(rod, from), Until: journal.Of(journal.Exact(n.clock(to))), Pool: p.ID}
	if p.Bank.Known() {
		r.Bank = journal.Of(p.Bank)
	}
	n.add(r)
	return r.ID
}

// fish is a fish that was not landed.
func (n *night) fish(rod journal.ID, w journal.When, t journal.Touch, fly string, pos int) {
	n.add(n.contact(n.headAt(rod, w), t, fly, pos))
}

// landed is a fish landed, its weight in ounces judged or, if not, weighed.
func (n *night) landed(rod journal.ID, at, fly string, pos int, ounces float64, judged bool, fate journal.Fate) journal.Contact {
	c := n.contact(n.head(rod, at), journal.Landed, fly, pos)
	c.Weight, c.Estimated, c.Fate = pounds(ounces), judged, journal.Of(fate)
	n.add(c)
	return c
}

func (n *night) contact(h journal.Head, t journal.Touch, fly string, pos int) journal.Contact {
	c := journal.Contact{Head: h, Touch: t, Species: journal.Of(journal.SeaTrout)}
	if fly != "" {
		c.Fly, c.Position = journal.Of(n.m.flies[fly].ID), journal.Of(pos)
	}
	return c
}

func pounds(ounces float64) journal.Field[units.Weight] {
	return journal.Of(units.Weight{G: units.Grams(ounces * ounceGrams), Unit: units.Pound})
}

// rig mounts flies from the point up.
func (m *maker) rig(n *night, rod journal.ID, at string, flies ...string) journal.Rig {
	return m.rigAt(n.head(rod, at), flies...)
}

func (m *maker) rigAt(h journal.Head, flies ...string) journal.Rig {
	r := journal.Rig{Head: h}
	r.Line = journal.Of(journal.Line{Kind: journal.Floating})
	r.Leader = journal.Of(units.LengthOf(9, units.Foot))
	for i, f := range flies {
		r.Flies = append(r.Flies, journal.Mounted{Position: i, Fly: journal.Of(m.flies[f].ID)})
	}
	if flies[0] == "surface" {
		r.Surface = true
		r.Leader = journal.Of(units.LengthOf(5.5, units.Foot))
	}
	return r
}
