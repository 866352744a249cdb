package state

import (
	"errors"

	"gloamline/journal"
)

// ErrUnfinished is returned by Commit when something stands at a field or in
// Problem that the person must settle first. Nothing was stored or lost.
var ErrUnfinished = errors.New("the card needs attention")

// Card is a form for one thing, new or standing. It starts with what can be known
// from the cursor, the selection and the night; what a person does not touch
// follows when what it depends on changes. On a standing thing, fields that are
// not touched keep what is stored to the last bit, also those that the card does
// not show.
type Card struct {
	d *Desk
}

// Title says what the card does: "Add fish", "Amend fish 3".
func (c *Card) Title() string

// Ref returns the record that the card makes or amends.
func (c *Card) Ref() journal.Ref

// New reports whether the card adds something rather than amends it.
func (c *Card) New() bool

// Fields returns the fields in order, as they stand now.
func (c *Card) Fields() []Field

// Field returns one field; false if the card has none of that ID.
func (c *Card) Field(id string) (Field, bool)

// Set fills in a field: free text, the value of a choice or its label. It is read
// at once, so that Read, Ask and Error follow. An unknown ID is ignored.
func (c *Card) Set(id, text string)

// Answer settles a field's question by the place of the answer.
func (c *Card) Answer(id string, answer int)

// Problem is what is wrong but belongs to no field, one sentence; empty if nothing.
func (c *Card) Problem() string

// Dirty reports whether anything was changed by hand.
func (c *Card) Dirty() bool

// Commit stores what the card says as one change, closes the card and selects the
// thing. When something is wrong it stands at its field, and the error is
// ErrUnfinished; another error comes from the store. In both cases the card
// stays as it was.
func (c *Card) Commit() error

// Remove takes the thing out of the journal, as one change, and closes the card.
func (c *Card) Remove() error

// Card returns the open card, nil if there is none.
func (d *Desk) Card() *Card { return d.card }

// OpenCard puts a card on the desk in place of the one there.
func (d *Desk) OpenCard(c *Card)

// CloseCard puts the open card away; what was typed on it is dropped.
func (d *Desk) CloseCard()

// AddCard returns a card for a new entry of that kind in the open night. It is not
// on the desk yet. The error says in words what is missing first.
func (d *Desk) AddCard(k journal.Kind) (*Card, error)

// FishCard returns a card for a new contact of that touch.
func (d *Desk) FishCard(t journal.Touch) (*Card, error)

// GreyCard returns a card for the moment at which the trees went grey.
func (d *Desk) GreyCard() (*Card, error)

// AmendCard returns a card for an entry of the open night, or for the night itself
// (a reference of kind trip).
func (d *Desk) AmendCard(r journal.Ref) (*Card, error)

// NewNightCard returns a card for a new night: evening, beat and who fishes.
func (d *Desk) NewNightCard() (*Card, error)

// CardKinds lists the kinds of entry that cards can add, in the order of a menu.
var CardKinds = []journal.Kind{
	journal.KindContact, journal.KindRun, journal.KindRig, journal.KindWay, journal.KindSky, journal.KindWater,
	journal.KindWeather, journal.KindReady, journal.KindBreak, journal.KindNote, journal.KindEnd,
}
