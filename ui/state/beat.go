package state

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"

	"gloamline/geo"
	"gloamline/geo/sketch"
	"gloamline/geo/zone"
	"gloamline/journal"
	"gloamline/ui/words"
)

// ReadBeat reads a sketch in GeoJSON and stores it as a beat of the journal, as one
// change that undo takes back. what tells in sentences what came of it, with what the
// reader put right and what is amiss but does no harm. A beat that stands already,
// unchanged, is left alone and told so. An error, of kind Invalid for a file that
// cannot serve and Conflict for a changed sketch of a beat that stands, says why in
// words (Explain) and has changed nothing.
//
// A file that gives its beat no ID makes a new beat each time it is read.
func (d *Desk) ReadBeat(in io.Reader) (what string, err error) {
	shape, warnings, err := sketch.Read(in)
	if err != nil {
		return "", refusedBeat(journal.Invalid, words.BeatRefused(err.Error()))
	}
	var remarks []string
	for _, w := range warnings {
		remarks = append(remarks, w.String())
	}
	remarks = append(remarks, zoned(&shape)...)
	if shape.Name == "" {
		remarks = append(remarks, words.BeatUnnamed())
	}
	for _, f := range geo.Check(shape) {
		if f.Serious() {
			return "", refusedBeat(journal.Invalid, words.BeatFaulty(f))
		}
		remarks = append(remarks, f.Error())
	}
	stands, err := journal.One[journal.Beat](d.j, shape.ID)
	switch {
	case err == nil && sameShape(stands, shape):
		return words.BeatStands(shape), nil
	case err == nil:
		return "", refusedBeat(journal.Conflict, words.BeatDiffers(shape))
	case journal.KindOf(err) != journal.NotFound:
		return "", err
	}
	d.act(func() {
		_, err = d.j.Log(journal.Beat{ID: shape.ID, Revisions: []journal.BeatRevision{{Shape: shape}}})
		d.tell(Can)
	})
	if err != nil {
		return "", err
	}
	return words.BeatRead(shape, remarks), nil
}

// HasBeat reports whether the journal has a beat that a night can be written on.
func (d *Desk) HasBeat() bool {
	beats, _ := journal.All[journal.Beat](d.j)
	return len(beats) > 0
}

func refusedBeat(kind journal.Fail, why words.Told) error {
	return &journal.Error{Op: "read a beat in", Kind: kind, Err: why}
}

// zoned gives a beat without a time zone that of the land it lies in, and says so.
func zoned(b *geo.Beat) []string {
	at := b.Place()
	if b.Zone != "" || at.IsZero() || at.Check() != nil {
		return nil
	}
	found, err := zone.At(float64(at.Lat), float64(at.Lon))
	if err != nil { // at sea there is none: the check of the beat says that it lacks one
		return nil
	}
	b.Zone = found.Zone
	return []string{words.ZoneGuessed(found.Zone)}
}

// sameShape reports whether the latest sketch of a beat is this one, to the last
// corner.
func sameShape(b journal.Beat, shape geo.Beat) bool {
	if len(b.Revisions) == 0 {
		return false
	}
	is, err1 := json.Marshal(b.Revisions[len(b.Revisions)-1].Shape)
	now, err2 := json.Marshal(shape)
	return errors.Join(err1, err2) == nil && bytes.Equal(is, now)
}
