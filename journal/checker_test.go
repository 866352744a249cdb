package journal_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// spoiled returns the sample of T's kind with f done to it.
func spoiled[T journal.Record](f func(*T)) journal.Record {
	var zero T
	r := sample(zero.Ref().Kind).(T)
	f(&r)
	return r
}

// Ensure that every field of every kind refuses what cannot be, and is named.
func TestCheck(t *testing.T) {
	first := func(b *journal.Beat) *geo.Beat { return &b.Revisions[0].Shape }
	backwards := journal.When{Kind: journal.BetweenTime, Lo: clock(23, 0), Hi: clock(22, 0)}
	long := strings.Repeat("x", journal.MaxText+1)
	for i, c := range []struct {
		field string
		bad   journal.Record
	}{
		{"id", spoiled(func(r *journal.Trip) { r.ID = journal.ID{} })},
		{"evening", spoiled(func(r *journal.Trip) { r.Evening = journal.Date{} })},
		{"evening", spoiled(func(r *journal.Trip) { r.Evening.Year = 206 })},
		{"evening", spoiled(func(r *journal.Trip) { r.Evening.Year = 2206 })},
		{"evening", spoiled(func(r *journal.Trip) { r.Evening.Day = 32 })},
		{"zone", spoiled(func(r *journal.Trip) { r.Zone = "" })},
		{"zone", spoiled(func(r *journal.Trip) { r.Zone = "Local" })},
		{"zone", spoiled(func(r *journal.Trip) { r.Zone = "Europe/Larrick" })},
		{"beat", spoiled(func(r *journal.Trip) { r.Beat = journal.ID{} })},
		{"rods", spoiled(func(r *journal.Trip) { r.Rods = []journal.Rod{{Person: id("anna")}} })},
		{"rods", spoiled(func(r *journal.Trip) { r.Rods = []journal.Rod{{ID: id("x")}} })},
		{"rods", spoiled(func(r *journal.Trip) { a, b := rod("anna"), rod("colm"); b.ID = a.ID; r.Rods = []journal.Rod{a, b} })},
		{"rods", spoiled(func(r *journal.Trip) {
			a, b := rod("anna"), rod("colm")
			b.Person = a.Person
			r.Rods = []journal.Rod{a, b}
		})},
		{"start", spoiled(func(r *journal.Trip) { r.Rods = []journal.Rod{rod("anna")}; r.Rods[0].Start = journal.Of(backwards) })},
		{"stop", spoiled(func(r *journal.Trip) {
			r.Rods = []journal.Rod{rod("anna")}
			r.Rods[0].Stop = journal.Of(journal.After(id("run")))
		})},
		{"stop", spoiled(func(r *journal.Trip) {
			r.Rods = []journal.Rod{rod("anna")}
			r.Rods[0].Start, r.Rods[0].Stop = journal.Of(at(23, 0)), journal.Of(at(22, 0))
		})},
		{"hours", spoiled(func(r *journal.Trip) { r.Hours = journal.Of(journal.Span{Start: at(22, 0)}) })},
		{"hours", spoiled(func(r *journal.Trip) { r.Hours = journal.Of(journal.Span{Start: at(2, 0), Stop: at(22, 0)}) })},
		{"note", spoiled(func(r *journal.Trip) { r.Note = "a\xffb" })},

		{"id", spoiled(func(r *journal.Beat) { r.ID = journal.ID{} })},
		{"revisions", spoiled(func(r *journal.Beat) { r.Revisions = nil })},
		{"revisions", spoiled(func(r *journal.Beat) { r.Revisions[0].From = r.Revisions[1].From })},
		{"revisions", spoiled(func(r *journal.Beat) { r.Revisions[0], r.Revisions[1] = r.Revisions[1], r.Revisions[0] })},
		{"revisions", spoiled(func(r *journal.Beat) { first(r).Pools[0].ID = journal.ID{} })},
		{"revisions", spoiled(func(r *journal.Beat) { first(r).Pools[0].ID = first(r).Pools[1].ID })},
		{"revisions", spoiled(func(r *journal.Beat) { first(r).ID = id("other beat") })},
		{"revisions", spoiled(func(r *journal.Beat) { first(r).Zone = "Local" })},
		{"revisions", spoiled(func(r *journal.Beat) { first(r).Pools[0].Bank = "near" })},
		{"revisions", spoiled(func(r *journal.Beat) { first(r).Pools[0].Canopy = "dense" })},
		{"revisions", spoiled(func(r *journal.Beat) {
			first(r).Pools[0].Outline = orb.Polygon{{{-4, 95}, {-4, 55}, {-5, 55}, {-4, 95}}}
		})},
		{"revisions", spoiled(func(r *journal.Beat) { first(r).Pools[0].Outline = orb.Polygon{{{math.NaN(), 55}}} })},
		{"revisions", spoiled(func(r *journal.Beat) { first(r).Name = "\xff" })},
		{"successors", spoiled(func(r *journal.Beat) { r.Successors = map[journal.ID][]journal.ID{id("a"): {id("a")}} })},
		{"successors", spoiled(func(r *journal.Beat) {
			r.Successors = map[journal.ID][]journal.ID{id("a"): {id("b")}, id("b"): {id("c"), id("a")}}
		})},
		{"successors", spoiled(func(r *journal.Beat) { r.Successors = map[journal.ID][]journal.ID{id("a"): {{}}} })},
		{"successors", spoiled(func(r *journal.Beat) { r.Successors = map[journal.ID][]journal.ID{{}: {id("a")}} })},
		{"grey_lux", spoiled(func(r *journal.Beat) { r.Grey = journal.Of(units.Lux(0)) })},
		{"grey_lux", spoiled(func(r *journal.Beat) { r.Grey = journal.Of(units.Lux(math.NaN())) })},
		{"grey_lux", spoiled(func(r *journal.Beat) { r.Grey = journal.Of(units.Lux(200)) })},

		{"id", spoiled(func(r *journal.Fly) { r.ID = journal.ID{} })},
		{"dresses", spoiled(func(r *journal.Fly) { r.Dresses = nil })},
		{"dresses", spoiled(func(r *journal.Fly) { r.Dresses[1].From = journal.Date{} })},
		{"dresses", spoiled(func(r *journal.Fly) { r.Dresses[1].From = journal.Date{Year: 2026, Month: 6, Day: 31} })},
		{"length", spoiled(func(r *journal.Fly) { r.Dresses[0].Length = journal.Of(units.LengthOf(0, units.Inch)) })},
		{"length", spoiled(func(r *journal.Fly) { r.Dresses[0].Length = journal.Of(units.LengthOf(41, units.Centimetre)) })},
		{"dresses", spoiled(func(r *journal.Fly) { r.Dresses[0].Length = journal.Of(units.Length{M: 0.02, Unit: "span"}) })},
		{"silhouette", spoiled(func(r *journal.Fly) { r.Dresses[0].Silhouette = journal.Of(journal.Silhouette("fat")) })},
		{"tone", spoiled(func(r *journal.Fly) { r.Dresses[0].Tone = journal.Of(journal.Tone("red")) })},
		{"hook", spoiled(func(r *journal.Fly) { r.Dresses[0].Hook = journal.Of("") })},
		{"built", spoiled(func(r *journal.Fly) { r.Dresses[0].Built = journal.Of("glued") })},
		{"dresses", spoiled(func(r *journal.Fly) { r.Dresses[0].HotSpot = journal.Of(long) })},
		{"label", spoiled(func(r *journal.Fly) { r.Label = "\xc3\x28" })},
		{"retired", spoiled(func(r *journal.Fly) { r.Retired.Month = 13 })},

		{"id", spoiled(func(r *journal.Box) { r.ID = journal.ID{} })},
		{"name", spoiled(func(r *journal.Box) { r.Name = " \t" })},
		{"use", spoiled(func(r *journal.Box) { r.Use = "" })},
		{"flies", spoiled(func(r *journal.Box) { r.Flies = append(r.Flies, r.Flies[0]) })},

		{"id", spoiled(func(r *journal.HouseRule) { r.ID = journal.ID{} })},
		{"words", spoiled(func(r *journal.HouseRule) { r.Words = "" })},
		{"dark_lux", spoiled(func(r *journal.HouseRule) { r.Dark = journal.Of(units.Lux(-1)) })},
		{"dark_lux", spoiled(func(r *journal.HouseRule) { r.Dark = journal.Of(units.Lux(0.02)) })},
		{"light_lux", spoiled(func(r *journal.HouseRule) { r.Light = journal.Of(units.Lux(math.Inf(1))) })},
		{"at_grey", spoiled(func(r *journal.HouseRule) { r.AtGrey = "during" })},
		{"at_grey", spoiled(func(r *journal.HouseRule) { r.AtGrey = "after" })},
		{"min", spoiled(func(r *journal.HouseRule) { r.Min = r.Max })},
		{"min", spoiled(func(r *journal.HouseRule) { r.Max = journal.Of(units.LengthOf(1, units.Metre)) })},
		{"position", spoiled(func(r *journal.HouseRule) { r.Position = journal.Of(4) })},
		{"silhouettes", spoiled(func(r *journal.HouseRule) { r.Silhouettes = []journal.Silhouette{""} })},
		{"tones", spoiled(func(r *journal.HouseRule) { r.Tones = []journal.Tone{"red"} })},

		{"id", spoiled(func(r *journal.Person) { r.ID = journal.ID{} })},
		{"name", spoiled(func(r *journal.Person) { r.Name = "  " })},
		{"initials", spoiled(func(r *journal.Person) { r.Initials = "\xff" })},
		{"left", spoiled(func(r *journal.Person) { r.Left = journal.Date{Day: 1} })},

		{"id", spoiled(func(r *journal.Source) { r.ID = journal.ID{} })},
		{"sha256", spoiled(func(r *journal.Source) { r.SHA256 = "" })},
		{"sha256", spoiled(func(r *journal.Source) { r.SHA256 = strings.Repeat("g", 64) })},
		{"sha256", spoiled(func(r *journal.Source) { r.SHA256 = strings.ToUpper(r.SHA256) })},
		{"zone", spoiled(func(r *journal.Source) { r.Zone = "Europe/Larrick" })},
		{"name", spoiled(func(r *journal.Source) { r.Name = "caf\xe9.gpx" })},
		{"read", spoiled(func(r *journal.Source) { r.Read = time.Date(10000, 1, 1, 0, 0, 0, 0, time.UTC) })},

		{"id", spoiled(func(r *journal.Series) { r.ID = journal.ID{} })},
		{"what", spoiled(func(r *journal.Series) { r.What = "mood" })},
		{"points", spoiled(func(r *journal.Series) { r.Points = []journal.Reading{{At: clock(23, 0)}, {At: clock(22, 0)}} })},
		{"points", spoiled(func(r *journal.Series) { r.Points[0].Value = journal.Of(math.NaN()) })},

		{"id", spoiled(func(r *journal.Track) { r.ID = journal.ID{} })},
		{"rod", spoiled(func(r *journal.Track) { r.Trip = journal.Field[journal.ID]{} })},
		{"fixes", spoiled(func(r *journal.Track) { r.Fixes[0].Place.Lat = 91 })},
		{"fixes", spoiled(func(r *journal.Track) { r.Fixes = append(r.Fixes, journal.TrackFix{At: clock(21, 0)}) })},
		{"fixes", spoiled(func(r *journal.Track) { r.Fixes = make([]journal.TrackFix, journal.MaxFixes+1) })},

		{"id", spoiled(func(r *journal.Decision) { r.ID = journal.ID{} })},
		{"key", spoiled(func(r *journal.Decision) { r.Key = "" })},
		{"verdict", spoiled(func(r *journal.Decision) { r.Verdict = "" })},

		{"trip", spoiled(func(r *journal.Run) { r.Trip = journal.ID{} })},
		{"pool", spoiled(func(r *journal.Run) { r.Pool = journal.ID{} })},
		{"until", spoiled(func(r *journal.Run) { r.Until = journal.Of(at(22, 0)) })},
		{"until", spoiled(func(r *journal.Run) { r.Until = journal.Of(journal.When{}) })},
		{"until", spoiled(func(r *journal.Run) { r.Until = journal.Of(journal.After(r.ID)) })},
		{"bank", spoiled(func(r *journal.Run) { r.Bank = journal.Of(journal.Bank("")) })},
		{"bank", spoiled(func(r *journal.Run) { r.Bank = journal.Of(journal.Bank("far")) })},
		{"enter", spoiled(func(r *journal.Run) { r.Enter = journal.Of(journal.Place{Lat: 91}) })},
		{"leave", spoiled(func(r *journal.Run) { r.Leave = journal.Of(journal.Place{Lon: units.Degrees(math.NaN())}) })},

		{"line", spoiled(func(r *journal.Rig) { r.Line = journal.Of(journal.Line{}) })},
		{"line", spoiled(func(r *journal.Rig) { r.Line = journal.Of(journal.Line{Kind: journal.Sinking, Sink: journal.Of(21.0)}) })},
		{"leader", spoiled(func(r *journal.Rig) { r.Leader = journal.Of(units.LengthOf(0, units.Foot)) })},
		{"flies", spoiled(func(r *journal.Rig) { r.Flies = []journal.Mounted{{Position: 1}} })},
		{"flies", spoiled(func(r *journal.Rig) { r.Flies = make([]journal.Mounted, 5) })},
		{"flies", spoiled(func(r *journal.Rig) { r.Surface = true })},

		{"speed", spoiled(func(r *journal.Way) { r.Speed = journal.Of(journal.Speed("fast")) })},
		{"depth", spoiled(func(r *journal.Way) { r.Depth = journal.Of(journal.Depth("bottom")) })},

		{"touch", spoiled(func(r *journal.Contact) { r.Touch, r.Fate = "", journal.Field[journal.Fate]{} })},
		{"part", spoiled(func(r *journal.Contact) { r.Part = journal.Of("middle") })},
		{"spot", spoiled(func(r *journal.Contact) { r.Spot = journal.Of(journal.Place{Lon: 181}) })},
		{"position", spoiled(func(r *journal.Contact) { r.Position = journal.Of(-1) })},
		{"position", spoiled(func(r *journal.Contact) { r.Position = journal.Of(4) })},
		{"species", spoiled(func(r *journal.Contact) { r.Species = journal.Of(journal.Species("eel")) })},
		{"class", spoiled(func(r *journal.Contact) { r.Class = journal.Of("big one") })},
		{"length", spoiled(func(r *journal.Contact) { r.Length = journal.Of(units.LengthOf(2, units.Centimetre)) })},
		{"length", spoiled(func(r *journal.Contact) { r.Length = journal.Of(units.LengthOf(2, units.Metre)) })},
		{"length", spoiled(func(r *journal.Contact) { r.Length = journal.Of(units.Length{M: units.Metres(math.NaN())}) })},
		{"weight", spoiled(func(r *journal.Contact) { r.Weight = journal.Of(units.WeightOf(0, units.Pound)) })},
		{"weight", spoiled(func(r *journal.Contact) { r.Weight = journal.Of(units.WeightOf(60, units.Kilogram)) })},
		{"weight", spoiled(func(r *journal.Contact) { r.Weight = journal.Of(units.Weight{G: 700, Unit: "stone"}) })},
		{"sex", spoiled(func(r *journal.Contact) { r.Sex = journal.Of("female") })},
		{"hook_place", spoiled(func(r *journal.Contact) { r.HookPlace = journal.Of("fin") })},
		{"air_seconds", spoiled(func(r *journal.Contact) { r.AirTime = journal.Of(-1) })},
		{"air_seconds", spoiled(func(r *journal.Contact) { r.AirTime = journal.Of(3601) })},
		{"fate", spoiled(func(r *journal.Contact) { r.Fate = journal.Of(journal.Fate("eaten")) })},
		{"fate", spoiled(func(r *journal.Contact) { r.Touch = journal.Lost })},
		{"tag", spoiled(func(r *journal.Contact) { r.Tag = journal.Of("\xff") })},

		{"cloud", spoiled(func(r *journal.Sky) { r.Cloud = journal.Of(9) })},
		{"cloud", spoiled(func(r *journal.Sky) { r.Cloud = journal.Of(-1) })},
		{"cloud_kind", spoiled(func(r *journal.Sky) { r.CloudKind = journal.Of(journal.CloudKind("fluffy")) })},
		{"moon", spoiled(func(r *journal.Sky) { r.Moon = journal.Of(journal.MoonSeen("full")) })},
		{"cloud", spoiled(func(r *journal.Sky) { *r = journal.Sky{Head: head("sky", "", at(23, 0)), Step: true} })},

		{"wind", spoiled(func(r *journal.Weather) { r.Wind = journal.Of(13) })},
		{"wind_from", spoiled(func(r *journal.Weather) { r.From = journal.Of(units.Degrees(361)) })},
		{"air", spoiled(func(r *journal.Weather) { r.Air = journal.Of(units.TemperatureOf(57, units.DegreeCelsius)) })},
		{"air", spoiled(func(r *journal.Weather) { r.Air = journal.Of(units.Temperature{C: 14, Unit: "K"}) })},

		{"level", spoiled(func(r *journal.Water) { r.Level = journal.Of(units.LengthOf(1000, units.Metre)) })},
		{"trend", spoiled(func(r *journal.Water) { r.Trend = journal.Of(journal.Trend("up")) })},
		{"clarity", spoiled(func(r *journal.Water) { r.Clarity = journal.Of(journal.Clarity("grey")) })},
		{"temp", spoiled(func(r *journal.Water) { r.Temp = journal.Of(units.TemperatureOf(57, units.DegreeCelsius)) })},

		{"pool", spoiled(func(r *journal.Ready) { r.Pool = journal.ID{} })},
		{"until", spoiled(func(r *journal.Break) { r.Until = journal.Of(at(23, 0)) })},
		{"until", spoiled(func(r *journal.Break) { r.Until = journal.Of(backwards) })},
		{"why", spoiled(func(r *journal.End) { r.Why = journal.Of("bored") })},
		{"earliest_lux", spoiled(func(r *journal.Plan) { r.Earliest = journal.Of(units.Lux(0)) })},
		{"order", spoiled(func(r *journal.Plan) { r.Order = journal.Of(-1) })},
		{"note", spoiled(func(r *journal.Note) { r.Note = " \n" })},
		{"note", spoiled(func(r *journal.Note) { r.Note = long })},
		{"note", spoiled(func(r *journal.Note) { r.Note = "\xff" })},
		{"sha256", spoiled(func(r *journal.Photo) { r.SHA256 = r.SHA256[1:] })},
		{"thumb", spoiled(func(r *journal.Photo) { r.Thumb = make([]byte, journal.MaxThumb+1) })},
		{"of", spoiled(func(r *journal.Photo) { r.Of = journal.Of(r.ID) })},
		{"spot", spoiled(func(r *journal.Photo) { r.Spot = journal.Of(journal.Place{Lat: -91}) })},
		{"link", spoiled(func(r *journal.Photo) { r.Link = "caf\xe9.jpg" })},
	} {
		name := fmt.Sprintf("%d %s %s", i, c.bad.Ref().Kind, c.field)
		errs := journal.FieldErrors(journal.Check(c.bad))
		if assert.NotEmpty(t, errs, name) {
			for _, e := range errs {
				assert.Equal(t, c.field, e.Field, "%s: %v", name, e)
				assert.Equal(t, journal.Invalid, e.Kind, name)
				assert.NotEmpty(t, e.Err, name)
			}
		}
	}
}

