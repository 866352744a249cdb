package state

import (
	"slices"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/scene"
)

// MostTogether is how many nights are laid together at most; of more, the latest.
const MostTogether = 60

// Together is the room in which nights are laid over each other: which nights, along
// which axis, in what order, and what is picked out. Nights are built when first shown
// and kept until a change touches them. It is remembered by Encode and Decode.
type Together struct {
	d *Desk

	choice  NightChoice
	picture scene.Picture
	axis    timeline.Axis
	order   timeline.NightOrder
	stands  journal.ID
	marked  journal.ID // in the list
	fish    journal.Ref
	over    journal.Ref

	traits []timeline.Traits // of all nights that can be read, latest first; nil: to be read
	nights map[journal.ID]*timeline.Night
	laid   map[timeline.Axis]*timeline.Overlay // of the nights chosen, in order; nil: to be laid
	fault  error                               // why a night chosen is not shown
	left   int                                 // nights chosen beyond MostTogether
}

// Together returns the room of nights side by side.
func (d *Desk) Together() *Together {
	if d.together == nil {
		d.together = &Together{d: d, picture: scene.JoinedPicture, nights: map[journal.ID]*timeline.Night{}}
		d.together.choice = d.together.usual()
		d.together.stands = d.together.first()
	}
	return d.together
}

// first is the night that stands out at first: the open one if it is among those laid,
// else the latest fished.
func (t *Together) first() journal.ID {
	var latest journal.ID
	for _, x := range t.choice.Select(t.Traits()) {
		if x.Trip == t.d.trip {
			return x.Trip
		}
		if latest.IsZero() {
			latest = x.Trip
		}
	}
	return latest
}

// act changes what is shown.
func (t *Together) act(f func()) {
	t.d.act(func() {
		f()
		t.d.tell(RoomView | Can)
	})
}

// Traits returns those of every night that can be read, the latest first.
func (t *Together) Traits() []timeline.Traits {
	if t.traits != nil {
		return t.traits
	}
	t.traits = t.d.allTraits()
	return t.traits
}

// Axis returns the axis along which the nights are laid.
func (t *Together) Axis() timeline.Axis { return t.axis }

// SetAxis lays them along another.
func (t *Together) SetAxis(a timeline.Axis) {
	if a <= timeline.LightAxis {
		t.act(func() { t.axis = a })
	}
}

// Picture returns the picture that is shown.
func (t *Together) Picture() scene.Picture { return t.picture }

// SetPicture shows another; an unknown one leaves things as they are.
func (t *Together) SetPicture(p scene.Picture) {
	if slices.Contains(scene.Pictures, p) {
		t.act(func() { t.picture = p })
	}
}

// Order returns the order of the nights.
func (t *Together) Order() timeline.NightOrder { return t.order }

// SetOrder puts them in another.
func (t *Together) SetOrder(o timeline.NightOrder) {
	t.act(func() {
		t.order = o
		for _, l := range t.laid {
			l.Sort(o)
		}
	})
}

// Sides returns the nights along the axis and along the light, in order.
func (t *Together) Sides() scene.Sides {
	time := t.axis
	if time == timeline.LightAxis {
		time = timeline.ClockAxis
	}
	return scene.Sides{Time: t.lay(time), Light: t.lay(timeline.LightAxis), ByLight: t.axis == timeline.LightAxis}
}

func (t *Together) lay(a timeline.Axis) *timeline.Overlay {
	if o, ok := t.laid[a]; ok {
		return o
	}
	if t.laid == nil {
		t.laid = map[timeline.Axis]*timeline.Overlay{}
	}
	o := timeline.Lay(t.built(), a)
	o.Sort(t.order)
	t.laid[a] = o
	return o
}

// built are the nights chosen. One that cannot be set in its light is left out and told
// by Fault.
func (t *Together) built() []*timeline.Night {
	var out []*timeline.Night
	t.fault = nil
	for _, id := range t.chosen() {
		n, ok := t.nights[id]
		if !ok {
			var err error
			if n, err = t.d.loader.Load(id); err != nil {
				t.fault = err
				continue
			}
			t.nights[id] = n
		}
		out = append(out, n)
	}
	return out
}

// Prepare sets up to so many of the nights chosen in their light ahead of their being shown, and
// reports whether any are left.
func (t *Together) Prepare(nights int) (left bool) {
	for _, id := range t.chosen() {
		if _, ok := t.nights[id]; ok {
			continue
		}
		if nights--; nights < 0 {
			return true
		}
		if n, err := t.d.loader.Load(id); err == nil { // else built says so
			t.nights[id] = n
		} else {
			nights++
		}
	}
	return false
}

// Fault says why a night that was chosen is not shown, nil if all are.
func (t *Together) Fault() error { return t.fault }

// LeftOut returns how many nights were chosen beyond what is laid together.
func (t *Together) LeftOut() int { return t.left }

// View is what is picked out, as the pictures take it.
func (t *Together) View() scene.TogetherView {
	return scene.TogetherView{Night: t.Stands(), Fish: t.fish, Over: t.over, Hand: t.choice.hand(), Prefs: t.d.prefs}
}

// follow forgets what a change of the journal may have altered. A threshold of trees
// grey hangs on all nights of a beat, so that a sky noted touches them all.
func (t *Together) follow(c journal.Change) {
	t.traits, t.laid = nil, nil
	for _, e := range c.Edits {
		switch r := e.Ref(); {
		case r.Kind == journal.KindTrip:
			delete(t.nights, r.ID)
		case r.Trip.IsZero() || r.Kind == journal.KindSky:
			clear(t.nights)
		default:
			delete(t.nights, r.Trip)
		}
	}
	t.d.tell(RoomView)
}
