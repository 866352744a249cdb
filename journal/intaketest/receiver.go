package intaketest

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"time"

	"gloamline/geo"
	"gloamline/journal/intake"
	"gloamline/journal/units"
)

// receive records a walk with the receiver's errors.
func receive(x *rand.Rand, p Params, l *geo.Layout, pts []geo.Point) []intake.Fix {
	drift := newDrift(x, p)
	angle := x.Float64() * 2 * math.Pi
	bias := p.BiasM.draw(x)
	biasX, biasY := bias*math.Cos(angle), bias*math.Sin(angle)
	far := map[int]bool{}
	for range p.FarNight.whole(x) {
		far[x.IntN(len(pts))] = true
	}
	var spike struct {
		left, whole int
		dx, dy      float64
	}
	gap := 0
	var out []intake.Fix
	for i, q := range pts {
		dx, dy := drift.next()
		dx, dy = dx+biasX+p.JitterM*x.NormFloat64(), dy+biasY+p.JitterM*x.NormFloat64()
		if spike.left == 0 && x.Float64() < p.SpikesHour/3600 {
			a, m := x.Float64()*2*math.Pi, p.SpikeM.draw(x)
			spike.whole = int(p.SpikeS.draw(x))
			spike.left, spike.dx, spike.dy = spike.whole, m*math.Cos(a), m*math.Sin(a)
		}
		if spike.left > 0 {
			dx, dy = dx+spike.dx, dy+spike.dy
			spike.left--
		}
		if gap == 0 && x.Float64() < p.GapsHour/3600 {
			gap = int(p.GapS.draw(x))
		}
		if gap > 0 {
			gap--
			continue
		}
		if far[i] {
			a, m := x.Float64()*2*math.Pi, p.FarM.draw(x)
			dx, dy = m*math.Cos(a), m*math.Sin(a)
		}
		place := l.Place(geo.Point{X: q.X + metres(dx), Y: q.Y + metres(dy)})
		place = geo.Place{Lat: seven(place.Lat), Lon: seven(place.Lon)}
		f := intake.Fix{At: at(i), Place: place}
		out = append(out, f)
		if x.Float64() < p.TwinsHour/3600 {
			out = append(out, f)
		}
	}
	return out
}

// seven rounds to seven decimals, as receivers write.
func seven(d units.Degrees) units.Degrees { return units.Degrees(math.Round(float64(d)*1e7) / 1e7) }

// drift is a first-order Gauss-Markov process, smoothed once more as receivers do: slow
// wandering about the true place with a given root mean square distance.
type drift struct {
	x         *rand.Rand
	keep, add float64 // of the process, for one second
	follow    float64 // share of the way the smoothing goes in a second
	gain      float64 // for what smoothing takes off the spread
	ax, ay    float64
	bx, by    float64
}

func newDrift(x *rand.Rand, p Params) *drift {
	sigma := p.DriftM.draw(x) / math.Sqrt2 // of each axis
	tau, smooth := p.DriftS.draw(x), p.SmoothS.draw(x)
	keep := math.Exp(-1 / tau)
	d := &drift{x: x, keep: keep, add: sigma * math.Sqrt(1-keep*keep), follow: 1 - math.Exp(-1/smooth), gain: math.Sqrt((tau + smooth) / tau)}
	d.ax, d.ay = sigma*x.NormFloat64(), sigma*x.NormFloat64()
	d.bx, d.by = d.ax, d.ay
	return d
}

func (d *drift) next() (dx, dy float64) {
	d.ax, d.ay = d.keep*d.ax+d.add*d.x.NormFloat64(), d.keep*d.ay+d.add*d.x.NormFloat64()
	d.bx, d.by = d.bx+d.follow*(d.ax-d.bx), d.by+d.follow*(d.ay-d.by)
	return d.gain * d.bx, d.gain * d.by
}

// GPX is the track as a watch writes it.
func (n Night) GPX() []byte {
	var b bytes.Buffer
	b.WriteString(`<?xml version="1.0" encoding="UTF-8"?>` + "\n" + `<gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>` + "\n")
	for _, f := range n.Fixes {
		fmt.Fprintf(&b, "<trkpt lat=\"%.7f\" lon=\"%.7f\"><time>%s</time></trkpt>\n", float64(f.Place.Lat), float64(f.Place.Lon), f.At.Format(time.RFC3339))
	}
	b.WriteString("</trkseg></trk></gpx>\n")
	return b.Bytes()
}
