package journal

// CloudKind is how thick the cloud is, as an angler sees it.
type CloudKind string

const (
	ThinCloud    CloudKind = "thin"
	AverageCloud CloudKind = "average"
	DarkCloud    CloudKind = "dark"
)

// CloudKinds lists every cloud kind.
var CloudKinds = []CloudKind{ThinCloud, AverageCloud, DarkCloud}

// MoonSeen is how the moon stands in the sky to the eye.
type MoonSeen string

const (
	MoonClear  MoonSeen = "up"
	MoonVeiled MoonSeen = "veiled"
	MoonBehind MoonSeen = "behind" // cloud or hill
)

// MoonSeens lists every state.
var MoonSeens = []MoonSeen{MoonClear, MoonVeiled, MoonBehind}

// Sky is what was seen of the sky. It holds until the next sky entry; between
// two of them the light changes gradually unless Step is set.
type Sky struct {
	Head
	Cloud     Field[int]       `json:"cloud,omitzero"` // eighths, 0 to 8
	CloudKind Field[CloudKind] `json:"cloud_kind,omitzero"`
	Moon      Field[MoonSeen]  `json:"moon,omitzero"`
	TreesGrey bool             `json:"trees_grey,omitempty"` // colour gone from the trees at this moment
	Step      bool             `json:"step,omitempty"`       // it changed at once
}

// Ref implements Record.
func (s Sky) Ref() Ref { return Ref{KindSky, s.Trip, s.ID} }

// WithHead implements Entry.
func (s Sky) WithHead(h Head) Entry { s.Head = h; return s }

func (s Sky) check(c *checker) {
	c.head(s.Head, false)
	if n, ok := s.Cloud.Get(); ok && (n < 0 || n > 8) {
		c.bad("cloud", "cloud is counted in eighths, 0 to 8")
	}
	fieldOneOf(c, "cloud_kind", s.CloudKind, CloudKinds)
	fieldOneOf(c, "moon", s.Moon, MoonSeens)
	if s.Cloud.IsZero() && s.CloudKind.IsZero() && s.Moon.IsZero() && !s.TreesGrey && s.Note == "" {
		c.bad("cloud", "say at least one thing about the sky")
	}
}
