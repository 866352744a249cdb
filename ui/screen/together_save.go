package screen

import (
	"path/filepath"
	"strings"

	"gloamline/ui/draw"
	"gloamline/ui/paper"
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
	s := r.s
	title, _ := r.t.Said()
	tables := r.t.Report().Tables()
	s.askPath(asking{
		title: words.FiguresTitle(), hint: words.FiguresHint(), verb: words.SaveButton(), endings: []string{".csv"},
		path: filepath.Join(s.pageFolder(), words.TogetherFile(title)+".csv"),
		act: func(path string, done func(error)) {
			stem := strings.TrimSuffix(path, ".csv")
			job(func() error {
				var files []paper.File
				for _, x := range tables {
					files = append(files, paper.File{Name: stem + x.Name + ".csv", Content: x.CSV})
				}
				_, err := paper.SaveFiles(files)
				return err
			}, func(err error) {
				if err != nil {
					done(words.NotSaved(err))
					return
				}
				done(nil)
				s.remember("folder", filepath.Dir(path))
				s.tell(words.Saved(stem + "-….csv"))
				s.opt.Log.Info("figures saved")
			})
		},
	})
}
