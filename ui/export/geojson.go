package export

import (
	"encoding/json"
	"io"
	"math"
	"slices"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
)

// The members of GeoJSON that a night needs.
type collection struct {
	Type     string    `json:"type"`
	BBox     []float64 `json:"bbox,omitempty"` // west, south, east, north (section 5); none without places
	Features []feature `json:"features"`
}

type feature struct {
	Type       string         `json:"type"`
	Geometry   *geometry      `json:"geometry"` // null where no place may be told or none is known (section 3.2)
	Properties map[string]any `json:"properties"`
}

type geometry struct {
	Type        string `json:"type"`
	Coordinates any    `json:"coordinates"`
}

// position is longitude, latitude, to 7 decimals, about 1 cm.
type position [2]float64

func positionOf(p geo.Place) position {
	return position{round7(float64(p.Lon)), round7(float64(p.Lat))}
}

func round7(v float64) float64 { return math.Round(v*1e7) / 1e7 }

// GeoJSON writes a night as a FeatureCollection: its fish, its runs, the pools fished and,
// with exact places, its tracks. The property kind says which. Rings go anticlockwise,
// islands clockwise (section 3.1.6).
func GeoJSON(out io.Writer, n *timeline.Night, tracks []journal.Track, show Show) error {
	s := sheet{n, show, tracks}
	c := collection{Type: "FeatureCollection", Features: []feature{}}
	add := func(g *geometry, kind string, props map[string]any) {
		props["kind"] = kind
		props["night"] = n.Log.Trip.Evening.String()
		for k, v := range props {
			if v == "" {
				delete(props, k)
			}
		}
		c.Features = append(c.Features, feature{"Feature", g, props})
	}
	for _, k := range n.Contacts {
		var g *geometry
		if at, ok := s.where(k); ok {
			g = &geometry{"Point", positionOf(at)}
		}
		add(g, "fish", s.fishProperties(k))
	}
	fished := map[geo.ID]bool{}
	for _, r := range n.Rods {
		for _, run := range r.Runs {
			fished[run.Pool.ID] = true
			add(s.runShape(run), "run", map[string]any{"pool": s.pool(run.Pool), "rod": s.rod(r.Rod.ID),
				"from": s.utc(run.From.Mid()), "to": s.utc(run.To.Mid()), "bank": string(run.Run.Bank.Or("")), "nth": run.Nth, "note": s.note(run.Run.Head)})
		}
	}
	for _, p := range n.Beat.InOrder() {
		if fished[p.ID] {
			add(s.poolShape(p), "pool", map[string]any{"pool": s.pool(p)})
		}
	}
	if show.Places == ExactPlaces {
		for _, t := range tracks {
			if g := trackShape(t); g != nil {
				add(g, "track", map[string]any{"rod": s.rod(t.Rod.Or(journal.ID{}))})
			}
		}
	}
	c.BBox = bounds(c.Features)
	e := json.NewEncoder(out)
	e.SetIndent("", " ")
	return e.Encode(c)
}

func (s sheet) fishProperties(k timeline.Contact) map[string]any {
	p := map[string]any{
		"n": k.N, "touch": string(k.Touch), "rod": s.rod(k.Contact.Rod), "pool": s.pool(k.Pool), "note": s.note(k.Head),
		"from": s.utc(k.At.Lo), "to": s.utc(k.At.Hi),
		"species": string(k.Species.Or("")), "class": k.Class.Or(""), "fate": string(k.Fate.Or("")),
	}
	if l, ok := k.Length.Get(); ok {
		p["length_mm"], p["length_judged"] = math.Round(float64(l.M)*1000), k.ByEye
	}
	if w, ok := k.Weight.Get(); ok {
		p["weight_g"], p["weight_judged"] = math.Round(float64(w.G)), k.Estimated
	}
	if s.show.Places != NoPlaces {
		p["light_lx"], p["light_lx_low"], p["light_lx_high"] = sig2(float64(k.Light.Lux)), sig2(float64(k.Light.Lo)), sig2(float64(k.Light.Hi))
	}
	return p
}

// sig2 keeps two digits: light is not known better.
func sig2(v float64) float64 {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	scale := math.Pow(10, 1-math.Floor(math.Log10(math.Abs(v))))
	return math.Round(v*scale) / scale
}

func (s sheet) runShape(r timeline.RunSpan) *geometry {
	if s.show.Places != ExactPlaces {
		return nil
	}
	in, ok1 := r.Run.Enter.Get()
	out, ok2 := r.Run.Leave.Get()
	switch {
	case ok1 && ok2 && in != out:
		return &geometry{"LineString", []position{positionOf(in), positionOf(out)}}
	case ok1:
		return &geometry{"Point", positionOf(in)}
	case ok2:
		return &geometry{"Point", positionOf(out)}
	}
	return nil
}

func (s sheet) poolShape(p geo.Pool) *geometry {
	switch {
	case s.show.Places == NoPlaces || !p.Drawn():
		return nil
	case s.show.Places == PoolPlaces:
		return &geometry{"Point", positionOf(p.Place())}
	}
	var rings [][]position
	for i, r := range p.Outline {
		ring := make([]position, 0, len(r)+1)
		for _, at := range r {
			ring = append(ring, position{round7(at[0]), round7(at[1])})
		}
		if len(ring) > 0 && ring[0] != ring[len(ring)-1] {
			ring = append(ring, ring[0])
		}
		if len(ring) < 4 {
			continue
		}
		if (area(ring) > 0) != (i == 0) {
			slices.Reverse(ring)
		}
		rings = append(rings, ring)
	}
	return &geometry{"Polygon", rings}
}

// bounds is the box around all geometries. Where it crosses the antimeridian west is the
// larger longitude (section 5.2): the box is the one that leaves out the widest empty stretch.
func bounds(features []feature) []float64 {
	var all []position
	for _, f := range features {
		if f.Geometry != nil {
			all = append(all, positions(f.Geometry.Coordinates)...)
		}
	}
	if len(all) == 0 {
		return nil
	}
	lons := make([]float64, len(all))
	south, north := all[0][1], all[0][1]
	for i, p := range all {
		lons[i] = p[0]
		south, north = min(south, p[1]), max(north, p[1])
	}
	slices.Sort(lons)
	west, east := lons[0], lons[len(lons)-1]
	widest := west + 360 - east
	for i := 1; i < len(lons); i++ {
		if gap := lons[i] - lons[i-1]; gap > widest {
			widest, west, east = gap, lons[i], lons[i-1]
		}
	}
	return []float64{west, south, east, north}
}

func positions(coordinates any) []position {
	switch c := coordinates.(type) {
	case position:
		return []position{c}
	case []position:
		return c
	case [][]position:
		return slices.Concat(c...)
	}
	return nil
}

// area is twice the signed area of a ring in degrees: positive goes anticlockwise.
func area(ring []position) float64 {
	sum := 0.0
	for i := range len(ring) - 1 {
		a, b := ring[i], ring[i+1]
		// From the first corner, so that small rings far from 0, 0 lose no digits.
		sum += (a[0]-ring[0][0])*(b[1]-ring[0][1]) - (b[0]-ring[0][0])*(a[1]-ring[0][1])
	}
	return sum
}

func trackShape(t journal.Track) *geometry {
	if len(t.Fixes) < 2 {
		return nil // no line (section 3.1.4)
	}
	line := make([]position, len(t.Fixes))
	for i, f := range t.Fixes {
		line[i] = positionOf(f.Place)
	}
	return &geometry{"LineString", line}
}
