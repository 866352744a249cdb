package screen

import (
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// savePicture shows the picture as it will leave, and saves it.
func (r *togetherRoom) savePicture() {
	title, how := r.t.Said()
	sides, view, picture := r.t.Sides(), r.t.View(), r.t.Picture()
	r.s.showSheet(leaf{
		title: title, file: words.TogetherFile(title), hint: words.PictureHint(),
		draw: func(look scene.Look) []*draw.List {
			return []*draw.List{scene.TogetherPage(picture, sides, title, []string{how}, look, view)}
		},
	})
}

// saveTables asks where to and saves the figures.
func (r *togetherRoom) saveTables() {
	title, _ := r.t.Said()
	r.s.askTables(r.t.Report().Tables(), words.FiguresTitle(), words.FiguresHint(), words.TogetherFile(title), "figures saved")
}
