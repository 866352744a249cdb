package export

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// Columns heads the columns of CSV: the unit of each figure stands in its name.
var Columns = []string{"night", "kind", "clock", "from_utc", "to_utc", "until_utc", "rod", "pool", "bank", "fish_no", "touch", "species", "class",
	"length_mm", "length_judged", "weight_g", "weight_judged", "fate", "fly", "light_lx", "light_lx_low", "light_lx_high", "light",
	"line", "leader_m", "flies", "speed", "depth", "cloud_eighths", "moon", "trees_grey", "wind_beaufort", "air_celsius",
	"level_m", "trend", "clarity", "water_celsius", "end_why", "latitude", "longitude", "note"}

// CSV writes every entry of a night in its order, one a row, as RFC 4180 has it: a head
// line, commas, CR LF, quotes where needed; UTF-8 without a byte order mark. Plans,
// photographs and private notes are left out.
func CSV(out io.Writer, n *timeline.Night, show Show) error {
	s := sheet{n: n, show: show}
	w := csv.NewWriter(out)
	w.UseCRLF = true
	if err := w.Write(Columns); err != nil {
		return err
	}
	for _, e := range n.Log.Sorted() {
		row, ok := s.row(e)
		if !ok {
			continue
		}
		cells := make([]string, len(Columns))
		for name, v := range row {
			cells[slices.Index(Columns, name)] = v
		}
		if err := w.Write(cells); err != nil {
			return err
		}
	}
	w.Flush()
	return w.Error()
}

type row map[string]string

// put sets a cell if the value is known; a value known to be none says so.
func put[T any](r row, name string, f journal.Field[T], print func(T) string) {
	if v, ok := f.Get(); ok {
		r[name] = print(v)
	} else if f.IsNone() {
		r[name] = "none"
	}
}

func text[T ~string](v T) string  { return string(v) }
func yes(v bool) string           { return strconv.FormatBool(v) }
func whole(v int) string          { return strconv.Itoa(v) }
func num(v float64, d int) string { return strconv.FormatFloat(v, 'f', d, 64) }

func (s sheet) row(e journal.Entry) (row, bool) {
	h, at := e.Base(), s.n.Log.At(e)
	r := row{"night": s.n.Log.Trip.Evening.String(), "kind": string(e.Ref().Kind), "clock": words.Clock(s.at(at.Mid()), s.n.Zone),
		"from_utc": s.utc(at.Lo), "to_utc": s.utc(at.Hi), "rod": s.rod(h.Rod), "note": s.note(h)}
	switch e := e.(type) {
	case journal.Run:
		_, to := s.n.Log.RunSpan(e)
		r["until_utc"] = s.utc(to.Mid())
		s.putPool(r, journal.Of(e.Pool))
		put(r, "bank", e.Bank, text)
		if at, ok := e.Enter.Get(); ok && s.show.Places == ExactPlaces {
			r["latitude"], r["longitude"] = num(float64(at.Lat), 7), num(float64(at.Lon), 7)
		}
	case journal.Contact:
		s.contact(r, e)
	case journal.Rig:
		put(r, "line", e.Line, func(l journal.Line) string { return string(l.Kind) })
		if l, ok := e.Leader.Get(); ok {
			r["leader_m"] = num(float64(l.M), 2)
		}
		r["flies"] = s.flies(e)
	case journal.Way:
		put(r, "speed", e.Speed, text)
		put(r, "depth", e.Depth, text)
	case journal.Sky:
		put(r, "cloud_eighths", e.Cloud, whole)
		put(r, "moon", e.Moon, text)
		r["trees_grey"] = yes(e.TreesGrey)
	case journal.Weather:
		put(r, "wind_beaufort", e.Wind, whole)
		if a, ok := e.Air.Get(); ok {
			r["air_celsius"] = num(float64(a.C), 1)
		}
	case journal.Water:
		if l, ok := e.Level.Get(); ok {
			r["level_m"] = num(float64(l.M), 3)
		}
		put(r, "trend", e.Trend, text)
		put(r, "clarity", e.Clarity, text)
		if t, ok := e.Temp.Get(); ok {
			r["water_celsius"] = num(float64(t.C), 1)
		}
	case journal.Ready:
		s.putPool(r, journal.Of(e.Pool))
	case journal.Break:
		if u, ok := e.Until.Get(); ok {
			r["until_utc"] = s.utc(s.n.Log.Spread(u).Mid())
		}
	case journal.End:
		put(r, "end_why", e.Why, text)
	case journal.Note:
		if e.Private || !s.show.Notes {
			return nil, false
		}
		s.putPool(r, e.Pool)
	default: // plans were meant, not done; photographs are no text
		return nil, false
	}
	return r, true
}

