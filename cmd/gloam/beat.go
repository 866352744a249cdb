package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"gloamline/geo"
	"gloamline/geo/sketch"
	"gloamline/timeline/light"
)

// readBeat reads a beat from a GeoJSON file. Remarks of the reader go to remarks, one
// sentence a line.
func readBeat(name string, remarks io.Writer) (geo.Beat, error) {
	f, err := os.Open(name)
	if err != nil {
		return geo.Beat{}, fmt.Errorf("cannot open the beat: %w", err)
	}
	defer f.Close()
	beat, warnings, err := sketch.Read(f)
	if err != nil {
		return geo.Beat{}, fmt.Errorf("%s: %w", name, err)
	}
	for _, w := range warnings {
		fmt.Fprintf(remarks, "%s: %s.\n", name, w)
	}
	return beat, nil
}

// findPool returns the pool of a name; letters count the same large and small.
func findPool(beat geo.Beat, name string) (geo.Pool, error) {
	var found []geo.Pool
	var names []string
	for _, p := range beat.InOrder() {
		if strings.EqualFold(p.Name, name) {
			found = append(found, p)
		}
		if p.Name != "" {
			names = append(names, p.Name)
		}
	}
	switch {
	case len(found) == 1:
		return found[0], nil
	case len(found) > 1:
		return geo.Pool{}, fmt.Errorf("the beat has %d pools named %q; rename one to tell them apart", len(found), name)
	case len(names) == 0:
		return geo.Pool{}, fmt.Errorf("the beat has no pool with a name")
	}
	return geo.Pool{}, fmt.Errorf("the beat has no pool %q; it has %s", name, strings.Join(names, ", "))
}

// shadeOf returns what stands between the sky and a pool.
func shadeOf(pool geo.Pool) (light.Shade, error) {
	var points []light.SkylinePoint
	for _, p := range pool.Skyline {
		points = append(points, light.SkylinePoint{Bearing: p.Bearing, Altitude: p.Altitude})
	}
	line, err := light.NewSkyline(points)
	if err != nil {
		return light.Shade{}, err
	}
	canopy, err := light.ParseCanopy(string(pool.Canopy))
	return light.Shade{Skyline: line, Canopy: canopy}, err
}
