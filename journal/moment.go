package journal

import "gloamline/journal/units"

// Ready says that a pool will not be scared any more: dark enough to enter. It
// says nothing about wading.
type Ready struct {
	Head
	Pool ID `json:"pool"`
}

// Break is a rest from fishing.
type Break struct {
	Head
	Until Field[When] `json:"until,omitzero"`
}

// EndWhys lists the reasons for ending a night.
var EndWhys = []string{"enough", "tired", "cold", "mist", "rain", "river rising", "dawn", "no fish showing", "limit reached", "time", "other"}

// End closes the night for a rod, or for all.
type End struct {
	Head
	Why Field[string] `json:"why,omitzero"`
}

// Plan is what one meant to do.
type Plan struct {
	Head
	Pool     Field[ID]        `json:"pool,omitzero"`
	Order    Field[int]       `json:"order,omitzero"`
	Earliest Field[units.Lux] `json:"earliest_lux,omitzero"` // not before it is as dark as this
}

// Note is free text; the text is Head.Note.
type Note struct {
	Head
	Pool    Field[ID] `json:"pool,omitzero"`
	Private bool      `json:"private,omitempty"`
	Reason  string    `json:"reason,omitempty"` // why a scribble stayed a note
}

// MaxThumb is the most bytes a thumbnail may have. It lies in the journal and
// once more in each change of its entry.
const MaxThumb = 1 << 17

// Photo is a picture kept with the night: the thumbnail carries no position,
// the original is linked or copied beside the journal under its hash.
type Photo struct {
	Head
	SHA256 string       `json:"sha256"`
	Name   string       `json:"name"`
	Copied bool         `json:"copied,omitempty"`
	Link   string       `json:"link,omitempty"` // where the original was when linked
	Thumb  []byte       `json:"thumb,omitempty"`
	Of     Field[ID]    `json:"of,omitzero"` // the entry it shows
	Spot   Field[Place] `json:"spot,omitzero"`
}

// Ref implements Record.
func (r Ready) Ref() Ref { return Ref{KindReady, r.Trip, r.ID} }

// WithHead implements Entry.
func (r Ready) WithHead(h Head) Entry { r.Head = h; return r }

func (r Ready) check(c *checker) {
	c.head(r.Head, false)
	if r.Pool.IsZero() {
		c.bad("pool", "say which pool is ready")
	}
}

// Ref implements Record.
func (b Break) Ref() Ref { return Ref{KindBreak, b.Trip, b.ID} }

// WithHead implements Entry.
func (b Break) WithHead(h Head) Entry { b.Head = h; return b }

func (b Break) check(c *checker) {
	c.head(b.Head, false)
	c.ends("until", b.When, b.Until)
}

// Ref implements Record.
func (e End) Ref() Ref { return Ref{KindEnd, e.Trip, e.ID} }

// WithHead implements Entry.
func (e End) WithHead(h Head) Entry { e.Head = h; return e }

func (e End) check(c *checker) {
	c.head(e.Head, false)
	fieldOneOf(c, "why", e.Why, EndWhys)
}

// Ref implements Record.
func (p Plan) Ref() Ref { return Ref{KindPlan, p.Trip, p.ID} }

// WithHead implements Entry.
func (p Plan) WithHead(h Head) Entry { p.Head = h; return p }

func (p Plan) check(c *checker) {
	c.head(p.Head, false)
	if l, ok := p.Earliest.Get(); ok && !(l > 0 && l < 200000) {
		c.bad("earliest_lux", "light between 0 and 200,000 lx")
	}
	if n, ok := p.Order.Get(); ok && (n < 0 || n > 99) {
		c.bad("order", "the order in a plan goes from 0 to 99")
	}
}

// Ref implements Record.
func (n Note) Ref() Ref { return Ref{KindNote, n.Trip, n.ID} }

// WithHead implements Entry.
func (n Note) WithHead(h Head) Entry { n.Head = h; return n }

func (n Note) check(c *checker) {
	c.head(n.Head, false)
	c.named("note", n.Note, "a note needs its text")
}

// Ref implements Record.
func (p Photo) Ref() Ref { return Ref{KindPhoto, p.Trip, p.ID} }

// WithHead implements Entry.
func (p Photo) WithHead(h Head) Entry { p.Head = h; return p }

func (p Photo) check(c *checker) {
	c.head(p.Head, false)
	c.sha256(p.SHA256)
	if len(p.Thumb) > MaxThumb {
		c.bad("thumb", "a thumbnail has at most %d bytes", MaxThumb)
	}
	if p.Of.Known() && p.Of.Or(ID{}) == p.ID {
		c.bad("of", "a photo shows another entry")
	}
}
