package screen

import (
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// bindBeats gives the commands of the beats' room that only a window can carry out their acts.
func (s *Screen) bindBeats() {
	bind := func(id string, when func() bool, act func()) {
		s.desk.Bind(id, when, func() error { act(); return nil })
		s.bound[id] = true
	}
	b := s.desk.Beats
	on := func() bool { _, ok := b().Drawn(); return ok }
	pool := func() bool { _, ok := b().SkyPool(); return ok }
	bind("beat.store", func() bool { return b().Changed() }, s.storeBeat)
	bind("beat.drop", func() bool { return b().Changed() }, s.askDrop)
	bind("beat.walk", nil, s.askWalk)
	bind("beat.sketch", nil, s.askSketch)
	bind("beat.trace", on, s.askTrace)
	bind("skyline.read", pool, s.askSkyline)
}

// takeDrafts takes up the drawings that were not stored.
func (s *Screen) takeDrafts() {
	if s.opt.Drafts == nil {
		return
	}
	if err := s.desk.Beats().SetKeeper(s.opt.Drafts); err != nil {
		s.tell(words.DraftsUnread(s.opt.Journal, err))
	}
}

// storeBeat makes the drawing a beat of the journal; for one that stands it asks first.
func (s *Screen) storeBeat() {
	err := s.desk.Beats().Store()
	switch {
	case errors.Is(err, state.ErrAsk):
		s.askStore()
	case err != nil:
		s.tellError(err)
	}
}

// askStore asks whether a beat that stands was drawn wrong or has changed.
func (s *Screen) askStore() {
	const width = 520
	q, err := s.desk.Beats().Question()
	if err != nil {
		s.tellError(err)
		return
	}
	para := func(font draw.Font, text string) *own.Paragraph {
		p := own.NewParagraph(font, width, s.ink)
		p.SetText(text)
		return p
	}
	fault := own.NewParagraph(draw.Font{Size: 13}, width, s.errorInk)
	from := newSheetEntry(s)
	from.SetText(q.From)
	var hide func()
	settle := func(err error) {
		if err == nil {
			hide()
			return
		}
		what, do := words.Explain(err)
		fault.SetText(what + " " + do)
	}
	change := func() { settle(s.desk.Beats().ChangeFrom(from.Text)) }
	from.OnSubmitted = func(string) { change() }
	correct := newSheetButton(s, words.CorrectButton(), func() { settle(s.desk.Beats().Correct()) })
	changed := newSheetButton(s, words.ChangeButton(), change)
	correct.Importance, changed.Importance = widget.HighImportance, widget.MediumImportance
	if len(q.Lost) > 0 || q.Nights > 0 {
		correct.Importance, changed.Importance = widget.MediumImportance, widget.HighImportance
	}
	box := container.NewVBox(para(draw.Font{Weight: draw.Bold, Size: 15}, words.StoreQuestionTitle(q.Beat)),
		para(draw.Font{Size: 13.5}, words.StoreQuestionText(q.Since, q.Nights)))
	if len(q.Lost) > 0 {
		box.Add(para(draw.Font{Size: 13}, words.LostPools(q.Lost)))
	}
	if q.Elsewhere {
		box.Add(para(draw.Font{Size: 13}, words.ChangedElsewhere()))
	}
	note := func(text string) *own.Paragraph {
		p := own.NewParagraph(draw.Font{Size: 13}, width-16, s.soft)
		p.SetText(text)
		return p
	}
	label := own.NewParagraph(draw.Font{Size: 13}, 70, s.soft)
	label.SetText(words.ChangeFromLabel())
	box.Add(container.NewHBox(correct))
	box.Add(note(words.CorrectHint()))
	box.Add(container.NewBorder(nil, nil, container.NewHBox(changed, container.NewCenter(label)), nil, from))
	box.Add(note(words.ChangeHint()))
	box.Add(fault)
	box.Add(container.NewHBox(newSheetButton(s, words.CloseButton(), func() { hide() })))
	hide = s.modal.show(container.New(inset{18, 14}, container.NewVBox(spacer(width), box)), correct, nil)
}

// askDrop asks once more before what is not stored goes.
func (s *Screen) askDrop() {
	b := s.desk.Beats()
	d, ok := b.Drawn()
	if !ok {
		return
	}
	head := own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 15}, 440, s.ink)
	head.SetText(words.DropTitle(words.BeatName(d.Beat)))
	text := own.NewParagraph(draw.Font{Size: 13.5}, 440, s.soft)
	text.SetText(words.DropHint(b.Stands()))
	var hide func()
	drop := newSheetButton(s, words.DropButton(), func() { hide(); b.Discard() })
	drop.Importance = widget.DangerImportance
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	hide = s.modal.show(container.New(inset{18, 14}, container.NewVBox(head, text, spacer(440), container.NewHBox(no, drop))), no, nil)
}

// askSketch lays a sketch from a file on the table.
func (s *Screen) askSketch() {
	s.askPath(asking{
		title: words.SketchTitleRead(), hint: words.SketchHintRead(), verb: words.ReadButton(), endings: []string{".geojson", ".json"},
		path: withSeparator(s.folder("beats")),
		act: func(path string, done func(error)) {
			f, err := os.Open(path)
			if err != nil {
				done(err)
				return
			}
			defer f.Close()
			told, err := s.desk.Beats().ReadSketch(f)
			done(err)
			if err == nil {
				s.remember("folder beats", filepath.Dir(path))
				s.message(words.SketchTitleRead(), told)
			}
		}})
}

