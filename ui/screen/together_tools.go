package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/timeline"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// togetherTools is the row of buttons over the picture: which picture, along what, and at
// the right what concerns the nights and the files.
type togetherTools struct {
	r       *togetherRoom
	buttons []togetherButton
	all     *fyne.Container
	lay     *flowLayout
}

type togetherButton struct {
	b  *own.Button
	c  *state.Command
	on func() bool // shown as the one chosen
}

func newTogetherTools(r *togetherRoom) *togetherTools {
	t := &togetherTools{r: r, lay: &flowLayout{}}
	t.all = container.New(t.lay)
	add := func(id, label, icon string, gapBefore bool, on func() bool) {
		c := r.s.desk.Command(id)
		b := r.s.button(label, tipOf(c), icon, func() { r.s.run(c) })
		t.buttons = append(t.buttons, togetherButton{b, c, on})
		t.lay.gaps = append(t.lay.gaps, gapBefore)
		t.all.Add(b)
	}
	for _, p := range scene.Pictures {
		add("together.picture-"+string(p), words.PictureName(string(p)), "", false, func() bool { return r.t.Picture() == p })
	}
	for i, a := range timeline.Axes {
		add("together.axis-"+a.String(), axisName(a), "", i == 0, func() bool { return r.t.Axis() == a })
	}
	add("together.weigh", words.WeighButton(), "", true, nil)
	add("together.like", words.LikeButton(), "", false, nil)
	add("together.picture", words.PictureButton(), "page", false, nil)
	add("together.table", words.FiguresButton(), "", false, nil)
	return t
}

// sync brings what is chosen and what is enabled up to date.
func (t *togetherTools) sync() {
	for _, b := range t.buttons {
		b.b.Tip = tipOf(b.c)
		want := widget.LowImportance
		if b.on != nil && b.on() {
			want = widget.MediumImportance
			if t.r.s.look().Name == scene.Lamp.Name { // whose quiet grounds are hardly to be told apart
				want = widget.HighImportance
			}
		}
		changed := b.b.Importance != want
		b.b.Importance = want
		if !enable(b.b, b.c.Enabled()) && changed {
			b.b.Refresh()
		}
	}
}

func (t *togetherTools) heightFor(width float32) float32 {
	return t.lay.heightFor(t.all.Objects, width)
}

// flowLayout sets objects in rows, with a gap before some.
type flowLayout struct{ gaps []bool }

const flowGap = 14

func (l *flowLayout) each(o []fyne.CanvasObject, width float32, f func(i int, x, y float32, s fyne.Size)) float32 {
	x, y, row := float32(0), float32(0), float32(0)
	for i, c := range o {
		s := c.MinSize()
		if i < len(l.gaps) && l.gaps[i] && x > 0 {
			x += flowGap
		}
		if x > 0 && x+s.Width > width {
			x, y, row = 0, y+row, 0
		}
		f(i, x, y, s)
		x += s.Width
		row = max(row, s.Height)
	}
	return y + row
}

func (l *flowLayout) heightFor(o []fyne.CanvasObject, width float32) float32 {
	return l.each(o, width, func(int, float32, float32, fyne.Size) {})
}

func (l *flowLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	h := float32(0)
	for _, c := range o {
		h = max(h, c.MinSize().Height)
	}
	return fyne.NewSize(minSketch, h)
}

func (l *flowLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	l.each(o, size.Width, func(i int, x, y float32, s fyne.Size) { place(o[i], x, y, s.Width, s.Height) })
}
