package state

import (
	"encoding/binary"

	"gloamline/geo"
	"gloamline/journal/intake"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// mostNotes is how many remarks are listed under a file; more are counted.
const mostNotes = 5

// FileID names a row of the list of files, FileAt is its place.
func FileID(i int) (id geo.ID) {
	binary.BigEndian.PutUint32(id[:4], uint32(i)+1)
	return id
}
func FileAt(id geo.ID) int { return int(binary.BigEndian.Uint32(id[:4])) - 1 }

// FileScene is the list of files as a scene takes it.
func (k *IntakeDesk) FileScene() (out []scene.IntakeFile) {
	for i, s := range k.Sources() {
		f := s.Source.File
		x := scene.IntakeFile{ID: FileID(i), Name: f.Name, Kind: string(f.Kind), Says: words.AfterName(s.Says, f.Name), Hint: s.Hint, Picked: i == k.file}
		if f.Fault != nil {
			x.Kind = ""
			x.Fault = []string{words.Sentence(f.Fault.Error()), f.Fault.Do}
			if len(f.Warnings()) > 0 {
				x.Notes = f.Warnings()
			}
		} else {
			x.Notes = append(s.Remarks, f.Warnings()...)
			if s.Source.Device != "" || f.Kind == intake.TrackFile || f.Photo != nil {
				offset, set := k.clock(s.Source)
				x.Clock = words.ClockLabel(s.Source.Device, offset, set)
			}
		}
		if n := len(x.Notes) - mostNotes; n > 0 {
			x.Notes, x.More = x.Notes[:mostNotes], words.MoreNotes(n)
		}
		out = append(out, x)
	}
	return out
}

// ReadOptions are how a file is to be read.
func (k *IntakeDesk) ReadOptions(path string) intake.ReadOptions {
	o := k.reads[path]
	o.Now, o.Thumb = k.d.now(), true
	return o
}
