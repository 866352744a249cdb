package state

import (
	"errors"
	"os"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/photo"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// The values of how the original of a photo is kept.
const (
	keepCopy = "copy"
	keepLink = "link"
)

// nearShot is how long before or after a contact a picture still counts as one of it: our
// own measure, for a proposal that stands on the card to be changed.
const nearShot = 10 * time.Minute

// photoFields take a picture in: which file, what it shows, when, and what becomes of the
// original. A standing one is amended the same way.
func (c *Card) photoFields(p *journal.Photo) {
	shot := func() (Shot, bool) {
		f := c.find("file")
		if f.Value == "" || !c.isNew && !f.Touched {
			return Shot{}, false
		}
		s, err := c.d.shotOf(cleanPath(f.Value))
		return s, err == nil
	}
	c.fileField(p, shot)
	c.showsField(p, shot)
	c.headFields(&p.Head, false, true)
	when := c.find("when")
	cursor, read := when.fill, when.read
	when.fill = func() string {
		if s, ok := shot(); ok {
			if at, _, in := takenAt(c.d.night, s); in {
				return c.clock(p.Head, time.Time{}).Print(journal.Exact(at))
			}
		}
		if e, ok := c.d.night.Log.Find(p.Of.Or(journal.ID{})); ok {
			return c.clock(p.Head, time.Time{}).Print(journal.Exact(c.d.night.Log.At(e).Mid().Truncate(time.Minute)))
		}
		return cursor()
	}
	when.read = func() string {
		s, ok := shot()
		if !ok {
			return read()
		}
		at, known, in := takenAt(c.d.night, s)
		return words.ShotTime(read(), at, c.d.night.Zone, known, in, isExactly(p.When, at))
	}
	c.keepField(p, shot)
	c.add(c.inWords(spotField("spot", "Place", &p.Spot), c.d.Pool, true))
	c.noteField(&p.Head)
	plain := c.batch
	c.batch = func() journal.Batch {
		if s, ok := shot(); ok { // how the moment came about
			p.From = journal.Origin{}
			if at, _, in := takenAt(c.d.night, s); in && isExactly(p.When, at) {
				p.From.How = "photo"
			}
		}
		return plain()
	}
	c.first = func() error { return c.keepOriginal(p) }
}

func isExactly(w journal.When, at time.Time) bool {
	return w.Kind == journal.ExactTime && w.Lo.Equal(at)
}

// cleanPath is a path as typed or pasted, without quotes and spaces around it.
func cleanPath(s string) string { return strings.Trim(strings.TrimSpace(s), `"'`) }

// fileField is the picture itself.
func (c *Card) fileField(p *journal.Photo, shot func() (Shot, bool)) {
	f := c.add(&field{Field: Field{ID: "file", Label: "Picture", Kind: File, Hint: words.PhotoFileHint()}})
	f.text = func() string { return p.Name }
	f.put = func(s string) error {
		if s = cleanPath(s); s == "" || s == p.Name && !c.isNew {
			return nil
		}
		got, err := c.d.shotOf(s)
		if err != nil {
			return PhotoFault(err, s)
		}
		p.SHA256, p.Name, p.Thumb = got.SHA256, got.Name, got.Thumb
		p.Copied, p.Link = false, got.Path
		return nil
	}
	f.want = func() string {
		if p.SHA256 == "" {
			return words.PhotoWanted()
		}
		return ""
	}
	f.read = func() string {
		if s, ok := shot(); ok {
			return words.ShotRead(s.Device, s.NoThumb != nil)
		}
		return ""
	}
	f.picture = func() []byte { return p.Thumb }
	f.doubt = func() string {
		for _, e := range c.d.night.Log.Entries {
			if o, ok := e.(journal.Photo); ok && o.SHA256 == p.SHA256 && o.ID != p.ID {
				return words.PhotoTwice()
			}
		}
		return ""
	}
}

// PhotoFault says in a sentence why a file cannot be taken in.
func PhotoFault(err error, path string) error {
	switch {
	case errors.Is(err, photo.ErrFormat):
		return words.NotAPhoto()
	case errors.Is(err, os.ErrNotExist):
		return words.NoSuchPhoto()
	}
	what, do := words.ExplainFile(err, path)
	return words.Told{What: what, Do: do}
}

// showsField is the fish or the run that the picture shows, or nothing in particular.
func (c *Card) showsField(p *journal.Photo, shot func() (Shot, bool)) {
	get, set := fieldID(&p.Of)
	near := journal.ID{}
	f := c.add(idPick("of", "Shows", words.PhotoAlone(), get, set, func() []Choice {
		var out []Choice
		for _, t := range Things(c.d.night) {
			e, _ := c.d.night.Log.Find(t.ID)
			switch e.(type) {
			case journal.Contact, journal.Run:
			default:
				if t.ID != p.Of.Or(journal.ID{}) {
					continue
				}
			}
			out = append(out, Choice{t.ID.String(), words.PhotoShows(c.d.night, e, t.Name)})
		}
		return out
	}))
	f.fill = func() string {
		near = journal.ID{}
		switch e := c.d.SelectedEntry().(type) {
		case journal.Contact:
			return e.ID.String()
		case journal.Run:
			return e.ID.String()
		}
		if s, ok := shot(); ok {
			if at, _, in := takenAt(c.d.night, s); in {
				near = nearestContact(c.d.night, at)
			}
		}
		return near.String()
	}
	f.read = func() string {
		if !near.IsZero() && p.Of == journal.Of(near) && !f.Touched {
			return words.PhotoNearest()
		}
		return ""
	}
}

// nearestContact is the contact nearest to a moment, zero if none is near.
func nearestContact(n *timeline.Night, at time.Time) (id journal.ID) {
	best := nearShot + 1
	for _, k := range n.Contacts {
		if d := k.At.Mid().Sub(at).Abs(); d < best {
			best, id = d, k.ID
		}
	}
	return id
}

// keepField is the person's choice what becomes of the original.
func (c *Card) keepField(p *journal.Photo, shot func() (Shot, bool)) {
	canCopy := func() bool { return c.d.album != nil }
	f := c.add(&field{Field: Field{ID: "copied", Label: "Original", Kind: Pick}})
	f.text = func() string {
		if p.Copied {
			return keepCopy
		}
		return keepLink
	}
	f.choices = func() []Choice {
		var out []Choice
		if p.Copied || canCopy() {
			out = append(out, Choice{keepCopy, words.KeepCopy()})
		}
		if !p.Copied || p.Link != "" {
			out = append(out, Choice{keepLink, words.KeepLink()})
		}
		return out
	}
	f.fill = func() string {
		if canCopy() {
			return keepCopy
		}
		return keepLink
	}
	f.put = func(s string) error {
		switch s {
		case keepCopy:
			p.Copied = true
		case keepLink, "":
			p.Copied = false
		default:
			return wrong{words.KeepWhich()}
		}
		return nil
	}
	f.read = func() string {
		if _, ok := shot(); ok && p.Copied {
			return words.CopyGoes(c.d.album.Dir())
		}
		return c.original(p)
	}
}

// original says where the original of a photo lies, or that it is not there.
func (c *Card) original(p *journal.Photo) string {
	path := p.Link
	if p.Copied && c.d.album != nil {
		path, _ = c.d.album.Find(p.SHA256)
	}
	_, err := os.Stat(path)
	return words.OriginalAt(path, path != "" && err == nil)
}

// keepOriginal lays the copy down before the entry is stored, so that no entry ever says
// it has one that is not there.
func (c *Card) keepOriginal(p *journal.Photo) error {
	if p.Copied && p.Link != "" && c.d.album != nil {
		s, err := c.d.shotOf(p.Link)
		if err == nil && s.SHA256 != p.SHA256 {
			err = album.ErrChanged
		}
		if err == nil {
			err = c.d.album.Keep(p.Link, p.SHA256, s.Format)
		}
		if err != nil {
			what, do := words.NotCopied(err, p.Link)
			c.faults["copied"] = what + " " + do
			return ErrUnfinished
		}
		p.Link = "" // the copy is the original now
	}
	return nil
}
