package timeline_test

import (
	"encoding/binary"
	"math"
	"math/rand/v2"
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// A world with a known truth, for asking how often the program would claim what is not
// so. It knows nothing of this program's sky, light or counting: sun and moon are the low
// precision formulas of almanacs (declination from the mean anomaly, hour angle from the mean
// sun; a moon on the ecliptic), twilight is the fit of the Explanatory Supplement (Seidelmann
// 1992, sun -18 to 5 degrees), cloud a power law. That differs from the program's own light by
// as much as models do, and that is meant: the program has to find out in spite of it.

// Decided before the first run, with the rule of decision in truth_test.go:
const (
	truthNights = 26   // of a season, from 25 May to 10 September
	truthBase   = 0.5  // fish hooked an hour, on average, under no effect
	truthShape  = 2    // of the gamma law by which nights are rich or poor
	truthMiss   = 0.4  // share of fish whose time is remembered to 10 minutes only
	truthLat    = 55.0 // degrees north
	truthLon    = -4.5 // degrees east
)

// truthEffects are how many times as many fish come where it matters.
var truthEffects = []float64{2, 4, 8}

// truth is what drives the fish.
type truth struct {
	name  string
	light float64 // times as many in the decade below 0.3 lx, on the pool; 1: light does not matter
	clock float64 // times as many from 23:30 to 0:45; 1: the clock does not matter
}

func truths() []truth {
	out := []truth{{"neither matters", 1, 1}}
	for _, e := range truthEffects {
		out = append(out, truth{name: "light matters", light: e, clock: 1})
	}
	for _, e := range truthEffects {
		out = append(out, truth{name: "clock matters", light: 1, clock: e})
	}
	return out
}

// worldPool is one pool of the made-up beat: how much of the sky trees leave.
var worldPools = []struct {
	name   string
	canopy geo.Canopy
	open   float64
}{
	{"Mill Neck", geo.Open, 1}, {"Alder Pool", geo.Partly, 0.5}, {"Long Flat", geo.Open, 1},
	{"Cauldron", geo.Closed, 0.1}, {"Sand Bend", geo.Partly, 0.5}, {"Gate Pool", geo.Open, 1},
}

type world struct {
	r    *rand.Rand
	next uint64
	loc  *time.Location
	beat geo.Beat
	fly  []journal.Fly
}

func newWorld(seed uint64) *world {
	loc, err := time.LoadLocation("Europe/London")
	if err != nil {
		panic(err)
	}
	w := &world{r: rand.New(rand.NewPCG(seed, 20260704)), loc: loc}
	w.beat = geo.Beat{ID: w.id(), Name: "Home Beat", River: geo.River{Name: "Larrick Water"}, Zone: "Europe/London", At: geo.Place{Lat: truthLat, Lon: truthLon}}
	for i, p := range worldPools {
		w.beat.Pools = append(w.beat.Pools, geo.Pool{ID: w.id(), Name: p.name, Order: i + 1, Canopy: p.canopy})
	}
	for _, in := range []float64{0.5, 0.75, 1, 1.5, 2, 3} {
		w.fly = append(w.fly, journal.Fly{ID: w.id(), Dresses: []journal.Dress{{
			Length: journal.Of(units.LengthOf(in, units.Inch)), Silhouette: journal.Of(journal.Silhouettes[w.r.IntN(3)]), Tone: journal.Of(journal.Tones[w.r.IntN(3)]),
		}}})
	}
	return w
}

func (w *world) id() (id journal.ID) {
	w.next++
	id[0] = 9
	binary.BigEndian.PutUint64(id[8:], w.next)
	return id
}

// season makes the logs of one season.
func (w *world) season(tr truth) []*journal.Log {
	first := journal.Date{Year: 2026, Month: time.May, Day: 25}
	var days []int
	for len(days) < truthNights {
		if d := w.r.IntN(109); !slices.Contains(days, d) {
			days = append(days, d)
		}
	}
	slices.Sort(days)
	var out []*journal.Log
	for _, d := range days {
		out = append(out, w.night(first.Add(d), tr))
	}
	return out
}

func (w *world) night(d journal.Date, tr truth) *journal.Log {
	noon, _ := d.Night(w.loc)
	cloud := w.r.IntN(9)
	rod := journal.Rod{ID: w.id(), Person: w.id()}
	trip := journal.Trip{ID: w.id(), Evening: d, Zone: "Europe/London", Beat: w.beat.ID, Rods: []journal.Rod{rod}}
	head := func(when journal.When) journal.Head {
		return journal.Head{ID: w.id(), Trip: trip.ID, Rod: rod.ID, When: when}
	}
	// To the water 20 to 70 minutes before the trees go grey under this sky, home after
	// two and a half to five hours.
	dusk := noon
	for dusk = noon.Add(8 * time.Hour); w.lux(dusk, cloud, 1) > 0.3 && dusk.Before(noon.Add(13*time.Hour)); {
		dusk = dusk.Add(5 * time.Minute)
	}
	at := dusk.Add(-time.Duration(20+w.r.IntN(51)) * time.Minute).Truncate(time.Minute)
	end := at.Add(time.Duration(150+w.r.IntN(151)) * time.Minute)
	entries := []journal.Entry{
		journal.Sky{Head: journal.Head{ID: w.id(), Trip: trip.ID, When: journal.Exact(at)}, Cloud: journal.Of(cloud), CloudKind: journal.Of(journal.AverageCloud)},
		journal.Water{Head: journal.Head{ID: w.id(), Trip: trip.ID, When: journal.Exact(at)}, Trend: journal.Of(journal.Trends[w.r.IntN(len(journal.Trends))])},
	}
	rich := w.gamma(truthShape) / truthShape
	pool := w.r.IntN(len(worldPools))
	for k := 0; k < 12 && at.Before(end); k++ {
		p := pool % len(worldPools)
		pool++
		until := at.Add(time.Duration(25+w.r.IntN(31)) * time.Minute)
		run := journal.Run{Head: head(journal.Exact(at)), Pool: w.beat.Pools[p].ID, Until: journal.Of(journal.Exact(until))}
		fly := w.fly[w.r.IntN(len(w.fly))]
		rig := journal.Rig{Head: head(journal.Exact(at)), Setup: journal.Setup{Flies: []journal.Mounted{{Position: 0, Fly: journal.Of(fly.ID)}}}}
		entries = append(entries, run, rig)
		for t := at; t.Before(until); t = t.Add(time.Minute) {
			rate := truthBase * rich * w.times(tr, t, cloud, worldPools[p].open)
			if w.r.Float64() >= rate/60 {
				continue
			}
			when := journal.Exact(t)
			if w.r.Float64() < truthMiss {
				when = journal.About(t.Add(time.Duration(w.r.IntN(11)-5)*time.Minute), 0)
			}
			touch := journal.Landed
			if w.r.IntN(3) == 0 {
				touch = journal.Lost
			}
			entries = append(entries, journal.Contact{Head: head(when), Touch: touch, Pool: journal.Of(run.Pool), Fly: journal.Of(fly.ID)})
		}
		at = until.Add(time.Duration(5+w.r.IntN(11)) * time.Minute)
	}
	return journal.NewLog(trip, entries)
}

// times is how many times the base rate fish come, so that about as many come in all
// under each truth.
func (w *world) times(tr truth, t time.Time, cloud int, open float64) float64 {
	m := 1.0
	if tr.light > 1 {
		m *= 4 / (3 + tr.light) // about a quarter of the time lies in that decade
		if lux := w.lux(t, cloud, open); lux < 0.3 && lux >= 0.03 {
			m *= tr.light
		}
	}
	if tr.clock > 1 {
		m *= 3 / (2 + tr.clock) // and about a third in those hours
		local := t.In(w.loc)
		if c := local.Hour()*60 + local.Minute(); c >= 23*60+30 || c < 45 {
			m *= tr.clock
		}
	}
	return m
}

func (w *world) gamma(shape int) float64 {
	sum := 0.0
	for range shape {
		sum += w.r.ExpFloat64()
	}
	return sum
}

// lux is the light of this world on a pool.
func (w *world) lux(t time.Time, cloud int, open float64) float64 {
	days := t.Sub(time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)).Hours() / 24
	const rad = math.Pi / 180
	g := (357.529 + 0.98560028*days) * rad
	l := 280.459 + 0.98564736*days + 1.915*math.Sin(g) + 0.020*math.Sin(2*g)
	sidereal := 280.4606 + 360.9856473*days + truthLon
	height := func(lon float64) float64 {
		ra := math.Atan2(math.Cos(23.44*rad)*math.Sin(lon*rad), math.Cos(lon*rad)) / rad
		dec := math.Asin(math.Sin(23.44*rad) * math.Sin(lon*rad))
		h := (sidereal - ra) * rad
		return math.Asin(math.Sin(truthLat*rad)*math.Sin(dec)+math.Cos(truthLat*rad)*math.Cos(dec)*math.Cos(h)) / rad
	}
	age := math.Mod(days-5.26, 29.530589) / 29.530589 // new moon of 6 January 2000
	moon := 0.0
	if h := height(l + 360*age); h > 0 {
		full := 1 - math.Abs(2*math.Mod(age+1, 1)-1) // 0 new, 1 full
		moon = 0.25 * math.Sin(h*rad) * math.Pow(full, 3)
	}
	clear := twilightES(height(l)) + moon + 0.0006
	return clear * open * (1 - 0.72*math.Pow(float64(cloud)/8, 3.4))
}

// twilightES is the fit of the Explanatory Supplement in lux, altitude in degrees.
func twilightES(h float64) float64 {
	x := h / 90
	poly := func(a, b, c, d float64) float64 { return math.Pow(10, a+b*x+c*x*x+d*x*x*x) }
	switch {
	case h > 5:
		return poly(3.05, 13.28, -45.98, 64.33)
	case h > -0.8:
		return poly(2.88, 22.26, -207.64, 1034.30)
	case h > -5:
		return poly(2.88, 21.81, -258.11, -858.36)
	case h > -12:
		return poly(2.70, 12.17, -431.69, -1899.83)
	case h > -18:
		return poly(13.84, 262.72, 1447.42, 2797.93)
	}
	return 0
}
