package screen

import (
	"image/color"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// intakeSheet is a dialog of a title, a note and rows of a label and what is filled in.
type intakeSheet struct {
	s     *Screen
	box   *fyne.Container
	fault *own.Paragraph
	rows  map[string]fyne.CanvasObject // by name, to be told where they are
}

const (
	sheetWidth = 520
	sheetLabel = 180
)

func newIntakeSheet(s *Screen, title, note string) *intakeSheet {
	d := &intakeSheet{s: s, box: container.NewVBox(), rows: map[string]fyne.CanvasObject{}}
	d.say(draw.Font{Weight: draw.Bold, Size: 15}, title, s.ink)
	d.say(draw.Font{Size: 13}, note, s.soft)
	d.fault = own.NewParagraph(draw.Font{Size: 13}, sheetWidth, s.errorInk)
	return d
}

func (d *intakeSheet) say(f draw.Font, text string, c func() color.Color) *own.Paragraph {
	p := own.NewParagraph(f, sheetWidth, c)
	p.SetText(text)
	d.box.Add(p)
	return p
}

// row adds a label with what is filled in behind it.
func (d *intakeSheet) row(label string, in fyne.CanvasObject) {
	l := own.NewParagraph(draw.Font{Size: 13}, sheetLabel-10, d.s.soft)
	l.SetText(label)
	d.box.Add(container.NewBorder(nil, nil, container.New(fixed{sheetLabel}, l), nil, in))
}

// entry adds a line of text.
func (d *intakeSheet) entry(label, text, hint string) *sheetEntry {
	e := newSheetEntry(d.s)
	e.SetText(text)
	e.SetPlaceHolder(hint)
	d.row(label, e)
	return e
}

// choose adds a choice of a few.
func (d *intakeSheet) choose(label string, choices []state.Choice, value string, set func(string)) *chooser {
	in := newChooser(&hooks{set: set, focus: func() {}, key: d.s.sheetKey})
	in.fill(state.Field{Kind: state.Pick, Choices: choices, Value: value})
	d.row(label, in)
	return in
}

// tick adds a yes or no.
func (d *intakeSheet) tick(label string, on bool, set func(bool)) {
	t := newTick(&hooks{set: func(v string) { set(v == state.Yes) }, focus: func() {}, key: d.s.sheetKey})
	t.Text = label
	t.Checked = on
	d.box.Add(t)
}

// show shows the dialog with a button that commits, one that leaves it, and others between.
func (d *intakeSheet) show(first fyne.Focusable, verb string, commit func() error, others ...*sheetButton) (hide func()) {
	act := func() {
		if err := commit(); err != nil {
			what, do := words.Explain(err)
			d.fault.SetText(strings.TrimSpace(what + " " + do))
			d.fault.Refresh()
			return
		}
		hide()
	}
	ok := newSheetButton(d.s, verb, act)
	ok.Importance = widget.HighImportance
	row := container.NewHBox(ok)
	for _, b := range others {
		row.Add(b)
	}
	row.Add(newSheetButton(d.s, words.CloseButton(), func() { hide() }))
	d.box.Add(d.fault)
	d.box.Add(row)
	hide = d.s.modal.show(container.New(inset{18, 14}, container.NewVBox(spacer(sheetWidth), d.box)), first, act)
	return hide
}

// askClock puts the clock of the device of the file picked out right.
func (r *intakeRoom) askClock() {
	c, ok := r.desk.Clock()
	if !ok {
		return
	}
	d := newIntakeSheet(r.s, words.ClockTitle(c.Device), words.ClockHelp(c.Files))
	shown := d.entry(words.ClockShownLabel(), c.Print(c.Shown), "")
	truly := d.entry(words.ClockTrueLabel(), "", words.ClockTrueHint())
	if len(c.Fish) > 0 {
		choices := []state.Choice{{Value: "", Label: words.ClockNoFish()}}
		for _, f := range c.Fish {
			choices = append(choices, state.Choice{Value: c.Print(f.At), Label: f.Name})
		}
		d.choose(words.ClockFishLabel(), choices, "", func(at string) {
			if at != "" {
				truly.SetText(at)
			}
		})
	}
	start := ""
	if c.Set {
		start = words.Offset(c.Offset)
	}
	offset := d.entry(words.ClockOffsetLabel(), start, words.ClockOffsetHint())
	// The two moments say the offset; one that is typed stands by itself.
	tell := func(string) {
		if a, b, ok := moments(c, shown.Text, truly.Text); ok {
			offset.SetText(words.Offset(b.Sub(a)))
		}
		d.fault.SetText("")
		d.fault.Refresh()
	}
	shown.OnChanged, truly.OnChanged = tell, tell
	commit := func() error {
		if strings.TrimSpace(truly.Text) != "" {
			if _, _, ok := moments(c, shown.Text, truly.Text); !ok {
				return words.ClockFault()
			}
		}
		off, ok := words.ParseOffset(offset.Text)
		if !ok {
			return words.OffsetFault()
		}
		r.desk.SetClock(c.Device, off)
		return nil
	}
	var hide func()
	asIs := newSheetButton(r.s, words.ClockAsIsButton(), func() { r.desk.Unclock(c.Device); hide() })
	others := []*sheetButton{asIs}
	if c.HasHint() {
		others = append([]*sheetButton{newSheetButton(r.s, words.ClockHintButton(c.Hint), func() { r.desk.SetClock(c.Device, c.Hint); hide() })}, others...)
	}
	hide = d.show(truly, words.ClockSetButton(), commit, others...)
	for _, e := range []*sheetEntry{shown, truly, offset} {
		e.OnSubmitted = func(string) { r.s.modal.key(&fyne.KeyEvent{Name: fyne.KeyReturn}) }
	}
}

// moments reads what a clock showed and what it truly was.
func moments(c state.IntakeClock, shown, truly string) (a, b time.Time, ok bool) {
	a, ok = c.Moment(shown)
	if !ok {
		return a, b, false
	}
	b, ok = c.Moment(truly)
	return a, b, ok
}

// askColumns chooses the columns of the table picked out, and reads it again.
func (r *intakeRoom) askColumns() {
	c, ok := r.desk.Columns()
	if !ok {
		return
	}
	d := newIntakeSheet(r.s, words.ColumnsTitle(c.Name), words.ColumnsHelp())
	first := d.choose(words.ColumnWhenLabel(), c.Columns, c.When, func(v string) { c.When = v })
	d.choose(words.ColumnClockLabel(), c.Clocks, c.Clock, func(v string) { c.Clock = v })
	d.choose(words.ColumnLevelLabel(), c.Columns, c.Level, func(v string) { c.Level = v })
	d.choose(words.ColumnUnitLabel(), c.Units, c.Unit, func(v string) { c.Unit = v })
	d.tick(words.ColumnMonthLabel(), c.MonthFirst, func(on bool) { c.MonthFirst = on })
	d.show(first, words.ColumnRead(), func() error {
		again, err := r.desk.ChooseColumns(c)
		if err == nil {
			r.read(again)
		}
		return err
	})
}

// askGauge asks what is known of the gauge whose course is shown.
func (r *intakeRoom) askGauge() {
	g, ok := r.desk.Known()
	if !ok {
		return
	}
	d := newIntakeSheet(r.s, words.GaugeSettingsTitle(g.Station), words.GaugeSettingsHelp())
	lag := d.entry(words.GaugeLagLabel(), g.Lag, words.GaugeLagHint())
	base := d.entry(words.GaugeBaseLabel(), g.Base, words.GaugeBaseHint())
	d.tick(words.GaugeRegulatedLabel(), g.Regulated, func(on bool) { g.Regulated = on })
	d.show(lag, words.GaugeSetButton(), func() error {
		g.Lag, g.Base = lag.Text, base.Text
		err := r.desk.SetKnown(g)
		if err == nil {
			r.s.remember("gauges", r.desk.EncodeGauges())
		}
		return err
	})
	for _, e := range []*sheetEntry{lag, base} {
		e.OnSubmitted = func(string) { r.s.modal.key(&fyne.KeyEvent{Name: fyne.KeyReturn}) }
	}
}
