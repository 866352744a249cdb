package screen

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// side is the column at the left: the program's name, a new night, all nights.
type side struct {
	s      *Screen
	list   *nightList
	nights *fyne.Container // the list of nights with its button
	lists  *fyne.Container // that, or what another room has in its place
	add    *own.Button     // nil where no night can be added
	name   *canvas.Text
	edge   *canvas.Rectangle // there is no ground: the window's own is painted anyway
	all    fyne.CanvasObject
}

const sideWidth = 214

func newSide(s *Screen) *side {
	v := &side{s: s}
	v.name = canvas.NewText(words.ProductName(), color.Transparent)
	v.name.TextSize, v.name.TextStyle.Bold = 18, true
	v.edge = canvas.NewRectangle(color.Transparent)
	v.edge.SetMinSize(fyne.NewSize(1, 1))
	v.list = newNightList(s)
	var add fyne.CanvasObject = widget.NewLabel("")
	if c := s.desk.Command("night.new"); c != nil {
		v.add = s.button(c.Title(), tipOf(c), "add", func() { s.run(c) })
		add = v.add
	}
	head := container.New(inset{14, 8}, v.name)
	v.nights = container.NewBorder(container.New(inset{6, 0}, container.NewHBox(add)), nil, nil, nil, container.NewThemeOverride(v.list, flat{s}))
	v.lists = container.NewStack(v.nights)
	v.all = container.NewBorder(nil, nil, nil, v.edge, container.NewBorder(head, s.rooms.buttons(), nil, nil, v.lists))
	return v
}

// flat is the window's theme without the shadows at the ends of what scrolls: the bar
// beside the list says enough, and in a dark window a shadow that shows is a glare. The
// grounds of the rows are their own, since the toolkit's would take in a month's heading.
type flat struct{ s *Screen }

func (f flat) Color(n fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	if n == theme.ColorNameShadow || n == theme.ColorNameSelection || n == theme.ColorNameHover {
		return color.Transparent
	}
	return f.s.theme.Color(n, v)
}
func (f flat) Font(t fyne.TextStyle) fyne.Resource     { return f.s.theme.Font(t) }
func (f flat) Icon(n fyne.ThemeIconName) fyne.Resource { return f.s.theme.Icon(n) }
func (f flat) Size(n fyne.ThemeSizeName) float32       { return f.s.theme.Size(n) }

// sync brings the list and the colours up to date.
func (v *side) sync() {
	k := v.s.look()
	v.name.Color, v.edge.FillColor = k.Ink, k.Edge
	v.name.Refresh()
	v.edge.Refresh()
	v.list.months()
	v.list.Refresh()
	n := v.s.desk.Night()
	row := -1
	if n != nil {
		row = v.s.desk.RowOf(n.Log.Trip.ID)
	}
	v.list.mark(row)
	if v.add != nil {
		enable(v.add, !v.s.desk.ReadOnly())
	}
}

// nightList is the list of nights. Up and Down go through it, Return or a click opens
// one; other keys are those of the window.
type nightList struct {
	widget.List
	s     *Screen
	mute  bool
	count int
	at    int  // the row that the keys are at
	keys  bool // the list has the keyboard
}

func newNightList(s *Screen) *nightList {
	l := &nightList{s: s}
	l.Length = s.desk.NightCount
	l.CreateItem = func() fyne.CanvasObject { return newNightItem(s) }
	l.UpdateItem = func(i widget.ListItemID, o fyne.CanvasObject) { o.(*nightItem).set(i) }
	l.OnSelected = func(i widget.ListItemID) {
		if l.mute {
			return
		}
		row := s.desk.NightRow(i)
		if row.Open {
			return
		}
		if err := s.desk.Open(row.Trip); err != nil {
			s.tellError(err)
			s.side.sync()
		}
	}
	l.OnHighlighted = func(i widget.ListItemID) { l.at = i }
	l.HideSeparators = true
	l.ExtendBaseWidget(l)
	return l
}

// months gives the first night of each month room for its heading.
func (l *nightList) months() {
	n := l.s.desk.NightCount()
	for i := range max(n, l.count) {
		h := float32(rowHeight)
		if i < n {
			h = l.rowHeight(i)
		}
		l.SetItemHeight(i, h)
	}
	l.count = n
}

// heads reports whether a row is the first of its month, from above.
func (l *nightList) heads(i int) bool {
	if i == 0 {
		return true
	}
	a, b := l.s.desk.NightRow(i-1).Evening, l.s.desk.NightRow(i).Evening
	return a.Year != b.Year || a.Month != b.Month
}

// mark shows which row is open without opening it.
func (l *nightList) mark(row int) {
	l.mute = true
	defer func() { l.mute = false }()
	if row < 0 {
		l.UnselectAll()
		return
	}
	l.Select(row)
	l.whole(row)
}

// whole has the list begin with a whole row, its heading too, that row in view.
func (l *nightList) whole(row int) {
	off, gap := l.GetScrollOffset(), l.Theme().Size(theme.SizeNamePadding)
	top, sel := float32(0), float32(0)
	tops := make([]float32, l.count)
	for i := range tops {
		tops[i] = top
		if i == row {
			sel = top + l.rowHeight(i)
		}
		top += l.rowHeight(i) + gap
	}
	back, on := float32(-1), float32(-1) // the last before that shows the night whole, else the next
	for _, t := range tops {
		switch {
		case t <= off+0.5 && sel <= t+l.Size().Height:
			back = t
		case t > off && on < 0:
			on = t
		}
	}
	best := back
	if best < 0 {
		best = on
	}
	if best >= 0 && best != off {
		l.ScrollToOffset(best)
	}
}

