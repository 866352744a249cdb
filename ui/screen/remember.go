package screen

import (
	"fmt"

	"fyne.io/fyne/v2"

	"gloamline/geo"
	"gloamline/ui/words"
)

func (s *Screen) remember(key, value string) {
	if s.opt.Remember != nil {
		s.opt.Remember.Set(key, value)
	}
}

func (s *Screen) recall(key string) string {
	if s.opt.Remember == nil {
		return ""
	}
	return s.opt.Remember.Get(key)
}

// restore gives the window the size it had and opens the night that was open,
// unless one is open already.
func (s *Screen) restore() {
	s.desk.SetPrefs(words.DecodePrefs(s.recall("prefs")))
	s.keepPrefs()
	size := fyne.NewSize(1280, 800)
	var w, h float32
	if _, err := fmt.Sscanf(s.recall("size"), "%fx%f", &w, &h); err == nil && w >= 800 && h >= 500 && w < 8000 && h < 8000 {
		size = fyne.NewSize(w, h)
	}
	s.win.Resize(size)
	s.win.SetCloseIntercept(s.quit)
	if s.desk.Night() != nil {
		return
	}
	id, err := geo.ParseID(s.recall("night"))
	if err == nil && s.desk.RowOf(id) >= 0 && s.desk.Open(id) == nil {
		return
	}
	if s.desk.NightCount() > 0 {
		if err := s.desk.Open(s.desk.NightRow(0).Trip); err != nil {
			s.opt.Log.Warn("the last night does not open", "error", err)
		}
	}
}

func (s *Screen) rememberNight() {
	if n := s.desk.Night(); n != nil {
		s.remember("night", n.Log.Trip.ID.String())
	}
}

// quit keeps the window's size and closes it. Everything written down is stored
// already, except what stands on an open card.
func (s *Screen) quit() {
	if c := s.desk.Card(); c != nil && c.Dirty() && !s.card.warned {
		s.card.escape()
		return
	}
	s.settleNow()
	if s.whole != nil { // the file is closed when nobody reads it any more
		s.whole.Stop()
	}
	size := s.win.Canvas().Size()
	if !s.win.FullScreen() {
		s.remember("size", fmt.Sprintf("%.0fx%.0f", size.Width, size.Height))
	}
	if s.play != nil {
		s.play.Stop()
	}
	s.win.Close()
}
