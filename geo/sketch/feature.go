package sketch

import (
	"encoding/json"
	"math"
	"strings"

	"github.com/paulmach/orb"

	"gloamline/geo"
	"gloamline/journal/units"
)

// feature reads the i-th feature of the file into the beat.
func (r *reader) feature(i int, raw json.RawMessage) *Error {
	r.at, r.name = i, ""
	o := members(raw)
	kind, _ := text(o["type"])
	if o != nil && kind != "Feature" && kind != "" && (o["coordinates"] != nil || o["geometries"] != nil) {
		r.warn(GeometryAlone, "")
		o = object{"geometry": raw}
		kind = "Feature"
	}
	if o == nil || kind != "Feature" {
		r.warn(FeatureSkipped, "")
		return nil
	}
	delete(o, "type")
	if err := r.grid(o.take("crs")); err != nil {
		return err
	}
	_, boxed := o["bbox"]
	delete(o, "bbox")
	r.forbid(o, "coordinates", "geometries", "features")
	if raw, ok := o["id"]; ok && isNull(raw) {
		delete(o, "id")
	} else if _, ok := text(raw); !ok {
		r.forbid(o, "id") // neither a text nor a number (section 3.2)
	}

	properties := r.properties(o)
	var f geo.Feature
	r.text(properties, "name", &f.Name)
	r.name = f.Name
	var d drawing
	if g := o.take("geometry"); g != nil {
		_, gBoxed := members(g)["bbox"]
		kept, err := r.geometry(g, &d, 0)
		if err != nil {
			return err
		}
		if err := r.tidy(&d); err != nil {
			return err
		}
		f.Extra.Geometry = marked(kept, gBoxed)
	}
	f.ID = r.id(properties, o)
	f.Role = r.role(properties, d)
	if f.Role == geo.RolePool && d.comesRound() {
		d.areas, d.lines = [][][]position{{turned(d.lines[0], true)}}, nil
		r.warn(LineAsOutline, "")
	}
	f.Shape, f.Extra.Heights = d.shape()
	if f.Shape.IsZero() { // what described nothing is not kept
		f.Extra.Geometry, boxed = nil, false
	}
	bank, canopy := "", ""
	r.oneOf(properties, "bank", &bank, banks)
	r.oneOf(properties, "canopy", &canopy, canopies)
	f.Bank, f.Canopy = geo.Bank(bank), geo.Canopy(canopy)
	r.zone(properties)
	f.Extra.Members = marked(o.rest(), boxed)
	if f.Role == geo.RolePool && r.pool(f, properties) {
		return nil
	}
	f.Extra.Properties = properties.rest()
	r.beat.Features = append(r.beat.Features, f)
	return nil
}

// marked keeps that an object had a bbox, so that it gets a right one when written.
func marked(kept map[string]json.RawMessage, boxed bool) map[string]json.RawMessage {
	if boxed {
		if kept == nil {
			kept = map[string]json.RawMessage{}
		}
		kept["bbox"] = json.RawMessage("true")
	}
	return kept
}

func (r *reader) properties(o object) object {
	raw := o.take("properties")
	if raw == nil {
		return object{}
	}
	p := members(raw)
	if p == nil {
		r.warn(BadProperty, "list of properties")
		return object{}
	}
	return p
}

// spareID is the property that holds the ID of a feature, and the member that holds
// that of a beat, where the usual places are taken by another program's id.
const spareID = "journal_id"

// id takes the feature's own ID from its properties or its id member. An ID that is
// not of this program stays where it is, and the feature gets a new one.
func (r *reader) id(properties, o object) geo.ID {
	id, ok := hexID(properties["id"])
	if ok {
		delete(properties, "id")
	}
	if outer, okOuter := hexID(o["id"]); okOuter && (!ok || outer == id) {
		id, ok = outer, true
		delete(o, "id")
	}
	if spare, okSpare := hexID(properties[spareID]); okSpare && !ok {
		id, ok = spare, true
	}
	delete(properties, spareID) // ours alone
	switch {
	case !ok:
		return r.newID()
	case r.ids[id]:
		r.warn(SameID, "")
		return r.newID()
	}
	r.ids[id] = true
	return id
}

