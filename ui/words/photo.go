package words

import (
	"fmt"
	"path/filepath"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
)

// PhotoFile is the name of a photo's file, or what stands for one.
func PhotoFile(name string) string {
	if name == "" {
		return "photo"
	}
	return name
}

// PhotoTip says a photo with its time and note.
func PhotoTip(n *timeline.Night, p journal.Photo) string {
	return commas(Moment(p.When, n.Log.Spread(p.When), n.Zone)+" "+PhotoOf(p.Name), p.Note)
}

// MorePhotos counts what there was no room for: and 2 more.
func MorePhotos(n int) string { return fmt.Sprintf("and %d more", n) }

// PhotoMark says in a tip how many photos a thing has.
func PhotoMark(n int) string {
	if n == 1 {
		return "1 photo"
	}
	return fmt.Sprintf("%d photos", n)
}

// The words of the card of a photo.

// PhotoFileHint says what may be typed for the picture.
func PhotoFileHint() string { return "Down chooses the file" }

// PhotoTitle, PhotoHint and PhotoButton are for choosing the file.
func PhotoTitle() string { return "Picture" }
func PhotoHint() string {
	return "A JPEG or HEIC file. It is read for when it was taken; the file itself is not altered."
}
func PhotoButton() string { return "Choose" }

// PhotoWanted, NotAPhoto, NoSuchPhoto and PhotoTwice stand at the picture.
func PhotoWanted() string { return "Choose the file of a picture: Down, or the folder at the right." }
func NotAPhoto() Told {
	return Told{"This is neither a JPEG nor a HEIC picture.", "Choose another file."}
}
func NoSuchPhoto() Told {
	return Told{"There is no file of that name.", "See how it is written, with its folder."}
}

func PhotoTwice() string {
	return "This picture is in the night already. Enter again adds it once more."
}

// ShotRead says what was read of a file: the camera, and whether there is a small copy of
// it.
func ShotRead(device string, noThumb bool) string {
	out := ""
	if device != "" {
		out = "by " + device
	}
	if noThumb {
		out = commas(out, "no small picture can be made of it")
	}
	return out
}

// ShotTime says how the time of a picture was read, and how its camera's clock stands to
// it.
func ShotTime(read string, at time.Time, zone *time.Location, known, inNight, same bool) string {
	switch {
	case !known:
		return semicolon(read, "the picture does not say when it was taken")
	case !inNight:
		return semicolon(read, "the camera's clock said "+at.In(zone).Format("2 January 2006 15:04")+", which is not in this night")
	case same:
		return semicolon(read, "by the camera's clock")
	}
	return semicolon(read, "the camera's clock said "+Clock(at, zone))
}

func semicolon(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

// PhotoAlone is the choice of a photo that shows nothing in particular; PhotoShows names
// what it may show; PhotoNearest says why that is proposed.
func PhotoAlone() string { return "nothing in particular" }
func PhotoShows(n *timeline.Night, e journal.Entry, name string) string {
	if e == nil {
		return name
	}
	out := commas(name, Clock(n.Log.At(e).Mid(), n.Zone))
	if k, ok := e.(journal.Contact); ok {
		out = commas(out, TouchName(k.Touch))
	}
	return out
}
func PhotoNearest() string { return "the nearest in time to the camera's clock" }

// KeepCopy and KeepLink are the choices for the original; KeepWhich asks for one.
func KeepCopy() string  { return "a copy beside the journal" }
func KeepLink() string  { return "a link to where it is" }
func KeepWhich() string { return "Choose a copy or a link." }

// CopyGoes says where the copy will lie; OriginalAt where an original lies.
func CopyGoes(dir string) string {
	return "copied into " + filepath.Base(dir) + "; the file stays as it is"
}
func OriginalAt(path string, there bool) string {
	switch {
	case path == "":
		return "the original is not beside this journal"
	case !there:
		return "not found at " + path
	}
	return "at " + path
}

// NotCopied says why an original could not be copied.
func NotCopied(err error, path string) (what, do string) {
	why, _ := ExplainFile(err, path)
	return "The copy could not be made, and nothing was stored. " + why, "Try again, or choose a link."
}
