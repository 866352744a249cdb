package light

import (
	"fmt"
	"math"
)

// CloudKind says how much light a full cover of the cloud lets through.
type CloudKind uint8

// The kinds. Shares of light under eight eighths: 0.55, 0.28 and 0.10 (Kasten &
// Czeplak 1980 by cloud type, and the divisors 2, 3 and 10 of USNO Circular 171).
const (
	Average CloudKind = iota // grey cover, the moon just told or hidden
	Thin                     // high veil
	Dark                     // low rain cloud
)

var kindNames = [...]string{"average", "thin", "dark"}

// String returns average, thin or dark.
func (k CloudKind) String() string {
	if int(k) < len(kindNames) {
		return kindNames[k]
	}
	return fmt.Sprintf("cloud kind %d", uint8(k))
}

// ParseCloudKind reads average, thin or dark.
func ParseCloudKind(s string) (CloudKind, error) {
	for i, name := range kindNames {
		if s == name {
			return CloudKind(i), nil
		}
	}
	return Average, fmt.Errorf("cloud is thin, average or dark, not %q", s)
}

// through is the share of light that a full cover lets through.
func (k CloudKind) through() float64 {
	switch k {
	case Thin:
		return 0.55
	case Dark:
		return 0.10
	default:
		return 0.28
	}
}

// Cloud is the cover as noted: eighths of the sky, 0 to 8. Noted is false when
// nobody wrote it down; the sky then counts as clear, with a wide band.
type Cloud struct {
	Eighths int
	Kind    CloudKind
	Noted   bool
}

// NewCloud returns a noted cover, or an error when eighths lies outside 0 to 8.
func NewCloud(eighths int, kind CloudKind) (Cloud, error) {
	if eighths < 0 || eighths > 8 {
		return Cloud{}, fmt.Errorf("cloud is counted in eighths of the sky, 0 to 8, not %d", eighths)
	}
	return Cloud{Eighths: eighths, Kind: kind, Noted: true}, nil
}

// cover is the noted share of the sky, 0 to 1.
func (c Cloud) cover() float64 {
	if !c.Noted {
		return 0
	}
	return float64(max(0, min(8, c.Eighths))) / 8
}

// Transmittance is the share of clear-sky light that comes through, 0.1 to 1:
// 1 - (1-k) (N/8)^3.4 (Kasten & Czeplak 1980, exponent from memory).
func (c Cloud) Transmittance() float64 {
	return 1 - (1-c.Kind.through())*math.Pow(c.cover(), 3.4)
}

// spread is the uncertainty that the cloud adds, in powers of ten.
func (c Cloud) spread() float64 {
	if !c.Noted {
		return 0.35
	}
	return 0.05 + 0.25*c.cover()
}

// MoonSeen says how the moon's disc looked.
type MoonSeen uint8

// How the disc looked. NotNoted lets the cloud decide on average.
const (
	NotNoted MoonSeen = iota
	MoonClear
	MoonVeiled
	MoonHidden // behind cloud, not behind the hill
)

// beam is the moon's direct light after cloud: open while the disc clears the
// skyline, and sky from the whole open sky when the cloud scatters it all.
type beam struct{ open, sky float64 }

func (m MoonSeen) beam(c Cloud) beam {
	switch m {
	case MoonClear:
		return beam{open: 1}
	case MoonVeiled:
		return beam{open: 0.5}
	case MoonHidden:
		return beam{sky: c.Kind.through()}
	default:
		return beam{open: 1 - (1-c.Kind.through())*c.cover()}
	}
}
