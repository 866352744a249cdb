package demo

import (
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
)

// Show is the evening of the night that the demo opens on.
var Show = journal.Date{Year: 2026, Month: time.July, Day: 4}

// showLevel is where the river stands that evening, in metres on the staff.
const showLevel = 0.46

// show is the night the program opens on: Saturday 4 July 2026 on the Home
// Beat, two rods, a falling river, a late moon.
func (m *maker) show() (journal.Batch, error) {
	n := m.night(m.home, Show)
	anna, colm := n.rod("Anna", false), n.rod("Colm", false)
	n.onBank(anna, "21:50", "02:10")
	n.onBank(colm, "22:30", "02:10")

	n.add(journal.Water{Head: n.head(none, "22:05"), Level: journal.Of(units.Length{M: showLevel, Unit: units.Metre}), Trend: journal.Of(journal.FiningDown), Clarity: journal.Of(journal.ClearWater), Temp: temp(14.2)})
	n.add(journal.Weather{Head: n.head(none, "22:05"), Wind: journal.Of(1), From: journal.Of(units.Degrees(240)), Air: temp(12.5), Mist: journal.Of(false)})
	n.add(journal.Sky{Head: n.head(none, "22:00"), Cloud: journal.Of(2), CloudKind: journal.Of(journal.ThinCloud)})
	n.add(journal.Sky{Head: n.head(anna, "23:18"), TreesGrey: true})
	n.add(journal.Sky{Head: n.head(none, "00:15"), Cloud: journal.Of(4), CloudKind: journal.Of(journal.ThinCloud)})
	n.add(journal.Sky{Head: n.head(none, "01:35"), Cloud: journal.Of(6), CloudKind: journal.Of(journal.AverageCloud), Moon: journal.Of(journal.MoonVeiled)})
	n.add(journal.Ready{Head: n.head(none, "22:32"), Pool: pool(n.beat, "Alder Pool").ID})

	n.add(m.rig(n, anna, "22:35", "small slim", "half pale"))
	n.run(anna, "Alder Pool", "22:35", "23:12")
	first := n.landed(anna, "22:52", "half pale", 1, 26, false, journal.Returned)
	n.fish(anna, journal.About(n.clock("23:00"), 0), journal.Lost, "small slim", 0)
	n.add(m.rig(n, anna, "23:28", "inch half slim", "inch full"))
	n.run(anna, "Long Flat", "23:30", "01:05")
	n.landed(anna, "23:52", "inch half slim", 0, 36, true, journal.Returned)
	n.add(m.rig(n, anna, "00:36", "inch slim"))
	best := n.landed(anna, "00:42", "inch slim", 0, 50, false, journal.Returned)
	n.run(anna, "Lower Tail", "01:18", "01:55")

	n.add(m.rig(n, colm, "23:22", "inch slim", "inch grey"))
	n.run(colm, "Sand Bend", "23:25", "00:50")
	n.fish(colm, journal.Exact(n.clock("00:11")), journal.Pull, "inch slim", 0)
	n.fish(colm, journal.About(n.clock("00:30"), 0), journal.Follow, "", 0)
	n.add(m.rig(n, colm, "01:05", "two slim"))
	n.run(colm, "Cauldron", "01:08", "01:50")
	n.landed(colm, "01:28", "two slim", 0, 18, true, journal.Kept)
	n.add(journal.Note{Head: noted(n.head(colm, "01:52"), "Splashing under the alders, nothing to the fly.")})
	n.add(journal.End{Head: n.head(none, "02:05"), Why: journal.Of("enough")})
	for i, k := range []journal.Contact{first, best} {
		if err := n.photo(k, []string{"22:54", "00:45"}[i], i); err != nil {
			return journal.Batch{}, err
		}
	}
	return n.batch(), nil
}

var none journal.ID

func temp(c float64) journal.Field[units.Temperature] {
	return journal.Of(units.Temperature{C: units.Celsius(c), Unit: units.DegreeCelsius})
}

func noted(h journal.Head, s string) journal.Head { h.Note = s; return h }
