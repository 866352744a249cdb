package state

import (
	"bytes"
	"image"
	_ "image/gif"
	_ "image/jpeg"
	_ "image/png"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// tracing is an image that lies under the plan while one draws. It is not part of the beat.
type tracing struct {
	from  tracedFrom
	img   image.Image // nil until it is read
	lies  draft.Tracing
	marks [2]traceMark // what was clicked so far
}

type traceMark struct {
	px   draft.Pixel
	at   geo.Point
	hasP bool
	hasA bool
}

// tracedFrom is how a tracing is laid by: the file, and where two of its points lie.
type tracedFrom struct {
	Path   string         `json:"path"`
	Pixels [2]draft.Pixel `json:"pixels"`
	Places [2]geo.Place   `json:"places,omitzero"`
}

// maxTrace is the most pixels of an image that is traced from: some 200 MB unpacked.
const maxTrace = 50_000_000

// ReadTracing lays an image (JPEG, PNG or GIF) under the plan, in the middle of the view until two
// of its points are placed.
func (b *BeatDesk) ReadTracing(path string, data []byte) error {
	if b.top == nil {
		return nil
	}
	size, kind, err := image.DecodeConfig(bytes.NewReader(data))
	switch {
	case err != nil:
		return refusedBeat(journal.Invalid, words.NoImage())
	case size.Width*size.Height > maxTrace:
		return refusedBeat(journal.Invalid, words.ImageTooLarge())
	}
	img, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return refusedBeat(journal.Invalid, words.ImageBroken(kind))
	}
	b.d.act(func() {
		b.tell()
		t := b.top.trace
		if t == nil || t.from.Path != path {
			t = &tracing{from: tracedFrom{Path: path}}
			b.top.trace = t
		}
		t.img = img
		t.lay(b.top.hist.Now, b.View(), b.size.W)
		if t.from.Places[0].IsZero() && b.placed() {
			b.Take(PlaceTracing)
		}
		b.keep()
	})
	return nil
}

func (b *BeatDesk) placed() bool { return !b.now().Plane.Origin().IsZero() }

// lay puts the image where its two points say, or across the view.
func (t *tracing) lay(d draft.Draft, v PlanView, width float64) {
	box := t.img.Bounds()
	if !t.from.Places[0].IsZero() && !d.Plane.Origin().IsZero() {
		if lies, err := draft.Trace(t.from.Pixels[0], t.from.Pixels[1], d.Plane.At(t.from.Places[0]), d.Plane.At(t.from.Places[1])); err == nil {
			t.lies = lies
			return
		}
	}
	half := units.Metres(width * 0.4 / v.Scale)
	y := float64(box.Dy()) / 2
	t.lies, _ = draft.Trace(draft.Pixel{Y: y}, draft.Pixel{X: float64(box.Dx()), Y: y},
		geo.Point{X: v.Centre.X - half, Y: v.Centre.Y}, geo.Point{X: v.Centre.X + half, Y: v.Centre.Y})
}

func (t *tracing) keep(draft.Draft) tracedFrom { return t.from }

func (t *tracing) extent() (lo, hi geo.Point) {
	box := t.img.Bounds()
	w, h := float64(box.Dx()), float64(box.Dy())
	lo, hi = t.lies.Plane(draft.Pixel{}), t.lies.Plane(draft.Pixel{})
	for _, p := range []draft.Pixel{{X: w}, {Y: h}, {X: w, Y: h}} {
		q := t.lies.Plane(p)
		lo = geo.Point{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
		hi = geo.Point{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
	}
	return lo, hi
}

// Tracing returns the image under the plan and where it lies; false if there is none.
func (b *BeatDesk) Tracing() (img image.Image, lies draft.Tracing, ok bool) {
	if b.top == nil || b.top.trace == nil || b.top.trace.img == nil {
		return nil, draft.Tracing{}, false
	}
	return b.top.trace.img, b.top.trace.lies, true
}

// TracingWanted is the file of an image that lay under this drawing last time and has not been
// read again; empty for none.
func (b *BeatDesk) TracingWanted() string {
	if b.top == nil || b.top.trace == nil || b.top.trace.img != nil {
		return ""
	}
	return b.top.trace.from.Path
}

// DropTracing takes the image away.
func (b *BeatDesk) DropTracing() {
	b.d.act(func() {
		if b.top != nil && b.top.trace != nil {
			b.top.trace = nil
			if b.tool == PlaceTracing {
				b.tool = Choose
			}
			b.tell()
			b.keep()
		}
	})
}

// TracingMarks returns the points clicked so far: those of the image where they lie now, and
// where they belong.
func (b *BeatDesk) TracingMarks() (on, to []geo.Point) {
	if _, _, ok := b.Tracing(); !ok || b.tool != PlaceTracing {
		return nil, nil
	}
	t := b.top.trace
	for _, m := range t.marks {
		if m.hasP {
			on = append(on, t.lies.Plane(m.px))
		}
		if m.hasA {
			to = append(to, m.at)
		}
	}
	return on, to
}

// tracingStep is which of the four clicks comes next, 0 to 3; 4 without an image.
func (b *BeatDesk) tracingStep() int {
	if _, _, ok := b.Tracing(); !ok {
		return 4
	}
	for i, m := range b.top.trace.marks {
		switch {
		case !m.hasP:
			return 2 * i
		case !m.hasA:
			return 2*i + 1
		}
	}
	return 0
}

// clickTracing takes the next of four clicks: a point of the image, where it belongs, and both once
// more. Then the image lies there.
func (b *BeatDesk) clickTracing(p geo.Point) (err error) {
	step := b.tracingStep()
	if step > 3 {
		return nil
	}
	t := b.top.trace
	b.d.act(func() {
		b.tell()
		b.refused = nil
		m := &t.marks[step/2]
		if step%2 == 0 {
			m.px, m.hasP = t.lies.Pixel(p), true
			return
		}
		m.at, m.hasA = p, true
		if step == 3 {
			err = b.placeTracing()
		}
	})
	return err
}

// placeTracing lays the image by its two marks and lets go of them.
func (b *BeatDesk) placeTracing() error {
	t := b.top.trace
	m := t.marks
	lies, err := draft.Trace(m[0].px, m[1].px, m[0].at, m[1].at)
	if err != nil {
		t.marks[1] = traceMark{}
		return b.do("", func(d draft.Draft) (draft.Draft, error) { return d, err })
	}
	pl := b.now().Plane
	t.lies, t.marks = lies, [2]traceMark{}
	t.from.Pixels, t.from.Places = [2]draft.Pixel{m[0].px, m[1].px}, [2]geo.Place{pl.Place(m[0].at), pl.Place(m[1].at)}
	b.tool, b.penOn = Choose, false
	b.keep()
	return nil
}

// TraceTo says by typing where the point of the image belongs that was clicked last: a place in any
// notation, or for the second point its distance from the first.
func (b *BeatDesk) TraceTo(text string) error {
	step := b.tracingStep()
	if step != 1 && step != 3 {
		return words.ClickImageFirst()
	}
	t := b.top.trace
	if l, err := units.ParseLength(text, units.Metre); err == nil && step == 3 {
		a, c := t.lies.Plane(t.marks[0].px), t.lies.Plane(t.marks[1].px)
		if away := a.Distance(c); away > 0 {
			first := t.marks[0].at
			k := l.M / away
			return b.clickTracing(geo.Point{X: first.X + k*(c.X-a.X), Y: first.Y + k*(c.Y-a.Y)})
		}
	}
	at, err := readPlace(text)
	if err != nil {
		return err
	}
	return b.clickTracing(b.now().Plane.At(at))
}
