package journaltest

import (
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
)

func (w *World) fly(id journal.ID) journal.Fly {
	f := journal.Fly{ID: id, Label: w.text()}
	from := journal.Date{}
	for range 1 + w.Rand.IntN(3) {
		f.Dresses = append(f.Dresses, journal.Dress{
			From:       from,
			Length:     field(w, w.length(0.01, 0.1)),
			Silhouette: field(w, pick(w, journal.Silhouettes)),
			Tone:       field(w, pick(w, journal.Tones)),
			HotSpot:    field(w, "orange"),
			Hook:       field(w, pick(w, journal.Hooks)),
			Barbless:   field(w, w.yes()),
			Built:      field(w, pick(w, journal.Dressings)),
			Note:       w.text(),
		})
		if from.IsZero() {
			from = w.evening()
		}
		from = from.Add(1 + w.Rand.IntN(300))
	}
	if w.yes() {
		f.Retired = from
	}
	return f
}

func (w *World) rule(id journal.ID) journal.HouseRule {
	r := journal.HouseRule{
		ID: id, Words: w.text(),
		Min: field(w, w.length(0.01, 0.03)), Max: field(w, w.length(0.04, 0.1)),
		Silhouettes: []journal.Silhouette{pick(w, journal.Silhouettes)}, Tones: []journal.Tone{pick(w, journal.Tones)},
		Position: field(w, w.Rand.IntN(journal.MaxFlies)), Practice: w.yes(),
	}
	if w.yes() { // by lux or by the trees, not by both
		r.Dark, r.Light = field(w, w.lux(0, 0.1)), field(w, w.lux(0.2, 100))
	} else {
		r.AtGrey = pick(w, []string{"", "before", "after"})
	}
	return r
}

func (w *World) setup() journal.Setup {
	s := journal.Setup{
		Line:   field(w, journal.Line{Kind: pick(w, journal.LineKinds), Sink: field(w, w.between(0, 8))}),
		Leader: field(w, w.length(1, 5)),
	}
	for i := range w.Rand.IntN(journal.MaxFlies + 1) {
		m := journal.Mounted{Position: i}
		if len(w.Flies) > 0 {
			m.Fly = field(w, pick(w, w.Flies))
		}
		s.Flies = append(s.Flies, m)
	}
	s.Surface = len(s.Flies) < 2 && w.yes()
	return s
}

func (w *World) series(id journal.ID) journal.Series {
	s := journal.Series{ID: id, Station: w.text(), What: pick(w, journal.SeriesKinds), Unit: "m", Datum: w.text()}
	if len(w.Files) > 0 {
		s.Source = pick(w, w.Files)
	}
	at := w.instant()
	for range w.Rand.IntN(100) {
		at = at.Add(15 * time.Minute)
		s.Points = append(s.Points, journal.Reading{At: at, Value: field(w, w.between(-1, 4)), Flag: pick(w, []string{"", "estimated"})})
	}
	return s
}

func (w *World) track(id journal.ID) journal.Track {
	t := journal.Track{ID: id}
	if len(w.Files) > 0 {
		t.Source = pick(w, w.Files)
	}
	if len(w.Trips) > 0 && w.yes() {
		trip := pick(w, w.Trips)
		t.Trip = journal.Of(trip.ID)
		if len(trip.Rods) > 0 {
			t.Rod = field(w, pick(w, trip.Rods).ID)
		}
	}
	at := w.instant()
	for range w.Rand.IntN(100) {
		at = at.Add(time.Second)
		f := journal.TrackFix{At: at, Place: w.place(), Err: field(w, units.Metres(w.between(1, 30)))}
		if w.Rand.IntN(10) == 0 {
			f.At = time.Time{}
		}
		t.Fixes = append(t.Fixes, f)
	}
	return t
}