func (l *nightList) rowHeight(i int) float32 {
	if l.heads(i) {
		return rowHeight + headHeight
	}
	return rowHeight
}

// Resize keeps the open night in view: the list is made before it has a size.
func (l *nightList) Resize(size fyne.Size) {
	before := l.Size()
	l.List.Resize(size)
	if n := l.s.desk.Night(); n != nil && size.Height > 0 && size.Height != before.Height {
		row := max(0, l.s.desk.RowOf(n.Log.Trip.ID))
		l.ScrollTo(row)
		l.whole(row)
	}
}

// FocusGained is part of fyne.Focusable.
func (l *nightList) FocusGained() {
	l.keys = true
	l.List.FocusGained()
}

// FocusLost is part of fyne.Focusable.
func (l *nightList) FocusLost() {
	l.keys = false
	l.List.FocusLost()
}

// TypedKey is part of fyne.Focusable.
func (l *nightList) TypedKey(k *fyne.KeyEvent) {
	switch k.Name {
	case fyne.KeyUp, fyne.KeyDown:
		was := l.at
		l.List.TypedKey(k)
		l.RefreshItem(was)
		l.RefreshItem(l.at)
	case fyne.KeySpace:
		l.List.TypedKey(k)
	case fyne.KeyReturn, fyne.KeyEnter:
		l.List.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	default:
		l.s.typedKey(k)
	}
}

// TypedRune is part of fyne.Focusable.
func (l *nightList) TypedRune(r rune) {
	if r != ' ' {
		l.s.typedRune(r)
	}
}

// nightItem is one row: the date, and what came of the night.
type nightItem struct {
	widget.BaseWidget
	s    *Screen
	row  int
	over bool              // the pointer is
	fill *canvas.Rectangle // the ground of what is open or pointed at, without the month's heading
	bar  *canvas.Rectangle
	head *canvas.Text // the month, over the first of its nights
	date *canvas.Text
	what *canvas.Text
}

func newNightItem(s *Screen) *nightItem {
	i := &nightItem{s: s, fill: canvas.NewRectangle(color.Transparent), bar: canvas.NewRectangle(color.Transparent), head: canvas.NewText("", color.Transparent), date: canvas.NewText("", color.Transparent), what: canvas.NewText("", color.Transparent)}
	i.head.TextSize, i.date.TextSize, i.what.TextSize = 12, 13.5, 12
	i.ExtendBaseWidget(i)
	return i
}

func (i *nightItem) set(row int) {
	if row != i.row { // the row moved on under the pointer
		i.row, i.over = row, false
	}
	r := i.s.desk.NightRow(row)
	k := i.s.look()
	i.head.Text, i.head.Color = "", k.Soft
	if i.s.side.list.heads(row) {
		i.head.Text = words.Month(r.Evening)
	}
	i.date.Text, i.date.Color = words.DayOfMonth(r.Evening), k.Ink
	i.date.TextStyle.Bold = r.Open || !r.Blank && !r.Empty
	what := words.NightLine(r.Beat, r.Brief, r.Empty)
	if r.Err != nil {
		what = words.NightFault()
	}
	i.what.Text, i.what.Color = draw.Fit(draw.Font{Size: 12}, what, math.Max(60, float64(i.s.shares.side)-26)), k.Soft
	i.bar.FillColor = color.Transparent
	if r.Open {
		i.bar.FillColor = k.Accent
	}
	i.ground(r.Open)
	i.Refresh()
}

// ground is that of the night that is open, pointed at, or reached by keys.
func (i *nightItem) ground(open bool) {
	l := i.s.side.list
	i.fill.CornerRadius, i.fill.FillColor, i.fill.StrokeWidth = 4, color.Transparent, 0
	switch {
	case open:
		i.fill.FillColor = i.s.theme.Color(theme.ColorNameSelection, 0)
	case i.over:
		i.fill.FillColor = i.s.theme.Color(theme.ColorNameHover, 0)
	}
	if l.keys && l.at == i.row {
		i.fill.StrokeColor, i.fill.StrokeWidth = i.s.look().Accent, 1.5
	}
	i.fill.Refresh()
}

// MouseIn is part of desktop.Hoverable.
func (i *nightItem) MouseIn(*desktop.MouseEvent) { i.point(true) }

// MouseMoved is part of desktop.Hoverable.
func (i *nightItem) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is part of desktop.Hoverable.
func (i *nightItem) MouseOut() { i.point(false) }

func (i *nightItem) point(on bool) {
	i.over = on
	i.ground(i.row < i.s.desk.NightCount() && i.s.desk.NightRow(i.row).Open)
}

// CreateRenderer is part of fyne.Widget.
func (i *nightItem) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.New(nightItemLayout{}, i.fill, i.bar, i.head, i.date, i.what))
}

const (
	rowHeight  = 40
	headHeight = 24
)

type nightItemLayout struct{}

func (nightItemLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(minSide-12, rowHeight)
}

func (nightItemLayout) Layout(o []fyne.CanvasObject, s fyne.Size) {
	y := s.Height - rowHeight
	place(o[0], 0, y, s.Width, rowHeight)
	place(o[1], 0, y+4, 3, rowHeight-8)
	place(o[2], 11, y-18, s.Width-12, 16)
	place(o[3], 11, y+3, s.Width-12, 18)
	place(o[4], 11, y+21, s.Width-12, 16)
}
