package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/geo"
	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// beatPanel is the column at the right: the fields of what is picked out, what is still wanting,
// and the button that stores.
type beatPanel struct {
	r      *beatRoom
	rows   []*panelRow
	of     string // whose fields they are
	head   *own.Paragraph
	list   *fyne.Container
	wants  *own.Paragraph
	faults *fyne.Container
	store  *own.Button
	more   *fyne.Container
	body   *fyne.Container
	all    fyne.CanvasObject
}

// panelRow is one field.
type panelRow struct {
	id    string
	kind  state.FieldKind
	label *own.Paragraph
	in    input
	read  *own.Paragraph
	fault *own.Paragraph
	all   *fyne.Container
}

const panelInput = beatPanelWidth - 2*cardPad - panelLabel - 14
const panelLabel = 92

// Of the width for what is still wanting one is held to, as a scrolled column's own is
// not known before it is laid out.
const faultWidth = beatPanelWidth - 2*cardPad - 14

func newBeatPanel(r *beatRoom) *beatPanel {
	s := r.s
	p := &beatPanel{r: r}
	p.head = own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 16}, beatPanelWidth-2*cardPad, s.ink)
	p.wants = own.NewParagraph(draw.Font{Weight: draw.Medium, Size: 13}, beatPanelWidth-2*cardPad, s.soft)
	p.list, p.faults, p.more = container.NewVBox(), container.NewVBox(), container.New(&wrapLayout{})
	c := s.desk.Command("beat.store")
	p.store = s.button(c.Title(), tipOf(c), "", func() { s.run(c) })
	p.store.Importance = widget.HighImportance
	p.body = container.NewVBox(p.list, p.more, spacer(1), p.wants, p.faults)
	p.all = container.NewPadded(container.NewBorder(container.NewPadded(p.head), container.NewBorder(nil, nil, nil, p.store), nil, nil, container.NewVScroll(p.body)))
	return p
}

// first is the first field, for F6.
func (p *beatPanel) first() []fyne.Focusable {
	if len(p.rows) == 0 {
		return nil
	}
	return []fyne.Focusable{p.rows[0].in}
}

// sync shows the fields as they stand now.
func (p *beatPanel) sync() {
	d := p.r.desk
	p.head.SetText(d.Heading())
	p.head.Refresh()
	fields := d.Fields()
	sel, _, _ := d.Selected()
	of := sel.String()
	if b, ok := d.Drawn(); ok {
		of = b.Beat.ID.String() + of
	}
	if of != p.of || !p.current(fields) {
		p.rebuild(fields, of)
	}
	for i, f := range fields {
		p.rows[i].fill(f)
	}
	p.list.Refresh()
	p.wanting()
	p.buttons()
	p.body.Refresh() // rows may be higher or fewer now
	c := p.r.s.desk.Command("beat.store")
	p.store.SetText(c.Title())
	if on := d.Changed() && c.Enabled(); on == p.store.Disabled() {
		if on {
			p.store.Enable()
		} else {
			p.store.Disable()
		}
	}
}

func (p *beatPanel) current(fields []state.Field) bool {
	if len(fields) != len(p.rows) {
		return false
	}
	for i, f := range fields {
		if f.ID != p.rows[i].id || f.Kind != p.rows[i].kind {
			return false
		}
	}
	return true
}

// rebuild makes the rows anew. The keyboard stays where it was if that field is still there; a pool
// that was just drawn has its name taken in hand.
func (p *beatPanel) rebuild(fields []state.Field, of string) {
	s := p.r.s
	at := ""
	for _, row := range p.rows {
		if f := s.win.Canvas().Focused(); f != nil && f == fyne.Focusable(row.in) && of == p.of {
			at = row.id
		}
	}
	lost := false
	for _, row := range p.rows {
		if f := s.win.Canvas().Focused(); f != nil && f == fyne.Focusable(row.in) {
			lost = true
		}
	}
	p.of, p.rows, p.list.Objects = of, nil, nil
	for _, f := range fields {
		row := p.newRow(f)
		p.rows = append(p.rows, row)
		p.list.Add(row.all)
	}
	p.list.Refresh()
	for _, row := range p.rows {
		if row.id == at {
			s.focus(row.in)
			return
		}
	}
	if lost {
		s.focus(p.r.plan)
	}
}

func (p *beatPanel) newRow(f state.Field) *panelRow {
	s := p.r.s
	row := &panelRow{id: f.ID, kind: f.Kind}
	h := &hooks{focus: func() { s.opt.Log.Debug("keyboard", "field", row.id) }}
	h.set = func(text string) { p.r.desk.Set(row.id, text) }
	h.key = func(k *fyne.KeyEvent) bool { return p.key(row, k) }
	row.in = newInput(f, h)
	row.label = own.NewParagraph(draw.Font{Size: 12.5}, panelLabel-6, s.soft)
	row.label.Leading = 15
	row.label.SetText(f.Label)
	row.read = own.NewParagraph(draw.Font{Size: noteSize}, panelInput, s.soft)
	row.fault = own.NewParagraph(draw.Font{Size: noteSize}, panelInput, s.errorInk)
	row.all = container.New(&panelRowLayout{row}, row.label, row.in, row.read, row.fault)
	return row
}

func (row *panelRow) fill(f state.Field) {
	row.label.SetText(f.Label)
	row.in.fill(f)
	said := f.Read
	if said == "" && f.Value == "" && !hintFits(f.Hint) {
		said = f.Hint
	}
	row.read.SetText(said)
	row.fault.SetText(f.Error)
	row.all.Refresh()
}

