package state

import "gloamline/ui/words"

// Room is a part of the work with a screen of its own. The window shows one at a time.
type Room string

// The rooms.
const (
	NightRoom    Room = "night"    // one night: sketch, strip, log
	TogetherRoom Room = "together" // nights laid over each other
	SeasonRoom   Room = "season"   // what many nights say
	BeatRoom     Room = "beat"     // drawing a beat
	BoxRoom      Room = "boxes"    // flies, boxes, house rules
	IntakeRoom   Room = "intake"   // tracks, photos and gauges read in
	GuestRoom    Room = "guest"    // a night or a pool shown to somebody
)

// Rooms lists the rooms in the order of the menu.
var Rooms = []Room{NightRoom, TogetherRoom, SeasonRoom, BeatRoom, BoxRoom, IntakeRoom, GuestRoom}

// Room returns the room that is shown.
func (d *Desk) Room() Room { return d.room }

// EnterRoom shows another room: playing stops, and what is being moved is put down. A
// card on which something was typed is not left: false is returned, and the card stays.
func (d *Desk) EnterRoom(r Room) bool {
	if r == d.room {
		return true
	}
	if d.card != nil && d.card.Dirty() {
		return false
	}
	d.act(func() {
		d.Play(false)
		if d.guest != nil {
			d.guest.play = false
		}
		d.settle()
		d.PutBack()
		d.closeCard()
		d.room, d.part = r, Anywhere
		d.tell(RoomOpen | Can)
	})
	return true
}

// roomTable is the part of the menu View that leads from room to room.
func (d *Desk) roomTable(t *tabler) {
	for i, r := range Rooms {
		t.window("view.room-"+string(r), words.RoomName(string(r)), ctrl(string(rune('1'+i))), words.RoomHelp(string(r)))
	}
}

// here reports whether a command means something in the room that is shown.
func (d *Desk) here(c *Command) bool { return c.Room == "" || c.Room == d.room }

// CommandsHere returns the commands of the room that is shown and those that mean the
// same everywhere, unless the room has one of its own for their key.
func (d *Desk) CommandsHere() []*Command {
	taken := map[Key]bool{}
	for _, c := range d.commands {
		if c.Room == d.room && !c.Key.IsZero() && c.On == Anywhere {
			taken[c.Key] = true
		}
	}
	var out []*Command
	for _, c := range d.commands {
		if d.here(c) && (c.Room != "" || !taken[c.Key]) {
			out = append(out, c)
		}
	}
	return out
}
