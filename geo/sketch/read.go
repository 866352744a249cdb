package sketch

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"unicode/utf8"

	"gloamline/geo"
)

// MaxBytes is the size of the largest file that is read: a beat drawn to the
// centimetre takes a hundredth of it.
const MaxBytes = 16 << 20

// MaxPositions is how many positions a file may have: a beat needs about a hundred for
// each pool, and more would make checking it slow.
const MaxPositions = 50_000

// Read reads a beat from GeoJSON. The warnings say what was put right or left aside;
// geo.Check says what is wrong with the beat itself. The error is an *Error.
func Read(in io.Reader) (geo.Beat, []Warning, error) {
	data, err := io.ReadAll(io.LimitReader(in, MaxBytes+1))
	if err != nil {
		return geo.Beat{}, nil, &Error{Unreadable, "the file could not be read to its end", err}
	}
	if len(data) > MaxBytes {
		return geo.Beat{}, nil, refuse(TooBig, "the file is larger than 16 MB, which no sketch of a beat needs")
	}
	r := &reader{at: -1, ids: map[geo.ID]bool{}}
	if bad := r.file(data); bad != nil {
		return geo.Beat{}, nil, bad
	}
	return r.beat, r.warnings, nil
}

// reader holds what was read so far and which feature it is at.
type reader struct {
	beat     geo.Beat
	warnings []Warning
	ids      map[geo.ID]bool
	at       int // feature being read, -1 for the file
	name     string
	count    int // positions so far
}

func (r *reader) warn(kind WarningKind, detail string) {
	r.warnings = append(r.warnings, Warning{kind, r.at, r.name, detail})
}

func (r *reader) what() string {
	return Warning{Kind: "", Feature: r.at, Name: r.name}.subject()
}

func (r *reader) bad(has string) *Error {
	return refuse(NotGeoJSON, "%s has %s", r.what(), has)
}

// forbid takes out members that the standard keeps for other types (section 7.1).
func (r *reader) forbid(o object, keys ...string) {
	for _, k := range keys {
		if _, ok := o[k]; ok {
			delete(o, k)
			r.warn(MemberLeftOut, k)
		}
	}
}

var byteOrderMark = []byte("\xef\xbb\xbf")

func (r *reader) file(data []byte) *Error {
	if bytes.HasPrefix(data, []byte{0xff, 0xfe}) || bytes.HasPrefix(data, []byte{0xfe, 0xff}) {
		return refuse(NotJSON, "the file is UTF-16 text; save it again as UTF-8")
	}
	data = bytes.TrimPrefix(data, byteOrderMark)
	if !utf8.Valid(data) {
		data = bytes.ToValidUTF8(data, []byte("\ufffd"))
		r.warn(NotText, "")
	}
	var top json.RawMessage
	if err := json.Unmarshal(data, &top); err != nil {
		return notJSON(data, err)
	}
	o := members(top)
	kind, _ := text(o["type"])
	switch kind {
	case "FeatureCollection":
		return r.collectionOfFeatures(o)
	case "Feature":
		return r.wrapped(top)
	case "Point", "MultiPoint", "LineString", "MultiLineString", "Polygon", "MultiPolygon", "GeometryCollection":
		return r.wrapped(top)
	case "Topology":
		return refuse(NotGeoJSON, "the file is TopoJSON, another format; save it as GeoJSON")
	case "":
		return refuse(NotGeoJSON, "the file is JSON but not GeoJSON: it has no type")
	}
	return refuse(NotGeoJSON, "the file is JSON but not GeoJSON: its type is %s", quote(kind))
}

func notJSON(data []byte, err error) *Error {
	var syntax *json.SyntaxError
	if len(bytes.TrimSpace(data)) == 0 {
		return refuse(NotJSON, "the file is empty")
	}
	if errors.As(err, &syntax) {
		line := 1 + bytes.Count(data[:min(int(syntax.Offset), len(data))], []byte("\n"))
		return &Error{NotJSON, "the file is not JSON: it cannot be read on from line " + number(float64(line)), err}
	}
	return &Error{NotJSON, "the file is not JSON", err}
}

// wrapped reads a file that holds a single Feature or geometry.
func (r *reader) wrapped(raw json.RawMessage) *Error {
	r.beat.ID = r.newID()
	if err := r.feature(0, raw); err != nil {
		return err
	}
	r.finish()
	return nil
}

func (r *reader) collectionOfFeatures(o object) *Error {
	delete(o, "type")
	delete(o, "bbox")
	if err := r.grid(o.take("crs")); err != nil {
		return err
	}
	raw := o.take("features")
	var features []json.RawMessage
	if len(raw) > 0 && json.Unmarshal(raw, &features) != nil {
		return refuse(NotGeoJSON, "the file has features that are no list")
	}
	r.members(o)
	if len(features) == 0 {
		r.warn(NoFeatures, "")
	}
	for i, f := range features {
		if err := r.feature(i, f); err != nil {
			return err
		}
	}
	r.finish()
	return nil
}

// members reads what describes the beat as a whole.
func (r *reader) members(o object) {
	b := &r.beat
	r.text(o, "name", &b.Name)
	r.text(o, "river", &b.River.Name)
	r.text(o, "zone", &b.Zone)
	if id, ok := hexID(o["river_id"]); ok {
		b.River.ID = id
		delete(o, "river_id")
	}
	b.ID = geo.NewID()
	if spare, ok := hexID(o[spareID]); ok {
		b.ID = spare
	}
	delete(o, spareID) // ours alone
	if id, ok := hexID(o["id"]); ok {
		b.ID = id
		delete(o, "id")
	}
	r.ids[b.ID] = true
	r.place(o, "place", &b.At)
	r.forbid(o, "coordinates", "geometries", "geometry", "properties")
	b.Extra.Members = o.rest()
}

func (r *reader) finish() {
	r.at, r.name = -1, ""
	if r.beat.Zone != "" { // found with a feature, while the file's own could not be read
		delete(r.beat.Extra.Members, "zone")
		if len(r.beat.Extra.Members) == 0 {
			r.beat.Extra.Members = nil
		}
	}
	if swapped(r.beat) {
		r.warn(MaybeSwapped, r.beat.Place().String())
	}
}

// newID returns an ID that nothing in the file has.
func (r *reader) newID() geo.ID {
	for {
		if id := geo.NewID(); !r.ids[id] {
			r.ids[id] = true
			return id
		}
	}
}

// hexID reads an ID as this program writes it; any other text is somebody else's.
func hexID(raw json.RawMessage) (geo.ID, bool) {
	var s string
	if len(raw) == 0 || json.Unmarshal(raw, &s) != nil {
		return geo.ID{}, false
	}
	id, err := geo.ParseID(s)
	return id, err == nil && !id.IsZero()
}
