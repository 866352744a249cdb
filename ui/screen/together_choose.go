package screen

import (
	"strconv"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// choosers are the ways to choose nights, over the list: year, month, beat, person, trend
// of the river, moon, and the order.
type choosers struct {
	r    *togetherRoom
	list []namedChooser
	all  fyne.CanvasObject
}

type namedChooser struct {
	name    string
	in      *chooser
	choices func() []state.Choice
	value   func() string
}

// anyValue is the value of the first choice of each chooser: any, or the usual.
const anyValue = ""

func newChoosers(r *togetherRoom) *choosers {
	c := &choosers{r: r}
	grid := container.New(pairs{wide: map[int]bool{2: true, 5: true, 6: true}}) // beat, trend, order
	add := func(name string, choices func() []state.Choice, value func() string, set func(string)) {
		h := &hooks{set: set, focus: func() {}, key: r.s.foreign}
		in := newChooser(h)
		c.list = append(c.list, namedChooser{name, in, choices, value})
		grid.Add(in)
	}
	t := r.t
	change := func(f func(c *state.NightChoice, v string)) func(string) {
		return func(v string) {
			t.Change(func(c *state.NightChoice) { f(c, v) })
		}
	}
	first := func(label string, rest []state.Choice) []state.Choice {
		return append([]state.Choice{{Value: anyValue, Label: label}}, rest...)
	}
	id := func(v journal.ID) string {
		if v.IsZero() {
			return anyValue
		}
		return v.String()
	}
	offered := func(list []state.Offered[journal.ID]) (out []state.Choice) {
		for _, o := range list {
			out = append(out, state.Choice{Value: o.Value.String(), Label: o.Name})
		}
		return out
	}
	number := func(n int) string {
		if n == 0 {
			return anyValue
		}
		return strconv.Itoa(n)
	}
	parse := func(v string) int { n, _ := strconv.Atoi(v); return n } // "" and nothing else is no number: any
	parseID := func(v string) journal.ID { i, _ := geo.ParseID(v); return i }

	add("year", func() []state.Choice {
		var out []state.Choice
		for _, y := range t.Years() {
			out = append(out, state.Choice{Value: strconv.Itoa(y), Label: strconv.Itoa(y)})
		}
		return first(words.AnyYear(), out)
	}, func() string { return number(t.Choice().Year) }, change(func(c *state.NightChoice, v string) { c.Year = parse(v) }))
	add("month", func() []state.Choice {
		var out []state.Choice
		for _, m := range t.Months() {
			out = append(out, state.Choice{Value: strconv.Itoa(int(m)), Label: words.MonthName(m)})
		}
		return first(words.AnyMonth(), out)
	}, func() string { return number(int(t.Choice().Month)) }, change(func(c *state.NightChoice, v string) { c.Month = time.Month(parse(v)) }))
	add("beat", func() []state.Choice { return first(words.AnyBeat(), offered(t.Beats())) },
		func() string { return id(t.Choice().Beat) }, change(func(c *state.NightChoice, v string) { c.Beat = parseID(v) }))
	add("person", func() []state.Choice { return first(words.AnyPerson(), offered(t.People())) },
		func() string { return id(t.Choice().Person) }, change(func(c *state.NightChoice, v string) { c.Person = parseID(v) }))
	add("moon", func() []state.Choice {
		var out []state.Choice
		for _, m := range timeline.MoonSizes {
			out = append(out, state.Choice{Value: m.String(), Label: m.String()})
		}
		return first(words.AnyMoon(), out)
	}, func() string { return t.Choice().Moon }, change(func(c *state.NightChoice, v string) { c.Moon = v }))
	add("trend", func() []state.Choice {
		var out []state.Choice
		for _, x := range t.Trends() {
			out = append(out, state.Choice{Value: string(x), Label: words.TrendName(x)})
		}
		return first(words.AnyTrend(), out)
	}, func() string { return string(t.Choice().Trend) }, change(func(c *state.NightChoice, v string) { c.Trend = journal.Trend(v) }))
	add("order", func() []state.Choice {
		var out []state.Choice
		for _, o := range timeline.NightOrders {
			out = append(out, state.Choice{Value: orderValue(o), Label: words.OrderName(o.String())})
		}
		return out
	}, func() string { return orderValue(t.Order()) }, func(v string) {
		for _, o := range timeline.NightOrders {
			if orderValue(o) == v {
				t.SetOrder(o)
			}
		}
	})

	button := func(id, label string) *own.Button {
		cmd := r.s.desk.Command(id)
		return r.s.button(label, tipOf(cmd), "", func() { r.s.run(cmd) })
	}
	c.all = container.New(inset{8, 2}, container.NewVBox(grid, container.NewHBox(button("together.reset", words.SeasonButton()), button("together.none", words.NoneButton()))))
	return c
}

// orderValue is an order as the value of a choice; that of the usual one is empty.
func orderValue(o timeline.NightOrder) string {
	if o == timeline.NightOrders[0] {
		return anyValue
	}
	return o.String()
}

// sync shows the choice as it stands.
func (c *choosers) sync() {
	for _, x := range c.list {
		x.in.fill(state.Field{Kind: state.Pick, Choices: x.choices(), Value: x.value()})
	}
}

func (c *choosers) parts() []fyne.Focusable {
	var out []fyne.Focusable
	for _, x := range c.list {
		out = append(out, x.in)
	}
	return out[:min(1, len(out))] // Tab goes on from there
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
