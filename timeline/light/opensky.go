package light

import (
	"math"

	"gloamline/journal/units"
	"gloamline/timeline/sky"
)

// OpenSky is the light of one place and span before any shade, step by step. Each pool
// only adds its own shade to it, so the costly part is done once for a beat.
type OpenSky struct {
	Grid    *sky.Grid
	Weather *Weather
	// NearEclipse is set when the moon is up while the Earth's shadow may touch it.
	NearEclipse bool

	sun, moon []float64 // clear open sky, lux
	share     []float64 // direct part of moon
	seen      []float64 // refracted altitude of the moon, degrees
	sunSpread []float64
	cloud     []veiled

	column []float64 // behind them all but cloud
}

// veiled is the veil of one step made ready for multiplying.
type veiled struct {
	through   float64 // transmittance
	open, sky float64 // beam
	spread2   float64
}

// NewOpenSky computes the clear light of every step of the grid and the weather's part in
// it. A nil weather is a night without notes.
func NewOpenSky(g *sky.Grid, w *Weather) *OpenSky { return OpenSkyInto(nil, g, w) }

// OpenSkyInto is NewOpenSky with the memory of one no longer needed: its columns are
// overwritten.
func OpenSkyInto(s *OpenSky, g *sky.Grid, w *Weather) *OpenSky {
	n := g.Len()
	if s == nil {
		s = new(OpenSky)
	}
	column, cloud := s.column, s.cloud
	if cap(column) < 5*n || cap(cloud) < n {
		column, cloud = make([]float64, 5*n), make([]veiled, n)
	}
	column = column[:5*n]
	part := func(i int) []float64 { return column[i*n : (i+1)*n : (i+1)*n] }
	*s = OpenSky{
		Grid: g, Weather: w,
		sun: part(0), moon: part(1), share: part(2), seen: part(3), sunSpread: part(4),
		cloud: cloud[:n], column: column,
	}
	flat := w == nil || len(w.knots) == 0
	for i := range n {
		sunAlt, moonAlt := float64(g.SunAlt[i]), float64(g.MoonAlt[i])
		s.sun[i] = twilight(sunAlt)
		s.sunSpread[i] = sunSpread(sunAlt)
		if moonAlt > floorAltitude {
			curve := twilight(moonAlt)
			s.moon[i] = moonlight(curve, float64(g.PhaseAngle[i]), float64(sky.Parallax(g.MoonKM[i])))
			s.share[i] = directShare(moonAlt, curve)
			s.seen[i] = moonAlt + float64(sky.Refraction(g.MoonAlt[i]))
			if s.seen[i] > -discRadius && NearEclipse(g.PhaseAngle[i]) {
				s.NearEclipse = true
			}
		} else {
			s.moon[i], s.share[i], s.seen[i] = 0, 0, moonAlt
		}
		if flat {
			s.cloud[i] = unnoted.ready()
		} else {
			s.cloud[i] = w.at(g.Time(i)).ready()
		}
	}
	return s
}

func (v veil) ready() veiled {
	return veiled{through: math.Exp(v.logT), open: v.open, sky: v.beam.sky, spread2: v.spread * v.spread}
}

// Clear returns the clear open-sky light of a step.
func (s *OpenSky) Clear(step int) Components {
	return Components{units.Lux(s.sun[step]), units.Lux(s.moon[step]), nightSky}
}

// CloudSpread returns the part of a step's uncertainty that comes from the cloud, in
// powers of ten. It is what remains when two nights at one pool are compared, since the
// errors of the clear sky and of the trees are the same in both.
func (s *OpenSky) CloudSpread(step int) float64 { return math.Sqrt(s.cloud[step].spread2) }
