package state

import (
	"errors"
	"slices"

	"gloamline/journal"
	"gloamline/ui/words"
)

// ErrUnfinished is returned by Commit when something stands at a field or in
// Problem that the person must settle first. Nothing was stored or lost.
var ErrUnfinished = errors.New("the card needs attention")

// Card is a form for one thing, new or standing. It starts with what can be known
// from the cursor, the selection and the night; what a person does not touch
// follows when what it depends on changes. On a standing thing, fields that are
// not touched keep what is stored to the last bit, also those that the card does
// not show.
//
// It works by drafting: after every touch the draft is made anew from the record
// as it stands and the texts of the fields, in their order.
type Card struct {
	d       *Desk
	title   string
	whose   func() string // the rod it is for, by name; nil where that is plain
	ref     journal.Ref
	isNew   bool
	fields  []*field
	faults  map[string]string // by field, from the journal's checks
	problem string
	overlap bool              // the fault at "when" is that of two runs
	kept    map[string]string // texts in doubt that a second Commit confirms, by field

	reset  func()               // makes the draft equal to the record as it stands
	load   func() bool          // reads the record anew; false if it is gone
	batch  func() journal.Batch // what the draft comes to
	first  func() error         // what must be done before it is stored; nil: nothing
	drop   func()               // removes the thing elsewhere than from the journal
	keep   func() error         // takes the draft elsewhere than into the journal; nil: it is stored
	stock  []journal.Fly        // the flies there are
	news   []journal.Fly        // those that the texts describe and the journal lacks
	coined map[string]journal.ID
	newAt  map[journal.ID]string // the field that describes each of news
}

// field is a line of a card with how it is filled and read.
type field struct {
	Field
	start   string             // the text of the record as it stands
	text    func() string      // the text of the draft
	fill    func() string      // what an untouched field of a new thing suggests
	choices func() []Choice    // for this draft
	put     func(string) error // reads the text into the draft
	ask     func() *Question   // the doubt that put left
	read    func() string      // how the text was understood
	hidden  func() bool        // not to be shown for this draft
	seldom  func() bool        // seldom needed for this draft
	doubt   func() string      // why what was typed is likely a slip; empty if it is not
	want    func() string      // what must be said first; empty if nothing
	picture func() []byte      // of the draft, to be shown with the field
}

// begin fills the fields from the record as it stands; what was touched stays.
func (c *Card) begin() *Card {
	c.stock, _ = journal.All[journal.Fly](c.d.j) // flies that cannot be read are not offered
	c.reset()
	for _, f := range c.fields {
		f.start = f.text()
		if !f.Touched {
			f.Value = f.start
		}
	}
	c.refresh()
	return c
}

// Title says what the card does, and for whom where several rods fish: "Add fish,
// Anna", "Change fish 3, Colm".
func (c *Card) Title() string {
	if c.whose != nil {
		return words.TitleOf(c.title, c.whose())
	}
	return c.title
}

// Ref returns the record that the card makes or amends.
func (c *Card) Ref() journal.Ref { return c.ref }

// New reports whether the card adds something rather than amends it.
func (c *Card) New() bool { return c.isNew }

// Fields returns the fields in order, as they stand now.
func (c *Card) Fields() []Field {
	var out []Field
	for _, f := range c.fields {
		if f.hidden == nil || !f.hidden() {
			out = append(out, c.shown(f))
		}
	}
	return out
}

// Field returns one field; false if the card does not show one of that ID.
func (c *Card) Field(id string) (Field, bool) {
	f := c.find(id)
	if f == nil || f.hidden != nil && f.hidden() {
		return Field{}, false
	}
	return c.shown(f), true
}

func (c *Card) shown(f *field) Field {
	out := f.Field
	out.Choices = slices.Clone(f.Choices)
	if f.picture != nil {
		out.Picture = f.picture()
	}
	out.More = f.More || f.seldom != nil && f.seldom()
	if out.Error == "" {
		out.Error = c.faults[f.ID]
	}
	return out
}

func (c *Card) find(id string) *field {
	i := slices.IndexFunc(c.fields, func(f *field) bool { return f.ID == id })
	if i < 0 {
		return nil
	}
	return c.fields[i]
}

// Set fills in a field: free text, the value of a choice or its label. It is read
// at once, so that Read, Ask and Error follow. An unknown ID is ignored.
func (c *Card) Set(id, text string) {
	f := c.find(id)
	if f == nil {
		return
	}
	c.d.act(func() {
		f.Value = pickValue(f.Choices, text)
		f.Touched = c.isNew || f.Value != f.start
		delete(c.faults, id)
		c.problem = ""
		c.refresh()
		c.mend()
		c.told()
	})
}

// Answer settles a field's question by the place of the answer.
func (c *Card) Answer(id string, answer int) {
	if f := c.find(id); f != nil && f.Ask != nil && answer >= 0 && answer < len(f.Ask.Answers) {
		c.Set(id, f.Ask.Answers[answer].Text)
	}
}

// Problem is what is wrong but belongs to no field, one sentence; empty if nothing.
func (c *Card) Problem() string { return c.problem }

