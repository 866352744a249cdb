package timeline

import (
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline/light"
	"gloamline/timeline/sky"
)

// Loader builds nights from a journal. It remembers the light at each logged
// moment of trees going grey, trip by trip, and forgets what a change touches, so that
// the threshold of a beat costs one reading of its nights and nothing after. Like its
// journal it is used from one goroutine.
type Loader struct {
	j *journal.Journal
	// Keep holds each night that is fetched for its logged moments until Night asks for it, so
	// that whoever asks for every threshold and then for every night fetches them once.
	Keep bool

	nights map[journal.ID]journal.Sealed
	logged map[journal.ID][]light.LoggedGrey // by trip
	gauges []journal.Series                  // of level and temperature; nil: not read yet
}

// NewLoader returns a loader that follows the changes of the journal.
func NewLoader(j *journal.Journal) *Loader {
	l := &Loader{j: j, nights: map[journal.ID]journal.Sealed{}, logged: map[journal.ID][]light.LoggedGrey{}}
	j.Subscribe(l.forget)
	return l
}

// Night fetches a night; see Keep.
func (l *Loader) Night(t journal.Trip) (journal.Sealed, error) {
	if n, ok := l.nights[t.ID]; ok {
		delete(l.nights, t.ID)
		return n, nil
	}
	return l.j.Sealed(t)
}

// Load builds one night from the journal, once. Whoever builds many keeps a Loader.
func Load(j *journal.Journal, trip journal.ID) (*Night, error) {
	l := &Loader{j: j, logged: map[journal.ID][]light.LoggedGrey{}}
	return l.Load(trip)
}

// Load builds the night of a trip as the journal stands.
func (l *Loader) Load(trip journal.ID) (*Night, error) {
	log, err := l.j.Night(trip)
	if err != nil {
		return nil, err
	}
	set, err := l.Setting(log.Trip)
	if err != nil {
		return nil, err
	}
	return Build(log, set)
}

// Setting gathers what a night needs besides its log: the beat, the flies and the
// people, each as they were that evening.
func (l *Loader) Setting(t journal.Trip) (Setting, error) {
	beat, err := journal.One[journal.Beat](l.j, t.Beat)
	if err != nil {
		return Setting{}, err
	}
	set := Setting{
		Beat:   beat.On(t.Evening),
		Flies:  map[journal.ID]journal.Fly{},
		People: map[journal.ID]journal.Person{},
	}
	flies, err := journal.All[journal.Fly](l.j)
	if err != nil {
		return Setting{}, err
	}
	for _, f := range flies {
		set.Flies[f.ID] = f
	}
	people, err := journal.All[journal.Person](l.j)
	if err != nil {
		return Setting{}, err
	}
	for _, p := range people {
		set.People[p.ID] = p
	}
	if set.Rules, err = journal.All[journal.HouseRule](l.j); err != nil {
		return Setting{}, err
	}
	if set.Gauges, err = l.recorded(); err != nil {
		return Setting{}, err
	}
	set.Grey, err = l.Threshold(beat)
	return set, err
}

// recorded returns what gauges recorded of the level and of the water's temperature. A gauge's file
// is long, so it is read once.
func (l *Loader) recorded() ([]journal.Series, error) {
	if l.gauges != nil {
		return l.gauges, nil
	}
	all, err := journal.All[journal.Series](l.j)
	if err != nil {
		return nil, err
	}
	l.gauges = []journal.Series{}
	for _, s := range all {
		if s.What == levelSeries || s.What == warmthSeries {
			l.gauges = append(l.gauges, s)
		}
	}
	return l.gauges, nil
}

// Threshold returns the light at which the trees of a beat go grey: the figure
// settled by hand, else the fit to the moments logged on the beat once there are
// enough of them (light.Calibrate says how many), else the default. Own is true for
// the first two.
func (l *Loader) Threshold(b journal.Beat) (Threshold, error) {
	moments, err := l.moments(b)
	if err != nil {
		return Threshold{}, err
	}
	if lux, ok := b.Grey.Get(); ok {
		return Threshold{Lux: lux, Logs: len(moments), Own: true, Hand: true}, nil
	}
	fit := light.Calibrate(moments)
	t := Threshold{Lux: fit.Lux, Logs: fit.Logged, Own: fit.Own}
	if fit.Own {
		t.Logs = fit.Used
	}
	return t, nil
}

