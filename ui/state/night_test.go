package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/pen"
	"gloamline/journal/units"
)

// Ensure that a whole night of two rods can be written up through cards alone, and
// that what is stored is what was meant.
func TestWholeNight(t *testing.T) {
	k := newKit(t)
	k.night(true)
	n := k.d.Night()
	require.Len(t, n.Rods, 2)
	assert.Equal(t, "Europe/London", n.Log.Trip.Zone)
	assert.Equal(t, k.anna.ID, n.Log.Trip.Rods[0].Person)
	colm, err := journal.One[journal.Person](k.j, n.Log.Trip.Rods[1].Person)
	require.NoError(t, err)
	assert.Equal(t, "Colm", colm.Name)
	assert.True(t, colm.Client && n.Log.Trip.Rods[1].Client)
	anna, colmRod := k.rod(0).ID, k.rod(1).ID

	head := func(e journal.Entry, rod journal.ID, w journal.When) journal.Head {
		h := journal.Head{ID: e.Base().ID, Trip: n.Log.Trip.ID, Rod: rod, When: w}
		return h
	}
	exact := func(s string) journal.When { return journal.Exact(k.at(s)) }

	water := k.add(journal.KindWater, "when", "21:40", "level", "0.46", "trend", "fining down", "clarity", "clear", "temp", "14.2")
	assert.Equal(t, journal.Water{Head: head(water, journal.ID{}, exact("21:40")), Level: journal.Of(units.LengthOf(0.46, units.Metre)),
		Trend: journal.Of(journal.FiningDown), Clarity: journal.Of(journal.ClearWater), Temp: journal.Of(units.TemperatureOf(14.2, units.DegreeCelsius))}, water)

	weather := k.add(journal.KindWeather, "when", "2145", "wind", "2", "wind_from", "SW", "mist", "no", "rain", "no", "air", "11")
	assert.Equal(t, journal.Weather{Head: head(weather, journal.ID{}, exact("21:45")), Wind: journal.Of(2), From: journal.Of(units.Degrees(225)),
		Mist: journal.Of(false), Rain: journal.Of(false), Air: journal.Of(units.TemperatureOf(11, units.DegreeCelsius))}, weather)

	sky := k.add(journal.KindSky, "when", "22.00", "cloud", "2", "cloud_kind", "thin", "moon", "not up")
	assert.Equal(t, journal.Sky{Head: head(sky, journal.ID{}, exact("22:00")), Cloud: journal.Of(2), CloudKind: journal.Of(journal.ThinCloud),
		Moon: journal.None[journal.MoonSeen]()}, sky)

	plan := k.add(journal.KindPlan, "when", "22:05", "rod", "Anna", "pool", "The Cauldron", "order", "2")
	assert.Equal(t, journal.Plan{Head: head(plan, anna, exact("22:05")), Pool: journal.Of(k.pool("The Cauldron").ID), Order: journal.Of(2)}, plan)

	run := k.add(journal.KindRun, "rod", "Anna", "when", "22:35", "until", "23:10", "pool", "Alder Pool")
	assert.Equal(t, journal.Run{Head: head(run, anna, exact("22:35")), Until: journal.Of(exact("23:10")), Pool: k.pool("Alder Pool").ID,
		Bank: journal.Of(geo.TrueRight)}, run, "the bank is that of the pool")

	rig := k.add(journal.KindRig, "rod", "Anna", "when", "22:35", "flies.0", "3/4 in slim dark", "flies.1", "½ full pale", "line", "floating", "leader", "9 ft").(journal.Rig)
	assert.Equal(t, journal.Setup{Line: journal.Of(journal.Line{Kind: journal.Floating}), Leader: journal.Of(units.LengthOf(9, units.Foot)),
		Flies: []journal.Mounted{{Position: 0, Fly: journal.Of(k.slim.ID)}, {Position: 1, Fly: journal.Of(k.pale.ID)}}}, rig.Setup)

	way := k.add(journal.KindWay, "rod", "Anna", "when", "22:36", "speed", "figure of eight", "depth", "just under the surface")
	assert.Equal(t, journal.Way{Head: head(way, anna, exact("22:36")), Speed: journal.Of(journal.FigureOfEight), Depth: journal.Of(journal.UnderSurface)}, way)

	one := k.fish(journal.Landed, "rod", "Anna", "when", "22:52", "fly", "dropper", "weight", "1 lb 10 oz", "length", "42", "fate", "returned",
		"class", "maiden", "sex", "hen", "lice", "no", "hook_place", "scissors", "air_seconds", "15 s", "tag", "none", "part", "tail", "note", "took at the stone")
	h := head(one, anna, exact("22:52"))
	h.Note = "took at the stone"
	assert.Equal(t, journal.Contact{Head: h, Touch: journal.Landed, Pool: journal.Of(k.pool("Alder Pool").ID), Part: journal.Of("tail"),
		Fly: journal.Of(k.pale.ID), Position: journal.Of(1), Species: journal.Of(journal.SeaTrout), Class: journal.Of("maiden"),
		Length: journal.Of(units.LengthOf(42, units.Centimetre)), Weight: one.Weight, Sex: journal.Of("hen"),
		Lice: journal.Of(false), HookPlace: journal.Of("scissors"), AirTime: journal.Of(15), Fate: journal.Of(journal.Returned), Tag: journal.None[string]()}, one)
	w, _ := one.Weight.Get()
	assert.Equal(t, "1 lb 10 oz", w.String())

	two := k.fish(journal.Lost, "rod", "Anna", "when", "about 23:00", "fly", "point")
	assert.Equal(t, journal.About(k.at("23:00"), 0), two.When)
	assert.Equal(t, journal.Of(k.slim.ID), two.Fly)
	assert.False(t, two.Fate.Known(), "a fish that came off has no fate")

	k.d.SetCursor(k.at("23:15"))
	grey, err := k.d.GreyCard()
	greyEntry := k.write(grey, err)
	assert.Equal(t, journal.Sky{Head: head(greyEntry, journal.ID{}, exact("23:15")), TreesGrey: true}, greyEntry)

	ready := k.add(journal.KindReady, "when", "23:20", "pool", "Long Flat")
	assert.Equal(t, journal.Ready{Head: head(ready, journal.ID{}, exact("23:20")), Pool: k.pool("Long Flat").ID}, ready)

	rest := k.add(journal.KindBreak, "when", "23:10", "until", "23:28", "rod", "Anna")
	assert.Equal(t, journal.Break{Head: head(rest, anna, exact("23:10")), Until: journal.Of(exact("23:28"))}, rest)

	long := k.add(journal.KindRun, "rod", "Anna", "when", "23:30", "until", "1:05", "pool", "Long Flat").(journal.Run)
	assert.Equal(t, journal.Of(exact("01:05")), long.Until)

	before := len(all[journal.Fly](t, k.j))
	rig2 := k.add(journal.KindRig, "rod", "Anna", "when", "23:30", "flies.0", "2in full dark green spot").(journal.Rig)
	require.Len(t, rig2.Flies, 2, "a new rig starts as the one before")
	assert.Equal(t, journal.Of(k.pale.ID), rig2.Flies[1].Fly)
	assert.Equal(t, rig.Leader, rig2.Leader)
	assert.Equal(t, rig.Line, rig2.Line)
	assert.Len(t, all[journal.Fly](t, k.j), before+1)
	made, err := journal.One[journal.Fly](k.j, rig2.Flies[0].Fly.Or(journal.ID{}))
	require.NoError(t, err)
	assert.Equal(t, "2 in full dark, green spot", pen.PrintDress(made.Dresses[0]))

	cauldron := k.add(journal.KindRun, "rod", "Colm", "when", "0:10", "until", "0:50", "pool", "The Cauldron")
	assert.Equal(t, exact("00:10"), cauldron.Base().When)
	k.add(journal.KindRig, "rod", "Colm", "when", "0:10", "flies.0", "1 1/2 slim dark")
	pull := k.fish(journal.Pull, "rod", "Colm", "when", "during the run")
	assert.Equal(t, journal.WithinTime, pull.When.Kind)
	assert.Equal(t, []journal.ID{cauldron.Base().ID}, pull.When.Anchors)
	assert.Equal(t, k.at("00:10"), pull.When.Lo)
	assert.Equal(t, k.at("00:50"), pull.When.Hi)
	assert.Equal(t, journal.Of(k.pool("The Cauldron").ID), pull.Pool)
	assert.Equal(t, journal.Of(k.long.ID), pull.Fly, "the only fly up is prefilled")
	assert.Equal(t, journal.Of(0), pull.Position)

	boil := k.fish(journal.Boil, "rod", "Colm", "when", "after fish 3", "fly", "", "pool", "")
	assert.Equal(t, journal.AfterTime, boil.When.Kind)
	assert.Equal(t, []journal.ID{pull.ID}, boil.When.Anchors)
	assert.True(t, boil.Fly.IsZero() && boil.Pool.IsZero(), "what was emptied stays unknown")

	note := k.add(journal.KindNote, "when", "1:00-1:20", "note", "otter on the far bank", "pool", "Long Flat", "private", Yes).(journal.Note)
	assert.Equal(t, journal.Between(k.at("01:00"), k.at("01:20")), note.When)
	assert.True(t, note.Private)

	end := k.add(journal.KindEnd, "when", "1:30", "why", "mist")
	assert.Equal(t, journal.End{Head: head(end, journal.ID{}, exact("01:30")), Why: journal.Of("mist")}, end)

	tot := k.d.Night().Totals
	assert.Equal(t, []int{1, 1, 1, 1, 3}, []int{tot.Landed, tot.Lost, tot.Touches, tot.Shows, tot.Runs})
	row := k.d.NightRow(0)
	assert.Equal(t, []string{"Anna", "Colm"}, row.Party)
	assert.Equal(t, "Home Beat", row.Beat)
	assert.Equal(t, tot, row.Brief.Totals)
	assert.True(t, row.Open && !row.Blank && !row.Empty)
	_ = colmRod

	t.Run("back and forth", func(t *testing.T) { k.backAndForth() })
}

