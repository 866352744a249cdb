package screen

import (
	"time"

	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// frameTime is the least time between two steps of playing: 60 frames a second.
const frameTime = time.Second / 60

// syncPlay starts or stops the clock that moves the cursor, and says how fast the night
// passes and that it has.
func (s *Screen) syncPlay(w state.What) {
	on := s.desk.Playing()
	switch {
	case on && s.play == nil:
		began, paints := time.Now(), s.strip.Paints()
		s.played = func() {
			if took := time.Since(began).Seconds(); took > 0 {
				s.opt.Log.Debug("played", "seconds", took, "frames", s.strip.Paints()-paints, "rate", float64(s.strip.Paints()-paints)/took)
			}
		}
		s.play = startClock(frameTime, func(d time.Duration) { s.desk.Advance(d) })
	case !on && s.play != nil:
		s.play.Stop()
		s.play = nil
		s.played()
		s.pulse()
		if s.desk.PlayedOut() {
			s.tell(words.PlayedOut())
		} else {
			s.tell(words.Stopped())
		}
		return
	}
	if w.Has(state.Can) && on {
		s.tell(words.PlayingAt(s.desk.Rate()))
	}
}

// pulse rings the fish that the cursor has just passed while playing.
func (s *Screen) pulse() {
	up := s.desk.Surfaced()
	if len(up) == 0 && !s.pulsing {
		return
	}
	s.pulsing = len(up) > 0
	for _, b := range []*own.Board{s.sketch, s.strip} {
		sc, _ := b.Scene()
		var list []own.Pulse
		for _, u := range up {
			if box, ok := sc.Box(u.Ref); ok {
				list = append(list, own.Pulse{Box: box, Fresh: u.Fresh})
			}
		}
		b.Pulse(list)
	}
}
