package sketch

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"
)

// strict checks written GeoJSON against RFC 7946 by reading it anew, without any of
// the code under test. It knows only what this package writes.
func strict(data []byte) error {
	if bytes.HasPrefix(data, []byte("\xef\xbb\xbf")) || !utf8.Valid(data) {
		return fmt.Errorf("11.1: not UTF-8, or with a byte order mark")
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	var top map[string]any
	if err := d.Decode(&top); err != nil {
		return err
	}
	if _, err := d.Token(); err != io.EOF {
		return fmt.Errorf("more than one JSON text")
	}
	if top["type"] != "FeatureCollection" {
		return fmt.Errorf("3.3: type %v", top["type"])
	}
	if err := without(top, "crs", "coordinates", "geometries", "geometry", "properties"); err != nil {
		return err
	}
	features, ok := top["features"].([]any)
	if !ok {
		return fmt.Errorf("3.3: features is no array")
	}
	var all [][]float64
	for i, f := range features {
		p, err := strictFeature(f)
		if err != nil {
			return fmt.Errorf("feature %d: %w", i, err)
		}
		all = append(all, p...)
	}
	if len(all) > 0 && top["bbox"] == nil {
		return fmt.Errorf("no bbox")
	}
	return strictBox(top["bbox"], all)
}

func without(o map[string]any, keys ...string) error {
	for _, k := range keys {
		if _, ok := o[k]; ok {
			return fmt.Errorf("4 or 7.1: member %s does not belong here", k)
		}
	}
	return nil
}

func strictFeature(v any) ([][]float64, error) {
	f, ok := v.(map[string]any)
	if !ok || f["type"] != "Feature" {
		return nil, fmt.Errorf("3.2: not a Feature")
	}
	if err := without(f, "crs", "coordinates", "geometries", "features"); err != nil {
		return nil, err
	}
	geometry, ok := f["geometry"]
	if !ok {
		return nil, fmt.Errorf("3.2: no geometry member")
	}
	if _, ok := f["properties"].(map[string]any); !ok && f["properties"] != nil {
		return nil, fmt.Errorf("3.2: properties is neither object nor null")
	}
	if _, ok := f["properties"]; !ok {
		return nil, fmt.Errorf("3.2: no properties member")
	}
	if id, ok := f["id"]; ok {
		switch id.(type) {
		case string, json.Number:
		default:
			return nil, fmt.Errorf("3.2: id is neither string nor number: %v", id)
		}
	}
	if geometry == nil {
		return nil, strictBox(f["bbox"], nil)
	}
	all, err := strictGeometry(geometry)
	if err != nil {
		return nil, err
	}
	return all, strictBox(f["bbox"], all)
}

func strictGeometry(v any) ([][]float64, error) {
	g, ok := v.(map[string]any)
	if !ok {
		return nil, fmt.Errorf("3.1: geometry is no object")
	}
	if err := without(g, "crs", "geometry", "properties", "features"); err != nil {
		return nil, err
	}
	kind, _ := g["type"].(string)
	if kind == "GeometryCollection" {
		list, ok := g["geometries"].([]any)
		if !ok || g["coordinates"] != nil {
			return nil, fmt.Errorf("3.1.8: wrong collection")
		}
		var all [][]float64
		for _, x := range list {
			p, err := strictGeometry(x)
			if err != nil {
				return nil, err
			}
			all = append(all, p...)
		}
		return all, strictBox(g["bbox"], all)
	}
	depth := map[string]int{"Point": 0, "MultiPoint": 1, "LineString": 1, "MultiLineString": 2, "Polygon": 2, "MultiPolygon": 3}
	n, ok := depth[kind]
	if !ok || g["geometries"] != nil {
		return nil, fmt.Errorf("1.4: type %q", kind)
	}
	var all [][]float64
	if err := strictCoordinates(g["coordinates"], n, kind, 0, &all); err != nil {
		return nil, err
	}
	return all, strictBox(g["bbox"], all)
}

func strictCoordinates(v any, depth int, kind string, index int, all *[][]float64) error {
	list, ok := v.([]any)
	if !ok {
		return fmt.Errorf("3.1: coordinates are no array")
	}
	if depth == 0 {
		p, err := strictPosition(list)
		*all = append(*all, p)
		return err
	}
	from := len(*all)
	for i, x := range list {
		if err := strictCoordinates(x, depth-1, kind, i, all); err != nil {
			return err
		}
	}
	switch {
	case len(list) == 0:
		return fmt.Errorf("3.1: empty coordinates")
	case depth == 1 && strings.HasSuffix(kind, "LineString") && len(list) < 2:
		return fmt.Errorf("3.1.4: line of one position")
	case depth == 1 && strings.HasSuffix(kind, "Polygon"):
		return strictRing((*all)[from:], index == 0)
	}
	return nil
}

func strictPosition(list []any) ([]float64, error) {
	if len(list) < 2 {
		return nil, fmt.Errorf("3.1.1: position of %d numbers", len(list))
	}
	var p []float64
	for i, x := range list {
		n, ok := x.(json.Number)
		if !ok {
			return nil, fmt.Errorf("3.1.1: %v is no number", x)
		}
		if _, frac, _ := strings.Cut(n.String(), "."); i < 2 && (len(frac) > 7 || strings.ContainsAny(n.String(), "eE")) {
			return nil, fmt.Errorf("11.2: %s has more than 7 decimals", n)
		}
		f, err := n.Float64()
		if err != nil {
			return nil, err
		}
		p = append(p, f)
	}
	if math.Abs(p[0]) > 180 || math.Abs(p[1]) > 90 {
		return nil, fmt.Errorf("4: %v is not on WGS84", p)
	}
	return p, nil
}

func strictRing(ring [][]float64, exterior bool) error {
	if len(ring) < 4 {
		return fmt.Errorf("3.1.6: ring of %d positions", len(ring))
	}
	if fmt.Sprint(ring[0][:2]) != fmt.Sprint(ring[len(ring)-1][:2]) {
		return fmt.Errorf("3.1.6: ring not closed")
	}
	var sum float64
	for i := 1; i < len(ring); i++ {
		x1, y1 := short(ring[i-1][0]-ring[0][0]), ring[i-1][1]-ring[0][1]
		x2, y2 := short(ring[i][0]-ring[0][0]), ring[i][1]-ring[0][1]
		sum += x1*y2 - x2*y1
	}
	if math.Abs(sum) > 1e-9 && (sum > 0) != exterior {
		return fmt.Errorf("3.1.6: ring the wrong way round (exterior %v)", exterior)
	}
	return nil
}

func short(d float64) float64 {
	if d > 180 {
		return d - 360
	}
	if d < -180 {
		return d + 360
	}
	return d
}

func strictBox(v any, all [][]float64) error {
	if v == nil {
		return nil
	}
	list, ok := v.([]any)
	if !ok || (len(list) != 4 && len(list) != 6) || len(all) == 0 {
		return fmt.Errorf("5: bbox %v of %d positions", v, len(all))
	}
	var b []float64
	for _, x := range list {
		f, err := x.(json.Number).Float64()
		if err != nil {
			return err
		}
		b = append(b, f)
	}
	w, s, e, n := b[0], b[1], b[len(b)/2], b[len(b)/2+1]
	south, north := math.Inf(1), math.Inf(-1)
	for _, p := range all {
		south, north = min(south, p[1]), max(north, p[1])
		if inside := w <= p[0] && p[0] <= e || w > e && (p[0] >= w || p[0] <= e); !inside {
			return fmt.Errorf("5: %v east or west of bbox %v", p, b)
		}
		if len(b) == 6 && (len(p) < 3 || p[2] < b[2] || p[2] > b[5]) {
			return fmt.Errorf("5: height of %v outside bbox %v", p, b)
		}
	}
	if s != south || n != north {
		return fmt.Errorf("5: bbox %v, want south %v north %v", b, south, north)
	}
	return nil
}