func (r *reader) role(properties object, d drawing) geo.Role {
	var role string
	r.text(properties, "role", &role)
	if lower := geo.Role(strings.ToLower(role)); lower.Known() {
		return lower
	}
	switch {
	case role != "":
		r.warn(UnknownRole, role)
	case len(d.areas) == 1 && len(d.lines)+len(d.points) == 0:
		r.warn(NoRole, "a pool")
		delete(properties, "role") // one that could not be read
		return geo.RolePool
	default:
		r.warn(NoRole, "a plain drawing")
	}
	return geo.Role(role)
}

// pool adds a feature as a pool and reports whether it is one.
func (r *reader) pool(f geo.Feature, properties object) bool {
	p := geo.Pool{ID: f.ID, Name: f.Name, Bank: f.Bank, Canopy: f.Canopy, Extra: f.Extra}
	switch s := f.Shape; {
	case s.IsZero():
	case len(s.Areas) == 1 && len(s.Lines)+len(s.Points) == 0:
		p.Outline = s.Areas[0]
	default:
		r.warn(NotOneArea, "")
		return false
	}
	if raw, ok := properties["order"]; ok && !isNull(raw) {
		if n, ok := whole(raw); ok {
			p.Order = n
			delete(properties, "order")
		} else {
			r.warn(BadProperty, "order")
		}
	} else {
		delete(properties, "order")
	}
	r.skyline(properties, &p.Skyline)
	r.place(properties, "head", &p.Head)
	r.place(properties, "tail", &p.Tail)
	p.Extra.Properties = properties.rest()
	r.beat.Pools = append(r.beat.Pools, p)
	return true
}

// whole reads a whole number, also one in quotes; 0 says nothing.
func whole(raw json.RawMessage) (int, bool) {
	s, _ := text(raw)
	var x float64
	if json.Unmarshal([]byte(s), &x) != nil || x != math.Trunc(x) || math.Abs(x) > 1e6 || x == 0 {
		return 0, false
	}
	return int(x), true
}

func (r *reader) skyline(properties object, into *geo.Skyline) {
	raw, ok := properties["skyline"]
	if !ok {
		return
	}
	var points [][]units.Degrees
	if json.Unmarshal(raw, &points) != nil {
		r.warn(BadProperty, "skyline")
		return
	}
	var out geo.Skyline
	for _, p := range points {
		if len(p) != 2 {
			r.warn(BadProperty, "skyline")
			return
		}
		out = append(out, geo.SkyPoint{Bearing: p[0], Altitude: p[1]})
	}
	*into = out
	delete(properties, "skyline")
}

var (
	banks = map[string]string{"left": "left", "right": "right", "true left": "left", "true right": "right",
		"left bank": "left", "right bank": "right"}
	canopies = map[string]string{"open": "open", "partly": "partly", "closed": "closed"}
)

// oneOf takes a property that has a few spellings; any other is kept unread.
func (r *reader) oneOf(o object, key string, into *string, spellings map[string]string) {
	raw, ok := o[key]
	if !ok {
		return
	}
	if isNull(raw) || string(raw) == `""` {
		delete(o, key)
		return
	}
	s, _ := text(raw)
	if v, ok := spellings[strings.ToLower(s)]; ok {
		*into = v
		delete(o, key)
		return
	}
	r.warn(BadProperty, key)
}

// text takes a text; anything else is kept unread.
func (r *reader) text(o object, key string, into *string) {
	raw, ok := o[key]
	if !ok {
		return
	}
	if isNull(raw) {
		delete(o, key)
		return
	}
	s, ok := text(raw)
	if !ok {
		r.warn(BadProperty, key)
		return
	}
	*into = s
	delete(o, key)
}

// place takes [longitude, latitude]; anything else is kept unread.
func (r *reader) place(o object, key string, into *geo.Place) {
	raw, ok := o[key]
	if !ok {
		return
	}
	var p position
	if json.Unmarshal(raw, &p) != nil || len(p) != 2 || geo.PlaceOf(orb.Point(p)).Check() != nil {
		r.warn(BadProperty, key)
		return
	}
	*into = geo.PlaceOf(orb.Point{rounded(p[0]), rounded(p[1])})
	if !into.IsZero() {
		delete(o, key)
	}
}

// zone takes a time zone given with a feature: files made by other programs can only
// put it there.
func (r *reader) zone(properties object) {
	var z string
	raw := properties["zone"]
	if r.text(properties, "zone", &z); z == "" {
		return
	}
	switch r.beat.Zone {
	case "":
		r.beat.Zone = z
	case z:
	default:
		r.warn(TwoZones, z)
		properties["zone"] = raw
	}
}
