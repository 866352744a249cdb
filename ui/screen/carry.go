package screen

import (
	"math"
	"time"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// carrying is an entry that the pointer has taken hold of.
type carrying struct {
	on    bool
	tried bool // the entry under this press was lifted, or could not be
	frame scene.StripFrame
	from  float64 // where it was taken hold of, dp
	was   journal.Spread
}

// slip is how far a press may slip before it moves what lies there, in dp: a click must
// move nothing.
const slip = 4.0

// edgeReach is how near to the end of a bracket the pointer takes hold of that end.
const edgeReach = 7.0

// carryInTime moves what was under the pointer when the button went down, and
// reports whether the drag is about an entry.
func (s *Screen) carryInTime(d own.Drag, board draw.Size) bool {
	if !d.From.Found || !s.selectable(d.From.Hit.Ref) {
		return false
	}
	c := &s.carry
	if !c.tried && d.At.Dist(d.From.At) <= slip {
		return true
	}
	if !c.tried && !d.End {
		c.tried = true
		c.frame, c.from = scene.Frame(s.desk.Night(), board, s.stripView()), d.From.At.X
		c.on = s.desk.Lift(d.From.Hit.Ref, s.grip(d.From, c.frame))
		c.was, _, _ = s.desk.Carried()
	}
	if c.on && !d.End {
		s.desk.Carry(c.frame.At(d.At.X).Sub(c.frame.At(c.from)))
	}
	s.endCarry(d)
	return true
}

// grip is the part of a run or a break that a place on the strip takes hold of: an end
// of its bracket, or the whole. A short bracket is held as a whole in its middle third.
func (s *Screen) grip(p own.Pick, f scene.StripFrame) state.Grip {
	from, to, ok := s.desk.Ends(p.Hit.Ref)
	if !ok {
		return state.Whole
	}
	a, b := f.X(from), f.X(to)
	reach := math.Min(edgeReach, (b-a)/3)
	switch {
	case math.Abs(p.At.X-b) <= reach || p.At.X > b:
		return state.Stop
	case math.Abs(p.At.X-a) <= reach || p.At.X < a:
		return state.Start
	}
	return state.Whole
}

// carryOnBeat moves a fish over the sketch, and reports whether the drag is about one.
func (s *Screen) carryOnBeat(d own.Drag) bool {
	if !d.From.Found || d.From.Hit.Ref.Kind != journal.KindContact || !s.selectable(d.From.Hit.Ref) {
		return false
	}
	c := &s.carry
	if !c.tried && d.At.Dist(d.From.At) <= slip {
		return true
	}
	if !c.tried && !d.End {
		c.tried = true
		c.on = s.desk.Lift(d.From.Hit.Ref, state.Whole)
	}
	if c.on && !d.End {
		s.desk.CarryTo(scene.SketchPlace(s.desk.Night(), d.From.Size, s.sketchView(), d.At))
	}
	s.endCarry(d)
	return true
}

// endCarry puts down what the pointer lets go of.
func (s *Screen) endCarry(d own.Drag) {
	if !d.End {
		return
	}
	on := s.carry.on
	s.carry = carrying{}
	if on {
		s.putDown()
	}
}

// putDown stores what is carried and says where it is now; refused, it is back where it
// was, and the reason stands beside it and in the footer.
func (s *Screen) putDown() {
	before := s.desk.Lifted()
	if before == nil {
		return
	}
	if err := s.desk.PutDown(); err != nil {
		s.refuse(before.Ref(), err)
		return
	}
	if said := s.desk.Moved(before); said != "" {
		s.tell(said)
	}
}

// refuse says why an entry could not be moved, beside its mark.
func (s *Screen) refuse(r journal.Ref, err error) {
	what, do := words.Explain(err)
	s.tell(what + " " + do)
	for _, b := range []*own.Board{s.sketch, s.strip} {
		if b == s.sketch && s.strip.Focused() {
			continue
		}
		if sc, _ := b.Scene(); b.Visible() {
			if box, ok := sc.Box(r); ok {
				b.Say(what+" "+do, box)
				return
			}
		}
	}
}

// settleAfter is how long after the last stroke what was moved by keys is stored.
const settleAfter = 900 * time.Millisecond

// syncCarry marks where what is moved was, and has what is moved by keys put down once
// no stroke follows.
func (s *Screen) syncCarry() {
	r, _, on := s.desk.Carrying()
	for _, b := range []*own.Board{s.sketch, s.strip} {
		switch {
		case !on:
			b.Ghost(draw.Rect{})
		case !s.lifted: // the boards still show it where it was
			sc, _ := b.Scene()
			box, _ := sc.Box(r)
			b.Ghost(box)
		}
	}
	s.lifted = on
	if s.settle != nil {
		s.settle.Stop()
		s.settle = nil
	}
	if s.desk.Nudging() {
		s.settle = startClock(settleAfter, func(time.Duration) { s.settleNow() })
		at, fault, _ := s.desk.Carried()
		s.tell(words.Nudged(at, s.desk.Night().Zone, s.desk.CarriedAside(), fault))
	}
}

// begin clears the way for another act of the pointer: what keys moved is stored, and what
// was said on the boards goes.
func (s *Screen) begin() {
	s.settleNow()
	s.hush()
}

// hush takes away what was said on the boards.
func (s *Screen) hush() {
	for _, b := range []*own.Board{s.sketch, s.strip, s.log} {
		b.Say("", draw.Rect{})
	}
	if r := s.rooms.here(); r != nil {
		r.hush()
	}
}

// settleNow puts down what is moved by keys.
func (s *Screen) settleNow() {
	if s.settle != nil {
		s.settle.Stop()
		s.settle = nil
	}
	if s.desk.Nudging() {
		s.putDown()
	}
}

// carryHint is the tip at the pointer while it carries something; empty otherwise.
func (s *Screen) carryHint(onBeat bool) string {
	at, fault, ok := s.desk.Carried()
	if !ok {
		return ""
	}
	n := s.desk.Night()
	if !onBeat {
		return words.Carried(at, s.carry.was, n.Zone, s.desk.CarriedAside(), fault)
	}
	pool := ""
	if p, ok := n.Beat.Pool(s.desk.Pool()); ok {
		pool = words.PoolName(p.Name)
	}
	return words.CarriedTo(pool, fault)
}
