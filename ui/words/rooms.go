package words

// RoomName is what a room of the window is called in the menu and at the foot of the
// column at the left.
func RoomName(room string) string {
	switch room {
	case "night":
		return "Nights"
	case "together":
		return "Nights together"
	case "season":
		return "Season"
	case "beat":
		return "Beats"
	case "boxes":
		return "Boxes and flies"
	case "intake":
		return "Read in"
	case "guest":
		return "Show a guest"
	}
	return room
}

// RoomHelp says what a room is for, one sentence.
func RoomHelp(room string) string {
	switch room {
	case "night":
		return "Shows one night: where, in which light, and its log."
	case "together":
		return "Lays nights over each other, by the clock and by the light."
	case "season":
		return "Says what many nights tell together, with the hours behind it."
	case "beat":
		return "Draws beats: pools, banks, trees, hazards and skylines."
	case "boxes":
		return "Keeps flies, boxes and the rules one fishes by."
	case "intake":
		return "Makes a proposed night from a track, photos and a river gauge."
	case "guest":
		return "Shows a night, or all nights on a pool, to a client or a friend: as much of it as that one may see."
	}
	return ""
}

// HoldRoom says why a room is not left: something typed on a card is not stored.
func HoldRoom() string {
	return "The card has something on it that is not stored. Press Enter to store it or Escape to drop it, then go."
}
