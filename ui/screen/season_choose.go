package screen

import (
	"slices"
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

func newSeasonChoosers(r *seasonRoom) *seasonChoosers {
	c := &seasonChoosers{r: r}
	d := r.desk
	grid := container.New(pairs{wide: map[int]bool{2: true, 3: true, 6: true}})
	place := func(name string, choices func() []state.Choice, value func() string, set func(to string)) {
		h := &hooks{focus: func() {}, key: r.s.foreign, set: set}
		in := newChooser(h)
		c.list = append(c.list, namedChooser{name, in, choices, value})
		grid.Add(in)
	}
	add := func(name string, choices func() []state.Choice, value func() string, set func(v *state.SeasonAsk, to string)) {
		place(name, choices, value, func(to string) { d.Change(func(v *state.SeasonAsk) { set(v, to) }) })
	}
	// several may be chosen of these, one after another.
	several := func(name, any string, list func() []state.Choice, chosen func() []string, set func(v *state.SeasonAsk, to []string)) {
		of := func() ([]state.Choice, string) { return state.Several(any, list(), chosen()) }
		place(name, func() []state.Choice { c, _ := of(); return c }, func() string { _, v := of(); return v }, func(to string) {
			d.Change(func(v *state.SeasonAsk) { set(v, state.Chosen(chosen(), to)) })
		})
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
	ids := func(list []journal.ID) (out []string) {
		for _, id := range list {
			out = append(out, id.String())
		}
		return out
	}
	parse := func(v string) int { n, _ := strconv.Atoi(v); return n } // "" and nothing else is no number: any
	parseIDs := func(list []string) (out []journal.ID) {
		for _, v := range list {
			if id, err := geo.ParseID(v); err == nil {
				out = append(out, id)
			}
		}
		return out
	}

	add("year", func() []state.Choice {
		var out []state.Choice
		for _, y := range d.Years() {
			out = append(out, state.Choice{Value: strconv.Itoa(y), Label: strconv.Itoa(y)})
		}
		return first(words.AnyYear(), out)
	}, func() string {
		if y := d.Year(); y != 0 {
			return strconv.Itoa(y)
		}
		return anyValue
	}, func(v *state.SeasonAsk, to string) { state.SetYear(v, parse(to)) })
	several("month", words.AnyMonth(), func() (out []state.Choice) {
		for _, m := range d.Months() {
			out = append(out, state.Choice{Value: strconv.Itoa(int(m)), Label: words.MonthName(m)})
		}
		return out
	}, func() (out []string) {
		for _, m := range d.View().Filter.Months {
			out = append(out, strconv.Itoa(int(m)))
		}
		return out
	}, func(v *state.SeasonAsk, to []string) {
		v.Filter.Months = nil
		for _, m := range to {
			v.Filter.Months = append(v.Filter.Months, time.Month(parse(m)))
		}
		slices.Sort(v.Filter.Months)
	})
	several("beat", words.AnyBeat(), func() []state.Choice { return of(d.Beats()) }, func() []string { return ids(d.View().Filter.Beats) },
		func(v *state.SeasonAsk, to []string) { v.Filter.Beats = parseIDs(to) })
	several("trend", words.AnyTrend(), func() (out []state.Choice) {
		for _, t := range d.Trends() {
			label := words.TrendName(t)
			if t == "" {
				label = words.NotNotedTrend()
			}
			out = append(out, state.Choice{Value: string(t), Label: label})
		}
		return out
	}, func() (out []string) {
		for _, t := range d.View().Filter.Trends {
			out = append(out, string(t))
		}
		return out
	}, func(v *state.SeasonAsk, to []string) {
		v.Filter.Trends = nil
		for _, t := range to {
			v.Filter.Trends = append(v.Filter.Trends, journal.Trend(t))
		}
	})
	several("person", words.AnyPerson(), func() []state.Choice { return of(d.People()) }, func() []string { return ids(d.View().Filter.People) },
		func(v *state.SeasonAsk, to []string) { v.Filter.People = parseIDs(to) })
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

// sync shows the choice as it stands.
func (c *seasonChoosers) sync() {
	for _, x := range c.list {
		x.in.fill(state.Field{Kind: state.Pick, Choices: x.choices(), Value: x.value()})
	}
}

func (c *seasonChoosers) parts() []fyne.Focusable {
	return []fyne.Focusable{c.list[0].in} // Tab goes on from there
}
