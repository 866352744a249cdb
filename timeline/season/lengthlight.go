package season

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"gloamline/journal"
	"gloamline/journal/units"
)

// LengthLight is every fish by the dressing it came to and the light it came in, over the
// fly-hours fished so, with the house rules laid into it as steps.
//
// Light is that on the pool, in decades darker than the threshold of the night's own beat, so
// that beats of different thresholds share one step. A rule asks the open sky over the beat
// instead: a fish in a dark pool may so lie right of the step while the rule still counts it by
// day. Whether it kept to the rules is therefore said of each fish by itself (Outside).
type LengthLight struct {
	Greys []BeatGrey   `json:"greys"` // of the beats fished
	Rows  []LengthRow  `json:"rows"`  // from short to long; Table has their cells, "row/band"
	Table *Table       `json:"table"`
	Steps []RuleStep   `json:"steps"` // what rules leave free of off-rule lengths
	Fish  []DrawnFish  `json:"fish"`
	Left  LeftOut      `json:"left"`
	Mute  []journal.ID `json:"mute,omitempty"` // rules that cannot be drawn here: without a length, or by lux on several thresholds
}

// BeatGrey is the light at which the trees of a beat go grey.
type BeatGrey struct {
	Beat journal.ID `json:"beat"`
	Name string     `json:"name"`
	Lux  units.Lux  `json:"lux"`
}

// LengthRow is a stretch of dressing length: a class, or a part of one where a house rule's
// length lies within it.
type LengthRow struct {
	Code string  `json:"code"`
	From float64 `json:"from_mm"`
	To   float64 `json:"to_mm,omitempty"` // 0: no end
	// Class is the class it belongs to; Cut says that it is a part of it.
	Class int  `json:"class"`
	Cut   bool `json:"cut,omitempty"`
}

// RuleStep is a house rule on this plane: in light from Lighter to Darker (decades darker
// than the threshold; nil: no end) lengths under Min and from Max on are off it.
type RuleStep struct {
	Rule    journal.ID        `json:"rule"`
	Words   string            `json:"words"`
	Lighter *float64          `json:"lighter,omitempty"`
	Darker  *float64          `json:"darker,omitempty"`
	Min     float64           `json:"min_mm,omitempty"` // 0: none
	Max     float64           `json:"max_mm,omitempty"`
	Of      journal.HouseRule `json:"-"`
}

// DrawnFish is a fish with its fly in its light.
type DrawnFish struct {
	Trip    journal.ID         `json:"trip"`
	ID      journal.ID         `json:"id"`
	Evening journal.Date       `json:"evening"`
	N       int                `json:"n"` // its number that night
	Touch   journal.Touch      `json:"touch"`
	Length  float64            `json:"fly_mm"`
	Shape   journal.Silhouette `json:"silhouette,omitempty"`
	Tone    journal.Tone       `json:"tone,omitempty"`
	HotSpot bool               `json:"hot_spot,omitempty"`
	Darker  float64            `json:"darker"` // decades darker than trees grey
	Lux     float64            `json:"lux"`
	LuxLow  float64            `json:"lux_low"` // the band of its light
	LuxHigh float64            `json:"lux_high"`
	Row     int                `json:"row"`                // into LengthLight.Rows
	NoHours bool               `json:"no_hours,omitempty"` // outside every run: no hours lie behind it
	Outside []journal.ID       `json:"outside,omitempty"`  // rules that it came against, in the light they are for
}

// LeftOut are fish that count but cannot be drawn.
type LeftOut struct {
	NoFly    int `json:"no_fly"`
	NoLength int `json:"no_length"`
}

// ruleSlack is less than anybody measures, millimetres.
const ruleSlack = 0.1

// lengthRows are the classes of dressing length, cut where a rule's length lies within one.
func lengthRows(rules []journal.HouseRule) []LengthRow {
	var cuts []float64
	for _, r := range rules {
		for _, f := range []journal.Field[units.Length]{r.Min, r.Max} {
			if l, ok := f.Get(); ok && l.M > 0 {
				cuts = append(cuts, float64(l.M)*1000)
			}
		}
	}
	slices.Sort(cuts)
	var out []LengthRow
	for k, code := range lengthCodes {
		from, to := LengthEnds(k)
		edges := []float64{from}
		for _, c := range cuts {
			if last := edges[len(edges)-1]; c > last+2*ruleSlack && c < to-2*ruleSlack {
				edges = append(edges, c)
			}
		}
		for i, lo := range edges {
			row := LengthRow{Code: code, From: lo, Class: k, Cut: len(edges) > 1}
			if i+1 < len(edges) {
				row.To = edges[i+1]
			} else if !math.IsInf(to, 1) {
				row.To = to
			}
			if i > 0 {
				row.Code += "_from_" + millimetres(lo)
			}
			if i+1 < len(edges) {
				row.Code += "_under_" + millimetres(row.To)
			}
			out = append(out, row)
		}
	}
	return out
}

func millimetres(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) + "_mm" }

