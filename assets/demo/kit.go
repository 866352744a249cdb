package demo

import (
	"gloamline/journal"
	"gloamline/journal/units"
)

func (m *maker) makePeople() []journal.Record {
	var out []journal.Record
	for _, p := range []struct {
		name   string
		client bool
	}{{"Anna", false}, {"Colm", false}, {"Ishbel", true}, {"Tamsin", true}, {"Rafe", true}, {"Wren", true}} {
		v := journal.Person{ID: m.id(), Name: p.name, Client: p.client}
		m.people[p.name] = v
		out = append(out, v)
	}
	return out
}

func inch(v float64) journal.Field[units.Length] {
	return journal.Of(units.LengthOf(v, units.Inch))
}

// makeFlies ties the flies and lays them into three boxes.
func (m *maker) makeFlies() []journal.Record {
	type f struct {
		key  string
		in   float64
		sil  journal.Silhouette
		tone journal.Tone
		hot  string
		hook string
		bld  string
		box  int
	}
	boxes := []journal.Box{
		{ID: m.id(), Name: "Dusk box", Use: "day and dusk"},
		{ID: m.id(), Name: "Night box", Use: "night"},
		{ID: m.id(), Name: "Surface box", Use: "surface"},
	}
	var out []journal.Record
	for _, v := range []f{
		{"half pale", 0.5, journal.Full, journal.LightTone, "", "single", "hook", 0},
		{"half dark", 0.5, journal.Slim, journal.DarkTone, "orange", "double", "hook", 0},
		{"small slim", 0.75, journal.Slim, journal.DarkTone, "orange", "double", "hook", 0},
		{"small medium", 0.75, journal.MediumBulk, journal.MediumTone, "green", "double", "hook", 0},
		{"inch slim", 1, journal.Slim, journal.DarkTone, "", "double", "hook", 1},
		{"inch full", 1, journal.Full, journal.DarkTone, "", "double", "hook", 1},
		{"inch grey", 1, journal.MediumBulk, journal.MediumTone, "", "double", "hook", 1},
		{"inch half slim", 1.5, journal.Slim, journal.DarkTone, "", "treble", "tube", 1},
		{"two slim", 2, journal.Slim, journal.DarkTone, "", "stinger", "articulated shank", 1},
		{"two pale", 2, journal.MediumBulk, journal.LightTone, "", "stinger", "articulated shank", 1},
		{"three long", 3, journal.Slim, journal.DarkTone, "", "treble", "tube", 1},
		{"surface", 1.5, journal.Full, journal.DarkTone, "", "treble", "surface", 2},
	} {
		d := journal.Dress{Length: inch(v.in), Silhouette: journal.Of(v.sil), Tone: journal.Of(v.tone), Hook: journal.Of(v.hook), Built: journal.Of(v.bld), Barbless: journal.Of(true)}
		if v.hot != "" {
			d.HotSpot = journal.Of(v.hot)
		} else {
			d.HotSpot = journal.None[string]()
		}
		fly := journal.Fly{ID: m.id(), Dresses: []journal.Dress{d}}
		m.flies[v.key] = fly
		boxes[v.box].Flies = append(boxes[v.box].Flies, fly.ID)
		out = append(out, fly)
	}
	for _, b := range boxes {
		out = append(out, b)
	}
	return out
}

// makeRules writes the house rules most night fishers start from; they are
// common practice without a source, and marked so.
func (m *maker) makeRules() []journal.Record {
	return []journal.Record{
		journal.HouseRule{ID: m.id(), Words: "Under 1 inch until the trees are grey", AtGrey: "before", Max: inch(1), Practice: true},
		journal.HouseRule{ID: m.id(), Words: "1 inch and over once the trees are grey", AtGrey: "after", Min: inch(1), Practice: true},
		journal.HouseRule{ID: m.id(), Words: "By day a light fly on the dropper, a dark one on the point", AtGrey: "before", Position: journal.Of(1), Tones: []journal.Tone{journal.LightTone, journal.MediumTone}, Practice: true},
		journal.HouseRule{ID: m.id(), Words: "At night slim on the point, full on the dropper", AtGrey: "after", Position: journal.Of(0), Silhouettes: []journal.Silhouette{journal.Slim}, Practice: true},
	}
}
