package state

import (
	"encoding/binary"
	"errors"
	"os"

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

// Reader is the work of reading a file, to be done beside the window; what it returns puts
// the file on the list. It never fails: the file says what was wrong.
func (k *IntakeDesk) Reader(path string) func() (add func()) {
	o := k.reads[path]
	o.Now, o.Thumb = k.d.now(), true
	return func() func() {
		f := readIntake(path, o)
		return func() { k.Add(f) }
	}
}

func readIntake(path string, o intake.ReadOptions) *intake.File {
	f, err := os.Open(path)
	if err != nil {
		return intake.Unreadable(path, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err == nil && info.IsDir() {
		err = errors.New("it is a folder")
	}
	if err != nil {
		return intake.Unreadable(path, err)
	}
	return intake.Read(path, f, info.Size(), o)
}