// Ensure that every entry checks its head, and that rods are asked for where
// an entry belongs to one.
func TestCheckHead(t *testing.T) {
	rodded := map[journal.Kind]bool{journal.KindRun: true, journal.KindRig: true, journal.KindWay: true, journal.KindContact: true}
	for _, k := range journal.EntryKinds {
		e := sample(k).(journal.Entry)
		for field, spoil := range map[string]func(*journal.Head){
			"id":       func(h *journal.Head) { h.ID = journal.ID{} },
			"trip":     func(h *journal.Head) { h.Trip = journal.ID{} },
			"when":     func(h *journal.Head) { h.When = journal.When{} },
			"from":     func(h *journal.Head) { h.From.How = "dream" },
			"warnings": func(h *journal.Head) { h.Warnings = []journal.Warning{"odd"} },
			"note":     func(h *journal.Head) { h.Note = "\xff\xfe" },
		} {
			h := e.Base()
			spoil(&h)
			errs := journal.FieldErrors(journal.Check(e.WithHead(h)))
			if assert.NotEmpty(t, errs, "%s %s", k, field) {
				assert.Equal(t, field, errs[0].Field, "%s", k)
				assert.Equal(t, h.ID, errs[0].ID)
			}
		}
		h := e.Base()
		h.Rod = journal.ID{}
		assert.Equal(t, rodded[k], journal.Check(e.WithHead(h)) != nil, "a %s without a rod", k)
		h = e.Base()
		h.Warnings = []journal.Warning{journal.WallTwice, journal.WallTwice}
		assert.Error(t, journal.Check(e.WithHead(h)))
	}
}

