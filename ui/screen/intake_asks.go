package screen

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
)

// intakeAsks is what is asked once for the batch, under the buttons: a row for each, with its
// choices or the button that leads on.
type intakeAsks struct {
	r    *intakeRoom
	rows []*intakeAsk
	all  *fyne.Container
}

// intakeAsk is one row.
type intakeAsk struct {
	id     string
	button string
	says   *own.Paragraph
	in     *chooser
	act    *own.Button
	all    *fyne.Container
}

func newIntakeAsks(r *intakeRoom) *intakeAsks {
	a := &intakeAsks{r: r}
	a.all = container.New(&asksLayout{a})
	return a
}

// sync shows what is asked and answered now; rows that stay keep the keyboard.
func (a *intakeAsks) sync() {
	asks := a.r.desk.Asks()
	same := len(asks) == len(a.rows)
	for i := 0; same && i < len(asks); i++ {
		same = asks[i].ID == a.rows[i].id && asks[i].Button == a.rows[i].button
	}
	if !same {
		a.rows, a.all.Objects = nil, nil
		for _, ask := range asks {
			row := a.newRow(ask)
			a.rows = append(a.rows, row)
			a.all.Add(row.all)
		}
	}
	for i, ask := range asks {
		row := a.rows[i]
		row.says.SetText(strings.Join(ask.Says, " · "))
		row.says.Refresh()
		if row.in != nil {
			row.in.fill(state.Field{Kind: state.Pick, Choices: ask.Choices, Value: ask.Value})
		}
	}
	a.all.Refresh()
}

func (a *intakeAsks) newRow(ask state.IntakeAsk) *intakeAsk {
	s := a.r.s
	row := &intakeAsk{id: ask.ID, button: ask.Button, says: own.NewParagraph(draw.Font{Size: 12.5}, 200, s.ink)}
	var right fyne.CanvasObject
	if ask.Button != "" {
		row.act = s.button(ask.Button, ask.Button, "", func() { a.lead(row.id) })
		right = row.act
	} else {
		row.in = newChooser(&hooks{focus: func() {}, key: a.r.s.foreign, set: func(to string) { a.r.again(a.r.desk.Answer(row.id, to)) }})
		right = row.in
	}
	row.all = container.New(&askLayout{row}, row.says, right)
	return row
}

// lead does what the button of a row is for.
func (a *intakeAsks) lead(id string) {
	what, path, _ := strings.Cut(id, ":")
	switch what {
	case "night":
		a.r.s.runID("import.night")
	case "rods":
		a.r.s.runID("import.rods")
	case "columns":
		for i, f := range a.r.desk.Files() {
			if f.Path == path {
				a.r.desk.PickFile(i)
				a.r.s.runID("import.columns")
			}
		}
	}
}

func (a *intakeAsks) parts() (out []fyne.Focusable) {
	for _, row := range a.rows {
		if row.in != nil {
			out = append(out, row.in)
		} else {
			out = append(out, row.act)
		}
	}
	return out
}

// tell tells where the answers are given.
func (a *intakeAsks) tell() {
	for _, row := range a.rows {
		name, _, _ := strings.Cut(row.id, ":")
		if row.in != nil {
			a.r.s.tellRegion("ask "+name, row.in)
		} else {
			a.r.s.tellRegion("ask "+name, row.act)
		}
	}
}

// askWidest is how wide the answers are at most, askAnswer how wide what they are chosen from.
const (
	askWidest = 560
	askAnswer = 204
	askGap    = 8
)

// heightFor is the height of all rows at a width.
func (a *intakeAsks) heightFor(width float32) float32 {
	h := float32(0)
	for _, row := range a.rows {
		h += row.heightFor(width) + 2
	}
	if h > 0 {
		h += 6
	}
	return h
}

func (row *intakeAsk) heightFor(width float32) float32 {
	return max(row.all.Objects[1].MinSize().Height, row.says.HeightFor(width-askAnswer-askGap)+4)
}

// asksLayout puts the rows below each other.
type asksLayout struct{ a *intakeAsks }

func (l *asksLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(100, 0) }

func (l *asksLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, row := range l.a.rows {
		h := row.heightFor(size.Width)
		place(row.all, 0, y, size.Width, h)
		y += h + 2
	}
}

// askLayout puts what is asked at the left and the answer at the right.
type askLayout struct{ row *intakeAsk }

func (l *askLayout) MinSize(o []fyne.CanvasObject) fyne.Size { return o[1].MinSize() }

func (l *askLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	room := size.Width - askAnswer - askGap
	h := l.row.says.HeightFor(room)
	place(o[0], 2, (size.Height-h)/2, room, h)
	m := o[1].MinSize()
	w := min(float32(askAnswer), max(m.Width, 80))
	if l.row.in != nil {
		w = askAnswer
	}
	place(o[1], size.Width-askAnswer, (size.Height-m.Height)/2, w, m.Height)
}