// Dirty reports whether anything was changed by hand.
func (c *Card) Dirty() bool {
	return slices.ContainsFunc(c.fields, func(f *field) bool { return f.Touched })
}

// refresh drafts the record anew.
func (c *Card) refresh() {
	c.reset()
	c.news, c.newAt = nil, map[journal.ID]string{}
	for _, f := range c.fields {
		f.Error, f.Read, f.Ask = "", "", nil
		if f.choices != nil {
			f.Choices = f.choices()
		}
		if c.isNew && !f.Touched && f.fill != nil {
			f.Value = f.fill()
		}
		if !c.isNew && !f.Touched || f.hidden != nil && f.hidden() {
			continue
		}
		if err := f.put(f.Value); err != nil {
			f.Error = asTyped(sentence(err), f.Value)
			continue
		}
		if f.read != nil {
			f.Read = f.read()
		}
		if f.ask != nil {
			f.Ask = f.ask()
		}
	}
}

// told tells the desk's views if the card lies on it.
func (c *Card) told() {
	if c.d.card == c {
		c.d.tell(CardOpen)
	}
}

// Commit stores what the card says as one change, closes the card and selects the
// thing. When something is wrong it stands at its field, and the error is
// ErrUnfinished; another error comes from the store. In both cases the card
// stays as it was. A card that changes nothing just closes.
func (c *Card) Commit() (err error) {
	c.d.act(func() { err = c.commit() })
	return err
}

func (c *Card) commit() error {
	c.refresh()
	c.faults, c.problem, c.overlap = map[string]string{}, "", false
	c.told()
	if slices.ContainsFunc(c.fields, func(f *field) bool { return f.Error != "" && (f.hidden == nil || !f.hidden()) }) {
		return ErrUnfinished
	}
	card, b := c.d.card, c.batch()
	lacks, doubts := c.wants(), c.doubts()
	if lacks { // all that is wrong stands at its field at once
		if err := c.d.j.Try(b); err != nil {
			return c.blame(err)
		}
	}
	if lacks || doubts {
		return ErrUnfinished
	}
	if c.keep != nil {
		if err := c.keep(); err != nil {
			return c.blame(err)
		}
		if card == c {
			c.d.closeCard()
		}
		return nil
	}
	if c.first != nil {
		if err := c.d.j.Try(b); err != nil { // nothing is done for what would be refused
			return c.blame(err)
		}
		if err := c.first(); err != nil {
			return err
		}
		b = c.batch()
	}
	_, err := c.d.j.Do(c.deed(b), b)
	if err != nil {
		return c.blame(err)
	}
	if card == c {
		c.d.closeCard()
	}
	isNew := c.isNew
	c.settle()
	if c.ref.Kind == journal.KindTrip {
		if isNew {
			return c.d.Open(c.ref.ID)
		}
		return nil
	}
	if c.ref.Trip.IsZero() { // a fly, a box or a rule
		c.d.Boxes().Pick(c.ref)
		return nil
	}
	c.d.Select(c.ref)
	return nil
}

// deed is the code of what committing does.
func (c *Card) deed(b journal.Batch) string {
	if !c.isNew {
		return "amend " + string(c.ref.Kind)
	}
	for _, r := range b.Put {
		if s, ok := r.(journal.Sky); ok && s.TreesGrey {
			return words.NoteGrey
		}
	}
	return "add " + string(c.ref.Kind)
}

// wants puts what must still be said at its field.
func (c *Card) wants() (open bool) {
	for _, f := range c.fields {
		if f.want == nil || f.hidden != nil && f.hidden() {
			continue
		}
		if why := f.want(); why != "" {
			c.faults[f.ID], open = why, true
		}
	}
	return open
}

// doubts asks once about each text that is likely a slip of the hand; the same text
// committed again stands.
func (c *Card) doubts() (asked bool) {
	for _, f := range c.fields {
		if f.doubt == nil || !f.Touched || f.hidden != nil && f.hidden() || c.kept[f.ID] == f.Value {
			continue
		}
		delete(c.kept, f.ID)
		if why := f.doubt(); why != "" {
			if c.kept == nil {
				c.kept = map[string]string{}
			}
			c.kept[f.ID], c.faults[f.ID], asked = f.Value, why, true
		}
	}
	return asked
}

// settle makes the card that of a standing thing, so that committing it again, as a
// key struck twice does, adds nothing.
func (c *Card) settle() {
	c.isNew = false
	for _, f := range c.fields {
		f.Touched = false
	}
	if c.load() {
		c.begin()
	}
}

// Remove takes the thing out of the journal, as one change, and closes the card.
func (c *Card) Remove() (err error) {
	if c.isNew {
		return nil
	}
	if c.drop != nil {
		c.d.act(func() {
			c.drop()
			c.d.CloseCard()
		})
		return nil
	}
	c.d.act(func() {
		if _, err = c.d.j.Remove(c.ref); err == nil && c.d.card == c {
			c.d.closeCard()
		}
	})
	return err
}
