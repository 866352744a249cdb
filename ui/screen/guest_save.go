package screen

import (
	"gloamline/ui/draw"
	"gloamline/ui/paper/replay"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// save shows the pages as they will leave and saves them, or the same as what plays.
func (r *guestRoom) save() {
	if h := r.desk.Handout(); h != nil {
		r.s.showSheet(r.leaf(h))
	}
}

func (r *guestRoom) leaf(h scene.Handout) leaf {
	p := r.s.prefs()
	return leaf{
		title: h.Title(), file: r.desk.File(), hint: words.GuestPageHint(),
		draw:    func(look scene.Look) []*draw.List { return h.Pages(look, p) },
		endings: replay.Endings,
		write: func(path string) error {
			_, err := replay.Save(path, h, scene.Paper, p)
			return err
		},
	}
}
