package state

import (
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/pen"
	"gloamline/timeline"
)

// Scribble is a text that is read while it is typed: the line at the foot of the log,
// or a whole page of notes. It says what entries the text would make, word by word and
// in sentences, offers what has several meanings, and stores what is settled as one
// change. Nothing is ever chosen for the person: what is open stays open until they
// choose or leave it a note.
//
// A choice holds for the words it was made for, wherever they then stand in the text,
// and is forgotten with them.
type Scribble struct {
	d    *Desk
	text string
	rod  journal.ID        // whose the lines are that name nobody
	pick map[string]string // label of the reading chosen, or asNote, by clause
	off  map[string]bool   // lines left out, by line

	page    pen.Page
	offers  map[string][]string // the readings a clause had before one was chosen
	lines   []ScribbleLine
	kept    []journal.Entry // what Commit stores
	flies   []journal.Fly
	preview *timeline.Night
	problem string
	undone  bool // something is open
}

// ClauseState says how far a part of a line is understood.
type ClauseState uint8

const (
	Settled   ClauseState = iota // becomes entries
	Open                         // waits for a choice
	Kept                         // stays a note
	Wrong                        // read, but the journal would refuse it
	Elsewhere                    // belongs to another night
)

// WordKind says what a word was taken for, by which it is coloured.
type WordKind uint8

const (
	PlainWord WordKind = iota // says nothing here, or space
	TradeWord
	NameWord
	TimeWord
	MeasureWord
	UnreadWord
	CommentWord
)

// ScribbleWord is a stretch of a line with what it was read as.
type ScribbleWord struct {
	Text     string
	Kind     WordKind
	Says     string // each meaning still open, joined by “or”
	Doubt    bool   // it has several meanings, so many
	Meanings int
	Why      string // why it could not be read
	Clause   int    // of the line; -1: none
}

// ScribbleClause is a part of a line that says one thing.
type ScribbleClause struct {
	At    int // the byte at which it begins; what Choose takes
	Text  string
	State ClauseState
	Says  []string // what it makes, a sentence each; a remark may follow
	Why   string   // the question, the fault, or why it stays a note
	Ways  []string // what can be chosen
	Taken int      // of Ways, -1: none yet
	refs  []journal.Ref
	ways  []way
}

// ScribbleLine is one line of the text.
type ScribbleLine struct {
	Text    string // without its line end
	Words   []ScribbleWord
	Clauses []ScribbleClause
	Head    string // what a line says that makes no entry: this night, Anna's
	Blank   bool
	Off     bool // left out
}

// Open reports whether something of the line waits for a choice or is wrong.
func (l ScribbleLine) Open() bool {
	for _, c := range l.Clauses {
		if c.State == Open || c.State == Wrong {
			return !l.Off
		}
	}
	return false
}

// NewScribble returns an empty one.
func (d *Desk) NewScribble() *Scribble {
	return &Scribble{d: d, pick: map[string]string{}, off: map[string]bool{}}
}

// Text returns the text as it stands; a choice of a time may have amended it.
func (s *Scribble) Text() string { return s.text }

// Set has another text read. It costs about as much as building the night.
func (s *Scribble) Set(text string) {
	s.text = text
	s.read()
}

// Renew reads the text again, since the night changed.
func (s *Scribble) Renew() { s.read() }

// Lines returns what was read, a line each.
func (s *Scribble) Lines() []ScribbleLine { return s.lines }

// Preview is the night as it would be, nil where that cannot be said.
func (s *Scribble) Preview() *timeline.Night { return s.preview }

// Made returns what Commit would store, in the order of the text.
func (s *Scribble) Made() []journal.Entry { return s.kept }

// Problem is what is wrong but belongs to no line; empty if nothing.
func (s *Scribble) Problem() string { return s.problem }

// Unsettled reports whether a line that is not left out waits for a choice.
func (s *Scribble) Unsettled() bool { return s.undone }

