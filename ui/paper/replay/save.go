package replay

import (
	"bytes"
	"io"
	"path/filepath"
	"strings"
	"time"

	"gloamline/ui/draw"
	"gloamline/ui/paper"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// Endings are the formats in which a handout leaves: a page (PDF, PNG, SVG), one file that
// plays it in a browser, one picture that moves.
var Endings = []string{".pdf", ".png", ".svg", ".html", ".gif"}

// Takes reports whether the name ends in one of them.
func Takes(path string) bool {
	for _, e := range Endings {
		if strings.EqualFold(filepath.Ext(path), e) {
			return true
		}
	}
	return false
}

// Save writes a handout in the format of the name's ending, never over another file, and
// returns the names written. The look is that of a page; what moves is in that of dusk.
func Save(path string, h scene.Handout, look scene.Look, p words.Prefs) ([]string, error) {
	var b bytes.Buffer
	switch strings.ToLower(filepath.Ext(path)) {
	case ".html":
		if err := Write(&b, h, p); err != nil {
			return nil, err
		}
	case ".gif":
		if err := GIF(&b, h, p); err != nil {
			return nil, err
		}
	default:
		return paper.Save(path, h.Title(), h.Pages(look, p))
	}
	return paper.SaveFiles([]paper.File{{Name: path, Content: b.Bytes()}})
}

// Measures of the moving picture: dp, pixels to the dp, how many pictures at most, how long
// they stand.
const (
	gifScale = 1.0
	gifMost  = 48
	gifFirst = 4 * time.Second
	gifStep  = 350 * time.Millisecond
	gifLast  = 3 * time.Second
)

// GIFSize is that of a moving picture in dp, and in pixels.
var GIFSize = draw.Size{W: 800, H: 560}

// GIF writes a handout as one picture that moves: all of it with the photo and its fly
// first, then played, then all of it again.
func GIF(w io.Writer, h scene.Handout, p words.Prefs) error {
	at := func(cursor int) *draw.List {
		return h.Show(GIFSize, scene.Dusk, scene.ClientView{Cursor: cursor, Prefs: p, Bare: true}).List
	}
	frames := []paper.GIFFrame{{Page: at(scene.ClientWhole), Stand: gifFirst, Soft: len(h.Photos()) > 0}}
	for _, m := range h.Moments(gifMost) {
		frames = append(frames, paper.GIFFrame{Page: at(m), Stand: gifStep})
	}
	frames[len(frames)-1].Stand = gifLast
	return paper.GIF(w, frames, gifScale)
}
