package intake

import (
	"bytes"
	"strings"
	"unicode"
)

// Kind is what a file holds, told by its bytes alone.
type Kind string

// The kinds.
const (
	TrackFile Kind = "gpx"   // positions of a satellite receiver
	PhotoFile Kind = "photo" // JPEG or HEIC
	GaugeFile Kind = "gauge" // readings of a river gauge
	NoKind    Kind = ""
)

// headSize is how many bytes Sniff needs.
const headSize = 4096

// alien is a format that is recognised and not read.
type alien struct {
	at    int
	magic string
	what  string
	do    string
}

const (
	doUnpack = "Take the files out of it and read those; of a spreadsheet, save the table as CSV."
	doJPEG   = "Save the picture as JPEG with all it says of itself, or take the original of the camera."
	doGPX    = "Export the track as GPX and read that."
	doCSV    = "Save the readings as CSV or text and read that."
)

var aliens = []alien{
	{8, ".FIT", "this is a FIT recording, which is not read", doGPX},
	{0, "PK\x03\x04", "this is an archive or a spreadsheet's own file", doUnpack},
	{0, "PK\x05\x06", "this is an empty archive", doUnpack},
	{0, "\x1f\x8b", "this is a compressed file", "Unpack it and read what it holds."},
	{0, "\xd0\xcf\x11\xe0", "this is a spreadsheet's or word processor's own file", doCSV},
	{0, "%PDF", "this is a PDF", doCSV},
	{0, "\x89PNG", "this is a PNG picture, which says nothing of when and where", doJPEG},
	{0, "GIF8", "this is a GIF picture, which says nothing of when and where", doJPEG},
	{8, "WEBP", "this is a WebP picture, which is not read", doJPEG},
	{0, "II*\x00", "this is a TIFF or raw picture, which is not read", doJPEG},
	{0, "MM\x00*", "this is a TIFF or raw picture, which is not read", doJPEG},
	{4, "ftyp", "this is a film or a picture of a kind that is not read", doJPEG},
}

// heicBrands are the major brands of still pictures in ISO/IEC 23008-12:2022, annexes B
// and C; mif1 and msf1 stand for any coding.
var heicBrands = []string{"heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1"}

// Sniff tells the kind of a file from its first bytes (4096, or all there are), whatever
// its name. The fault says why it is none.
func Sniff(head []byte) (Kind, *Fault) {
	has := func(at int, magic string) bool {
		return len(head) >= at+len(magic) && string(head[at:at+len(magic)]) == magic
	}
	switch {
	case len(head) == 0:
		return NoKind, &Fault{What: "the file is empty", Do: "Copy or export it again."}
	case has(0, "\xff\xd8\xff"):
		return PhotoFile, nil
	}
	for _, b := range heicBrands {
		if has(4, "ftyp"+b) {
			return PhotoFile, nil
		}
	}
	for _, a := range aliens {
		if has(a.at, a.magic) {
			return NoKind, &Fault{What: a.what, Do: a.do}
		}
	}
	text := plain(head)
	switch {
	case text == "":
		return NoKind, &Fault{What: "the file holds nothing but blanks", Do: "Copy or export it again."}
	case strings.HasPrefix(text, "<!doctype html"), strings.HasPrefix(text, "<html"):
		return NoKind, &Fault{What: "this is a web page, not the file it leads to", Do: "Save the file itself from that page; it may ask for a name and password first."}
	case text[0] == '<':
		return TrackFile, nil
	case strings.ContainsRune(text, 0):
		return NoKind, &Fault{What: "this is no track, no photo and no table of readings", Do: "GPX, JPEG, HEIC and tables of a gauge as CSV or JSON are read."}
	}
	return GaugeFile, nil
}

// plain is the beginning of a text in small letters, without a byte order mark and
// leading blanks; every other byte of UTF-16.
func plain(head []byte) string {
	wide := func(even int) {
		out := make([]byte, 0, len(head)/2)
		for i := even; i < len(head); i += 2 {
			out = append(out, head[i])
		}
		head = out
	}
	switch {
	case bytes.HasPrefix(head, []byte("\xef\xbb\xbf")):
		head = head[3:]
	case bytes.HasPrefix(head, []byte("\xff\xfe")):
		head = head[2:]
		wide(0)
	case bytes.HasPrefix(head, []byte("\xfe\xff")):
		head = head[2:]
		wide(1)
	case bytes.HasPrefix(head, []byte("<\x00")):
		wide(0)
	case bytes.HasPrefix(head, []byte("\x00<")):
		wide(1)
	}
	return strings.ToLower(strings.TrimLeftFunc(string(head), unicode.IsSpace))
}
