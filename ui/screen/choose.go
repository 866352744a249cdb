package screen

import (
	"slices"
	"strconv"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// filtered is a room whose nights pass a filter.
type filtered interface {
	Offers() state.Offers
	Filter() state.Filter
	SetFilter(state.Filter)
}

// choosers are the ways to choose over a room's list: first those of its filter, which are alike in
// every room.
type choosers struct {
	s    *Screen
	of   filtered
	list []namedChooser
	grid *fyne.Container
	ask  *state.Command // for the first and the last evening
	back fyne.Focusable // has the keyboard after a choice by the mouse
}

type namedChooser struct {
	name    string
	in      *chooser
	choices func() []state.Choice
	value   func() string
}

// anyValue is the value of the first choice of each chooser: any, or the usual. What the chooser of
// years has besides years: the evenings asked for, and to ask for others.
const (
	anyValue   = ""
	spanValue  = "span"
	otherValue = "other"
)

// newChoosers makes the ways to choose of a room. ask is the command that asks for evenings, back
// what has the keyboard after a choice by the mouse.
func newChoosers(s *Screen, of filtered, back fyne.Focusable, ask string, l pairs) *choosers {
	return &choosers{s: s, of: of, back: back, grid: container.New(l), ask: s.desk.Command(ask)}
}

// add adds a chooser of one of a few.
func (c *choosers) add(name string, choices func() []state.Choice, value func() string, set func(to string)) {
	in := newChooser(&hooks{set: set, focus: func() {}, key: c.s.foreign, done: func() {
		if !c.s.modal.open() { // the keys are the room's again
			c.s.focus(c.back)
		}
	}})
	c.list = append(c.list, namedChooser{name, in, choices, value})
	c.grid.Add(in)
}

// several adds a chooser of which several may be chosen, one after another.
func (c *choosers) several(name, any string, list func() []state.Choice, chosen func() []string, set func(to []string)) {
	of := func() ([]state.Choice, string) { return state.Several(any, list(), chosen()) }
	c.add(name, func() []state.Choice { x, _ := of(); return x }, func() string { _, v := of(); return v }, func(to string) {
		set(state.Chosen(chosen(), to))
	})
}

// change changes the filter.
func (c *choosers) change(f func(f *state.Filter)) {
	now := c.of.Filter()
	f(&now)
	c.of.SetFilter(now)
}

// year adds years, and evenings from one to another.
func (c *choosers) year() {
	list := func() (out []state.Choice) {
		for _, y := range c.of.Offers().Years {
			out = append(out, state.Choice{Value: strconv.Itoa(y), Label: strconv.Itoa(y)})
		}
		return out
	}
	chosen := func() (out []string) {
		for _, y := range c.of.Filter().Years {
			out = append(out, strconv.Itoa(y))
		}
		return out
	}
	of := func() ([]state.Choice, string) {
		choices, value := state.Several(words.AnyYear(), list(), chosen())
		if f := c.of.Filter(); !f.From.IsZero() || !f.To.IsZero() {
			choices, value = append(choices, state.Choice{Value: spanValue, Label: words.EveningsShort(f.From, f.To)}), spanValue
		}
		return append(choices, state.Choice{Value: otherValue, Label: words.OtherEvenings()}), value
	}
	c.add("year", func() []state.Choice { x, _ := of(); return x }, func() string { _, v := of(); return v }, func(to string) {
		switch to {
		case spanValue:
		case otherValue:
			c.sync() // it shows what holds until others are taken
			c.s.run(c.ask)
		default:
			c.change(func(f *state.Filter) {
				f.From, f.To, f.Years = journal.Date{}, journal.Date{}, nil
				for _, y := range state.Chosen(chosen(), to) {
					if n, err := strconv.Atoi(y); err == nil {
						f.Years = append(f.Years, n)
					}
				}
				slices.Sort(f.Years)
			})
		}
	})
}

func (c *choosers) month() {
	c.several("month", words.AnyMonth(), func() (out []state.Choice) {
		for _, m := range c.of.Offers().Months {
			out = append(out, state.Choice{Value: strconv.Itoa(int(m)), Label: words.MonthName(m)})
		}
		return out
	}, func() (out []string) {
		for _, m := range c.of.Filter().Months {
			out = append(out, strconv.Itoa(int(m)))
		}
		return out
	}, func(to []string) {
		c.change(func(f *state.Filter) {
			f.Months = nil
			for _, m := range to {
				if n, err := strconv.Atoi(m); err == nil {
					f.Months = append(f.Months, time.Month(n))
				}
			}
			slices.Sort(f.Months)
		})
	})
}

func (c *choosers) beat() {
	c.records("beat", words.AnyBeat(), func(o state.Offers) []state.Offered[journal.ID] { return o.Beats }, func(f *state.Filter) *[]journal.ID { return &f.Beats })
}

func (c *choosers) person() {
	c.records("person", words.AnyPerson(), func(o state.Offers) []state.Offered[journal.ID] { return o.People }, func(f *state.Filter) *[]journal.ID { return &f.People })
}

// records adds a chooser of records by name.
func (c *choosers) records(name, any string, of func(state.Offers) []state.Offered[journal.ID], in func(*state.Filter) *[]journal.ID) {
	c.several(name, any, func() (out []state.Choice) {
		for _, o := range of(c.of.Offers()) {
			out = append(out, state.Choice{Value: o.Value.String(), Label: o.Name})
		}
		return out
	}, func() (out []string) {
		f := c.of.Filter()
		for _, id := range *in(&f) {
			out = append(out, id.String())
		}
		return out
	}, func(to []string) {
		c.change(func(f *state.Filter) {
			var list []journal.ID
			for _, v := range to {
				if id, err := geo.ParseID(v); err == nil {
					list = append(list, id)
				}
			}
			*in(f) = list
		})
	})
}

// trend adds what was noted of the river; any is what it shows while it chooses nothing.
func (c *choosers) trend(any string) {
	c.several("trend", any, func() (out []state.Choice) {
		for _, t := range c.of.Offers().Trends {
			label := words.TrendName(t)
			if t == "" {
				label = words.NotNotedTrend()
			}
			out = append(out, state.Choice{Value: string(t), Label: label})
		}
		return out
	}, func() (out []string) {
		for _, t := range c.of.Filter().Trends {
			out = append(out, string(t))
		}
		return out
	}, func(to []string) {
		c.change(func(f *state.Filter) {
			f.Trends = nil
			for _, t := range to {
				f.Trends = append(f.Trends, journal.Trend(t))
			}
		})
	})
}

func (c *choosers) clients() {
	c.add("clients", func() (out []state.Choice) {
		for _, k := range state.ClientChoices {
			out = append(out, state.Choice{Value: string(k), Label: words.AnyClients(k)})
		}
		return out
	}, func() string { return string(c.of.Filter().Clients) }, func(to string) {
		for _, k := range state.ClientChoices {
			if string(k) == to {
				c.change(func(f *state.Filter) { f.Clients = k })
			}
		}
	})
}

// sync shows the choice as it stands.
func (c *choosers) sync() {
	for _, x := range c.list {
		x.in.fill(state.Field{Kind: state.Pick, Choices: x.choices(), Value: x.value()})
	}
}

// parts is where Tab comes to; it goes on from there.
func (c *choosers) parts() []fyne.Focusable { return []fyne.Focusable{c.list[0].in} }

// askEvenings asks for the first and the last evening of a filter.
func (s *Screen) askEvenings(of filtered) {
	const width = 420
	text := func(font draw.Font, soft bool, t string) *own.Paragraph {
		ink := s.ink
		if soft {
			ink = s.soft
		}
		p := own.NewParagraph(font, width, ink)
		p.SetText(t)
		return p
	}
	fault := own.NewParagraph(draw.Font{Size: 13}, width, s.errorInk)
	from, to := newSheetEntry(s), newSheetEntry(s)
	was := [2]string{}
	was[0], was[1] = state.Evenings(of.Filter())
	from.SetText(was[0])
	to.SetText(was[1])
	var hide func()
	commit := func() {
		f := of.Filter()
		if err := state.ReadEvenings(&f, from.Text, to.Text, s.desk.Boxes().Today()); err != nil {
			what, do := words.Explain(err)
			fault.SetText(what + " " + do)
			return
		}
		hide()
		of.SetFilter(f)
	}
	from.OnSubmitted = func(string) { s.focus(to) }
	to.OnSubmitted = func(string) { commit() }
	ok := newSheetButton(s, words.TakeButton(), commit)
	ok.Importance = widget.HighImportance
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	hide = s.modal.show(container.New(inset{18, 14}, container.NewVBox(
		text(draw.Font{Weight: draw.Bold, Size: 15}, false, words.EveningsTitle()), text(draw.Font{Size: 13}, true, words.EveningsHint()), spacer(width),
		text(draw.Font{Size: 13}, false, words.EveningFrom()), from, text(draw.Font{Size: 13}, false, words.EveningTo()), to,
		fault, container.NewHBox(ok, no))), from, commit)
}

// pairs sets objects two to a row; those that need more room have a row each.
type pairs struct{ wide map[int]bool }

const pairGap = 4

func (p pairs) each(o []fyne.CanvasObject, width float32, f func(i int, x, y, w, h float32)) float32 {
	h := float32(0)
	for _, c := range o {
		h = max(h, c.MinSize().Height)
	}
	half := (width - pairGap) / 2
	y, right := float32(0), false
	for i := range o {
		switch {
		case p.wide[i]:
			f(i, 0, y, width, h)
			y += h + pairGap
		case right:
			f(i, half+pairGap, y, half, h)
			y, right = y+h+pairGap, false
		default:
			f(i, 0, y, half, h)
			right = true
		}
	}
	if right {
		y += h + pairGap
	}
	return y
}

func (p pairs) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(minSide-24, p.each(o, minSide, func(int, float32, float32, float32, float32) {}))
}

func (p pairs) Layout(o []fyne.CanvasObject, size fyne.Size) {
	p.each(o, size.Width, func(i int, x, y, w, h float32) { place(o[i], x, y, w, h) })
}
