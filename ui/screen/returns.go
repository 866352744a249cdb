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

// showReturns shows a year's catch returns, of all rods or of one person's. They are read away from
// the window.
func (s *Screen) showReturns() {
	v := &returnsSheet{s: s}
	v.board = own.NewBoard(func(size draw.Size) scene.Scene {
		if v.fished == nil {
			return v.notYet(size)
		}
		return scene.Returns(v.of, s.desk.Reminders(v.year), size.W, s.look(), s.prefs())
	}, s.look)
	v.board.Tall = true
	win := s.win.Canvas().Size()
	v.board.Min = fyne.NewSize(min(860, win.Width-80), win.Height-190)
	v.board.OnKey = s.sheetKey
	v.byYear = s.sheetChooser(func(to string) {
		v.year = v.years[0]
		if n, err := strconv.Atoi(to); err == nil {
			v.year = n
		}
		v.renew()
	})
	v.byPerson = s.sheetChooser(func(to string) {
		v.person, _ = geo.ParseID(to) // all rods are no ID
		v.renew()
	})
	var hide func()
	v.save = newSheetButton(s, words.SaveTableButton(), func() { s.askReturnsTable(v.of) })
	v.save.Disable()
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	no.Importance = widget.HighImportance
	title := canvas.NewText(words.ReturnsTitle(), s.ink())
	title.TextSize, title.TextStyle.Bold = 16, true
	v.head = container.NewHBox(title)
	box := container.NewBorder(v.head, container.NewHBox(no, v.save), nil, nil, s.panel(v.board))
	hide = s.modal.show(container.New(inset{16, 12}, box), v.board, func() { hide() })
	readWhole(s, (*state.Reading).ReadFished, v.read)
}

// returnsSheet is the dialog of the catch returns.
type returnsSheet struct {
	s                *Screen
	fished           *timeline.Fished // nil: being read
	fault            error            // why they cannot be read
	years            []int
	year             int
	person           journal.ID
	of               timeline.Returns
	board            *own.Board
	head             *fyne.Container
	byYear, byPerson *chooser
	save             *sheetButton
}

// read takes over what was read.
func (v *returnsSheet) read(f *timeline.Fished, err error) {
	if v.fault = err; err != nil {
		v.board.Renew()
		return
	}
	v.fished, v.years = f, v.s.desk.ReturnYears(f)
	v.year = v.years[0]
	var choices []state.Choice
	for i, y := range v.years {
		c := state.Choice{Value: strconv.Itoa(y), Label: strconv.Itoa(y)}
		if i == 0 {
			c.Value = ""
		}
		choices = append(choices, c)
	}
	v.byYear.fill(state.Field{Kind: state.Pick, Choices: choices})
	choices = []state.Choice{{Label: words.AllRods()}}
	for _, p := range f.People {
		choices = append(choices, state.Choice{Value: p.ID.String(), Label: p.Name})
	}
	v.byPerson.fill(state.Field{Kind: state.Pick, Choices: choices})
	v.head.Add(spacer(20))
	v.head.Add(container.NewGridWrap(fyne.NewSize(110, 34), v.byYear))
	v.head.Add(container.NewGridWrap(fyne.NewSize(200, 34), v.byPerson))
	v.save.Enable()
	v.renew()
	v.s.opt.Log.Info("returns read", "years", len(v.years))
}

func (v *returnsSheet) renew() {
	v.of = v.fished.Returns(timeline.ReturnsAsk{Year: v.year, Person: v.person})
	v.board.Renew()
}

// notYet says that the journal is being read, or why it cannot be.
func (v *returnsSheet) notYet(size draw.Size) scene.Scene {
	what, do := words.ReadingWhole()
	if v.fault != nil {
		what, do = words.Explain(v.fault)
	}
	look := v.s.look()
	l := draw.NewList(draw.Size{W: size.W, H: 90})
	l.Fill(draw.Rectangle(draw.R(0, 0, size.W, 90)), draw.NonZero, draw.Solid(look.Panel))
	l.Text(draw.Text{S: what, At: draw.Pt(14, 26), Font: draw.Font{Size: 15, Weight: draw.Bold}, Color: look.Ink})
	y := 50.0
	for _, line := range draw.Wrap(draw.Font{Size: 13}, do, size.W-28) {
		l.Text(draw.Text{S: line, At: draw.Pt(14, y), Font: draw.Font{Size: 13}, Color: look.Soft})
		y += 17
	}
	return scene.Scene{List: l}
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
