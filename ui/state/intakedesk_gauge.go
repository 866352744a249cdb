package state

import (
	"encoding/json"
	"maps"
	"strings"
	"time"

	"gloamline/journal/gauge"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// GaugeKnown is what a person knows of a gauge, as texts.
type GaugeKnown struct {
	Station   string `json:"-"`
	Lag       string `json:"lag,omitempty"`  // 1h30m; empty: not known, and not used
	Base      string `json:"base,omitempty"` // 0.45 m; empty: the lowest before the rise
	Regulated bool   `json:"regulated,omitempty"`
}

// Known is what was said of the gauge whose course is shown; false if none is.
func (k *IntakeDesk) Known() (GaugeKnown, bool) {
	name, ok := k.Station()
	s := k.Settings(name)
	g := GaugeKnown{Station: name, Regulated: s.Regulated}
	if s.Lag != nil {
		g.Lag = words.LagText(*s.Lag)
	}
	if s.Base != nil {
		g.Base = units.Length{M: *s.Base, Unit: units.Metre}.String()
	}
	return g, ok
}

// SetKnown uses what is known of a gauge from now on.
func (k *IntakeDesk) SetKnown(g GaugeKnown) error {
	s, err := g.settings()
	if err == nil {
		k.SetGauge(g.Station, s)
	}
	return err
}

func (g GaugeKnown) settings() (gauge.Settings, error) {
	s := gauge.Common()
	s.Regulated = g.Regulated
	if t := strings.TrimSpace(g.Lag); t != "" {
		d, ok := words.ParseOffset(t)
		if !ok || d.Abs() > 7*24*time.Hour {
			return s, words.LagFault()
		}
		s.Lag = &d
	}
	if t := strings.TrimSpace(g.Base); t != "" {
		l, err := units.ParseLength(t, units.Metre)
		if err != nil {
			return s, err
		}
		s.Base = &l.M
	}
	return s, nil
}

// EncodeGauges writes what is known of all gauges into one text, to be remembered.
func (k *IntakeDesk) EncodeGauges() string {
	out := map[string]GaugeKnown{}
	for name, s := range k.order.Gauges {
		g := GaugeKnown{Regulated: s.Regulated}
		if s.Lag != nil {
			g.Lag = words.LagText(*s.Lag)
		}
		if s.Base != nil {
			g.Base = units.Length{M: *s.Base, Unit: units.Metre}.String()
		}
		out[name] = g
	}
	text, err := json.Marshal(out)
	if err != nil {
		return ""
	}
	return string(text)
}

// DecodeGauges takes up what EncodeGauges wrote; what cannot be read is not taken.
func (k *IntakeDesk) DecodeGauges(text string) {
	var in map[string]GaugeKnown
	if json.Unmarshal([]byte(text), &in) != nil {
		return
	}
	all := maps.Clone(k.order.Gauges)
	if all == nil {
		all = map[string]gauge.Settings{}
	}
	for name, g := range in {
		if s, err := g.settings(); err == nil {
			all[name] = s
		}
	}
	k.order.Gauges = all
	k.forget()
}
