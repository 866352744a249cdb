package state

import (
	"fmt"
	"slices"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/timeline/season"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// pictureKeys are the letters that show a picture.
var pictureKeys = map[scene.Picture]string{scene.JoinedPicture: "C", scene.StripsPicture: "S", scene.PoolsPicture: "P"}

// togetherTable is the commands of the room in which nights are laid side by side.
func (d *Desk) togetherTable(t *tabler) {
	t.room, t.menu = TogetherRoom, "Together"
	r := d.Together
	some := func() bool { return len(r().lay(timeline.LightAxis).Nights) > 0 }
	any := func() bool { return len(r().Traits()) > 0 }
	for i, a := range timeline.Axes {
		t.add("together.axis-"+a.String(), words.AxisTitle(a), key(fmt.Sprint(i+1)), words.AxisTip(a), always, plain(func() { r().SetAxis(a) }))
	}
	for _, p := range scene.Pictures {
		t.add("together.picture-"+string(p), words.PictureName(string(p)), key(pictureKeys[p]), words.PictureHelp(string(p)), always, plain(func() { r().SetPicture(p) }))
	}
	t.add("together.order", "Next order", key("O"), "Puts the nights in another order: darkest light, date, level of the river, catch.", some,
		plain(func() { r().SetOrder(next(timeline.NightOrders, r().Order(), +1)) }))
	t.add("together.night-next", "Next night", key("Down"), "Has the next night of the list stand out.", some, plain(func() { r().NextNight(+1) }))
	t.add("together.night-before", "Night before", key("Up"), "Has the night before stand out.", some, plain(func() { r().NextNight(-1) }))
	t.add("together.fish-next", "Next fish along the axis", key("Right"), "Picks out the next fish along the axis and joins it to its light.", some, plain(func() { r().NextFish(+1) }))
	t.add("together.fish-before", "Fish before along the axis", key("Left"), "Picks out the fish before along the axis.", some, plain(func() { r().NextFish(-1) }))
	t.add("together.open", "Open this night", key("Return"), "Opens the night that stands out, at the fish picked out.",
		func() bool { return !r().picked().ID.IsZero() }, func() error { return r().Open(r().picked()) })
	t.add("together.toggle", "Take this night out", key("Space"), "Takes the night that stands out away from the others.", func() bool { return !r().Stands().IsZero() },
		plain(func() { r().Toggle(r().Stands()) }))
	t.add("together.like", "Nights like this one", key("L"), "Chooses the nights likest to the one that stands out: by trend, level and temperature of the river, light at the start, time of the year.",
		func() bool { return !r().Stands().IsZero() || !d.trip.IsZero() }, plain(func() {
			id := r().Stands()
			if id.IsZero() {
				id = d.trip
			}
			r().LikeThis(id)
		}))
	t.add("together.weigh", "Light or clock?", key("Q"), "Asks the season whether light or the clock tells more on these nights.", some, plain(func() { r().Weigh() }))
	step := func(id, title, k, help string, f func(o Offers, f *season.Filter)) {
		t.add(id, title, key(k), help, any, plain(func() { r().Change(func(c *NightChoice) { f(r().Offers(), &c.Filter) }) }))
	}
	step("together.year", "Next year fished", "Y", "Chooses the nights of the next year fished, then of any.", nextYear)
	step("together.month", "Next month fished", "M", "Chooses the nights of the next month fished, then of any.", nextMonth)
	step("together.beat", "Next beat fished", "B", "Chooses the nights of the next beat, then of all.", nextBeat)
	step("together.person", "Next person", "W", "Chooses the nights with the next person, then with anybody.", nextPerson)
	step("together.trend", "Next trend of the river", "V", "Chooses the nights with the next trend of the river, then with any.", nextTrend)
	step("together.clients", "With clients or without", "K", "Chooses the nights with a client, those without, then both.", nextClients)
	t.add("together.moon", "Next size of the moon", key("N"), "Chooses the nights with a thin, a half, a full moon, then with any.", any,
		plain(func() { r().Change(func(c *NightChoice) { c.Moons = nextOf(moonSizes(), c.Moons) }) }))
	t.window("together.evenings", "From one evening to another …", key("D"), "Asks for the first and the last evening of the nights to lay side by side.")
	t.add("together.reset", "Latest season", key("0"), "Chooses all nights of the latest year fished.", always, plain(func() { r().Reset() }))
	t.add("together.none", "None, to pick by hand", Key{}, "Takes all nights away, so that they can be ticked one by one.", any, plain(func() { r().None() }))
	t.add("together.let-go", "Let go of what is picked out", key("Escape"), "Lets go of the fish picked out, then of the night.",
		func() bool { return !r().picked().ID.IsZero() }, plain(func() {
			if !r().Fish().ID.IsZero() {
				r().PickFish(journal.Ref{})
				return
			}
			r().Stand(journal.ID{})
		}))
	on := func(c *Command) { c.On = OnPicks }
	on(t.add("together.row-next", "Next row of the list", key("Down"), "Marks the next night of the list, laid with the others or not, while the list has the keyboard.", any, plain(func() { r().MarkNext(+1) })))
	on(t.add("together.row-before", "Row before", key("Up"), "Marks the night of the list before.", any, plain(func() { r().MarkNext(-1) })))
	on(t.add("together.row-tick", "Tick the row", key("Space"), "Takes the night marked in the list in or out.", func() bool { return !r().Marked().IsZero() }, plain(func() { r().Toggle(r().Marked()) })))
	t.window("together.legend", "What these marks mean", key("F2"), "Shows or hides the key to the marks of nights side by side.")
	t.window("together.picture", "Save the picture …", ctrl("P"), "Saves the picture with its legend and how the nights were chosen, as PDF, PNG or SVG.")
	t.window("together.table", "Save the figures …", ctrl("E"), "Saves every figure behind the pictures as tables: steps of the axes, nights, fish, pools, runs, changes of flies.")
}

// next is the value after another in a list, round and round.
func next[T comparable](list []T, now T, step int) T {
	i := slices.Index(list, now)
	return list[(max(i, 0)+step+len(list))%len(list)]
}
