package journal_test

import (
	"encoding/json"
	"strings"
	"time"

	"github.com/paulmach/orb"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// samples returns one record of every kind with every member filled.
func samples() []journal.Record {
	sha := strings.Repeat("0123456789abcdef", 4)
	full := func(word, who string, w journal.When) journal.Head {
		h := head(word, who, w)
		h.Note = "hills < clouds & \"mist\", fine\nsecond line"
		h.From = journal.Origin{How: "track", Source: id("source"), Key: "track 1/segment 2"}
		h.Warnings = []journal.Warning{journal.WallTwice}
		return h
	}
	spot := journal.Place{Lat: 55.123456, Lon: -4.654321}
	anchored := journal.When{Kind: journal.WithinTime, Anchors: []journal.ID{id("run")}, Lo: clock(23, 0), Hi: clock(23, 40)}
	setup := journal.Setup{
		Line:   journal.Of(journal.Line{Kind: journal.SinkTip, Sink: journal.Of(1.5)}),
		Leader: journal.Of(units.LengthOf(9, units.Foot)),
		Flies:  []journal.Mounted{{Position: 0, Fly: journal.Of(id("dark fly"))}, {Position: 1, Fly: journal.None[journal.ID]()}},
	}
	ring := orb.Ring{{-4.65, 55.12}, {-4.649, 55.12}, {-4.649, 55.121}, {-4.65, 55.12}}
	extra := geo.Extra{
		Members:    map[string]json.RawMessage{"bbox": json.RawMessage(`[1,2]`)},
		Properties: map[string]json.RawMessage{"colour": json.RawMessage(`"slate"`)},
		Geometry:   map[string]json.RawMessage{"crs": json.RawMessage(`null`)},
		Heights:    [][]float64{{-4.65, 55.12, 31.5}},
	}
	return []journal.Record{
		journal.Trip{ID: id("trip"), Evening: evening, Zone: "Europe/London", Beat: id("home beat"), Guide: journal.Of(id("colm")),
			Rods: []journal.Rod{{ID: id("rod of anna"), Person: id("anna"), Client: true,
				Start: journal.Of(at(22, 0)), Stop: journal.Of(journal.About(clock(2, 0), 0))}},
			Note: "warm, no wind", Hours: journal.Of(journal.Span{Start: at(21, 45), Stop: at(2, 15)})},
		journal.Beat{ID: id("home beat"), Revisions: []journal.BeatRevision{
			{Shape: geo.Beat{Name: "Home Beat", Zone: "Europe/London", Pools: []geo.Pool{pool("alder pool"), pool("long pool")}}},
			{From: journal.Date{Year: 2026, Month: time.May, Day: 1}, Shape: geo.Beat{
				ID: id("home beat"), Name: "Home Beat", River: geo.River{ID: id("river"), Name: "Larrick Water"}, Zone: "Europe/London", At: spot,
				Pools: []geo.Pool{{ID: id("alder pool"), Name: "Alder Pool", Order: 1, Bank: geo.TrueLeft, Canopy: geo.Partly,
					Skyline: geo.Skyline{{Bearing: 0, Altitude: 4.5}, {Bearing: 180, Altitude: 12}}, Outline: orb.Polygon{ring},
					Head: journal.Place{Lat: 55.1211, Lon: -4.65}, Tail: journal.Place{Lat: 55.12, Lon: -4.649}, Extra: extra}},
				Features: []geo.Feature{
					{ID: id("bank"), Role: geo.RoleBank, Name: "near", Bank: geo.TrueRight, Shape: geo.LineShape(orb.LineString{{-4.65, 55.12}, {-4.64, 55.13}}), Extra: extra},
					{ID: id("trees"), Role: geo.RoleTrees, Name: "alders", Canopy: geo.Closed, Shape: geo.AreaShape(orb.Polygon{ring})},
					{ID: id("gate"), Role: geo.RoleEntry, Name: "gate", Bank: geo.TrueLeft, Shape: geo.PointShape(orb.Point{-4.65, 55.12})},
				},
				Extra: extra,
			}}},
			Successors: map[journal.ID][]journal.ID{id("long pool"): {id("upper pool"), id("lower pool")}},
			Grey:       journal.Of(units.Lux(0.3)),
			Notices: []journal.Notice{{Words: "return to the owner", Said: "the keeper, by word of mouth",
				Checked: journal.Date{Year: 2026, Month: time.March, Day: 3}, Due: journal.Date{Year: 2026, Month: time.October, Day: 31}}}},
		journal.Fly{ID: id("dark fly"), Label: "the dark one", Retired: journal.Date{Year: 2026, Month: time.October, Day: 1}, Dresses: []journal.Dress{
			{Length: journal.Of(units.LengthOf(1.5, units.Inch)), Silhouette: journal.Of(journal.Full), Tone: journal.Of(journal.DarkTone),
				HotSpot: journal.Of("orange"), Hook: journal.Of("double"), Barbless: journal.Of(true), Built: journal.Of("tube"), Note: "tied sparse"},
			{From: journal.Date{Year: 2026, Month: time.June, Day: 1}, HotSpot: journal.None[string](), Barbless: journal.Of(false)}}},
		journal.Box{ID: id("box"), Name: "night box", Use: "night", Flies: []journal.ID{id("dark fly"), id("pale fly")}},
		journal.HouseRule{ID: id("rule"), Words: "big and dark once it is black", Dark: journal.Of(units.Lux(0.0005)), Light: journal.Of(units.Lux(0.02)),
			Min: journal.Of(units.LengthOf(1.5, units.Inch)), Max: journal.Of(units.LengthOf(3, units.Inch)),
			Silhouettes: []journal.Silhouette{journal.Full}, Tones: []journal.Tone{journal.DarkTone}, Position: journal.Of(0), Practice: true},
		journal.HouseRule{ID: id("rule by the trees"), Words: "small until the trees are grey", AtGrey: "before"},
		journal.Person{ID: id("anna"), Name: "Anna", Initials: "A", Client: true, Left: journal.Date{Year: 2027, Month: time.January, Day: 1}},
		journal.Source{ID: id("source"), SHA256: sha, Name: "watch.gpx", Format: "gpx", Device: "watch", Offset: -37 * time.Second,
			Zone: "Europe/London", Read: time.Date(2026, time.July, 5, 9, 30, 0, 0, time.UTC)},
		journal.Series{ID: id("series"), Source: id("source"), Station: "Larrick Bridge", What: "level", Unit: "m", Datum: "local",
			Points: []journal.Reading{{At: clock(22, 0), Value: journal.Of(0.41), Flag: "good"}, {At: clock(22, 15)}, {At: clock(22, 30), Value: journal.None[float64]()}}},
		journal.Track{ID: id("track"), Source: id("source"), Trip: journal.Of(id("trip")), Rod: journal.Of(id("rod of anna")),
			Fixes: []journal.TrackFix{{At: clock(22, 0), Place: spot, Err: journal.Of(units.Metres(4.5))}, {Place: spot}}},
		journal.Recipient{ID: id("recipient"), Person: id("anna"), Shows: journal.AllShows},
		journal.Decision{ID: id("decision"), Key: "watch.gpx#1", Verdict: journal.Accepted, Entry: journal.Ref{Kind: journal.KindRun, Trip: id("trip"), ID: id("run")}},

		journal.Run{Head: full("run", "anna", journal.About(clock(23, 0), 0)), Until: journal.Of(at(23, 40)), Pool: id("alder pool"),
			Bank: journal.Of(geo.TrueLeft), Enter: journal.Of(spot), Leave: journal.Of(spot)},
		journal.Rig{Head: full("rig", "anna", at(22, 0)), Setup: setup},
		journal.Rig{Head: full("surface rig", "anna", at(0, 30)), Setup: journal.Setup{Flies: []journal.Mounted{{Fly: journal.Of(id("pale fly"))}}, Surface: true}},
		journal.Way{Head: full("way", "anna", at(22, 0)), Speed: journal.Of(journal.FigureOfEight), Depth: journal.Of(journal.UnderSurface)},
		journal.Contact{Head: full("contact", "anna", anchored), Touch: journal.Landed, Pool: journal.Of(id("alder pool")), Part: journal.Of("tail"),
			Spot: journal.Of(spot), Fly: journal.Of(id("dark fly")), Position: journal.Of(1), Species: journal.Of(journal.SeaTrout), Class: journal.Of("maiden"),
			Length: journal.Of(units.LengthOf(41, units.Centimetre)), ByEye: true,
			Weight: journal.Of(units.WeightOf(1.625, units.Pound)), Estimated: true, Sex: journal.Of("hen"), Lice: journal.Of(false),
			HookPlace: journal.Of("scissors"), AirTime: journal.Of(12), Fate: journal.Of(journal.Returned), Tag: journal.None[string]()},
		journal.Sky{Head: full("sky", "", at(22, 0)), Cloud: journal.Of(6), CloudKind: journal.Of(journal.AverageCloud), Moon: journal.Of(journal.MoonVeiled), TreesGrey: true, Step: true},
		journal.Weather{Head: full("weather", "", at(22, 0)), Wind: journal.Of(2), From: journal.Of(units.Degrees(225)), Mist: journal.Of(false), Rain: journal.Of(true),
			Air: journal.Of(units.TemperatureOf(57, units.DegreeFahrenheit))},
		journal.Water{Head: full("river", "", at(22, 0)), Level: journal.Of(units.LengthOf(-2, units.Inch)), Trend: journal.Of(journal.FiningDown),
			Clarity: journal.Of(journal.TeaWater), Temp: journal.Of(units.TemperatureOf(14.2, units.DegreeCelsius))},
		journal.Ready{Head: full("ready", "", at(23, 10)), Pool: id("alder pool")},
		journal.Break{Head: full("break", "anna", at(0, 0)), Until: journal.Of(at(0, 30))},
		journal.End{Head: full("end", "", at(2, 0)), Why: journal.Of("mist")},
		journal.Plan{Head: full("plan", "anna", at(22, 0)), Pool: journal.Of(id("alder pool")), Order: journal.Of(1), Earliest: journal.Of(units.Lux(0.1))},
		journal.Note{Head: full("note", "", at(1, 0)), Pool: journal.Of(id("alder pool")), Private: true, Reason: "no time found"},
		journal.Photo{Head: full("photo", "anna", at(23, 20)), SHA256: sha, Name: "fish.jpg", Copied: true, Link: "pictures/fish.jpg",
			Thumb: []byte{0xff, 0xd8, 0xff}, Of: journal.Of(id("contact")), Spot: journal.Of(spot)},
	}
}

// sample returns the first sample of a kind.
func sample(k journal.Kind) journal.Record {
	for _, r := range samples() {
		if r.Ref().Kind == k {
			return r
		}
	}
	return nil
}

func allKinds() []journal.Kind {
	return append(append([]journal.Kind{}, journal.RecordKinds...), journal.EntryKinds...)
}
