package pen

import (
	"flag"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

func some[T any](t *rapid.T, label string, list []T) (f journal.Field[T]) {
	if rapid.Bool().Draw(t, label) {
		f = journal.Of(rapid.SampledFrom(list).Draw(t, label+" value"))
	}
	return f
}

func drawEighths(t *rapid.T, label string, lo, hi int, us ...units.LengthUnit) units.Length {
	return units.LengthOf(float64(rapid.IntRange(lo, hi).Draw(t, label))/8, rapid.SampledFrom(us).Draw(t, label+" unit"))
}

// Ensure that an entry printed reads back as the same entry, in every field of which
// GRAMMAR.md says that the pen speaks.
func TestPrintThenRead(t *testing.T) {
	checks := flag.Lookup("rapid.checks")
	usual := checks.Value.String()
	if n, _ := strconv.Atoi(usual); n < 600 && !testing.Short() { // a hundred leave fields in pairs untried
		require.NoError(t, checks.Value.Set("600"))
		defer func() { _ = checks.Value.Set(usual) }()
	}
	rapid.Check(t, func(t *rapid.T) {
		ctx := larrick(t)
		ctx.Clock.Things = []Thing{{ID: geo.ID{0xd1}, Name: "Alder Pool run 1", Run: true, Alias: []string{"run 1"}}, {ID: geo.ID{0xd2}, Name: "fish 3"}}
		ctx.Beat.Pools = append(ctx.Beat.Pools, geo.Pool{ID: geo.ID{0xa6}, Name: "Tail"}, geo.Pool{ID: geo.ID{0xa7}, Name: "Señor Eck's Dub"})
		start, end := ctx.Clock.Evening.Night(ctx.Clock.Zone)
		minute := func(label string) time.Time {
			return start.Add(time.Duration(rapid.IntRange(0, int(end.Sub(start)/time.Minute)-180).Draw(t, label)) * time.Minute)
		}
		when := func(label string, from time.Time) journal.When {
			at := minute(label)
			if at.Before(from) {
				at = from
			}
			switch rapid.IntRange(0, 3).Draw(t, label+" kind") {
			case 0:
				return journal.Exact(at)
			case 1:
				return journal.About(at, 0)
			case 2:
				return journal.About(at, time.Duration(rapid.IntRange(1, 90).Draw(t, "slack"))*time.Minute)
			}
			b := minute(label + " end")
			if b.Before(at) {
				b = at
			}
			return journal.Between(at, b)
		}
		h := journal.Head{ID: geo.ID{1}, Trip: ctx.Trip, Rod: rapid.SampledFrom([]journal.ID{anna, colm}).Draw(t, "rod"), When: when("when", start)}
		switch rapid.IntRange(0, 9).Draw(t, "hang") {
		case 0:
			h.When = journal.Within(geo.ID{0xd1})
		case 1:
			h.When = journal.After(geo.ID{0xd2})
		case 2:
			h.When = journal.When{Kind: journal.BetweenTime, Anchors: []journal.ID{{0xd1}, {0xd2}}}
		}
		if rapid.Bool().Draw(t, "noted") {
			h.Note = rapid.SampledFrom([]string{"took it deep", "2241, or later; (not sure) A", "lost point: colour gone"}).Draw(t, "note")
		}
		pools := make([]journal.ID, 0)
		for _, p := range ctx.Beat.Pools {
			pools = append(pools, p.ID)
		}
		until := func() (f journal.Field[journal.When]) {
			if rapid.Bool().Draw(t, "ends") && len(h.When.Anchors) == 0 {
				f = journal.Of(when("until", h.When.Hi))
			}
			return f
		}
		all := len(h.When.Anchors) == 0 && rapid.Bool().Draw(t, "all rods")
		kind := rapid.SampledFrom(kindOrder).Draw(t, "kind")
		if all && kind.mask&(inRun|inContact|inRig|inWay) == 0 {
			h.Rod = journal.ID{}
		}
		flies := []journal.ID{slim1, full2, pale3}
		var e journal.Entry
		switch kind.mask {
		case inRun:
			e = journal.Run{Head: h, Pool: rapid.SampledFrom(pools).Draw(t, "pool"), Bank: some(t, "bank", []journal.Bank{geo.TrueLeft, geo.TrueRight}), Until: until()}
		case inContact:
			k := journal.Contact{Head: h, Touch: rapid.SampledFrom(journal.Touches).Draw(t, "touch"), Pool: some(t, "pool", pools), Part: some(t, "part", journal.Parts),
				Fly: some(t, "fly", flies), Position: some(t, "position", []int{0, 1, 2, 3}), Species: some(t, "species", journal.AllSpecies), Class: some(t, "class", journal.Classes),
				Sex: some(t, "sex", journal.Sexes), Lice: some(t, "lice", []bool{true, false}), HookPlace: some(t, "hook", journal.HookPlaces), AirTime: some(t, "air", []int{0, 7, 20, 3600}),
				Tag: some(t, "tag", []string{"B17", "2241", "S-04/7"})}
			if rapid.Bool().Draw(t, "weighed") {
				k.Weight = journal.Of(units.WeightOf(float64(rapid.IntRange(1, 300).Draw(t, "weight"))/16, rapid.SampledFrom([]units.WeightUnit{units.Pound, units.Kilogram}).Draw(t, "weight unit")))
				k.Estimated = rapid.Bool().Draw(t, "judged")
			}
			if rapid.Bool().Draw(t, "measured") {
				k.Length = journal.Of(drawEighths(t, "length", 100, 600, units.Inch, units.Centimetre))
				k.ByEye = rapid.Bool().Draw(t, "by eye")
			}
			if k.Touch == journal.Landed {
				k.Fate = some(t, "fate", journal.Fates)
			}
			e = k
		case inRig:
			g := journal.Rig{Head: h}
			if rapid.Bool().Draw(t, "line") {
				g.Line = journal.Of(journal.Line{Kind: rapid.SampledFrom(journal.LineKinds).Draw(t, "line kind"), Sink: some(t, "sink", []float64{1, 3, 1.5})})
			}
			if rapid.Bool().Draw(t, "leader") {
				g.Leader = journal.Of(drawEighths(t, "leader length", 4, 96, units.Foot, units.Metre))
			}
			n := rapid.IntRange(1, 4).Draw(t, "flies")
			if g.Surface = rapid.Bool().Draw(t, "surface"); g.Surface {
				n = 1
			}
			for i := range n {
				m := journal.Mounted{Position: i, Fly: some(t, "fly", flies)}
				if i == n-1 {
					m.Fly = journal.Of(rapid.SampledFrom(flies).Draw(t, "last fly"))
				}
				g.Flies = append(g.Flies, m)
			}
			e = g
		case inWay:
			e = journal.Way{Head: h, Speed: journal.Of(rapid.SampledFrom(journal.Speeds).Draw(t, "speed")), Depth: some(t, "depth", journal.Depths)}
		case inSky:
			e = journal.Sky{Head: h, Cloud: some(t, "cloud", []int{0, 1, 4, 7, 8}), CloudKind: some(t, "kind", journal.CloudKinds),
				Moon: journal.Of(rapid.SampledFrom(journal.MoonSeens).Draw(t, "moon")), TreesGrey: rapid.Bool().Draw(t, "grey"), Step: rapid.Bool().Draw(t, "step")}
		case inWeather:
			e = journal.Weather{Head: h, Wind: journal.Of(rapid.IntRange(0, 12).Draw(t, "wind")), From: some(t, "from", []units.Degrees{0, 22.5, 135, 180, 225, 337.5}),
				Mist: some(t, "mist", []bool{true, false}), Rain: some(t, "rain", []bool{true, false}), Air: some(t, "air", []units.Temperature{units.TemperatureOf(12.5, units.DegreeCelsius), units.TemperatureOf(54, units.DegreeFahrenheit)})}
		case inWater:
			e = journal.Water{Head: h, Level: journal.Of(drawEighths(t, "level", -8, 24, units.Metre, units.Inch)), Trend: some(t, "trend", journal.Trends),
				Clarity: some(t, "clarity", journal.Clarities), Temp: some(t, "temp", []units.Temperature{units.TemperatureOf(14.2, units.DegreeCelsius), units.TemperatureOf(58, units.DegreeFahrenheit)})}
		case inReady:
			e = journal.Ready{Head: h, Pool: rapid.SampledFrom(pools).Draw(t, "pool")}
		case inBreak:
			e = journal.Break{Head: h, Until: until()}
		case inEnd:
			e = journal.End{Head: h, Why: some(t, "why", journal.EndWhys)}
		}
		text, ok := Print(e, ctx)
		if !ok {
			page := Read(text, ctx)
			t.Fatalf("%+v\nprints as %q, which reads %+v", e, text, page.Lines[0].Clauses)
		}
		require.NotEmpty(t, text)
	})
}