// key is asked before a field deals with a key: Return and Escape give the keyboard back to the
// plan, Tab goes on.
func (p *beatPanel) key(row *panelRow, k *fyne.KeyEvent) bool {
	switch k.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeyEscape:
		p.r.s.focus(p.r.plan)
	case fyne.KeyTab:
		step := 1
		if modifiers()&fyne.KeyModifierShift != 0 {
			step = -1
		}
		for i, r := range p.rows {
			if r == row {
				if j := i + step; j >= 0 && j < len(p.rows) {
					p.r.s.focus(p.rows[j].in)
				} else {
					p.r.s.focus(p.r.plan)
				}
				return true
			}
		}
	case fyne.KeyF1:
		p.r.s.runID("help.keys")
	case fyne.KeyF6:
		p.r.s.typedKey(k)
	default:
		return false
	}
	return true
}

// panelMore lists the commands that stand as buttons below the fields.
func (p *beatPanel) panelMore() []string {
	d := p.r.desk
	sel, _, _ := d.Selected()
	b, ok := d.Drawn()
	switch _, pool := b.Beat.Pool(sel); {
	case !ok:
		return []string{"beat.sketch"}
	case pool:
		return []string{"draw.earlier", "draw.later", "draw.join", "skyline.read", "draw.delete"}
	case !sel.IsZero():
		return []string{"draw.delete"}
	}
	out := []string{"beat.walk", "beat.sketch", "beat.trace"}
	if _, _, ok := d.Tracing(); ok {
		out = append(out, "beat.place-trace", "beat.untrace")
	}
	if len(b.Beat.Pools) > 1 {
		out = append(out, "draw.number")
	}
	if d.Changed() {
		out = append(out, "beat.drop")
	}
	return out
}

func (p *beatPanel) buttons() {
	p.more.Objects = nil
	for _, id := range p.panelMore() {
		c := p.r.s.desk.Command(id)
		if c == nil || p.r.s.missing(c) {
			continue
		}
		b := p.r.s.button(c.Title(), tipOf(c)+". "+c.Help, "", func() { p.r.s.run(c) })
		b.Alignment = widget.ButtonAlignLeading
		if !c.Enabled() {
			b.Disable()
		}
		p.more.Add(b)
	}
	p.more.Layout = &pairLayout{}
	p.more.Refresh()
}

// wanting lists what is wrong; a click picks it out.
func (p *beatPanel) wanting() {
	found := p.r.desk.Findings()
	if _, ok := p.r.desk.Drawn(); !ok {
		p.wants.SetText("")
		p.faults.Objects = nil
		p.faults.Refresh()
		return
	}
	p.wants.SetText(words.FindingsTitle(len(found)))
	p.wants.Refresh()
	p.faults.Objects = nil
	const most = 12
	for _, f := range found[:min(len(found), most)] {
		p.faults.Add(newFault(p.r, f.Of, words.Sentence(f.What), f.Do, f.Gates))
	}
	p.faults.Refresh()
}

// faultText is something that is wanting, in two sentences; a click picks it out on the plan.
type faultText struct {
	widget.BaseWidget
	what, do *own.Paragraph
	tapped   func()
}

func newFault(r *beatRoom, of geo.ID, what, do string, gates bool) *faultText {
	const width = faultWidth
	f := &faultText{tapped: func() { r.desk.Select(of); r.s.focus(r.plan) }}
	ink := r.s.soft
	if gates {
		ink = r.s.ink
	}
	f.what = own.NewParagraph(draw.Font{Weight: draw.Medium, Size: 12.5}, width, ink)
	f.do = own.NewParagraph(draw.Font{Size: 12.5}, width, r.s.soft)
	f.what.SetText(what)
	f.do.SetText(do)
	f.ExtendBaseWidget(f)
	return f
}

// Tapped is part of fyne.Tappable.
func (f *faultText) Tapped(*fyne.PointEvent) { f.tapped() }

// CreateRenderer is part of fyne.Widget.
func (f *faultText) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.New(stacked{}, f.what, f.do))
}

// stacked puts paragraphs below each other with little between.
type stacked struct{}

func (stacked) MinSize(o []fyne.CanvasObject) fyne.Size {
	h := float32(6)
	for _, p := range o {
		h += p.(*own.Paragraph).HeightFor(faultWidth)
	}
	return fyne.NewSize(100, h)
}

func (stacked) Layout(o []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, p := range o {
		h := p.(*own.Paragraph).HeightFor(faultWidth)
		place(p, 4, y, faultWidth, h)
		y += h
	}
}

// pairLayout puts buttons below each other.
type pairLayout struct{}

func (pairLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(100, float32(len(o))*(toolHeight-2))
}

func (pairLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	for i, b := range o {
		place(b, -4, float32(i)*(toolHeight-2), min(size.Width, b.MinSize().Width), toolHeight-2)
	}
}

// panelRowLayout puts the label beside the input and what there is to say below it.
type panelRowLayout struct{ r *panelRow }

func (l *panelRowLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	h := max(l.r.in.MinSize().Height, l.r.label.HeightFor(panelLabel-6)+6)
	for _, p := range []*own.Paragraph{l.r.read, l.r.fault} {
		if p.Text() != "" {
			h += p.HeightFor(panelInput) + 3
		}
	}
	return fyne.NewSize(panelLabel+110, h+2)
}

func (l *panelRowLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	r := l.r
	w := size.Width - panelLabel - 10
	h := r.in.MinSize().Height
	place(r.in, panelLabel, 0, w, h)
	th := r.label.HeightFor(panelLabel - 6)
	place(r.label, 2, max(1, (min(h, 36)-th)/2), panelLabel-6, th)
	y := max(h, th+6) + 1
	for _, p := range []*own.Paragraph{r.read, r.fault} {
		show(p, p.Text() != "")
		if p.Text() != "" {
			ph := p.HeightFor(w)
			place(p, panelLabel, y, w, ph)
			y += ph + 3
		}
	}
}
