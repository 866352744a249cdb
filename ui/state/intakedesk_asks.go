package state

import (
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/ui/words"
)

// IntakeAsk is something to answer, once for the batch, as a window shows it: by choices, or
// by a button that leads on.
type IntakeAsk struct {
	ID      string // rod, rods, zone, night; gauge or columns with a colon and the path of the file
	Says    []string
	Choices []Choice
	Value   string
	Button  string
	Open    bool // it waits for an answer
}

// Asks lists what was asked and what was answered: whose track, which zone, which night, who
// fished, which columns.
func (k *IntakeDesk) Asks() (out []IntakeAsk) {
	if len(k.files) == 0 {
		return nil
	}
	if a, ok := k.askNight(); ok {
		out = append(out, a)
	}
	b, _ := k.Batch()
	if b == nil {
		return out
	}
	qs, lines := k.Questions()
	asked := func(kind intake.QuestionKind) int {
		return slices.IndexFunc(qs, func(q intake.Question) bool { return q.Kind == kind })
	}
	if a, ok := k.askRod(b); ok {
		if i := asked(intake.WhoseTrack); i >= 0 {
			a.Says, a.Open = lines[i], true
		}
		out = append(out, a)
	}
	if i := asked(intake.NoRods); i >= 0 {
		out = append(out, IntakeAsk{ID: "rods", Says: lines[i], Button: words.WhoFishedButton(), Open: true})
	}
	if i := asked(intake.WhichZone); i >= 0 || k.order.Zone != nil {
		a := IntakeAsk{ID: "zone", Choices: zoneChoices(words.ZoneOfNight(b.Log.Trip.Zone), "UTC"), Says: []string{words.ZoneAnswered()}}
		if i >= 0 {
			a.Says = lines[i]
		}
		if k.order.Zone != nil {
			a.Value = k.order.Zone.String()
		}
		out = append(out, a)
	}
	if k.d.album != nil && slices.ContainsFunc(k.files, func(f *intake.File) bool { return f.Photo != nil }) {
		a := IntakeAsk{ID: "copied", Says: []string{words.OriginalsLabel()}, Choices: []Choice{{"", words.OriginalsLinked()}, {keepCopy, words.OriginalsCopied()}}}
		if k.order.Copied {
			a.Value = keepCopy
		}
		out = append(out, a)
	}
	for i, s := range b.Sources {
		f := s.File
		q := slices.IndexFunc(qs, func(q intake.Question) bool {
			return (q.Kind == intake.GaugeZone || q.Kind == intake.Columns) && slices.Contains(q.Sources, i)
		})
		opts := k.reads[f.Path]
		switch {
		case q >= 0 && qs[q].Kind == intake.GaugeZone, opts.Zone != nil:
			a := IntakeAsk{ID: "gauge:" + f.Path, Choices: zoneChoices(words.ZoneAssumed(), b.Log.Trip.Zone), Says: []string{words.GaugeZoneAnswered(f.Name)}}
			if q >= 0 {
				a.Says, a.Open = lines[q], true
			}
			if opts.Zone != nil {
				a.Value = opts.Zone.String()
			}
			out = append(out, a)
		case q >= 0:
			out = append(out, IntakeAsk{ID: "columns:" + f.Path, Says: lines[q], Button: words.ColumnsButton(), Open: true})
		}
	}
	return out
}

// askNight offers the nights that hold a moment of the files, where there is more than one
// or none.
func (k *IntakeDesk) askNight() (IntakeAsk, bool) {
	of := k.Nights()
	trip := k.Trip()
	if len(of) == 1 && of[0].ID == trip {
		return IntakeAsk{}, false
	}
	if len(of) == 0 { // a gauge alone, or no night of theirs
		if k.moment().IsZero() && !trip.IsZero() {
			of, _ = k.d.j.Trips()
			of = of[:min(len(of), 20)]
		} else {
			return IntakeAsk{ID: "night", Says: words.IntakeNoNight()[:1], Button: words.NewNightForFiles(), Open: true}, true
		}
	}
	a := IntakeAsk{ID: "night", Says: []string{words.WhichNight()}, Open: trip.IsZero(), Choices: []Choice{{"", words.ChooseNightLabel()}}}
	if !trip.IsZero() {
		a.Value = trip.String()
		if !slices.ContainsFunc(of, func(t journal.Trip) bool { return t.ID == trip }) {
			if t, ok := k.trips()[trip]; ok {
				of = append(of, t)
			}
		}
	}
	for _, t := range of {
		name := ""
		if set, err := k.d.loader.Setting(t); err == nil {
			name = set.Beat.Name
		}
		a.Choices = append(a.Choices, Choice{t.ID.String(), words.NightChoice(t, name)})
	}
	return a, true
}