func TestCheckWhen(t *testing.T) {
	lo, hi := clock(22, 0), clock(23, 0)
	a, b := id("a"), id("b")
	type w = journal.When
	for _, good := range []w{
		at(22, 0), journal.About(lo, 0), journal.Between(lo, hi), journal.Between(lo, lo), journal.Within(a), journal.Before(a), journal.After(a),
		{Kind: journal.BetweenTime, Anchors: []journal.ID{a, b}}, {Kind: journal.WithinTime, Anchors: []journal.ID{a}, Lo: lo, Hi: hi},
	} {
		assert.NoError(t, journal.Check(note("n", good)), "%v", good)
	}
	for _, bad := range []w{
		{}, {Kind: "sometime", Lo: lo, Hi: hi}, {Kind: journal.ExactTime}, {Kind: journal.ExactTime, Lo: lo, Hi: hi}, {Kind: journal.AboutTime, Lo: lo},
		{Kind: journal.BetweenTime, Hi: hi}, {Kind: journal.BetweenTime, Lo: hi, Hi: lo}, {Kind: journal.WithinTime, Lo: lo, Hi: hi},
		{Kind: journal.BetweenTime, Anchors: []journal.ID{a}}, {Kind: journal.BetweenTime, Anchors: []journal.ID{a, a}}, {Kind: journal.BetweenTime, Anchors: []journal.ID{a, b, id("c")}},
		{Kind: journal.ExactTime, Lo: lo, Hi: lo, Anchors: []journal.ID{a}}, {Kind: journal.AfterTime, Anchors: []journal.ID{a, b}},
		{Kind: journal.AfterTime, Anchors: []journal.ID{a}, Lo: lo}, {Kind: journal.AfterTime, Anchors: []journal.ID{a}, Lo: hi, Hi: lo},
		journal.After(id("n")), journal.Within(journal.ID{}),
	} {
		assert.Error(t, journal.Check(note("n", bad)), "%v", bad)
	}
}

