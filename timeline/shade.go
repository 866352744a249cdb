package timeline

import (
	"errors"
	"slices"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline/light"
	"gloamline/timeline/sky"
)

// placeOf returns where the beat lies: one position serves all its pools, since a
// kilometre moves sun and moon by 0.009 degrees.
func placeOf(b geo.Beat) (sky.Place, error) {
	at, err := b.Place(), error(nil)
	if b.Bound().IsEmpty() {
		err = errors.New("the sketch of the beat is empty, so nobody knows where it lies")
	}
	p := sky.Place{Lat: units.Degrees(at.Lat), Lon: units.Degrees(at.Lon)}
	if err == nil {
		err = p.Check()
	}
	if err != nil {
		return p, &journal.Error{Op: "set the night in its light", Kind: journal.Invalid, Field: "beat", Err: err}
	}
	return p, nil
}

// shadeOf returns what stands between the sky and a pool. A skyline below the
// level, as down a valley, counts as level: the model of the sky ends there.
func shadeOf(p geo.Pool) (light.Shade, error) {
	points := make([]light.SkylinePoint, 0, len(p.Skyline))
	for _, s := range p.Skyline {
		points = append(points, light.SkylinePoint{Bearing: s.Bearing, Altitude: max(0, s.Altitude)})
	}
	line, err := light.NewSkyline(points)
	if err != nil {
		return light.Shade{}, &journal.Error{Op: "set the night in its light", Kind: journal.Invalid, Field: "skyline", ID: p.ID, Err: err}
	}
	canopy, err := light.ParseCanopy(string(p.Canopy))
	if err != nil {
		return light.Shade{}, &journal.Error{Op: "set the night in its light", Kind: journal.Invalid, Field: "canopy", ID: p.ID, Err: err}
	}
	return light.Shade{Skyline: line, Canopy: canopy}, nil
}

// poolNight sets one pool in its own light.
func poolNight(p geo.Pool, open *light.OpenSky) (PoolNight, error) {
	shade, err := shadeOf(p)
	if err != nil {
		return PoolNight{}, err
	}
	out := PoolNight{Pool: p, Curve: curveOf(open.Under(shade))}
	for _, s := range light.MoonOver(open.Grid.Span, open.Grid.Place, shade.Skyline) {
		out.MoonOver = append(out.MoonOver, Interval{From: s.From, To: s.To})
	}
	return out, nil
}

// poolsOf returns the pools in fishing order, as drawn where two have the same.
func poolsOf(b geo.Beat) []geo.Pool {
	out := slices.Clone(b.Pools)
	slices.SortStableFunc(out, func(a, b geo.Pool) int { return a.Order - b.Order })
	return out
}