func (s sheet) putPool(r row, f journal.Field[journal.ID]) {
	if p, ok := s.poolOf(f.Or(journal.ID{})); ok {
		r["pool"] = s.pool(p)
	} else if f.IsNone() {
		r["pool"] = "none"
	}
}

// contact fills in a fish with what the night knows of it.
func (s sheet) contact(r row, e journal.Contact) {
	i := slices.IndexFunc(s.n.Contacts, func(k timeline.Contact) bool { return k.ID == e.ID })
	if i < 0 {
		return
	}
	k := s.n.Contacts[i]
	r["fish_no"], r["touch"] = whole(k.N), string(k.Touch)
	if k.HasPool {
		r["pool"] = s.pool(k.Pool)
	}
	put(r, "species", k.Species, text)
	put(r, "class", k.Class, text)
	put(r, "fate", k.Fate, text)
	if l, ok := k.Length.Get(); ok {
		r["length_mm"], r["length_judged"] = num(float64(l.M)*1000, 0), yes(k.ByEye)
	}
	if w, ok := k.Weight.Get(); ok {
		r["weight_g"], r["weight_judged"] = num(float64(w.G), 0), yes(k.Estimated)
	}
	if k.HasFly {
		r["fly"] = words.FlyOn(withoutNote(k.Fly), s.show.Prefs)
	}
	r["light"] = words.RungName(k.Rung, s.show.Prefs)
	if s.show.Places != NoPlaces {
		for name, v := range map[string]float64{"light_lx": float64(k.Light.Lux), "light_lx_low": float64(k.Light.Lo), "light_lx_high": float64(k.Light.Hi)} {
			r[name] = strconv.FormatFloat(sig2(v), 'g', -1, 64)
		}
	}
	if at, ok := s.where(k); ok {
		r["latitude"], r["longitude"] = num(float64(at.Lat), 7), num(float64(at.Lon), 7)
	}
}

func withoutNote(f timeline.FlyOn) timeline.FlyOn {
	f.Dress.Note = ""
	return f
}

// flies describes what hung on a leader, point first.
func (s sheet) flies(e journal.Rig) string {
	out := ""
	for _, r := range s.n.Rods {
		for _, span := range r.Rigs {
			if span.Rig.ID != e.ID {
				continue
			}
			for i, f := range span.Flies {
				if i > 0 {
					out += "; "
				}
				out += words.FlyOn(withoutNote(f), s.show.Prefs)
			}
		}
	}
	return out
}

// ReturnsCSV writes a year's returns, one line of a month a row, nil months too.
func ReturnsCSV(out io.Writer, r timeline.Returns) error {
	w := csv.NewWriter(out)
	w.UseCRLF = true
	head := []string{"year", "river", "month", "species", "class", "number", "kept", "kept_weighed_g", "kept_weighed_number", "kept_judged_g", "kept_judged_number",
		"returned", "returned_weighed_g", "returned_weighed_number", "returned_judged_g", "returned_judged_number", "fate_not_noted", "method", "days", "rod_days", "nights", "rod_hours"}
	if err := w.Write(head); err != nil {
		return err
	}
	for _, river := range r.Rivers {
		for i, m := range river.Months {
			lines := m.Lines
			if m.Nil() {
				lines = []timeline.ReturnLine{{}}
			}
			for _, l := range lines {
				cells := []string{whole(r.Year), river.River.Name, whole(i + 1), string(l.Species), l.Class, whole(l.Number())}
				for _, x := range []timeline.Landings{l.Kept, l.Returned} {
					cells = append(cells, whole(x.Number), num(float64(x.Weighed), 0), whole(x.WeighedN), num(float64(x.Estimated), 0), whole(x.EstimatedN))
				}
				cells = append(cells, whole(l.Unknown.Number), "fly", whole(m.Days), whole(m.RodDays), whole(m.Nights), num(m.Hours.Hours(), 2))
				if len(cells) != len(head) {
					return fmt.Errorf("a row of %d cells under %d heads", len(cells), len(head))
				}
				if err := w.Write(cells); err != nil {
					return err
				}
			}
		}
	}
	w.Flush()
	return w.Error()
}
