package journal

import "gloamline/journal/units"

// Touch is what a fish did, weakest first.
type Touch string

const (
	Follow Touch = "follow"
	Boil   Touch = "boil"
	Pluck  Touch = "pluck"
	Pull   Touch = "pull"
	Lost   Touch = "lost" // hooked and lost
	Landed Touch = "landed"
)

// Touches lists every touch, weakest first.
var Touches = []Touch{Follow, Boil, Pluck, Pull, Lost, Landed}

// Species is the kind of fish.
type Species string

const (
	SeaTrout   Species = "sea trout"
	BrownTrout Species = "brown trout"
	Salmon     Species = "salmon"
	OtherFish  Species = "other"
)

// AllSpecies lists every species.
var AllSpecies = []Species{SeaTrout, BrownTrout, Salmon, OtherFish}

// Classes lists the trade's names for the ages of a sea trout: finnock (north
// and west Scotland), herling (Solway), whitling (Tweed, Wales, north England)
// and school peal (south-west England) in the first year after going to sea,
// maiden (never spawned), grown, and kelt (spawned, thin).
var Classes = []string{"finnock", "herling", "whitling", "school peal", "maiden", "grown", "kelt"}

// Fate is what became of a landed fish.
type Fate string

const (
	Returned Fate = "returned"
	Kept     Fate = "kept"
)

// Fates lists every fate.
var Fates = []Fate{Returned, Kept}

// Sexes lists the sexes of a fish.
var Sexes = []string{"hen", "cock"}

// HookPlaces lists where a hook was found.
var HookPlaces = []string{"scissors", "upper jaw", "lower jaw", "tongue", "gill", "eye", "foul"}

// Parts lists the parts of a pool, from upstream.
var Parts = []string{"head", "neck", "body", "tail"}

// Contact is a fish that showed itself to the fly, from a follow to one landed.
type Contact struct {
	Head
	Touch     Touch               `json:"touch"`
	Pool      Field[ID]           `json:"pool,omitzero"`
	Part      Field[string]       `json:"part,omitzero"`
	Spot      Field[Place]        `json:"spot,omitzero"`
	Fly       Field[ID]           `json:"fly,omitzero"`
	Position  Field[int]          `json:"position,omitzero"` // on the leader: 0 point, 1 first dropper
	Species   Field[Species]      `json:"species,omitzero"`
	Class     Field[string]       `json:"class,omitzero"`
	Length    Field[units.Length] `json:"length,omitzero"`            // snout to fork
	ByEye     bool                `json:"length_estimated,omitempty"` // judged, not measured
	Weight    Field[units.Weight] `json:"weight,omitzero"`
	Estimated bool                `json:"weight_estimated,omitempty"` // judged, not weighed
	Sex       Field[string]       `json:"sex,omitzero"`
	Lice      Field[bool]         `json:"lice,omitzero"`
	HookPlace Field[string]       `json:"hook_place,omitzero"`
	AirTime   Field[int]          `json:"air_seconds,omitzero"`
	Fate      Field[Fate]         `json:"fate,omitzero"`
	Tag       Field[string]       `json:"tag,omitzero"`
}

// Ref implements Record.
func (k Contact) Ref() Ref { return Ref{KindContact, k.Trip, k.ID} }

// WithHead implements Entry.
func (k Contact) WithHead(h Head) Entry { k.Head = h; return k }

func (k Contact) check(c *checker) {
	c.head(k.Head, true)
	oneOf(c, "touch", k.Touch, Touches)
	fieldOneOf(c, "part", k.Part, Parts)
	if p, ok := k.Position.Get(); ok && (p < 0 || p >= MaxFlies) {
		c.bad("position", "a leader has a point and at most %d droppers", MaxFlies-1)
	}
	fieldOneOf(c, "species", k.Species, AllSpecies)
	fieldOneOf(c, "class", k.Class, Classes)
	fieldOneOf(c, "sex", k.Sex, Sexes)
	fieldOneOf(c, "hook_place", k.HookPlace, HookPlaces)
	fieldOneOf(c, "fate", k.Fate, Fates)
	if l, ok := k.Length.Get(); ok && !(l.M > 0.02 && l.M < 2) {
		c.bad("length", "a fish is between 2 cm and 2 m long")
	}
	if w, ok := k.Weight.Get(); ok && !(w.G > 0 && w.G < 60000) {
		c.bad("weight", "a fish weighs more than nothing and under 60 kg")
	}
	if s, ok := k.AirTime.Get(); ok && (s < 0 || s > 3600) {
		c.bad("air_seconds", "time out of water is between 0 and 3600 seconds")
	}
	if _, ok := k.Fate.Get(); ok && k.Touch != Landed {
		c.bad("fate", "only a landed fish is returned or kept")
	}
}
