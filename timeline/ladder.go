package timeline

import (
	"math"
	"time"

	"gloamline/geo"
)

// The ladder of light is our own. Its zero is the light at which the trees go
// grey on the beat; each rung below is a decade.
const (
	// glowLux is the least light of the open sky in sunset glow: the order of the
	// light at which naming colours is still undisturbed, 5 lx, with some to spare
	// (our own choice).
	glowLux = 10
	// moonlitAbove is how many decades above the threshold a moon may make it
	// moonlit instead of half-light.
	moonlitAbove = 0.5
)

// reading is what the ladder asks about one moment at one place.
type reading struct {
	sunUp     bool
	open      float64 // light under the open sky, lux
	lux       float64 // light at the place, lux
	moonShare float64 // of the light at the place
	grey      float64 // threshold, lux
}

func (r reading) rung() Rung {
	switch {
	case r.sunUp:
		return Daylight
	case r.open >= math.Max(glowLux, r.grey):
		return Glow
	case r.moonShare > 0.5 && r.lux < r.grey*math.Pow(10, moonlitAbove):
		return Moonlit
	case r.lux >= r.grey:
		return HalfLight
	case r.lux >= r.grey/10:
		return TreesGrey
	case r.lux >= r.grey/100:
		return Dark
	}
	return Black
}

// decadesBelow returns how many decades lux lies below the threshold.
func decadesBelow(grey, lux float64) float64 {
	return math.Log10(grey / math.Max(lux, 1e-9))
}

// Rung returns the step of the ladder at t on a pool, or under the open sky when
// the pool is zero or not on the beat.
func (n *Night) Rung(t time.Time, pool geo.ID) Rung {
	c := n.curve(pool)
	return reading{
		sunUp:     n.Sky.SunUpAt(t),
		open:      n.Open.value(n.Open.Lux, t),
		lux:       c.value(c.Lux, t),
		moonShare: c.MoonShare(t),
		grey:      float64(n.Grey.Threshold.Lux),
	}.rung()
}

// Darker returns how many decades the light at t lies below the threshold at
// which the trees go grey, on a pool or, with a zero pool, under the open sky; it is
// negative while it is lighter.
func (n *Night) Darker(t time.Time, pool geo.ID) float64 {
	c := n.curve(pool)
	return decadesBelow(float64(n.Grey.Threshold.Lux), c.value(c.Lux, t))
}

// Light returns the light at t on a pool, or under the open sky when the pool is
// zero or not on the beat.
func (n *Night) Light(t time.Time, pool geo.ID) Lit { return n.curve(pool).At(t) }

// PoolNight returns one pool's own light.
func (n *Night) PoolNight(pool geo.ID) (*PoolNight, bool) {
	for i := range n.Pools {
		if n.Pools[i].Pool.ID == pool {
			return &n.Pools[i], true
		}
	}
	return nil, false
}

func (n *Night) curve(pool geo.ID) *Curve {
	if p, ok := n.PoolNight(pool); ok {
		return &p.Curve
	}
	return &n.Open
}