// rowOf returns the row of a dressing, -1 if its length is unknown.
func rowOf(rows []LengthRow, mm float64) int {
	if math.IsNaN(mm) {
		return -1
	}
	for i, r := range rows {
		slack := 0.0
		if r.Cut && i+1 < len(rows) && rows[i+1].Class == r.Class { // the end is a rule's
			slack = ruleSlack
		}
		if r.To == 0 || mm < r.To-slack {
			return i
		}
	}
	return len(rows) - 1
}

// lengthLight adds the table of hours to the card, and after the fold the fish over it.
func (b *builder) lengthLight(c *Card) {
	rows := lengthRows(b.s.rules)
	codes := make([]string, len(rows))
	for i, r := range rows {
		codes[i] = r.Code
	}
	t := b.rate(c, newSplit("length_drawn", "fly-hours", plain, pairsOf(codes, bandCodes()), byFly(func(a *at, f *FlyDigest) int {
		if k := rowOf(rows, f.LengthMM); k >= 0 {
			return k*Bands + band(a)
		}
		return -1
	})))
	out := &LengthLight{Rows: rows, Table: t, Greys: b.greys(), Fish: []DrawnFish{}, Steps: []RuleStep{}}
	b.s.LengthLight = out
	for _, r := range b.s.rules {
		if s, ok := stepOf(r, out.Greys); ok {
			out.Steps = append(out.Steps, s)
		} else {
			out.Mute = append(out.Mute, r.ID)
		}
	}
	least := b.s.View.Measure.least()
	b.eachFish(func(d *Digest, r *RodDigest, f *Fish, m *mark) {
		switch {
		case m.rank < least:
			return
		case !m.hasFly:
			out.Left.NoFly++
			return
		case m.length < 0:
			out.Left.NoLength++
			return
		}
		out.Fish = append(out.Fish, DrawnFish{
			Trip: d.Trip, ID: f.ID, Evening: d.Evening, N: f.N, Touch: f.Touch,
			Length: f.Fly.LengthMM, Shape: f.Fly.Silhouette, Tone: f.Fly.Tone, HotSpot: f.Fly.HotSpot == Yes,
			Darker: f.Darker, Lux: float64(f.Light.Lux), LuxLow: float64(f.Light.Lo), LuxHigh: float64(f.Light.Hi),
			Row: rowOf(rows, f.Fly.LengthMM), NoHours: len(f.In) == 0, Outside: outside(b.s.rules, d, r, f),
		})
	})
}

// outside lists the rules that a fish came against, in the light they are for, as
// ruleSplit counts it in its likeliest cell.
func outside(rules []journal.HouseRule, d *Digest, r *RodDigest, f *Fish) []journal.ID {
	i := f.likeliest()
	if i < 0 {
		return nil
	}
	a := at{d: d, r: r, c: &r.Cells[f.In[i].Cell]}
	var out []journal.ID
	for _, rule := range rules {
		if keeps, known := Keeps(rule, f.Fly); known && !keeps && lit(rule, &a) {
			out = append(out, rule.ID)
		}
	}
	return out
}

// greys are the thresholds of the beats fished, by name.
func (b *builder) greys() []BeatGrey {
	out := []BeatGrey{}
	for _, d := range b.s.digests {
		if !slices.ContainsFunc(out, func(g BeatGrey) bool { return g.Beat == d.Beat }) {
			out = append(out, BeatGrey{d.Beat, d.BeatName, d.Grey.Lux})
		}
	}
	slices.SortFunc(out, func(a, b BeatGrey) int {
		return cmp.Or(cmp.Compare(a.Name, b.Name), slices.Compare(a.Beat[:], b.Beat[:]))
	})
	return out
}

// stepOf lays a rule into the plane; false if it names no length, or names lux where beats
// of several thresholds are counted.
func stepOf(r journal.HouseRule, greys []BeatGrey) (RuleStep, bool) {
	s := RuleStep{Rule: r.ID, Words: r.Words, Of: r}
	if l, ok := r.Min.Get(); ok {
		s.Min = float64(l.M) * 1000
	}
	if l, ok := r.Max.Get(); ok {
		s.Max = float64(l.M) * 1000
	}
	if s.Min == 0 && s.Max == 0 {
		return s, false
	}
	edge := func(v float64) *float64 { return &v }
	switch r.AtGrey {
	case "before":
		s.Darker = edge(0)
	case "after":
		s.Lighter = edge(0)
	}
	for _, x := range []struct {
		f  journal.Field[units.Lux]
		to **float64
	}{{r.Light, &s.Lighter}, {r.Dark, &s.Darker}} {
		v, ok := x.f.Get()
		if !ok || v <= 0 {
			continue
		}
		for _, g := range greys {
			if g.Lux != greys[0].Lux {
				return s, false
			}
		}
		if len(greys) > 0 {
			*x.to = edge(math.Log10(float64(greys[0].Lux) / float64(v)))
		}
	}
	return s, true
}
