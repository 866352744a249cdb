package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"gloamline/ui/state"
	"gloamline/ui/words"
)

// newSeasonChoosers are the ways to choose which nights and fish count, over the list of
// questions.
func newSeasonChoosers(r *seasonRoom) (*choosers, fyne.CanvasObject) {
	d := r.desk
	c := newChoosers(r.s, d, r.board, "season.evenings", pairs{wide: map[int]bool{2: true, 3: true, 6: true}})
	c.year()
	c.month()
	c.beat()
	c.trend(words.AnyTrend())
	c.person()
	c.clients()
	c.add("count", func() (out []state.Choice) {
		for _, m := range state.SeasonMeasures {
			out = append(out, state.Choice{Value: string(m), Label: words.MeasureName(m)})
		}
		return out
	}, func() string { return string(d.View().Measure) }, func(to string) {
		for _, m := range state.SeasonMeasures {
			if string(m) == to {
				d.Change(func(v *state.SeasonAsk) { v.Measure = m })
			}
		}
	})
	reset := r.s.desk.Command("season.reset")
	return c, container.New(inset{8, 2}, container.NewVBox(c.grid, container.NewHBox(r.s.button(reset.Title(), tipOf(reset), "", func() { r.s.run(reset) }))))
}
