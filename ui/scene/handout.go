package scene

import (
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Handout is something that is shown to somebody else, on the screen and in every file:
// a night, or all nights on one pool. It is made of what may be shown and holds nothing
// else, so that a preview is what leaves.
type Handout interface {
	// Title is the one sentence over it, Where the position beneath, empty if not shown.
	Title() string
	Where() string
	// Pages are its sheets of A4.
	Pages(look Look, p words.Prefs) []*draw.List
	// Show is the picture of a whole screen.
	Show(size draw.Size, look Look, v ClientView) Scene
	// End is the cursor at which all has been played, from 0; Moments are the cursors of
	// a film of so many pictures at most, and Pace how far one second of play goes at a
	// rate in minutes of a night a second.
	End() int
	Moments(most int) []int
	Pace(rate int) float64
	// Frame is the picture of a film at a cursor, with ClientWhole all of it; Says is that
	// in words.
	Frame(size draw.Size, look Look, cursor int, p words.Prefs) *draw.List
	Says(cursor int, p words.Prefs) string
	// Lines are the fish in words, Remarks what was written down.
	Lines(p words.Prefs) []string
	Remarks() []ClientNote
	// Seen are the fish in the order of their numbers, from 1.
	Seen() []ClientFish
	// Moment is the cursor at which a fish has come, by its number.
	Moment(n int) int
	// Photos are pictures of some of them; the first comes first.
	Photos() []ClientPhoto
}

var (
	_ Handout = ClientNight{}
	_ Handout = ClientPast{}
)

// ClientView is how a handout is shown on a screen.
type ClientView struct {
	Cursor  int     // ClientWhole: all of it at once
	Fish    int     // the number of the fish picked out; 0: none
	Playing bool    // of the controls
	PerInch float64 // dp to an inch of this screen, as measured with a card; 0: not measured
	Keys    bool    // what keys do is told at the foot
	Bare    bool    // no controls: it is a picture of itself
	Prefs   words.Prefs
}

// Kinds of hits on a handout: a fish by its number, a moment of play, a control.
const (
	GuestFishKind journal.Kind = "guest fish"
	GuestTimeKind journal.Kind = "guest time"
	GuestActKind  journal.Kind = "guest act"
)

// Controls of a handout on the screen.
const (
	GuestBefore = iota + 1
	GuestPlay
	GuestNext
)

func guestRef(k journal.Kind, n int) journal.Ref {
	return journal.Ref{Kind: k, ID: journal.ID{1, 14: byte(n >> 8), 15: byte(n)}}
}

// GuestNumber is the fish, the cursor or the control of such a hit.
func GuestNumber(r journal.Ref) int { return int(r.ID[14])<<8 | int(r.ID[15]) }

// shownSwitches says what each thing that may be shown does.
var shownSwitches = map[journal.Shows]func(*Shown) *bool{
	journal.ShowWater: func(s *Shown) *bool { return &s.Water }, journal.ShowPlaces: func(s *Shown) *bool { return &s.Places },
	journal.ShowCoordinates: func(s *Shown) *bool { return &s.Coordinates }, journal.ShowPeople: func(s *Shown) *bool { return &s.People },
	journal.ShowWeights: func(s *Shown) *bool { return &s.Weights }, journal.ShowNotes: func(s *Shown) *bool { return &s.Notes },
	journal.ShowPhoto: func(s *Shown) *bool { return &s.Photo },
}

// ShownTo is what a recipient may see.
func ShownTo(r journal.Recipient) Shown {
	s := Shown{Person: r.Person}
	for _, x := range r.Shows {
		if at := shownSwitches[x]; at != nil {
			*at(&s) = true
		}
		if x == journal.ShowPools {
			s.Pools = PoolNames
		}
	}
	return s
}

// photoOf is the picture of a fish, nil if there is none.
func photoOf(h Handout, n int) *ClientPhoto {
	for _, p := range h.Photos() {
		if p.Fish == n {
			return &p
		}
	}
	return nil
}

// fishNumbered is the fish of that number.
func fishNumbered(h Handout, n int) (ClientFish, bool) {
	if all := h.Seen(); n > 0 && n <= len(all) {
		return all[n-1], true
	}
	return ClientFish{}, false
}
