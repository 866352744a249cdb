package season

import (
	"runtime"
	"slices"
	"sync"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// Book keeps the digests of a journal's nights, and follows its changes: only nights
// that a change touches are made anew. Like its journal it is used from one goroutine; the
// digests it hands out are not changed and may be read from any.
type Book struct {
	j       *journal.Journal
	loader  *timeline.Loader
	digests map[journal.ID]*Digest // by trip
	left    map[journal.ID]Left
	rules   []journal.HouseRule
	floods  *Floods
	cat     *catalogue
	shared  *shared // nil: to be read
	todo    *todo   // of Step; nil: to be found
}

// shared is what nights have in common.
type shared struct {
	flies  map[journal.ID]journal.Fly
	people map[journal.ID]journal.Person
	beats  map[journal.ID]journal.Beat
}

// Nights is what a season is made from.
type Nights struct {
	Digests []*Digest // the oldest evening first
	Rules   []journal.HouseRule
	Floods  *Floods // of the gauge, nil without one
	Left    []Left  // nights that could not be set in their light

	cat *catalogue // of the Rules; nil: made when needed
}

// Left is a night left out, and why. Its hours and fish are in no figure.
type Left struct {
	Trip journal.Trip
	Err  error
}

// NewBook returns a book of the journal's nights. Nothing is read yet.
func NewBook(j *journal.Journal) *Book {
	l := timeline.NewLoader(j)
	l.Keep = true
	b := &Book{j: j, loader: l, digests: map[journal.ID]*Digest{}, left: map[journal.ID]Left{}}
	j.Subscribe(b.forget)
	return b
}

// Read returns all nights. The first time it makes their digests, about a millisecond
// and a half each over the machine's cores; later only those that changes touched. tell, if
// not nil, hears how many of how many are done, from the calling goroutine. An error means
// that the journal itself could not be read.
func (b *Book) Read(tell func(done, of int)) (Nights, error) {
	trips, stale, greys, err := b.stale()
	if err != nil {
		return Nights{}, err
	}
	if err := b.make(stale, greys, tell); err != nil {
		return Nights{}, err
	}
	out := Nights{Rules: b.rules, Floods: b.floods, cat: b.cat}
	for _, t := range slices.Backward(trips) {
		if d, ok := b.digests[t.ID]; ok {
			out.Digests = append(out.Digests, d)
		} else if l, ok := b.left[t.ID]; ok {
			out.Left = append(out.Left, l)
		}
	}
	return out, nil
}

// stale returns all nights, those whose digests have to be made, and the thresholds of
// the beats.
func (b *Book) stale() (trips, stale []journal.Trip, greys map[journal.ID]timeline.Threshold, err error) {
	if b.shared == nil {
		s, err := b.readShared()
		if err != nil {
			return nil, nil, nil, err
		}
		b.shared = s
	}
	if trips, err = b.j.Trips(); err != nil {
		return nil, nil, nil, err
	}
	if err := b.loader.ReadMoments(b.loader.Unread(trips), b.shared.beats); err != nil { // of all beats at once
		return nil, nil, nil, err
	}
	greys = map[journal.ID]timeline.Threshold{}
	for id, beat := range b.shared.beats {
		if greys[id], err = b.loader.Threshold(beat); err != nil {
			return nil, nil, nil, err
		}
	}
	for _, t := range trips {
		d, made := b.digests[t.ID]
		if _, left := b.left[t.ID]; made && d.Grey == greys[t.Beat] || left {
			continue
		}
		stale = append(stale, t)
	}
	return trips, stale, greys, nil
}

func (b *Book) readShared() (*shared, error) {
	s := &shared{map[journal.ID]journal.Fly{}, map[journal.ID]journal.Person{}, map[journal.ID]journal.Beat{}}
	flies, err := journal.All[journal.Fly](b.j)
	if err != nil {
		return nil, err
	}
	for _, f := range flies {
		s.flies[f.ID] = f
	}
	people, err := journal.All[journal.Person](b.j)
	if err != nil {
		return nil, err
	}
	for _, p := range people {
		s.people[p.ID] = p
	}
	beats, err := journal.All[journal.Beat](b.j)
	if err != nil {
		return nil, err
	}
	for _, v := range beats {
		s.beats[v.ID] = v
	}
	series, err := journal.All[journal.Series](b.j)
	if err != nil {
		return nil, err
	}
	b.floods = floodsOf(series)
	if b.rules, err = journal.All[journal.HouseRule](b.j); err == nil && !b.cat.lists(b.rules) {
		b.cat = newCatalogue(b.rules)
	}
	return s, err
}

// make fetches one night after another, and reads them and sets them in their light side by side.
func (b *Book) make(trips []journal.Trip, greys map[journal.ID]timeline.Threshold, tell func(done, of int)) error {
	type job struct {
		i     int
		night journal.Sealed
	}
	extra := ruleEdges(b.rules)
	made, faults, unread := make([]*Digest, len(trips)), make([]error, len(trips)), make([]error, len(trips))
	jobs := make(chan job, 8)
	var work sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(trips)) {
		work.Go(func() {
			var slate timeline.Slate
			var knife knife
			for k := range jobs {
				log, err := k.night.Open()
				if err != nil {
					unread[k.i] = err
					continue
				}
				t := trips[k.i]
				n, err := timeline.Build(log, timeline.Setting{
					Figures: true, Slate: &slate,
					Beat: fished(b.shared.beats[t.Beat].On(t.Evening), log), Flies: b.shared.flies, People: b.shared.people, Grey: greys[t.Beat],
				})
				if err != nil {
					faults[k.i] = err
					continue
				}
				made[k.i] = knife.digest(n, extra)
				made[k.i].sheet = b.cat.sheetOf(made[k.i])
			}
		})
	}
	var fault error
	for i, t := range trips {
		night, err := b.loader.Night(t)
		if err != nil {
			fault = err
			break
		}
		jobs <- job{i, night}
		if tell != nil {
			tell(i+1, len(trips))
		}
	}
	close(jobs)
	work.Wait()
	for _, err := range unread {
		if fault == nil {
			fault = err
		}
	}
	if fault != nil {
		return fault
	}
	for i, t := range trips {
		delete(b.left, t.ID)
		delete(b.digests, t.ID)
		if faults[i] != nil {
			b.left[t.ID] = Left{t, faults[i]}
		} else {
			b.digests[t.ID] = made[i]
		}
	}
	return nil
}