// askRod offers the rods of the night, where there are several and a track.
func (k *IntakeDesk) askRod(b *intake.Batch) (IntakeAsk, bool) {
	rods := b.Log.Trip.Rods
	if len(rods) < 2 || !slices.ContainsFunc(b.Sources, func(s intake.Source) bool {
		return s.File.Fault == nil && (s.File.Kind == intake.TrackFile || s.File.Photo != nil)
	}) {
		return IntakeAsk{}, false
	}
	a := IntakeAsk{ID: "rod", Says: []string{words.WhoseTrackLabel()}, Choices: []Choice{{"", words.NobodyChosen()}}}
	if !b.Rod.IsZero() {
		a.Value = b.Rod.String()
	}
	for _, r := range rods {
		p, err := journal.One[journal.Person](k.d.j, r.Person)
		if err == nil {
			a.Choices = append(a.Choices, Choice{r.ID.String(), p.Name})
		}
	}
	return a, true
}

// moment is the first moment of the files; zero if none tells one.
func (k *IntakeDesk) moment() (first time.Time) {
	for _, f := range k.files {
		at := time.Time{}
		switch {
		case len(f.Fixes) > 0:
			at = f.Fixes[0].At
		case f.Photo != nil:
			at = intake.ReadClock(f.Photo, k.zone(), k.order.Zone).At
		}
		if !at.IsZero() && (first.IsZero() || at.Before(first)) {
			first = at
		}
	}
	return first
}

// zoneChoices are the zones a clock is likely set to, after what is taken without an answer.
func zoneChoices(first, second string) []Choice {
	names := []string{second}
	for _, h := range []string{"-1", "-2", "-3", "-4", "-5", "-6", "-7", "-8", "-9", "-10", "-11", "-12", "-13", "+1", "+2", "+3", "+4", "+5", "+6", "+7", "+8", "+9", "+10", "+11"} {
		names = append(names, "Etc/GMT"+h)
	}
	out := []Choice{{"", first}}
	for _, n := range names {
		out = append(out, Choice{n, words.ZoneChoice(n)})
	}
	return out
}

// Answer answers something asked; read lists the files that have to be read again for it.
func (k *IntakeDesk) Answer(id, value string) (read []string) {
	ref := func() (out journal.ID) {
		_ = out.UnmarshalText([]byte(value)) // none: not answered
		return out
	}
	what, path, _ := strings.Cut(id, ":")
	switch what {
	case "night":
		if to := ref(); !to.IsZero() && to != k.Trip() {
			k.ChooseNight(to)
		}
	case "rod":
		k.GiveTo(ref())
	case "copied":
		k.SetCopied(value == keepCopy)
	case "zone":
		k.SetZone(zoneNamed(value))
	case "gauge":
		o := k.reads[path]
		o.Zone = zoneNamed(value)
		k.reads[path] = o
		return []string{path}
	}
	return nil
}

// zoneNamed is the zone of a name, nil without one.
func zoneNamed(name string) *time.Location {
	if name == "" {
		return nil
	}
	loc, err := time.LoadLocation(name)
	if err != nil {
		return nil
	}
	return loc
}

// NightCard is the card of a new night for the files, its evening theirs.
func (k *IntakeDesk) NightCard() (*Card, error) {
	c, err := k.d.NewNightCard()
	if err != nil {
		return nil, err
	}
	if at := k.moment(); !at.IsZero() {
		c.Set("evening", printDate(journal.EveningOf(at, k.zone())))
	}
	return c, nil
}
