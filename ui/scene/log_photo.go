package scene

import (
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// thumbH is the height of a thumbnail in the log, and thumbW the most it is wide.
const (
	thumbH = 54.0
	thumbW = 96.0
	// on paper a single one stands beside what is said
	asideH = 40.0
	asideW = 60.0
)

// aside reports whether the row's photo stands beside its words.
func (r row) aside() bool { return r.m.paper() && len(r.photos) == 1 }

// photosOf lists the photos of an entry, in order of the log.
func photosOf(n *timeline.Night, of journal.ID) []journal.Photo {
	var out []journal.Photo
	for _, e := range n.Log.Sorted() {
		if p, ok := e.(journal.Photo); ok && !of.IsZero() && p.Of.Or(journal.ID{}) == of {
			out = append(out, p)
		}
	}
	return out
}

// photosOfContacts tells which photos stand by their fish.
func photosOfContacts(n *timeline.Night, contacts map[journal.ID]*timeline.Contact) map[journal.ID]bool {
	out := map[journal.ID]bool{}
	for _, e := range n.Log.Entries {
		if p, ok := e.(journal.Photo); ok {
			if id, of := p.Of.Get(); of && contacts[id] != nil {
				out[p.ID] = true
			}
		}
	}
	return out
}

// drawPhotos draws the thumbnails of a row side by side, as many as there is room
// for, the last place telling how many more there are. A photo without a picture in the
// journal is a quiet frame with the name of its file.
func (r row) drawPhotos(s draw.Surface, look Look, n *timeline.Night, room draw.Rect, after bool, v LogView) []Hit {
	var hits []Hit
	x, wide, high := room.Min.X, thumbW, thumbH
	if r.aside() {
		wide, high = asideW, asideH
	}
	for i, p := range r.photos {
		if left := len(r.photos) - i; x+wide > room.Max.X && i > 0 {
			s.Text(draw.Text{S: words.MorePhotos(left), At: draw.Pt(x, room.Center().Y), Align: draw.Centre, Font: textFont, Color: look.Soft})
			break
		}
		box := draw.R(x, room.Min.Y, wide, high)
		if img := thumbnail(p.Thumb, look); img != nil {
			b := img.Bounds()
			k := min(wide/float64(b.Dx()), high/float64(b.Dy()))
			box.Max = draw.Pt(x+float64(b.Dx())*k, room.Min.Y+float64(b.Dy())*k)
			s.Image(img, box)
			if after {
				s.Fill(draw.Rectangle(box), draw.NonZero, draw.Solid(draw.Fade(look.Panel, 0.58)))
			}
			s.Stroke(draw.Rectangle(box), draw.Stroke{Width: 1}, look.Edge)
		} else {
			s.Stroke(draw.RoundRect(box.Inset(0.5), 3), draw.Stroke{Width: 1, Dash: []float64{3, 3}}, look.Soft)
			name := draw.Fit(textFont, words.PhotoFile(p.Name), wide-12)
			s.Text(draw.Text{S: name, At: box.Center(), Anchor: draw.Middle, Align: draw.Centre, Font: textFont, Color: look.Soft})
		}
		if p.Ref() == v.Selected {
			s.Stroke(draw.RoundRect(box.Inset(-2), 4), ringStroke, look.Accent)
		}
		hits = append(hits, Hit{Ref: p.Ref(), Box: box, Tip: words.PhotoTip(n, p)})
		x = box.Max.X + 6
	}
	return hits
}