// Ensure that a form is told of every fault at once.
func TestCheckReportsAll(t *testing.T) {
	c := contact("c", "", journal.When{})
	c.Touch, c.Position = "nibble", journal.Of(9)
	var fields []string
	for _, e := range journal.FieldErrors(journal.Check(c)) {
		fields = append(fields, e.Field)
		assert.Equal(t, id("c"), e.ID)
	}
	assert.ElementsMatch(t, []string{"rod", "when", "touch", "position"}, fields)
}

func TestFieldErrors(t *testing.T) {
	a := &journal.Error{Kind: journal.Invalid, Field: "a"}
	b := &journal.Error{Kind: journal.Conflict, Field: "b"}
	outer := &journal.Error{Op: "add", Kind: journal.Invalid, Err: errors.Join(a, fmt.Errorf("wrapped: %w", b))}
	assert.Equal(t, []*journal.Error{a, b}, journal.FieldErrors(outer))
	assert.Equal(t, []*journal.Error{a}, journal.FieldErrors(a))
	assert.Empty(t, journal.FieldErrors(nil))
	assert.Empty(t, journal.FieldErrors(errors.New("foreign")))
}

// Ensure that texts of any script, and empty ones where they may be, are kept.
func TestCheckText(t *testing.T) {
	n := note("n", at(23, 0))
	for _, s := range []string{"å – 魚 🌒", "a\u0000b", strings.Repeat("x", journal.MaxText), "line\u2028break"} {
		n.Note = s
		assert.NoError(t, journal.Check(n))
		e, err := journal.Seal(n)
		require.NoError(t, err)
		back, err := journal.Unseal(e)
		require.NoError(t, err)
		assert.Equal(t, s, back.(journal.Note).Note)
	}
}
