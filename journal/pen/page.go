package pen

import (
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// Context is what is known before a text is read.
type Context struct {
	Clock   Clock        // the night; Clock.Things is what a time may hang on
	Today   journal.Date // for dates without a year; zero: that of the night
	Trip    journal.ID
	Beat    geo.Beat // as it was on that evening
	Beats   []Named  // every beat, for the head of a page
	Rods    []Rod
	Rod     journal.ID // named last, else zero
	Flies   []journal.Fly
	Entries []journal.Entry // already in the night
	Units   Units           // of bare numbers
	// Chosen says which reading holds of a clause that has several, by the byte
	// at which the clause begins; AsNote leaves any clause a note.
	Chosen map[int]int
	NewID  func() journal.ID // nil: journal.NewID
}

// AsNote in Context.Chosen leaves a clause as it stands: a note, without a reason.
const AsNote = -1

// Named is anything with a name.
type Named struct {
	ID   journal.ID
	Name string
}

// Rod is a rod by the names it is called by.
type Rod struct {
	ID       journal.ID
	Name     string
	Initials string
}

// Units are the units of numbers that have none.
type Units struct {
	Fly   units.LengthUnit
	Level units.LengthUnit
}

// TokenKind says what a stretch of the text is.
type TokenKind uint8

const (
	Space   TokenKind = iota // space and the marks between words
	Word                     // a word of the table
	Name                     // a rod, a pool, a fly, a beat
	Time                     // a moment or a stretch
	Measure                  // a number with its unit
	Unread                   // kept in the note
	Comment                  // kept in the note as it stands
)

// Token is a stretch of the text with what it was read as. The tokens of all
// lines, one after the other, are the whole text.
type Token struct {
	Span
	Kind  TokenKind
	Means []string // each meaning still open; none: it says nothing here
	Why   string   // why it could not be read
}

// Reading is one thing a clause may say.
type Reading struct {
	Label   string // tells it from the other readings; empty if there is no other
	Entries []journal.Entry
	Flies   []journal.Fly // new flies that the entries refer to
	Asks    []Ask
	Missing []string // members still to be filled, as in journal.Error.Field
	Unread  []string // what went into the note unread
}

// Ask is a doubt about a time, with what could stand in its place.
type Ask struct {
	At Span
	Question
}

// Clause is a part of a line that says one thing. Without readings it stays a note;
// several readings wait for a choice.
type Clause struct {
	Span
	Readings []Reading
	Note     journal.Note // always there to fall back on, with the reason
}

// Line is one line of the text, its line end included.
type Line struct {
	Span
	Tokens  []Token
	Clauses []Clause
	Head    *Head      // the line names a night
	Rod     journal.ID // the line names whose the lines after it are
	Evening journal.Date
}

// Head is the head of a page: the night it tells of.
type Head struct {
	Evening journal.Date
	Beat    journal.ID // zero: not named
	Other   bool       // another night than the one at hand
}

// Page is a whole text, read.
type Page struct {
	Text  string
	Lines []Line
}

// Entries returns the entries and new flies of every clause that is settled: with
// one reading and nothing missing or asked, else as a note with its reason. Lines of
// another night have no trip yet: give them one (Line.Evening) before they are written.
func (p Page) Entries() (out []journal.Entry, flies []journal.Fly) {
	for _, l := range p.Lines {
		for _, c := range l.Clauses {
			if len(c.Readings) == 1 && len(c.Readings[0].Missing) == 0 && len(c.Readings[0].Asks) == 0 {
				out = append(out, c.Readings[0].Entries...)
				flies = append(flies, c.Readings[0].Flies...)
				continue
			}
			out = append(out, c.Note)
		}
	}
	return out, flies
}
