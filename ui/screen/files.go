package screen

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/words"
)

// files lists a folder beside a name that is typed: the folder above, the folders in it,
// and the files whose names end as asked for. The arrows go through it, Return or a click
// takes what is marked: a folder is entered, a file becomes the name. The toolkit's own
// chooser is a window of its own whose Escape and Tab cannot be had.
type files struct {
	widget.List
	endings []string // with the dot; none: folders only
	dir     string
	rows    []fileRow
	marked  []string // paths that show a mark
	taken   func(path string, folder bool)
	key     func(*fyne.KeyEvent) bool
}

// fileRow is one line: a folder or a file.
type fileRow struct {
	name   string
	folder bool
}

// maxRows is how much of a folder is listed; the name can be typed all the same.
const maxRows = 2000

func newFiles(endings []string, key func(*fyne.KeyEvent) bool, taken func(path string, folder bool)) *files {
	f := &files{endings: endings, key: key, taken: taken}
	f.Length = func() int { return len(f.rows) }
	f.CreateItem = func() fyne.CanvasObject {
		return container.NewBorder(nil, nil, widget.NewIcon(theme.FolderIcon()), nil, canvas.NewText("", theme.Color(theme.ColorNameForeground)))
	}
	f.UpdateItem = func(i widget.ListItemID, o fyne.CanvasObject) {
		if i < len(f.rows) {
			f.rows[i].show(o.(*fyne.Container), slices.Contains(f.marked, filepath.Join(f.dir, f.rows[i].name)))
		}
	}
	f.OnSelected = func(i widget.ListItemID) {
		f.Unselect(i)
		if i < len(f.rows) {
			r := f.rows[i]
			f.taken(filepath.Join(f.dir, r.name), r.folder)
		}
	}
	f.HideSeparators = true
	f.ExtendBaseWidget(f)
	return f
}

func (r fileRow) show(c *fyne.Container, marked bool) {
	t, i := c.Objects[0].(*canvas.Text), c.Objects[1].(*widget.Icon)
	t.Text, t.Color, t.TextSize = r.name, theme.Color(theme.ColorNameForeground), 13.5
	if r.name == ".." {
		t.Text = words.FolderAbove()
	}
	switch {
	case r.folder:
		i.SetResource(theme.FolderIcon())
	case marked:
		i.SetResource(theme.ConfirmIcon())
		t.TextStyle.Bold = true
	default:
		i.SetResource(theme.FileIcon())
		t.TextStyle.Bold = false
	}
	t.Refresh()
}

// look lists the folder of a name as far as it is typed, if that is another one.
func (f *files) look(path string) {
	dir := folderOf(path)
	if dir == f.dir {
		return
	}
	if rows, ok := listFolder(dir, f.endings); ok {
		f.dir, f.rows = dir, rows
		if !f.Size().IsZero() { // the toolkit cannot scroll what it has not drawn
			f.ScrollToTop()
		}
		f.Refresh()
	}
}

// folderOf is the folder that a name typed so far lies in.
func folderOf(path string) string {
	if strings.HasSuffix(path, string(filepath.Separator)) {
		return filepath.Clean(path)
	}
	return filepath.Dir(path)
}

// pasted is what was meant by a name that was pasted behind another one: a whole path after
// a folder stands by itself.
func pasted(path string) string {
	sep := string(filepath.Separator)
	if i := strings.LastIndex(path, sep+sep); i > 0 || i == 0 && sep == "/" {
		path = path[i+1:]
	}
	for i := len(path) - 2; i > 1; i-- { // another drive's letter
		if filepath.VolumeName(path[i-1:]) != "" && path[i] == ':' {
			return path[i-1:]
		}
	}
	return path
}

// withSeparator is a folder as one goes on writing: its separator stands behind it once.
func withSeparator(dir string) string {
	sep := string(filepath.Separator)
	return strings.TrimSuffix(dir, sep) + sep
}

// listFolder reads a folder; false if it cannot be read. What is hidden is left out.
func listFolder(dir string, endings []string) ([]fileRow, bool) {
	found, err := os.ReadDir(dir)
	if err != nil {
		return nil, false
	}
	var folders, names []fileRow
	for _, e := range found {
		switch name := e.Name(); {
		case strings.HasPrefix(name, "."):
		case isFolder(dir, e):
			folders = append(folders, fileRow{name, true})
		case slices.Contains(endings, strings.ToLower(filepath.Ext(name))):
			names = append(names, fileRow{name, false})
		}
	}
	out := append(folders, names...)
	if filepath.Dir(dir) != dir {
		out = append([]fileRow{{"..", true}}, out...)
	}
	return out[:min(len(out), maxRows)], true
}

// isFolder follows links: a folder by another name is one.
func isFolder(dir string, e os.DirEntry) bool {
	if e.Type()&os.ModeSymlink == 0 {
		return e.IsDir()
	}
	i, err := os.Stat(filepath.Join(dir, e.Name()))
	return err == nil && i.IsDir()
}

// TypedKey is part of fyne.Focusable.
func (f *files) TypedKey(k *fyne.KeyEvent) {
	switch k.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		f.List.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	case fyne.KeyEscape:
		f.key(k)
	default:
		f.List.TypedKey(k)
	}
}
