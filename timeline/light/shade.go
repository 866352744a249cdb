package light

import (
	"fmt"

	"gloamline/journal/units"
)

// Canopy says how far trees stand over the water.
type Canopy uint8

// The canopies and the share of light they let through, round figures (common
// practice: open 1, partly 0.3-0.7, closed broadleaf 0.03-0.2).
const (
	Open   Canopy = iota // 1
	Partly               // 0.5
	Closed               // 0.1
)

var canopyNames = [...]string{"open", "partly", "closed"}

// String returns open, partly or closed.
func (c Canopy) String() string {
	if int(c) < len(canopyNames) {
		return canopyNames[c]
	}
	return fmt.Sprintf("canopy %d", uint8(c))
}

// ParseCanopy reads open, partly or closed; nothing is open.
func ParseCanopy(s string) (Canopy, error) {
	if s == "" {
		return Open, nil
	}
	for i, name := range canopyNames {
		if s == name {
			return Canopy(i), nil
		}
	}
	return Open, fmt.Errorf("trees are open, partly or closed, not %q", s)
}

// share is the part of the light that comes through.
func (c Canopy) share() float64 {
	switch c {
	case Partly:
		return 0.5
	case Closed:
		return 0.1
	default:
		return 1
	}
}

// spread is the uncertainty that the trees add, in powers of ten.
func (c Canopy) spread() float64 {
	switch c {
	case Partly:
		return 0.15
	case Closed:
		return 0.30
	default:
		return 0.05
	}
}

// Shade is what stands between the sky and one pool. The zero Shade is open ground.
type Shade struct {
	Skyline Skyline
	Canopy  Canopy
	// Glow is the light of towns on open ground, lux: it comes with the sky but is
	// not dimmed by cloud, which throws it back.
	Glow units.Lux
}

// discRadius is the radius of the moon's disc with which it slides behind the
// skyline, degrees.
const discRadius = 0.26

// over is how much of the moon clears the skyline, 0 to 1, from its refracted
// altitude and the skyline's: a soft edge half a degree wide.
func over(seen, skyline float64) float64 {
	return max(0, min(1, (seen-skyline+discRadius)/(2*discRadius)))
}

// screen is a shade made ready for a whole trace.
type screen struct {
	trees, view, glow float64
	spread2           float64
}

func (s Shade) screen() screen {
	return screen{
		trees: s.Canopy.share(), view: s.Skyline.View(), glow: max(0, float64(s.Glow)),
		spread2: s.Canopy.spread() * s.Canopy.spread(),
	}
}

// fall returns what reaches the water of the clear light of sun and moon and of the
// night sky, lux. direct is the beam's part of the moonlight, seen the moon's
// refracted altitude and line the skyline's altitude below it, degrees. Scattered light
// comes from the open part of the sky, the beam only past the skyline.
func (p *screen) fall(sun, moon, direct, seen, line float64, c *veiled) (s, m, n float64) {
	open := p.trees * p.view
	s = open * c.through * sun
	n = open * (c.through*nightSky + p.glow)
	part := c.through * p.view
	if direct > 0 {
		part = (1-direct)*part + direct*(c.open*over(seen, line)+c.sky*p.view)
	}
	return s, p.trees * moon * part, n
}
