package screen

import (
	"image/color"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/state"
	"gloamline/ui/words"
)

// askMerge asks for another copy of the journal, compares the two, and shows what a merge
// would do.
func (s *Screen) askMerge() {
	s.askPath(asking{
		title: words.MergeTitle(), hint: words.MergeHint(), verb: words.CompareButton(), endings: journalEndings,
		path: withSeparator(s.folder("merges")),
		act: func(path string, done func(error)) {
			f, err := s.beside(path)
			if err != nil {
				done(err)
				return
			}
			away(func() (*state.Merging, error) { return state.LookAt(path, f) }, func(m *state.Merging, err error) {
				done(err)
				if err == nil {
					s.remember("folder merges", filepath.Dir(path))
					s.showMerge(m)
				}
			})
		}})
}

// mergeSheet shows what a merge would do, and each record that both sides changed, side by
// side.
type mergeSheet struct {
	s     *Screen
	m     *state.Merging
	list  *sheetList
	sums  *fyne.Container
	sides *fyne.Container
	ways  [3]*sheetButton
	wide  float32
	hide  func()
}

func (s *Screen) showMerge(m *state.Merging) {
	v := &mergeSheet{s: s, m: m, sums: container.NewVBox(), sides: container.NewVBox()}
	const listWide = 300
	win := s.win.Canvas().Size()
	v.wide = min(560, win.Width-listWide-110)
	total := listWide + 14 + v.wide
	conflicts := m.Choices()
	take := newSheetButton(s, words.TakeOver(), v.accept)
	take.Importance = widget.HighImportance
	no := newSheetButton(s, words.CloseButton(), func() { v.hide() })
	foot := container.NewHBox(take, no)
	first := fyne.Focusable(take)
	box := container.NewVBox(s.headline(total, words.MergeOf(filepath.Base(m.Path))), v.sums)
	if len(conflicts) == 0 {
		total = 520
		box.Objects[0] = s.headline(total, words.MergeOf(filepath.Base(m.Path)))
	}
	box.Add(spacer(total)) // the sentences alone would make it narrow
	if m.Empty() {
		take.Hide()
		first = no
	}
	if n := len(conflicts); n > 0 {
		v.list = newSheetList(s.modal.key, func() int { return n }, v.line, func(int) { v.sync() })
		v.list.typed = func(r rune) bool {
			for i, key := range words.MergeKeys() {
				if r == key {
					v.choose(state.MergeWays[i])
					return true
				}
			}
			return false
		}
		row := container.NewHBox()
		for i, way := range state.MergeWays {
			v.ways[i] = newSheetButton(s, words.MergeWay(string(way)), func() { v.choose(way) })
			row.Add(v.ways[i])
		}
		high := min(290, win.Height-430, max(220, float32(n)*26))
		room := canvas.NewRectangle(color.Transparent)
		room.StrokeColor, room.StrokeWidth, room.CornerRadius = s.look().Edge, 1, 4
		room.SetMinSize(fyne.NewSize(listWide, high))
		right := canvas.NewRectangle(color.Transparent)
		right.SetMinSize(fyne.NewSize(v.wide, high-40))
		box.Add(newAir(4))
		box.Add(s.text(13, total, s.soft, words.ConflictsHint()))
		box.Add(container.NewHBox(container.NewStack(room, v.list), spacer(14),
			container.NewBorder(nil, row, nil, nil, container.NewStack(right, container.NewVScroll(v.sides)))))
		first = v.list
	}
	box.Add(newAir(4))
	box.Add(foot)
	v.summary(total)
	v.hide = s.modal.show(container.New(inset{18, 14}, box), first, v.accept)
	if v.list != nil {
		v.list.choose(0)
	}
	s.opt.Log.Debug("merge shown", "conflicts", len(conflicts))
}

// summary says what would be done, by the choices as they stand.
func (v *mergeSheet) summary(width float32) {
	v.s.lines(v.sums, width, v.m.Lines())
}

// line is one conflict in the list, with how it is settled.
func (v *mergeSheet) line(i int) string {
	c := v.m.Choices()[i]
	return words.MergeSign(string(c.Way)) + "  " + c.Name
}

// sync shows the sides of the conflict that is picked out.
func (v *mergeSheet) sync() {
	s, c := v.s, v.m.Choices()[v.list.picked]
	rows := v.m.Rows(v.list.picked, s.prefs())
	v.sides.RemoveAll()
	const name = 120
	side := (v.wide - name - 20) / 2
	row := func(a, b, d string, bold bool) {
		ink := s.ink
		if bold {
			ink = s.soft
		}
		v.sides.Add(container.New(columns{name, side, side}, s.text(12.5, name-8, s.soft, a), s.text(13, side-10, ink, b), s.text(13, side-10, ink, d)))
	}
	v.sides.Add(s.text(13, v.wide, s.ink, c.Name))
	row("", words.ConflictSide(true, c.OursAt, time.Local), words.ConflictSide(false, c.TheirsAt, time.Local), true)
	for _, r := range rows {
		row(r.Name, r.Here, r.There, false)
		if r.Before != "" {
			v.sides.Add(s.text(12, v.wide, s.soft, words.WasBefore(r.Name, r.Before)))
		}
	}
	for i, way := range state.MergeWays {
		b := v.ways[i]
		b.Importance = widget.LowImportance
		if way == c.Way {
			b.Importance = widget.HighImportance
		}
		if way == state.MergeBoth && !c.CanBoth {
			b.Disable()
		} else {
			b.Enable()
		}
		b.Refresh()
	}
	v.sides.Refresh()
}

// choose settles the conflict that is picked out.
func (v *mergeSheet) choose(way state.MergeWay) {
	if err := v.m.Choose(v.list.picked, way); err != nil {
		return // both sides changed the same: that button is off
	}
	v.s.opt.Log.Debug("merge chosen", "conflict", v.list.picked, "way", string(way))
	v.list.RefreshItem(v.list.picked)
	v.sync()
	v.s.focus(v.list)
}

// accept carries the merge out.
func (v *mergeSheet) accept() {
	s := v.s
	if v.m.Empty() {
		v.hide()
		return
	}
	if c := s.desk.Card(); c != nil && c.Dirty() {
		s.message(words.CardIsOpen())
		return
	}
	if err := s.opt.Keep.Accept(v.m); err != nil {
		s.tellError(err)
		return
	}
	v.hide()
	s.opt.Log.Info("merged")
	s.message(words.MergeDone(s.opt.Keep.Contradictions(v.m)))
}

// columns sets objects beside each other at given widths.
type columns []float32

func (c columns) MinSize(o []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for i, x := range o {
		s.Width += c[i]
		s.Height = max(s.Height, x.MinSize().Height)
	}
	return s
}

func (c columns) Layout(o []fyne.CanvasObject, s fyne.Size) {
	x := float32(0)
	for i, a := range o {
		place(a, x, 0, c[i]-10, s.Height)
		x += c[i]
	}
}