// backAndForth undoes everything to the empty night and further, and does it again.
// At each step what is stored is what was stored when the step was first reached.
func (k *kit) backAndForth() {
	t := k.t
	trip := k.d.Trip()
	shot := func() []string {
		l, err := k.j.Night(trip)
		if err != nil {
			return nil
		}
		var out []string
		for _, e := range l.Sorted() {
			env, err := journal.Seal(e)
			require.NoError(t, err)
			out = append(out, string(env.Body))
		}
		return append(out, l.Trip.Evening.String())
	}
	var shots [][]string
	steps := 0
	for {
		did, ok := k.j.CanUndo()
		if !ok || did == "set up" {
			break
		}
		shots = append(shots, shot())
		require.NoError(t, k.d.Undo())
		steps++
		require.NoError(t, k.d.Fault())
	}
	require.Greater(t, steps, 15)
	require.Zero(t, k.d.NightCount())
	require.Nil(t, k.d.Night(), "the night itself is undone")
	require.Len(t, all[journal.Fly](t, k.j), 3, "the fly made on the way too")
	require.Len(t, all[journal.Person](t, k.j), 1, "and the person")
	for i := steps - 1; i >= 0; i-- {
		require.NoError(t, k.d.Redo())
		require.Equal(t, shots[i], shot(), "after redo %d", i)
	}
	require.Error(t, k.d.Redo())
	require.NotNil(t, k.d.Night())
}

func all[T journal.Record](t *testing.T, j *journal.Journal) []T {
	out, err := journal.All[T](j)
	require.NoError(t, err)
	return out
}
