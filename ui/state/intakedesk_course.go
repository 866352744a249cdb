package state

import (
	"math"
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/journal/gauge"
	"gloamline/journal/intake"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// gaugeHere is the series of levels that the room shows: that of the file or the proposal
// picked out, else the first proposed, else the first that the journal has of the night.
func (k *IntakeDesk) gaugeHere(b *intake.Batch) (journal.Series, bool) {
	var found []journal.Series
	for _, p := range b.Proposals {
		s, ok := p.Record.(journal.Series)
		switch {
		case !ok || s.What != "level":
		case p.Record.Ref() == k.picked || p.Source == k.file:
			return b.Joined(s), true
		default:
			found = append(found, b.Joined(s))
		}
	}
	if len(found) > 0 {
		return found[0], true
	}
	n, _ := k.Laid()
	if n == nil {
		return journal.Series{}, false
	}
	set, err := k.setting(b)
	if err != nil || len(n.Gauges) == 0 {
		return journal.Series{}, false
	}
	i := slices.IndexFunc(set.Gauges, func(s journal.Series) bool {
		return s.What == "level" && s.Station == n.Gauges[0].Station && s.Datum == n.Gauges[0].Datum
	})
	if i < 0 {
		return journal.Series{}, false
	}
	return set.Gauges[i], true
}

// Station is the gauge whose course is shown; false if none is.
func (k *IntakeDesk) Station() (string, bool) {
	b, _ := k.Batch()
	if b == nil {
		return "", false
	}
	s, ok := k.gaugeHere(b)
	return s.Station, ok
}

// Settings are those of a gauge, the common ones if nobody set any.
func (k *IntakeDesk) Settings(station string) gauge.Settings {
	if s, ok := k.order.Gauges[station]; ok {
		return s
	}
	return gauge.Common()
}

// Course is the course of the gauge for the night, and how it stood at the cursor; false if
// there is no gauge.
func (k *IntakeDesk) Course() (scene.CourseView, bool) {
	b, _ := k.Batch()
	n, _ := k.Laid()
	if b == nil || n == nil {
		return scene.CourseView{}, false
	}
	s, ok := k.gaugeHere(b)
	if !ok {
		return scene.CourseView{}, false
	}
	c := b.Curve(s)
	at := k.cursor
	if at.IsZero() {
		at = n.From.Add(n.To.Sub(n.From) / 2)
	}
	words := words.IntakeView{Batch: b, Zone: n.Zone, Prefs: k.d.prefs}
	return course(c, n, at, s.Station, k.Settings(s.Station), k.d.prefs.Level, words), true
}

// course shows the readings from half a day before the peak, or a day before the night, to
// its end.
func course(c *gauge.Curve, n *timeline.Night, at time.Time, station string, set gauge.Settings, unit units.LengthUnit, w words.IntakeView) scene.CourseView {
	if unit == "" || !unit.Known() {
		unit = units.Metre
	}
	scale := float64(units.LengthOf(1, unit).M)
	state := c.At(at)
	v := scene.CourseView{Title: words.CourseTitle(station), From: n.From.Add(-24 * time.Hour), To: n.To, Night: [2]time.Time{n.From, n.To}, Cursor: at, Base: math.NaN(), Zone: n.Zone, Unit: string(unit), Says: []string{w.GaugeLine(state)}}
	if p := state.Peak; p != nil {
		v.Peak = scene.CoursePoint{At: p.At, V: float64(p.Level) / scale}
		if before := p.At.Add(-12 * time.Hour); before.Before(v.From) && n.From.Sub(before) < 10*24*time.Hour {
			v.From = before
		}
		if p.HasBase {
			v.Base = float64(p.Base) / scale
		}
	}
	pts := c.Points()
	for i, p := range pts {
		gap := i+1 < len(pts) && pts[i+1].At.Sub(p.At) > set.Gap
		v.Points = append(v.Points, scene.CoursePoint{At: p.At, V: float64(p.Level) / scale, Gap: gap})
	}
	return v
}
