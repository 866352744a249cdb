package state

import (
	"slices"
	"strings"
	"time"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/geo/zone"
	"gloamline/journal"
	"gloamline/ui/words"
)

// PutAt places the beat by what was typed or pasted, in any notation that package position
// reads, and gives it the time zone found there, unless one was chosen by hand.
func (b *BeatDesk) PutAt(text string) error {
	at, err := readPlace(text)
	if err != nil {
		return err
	}
	return b.putAt(at, "place")
}

func (b *BeatDesk) putAt(at geo.Place, about string) error {
	if b.top == nil {
		return nil
	}
	dr := b.top
	found := zonesAt(at)
	err := b.do(about, func(d draft.Draft) (draft.Draft, error) {
		d, err := d.Place(at)
		if err == nil && len(found) > 0 && (d.Beat.Zone == "" || d.Beat.Zone == dr.found) {
			d, dr.found = d.Zone(found[0]), found[0]
		}
		return d, err
	})
	if err == nil {
		b.d.act(func() {
			if d := b.now(); len(d.Beat.Pools)+len(d.Beat.Features) == 0 {
				b.view.Centre = geo.Point{}
			}
			b.tell()
		})
	}
	return err
}

// zonesAt lists the zones at a place, that of the land it lies in first; none at sea.
func zonesAt(at geo.Place) []string {
	if at.IsZero() || at.Check() != nil {
		return nil
	}
	a, err := zone.At(float64(at.Lat), float64(at.Lon))
	if err != nil {
		return nil
	}
	return append([]string{a.Zone}, a.Others...)
}

// zoneChoices are the zones at and near the beat, and the one it has.
func (b *BeatDesk) zoneChoices() []Choice {
	d := b.now()
	list := zonesAt(d.Beat.Place())
	if z := d.Beat.Zone; z != "" && !slices.Contains(list, z) {
		list = append(list, z)
	}
	var out []Choice
	for _, z := range list {
		out = append(out, Choice{z, z})
	}
	return out
}

// zoneFault says why a name is no time zone, nil if it is one.
func (b *BeatDesk) zoneFault(name string) error {
	name = strings.TrimSpace(name)
	if _, err := time.LoadLocation(name); err != nil || name == "Local" || name == "" {
		return words.NoSuchZone(name)
	}
	return nil
}

// setZone chooses a zone by hand.
func (b *BeatDesk) setZone(name string) error {
	return b.do("zone", func(d draft.Draft) (draft.Draft, error) { return d.Zone(strings.TrimSpace(name)), nil })
}

// zoneOf is a zone by name, UTC where it is not known.
func zoneOf(name string) *time.Location {
	if loc, err := time.LoadLocation(name); err == nil && name != "Local" {
		return loc
	}
	return time.UTC
}

// call names the beat and its river; a river that another beat lies on keeps its identity.
func (b *BeatDesk) call(about, beat, river string) error {
	known := map[string]geo.ID{}
	beats, _ := journal.All[journal.Beat](b.d.j)
	for _, r := range beats {
		if s := latest(r); !s.River.ID.IsZero() && r.ID != b.now().Beat.ID {
			known[strings.ToLower(s.River.Name)] = s.River.ID
		}
	}
	return b.do(about, func(d draft.Draft) (draft.Draft, error) {
		d = d.Call(beat, river)
		switch id, ok := known[strings.ToLower(strings.TrimSpace(river))]; {
		case ok:
			d.Beat.River.ID = id
		case strings.TrimSpace(river) == "":
			d.Beat.River.ID = geo.ID{}
		}
		return d, nil
	})
}

// rivers are the names of the rivers of other beats.
func (b *BeatDesk) rivers() []Choice {
	var out []Choice
	beats, _ := journal.All[journal.Beat](b.d.j)
	for _, r := range beats {
		name := latest(r).River.Name
		if name != "" && !slices.ContainsFunc(out, func(c Choice) bool { return c.Value == name }) {
			out = append(out, Choice{name, name})
		}
	}
	return out
}
