package screen

import (
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// readWhole has the journal read whole, away from the window, while the topmost dialog is
// open: closing that ends the reading, and then nobody is told.
func readWhole[T any](s *Screen, work func(*state.Reading) (T, error), done func(T, error)) {
	r, err := s.opt.Keep.Read()
	if err != nil {
		var none T
		done(none, err)
		return
	}
	gone := false
	s.whole = r
	s.modal.onHide(func() { gone = true; r.Stop() })
	s.opt.Log.Debug("reading whole")
	away(func() (T, error) { return work(r) }, func(v T, err error) {
		s.whole = nil
		if gone {
			s.opt.Log.Debug("reading stopped")
			return
		}
		done(v, err)
	})
}

// showCheck reads the whole journal and says what is wrong.
func (s *Screen) showCheck() {
	first, second := own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 15}, 404, s.ink), own.NewParagraph(draw.Font{Size: 13.5}, 404, s.soft)
	var hide func()
	ok := newSheetButton(s, words.StopReading(), func() { hide() })
	ok.Importance = widget.HighImportance
	say := func(what, do string) { first.SetText(what); second.SetText(do) }
	say(words.ReadingWhole())
	hide = s.modal.show(container.New(inset{18, 14}, container.NewVBox(first, second, spacer(420), container.NewHBox(ok))), ok, func() { hide() })
	readWhole(s, (*state.Reading).Check, func(c state.Checked, err error) {
		ok.SetText(words.OK())
		if err != nil {
			say(words.Explain(err))
			return
		}
		s.opt.Log.Info("checked", "faults", len(c.Faults), "damaged", len(c.Damaged))
		if c.Sound() {
			say(words.CheckSound(c.Changes, c.Photos))
			return
		}
		hide()
		s.showFaults(c)
	})
}
