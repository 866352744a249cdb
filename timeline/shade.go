package timeline

import (
	"errors"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline/light"
	"gloamline/timeline/sky"
)

// placeOf returns where the beat lies: one position serves all its pools, since a
// kilometre moves sun and moon by 0.009 degrees.
func placeOf(b geo.Beat) (sky.Place, error) {
	at := b.Place()
	p := sky.Place{Lat: at.Lat, Lon: at.Lon}
	err := p.Check()
	if at.IsZero() {
		err = errors.New("the beat has no place yet: draw it, or say where it is")
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
func poolNight(p geo.Pool, open *light.OpenSky, slate *Slate) (PoolNight, error) {
	shade, err := shadeOf(p)
	if err != nil {
		return PoolNight{}, err
	}
	out := PoolNight{Pool: p, Curve: curveOf(slate.under(open, shade))}
	for _, s := range open.MoonOver(shade.Skyline) {
		out.MoonOver = append(out.MoonOver, Interval{From: s.From, To: s.To})
	}
	return out, nil
}
