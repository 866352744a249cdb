package state

import (
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// What says what changed, so that a view knows what to draw anew. Several may
// come at once.
type What uint

const (
	Nights    What = 1 << iota // the list of nights or a row of it
	NightOpen                  // the open night: another one, or built anew
	Cursor                     // the instant of the cursor
	Selection                  // what is selected, or the pool picked out
	View                       // the part of the strip or of the sketch in view
	Look                       // colours, units, words
	CardOpen                   // a card was opened, closed or its fields changed
	Can                        // which commands are enabled, or their titles
	Carry                      // an entry is being moved in time
	RoomOpen                   // another room is shown
	RoomView                   // what a room other than the night shows
)

// Everything is what changed for a view that has shown nothing yet.
const Everything = Nights | NightOpen | Cursor | Selection | View | Look | CardOpen | Can | Carry | RoomOpen | RoomView

// Has reports whether w includes any of v.
func (w What) Has(v What) bool { return w&v != 0 }

// Desk is the one owner of where a person is in the journal.
type Desk struct {
	j      *journal.Journal
	loader *timeline.Loader
	now    func() time.Time
	subs   []func(What)
	busy   int  // depth of act
	news   What // gathered while busy

	list   list
	room   Room
	boxes  *BoxDesk
	intake *IntakeDesk // nil until it is entered

	night   *timeline.Night
	fault   error // why the open night cannot be shown
	trip    journal.ID
	cursor  time.Time
	sel     journal.Ref
	pool    geo.ID     // picked out on the sketch by hand; zero: follows the selection
	spot    geo.ID     // a way in, a hazard or a mark picked out by hand
	rod     journal.ID // whose lane was pointed at, until something is selected
	touched journal.ID // whose lane or entry was touched last on this night
	part    Part
	play    bool
	rate    int // of playing, minutes of the night a second
	carry   *carry
	ghost   *ghost
	left    int // contacts whose pool was written down when an entry was last put down

	strip    span
	sketch   SketchView
	look     string
	prefs    words.Prefs
	readOnly bool // the journal

	album *album.Album // where copies of originals go; nil: nowhere
	shot  Shot         // the picture that was read last

	card     *Card
	beats    *BeatDesk
	together *Together   // nil until it is entered
	traits   traits      // of nights read so far, for the room of nights together
	season   *SeasonDesk // nil until it is entered
	guest    *GuestDesk  // nil until it is entered
	commands []*Command
}

// New returns the desk of a journal with no night open. now is asked for the date
// that a new night is offered, and for nothing else.
func New(j *journal.Journal, now func() time.Time) *Desk {
	d := &Desk{j: j, traits: traits{}, loader: timeline.NewLoader(j), now: now, look: DefaultLook, rate: usualRate, room: NightRoom}
	d.sketch = wholeBeat
	d.commands = d.table()
	d.reload()
	d.news = 0
	j.Subscribe(d.changed)
	return d
}

// Journal returns the journal itself.
func (d *Desk) Journal() *journal.Journal { return d.j }

// OnChange has f called after each change with what changed. f may read the desk;
// it is called once per act, when everything stands.
func (d *Desk) OnChange(f func(What)) { d.subs = append(d.subs, f) }

// act runs f and then tells the subscribers once what came of it.
func (d *Desk) act(f func()) {
	d.busy++
	f()
	d.busy--
	if d.busy > 0 || d.news == 0 {
		return
	}
	news := d.news
	d.news = 0
	for _, s := range d.subs {
		s(news)
	}
}

func (d *Desk) tell(w What) { d.news |= w }
