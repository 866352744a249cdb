package screen

import (
	"io"
	"path/filepath"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/export"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// showReturns shows a year's catch returns, of all rods or of one person's.
func (s *Screen) showReturns() {
	years := s.desk.ReturnYears()
	people, err := s.desk.ReturnPeople()
	if err != nil {
		s.tellError(err)
		return
	}
	year, person := years[0], journal.ID{}
	r, err := s.desk.Returns(year, person)
	if err != nil {
		s.tellError(err)
		return
	}
	board := own.NewBoard(func(size draw.Size) scene.Scene {
		return scene.Returns(r, s.desk.Reminders(year), size.W, s.look(), s.prefs())
	}, s.look)
	board.Tall = true
	win := s.win.Canvas().Size()
	board.Min = fyne.NewSize(min(860, win.Width-80), win.Height-190)
	board.OnKey = s.sheetKey
	renew := func() {
		got, err := s.desk.Returns(year, person)
		if err != nil {
			s.tellError(err)
			return
		}
		r = got
		board.Renew()
	}
	byYear := s.sheetChooser(func(v string) {
		year = years[0]
		if n, err := strconv.Atoi(v); err == nil {
			year = n
		}
		renew()
	})
	var choices []state.Choice
	for i, y := range years {
		v := strconv.Itoa(y)
		if i == 0 {
			v = ""
		}
		choices = append(choices, state.Choice{Value: v, Label: strconv.Itoa(y)})
	}
	byYear.fill(state.Field{Kind: state.Pick, Choices: choices})
	byPerson := s.sheetChooser(func(v string) {
		person, _ = geo.ParseID(v) // all rods are no ID
		renew()
	})
	choices = []state.Choice{{Label: words.AllRods()}}
	for _, p := range people {
		choices = append(choices, state.Choice{Value: p.ID.String(), Label: p.Name})
	}
	byPerson.fill(state.Field{Kind: state.Pick, Choices: choices})
	var hide func()
	save := newSheetButton(s, words.SaveTableButton(), func() { s.askReturnsTable(r) })
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	no.Importance = widget.HighImportance
	title := canvas.NewText(words.ReturnsTitle(), s.ink())
	title.TextSize, title.TextStyle.Bold = 16, true
	head := container.NewHBox(title, spacer(20), container.NewGridWrap(fyne.NewSize(110, 34), byYear), container.NewGridWrap(fyne.NewSize(200, 34), byPerson))
	box := container.NewBorder(head, container.NewHBox(no, save), nil, nil, s.panel(board))
	hide = s.modal.show(container.New(inset{16, 12}, box), board, func() { hide() })
}

// sheetChooser is a chooser on a dialog.
func (s *Screen) sheetChooser(set func(string)) *chooser {
	return newChooser(&hooks{set: set, focus: func() {}, key: s.sheetKey})
}

func (s *Screen) askReturnsTable(r timeline.Returns) {
	s.askPath(asking{
		title: words.SaveTableTitle(), hint: words.SaveTableHint(), verb: words.SaveButton(), endings: []string{".csv"},
		path: filepath.Join(s.pageFolder(), words.ReturnsFile(r.Year)),
		act: func(path string, done func(error)) {
			err := state.WriteNew(path, func(w io.Writer) error { return export.ReturnsCSV(w, r) })
			done(err)
			if err == nil {
				s.remember("folder", filepath.Dir(path))
				s.tell(words.Saved(path))
				s.opt.Log.Info("returns saved")
			}
		}})
}

// askExport writes the open night for other programs.
func (s *Screen) askExport() {
	n := s.desk.Night()
	if n == nil {
		return
	}
	show := export.Show{Prefs: s.prefs()}
	row := func(label string, choices []state.Choice, set func(string)) fyne.CanvasObject {
		in := s.sheetChooser(set)
		in.fill(state.Field{Kind: state.Pick, Choices: choices})
		name := canvas.NewText(label, s.ink())
		name.TextSize = 13.5
		return container.New(settingLayout{}, name, in)
	}
	hidden := []state.Choice{{Label: words.ExportHidden()}, {Value: "yes", Label: words.ExportShown()}}
	places := []state.Choice{{Label: words.ExportPlacesNone()}, {Value: "pool", Label: words.ExportPlacesPool()}, {Value: "exact", Label: words.ExportPlacesExact()}}
	by := map[string]export.Places{"": export.NoPlaces, "pool": export.PoolPlaces, "exact": export.ExactPlaces}
	s.askPath(asking{
		title: words.ExportNightTitle(), hint: words.ExportNightHint(), verb: words.SaveButton(), endings: []string{".csv", ".geojson", ".gpx"},
		path: filepath.Join(s.pageFolder(), n.Log.Trip.Evening.String()+".csv"), // a name without the water
		more: []fyne.CanvasObject{
			row(words.ExportPlacesLabel(), places, func(v string) { show.Places = by[v] }),
			row(words.ExportPeopleLabel(), hidden, func(v string) { show.People = v != "" }),
			row(words.ExportPoolsLabel(), hidden, func(v string) { show.PoolNames = v != "" }),
			row(words.ExportNotesLabel(), hidden, func(v string) { show.Notes = v != "" }),
		},
		act: func(path string, done func(error)) {
			left, err := s.exportNight(n, path, show)
			done(err)
			if err != nil {
				return
			}
			s.remember("folder", filepath.Dir(path))
			said := words.Saved(path)
			if left > 0 {
				said += ": " + words.FishWithoutPlace(left)
			}
			s.tell(said)
			s.opt.Log.Info("night exported")
		}})
}

func (s *Screen) exportNight(n *timeline.Night, path string, show export.Show) (left int, err error) {
	tracks, err := s.desk.TracksOf()
	if err != nil {
		return 0, err
	}
	var write func(io.Writer) error
	switch strings.ToLower(filepath.Ext(path)) {
	case ".csv":
		write = func(w io.Writer) error { return export.CSV(w, n, show) }
	case ".geojson":
		write = func(w io.Writer) error { return export.GeoJSON(w, n, tracks, show) }
	case ".gpx":
		write = func(w io.Writer) (err error) { left, err = export.GPX(w, n, tracks, show); return err }
	default:
		return 0, words.ExportNightEnding()
	}
	return left, state.WriteNew(path, write)
}
