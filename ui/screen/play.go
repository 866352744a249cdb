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
		s.steps = 0
		s.frames = s.countFrames(s.strip)
		s.play = startClock(frameTime, func(d time.Duration) { s.desk.Advance(d) })
	case !on && s.play != nil:
		s.play.Stop()
		s.play = nil
		s.opt.Log.Debug("played", s.frames()...)
		s.sketch.RenewIfOther() // to where the cursor stands
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

// countFrames begins to count how often a board is painted; the function it returns gives
// that for the log, with the seconds since and the frames a second.
func (s *Screen) countFrames(b *own.Board) func() []any {
	began, paints := time.Now(), b.Paints()
	return func() []any {
		took, n := time.Since(began).Seconds(), b.Paints()-paints
		return []any{"seconds", took, "frames", n, "rate", float64(n) / max(took, 1e-3)}
	}
}

// countDrag counts the frames of a drag over a board, for the log.
func (s *Screen) countDrag(d own.Drag, b *own.Board) {
	switch {
	case d.End && s.dragged != nil:
		s.opt.Log.Debug("dragged", s.dragged()...)
		s.dragged = nil
	case !d.End && s.dragged == nil:
		s.dragged = s.countFrames(b)
	}
}

// sketchSteps is how many steps of playing there are for one of the sketch: its shades
// change slowly, so that 15 of them a second look as 60 do.
const sketchSteps = 4

// renewSketch has the sketch follow the cursor: while the night is played in longer steps,
// unless something is passed.
func (s *Screen) renewSketch() {
	s.steps++
	if s.play != nil && s.steps%sketchSteps != 0 && s.desk.Passed() == s.passed {
		return
	}
	s.sketch.RenewIfOther()
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

// noteFrame logs, once, that the strip of a night has been painted: the last of the window.
func (s *Screen) noteFrame() {
	if s.framed || s.strip == nil || s.strip.Paints() == 0 {
		return
	}
	s.framed = true
	post(func() { s.opt.Log.Debug("first frame") }) // behind the frame that is being drawn
}
