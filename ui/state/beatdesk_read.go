package state

import (
	"io"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/geo/gpx"
	"gloamline/geo/position"
	"gloamline/geo/sketch"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// ReadSketch puts a sketch from a GeoJSON file on the table, as a drawing that is not stored yet:
// what is wrong with it can be mended there. A beat that stands already is drawn over. What
// came of it is told in sentences.
func (b *BeatDesk) ReadSketch(in io.Reader) (told string, err error) {
	shape, warnings, err := sketch.Read(in)
	if err != nil {
		return "", refusedBeat(journal.Invalid, words.BeatRefused(err.Error()))
	}
	var remarks []string
	for _, w := range warnings {
		remarks = append(remarks, w.String())
	}
	remarks = append(remarks, zoned(&shape)...)
	b.d.act(func() {
		dr := b.drawing(shape.ID)
		if dr == nil {
			dr = &drawing{hist: draft.History{Now: draft.New(shape)}}
			if r, err := journal.One[journal.Beat](b.d.j, shape.ID); err == nil {
				dr.stands, dr.base = true, latest(r)
				dr.hist = draft.History{Now: draft.New(dr.base)}.Do(draft.New(shape))
			}
			b.all = append(b.all, dr)
			b.put(dr)
		} else {
			b.put(dr)
			_ = b.do("", func(draft.Draft) (draft.Draft, error) { return draft.New(shape), nil })
		}
		b.after()
		b.Fit()
	})
	return words.BeatRead(shape, remarks), nil
}

// Walk is a track that may become the line of the river.
type Walk struct {
	Name   string
	Length units.Metres
	places []geo.Place
}

// ReadWalks reads the tracks and routes of a GPX file, the longest first to be offered.
func ReadWalks(in io.Reader) ([]Walk, error) {
	f, err := gpx.Read(in, gpx.Options{})
	if err != nil {
		return nil, refusedBeat(journal.Invalid, words.WalkRefused(err.Error()))
	}
	var out []Walk
	for _, l := range f.Lines {
		w := Walk{Name: l.Name}
		for _, s := range l.Segments {
			for _, p := range s {
				w.places = append(w.places, geo.Place{Lat: units.Degrees(p.LatDeg), Lon: units.Degrees(p.LonDeg)})
			}
		}
		if len(w.places) < 2 {
			continue
		}
		pl, path := geo.NewPlane(w.places[0]), make(geo.Path, len(w.places))
		for i, at := range w.places {
			path[i] = pl.At(at)
		}
		w.Length = path.Length()
		out = append(out, w)
	}
	if len(out) == 0 {
		return nil, refusedBeat(journal.Invalid, words.NoWalk())
	}
	for i := range out {
		if out[i].Length > out[0].Length {
			out[0], out[i] = out[i], out[0]
		}
	}
	return out, nil
}

// thinWalk is how far a point of a walk may lie from the line without it: a receiver at the
// water is off by more.
const thinWalk units.Metres = 3

// DrawWalk draws both banks from a walk along the water and the width of the river. along is the
// bank that was walked, "" for the middle of the river; up says that it was walked upstream. A beat
// without a place gets that of the walk.
func (b *BeatDesk) DrawWalk(w Walk, width units.Metres, along geo.Bank, up bool) error {
	if b.top == nil {
		b.New()
	}
	if len(b.now().Beat.Banks()) > 0 {
		b.refuse(b.view.Centre, words.BanksDrawn())
		return refusedBeat(journal.Conflict, words.BanksDrawn())
	}
	left, right := geo.NewID(), geo.NewID()
	dr := b.top
	err := b.do("", func(d draft.Draft) (draft.Draft, error) {
		if d.Plane.Origin().IsZero() {
			at := w.places[len(w.places)/2]
			var err error
			if d, err = d.Place(at); err != nil {
				return d, err
			}
			if z := zonesAt(at); len(z) > 0 && d.Beat.Zone == "" {
				d, dr.found = d.Zone(z[0]), z[0]
			}
		}
		line, err := d.Walk(w.places, thinWalk)
		if err != nil {
			return d, err
		}
		if up {
			line = line.Reversed()
		}
		return d.Banks(line, width, along, left, right)
	})
	if err == nil {
		b.d.act(func() { b.Fit(); b.Take(DrawPool) })
	}
	return err
}

// readPlace reads a place in any notation; the error is in two sentences.
func readPlace(text string) (geo.Place, error) {
	r, err := position.Parse(text)
	if err != nil {
		if e, ok := err.(*position.Error); ok {
			return geo.Place{}, words.Told{What: e.What, Do: e.Do}
		}
		return geo.Place{}, err
	}
	return r.Place, nil
}
