package state

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"strings"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal"
)

// do makes one step of the drawing: f goes on from the draft on the table. about, if not
// empty, makes it one step with the last if that had the same: typing a name is one step to take back, not one
// a letter. A refusal is kept, to be told at its place.
func (b *BeatDesk) do(about string, f func(draft.Draft) (draft.Draft, error)) (err error) {
	if b.top == nil {
		return nil
	}
	b.d.act(func() {
		b.held = nil
		if !b.typing {
			b.typed = map[string]string{}
		}
		var next draft.Draft
		next, err = f(b.top.hist.Now)
		b.tell()
		b.refused = nil
		if err != nil {
			errors.As(err, &b.refused)
			return
		}
		if sameSketch(next.Beat, b.top.hist.Now.Beat) {
			return
		}
		if about != "" && about == b.top.about {
			b.top.hist.Now = next
		} else {
			b.top.hist = b.top.hist.Do(next)
		}
		b.top.about = about
		b.after()
	})
	return err
}

// after brings up to date what hangs on the draft, and lays it by.
func (b *BeatDesk) after() {
	b.settle()
	b.look()
	b.keep()
}

// settle lets go of what is no longer drawn.
func (b *BeatDesk) settle() {
	d := b.now()
	if !b.sel.IsZero() && !has(d.Beat, b.sel) {
		b.sel, b.corner, b.sky = geo.ID{}, false, -1
	}
	if b.corner {
		s := d.Strands(b.vertex.Of)
		if b.vertex.Strand >= len(s) || b.vertex.Index >= len(s[b.vertex.Strand].Points) {
			b.corner = false
		}
	}
	if p, ok := d.Beat.Pool(b.sel); !ok || b.sky >= len(p.Skyline) {
		b.sky = -1
	}
}

func has(s geo.Beat, id geo.ID) bool {
	if _, ok := s.Pool(id); ok {
		return true
	}
	_, ok := featureOf(s, id)
	return ok
}

func featureOf(s geo.Beat, id geo.ID) (geo.Feature, bool) {
	for _, f := range s.Features {
		if f.ID == id {
			return f, true
		}
	}
	return geo.Feature{}, false
}

// CanUndo reports whether Undo would do something.
func (b *BeatDesk) CanUndo() bool {
	if b.top == nil {
		return b.undoesBeat()
	}
	if len(b.pending) > 0 {
		return true
	}
	_, ok := b.top.hist.Undo()
	return ok || b.undoesBeat()
}

// undoesBeat reports whether the last change of the journal was that of a beat. Others are not
// taken back here, where nobody would see it.
func (b *BeatDesk) undoesBeat() bool {
	did, ok := b.d.j.CanUndo()
	return ok && strings.HasSuffix(did, " "+string(journal.KindBeat))
}

// Undo takes back the last corner of what is being drawn, else the last step of the drawing,
// else the change that stored it.
func (b *BeatDesk) Undo() (err error) {
	b.d.act(func() {
		b.tell()
		b.refused, b.held = nil, nil
		if n := len(b.pending); n > 0 {
			b.pending = b.pending[:n-1]
			return
		}
		if b.top != nil {
			if h, ok := b.top.hist.Undo(); ok {
				b.top.hist, b.top.about = h, ""
				b.typed = map[string]string{}
				b.after()
				return
			}
		}
		if b.undoesBeat() {
			_, err = b.d.j.Undo()
		}
	})
	return err
}

// CanRedo reports whether Redo would do something.
func (b *BeatDesk) CanRedo() bool {
	if b.top != nil {
		if _, ok := b.top.hist.Redo(); ok {
			return true
		}
	}
	did, ok := b.d.j.CanRedo()
	return ok && strings.HasSuffix(did, " "+string(journal.KindBeat))
}

// Redo does again what was taken back last.
func (b *BeatDesk) Redo() (err error) {
	b.d.act(func() {
		b.tell()
		b.refused = nil
		if b.top != nil {
			if h, ok := b.top.hist.Redo(); ok {
				b.top.hist, b.top.about = h, ""
				b.typed = map[string]string{}
				b.after()
				return
			}
		}
		if b.CanRedo() {
			_, err = b.d.j.Redo()
		}
	})
	return err
}

// follow goes along with a change of the journal: a drawing on which nothing was done shows the
// beat as it now stands; one that was changed stays, and is a new beat again if its beat is gone.
func (b *BeatDesk) follow(c journal.Change) {
	for _, e := range c.Edits {
		r := e.Ref()
		if r.Kind != journal.KindBeat {
			continue
		}
		b.tell()
		dr := b.drawing(r.ID)
		if dr == nil {
			continue
		}
		rec, err := journal.One[journal.Beat](b.d.j, r.ID)
		switch {
		case err != nil:
			dr.stands, dr.base = false, geo.Beat{}
		case dr.stands && dr.changed():
		case dr.stands || sameSketch(latest(rec), dr.hist.Now.Beat):
			dr.stands, dr.base = true, latest(rec)
			dr.hist, dr.about = draft.History{Now: draft.New(dr.base)}, ""
		default:
			dr.stands, dr.base = true, latest(rec)
		}
		if dr == b.top {
			b.held = nil
			b.settle()
			b.look()
		}
		b.keep()
	}
}

// sameSketch reports whether two sketches are the same to the last corner.
func sameSketch(x, y geo.Beat) bool {
	a, err1 := json.Marshal(x)
	b, err2 := json.Marshal(y)
	return errors.Join(err1, err2) == nil && bytes.Equal(a, b)
}

func compareNames(a, b string) int { return cmp.Compare(strings.ToLower(a), strings.ToLower(b)) }
