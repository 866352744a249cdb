package geo

import "encoding/json"

// River is a named water.
type River struct {
	ID   ID     `json:"id,omitzero"`
	Name string `json:"name,omitempty"`
}

// Beat is a length of bank let for a day or night, with the sketch of it. The JSON
// form is the one kept in the journal; GeoJSON is for exchange (package sketch).
type Beat struct {
	ID    ID     `json:"id"`
	Name  string `json:"name,omitempty"`
	River River  `json:"river,omitzero"`
	Zone  string `json:"zone,omitempty"` // IANA name such as Europe/London
	// At is where the beat is when nothing is drawn yet, or when the middle of
	// the sketch would mislead. Place says which holds.
	At       Place     `json:"at,omitzero"`
	Pools    []Pool    `json:"pools,omitempty"`    // as kept; InOrder sorts them
	Features []Feature `json:"features,omitempty"` // banks, trees, marks, entries, hazards, others
	Extra    Extra     `json:"extra,omitzero"`
}

// Role says what a feature of the sketch is.
type Role string

// The roles. A feature of any other role is kept and drawn as a plain line or point.
const (
	RolePool   Role = "pool"
	RoleBank   Role = "bank"   // a bank edge, drawn downstream
	RoleMark   Role = "mark"   // a landmark: a stone, a gate, a bench
	RoleTrees  Role = "trees"  // an area or a row of trees
	RoleEntry  Role = "entry"  // where one gets into or out of the water
	RoleHazard Role = "hazard" // deep hole, fence, power line, soft bank
	RoleLie    Role = "lie"    // where fish are known to lie
)

// Known reports whether r is one of the roles above.
func (r Role) Known() bool {
	switch r {
	case RolePool, RoleBank, RoleMark, RoleTrees, RoleEntry, RoleHazard, RoleLie:
		return true
	}
	return false
}

// Feature is anything on the sketch but a pool.
type Feature struct {
	ID     ID     `json:"id"`
	Role   Role   `json:"role,omitempty"`
	Name   string `json:"name,omitempty"`
	Bank   Bank   `json:"bank,omitempty"`   // of a bank line or an entry
	Canopy Canopy `json:"canopy,omitempty"` // of trees
	Shape  Shape  `json:"shape,omitzero"`
	Extra  Extra  `json:"extra,omitzero"`
}

// Bank is a true bank, seen looking downstream; "" is not known.
type Bank string

// The banks.
const (
	TrueLeft  Bank = "left"
	TrueRight Bank = "right"
)

// Known reports whether b is the true left or the true right.
func (b Bank) Known() bool { return b == TrueLeft || b == TrueRight }

// Opposite returns the other bank; of an unknown bank it is unknown.
func (b Bank) Opposite() Bank {
	switch b {
	case TrueLeft:
		return TrueRight
	case TrueRight:
		return TrueLeft
	}
	return ""
}

// Canopy says how far trees close over the water; "" is not known.
type Canopy string

// The canopies.
const (
	Open   Canopy = "open"
	Partly Canopy = "partly"
	Closed Canopy = "closed"
)

// Known reports whether c is one of the canopies.
func (c Canopy) Known() bool { return c == Open || c == Partly || c == Closed }

// Extra keeps what an exchanged file said beyond the sketch, so that it survives
// being written again. Programs do not read it.
type Extra struct {
	Members    map[string]json.RawMessage `json:"members,omitempty"`    // of the FeatureCollection or Feature
	Properties map[string]json.RawMessage `json:"properties,omitempty"` // of the Feature
	Geometry   map[string]json.RawMessage `json:"geometry,omitempty"`   // of the geometry
	// Heights are positions with more than longitude and latitude, whole and in
	// order; a position that is moved loses its height.
	Heights [][]float64 `json:"heights,omitempty"`
}

// IsZero reports whether nothing extra is kept.
func (e Extra) IsZero() bool {
	return len(e.Members) == 0 && len(e.Properties) == 0 && len(e.Geometry) == 0 && len(e.Heights) == 0
}

// Pool returns the pool of that ID.
func (b Beat) Pool(id ID) (Pool, bool) {
	for _, p := range b.Pools {
		if p.ID == id {
			return p, true
		}
	}
	return Pool{}, false
}

// WithRole returns the features of one role in the order kept.
func (b Beat) WithRole(r Role) []Feature {
	var out []Feature
	for _, f := range b.Features {
		if f.Role == r {
			out = append(out, f)
		}
	}
	return out
}

// Banks returns the bank lines.
func (b Beat) Banks() []Feature { return b.WithRole(RoleBank) }

// Trees returns the trees.
func (b Beat) Trees() []Feature { return b.WithRole(RoleTrees) }

// Marks returns the landmarks.
func (b Beat) Marks() []Feature { return b.WithRole(RoleMark) }

// Entries returns the ways into and out of the water.
func (b Beat) Entries() []Feature { return b.WithRole(RoleEntry) }

// Hazards returns the hazards.
func (b Beat) Hazards() []Feature { return b.WithRole(RoleHazard) }
