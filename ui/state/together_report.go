package state

import (
	"math"
	"strconv"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// Report is every figure behind the pictures of nights side by side. Its members are
// described under gloam help compare; none changes its meaning, new ones may be added.
type Report struct {
	Schema string        `json:"schema"` // ReportSchema
	Title  string        `json:"title"`
	How    string        `json:"how"`
	Said   []string      `json:"said"`
	Axis   string        `json:"axis"`
	Order  string        `json:"order"`
	Totals ReportTotals  `json:"totals"`
	Nights []ReportNight `json:"nights"`
	Time   ReportAxis    `json:"time"`
	Light  ReportAxis    `json:"light"`
	Fish   []ReportFish  `json:"fish"`
	Runs   []ReportRun   `json:"runs"`
	Rigs   []ReportRig   `json:"rigs"`
	Pools  []ReportPool  `json:"pools"`
}

// ReportSchema names the form of a report.
const ReportSchema = "gloamline nights together 1"

// ReportTotals counts what came in how many rod-hours with a fly in the water.
type ReportTotals struct {
	RodHours float64 `json:"rod_hours"`
	Landed   float64 `json:"landed"`
	Lost     float64 `json:"lost"`
	Touches  float64 `json:"touches"`
	Shows    float64 `json:"shows"`
}

// ReportNight is a night; lux in lux, level in metres, instants in UTC.
type ReportNight struct {
	Mark    string `json:"mark"`
	Trip    string `json:"trip"`
	Evening string `json:"evening"`
	Beat    string `json:"beat"`
	Zone    string `json:"zone"`
	ReportTotals
	BankHours  float64   `json:"bank_hours"`
	GreyLux    float64   `json:"grey_lux"`
	GreyAt     string    `json:"grey_at,omitempty"`
	Sunset     string    `json:"sunset,omitempty"`
	DarkestLux float64   `json:"darkest_lux"`
	LevelM     *float64  `json:"level_m,omitempty"`
	Curve      []float64 `json:"curve,omitempty"` // place, lux, place, lux ... of the open sky along the axis of time
}

// ReportAxis is an axis with its steps and what has no place on it.
type ReportAxis struct {
	Axis string      `json:"axis"`
	Bins []ReportBin `json:"bins"`
	Off  []ReportOff `json:"off"`
}

// ReportBin is a step of an axis: minutes, or log10 of lux.
type ReportBin struct {
	Part string  `json:"part"`
	From float64 `json:"from"`
	To   float64 `json:"to"`
	ReportTotals
	Nights int `json:"nights"`
}

// ReportOff is what has no place on an axis.
type ReportOff struct {
	Why      string  `json:"why"`
	RodHours float64 `json:"rod_hours"`
	Contacts int     `json:"contacts"`
	Nights   int     `json:"nights"`
}

// ReportPlace is where something lies on an axis.
type ReportPlace struct {
	Off   string        `json:"off,omitempty"`
	Part  string        `json:"part,omitempty"`
	At    *float64      `json:"at,omitempty"`
	Reach []ReportReach `json:"reach,omitempty"`
}

// ReportReach is a stretch of an axis with its share of the time.
type ReportReach struct {
	Part  string  `json:"part"`
	From  float64 `json:"from"`
	To    float64 `json:"to"`
	Share float64 `json:"share"`
}

// ReportFish is a contact.
type ReportFish struct {
	Mark     string      `json:"mark"`
	Number   string      `json:"number"`
	ID       string      `json:"id"`
	Earliest string      `json:"earliest"`
	Latest   string      `json:"latest"`
	Rod      string      `json:"rod"`
	Pool     string      `json:"pool,omitempty"`
	Touch    string      `json:"touch"`
	WeightG  *float64    `json:"weight_g,omitempty"`
	FlyMM    *float64    `json:"fly_mm,omitempty"`
	Rung     string      `json:"rung"`
	Lux      float64     `json:"lux"`
	LuxLow   float64     `json:"lux_low"`
	LuxHigh  float64     `json:"lux_high"`
	Time     ReportPlace `json:"time"`
	Light    ReportPlace `json:"light"`
}

// ReportRun is a run.
type ReportRun struct {
	Mark  string      `json:"mark"`
	Rod   string      `json:"rod"`
	Pool  string      `json:"pool"`
	Nth   int         `json:"nth"`
	From  string      `json:"from"` // the middle of its spread
	To    string      `json:"to"`
	Time  ReportPlace `json:"time"`
	Light ReportPlace `json:"light"`
}

// ReportRig is a change of flies, point first; a length not known is missing.
type ReportRig struct {
	Mark  string      `json:"mark"`
	Rod   string      `json:"rod"`
	At    string      `json:"at"`
	FlyMM []*float64  `json:"fly_mm"`
	Time  ReportPlace `json:"time"`
	Light ReportPlace `json:"light"`
}

// ReportPool is what all nights had at a pool; an empty name is contacts without one.
type ReportPool struct {
	Beat string `json:"beat"`
	Pool string `json:"pool"`
	Name string `json:"name"`
	ReportTotals
	Runs   int `json:"runs"`
	Nights int `json:"nights"`
}

// Sentences are what is said below the pictures, the verdict first.
func (t *Together) Sentences() []string {
	s := t.Sides()
	out := []string{words.Verdict(s.Light)}
	if b := words.Blanks(s.Light); b != "" {
		out = append(out, b)
	}
	out = append(out, words.OffAxis(s.Time)...)
	if t.choice.hand() {
		out = append(out, words.PickedByHand())
	}
	return out
}

// Report gathers every figure shown.
func (t *Together) Report() Report {
	s := t.Sides()
	title, how := t.Said()
	r := Report{
		Schema: ReportSchema, Title: title, How: how, Said: t.Sentences(), Axis: t.axis.String(), Order: t.order.String(),
		Totals: totalsOf(s.Light.Totals), Time: axisOf(s.Time), Light: axisOf(s.Light),
		Nights: []ReportNight{}, Fish: []ReportFish{}, Runs: []ReportRun{}, Rigs: []ReportRig{}, Pools: []ReportPool{},
	}
	marks := s.Light.Marks()
	for i, l := range s.Light.Nights {
		r.night(marks[l.Night.Log.Trip.ID], s.Time.Nights[i], l)
	}
	for _, p := range s.Light.Pools {
		r.Pools = append(r.Pools, ReportPool{p.Beat.String(), p.Pool.String(), p.Name,
			ReportTotals{hours(p.Water), float64(p.Landed), float64(p.Lost), float64(p.Touches), float64(p.Shows)}, p.Runs, p.Nights})
	}
	return r
}

// night adds a night, laid along the time and along the light.
func (r *Report) night(mark string, along, light timeline.Laid) {
	n := light.Night
	trip := n.Log.Trip
	x := ReportNight{
		Mark: mark, Trip: trip.ID.String(), Evening: trip.Evening.String(), Beat: n.Beat.Name, Zone: trip.Zone,
		ReportTotals: totalsOf(n.Totals), BankHours: hours(n.Totals.OnBank), GreyLux: lux(float64(n.Grey.Threshold.Lux)),
		GreyAt: instant(n.Grey.At), DarkestLux: lux(float64(light.Darkest)),
	}
	if len(n.Sky.Sunset) > 0 {
		x.Sunset = instant(n.Sky.Sunset[0])
	}
	if v, ok := light.Level().Get(); ok {
		x.LevelM = &v
	}
	for _, c := range along.Curve {
		for i := range c.V {
			x.Curve = append(x.Curve, digits(c.V[i]), lux(c.Lux[i]))
		}
	}
	r.Nights = append(r.Nights, x)
	for i, f := range light.Fish {
		k := f.Contact
		fish := ReportFish{
			Mark: mark, Number: words.ContactNumber(n, *k), ID: k.ID.String(), Earliest: instant(k.At.Lo), Latest: instant(k.At.Hi),
			Rod: words.RodName(n.Rods[k.Rod]), Touch: string(k.Touch), Rung: words.RungName(k.Rung, words.Prefs{}),
			Lux: lux(float64(k.Light.Lux)), LuxLow: lux(float64(k.Light.Lo)), LuxHigh: lux(float64(k.Light.Hi)),
			Time: placed(along.Fish[i]), Light: placed(f),
		}
		if k.HasPool {
			fish.Pool = k.Pool.Name
		}
		if w, ok := k.Weight.Get(); ok {
			g := float64(w.G)
			fish.WeightG = &g
		}
		if k.HasFly {
			fish.FlyMM = millimetres(k.Fly.Dress)
		}
		r.Fish = append(r.Fish, fish)
	}
	for i, run := range light.Runs {
		span := n.Rods[run.Rod].Runs[run.Run]
		r.Runs = append(r.Runs, ReportRun{mark, words.RodName(n.Rods[run.Rod]), span.Pool.Name, span.Nth, instant(span.From.Mid()), instant(span.To.Mid()),
			ReportPlace{Off: along.Runs[i].Off.String(), Reach: reaches(along.Runs[i].Reach)}, ReportPlace{Off: run.Off.String(), Reach: reaches(run.Reach)}})
	}
	for i, rig := range light.Rigs {
		span := n.Rods[rig.Rod].Rigs[rig.Rig]
		x := ReportRig{Mark: mark, Rod: words.RodName(n.Rods[rig.Rod]), At: instant(span.From.Mid()), FlyMM: []*float64{},
			Time: changed(along.Rigs[i]), Light: changed(rig)}
		for _, f := range span.Flies {
			x.FlyMM = append(x.FlyMM, millimetres(f.Dress))
		}
		r.Rigs = append(r.Rigs, x)
	}
}

func totalsOf(t timeline.Totals) ReportTotals {
	return ReportTotals{hours(t.InWater), float64(t.Landed), float64(t.Lost), float64(t.Touches), float64(t.Shows)}
}

func axisOf(o *timeline.Overlay) ReportAxis {
	out := ReportAxis{Axis: o.Axis.String(), Bins: []ReportBin{}, Off: []ReportOff{}}
	for _, b := range o.Bins {
		out.Bins = append(out.Bins, ReportBin{b.Part.String(), b.Lo, b.Hi, ReportTotals{hours(b.Water), digits(b.Landed), digits(b.Lost), digits(b.Touches), digits(b.Shows)}, b.Nights})
	}
	for _, x := range o.Off {
		out.Off = append(out.Off, ReportOff{x.Why.String(), hours(x.Water), x.Contacts, x.Nights})
	}
	return out
}

func placed(f timeline.LaidFish) ReportPlace { return placeOf(f.Off, f.At, f.Reach) }

func changed(r timeline.LaidRig) ReportPlace { return placeOf(r.Off, r.At, r.Reach) }

func placeOf(off timeline.OffWhy, at timeline.Spot, reach []timeline.Reach) ReportPlace {
	if off != timeline.OnAxis {
		return ReportPlace{Off: off.String()}
	}
	v := digits(at.V)
	return ReportPlace{Part: at.Part.String(), At: &v, Reach: reaches(reach)}
}

func reaches(list []timeline.Reach) []ReportReach {
	var out []ReportReach
	for _, x := range list {
		out = append(out, ReportReach{x.Part.String(), digits(x.Lo), digits(x.Hi), digits(x.Share)})
	}
	return out
}

func millimetres(d journal.Dress) *float64 {
	l, ok := d.Length.Get()
	if !ok {
		return nil
	}
	mm := digits(float64(l.M) * 1000)
	return &mm
}

// hours are exact to a millionth; digits keeps as many of other figures.
func hours(d time.Duration) float64 { return digits(d.Hours()) }

// lux keeps six digits, more than any light is known to.
func lux(v float64) float64 {
	out, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	if err != nil {
		return v
	}
	return out
}

func digits(v float64) float64 { return math.Round(v*1e6) / 1e6 }

func instant(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.UTC().Format(time.RFC3339)
}
