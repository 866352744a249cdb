package sketch

import (
	"bytes"
	"encoding/json"
	"io"
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"gloamline/geo"
)

// Write writes a beat as a GeoJSON FeatureCollection, one feature a line, pools first.
// The error is that of the writer, or an *Error when the beat holds something that
// GeoJSON cannot, such as an outline of two corners.
func Write(out io.Writer, b geo.Beat) error {
	text, err := collection(b)
	if err != nil {
		return err
	}
	_, err = out.Write(text)
	return err
}

func collection(b geo.Beat) ([]byte, error) {
	var features []json.RawMessage
	var all positions
	add := func(raw json.RawMessage, p positions, err error) error {
		features, all = append(features, raw), append(all, p...)
		return err
	}
	for _, p := range b.Pools {
		if err := add(pool(p)); err != nil {
			return nil, err
		}
	}
	for _, f := range b.Features {
		if err := add(feature(f, func(*ordered) {})); err != nil {
			return nil, err
		}
	}
	var o ordered
	o.value("type", "FeatureCollection")
	o.raw("bbox", all.bbox())
	o.value("name", b.Name)
	o.value("river", b.River.Name)
	o.value("river_id", b.River.ID.String())
	o.value("zone", b.Zone)
	if _, foreign := b.Extra.Members["id"]; foreign {
		o.value(spareID, b.ID.String())
	} else {
		o.value("id", b.ID.String())
	}
	if err := place(&o, "place", b.At); err != nil {
		return nil, err
	}
	o.extra(b.Extra.Members, "crs", "bbox", "features", "geometry", "properties", "coordinates", "geometries")
	head, err := o.done()
	if err != nil {
		return nil, notWritable("the beat", err)
	}
	var out bytes.Buffer
	out.Write(bytes.TrimSuffix(head, []byte("}")))
	out.WriteString(",\"features\":[")
	for i, f := range features {
		if i > 0 {
			out.WriteByte(',')
		}
		out.WriteByte('\n')
		out.Write(f)
	}
	out.WriteString("\n]}\n")
	return out.Bytes(), nil
}

func notWritable(what string, err error) *Error {
	return &Error{NotWritable, what + " holds something that GeoJSON cannot", err}
}

func pool(p geo.Pool) (json.RawMessage, positions, error) {
	f := geo.Feature{ID: p.ID, Role: geo.RolePool, Name: p.Name, Bank: p.Bank, Canopy: p.Canopy, Extra: p.Extra}
	if len(p.Outline) > 0 {
		f.Shape = geo.AreaShape(p.Outline)
	}
	var bad error
	raw, all, err := feature(f, func(o *ordered) {
		if p.Order != 0 {
			o.value("order", p.Order)
		}
		if len(p.Skyline) > 0 {
			o.value("skyline", p.Skyline)
		}
		for _, m := range []struct {
			key string
			at  geo.Place
		}{{"head", p.Head}, {"tail", p.Tail}} {
			if err := place(o, m.key, m.at); err != nil {
				bad = err
			}
		}
	})
	if bad != nil {
		err = bad
	}
	return raw, all, err
}

// feature writes one feature; more adds properties of its own before the kept ones.
func feature(f geo.Feature, more func(*ordered)) (json.RawMessage, positions, error) {
	what := f.Name
	if what == "" {
		what = "a " + string(f.Role)
	}
	w := &shapeWriter{what: what, heights: newHeights(f.Extra.Heights)}
	geometry, err := w.geometry(f)
	if err != nil {
		return nil, nil, err
	}
	var properties ordered
	properties.value("role", string(f.Role))
	properties.value("name", f.Name)
	_, foreign := f.Extra.Properties["id"]
	_, taken := f.Extra.Members["id"]
	switch {
	case !foreign:
		properties.value("id", f.ID.String())
	case taken:
		properties.value(spareID, f.ID.String())
	}
	properties.value("bank", string(f.Bank))
	properties.value("canopy", string(f.Canopy))
	more(&properties)
	properties.extra(f.Extra.Properties)
	text, err := properties.done()
	if err != nil {
		return nil, nil, notWritable(what, err)
	}
	var o ordered
	o.value("type", "Feature")
	if !taken {
		o.value("id", f.ID.String())
	}
	if _, boxed := f.Extra.Members["bbox"]; boxed {
		o.raw("bbox", w.all.bbox())
	}
	o.raw("properties", text)
	o.raw("geometry", geometry)
	o.extra(f.Extra.Members, "crs", "bbox", "features", "coordinates", "geometries")
	raw, err := o.done()
	if err != nil {
		return nil, nil, notWritable(what, err)
	}
	return raw, w.all, nil
}