// fished keeps the pools that were fished or named that night: the light of others is in
// no figure.
func fished(b geo.Beat, log *journal.Log) geo.Beat {
	named := map[journal.ID]bool{}
	for _, e := range log.Entries {
		switch e := e.(type) {
		case journal.Run:
			named[e.Pool] = true
		case journal.Contact:
			if id, ok := e.Pool.Get(); ok {
				named[id] = true
			}
		}
	}
	var pools []geo.Pool
	for _, p := range b.Pools {
		if named[p.ID] {
			pools = append(pools, p)
		}
	}
	b.At = b.Place() // which the outlines left out may decide
	b.Pools = pools
	return b
}

// ruleEdges are the edges in lux that house rules name.
func ruleEdges(rules []journal.HouseRule) []float64 {
	var out []float64
	for _, r := range rules {
		for _, f := range []journal.Field[units.Lux]{r.Dark, r.Light} {
			if v, ok := f.Get(); ok {
				out = append(out, float64(v))
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// forget drops what a change may have altered.
func (b *Book) forget(c journal.Change) {
	b.todo = nil
	for _, e := range c.Edits {
		switch r := e.Ref(); r.Kind {
		case journal.KindSeries:
			b.shared = nil
		case journal.KindBeat, journal.KindFly, journal.KindPerson, journal.KindRule:
			b.shared = nil
			clear(b.digests)
			clear(b.left)
		case journal.KindTrip:
			delete(b.digests, r.ID)
			delete(b.left, r.ID)
		default:
			if !r.Trip.IsZero() {
				delete(b.digests, r.Trip)
				delete(b.left, r.Trip)
			}
		}
	}
}
