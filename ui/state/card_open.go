package state

// Card returns the open card, nil if there is none.
func (d *Desk) Card() *Card { return d.card }

// OpenCard puts a card on the desk in place of the one there. A night that is played
// stops, so that what the card says stands still.
func (d *Desk) OpenCard(c *Card) {
	d.act(func() {
		d.settle()
		d.Play(false)
		d.card = c
		d.tell(CardOpen | Can)
	})
}

// CloseCard puts the open card away; what was typed on it is dropped.
func (d *Desk) CloseCard() { d.act(d.closeCard) }

func (d *Desk) closeCard() {
	if d.card != nil {
		d.card = nil
		d.tell(CardOpen | Can)
	}
}

// refreshCard lets the untouched fields of a new thing follow the cursor.
func (d *Desk) refreshCard() {
	if d.card != nil && d.card.isNew {
		d.card.refresh()
		d.tell(CardOpen)
	}
}

// rebaseCard lets the open card follow a change of its thing; if that is gone, so
// is the card.
func (d *Desk) rebaseCard() {
	if d.card == nil {
		return
	}
	if d.card.load != nil && !d.card.isNew && !d.card.load() {
		d.closeCard()
		return
	}
	d.card.begin()
	d.tell(CardOpen)
}