func place(o *ordered, key string, at geo.Place) error {
	if at.IsZero() {
		return nil
	}
	if err := at.Check(); err != nil {
		return notWritable("the "+key, err)
	}
	p := at.LonLat()
	o.raw(key, json.RawMessage("["+number(rounded(p[0]))+","+number(rounded(p[1]))+"]"))
	return nil
}

// shapeWriter writes the geometry of one feature.
type shapeWriter struct {
	what    string
	heights *heights
	all     positions
	err     *Error
}

func (w *shapeWriter) geometry(f geo.Feature) (json.RawMessage, error) {
	s := f.Shape
	if s.IsZero() {
		return json.RawMessage("null"), nil
	}
	var parts []json.RawMessage
	add := func(n int, kind, coordinates string) {
		switch {
		case n == 0:
			return
		case n > 1:
			kind, coordinates = "Multi"+kind, "["+coordinates+"]"
		}
		parts = append(parts, json.RawMessage(`"type":"`+kind+`","coordinates":`+coordinates))
	}
	add(len(s.Points), "Point", w.list(s.Points))
	add(len(s.Lines), "LineString", join(s.Lines, w.line))
	add(len(s.Areas), "Polygon", join(s.Areas, w.polygon))
	if w.err != nil {
		return nil, w.err
	}
	body := parts[0]
	if len(parts) > 1 {
		var b bytes.Buffer
		b.WriteString(`"type":"GeometryCollection","geometries":[`)
		for i, p := range parts {
			if i > 0 {
				b.WriteByte(',')
			}
			b.WriteString("{" + string(p) + "}")
		}
		b.WriteByte(']')
		body = b.Bytes()
	}
	var o ordered
	if _, boxed := f.Extra.Geometry["bbox"]; boxed {
		o.raw("bbox", w.all.bbox())
	}
	o.extra(f.Extra.Geometry, "type", "crs", "bbox", "features", "geometry", "properties", "coordinates", "geometries")
	more, err := o.done()
	if err != nil {
		return nil, notWritable(w.what, err)
	}
	if len(more) > 2 {
		body = append(append(slices.Clone(body), ','), more[1:len(more)-1]...)
	}
	return json.RawMessage("{" + string(body) + "}"), nil
}

func join[T any](all []T, f func(T) string) string {
	var out []string
	for _, v := range all {
		out = append(out, f(v))
	}
	return strings.Join(out, ",")
}

func (w *shapeWriter) line(l orb.LineString) string {
	if len(l) < 2 && w.err == nil {
		w.err = refuse(NotWritable, "%s has a line of fewer than two points, which GeoJSON cannot hold", w.what)
	}
	return "[" + w.list(l) + "]"
}

func (w *shapeWriter) polygon(a orb.Polygon) string {
	if len(a) == 0 && w.err == nil {
		w.err = refuse(NotWritable, "%s has an area without an outline, which GeoJSON cannot hold", w.what)
	}
	i := -1
	return "[" + join(a, func(r orb.Ring) string {
		i++
		return "[" + w.list(w.ring(r, i == 0)) + "]"
	}) + "]"
}

// ring returns a ring closed and turned the right way, rounded; the beat is not changed.
func (w *shapeWriter) ring(r orb.Ring, outline bool) orb.Ring {
	out := make(orb.Ring, len(r), len(r)+1)
	for i, p := range r {
		out[i] = orb.Point{rounded(p[0]), rounded(p[1])}
	}
	if len(out) > 0 && out[0] != out[len(out)-1] {
		out = append(out, out[0])
	}
	if len(out) < 4 && w.err == nil {
		w.err = refuse(NotWritable, "%s has an outline of fewer than three corners, which GeoJSON cannot hold", w.what)
	}
	if a := area(out); a != 0 && (a > 0) != outline {
		out.Reverse()
	}
	return out
}

// list writes positions with their heights.
func (w *shapeWriter) list(points []orb.Point) string {
	return join(points, func(p orb.Point) string {
		if err := geo.PlaceOf(p).Check(); err != nil && w.err == nil {
			w.err = &Error{NotWritable, w.what + " has a position that is not on the earth", err}
		}
		full := append([]float64{rounded(p[0]), rounded(p[1])}, w.heights.of(p)...)
		w.all = append(w.all, full)
		return "[" + join(full, number) + "]"
	})
}
