package sketch

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"

	"gloamline/geo"
)

// lonLatSystems are names under which old files (GeoJSON 2008) declare longitude and
// latitude on WGS84.
var lonLatSystems = []string{"crs84", "epsg:4326", "epsg::4326", "wgs84", "wgs 84"}

// knownGrids names systems that people meet, by what their name ends in.
var knownGrids = map[string]string{
	"27700": "the British national grid, in metres",
	"29902": "the Irish grid, in metres", "29903": "the Irish grid, in metres", "2157": "the Irish Transverse Mercator grid, in metres",
	"3857":  "web map tiles, in metres",
	"25832": "a UTM zone, in metres", "25833": "a UTM zone, in metres", "32630": "a UTM zone, in metres",
}

// grid refuses a crs member that names anything but longitude and latitude.
func (r *reader) grid(raw json.RawMessage) *Error {
	if raw == nil {
		return nil
	}
	o := members(raw)
	properties := members(o["properties"])
	name, _ := text(properties["name"])
	if code, ok := text(properties["code"]); ok && name == "" { // as written before 2008
		name = "EPSG:" + code
	}
	lower := strings.ToLower(name)
	for _, s := range lonLatSystems {
		if strings.HasSuffix(lower, s) {
			return nil
		}
	}
	if name == "" {
		return refuse(OtherGrid, "the file has a crs member that names no coordinate system; GeoJSON uses longitude and latitude on WGS84 and has no crs member")
	}
	return refuse(OtherGrid, "the file is in the coordinate system %s%s; save it again as longitude and latitude on WGS84 (EPSG:4326)", quote(name), gridName(lower))
}

func gridName(name string) string {
	for code, words := range knownGrids {
		if strings.HasSuffix(name, ":"+code) {
			return ", " + words
		}
	}
	return ""
}

// otherGrid refuses coordinates that cannot be degrees, with the first one found.
func (r *reader) otherGrid(p position) *Error {
	at := fmt.Sprintf("%s, %s", number(p[0]), number(p[1]))
	why := "it is not longitude and latitude on WGS84 but another grid; save the file again as EPSG:4326"
	switch {
	case p[0] >= 0 && p[0] <= 700_000 && p[1] >= 0 && p[1] <= 1_300_000 && max(p[0], p[1]) > 1000:
		why = "it looks like a national grid in metres, such as the British one (EPSG:27700); save the file again as longitude and latitude (EPSG:4326)"
	case math.Abs(p[0]) <= 90 && math.Abs(p[1]) <= 180:
		why = "latitude and longitude may be swapped; GeoJSON has longitude first"
	}
	return refuse(OtherGrid, "%s has the coordinate %s: %s", r.what(), at, why)
}

// swapped suspects that latitude stands first: sea trout and brown trout live from
// about 35 to 72 degrees north and, brought there, from 33 to 56 south (from memory;
// wide on purpose). A file that lies elsewhere but would not with its coordinates
// exchanged gets a warning.
func swapped(b geo.Beat) bool {
	box := b.Bound()
	if box.IsEmpty() {
		return false
	}
	c := box.Center()
	trout := func(lat float64) bool { return lat >= 35 && lat <= 72 || lat <= -33 && lat >= -56 }
	return !trout(c[1]) && trout(c[0])
}

func quote(s string) string {
	if r := []rune(s); len(r) > 80 {
		s = string(r[:80]) + "..."
	}
	return "“" + s + "”"
}