// askTrace lays a picture under the plan.
func (s *Screen) askTrace() {
	s.askPath(asking{
		title: words.TraceTitle(), hint: words.TraceHintFile(), verb: words.ReadButton(), endings: []string{".jpg", ".jpeg", ".png", ".gif"},
		path: withSeparator(s.folder("pictures")),
		act: func(path string, done func(error)) {
			err := s.readTrace(path)
			done(err)
			if err == nil {
				s.remember("folder pictures", filepath.Dir(path))
			}
		}})
}

// mostTrace is the size of the largest picture that is read, in bytes.
const mostTrace = 80 << 20

func (s *Screen) readTrace(path string) error {
	info, err := os.Stat(path)
	if err != nil {
		return err
	}
	if info.Size() > mostTrace {
		return words.ImageTooLarge()
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	return s.desk.Beats().ReadTracing(path, data)
}

// askWalk draws the banks from a walk along the water.
func (s *Screen) askWalk() {
	s.askPath(asking{
		title: words.WalkTitle(), hint: words.WalkHint(), verb: words.ReadButton(), endings: []string{".gpx"},
		path: withSeparator(s.folder("tracks")),
		act: func(path string, done func(error)) {
			f, err := os.Open(path)
			if err != nil {
				done(err)
				return
			}
			defer f.Close()
			walks, err := state.ReadWalks(f)
			done(err)
			if err == nil {
				s.remember("folder tracks", filepath.Dir(path))
				s.askBanks(walks[0])
			}
		}})
}

// askBanks asks what a walk was and how wide the river is there.
func (s *Screen) askBanks(w state.Walk) {
	const width = 460
	head := own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 15}, width, s.ink)
	head.SetText(words.WalkFound(w.Name, w.Length))
	fault := own.NewParagraph(draw.Font{Size: 13}, width, s.errorInk)
	wide := newSheetEntry(s)
	wide.SetText("20 m")
	banks := []geo.Bank{"", geo.TrueLeft, geo.TrueRight}
	var names []string
	for _, b := range banks {
		names = append(names, words.WalkAlong(b))
	}
	along := widget.NewSelect(names, nil)
	along.SetSelectedIndex(1)
	way := widget.NewSelect([]string{words.WalkWay(false), words.WalkWay(true)}, nil)
	way.SetSelectedIndex(0)
	var hide func()
	commit := func() {
		l, err := units.ParseLength(wide.Text, units.Metre)
		if err == nil {
			err = s.desk.Beats().DrawWalk(w, l.M, banks[along.SelectedIndex()], way.SelectedIndex() == 1)
		}
		if err == nil {
			hide()
			return
		}
		what, do := words.Explain(err)
		fault.SetText(what + " " + do)
	}
	wide.OnSubmitted = func(string) { commit() }
	ok := newSheetButton(s, words.WalkDrawButton(), commit)
	ok.Importance = widget.HighImportance
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	row := func(label string, o fyne.CanvasObject) fyne.CanvasObject {
		l := own.NewParagraph(draw.Font{Size: 13}, 180, s.soft)
		l.SetText(label)
		return container.NewBorder(nil, nil, container.New(fixed{190}, l), nil, o)
	}
	box := container.NewVBox(head, spacer(width), row(words.WalkWidthLabel(), wide), row(words.WalkAlongLabel(), along), row(words.WalkWayLabel(), way), fault, container.NewHBox(ok, no))
	hide = s.modal.show(container.New(inset{18, 14}, box), wide, commit)
}

// fixed gives its one object a width, in the middle of its height.
type fixed struct{ w float32 }

func (f fixed) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(f.w, o[0].MinSize().Height)
}

func (f fixed) Layout(o []fyne.CanvasObject, size fyne.Size) {
	h := o[0].MinSize().Height
	place(o[0], 0, (size.Height-h)/2, f.w, h)
}

// askSkyline reads the skyline of a pool from a list; the magnetic declination stands behind the
// name of the file, since both are asked for at once.
func (s *Screen) askSkyline() {
	p, ok := s.desk.Beats().SkyPool()
	if !ok {
		return
	}
	s.askPath(asking{
		title: words.SkyListTitle(), hint: words.SkyListHint(p.Name), verb: words.ReadButton(), endings: []string{".csv", ".txt", ".tsv"},
		path: withSeparator(s.folder("skylines")),
		act: func(path string, done func(error)) {
			data, err := os.ReadFile(path)
			done(err)
			if err == nil {
				s.remember("folder skylines", filepath.Dir(path))
				s.askDeclination(string(data))
			}
		}})
}

// askDeclination asks by how much the compass was off, and reads the list.
func (s *Screen) askDeclination(list string) {
	const width = 460
	head := own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 15}, width, s.ink)
	head.SetText(words.DeclinationLabel())
	fault := own.NewParagraph(draw.Font{Size: 13}, width, s.errorInk)
	in := newSheetEntry(s)
	in.SetText("0")
	var hide func()
	commit := func() {
		v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(in.Text), ",", ".", 1), 64)
		if err != nil {
			fault.SetText(words.DeclinationFault())
			return
		}
		if err := s.desk.Beats().ReadSky(strings.NewReader(list), units.Degrees(v)); err != nil {
			what, do := words.Explain(err)
			fault.SetText(what + " " + do)
			return
		}
		hide()
	}
	in.OnSubmitted = func(string) { commit() }
	ok := newSheetButton(s, words.ReadButton(), commit)
	ok.Importance = widget.HighImportance
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	hide = s.modal.show(container.New(inset{18, 14}, container.NewVBox(head, spacer(width), in, fault, container.NewHBox(ok, no))), in, commit)
}
