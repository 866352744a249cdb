package light

import "gloamline/journal/units"

// nightSky is the moonless clear sky of a dark place, lux: airglow and stars. Figures
// in use run from 2e-4 to 1e-3.
const nightSky = 6e-4

// Components is light by where it comes from.
type Components struct {
	Sun, Moon, Night units.Lux
}

// Total is their sum.
func (c Components) Total() units.Lux { return c.Sun + c.Moon + c.Night }

// Clear returns the light of a clear open sky from the geometric altitudes of sun
// and moon, the phase angle (0 full) and the moon's equatorial horizontal parallax, all in
// degrees.
func Clear(sunAlt, moonAlt, phase, parallax units.Degrees) Components {
	return Components{
		Sun:   Sunlight(sunAlt),
		Moon:  Moonlight(moonAlt, phase, parallax),
		Night: nightSky,
	}
}
