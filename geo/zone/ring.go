package zone

import (
	"errors"
	"math"
)

// kmPerDegree is the length of a degree of latitude, to a part in two hundred.
const kmPerDegree = 111.2

// probe asks border lines about a position: whether it lies inside by the even-odd rule,
// and how far off the nearest border is.
type probe struct {
	lat, lon, cos float64 // degrees; cosine of the latitude
	in            bool
	km            float64
}

// ring goes along one closed line, which newAtlas has read before.
func (p *probe) ring(line []byte) {
	var fx, fy, px, py float64
	_ = points(line, func(n int, x, y float64) {
		x, y = x-p.lon, y-p.lat
		if n == 0 {
			fx, fy = x, y
		} else {
			p.side(px, py, x, y)
		}
		px, py = x, y
	})
	p.side(px, py, fx, fy)
}

// side takes the border from one point to the next, in degrees from the position.
func (p *probe) side(px, py, qx, qy float64) {
	if (py > 0) != (qy > 0) && (px*qy-qx*py > 0) == (qy > py) {
		p.in = !p.in
	}
	const far = 2 * Near / kmPerDegree
	if min(py, qy) > far || max(py, qy) < -far || min(px, qx)*p.cos > far || max(px, qx)*p.cos < -far {
		return
	}
	px, qx = px*p.cos, qx*p.cos
	dx, dy := qx-px, qy-py
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = min(max(-(px*dx+py*dy)/l, 0), 1)
	}
	p.km = min(p.km, math.Hypot(px+t*dx, py+t*dy)*kmPerDegree)
}

// points reads a line of the encoded polyline format: with five decimals, differences
// of longitude and latitude in turn, each shifted left by one with its sign folded in,
// in groups of five bits from the lowest up, plus 63, with 32 added while more follow.
func points(line []byte, each func(n int, lon, lat float64)) error {
	var x, y int64
	for n := 0; len(line) > 0; n++ {
		dx, rest, ok := difference(line)
		if !ok {
			return errTruncated
		}
		dy, rest, ok := difference(rest)
		if !ok {
			return errTruncated
		}
		x, y, line = x+dx, y+dy, rest
		each(n, float64(x)*1e-5, float64(y)*1e-5)
	}
	return nil
}

var errTruncated = errors.New("a border breaks off")

func difference(line []byte) (int64, []byte, bool) {
	var v uint64
	for i, shift := 0, uint(0); i < len(line) && shift < 60; i, shift = i+1, shift+5 {
		b := uint64(line[i]) - 63
		v |= b & 0x1f << shift
		if b < 0x20 {
			return int64(v>>1) ^ -int64(v&1), line[i+1:], true
		}
	}
	return 0, nil, false
}
