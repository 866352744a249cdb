package screen

import (
	"strconv"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/state"
	"gloamline/ui/words"
)

// seasonChoosers are the ways to choose which nights and fish count, over the list of
// questions.
type seasonChoosers struct {
	r    *seasonRoom
	list []namedChooser
	all  fyne.CanvasObject
}

// notNoted is the value of nights on which nothing was noted of the river; the choice of
// any has an empty one.
const notNoted = "-"

func newSeasonChoosers(r *seasonRoom) *seasonChoosers {
	c := &seasonChoosers{r: r}
	d := r.desk
	grid := container.New(pairs{wide: map[int]bool{2: true, 3: true, 6: true}})
	add := func(name string, choices func() []state.Choice, value func() string, set func(v *state.SeasonAsk, to string)) {
		h := &hooks{focus: func() {}, key: r.foreign}
		h.set = func(to string) { d.Change(func(v *state.SeasonAsk) { set(v, to) }) }
		in := newChooser(h)
		c.list = append(c.list, namedChooser{name, in, choices, value})
		grid.Add(in)
	}
	first := func(label string, rest []state.Choice) []state.Choice {
		return append([]state.Choice{{Value: anyValue, Label: label}}, rest...)
	}
	of := func(list []state.Offered[journal.ID]) (out []state.Choice) {
		for _, o := range list {
			out = append(out, state.Choice{Value: o.Value.String(), Label: o.Name})
		}
		return out
	}
	id := func(list []journal.ID) string {
		if len(list) == 0 {
			return anyValue
		}
		return list[0].String()
	}
	parse := func(v string) int { n, _ := strconv.Atoi(v); return n } // "" and nothing else is no number: any
	parseID := func(v string) []journal.ID { i, _ := geo.ParseID(v); return state.One(i) }
	number := func(n int) string {
		if n == 0 {
			return anyValue
		}
		return strconv.Itoa(n)
	}

	add("year", func() []state.Choice {
		var out []state.Choice
		for _, y := range d.Years() {
			out = append(out, state.Choice{Value: strconv.Itoa(y), Label: strconv.Itoa(y)})
		}
		return first(words.AnyYear(), out)
	}, func() string { return number(d.Year()) }, func(v *state.SeasonAsk, to string) { state.SetYear(v, parse(to)) })
	add("month", func() []state.Choice {
		var out []state.Choice
		for _, m := range d.Months() {
			out = append(out, state.Choice{Value: strconv.Itoa(int(m)), Label: words.MonthName(m)})
		}
		return first(words.AnyMonth(), out)
	}, func() string { return number(int(state.The(d.View().Filter.Months))) },
		func(v *state.SeasonAsk, to string) { v.Filter.Months = state.One(time.Month(parse(to))) })
	add("beat", func() []state.Choice { return first(words.AnyBeat(), of(d.Beats())) },
		func() string { return id(d.View().Filter.Beats) }, func(v *state.SeasonAsk, to string) { v.Filter.Beats = parseID(to) })
	add("trend", func() []state.Choice {
		var out []state.Choice
		for _, t := range d.Trends() {
			if t == "" {
				out = append(out, state.Choice{Value: notNoted, Label: words.NotNotedTrend()})
				continue
			}
			out = append(out, state.Choice{Value: string(t), Label: words.TrendName(t)})
		}
		return first(words.AnyTrend(), out)
	}, func() string {
		t := d.View().Filter.Trends
		switch {
		case len(t) == 0:
			return anyValue
		case t[0] == "":
			return notNoted
		}
		return string(t[0])
	}, func(v *state.SeasonAsk, to string) {
		switch to {
		case anyValue:
			v.Filter.Trends = nil
		case notNoted:
			v.Filter.Trends = []journal.Trend{""}
		default:
			v.Filter.Trends = []journal.Trend{journal.Trend(to)}
		}
	})
	add("person", func() []state.Choice { return first(words.AnyPerson(), of(d.People())) },
		func() string { return id(d.View().Filter.People) }, func(v *state.SeasonAsk, to string) { v.Filter.People = parseID(to) })
	add("clients", func() []state.Choice {
		var out []state.Choice
		for _, k := range state.ClientChoices {
			out = append(out, state.Choice{Value: string(k), Label: words.AnyClients(k)})
		}
		return out
	}, func() string { return string(d.View().Filter.Clients) }, func(v *state.SeasonAsk, to string) {
		for _, k := range state.ClientChoices {
			if string(k) == to {
				v.Filter.Clients = k
			}
		}
	})
	add("count", func() []state.Choice {
		var out []state.Choice
		for _, m := range state.SeasonMeasures {
			out = append(out, state.Choice{Value: string(m), Label: words.MeasureName(m)})
		}
		return out
	}, func() string { return string(d.View().Measure) }, func(v *state.SeasonAsk, to string) {
		for _, m := range state.SeasonMeasures {
			if string(m) == to {
				v.Measure = m
			}
		}
	})
	reset := r.s.desk.Command("season.reset")
	c.all = container.New(inset{8, 2}, container.NewVBox(grid, container.NewHBox(r.s.button(reset.Title(), tipOf(reset), "", func() { r.s.run(reset) }))))
	return c
}

// foreign takes the keys that mean nothing to a chooser: those of the window.
func (r *seasonRoom) foreign(k *fyne.KeyEvent) bool {
	switch k.Name {
	case fyne.KeyF1, fyne.KeyF6, fyne.KeyF9, fyne.KeyF10, fyne.KeyF11, fyne.KeyEscape:
		return r.s.typedKey(k)
	}
	return false
}

// sync shows the choice as it stands.
func (c *seasonChoosers) sync() {
	for _, x := range c.list {
		x.in.fill(state.Field{Kind: state.Pick, Choices: x.choices(), Value: x.value()})
	}
}

func (c *seasonChoosers) parts() []fyne.Focusable {
	return []fyne.Focusable{c.list[0].in} // Tab goes on from there
}
