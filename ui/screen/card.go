package screen

import (
	"errors"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// card shows the open card of the desk at the right edge of the window. Every
// keystroke goes to the card, which answers with its fields as they then stand.
// Return commits, Escape closes; if anything was typed Escape must come twice.
type card struct {
	s      *Screen
	shown  *state.Card
	rows   []*cardRow
	more   bool // seldom fields unfolded
	warned bool // the first Escape was met

	all     *fyne.Container
	title   *own.Paragraph
	problem *own.Paragraph
	list    *fyne.Container
	scroll  *container.Scroll
	folds   bool // the button below stands there
	unfold  *own.Button
	commit  *own.Button
	remove  *own.Button
	closing *own.Button
}

const (
	cardPad   = 12
	labelCol  = 104
	inputCol  = cardWidth - 2*cardPad - labelCol - 14
	noteSize  = 12.0
	titleSize = 16.0
)

func newCard(s *Screen) *card {
	c := &card{s: s}
	c.title = own.NewParagraph(draw.Font{Weight: draw.Bold, Size: titleSize}, cardWidth-2*cardPad-30, s.ink)
	c.problem = own.NewParagraph(draw.Font{Size: noteSize}, cardWidth-2*cardPad, s.errorInk)
	c.list = container.NewVBox()
	c.scroll = container.NewVScroll(c.list)
	c.unfold = c.ringButton(words.MoreFields(), "", "", func() { c.more = !c.more; c.rebuild(); c.layout() })
	c.commit = c.ringButton("", "", "", c.doCommit)
	c.commit.Importance = widget.HighImportance
	c.remove = c.ringButton(words.RemoveButton(), "", "", c.doRemove)
	c.remove.Importance = widget.MediumImportance
	c.closing = c.ringButton("", words.CloseCardTip(), "close", c.escape)
	head := container.NewBorder(nil, nil, nil, c.closing, container.NewPadded(c.title))
	foot := container.NewVBox(c.problem, container.NewBorder(nil, nil, c.remove, c.commit))
	c.all = container.NewStack(s.panel(container.NewPadded(container.NewBorder(head, foot, nil, nil, c.scroll))))
	c.all.Hide()
	return c
}

// cardRow is one field.
type cardRow struct {
	id    string
	kind  state.FieldKind
	label *own.Paragraph
	in    input
	hooks *hooks
	read  *own.Paragraph // how it was understood
	fault *own.Paragraph // what is wrong
	asks  *fyne.Container
	asked string
	pic   *picture
	all   *fyne.Container
}

// sync shows the desk's card as it stands now and reports whether it is another one.
func (c *card) sync() (fresh bool) {
	now := c.s.desk.Card()
	if now == nil {
		if c.shown != nil {
			c.shown, c.rows = nil, nil
			c.s.foot.sync()
		}
		return false
	}
	if now != c.shown {
		c.shown, c.more, c.warned = now, false, false
		c.s.tell("") // what was said before is not about this
		c.rebuild()
		c.scroll.ScrollToTop()
		return true
	}
	if !c.current() {
		c.rebuild()
		return false
	}
	for _, r := range c.rows {
		if f, ok := now.Field(r.id); ok {
			c.fill(r, f)
		}
	}
	c.around()
	return false
}

// focusFirst gives the first field the keyboard. The card must be laid out: the
// toolkit does not find what it has not yet drawn.
func (c *card) focusFirst() {
	if len(c.rows) > 0 {
		c.s.focus(c.rows[0].in)
	}
}

// visibleFields are the fields to show: all, or those that are not folded away.
func (c *card) visibleFields() (out []state.Field, folded bool) {
	for _, f := range c.shown.Fields() {
		if f.More && !c.more && f.Value == "" && !f.Touched && f.Error == "" && f.Ask == nil {
			folded = true
			continue
		}
		out = append(out, f)
	}
	return out, folded
}

// current reports whether the rows are those of the fields.
func (c *card) current() bool {
	fields, _ := c.visibleFields()
	if len(fields) != len(c.rows) {
		// A field that was just emptied stays until the card is built anew.
		return false
	}
	for i, f := range fields {
		if f.ID != c.rows[i].id || f.Kind != c.rows[i].kind {
			return false
		}
	}
	return true
}

// rebuild makes the rows anew and leaves the keyboard where it was.
func (c *card) rebuild() {
	at := c.focused()
	old := map[string]*cardRow{}
	for _, r := range c.rows {
		old[r.id] = r
	}
	fields, folded := c.visibleFields()
	c.rows = nil
	c.list.Objects = nil
	for _, f := range fields {
		r := old[f.ID]
		if r == nil || r.kind != f.Kind {
			r = c.newRow(f)
		}
		c.fill(r, f)
		c.rows = append(c.rows, r)
		c.list.Add(r.all)
	}
	if c.folds = folded || c.more; c.folds {
		c.unfold.SetText(words.MoreFields())
		if c.more {
			c.unfold.SetText(words.FewerFields())
		}
		c.list.Add(c.unfold)
	}
	c.list.Refresh()
	c.around()
	if at != "" {
		for _, r := range c.rows {
			if r.id == at {
				c.s.focus(r.in)
			}
		}
	}
}

// focused is the ID of the field that has the keyboard.
func (c *card) focused() string {
	f := c.s.win.Canvas().Focused()
	for _, r := range c.rows {
		if f != nil && f == fyne.Focusable(r.in) {
			return r.id
		}
	}
	return ""
}

// around fills in what stands around the fields.
func (c *card) around() {
	c.title.SetText(c.shown.Title())
	c.problem.SetText(c.shown.Problem())
	if c.warned {
		c.problem.SetText(words.EscapeAgain())
	}
	c.commit.SetText(words.CommitButton(c.shown.New()))
	show(c.remove, !c.shown.New())
}

func (c *card) newRow(f state.Field) *cardRow {
	r := &cardRow{id: f.ID, kind: f.Kind, hooks: &hooks{}}
	r.hooks.set = func(text string) {
		c.warned = false
		if c.shown != nil {
			c.shown.Set(r.id, text)
		}
	}
	r.hooks.key = c.typedKey
	r.hooks.file = func() { c.askFile(r.id) }
	r.hooks.focus = func() { c.reveal(r); c.s.opt.Log.Debug("keyboard", "field", r.id) }
	r.in = newInput(f, r.hooks)
	r.label = own.NewParagraph(draw.Font{Size: 12.5}, labelCol-8, c.s.soft)
	r.label.Leading = 15
	r.read = own.NewParagraph(draw.Font{Size: noteSize}, inputCol, c.s.soft)
	r.fault = own.NewParagraph(draw.Font{Size: noteSize}, inputCol, c.s.errorInk)
	r.asks = container.NewVBox()
	r.pic = newPicture()
	r.all = container.New(&rowLayout{r}, r.label, r.in, r.read, r.fault, r.asks, r.pic.img)
	return r
}

// fill shows a field.
func (c *card) fill(r *cardRow, f state.Field) {
	r.label.SetText(f.Label)
	r.in.fill(f)
	said := f.Read
	if said == "" && f.Value == "" && !hintFits(f.Hint) {
		said = f.Hint
	}
	r.read.SetText(said)
	r.fault.SetText(f.Error)
	r.pic.show(f.Picture, c.s.look())
	asked := ""
	if f.Ask != nil {
		asked = f.Ask.Text
		for _, a := range f.Ask.Answers {
			asked += "\n" + a.Label
		}
	}
	if asked != r.asked {
		r.asked = asked
		r.asks.Objects = nil
		if f.Ask != nil {
			q := own.NewParagraph(draw.Font{Size: noteSize}, inputCol, c.s.ink)
			q.SetText(f.Ask.Text)
			r.asks.Add(q)
			for i, a := range f.Ask.Answers {
				b := c.ringButton(a.Label, "", "", func() {
					c.shown.Answer(r.id, i)
					c.s.focus(r.in)
				})
				b.Importance = widget.MediumImportance
				r.asks.Add(b)
			}
		}
	}
	r.all.Refresh()
}

// reveal scrolls to a row.
func (c *card) reveal(r *cardRow) {
	top, h := r.all.Position().Y, r.all.Size().Height
	view := c.scroll.Size().Height
	off := c.scroll.Offset.Y
	switch {
	case top < off:
		off = top
	case top+h > off+view:
		off = top + h - view
	default:
		return
	}
	c.scroll.ScrollToOffset(fyne.NewPos(0, off))
}

// typedKey is asked before an input deals with a key.
func (c *card) typedKey(k *fyne.KeyEvent) bool {
	switch k.Name {
	case fyne.KeyEscape:
		c.escape()
	case fyne.KeyReturn, fyne.KeyEnter:
		c.doCommit()
	case fyne.KeyTab:
		c.tab()
	case fyne.KeyF1:
		c.s.runID("help.keys")
	default:
		return false
	}
	return true
}

// escape closes the card, the second time if something was typed.
func (c *card) escape() {
	if c.shown == nil {
		return
	}
	if c.shown.Dirty() && !c.warned {
		c.warned = true
		c.around()
		c.layout()
		return
	}
	c.s.desk.CloseCard()
}

// hold says that the card must be dealt with first.
func (c *card) hold() {
	c.problem.SetText(words.CardFirst())
	c.layout()
	if len(c.rows) > 0 && c.focused() == "" {
		c.s.focus(c.rows[0].in)
	}
}

// doCommit stores the card, or goes to the first field that needs attention.
func (c *card) doCommit() {
	if c.shown == nil {
		return
	}
	err := c.shown.Commit()
	switch {
	case errors.Is(err, state.ErrUnfinished):
		c.s.opt.Log.Debug("card unfinished")
		for _, r := range c.rows {
			if f, ok := c.shown.Field(r.id); ok && (f.Error != "" || f.Ask != nil) {
				c.s.focus(r.in)
				c.reveal(r)
				return
			}
		}
	case err != nil:
		c.s.tellError(err)
	}
}

func (c *card) doRemove() {
	if c.shown != nil {
		if err := c.shown.Remove(); err != nil {
			c.s.tellError(err)
		}
	}
}

func (c *card) layout() { c.all.Refresh() }

// rowLayout puts the label beside the input and what there is to say below it.
type rowLayout struct{ r *cardRow }

func (l *rowLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	h := max(l.r.in.MinSize().Height, l.r.label.HeightFor(labelCol-8)+6)
	for _, p := range []*own.Paragraph{l.r.read, l.r.fault} {
		if p.Text() != "" {
			h += p.HeightFor(inputCol) + 3
		}
	}
	if l.r.asked != "" {
		h += l.r.asks.MinSize().Height + 4
	}
	if ph := l.r.pic.heightFor(inputCol); ph > 0 {
		h += ph + 6
	}
	return fyne.NewSize(labelCol+120, h+2)
}

func (l *rowLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	r := l.r
	w := size.Width - labelCol - 12 // the scroll bar needs its room
	h := r.in.MinSize().Height
	place(r.in, labelCol, 0, w, h)
	th := r.label.HeightFor(labelCol - 8)
	place(r.label, 2, max(1, (min(h, 36)-th)/2), labelCol-8, th)
	y := max(h, th+6) + 1
	for _, p := range []*own.Paragraph{r.read, r.fault} {
		show(p, p.Text() != "")
		if p.Text() != "" {
			ph := p.HeightFor(w)
			place(p, labelCol+2, y, w, ph)
			y += ph + 3
		}
	}
	show(r.asks, r.asked != "")
	if r.asked != "" {
		place(r.asks, labelCol, y, w, r.asks.MinSize().Height)
		y += r.asks.MinSize().Height + 4
	}
	ph := r.pic.heightFor(inputCol)
	show(r.pic.img, ph > 0)
	if ph > 0 {
		place(r.pic.img, labelCol, y+2, r.pic.widthFor(inputCol), ph)
	}
}