// Counts returns how many entries there would be, how many of them notes, how many
// clauses are open, and how many lines are left out.
func (s *Scribble) Counts() (entries, notes, open, off int) {
	entries = len(s.kept)
	for _, e := range s.kept {
		if _, ok := e.(journal.Note); ok {
			notes++
		}
	}
	for _, l := range s.lines {
		if l.Off {
			off++
			continue
		}
		for _, c := range l.Clauses {
			if c.State == Open || c.State == Wrong {
				open++
			}
		}
	}
	return entries, notes, open, off
}

// LeaveOut takes a line out of what is stored, or back in. What follows is read as if
// it were not there.
func (s *Scribble) LeaveOut(line int, out bool) {
	if line < 0 || line >= len(s.lines) {
		return
	}
	k := s.lineKeys()[line]
	delete(s.off, k)
	if out {
		s.off[k] = true
	}
	s.read()
}

// Rod returns whose the lines are that name nobody, zero if that is not said.
func (s *Scribble) Rod() journal.ID { return s.rod }

// Whose is the name of that rod, empty if it is not said.
func (s *Scribble) Whose() string {
	if s.d.stands() == nil || s.rod.IsZero() {
		return ""
	}
	return s.rodName(s.rod)
}

// context is the night as the pen is told of it.
func (s *Scribble) context() pen.Context {
	n := s.d.stands()
	trip := n.Log.Trip
	u := typed(s.d.prefs)
	c := pen.Context{Trip: trip.ID, Beat: n.Beat, Today: journal.DateOf(s.d.now(), n.Zone), Entries: n.Log.Entries, Rod: s.rod,
		Units: pen.Units{Fly: u.Fly, Level: u.Level}}
	c.Clock = Clock{Evening: trip.Evening, Zone: n.Zone, Things: Things(n), After: eveningOf(n)}
	if run, ok := s.d.SelectedEntry().(journal.Run); ok {
		c.Clock.Run = run.ID
	} else if runs := n.Log.Runs(journal.ID{}); len(runs) == 1 {
		c.Clock.Run = runs[0].ID
	}
	if !slices.ContainsFunc(n.Rods, func(r timeline.RodNight) bool { return r.Rod.ID == s.rod }) {
		s.rod, c.Rod = journal.ID{}, journal.ID{} // of another night
	}
	for _, r := range n.Rods {
		c.Rods = append(c.Rods, pen.Rod{ID: r.Rod.ID, Name: r.Name, Initials: r.Initials})
	}
	c.Flies, _ = journal.All[journal.Fly](s.d.j) // flies that cannot be read are not meant
	beats, _ := journal.All[journal.Beat](s.d.j)
	for _, b := range beats {
		c.Beats = append(c.Beats, pen.Named{ID: b.ID, Name: b.On(trip.Evening).Name})
	}
	return c
}

// eveningOf is when the evening of a night begins for one who says “twenty to ten”: two
// hours before sunset. Zero where the sun does not set.
func eveningOf(n *timeline.Night) time.Time {
	if len(n.Sky.Sunset) == 0 {
		return time.Time{}
	}
	return n.Sky.Sunset[0].Add(-2 * time.Hour)
}

// lineKeys names each line by its text and how often that came before.
func (s *Scribble) lineKeys() []string {
	seen := map[string]int{}
	var out []string
	for _, l := range pen.Lines(s.text) {
		out = append(out, keyOf(seen, strings.TrimSpace(s.text[l.From:l.To])))
	}
	return out
}

// keyOf names a text, the nth time it comes.
func keyOf(seen map[string]int, text string) string {
	seen[text]++
	return text + "\x00" + strings.Repeat("+", seen[text])
}

// blanked is the text with the lines left out as spaces, so that every byte keeps its place.
func (s *Scribble) blanked() string {
	if len(s.off) == 0 {
		return s.text
	}
	var b strings.Builder
	keys := s.lineKeys()
	for i, l := range pen.Lines(s.text) {
		text := s.text[l.From:l.To]
		if s.off[keys[i]] {
			end := strings.TrimRight(text, "\r\n")
			text = strings.Repeat(" ", len(end)) + text[len(end):]
		}
		b.WriteString(text)
	}
	return b.String()
}
