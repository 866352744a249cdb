package screen

import (
	"path/filepath"
	"strings"

	"gloamline/ui/paper"
	"gloamline/ui/state"
	"gloamline/ui/words"
)

// askTables asks where to and saves tables, each in a file of its own beside the others:
// name-steps.csv. event is what the log calls it.
func (s *Screen) askTables(tables []state.Table, title, hint, name, event string) {
	s.askPath(asking{
		title: title, hint: hint, verb: words.SaveButton(), endings: []string{".csv"},
		path: filepath.Join(s.pageFolder(), name+".csv"),
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
				s.opt.Log.Info(event, "tables", len(tables))
			})
		},
	})
}
