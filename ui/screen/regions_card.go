package screen

// tellCardRegions tells the fields and buttons of the open card, and what each field holds:
// whoever types from outside sees so that it arrived.
func (s *Screen) tellCardRegions() {
	c := s.card
	if c.shown == nil {
		return
	}
	for _, r := range c.rows {
		s.tellRegion("field "+r.id, r.in)
		text, selected := held(r.in)
		s.opt.Log.Debug("holds", "field", r.id, "text", text, "selected", selected)
	}
	s.tellRegion("card more", c.unfold)
	s.tellRegion("card commit", c.commit)
	s.tellRegion("card remove", c.remove)
	s.tellRegion("card close", c.closing)
}

// held is what a field shows, and what of it is selected.
func held(in input) (text, selected string) {
	switch in := in.(type) {
	case *combo:
		return in.Text, in.SelectedText()
	case *entry:
		return in.Text, in.SelectedText()
	case *chooser:
		return in.Selected, ""
	case *tick:
		if in.Checked {
			return "yes", ""
		}
	}
	return "", ""
}
