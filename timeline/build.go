package timeline

import (
	"errors"
	"time"

	"gloamline/journal"
	"gloamline/timeline/light"
	"gloamline/timeline/sky"
)

// Step is the step of the curves.
const Step = time.Minute

// Build sets a log in its light. It costs about a millisecond, so that a night is
// built anew after each change. The error is a *journal.Error: Invalid where the beat has
// no position, a skyline that is none, or the trip no zone; Conflict where an entry
// belongs to a rod that did not fish.
func Build(log *journal.Log, set Setting) (*Night, error) {
	zone, err := log.Trip.Location()
	if err != nil {
		return nil, err
	}
	place, err := placeOf(set.Beat)
	if err != nil {
		return nil, err
	}
	if !(set.Grey.Lux > 0) {
		set.Grey.Lux = light.DefaultGrey
	}
	n := &Night{Log: log, Beat: set.Beat, Zone: zone}
	n.Start, n.End = log.Trip.Evening.Night(zone)
	entries := inOrder(log)
	if err := n.tell(entries, set); err != nil {
		return nil, err
	}

	slate := set.Slate.wiped()
	whole := sky.NewSpan(n.Start, n.End)
	if set.Figures {
		n.Sky = skyMarks(&sky.Grid{Span: whole, Place: place, Step: Step})
		from, to := n.lit(entries)
		n.Grid = slate.gridOf(sky.NewSpan(from, to), place)
		n.Sky.Eclipse = mayEclipse(n.Grid)
	} else {
		n.Grid = whole.Grid(place, Step)
		n.Sky = skyMarks(n.Grid)
	}
	open := slate.openOf(n.Grid, weather(n.Skies))
	reference := slate.under(open, light.Shade{})
	n.Open = curveOf(reference)
	n.Grey = greyOf(reference, set.Grey, n.Skies)
	for _, p := range set.Beat.InOrder() {
		pool, err := poolNight(p, open, slate)
		if err != nil {
			return nil, err
		}
		if len(pool.MoonOver) == 0 {
			pool.Moonless = "hill"
			if len(n.Sky.MoonUp) == 0 {
				pool.Moonless = "below"
			}
		}
		n.Pools = append(n.Pools, pool)
	}
	for i := range n.Contacts {
		n.setInLight(&n.Contacts[i])
	}
	n.From, n.To = n.window(entries)
	n.Against = n.against(set.Rules)
	n.Gauges = gaugesOf(set.Gauges, levelSeries, 2, n.Start, n.End)
	n.Warmths = gaugesOf(set.Gauges, warmthSeries, 1, n.Start, n.End)
	return n, nil
}

// lit returns the stretch in which light matters to figures: everything logged, and from
// an hour before sunset to an hour after sunrise, in whole minutes of the night. Without a
// sunset and a sunrise it is the whole night.
func (n *Night) lit(entries []Noted[journal.Entry]) (from, to time.Time) {
	if len(n.Sky.Sunset) == 0 || len(n.Sky.Sunrise) == 0 || n.Sky.Sunrise[len(n.Sky.Sunrise)-1].Before(n.Sky.Sunset[0]) {
		return n.Start, n.End
	}
	from, to = n.Sky.Sunset[0].Add(-time.Hour), n.Sky.Sunrise[len(n.Sky.Sunrise)-1].Add(time.Hour)
	for _, e := range entries {
		from, to = earlier(from, e.At.Lo.Add(-Step)), later(to, e.At.Hi.Add(Step))
	}
	for _, r := range n.Rods {
		for _, run := range r.Runs {
			to = later(to, run.To.Hi.Add(Step))
		}
	}
	from, to = later(from, n.Start), earlier(to, n.End)
	return n.Start.Add(from.Sub(n.Start).Truncate(Step)), n.Start.Add((to.Sub(n.Start) + Step - 1).Truncate(Step))
}

// tell fills in everything that needs no light: rods, runs, rigs, contacts, totals.
func (n *Night) tell(entries []Noted[journal.Entry], set Setting) error {
	trip := n.Log.Trip
	for _, e := range entries {
		h := e.Entry.Base()
		if _, ok := trip.Rod(h.Rod); !ok && (!h.Rod.IsZero() || rodded(e.Entry)) {
			return &journal.Error{Op: "set the night in its light", Kind: journal.Conflict, Field: "rod", ID: h.ID,
				Err: errors.New("that rod did not fish this night")}
		}
	}
	dress := dresser{trip.Evening, set.Flies}
	people := make([]journal.Person, len(trip.Rods))
	for i, r := range trip.Rods {
		people[i] = set.People[r.Person]
	}
	if id, ok := trip.Guide.Get(); ok {
		n.Guide = set.People[id].Name
	}
	marks := initials(people)
	runs := runSpans(n.Log, entries, set.Beat.Pool)
	for i, rod := range trip.Rods {
		onBank := bank(n.Log, rod, entries, runs)
		n.Rods = append(n.Rods, RodNight{
			Rod: rod, Name: people[i].Name, Initials: marks[i],
			Runs: runsOf(rod.ID, runs),
			Rigs: rigSpans(rod.ID, entries, onBank.To, dress),
			Ways: waySpans(rod.ID, entries, onBank.To),
			Bank: onBank, Water: water(rod.ID, entries, runs, n.Log),
		})
	}
	n.Contacts = contacts(entries, n.Rods, set.Beat.Pool, dress)
	for i := range n.Rods {
		n.Rods[i].Totals = count(i, n.Rods[i], n.Contacts)
		n.Totals = n.Totals.Plus(n.Rods[i].Totals)
	}
	n.Waters, n.Skies, n.Others = pick[journal.Water](entries), pick[journal.Sky](entries), others(entries)
	return nil
}

// rodded reports whether an entry of this kind must belong to a rod.
func rodded(e journal.Entry) bool {
	switch e.(type) {
	case journal.Run, journal.Rig, journal.Way, journal.Contact:
		return true
	}
	return false
}
