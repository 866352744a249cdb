package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"gloamline/timeline"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// newTogetherChoosers are the ways to choose nights, over the list, and their order.
func newTogetherChoosers(r *togetherRoom) (*choosers, fyne.CanvasObject) {
	t := r.t
	c := newChoosers(r.s, t, r.board, "together.evenings", pairs{wide: map[int]bool{2: true, 7: true}}) // beat, order
	c.year()
	c.month()
	c.beat()
	c.person()
	c.clients()
	c.trend(words.AnyRiver())
	c.several("moon", words.AnyMoon(), func() (out []state.Choice) {
		for _, m := range timeline.MoonSizes {
			out = append(out, state.Choice{Value: m.String(), Label: m.String()})
		}
		return out
	}, func() []string { return t.Choice().Moons }, func(to []string) {
		t.Change(func(c *state.NightChoice) { c.Moons = to })
	})
	c.add("order", func() (out []state.Choice) {
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
	return c, container.New(inset{8, 2}, container.NewVBox(c.grid, container.NewHBox(button("together.reset", words.SeasonButton()), button("together.none", words.NoneButton()))))
}

// orderValue is an order as the value of a choice; that of the usual one is empty.
func orderValue(o timeline.NightOrder) string {
	if o == timeline.NightOrders[0] {
		return anyValue
	}
	return o.String()
}
