package geo

import (
	"encoding/json"

	"github.com/paulmach/orb"
)

// Bank is a true bank, seen looking downstream.
type Bank string

// The two banks. The texts are stored and must not change.
const (
	TrueLeft  Bank = "left"
	TrueRight Bank = "right"
)

// River is a river by name.
type River struct {
	ID   ID     `json:"id,omitzero"`
	Name string `json:"name"`
}

// Beat is a stretch of river let to a party: its pools in fishing order and
// what surrounds them. Coordinates are WGS84 degrees, longitude first.
type Beat struct {
	ID      ID     `json:"id"`
	Name    string `json:"name"`
	River   River  `json:"river,omitzero"`
	Zone    string `json:"zone"` // IANA name
	Pools   []Pool `json:"pools,omitempty"`
	Banks   []Line `json:"banks,omitempty"`
	Trees   []Area `json:"trees,omitempty"`
	Entries []Spot `json:"entries,omitempty"`
	Hazards []Spot `json:"hazards,omitempty"`
	Marks   []Spot `json:"marks,omitempty"`
	// Others holds features of roles or shapes that the program does not draw,
	// as they were read, so that nothing is lost.
	Others []json.RawMessage `json:"others,omitempty"`
	Extra  Extra             `json:"extra,omitempty"`
}

// Extra holds members that the program does not know, by name.
type Extra map[string]json.RawMessage

// Pool is a slower, deeper reach holding fish.
type Pool struct {
	ID      ID          `json:"id"`
	Name    string      `json:"name"`
	Order   int         `json:"order"` // in fishing order, from 1
	Bank    Bank        `json:"bank,omitempty"`
	Canopy  Canopy      `json:"canopy,omitempty"`
	Skyline Skyline     `json:"skyline,omitempty"`
	Outline orb.Polygon `json:"outline,omitempty"`
	Extra   Extra       `json:"extra,omitempty"`
}

// Line is a bank line.
type Line struct {
	ID    ID             `json:"id,omitzero"`
	Name  string         `json:"name,omitempty"`
	Bank  Bank           `json:"bank,omitempty"`
	Line  orb.LineString `json:"line"`
	Extra Extra          `json:"extra,omitempty"`
}

// Area is a stand of trees.
type Area struct {
	ID     ID          `json:"id,omitzero"`
	Name   string      `json:"name,omitempty"`
	Canopy Canopy      `json:"canopy,omitempty"`
	Area   orb.Polygon `json:"area"`
	Extra  Extra       `json:"extra,omitempty"`
}

// Spot is an entry place, a hazard or a mark.
type Spot struct {
	ID    ID     `json:"id,omitzero"`
	Name  string `json:"name,omitempty"`
	Bank  Bank   `json:"bank,omitempty"`
	At    Place  `json:"at"`
	Extra Extra  `json:"extra,omitempty"`
}

// Pool returns the pool with that ID.
func (b Beat) Pool(id ID) (Pool, bool) {
	for _, p := range b.Pools {
		if p.ID == id {
			return p, true
		}
	}
	return Pool{}, false
}

// Bound is the box around everything drawn; empty if there is nothing.
func (b Beat) Bound() orb.Bound {
	var all orb.MultiPoint
	for _, p := range b.Pools {
		for _, r := range p.Outline {
			all = append(all, r...)
		}
	}
	for _, l := range b.Banks {
		all = append(all, l.Line...)
	}
	for _, a := range b.Trees {
		for _, r := range a.Area {
			all = append(all, r...)
		}
	}
	for _, s := range [][]Spot{b.Entries, b.Hazards, b.Marks} {
		for _, p := range s {
			all = append(all, p.At.Point())
		}
	}
	return all.Bound()
}

// Place is the middle of the beat: one position is enough for sun and moon
// over a whole beat, since 1 km is 0.009 degrees.
func (b Beat) Place() Place { return PlaceOf(b.Bound().Center()) }

// Place is the middle of the pool's outline box.
func (p Pool) Place() Place { return PlaceOf(p.Outline.Bound().Center()) }
