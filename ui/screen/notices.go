package screen

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// showCautions lists what harms people and fish at night, with whose text each is.
func (s *Screen) showCautions() {
	var hide func()
	board := own.NewBoard(func(size draw.Size) scene.Scene { return cautionSheet(size.W, s.look()) }, s.look)
	board.Tall = true
	win := s.win.Canvas().Size()
	board.Min = fyne.NewSize(min(720, win.Width-100), min(580, win.Height-190))
	board.OnKey = s.modal.key
	ok := newSheetButton(s, words.CloseButton(), func() { hide() })
	ok.Importance = widget.HighImportance
	hide = s.modal.show(container.New(inset{18, 14}, container.NewBorder(s.headline(400, words.CautionsTitle()), container.NewHBox(ok), nil, nil, s.panel(board))), board, func() { hide() })
}

// cautionSheet draws the reminders below each other.
func cautionSheet(width float64, look scene.Look) scene.Scene {
	const pad, lead = 14.0, 18.0
	l := draw.NewList(draw.Size{W: width, H: 1e4})
	y := 24.0
	say := func(f draw.Font, c draw.Color, text string) {
		for _, line := range draw.Wrap(f, text, width-2*pad-8) {
			l.Text(draw.Text{S: line, At: draw.Pt(pad, y), Font: f, Color: c})
			y += lead
		}
	}
	text, small, head := draw.Font{Size: 13}, draw.Font{Size: 12}, draw.Font{Size: 14, Weight: draw.Bold}
	say(text, look.Soft, words.CautionsHint())
	for _, c := range words.Cautions {
		y += 10
		say(head, look.Ink, c.Topic)
		say(text, look.Ink, c.Text)
		say(small, look.Soft, words.CautionSource(c))
	}
	out := draw.NewList(draw.Size{W: width, H: y})
	out.Fill(draw.Rectangle(draw.R(0, 0, width, y)), draw.NonZero, draw.Solid(look.Panel))
	draw.Place(out, l, 1, draw.Pt(0, 0))
	return scene.Scene{List: out}
}

// noticesSheet is the dialog of the user's own notes on a beat.
type noticesSheet struct {
	s      *Screen
	beats  []state.NoticedBeat
	at     int // the beat
	list   *sheetList
	title  interface{ SetText(string) }
	fields [4]*sheetEntry // words, said, checked, due
	fault  interface{ SetText(string) }
	remove *sheetButton
}

const noticesWidth = 560 // dp

// showNotices shows the notes on the beat of the open night, or on another one.
func (s *Screen) showNotices() {
	beats, err := s.desk.NoticedBeats()
	if err != nil {
		s.tellError(err)
		return
	}
	if len(beats) == 0 {
		s.tellError(words.NoBeatYet())
		return
	}
	const width = noticesWidth
	v := &noticesSheet{s: s, beats: beats}
	title := s.headline(width, words.NoticesTitle(beats[0].Name))
	fault := s.text(13, width, s.errorInk, "")
	v.title, v.fault = title, fault
	v.list = newSheetList(s.modal.key, func() int { return len(v.notices()) + 1 }, v.line, func(int) { v.fill() })
	room := canvas.NewRectangle(color.Transparent)
	room.StrokeColor, room.StrokeWidth, room.CornerRadius = s.look().Edge, 1, 4
	room.SetMinSize(fyne.NewSize(width, 112))
	form := container.NewVBox()
	for i, label := range []string{words.NoticeWords(), words.NoticeSaid(), words.NoticeChecked(), words.NoticeDue()} {
		v.fields[i] = newSheetEntry(s)
		v.fields[i].OnSubmitted = func(string) { v.store() }
		name := canvas.NewText(label, s.ink())
		name.TextSize = 13.5
		form.Add(container.New(noteLayout{}, name, v.fields[i]))
	}
	var hide func()
	store := newSheetButton(s, words.StoreNotice(), v.store)
	store.Importance = widget.HighImportance
	today := newSheetButton(s, words.CheckedToday(), func() { v.fields[2].SetText(s.desk.Today()); v.store() })
	v.remove = newSheetButton(s, words.RemoveNotice(), v.drop)
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	box := container.NewVBox(title)
	if len(beats) > 1 {
		var choices []state.Choice
		for i, b := range beats {
			value := b.ID.String()
			if i == 0 {
				value = ""
			}
			choices = append(choices, state.Choice{Value: value, Label: b.Name})
		}
		in := s.sheetChooser(func(to string) {
			v.at = 0
			for i, b := range beats {
				if b.ID.String() == to {
					v.at = i
				}
			}
			title.SetText(words.NoticesTitle(v.beats[v.at].Name))
			v.renew(0)
		})
		in.fill(state.Field{Kind: state.Pick, Choices: choices})
		box.Add(container.NewGridWrap(fyne.NewSize(240, 34), in))
	}
	box.Add(s.text(13, width, s.soft, words.NoticesHint()))
	box.Add(container.NewStack(room, v.list))
	box.Add(form)
	box.Add(fault)
	box.Add(container.NewHBox(store, today, v.remove, no))
	hide = s.modal.show(container.New(inset{18, 14}, box), v.fields[0], v.store)
	v.renew(0)
}

