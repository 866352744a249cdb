package widget

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Ring is a line around whatever has the keyboard. The toolkit shows that by a change of
// the ground alone, which a red window in the dark swallows. A widget keeps one, makes its
// renderer with Around, and tells it when the keyboard comes and goes.
type Ring struct {
	on    bool
	plain bool // on a ground of the accent's colour
	edges *Edges
}

// ringWidth is the width of the line, in dp.
const ringWidth = 2

// Around puts the ring around what a renderer draws.
func (r *Ring) Around(inner fyne.WidgetRenderer) fyne.WidgetRenderer {
	r.edges = NewEdges(ringWidth)
	out := &ringed{inner, r}
	r.sync()
	return out
}

// Show says whether the widget has the keyboard.
func (r *Ring) Show(on bool) {
	r.on = on
	r.sync()
}

// ShowOn is Show for a button, whose ground may have the accent's colour already.
func (r *Ring) ShowOn(on bool, i widget.Importance) {
	r.plain = i == widget.HighImportance
	r.Show(on)
}

// On reports whether the line is shown.
func (r *Ring) On() bool { return r.on && r.edges != nil && r.edges.Visible() }

func (r *Ring) sync() {
	if r.edges != nil {
		name := theme.ColorNamePrimary
		if r.plain {
			name = theme.ColorNameForeground
		}
		r.edges.Recolour(theme.Color(name))
		r.edges.Show(r.on)
	}
}

// ringed is a renderer with a ring over it.
type ringed struct {
	fyne.WidgetRenderer
	r *Ring
}

func (d *ringed) Layout(s fyne.Size) {
	d.WidgetRenderer.Layout(s)
	d.r.edges.Place(fyne.NewPos(0, 0), s)
}

func (d *ringed) Refresh() {
	d.WidgetRenderer.Refresh()
	d.r.sync()
}

func (d *ringed) Objects() []fyne.CanvasObject {
	own := d.WidgetRenderer.Objects()
	return append(own[:len(own):len(own)], d.r.edges.Objects()...)
}
