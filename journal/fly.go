package journal

import (
	"slices"

	"gloamline/journal/units"
)

// Silhouette is the bulk of a fly seen against the sky.
type Silhouette string

const (
	Slim       Silhouette = "slim"
	MediumBulk Silhouette = "medium"
	Full       Silhouette = "full"
)

// Silhouettes lists every silhouette.
var Silhouettes = []Silhouette{Slim, MediumBulk, Full}

// Tone is how light a fly looks in grey.
type Tone string

const (
	DarkTone   Tone = "dark"
	MediumTone Tone = "medium"
	LightTone  Tone = "light"
)

// Tones lists every tone.
var Tones = []Tone{DarkTone, MediumTone, LightTone}

// Hooks lists how a fly is armed.
var Hooks = []string{"single", "double", "treble", "stinger"}

// Dressings lists how a fly is built.
var Dressings = []string{"hook", "tube", "articulated shank", "surface"}

// Dress is a fly as it was tied at one time. Flies are described, not named.
type Dress struct {
	From       Date                `json:"from,omitzero"` // valid from this evening on; zero: from the start
	Length     Field[units.Length] `json:"length,omitzero"`
	Silhouette Field[Silhouette]   `json:"silhouette,omitzero"`
	Tone       Field[Tone]         `json:"tone,omitzero"`
	HotSpot    Field[string]       `json:"hot_spot,omitzero"` // its colour: orange, green, ...
	Hook       Field[string]       `json:"hook,omitzero"`
	Barbless   Field[bool]         `json:"barbless,omitzero"`
	Built      Field[string]       `json:"built,omitzero"`
	Note       string              `json:"note,omitempty"`
}

// Fly is one fly through time: its revisions, oldest first.
type Fly struct {
	ID      ID      `json:"id"`
	Label   string  `json:"label,omitempty"` // the owner's own word for it, if any
	Dresses []Dress `json:"dresses,omitempty"`
	Retired Date    `json:"retired,omitzero"` // not offered from this evening on
}

// On returns the fly as it was on the evening d.
func (f Fly) On(d Date) Dress {
	out := Dress{}
	if len(f.Dresses) > 0 {
		out = f.Dresses[0]
	}
	for _, r := range f.Dresses {
		if !d.Before(r.From) {
			out = r
		}
	}
	return out
}

// Ref implements Record.
func (f Fly) Ref() Ref { return Ref{Kind: KindFly, ID: f.ID} }

func (f Fly) check(c *checker) {
	c.id(f.ID)
	if len(f.Dresses) == 0 {
		c.bad("dresses", "describe the fly: length, silhouette or tone")
	}
	for i, d := range f.Dresses {
		if i > 0 && !f.Dresses[i-1].From.Before(d.From) {
			c.bad("dresses", "revisions go from the oldest to the newest, one to a date")
		}
	}
	for _, d := range f.Dresses {
		if l, ok := d.Length.Get(); ok && !(l.M > 0 && l.M <= 0.4) {
			c.bad("length", "a dressing is longer than nothing and at most 40 cm")
		}
		fieldOneOf(c, "silhouette", d.Silhouette, Silhouettes)
		fieldOneOf(c, "tone", d.Tone, Tones)
		fieldOneOf(c, "hook", d.Hook, Hooks)
		fieldOneOf(c, "built", d.Built, Dressings)
	}
}

// Uses lists what a box is for.
var Uses = []string{"day and dusk", "night", "surface"}

// Box holds flies in their order.
type Box struct {
	ID    ID     `json:"id"`
	Name  string `json:"name"`
	Use   string `json:"use"`
	Flies []ID   `json:"flies,omitempty"`
}

// Ref implements Record.
func (b Box) Ref() Ref { return Ref{Kind: KindBox, ID: b.ID} }

func (b Box) check(c *checker) {
	c.id(b.ID)
	c.named("name", b.Name, "a box needs a name")
	oneOf(c, "use", b.Use, Uses)
	for i, f := range b.Flies {
		if slices.Contains(b.Flies[:i], f) {
			c.bad("flies", "a fly lies in a box once")
		}
	}
}

// HouseRule is a belief one fishes by: in light from Dark up to Light, use
// these lengths, silhouettes and tones. It is shown, never enforced.
type HouseRule struct {
	ID          ID                  `json:"id"`
	Words       string              `json:"words"`
	Dark        Field[units.Lux]    `json:"dark_lux,omitzero"`  // unknown: no lower end
	Light       Field[units.Lux]    `json:"light_lux,omitzero"` // unknown: no upper end
	AtGrey      string              `json:"at_grey,omitempty"`  // "before" or "after": the beat's own threshold instead of lux
	Min         Field[units.Length] `json:"min,omitzero"`
	Max         Field[units.Length] `json:"max,omitzero"` // shorter than this
	Silhouettes []Silhouette        `json:"silhouettes,omitempty"`
	Tones       []Tone              `json:"tones,omitempty"`
	Position    Field[int]          `json:"position,omitzero"`
	Practice    bool                `json:"practice,omitempty"` // common practice, not one's own finding
}

// Ref implements Record.
func (r HouseRule) Ref() Ref { return Ref{Kind: KindRule, ID: r.ID} }

func (r HouseRule) check(c *checker) {
	c.id(r.ID)
	c.named("words", r.Words, "say the rule in words")
	oneOf(c, "at_grey", r.AtGrey, []string{"", "before", "after"})
	d, okD := r.Dark.Get()
	l, okL := r.Light.Get()
	if okD && !(d >= 0) || okL && !(l > 0) || okD && okL && !(d < l) {
		c.bad("dark_lux", "the darker end must lie below the lighter one")
	}
	if r.AtGrey != "" && (okD || okL) {
		c.bad("at_grey", "a rule goes by lux or by the trees, not by both")
	}
	lo, okLo := r.Min.Get()
	hi, okHi := r.Max.Get()
	if okLo && !(lo.M >= 0 && lo.M <= 0.4) || okHi && !(hi.M > 0 && hi.M <= 0.4) || okLo && okHi && !(lo.M < hi.M) {
		c.bad("min", "the shorter length must lie below the longer one, both up to 40 cm")
	}
	if p, ok := r.Position.Get(); ok && (p < 0 || p >= MaxFlies) {
		c.bad("position", "a leader has a point and at most %d droppers", MaxFlies-1)
	}
	for _, s := range r.Silhouettes {
		oneOf(c, "silhouettes", s, Silhouettes)
	}
	for _, t := range r.Tones {
		oneOf(c, "tones", t, Tones)
	}
}

// Person fishes, guides or is guided.
type Person struct {
	ID       ID     `json:"id"`
	Name     string `json:"name"`
	Initials string `json:"initials,omitempty"`
	Client   bool   `json:"client,omitempty"`
	Left     Date   `json:"left,omitzero"` // not offered from this evening on
}

// Ref implements Record.
func (p Person) Ref() Ref { return Ref{Kind: KindPerson, ID: p.ID} }

func (p Person) check(c *checker) {
	c.id(p.ID)
	c.named("name", p.Name, "a person needs a name")
}