func (v *noticesSheet) notices() []journal.Notice { return v.beats[v.at].Notices }

// line is one note, or the line for a new one, which stands first.
func (v *noticesSheet) line(i int) string {
	if i == 0 {
		return words.NoticeNew()
	}
	n, today := v.notices()[i-1], v.s.desk.Today()
	// What is asked gives way to the days, which tell whether it is to be asked again.
	f, whole := draw.Font{Size: 13.5, Weight: draw.Bold}, n.Words
	n.Words = ""
	n.Words = draw.Fit(f, whole, noticesWidth-24-draw.Measure(f, words.NoticeRow(n, today)).Width)
	return words.NoticeRow(n, today)
}

// fill puts the note that is picked out into the fields.
func (v *noticesSheet) fill() {
	n := journal.Notice{}
	checked, due := v.s.desk.Today(), ""
	if i := v.list.picked; i > 0 && i <= len(v.notices()) {
		n = v.notices()[i-1]
		checked = n.Checked.String()
		if !n.Due.IsZero() {
			due = n.Due.String()
		}
	}
	for i, text := range []string{n.Words, n.Said, checked, due} {
		v.fields[i].SetText(text)
	}
	v.fault.SetText("")
	if v.list.picked > 0 {
		v.remove.Enable()
	} else {
		v.remove.Disable()
	}
}

// renew shows the list anew with a line picked out.
func (v *noticesSheet) renew(pick int) {
	v.list.picked = -1
	v.list.UnselectAll()
	v.list.Refresh()
	v.list.choose(pick)
	v.fill()
}

// store adds the note in the fields, or changes the one picked out.
func (v *noticesSheet) store() {
	n, err := v.s.desk.ReadNotice(v.fields[0].Text, v.fields[1].Text, v.fields[2].Text, v.fields[3].Text)
	if err != nil {
		what, do := words.Explain(err)
		v.fault.SetText(what + " " + do)
		return
	}
	list := append([]journal.Notice(nil), v.notices()...)
	if i := v.list.picked; i > 0 {
		list[i-1] = n
	} else {
		list = append(list, n)
	}
	v.keep(list)
}

func (v *noticesSheet) drop() {
	i := v.list.picked
	if i < 1 {
		return
	}
	v.keep(append(append([]journal.Notice(nil), v.notices()[:i-1]...), v.notices()[i:]...))
}

func (v *noticesSheet) keep(list []journal.Notice) {
	b := &v.beats[v.at]
	if err := v.s.desk.SetNotices(b.ID, list); err != nil {
		what, do := words.Explain(err)
		v.fault.SetText(what + " " + do)
		return
	}
	b.Notices = list
	v.renew(0)
	v.s.focus(v.fields[0])
}

// noteLayout puts the label of a field before it.
type noteLayout struct{}

func (noteLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(560, o[1].MinSize().Height)
}

func (noteLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	const label = 120
	h := o[0].MinSize().Height
	place(o[0], 0, (size.Height-h)/2, label, h)
	place(o[1], label, 0, size.Width-label, size.Height)
}
