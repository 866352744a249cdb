package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"

	"gloamline/ui/scene"
	"gloamline/ui/state"
	"gloamline/ui/words"
)

// fileEntry is a field for the name of a file, typed, or taken from a list by Down or the
// folder at its end.
type fileEntry struct{ entry }

func newFileEntry(h *hooks) *fileEntry {
	e := &fileEntry{}
	e.h = h
	e.ExtendBaseWidget(e)
	a := newArrow(func() { h.file() })
	a.Resource = theme.FolderOpenIcon()
	e.ActionItem = a
	e.OnChanged = h.changed
	return e
}

// TypedKey is part of fyne.Focusable.
func (e *fileEntry) TypedKey(k *fyne.KeyEvent) {
	if k.Name == fyne.KeyDown {
		e.h.file()
		return
	}
	e.entry.TypedKey(k)
}

// photoEndings are those of the pictures that can be taken in.
var photoEndings = []string{".jpg", ".jpeg", ".heic", ".heif"}

// askFile asks for the picture of a field. It is read away from the window: a large one
// takes a second.
func (c *card) askFile(id string) {
	open := c.shown
	c.s.askPath(asking{
		title: words.PhotoTitle(), hint: words.PhotoHint(), verb: words.PhotoButton(), endings: photoEndings,
		path: withSeparator(c.s.folder("photos")),
		act: func(path string, done func(error)) {
			c.s.lookAtPhoto(path, func(err error) {
				done(err)
				if err == nil && c.shown == open {
					c.setFile(id, path)
				}
			})
		}})
}

// setFile puts a file that was read into its field and leaves the keyboard there.
func (c *card) setFile(id, path string) {
	c.shown.Set(id, path)
	for _, r := range c.rows {
		if r.id == id {
			c.s.focus(r.in)
		}
	}
}

// lookAtPhoto reads the file of a picture.
func (s *Screen) lookAtPhoto(path string, done func(error)) {
	var shot state.Shot
	job(func() (err error) {
		shot, err = state.LookAtPhoto(path)
		return err
	}, func(err error) {
		if err != nil {
			done(state.PhotoFault(err, path))
			return
		}
		s.desk.ShowShot(shot)
		s.remember("folder photos", folderOf(path))
		done(nil)
	})
}

// dropPhoto puts a picture that was let fall on the window onto the open card of one.
func (s *Screen) dropPhoto(path string) {
	s.lookAtPhoto(path, func(err error) {
		switch {
		case err != nil:
			s.tellFileError(err, path)
		case s.desk.Card() != nil:
			s.card.setFile("file", path)
		}
	})
}

// picture is the small picture below a field.
type picture struct {
	img  *canvas.Image
	of   string // the bytes shown, and the look
	w, h float32
}

// picMost is the most a picture below a field is high, in dp.
const picMost = 150

func newPicture() *picture {
	p := &picture{img: &canvas.Image{FillMode: canvas.ImageFillContain, ScaleMode: canvas.ImageScaleSmooth}}
	p.img.Hide()
	return p
}

// show shows a small JPEG in the colours of a look; nil: none.
func (p *picture) show(data []byte, look scene.Look) {
	if key := look.Name + string(data); key != p.of {
		p.of, p.w, p.h, p.img.Image = key, 0, 0, scene.Thumbnail(data, look)
		if p.img.Image != nil {
			b := p.img.Image.Bounds()
			p.w, p.h = float32(b.Dx()), float32(b.Dy())
		}
		p.img.Refresh()
	}
}

// heightFor is the height of the picture in a width; 0 if there is none.
func (p *picture) heightFor(width float32) float32 {
	if p.w == 0 {
		return 0
	}
	return min(picMost, p.h*width/p.w)
}

func (p *picture) widthFor(width float32) float32 { return min(width, p.heightFor(width)*p.w/p.h) }