// moments returns the light at every logged moment on the beat, oldest night first.
func (l *Loader) moments(b journal.Beat) ([]light.LoggedGrey, error) {
	trips, err := l.j.Trips()
	if err != nil {
		return nil, err
	}
	trips = slices.DeleteFunc(trips, func(t journal.Trip) bool { return t.Beat != b.ID })
	if err := l.ReadMoments(l.Unread(trips), map[journal.ID]journal.Beat{b.ID: b}); err != nil {
		return nil, err
	}
	var out []light.LoggedGrey
	for _, t := range slices.Backward(trips) {
		out = append(out, l.logged[t.ID]...)
	}
	return out, nil
}

// Unread returns the trips whose logged moments are not known yet.
func (l *Loader) Unread(trips []journal.Trip) []journal.Trip {
	var out []journal.Trip
	for _, t := range trips {
		if _, ok := l.logged[t.ID]; !ok {
			out = append(out, t)
		}
	}
	return out
}

// ReadMoments reads the logged moments of trips, so that Threshold need not: nights are fetched
// one after another and read side by side, and of most no more than what was noted of the
// sky. beats are those of the trips.
func (l *Loader) ReadMoments(trips []journal.Trip, beats map[journal.ID]journal.Beat) error {
	fetch := func(t journal.Trip) (journal.Sealed, error) {
		n, err := l.j.Sealed(t)
		if l.Keep && err == nil {
			l.nights[t.ID] = n
		}
		return n, err
	}
	found, faults, err := abreast(trips, fetch, func(t journal.Trip, night journal.Sealed) ([]light.LoggedGrey, error) {
		if _, ok := beats[t.Beat]; !ok {
			return nil, nil // no beat, no threshold
		}
		return momentsOf(night, beats[t.Beat].On(t.Evening))
	})
	if err != nil {
		return err
	}
	for i, t := range trips {
		if faults[i] != nil {
			return faults[i]
		}
		l.logged[t.ID] = found[i]
	}
	return nil
}

// momentsOf opens a night only if its sky says that the trees went grey.
func momentsOf(night journal.Sealed, beat geo.Beat) ([]light.LoggedGrey, error) {
	any, err := night.Any(journal.KindSky, func(r journal.Record) bool { return r.(journal.Sky).TreesGrey })
	if !any || err != nil {
		return nil, err
	}
	log, err := night.Open()
	if err != nil {
		return nil, err
	}
	return loggedGrey(log, beat)
}

// loggedGrey returns the open-sky light at the moments of one night at which the
// trees were logged grey, under the sky as noted.
func loggedGrey(log *journal.Log, beat geo.Beat) ([]light.LoggedGrey, error) {
	skies := pick[journal.Sky](inOrder(log))
	var at []time.Time
	for _, s := range skies {
		if s.Entry.TreesGrey {
			at = append(at, s.At.Mid())
		}
	}
	if len(at) == 0 {
		return nil, nil
	}
	place, err := placeOf(beat)
	if err != nil {
		return nil, err
	}
	noted := weather(skies)
	out := make([]light.LoggedGrey, len(at))
	for i, t := range at {
		// Two minutes hold the moment: the rest of the night is not needed.
		minute := sky.NewSpan(t.Add(-Step), t.Add(Step)).Grid(place, Step)
		trace := light.NewOpenSky(minute, noted).Reference()
		out[i] = light.LoggedGrey{Lux: trace.At(t).Lux, CloudNoted: noted.Noted()}
	}
	return out, nil
}

// forget drops what a change may have altered.
func (l *Loader) forget(c journal.Change) {
	for _, e := range c.Edits {
		r := e.Ref()
		delete(l.nights, r.ID)
		delete(l.nights, r.Trip)
		switch {
		case r.Kind == journal.KindBeat:
			clear(l.logged)
		case r.Kind == journal.KindSeries:
			l.gauges = nil
		case r.Kind == journal.KindTrip:
			delete(l.logged, r.ID)
		case !r.Trip.IsZero():
			delete(l.logged, r.Trip)
		}
	}
}
