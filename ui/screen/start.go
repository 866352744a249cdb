package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// start is what stands over the sketch of a journal without a night: the next step, or
// two, as buttons.
type start struct {
	s           *Screen
	draw        *own.Button
	beat, night *own.Button
	caution     *own.Paragraph
	all         *fyne.Container
}

func newStart(s *Screen) *start {
	v := &start{s: s}
	make := func(id, label string) *own.Button {
		c := s.desk.Command(id)
		b := s.button(label, tipOf(c), "", func() { s.run(c) })
		b.Importance = widget.MediumImportance
		return b
	}
	v.draw = make("view.room-"+string(state.BeatRoom), words.DrawBeatStart())
	v.beat, v.night = make("file.beat", words.ReadBeatStart()), make("night.new", words.FirstNight())
	v.caution = s.text(12, 620, s.soft, words.StartCaution())
	v.all = container.New(below{}, container.NewVBox(container.NewCenter(container.NewHBox(v.draw, v.beat, v.night)), newAir(4), spacer(620), v.caution))
	v.sync()
	return v
}

// sync shows the buttons where there is no night to choose, the next step as the chief
// one.
func (v *start) sync() {
	d := v.s.desk
	on := d.Night() == nil && d.NightCount() == 0 && !d.ReadOnly()
	show(v.all, on)
	if !on {
		return
	}
	has := d.HasBeat()
	show(v.night, has)
	v.draw.Importance, v.beat.Importance, v.night.Importance = widget.HighImportance, widget.MediumImportance, widget.HighImportance
	if has {
		v.draw.Importance = widget.MediumImportance
	}
	v.draw.Refresh()
	v.beat.Refresh()
	v.night.Refresh()
	v.caution.Refresh()
	v.all.Refresh()
}

// below puts its one object in the middle, under a few lines of text that stand there.
type below struct{}

func (below) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }

func (below) Layout(o []fyne.CanvasObject, s fyne.Size) {
	m := o[0].MinSize()
	place(o[0], (s.Width-m.Width)/2, min(s.Height/2+34, s.Height-m.Height-4), m.Width, m.Height)
}

// startNews is what may change the next step.
const startNews = state.Nights | state.NightOpen | state.Can | state.Look
