package state

import (
	"math"
	"strconv"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/timeline/season"
	"gloamline/ui/words"
)

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
		Totals: tallyOf(s.Light.Totals), Behind: behindOf(s.Light), Time: axisOf(s.Time), Light: axisOf(s.Light), Beats: beatsOf(s.Light),
		Nights: []ReportNight{}, Others: []ReportOther{}, Fish: []ReportFish{}, Runs: []ReportRun{}, Rigs: []ReportRig{}, Pools: []ReportPool{},
	}
	marks := s.Light.Marks()
	for i, l := range s.Light.Nights {
		r.night(marks[l.Night.Log.Trip.ID], s.Time.Nights[i], l)
	}
	for _, x := range t.Rows() {
		if !x.In {
			r.Others = append(r.Others, ReportOther{x.Trip.String(), x.Evening.String(), x.Beat, tallyOf(x.Totals)})
		}
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
		ReportTally: tallyOf(n.Totals), TimeBins: binsOf(along.Bins), LightBins: binsOf(light.Bins), BankHours: hours(n.Totals.OnBank), GreyLux: lux(float64(n.Grey.Threshold.Lux)),
		GreyAt: instant(n.Grey.At), DarkestLux: lux(float64(light.Darkest)),
	}
	if len(n.Sky.Sunset) > 0 {
		x.Sunset = instant(n.Sky.Sunset[0])
	}
	if v, ok := light.Level().Get(); ok {
		x.LevelM = &v
	}
	x.Curve = curveOf(along.Curve)
	r.Nights = append(r.Nights, x)
	for i, f := range light.Fish {
		k := f.Contact
		fish := ReportFish{
			Mark: mark, Number: words.ContactNumber(n, *k), ID: k.ID.String(), Earliest: instant(k.At.Lo), Latest: instant(k.At.Hi),
			Rod: words.RodName(n.Rods[k.Rod]), Touch: string(k.Touch), Rung: words.RungName(k.Rung, words.Prefs{}), Darker: digits(k.Darker),
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
		if l, ok := k.Length.Get(); ok {
			mm := digits(float64(l.M) * 1000)
			fish.LengthMM = &mm
		}
		if k.Fly.Position >= 0 {
			fish.Position = &k.Fly.Position
		}
		if s, ok := k.AirTime.Get(); ok {
			fish.AirS = &s
		}
		fish.Fate, fish.Tag = string(k.Fate.Or("")), k.Tag.Or("")
		if k.HasFly {
			fish.FlyMM = millimetres(k.Fly.Dress)
		}
		r.Fish = append(r.Fish, fish)
	}
	for i, run := range light.Runs {
		span := n.Rods[run.Rod].Runs[run.Run]
		x := ReportRun{
			Mark: mark, ID: span.Run.ID.String(), Rod: words.RodName(n.Rods[run.Rod]), Pool: span.Pool.Name, Nth: span.Nth, From: instant(span.From.Mid()), To: instant(span.To.Mid()),
			Time: ReportPlace{Off: along.Runs[i].Off.String(), Reach: reaches(along.Runs[i].Reach)}, Light: ReportPlace{Off: run.Off.String(), Reach: reaches(run.Reach)},
			Curve: curveOf(along.Runs[i].Light),
		}
		if span.Nth > 1 {
			rest := digits(max(0, span.Rest.Minutes()))
			x.RestMin = &rest
		}
		r.Runs = append(r.Runs, x)
	}
	for i, rig := range light.Rigs {
		span := n.Rods[rig.Rod].Rigs[rig.Rig]
		x := ReportRig{Mark: mark, ID: span.Rig.ID.String(), Rod: words.RodName(n.Rods[rig.Rod]), At: instant(span.From.Mid()), Until: instant(span.To), FlyMM: []*float64{},
			Time: changed(along.Rigs[i]), Light: changed(rig)}
		for _, f := range span.Flies {
			x.FlyMM = append(x.FlyMM, millimetres(f.Dress))
		}
		if l, ok := span.Rig.Line.Get(); ok {
			if ips, ok := l.Sink.Get(); ok {
				x.SinkIPS = &ips
			}
		}
		if l, ok := span.Rig.Leader.Get(); ok {
			m := digits(float64(l.M))
			x.LeaderM = &m
		}
		r.Rigs = append(r.Rigs, x)
	}
}

func totalsOf(t timeline.Totals) ReportTotals {
	return ReportTotals{hours(t.InWater), float64(t.Landed), float64(t.Lost), float64(t.Touches), float64(t.Shows)}
}

func tallyOf(t timeline.Totals) ReportTally { return ReportTally{totalsOf(t), float64(t.Kept)} }

func behindOf(light *timeline.Overlay) ReportBehind {
	b := words.BehindOf(light)
	return ReportBehind{b.Fish, b.Nights, b.Blank, b.Steps, b.Full, season.MinHours, season.MinNights, season.MinFish}
}

// beatsOf sums up what the nights had on each beat, in the order in which they come.
func beatsOf(o *timeline.Overlay) []ReportBeat {
	out := []ReportBeat{}
	sums := map[journal.ID]timeline.Totals{}
	at := map[journal.ID]int{}
	for _, l := range o.Nights {
		id := l.Night.Log.Trip.Beat
		i, had := at[id]
		if !had {
			i, at[id] = len(out), len(out)
			out = append(out, ReportBeat{Beat: id.String()})
		}
		sums[id] = sums[id].Plus(l.Night.Totals)
		b := &out[i]
		b.Name, b.ReportTally = l.Night.Beat.Name, tallyOf(sums[id])
		b.Nights++
		for _, f := range l.Fish {
			if !f.Contact.HasPool {
				b.WithoutPool++
			}
		}
	}
	return out
}

func axisOf(o *timeline.Overlay) ReportAxis {
	out := ReportAxis{Axis: o.Axis.String(), Bins: binsOf(o.Bins), Off: []ReportOff{}}
	for _, x := range o.Off {
		out.Off = append(out.Off, ReportOff{x.Why.String(), hours(x.Water), x.Contacts, x.Nights})
	}
	return out
}

func binsOf(list []timeline.Bin) []ReportBin {
	out := []ReportBin{}
	for _, b := range list {
		out = append(out, ReportBin{b.Part.String(), b.Lo, b.Hi, ReportTotals{hours(b.Water), digits(b.Landed), digits(b.Lost), digits(b.Touches), digits(b.Shows)}, b.Nights})
	}
	return out
}

func curveOf(list []timeline.Trace) (out []float64) {
	for _, c := range list {
		for i := range c.V {
			out = append(out, digits(c.V[i]), lux(c.Lux[i]))
		}
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
