package screen

import (
	"fmt"

	"gloamline/ui/scene"
)

// The width of a bank card on this screen is remembered for this machine in pixels, since a
// dp changes with the size of text. What the system says of a screen's size is often wrong:
// it is not asked.

// readCard takes back what keepCard remembered; 0 for nothing of sense.
func readCard(text string) float64 {
	var px float64
	if _, err := fmt.Sscanf(text, "%g", &px); err != nil || !(px >= 100 && px <= 4000) {
		return 0
	}
	return px
}

// pixels is how many of the screen one dp takes.
func (r *guestRoom) pixels() float64 {
	if k := float64(r.s.win.Canvas().Scale()); k > 0 {
		return k
	}
	return 1
}

// cardDp is the frame to begin with: as measured before, else as on 96 dots an inch.
func (r *guestRoom) cardDp() float64 {
	if r.card > 0 {
		return r.card / r.pixels()
	}
	return scene.CardInches * 96
}

func (r *guestRoom) keepCard(dp float64) {
	r.card = dp * r.pixels()
	r.s.remember("card", fmt.Sprintf("%.1f", r.card))
	r.board.Renew()
	r.s.opt.Log.Debug("screen measured", "card", r.card)
}

// perInch is how many dp an inch takes on this screen; 0 if it was not measured.
func (r *guestRoom) perInch() float64 { return r.card / r.pixels() / scene.CardInches }
