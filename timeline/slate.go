package timeline

import (
	"gloamline/timeline/light"
	"gloamline/timeline/sky"
)

// Slate is memory for the light of one night after another, for whoever boils thousands down:
// fresh memory costs more than the light itself. A night built on a slate is valid until the
// next is. It serves one goroutine; the zero value is ready, and nil stands for fresh memory.
type Slate struct {
	grid   *sky.Grid
	open   *light.OpenSky
	traces []*light.Trace
	used   int
}

// wiped makes ready for the next night.
func (s *Slate) wiped() *Slate {
	if s == nil {
		return new(Slate)
	}
	s.used = 0
	return s
}

func (s *Slate) gridOf(span *sky.Span, p sky.Place) *sky.Grid {
	s.grid = span.GridInto(s.grid, p, Step)
	return s.grid
}

func (s *Slate) openOf(g *sky.Grid, w *light.Weather) *light.OpenSky {
	s.open = light.OpenSkyInto(s.open, g, w)
	return s.open
}

func (s *Slate) under(open *light.OpenSky, shade light.Shade) *light.Trace {
	if s.used == len(s.traces) {
		s.traces = append(s.traces, nil)
	}
	t := open.UnderInto(s.traces[s.used], shade)
	s.traces[s.used] = t
	s.used++
	return t
}
