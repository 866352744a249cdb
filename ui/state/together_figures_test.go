package state

import (
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// A figure is a digit or a fraction of an inch; what explains one is a text printed from the JSON.
var figure = regexp.MustCompile(`[0-9½¼¾⅛⅜⅝⅞]`)

// unexplained takes out of a text all that was printed from the JSON, whole, and reports whether
// any figure is left.
func unexplained(text string, printed []string) (left string, some bool) {
	printed = slices.Clone(printed)
	slices.SortFunc(printed, func(a, b string) int { return cmp.Or(len(b)-len(a), strings.Compare(a, b)) })
	for _, p := range slices.Compact(printed) {
		if p == "" || !figure.MatchString(p) {
			continue
		}
		for from := 0; ; {
			i := strings.Index(text[from:], p)
			if i < 0 {
				break
			}
			i += from
			before, after := strings.TrimRight(text[:i], "."), text[i+len(p):]
			whole := !figure.MatchString(lastRune(before)) && !strings.HasSuffix(text[:i], ".") && !figure.MatchString(firstRune(after)) && !regexp.MustCompile(`^[.:][0-9]`).MatchString(after)
			if from = i + len(p); whole {
				text, from = text[:i]+"#"+after, i+1
			}
		}
	}
	return text, figure.MatchString(text)
}

func lastRune(s string) string {
	r := []rune(s)
	return string(r[max(0, len(r)-1):])
}

func firstRune(s string) string {
	r := []rune(s)
	return string(r[:min(1, len(r))])
}

// read is a report read back from its JSON, with the means to print what it holds.
type jsonRead struct {
	Report
	nights map[string]ReportNight // by mark
	zones  map[string]*time.Location
}

func readReport(t *testing.T, r *Together) *jsonRead {
	text, err := json.Marshal(r.Report())
	require.NoError(t, err)
	back := &jsonRead{nights: map[string]ReportNight{}, zones: map[string]*time.Location{}}
	require.NoError(t, json.Unmarshal(text, &back.Report))
	for _, n := range back.Nights {
		back.nights[n.Mark] = n
		if back.zones[n.Mark], err = time.LoadLocation(n.Zone); err != nil {
			t.Fatal(err)
		}
	}
	return back
}

func duration(hours float64) time.Duration {
	return time.Duration(math.Round(hours * float64(time.Hour))).Round(time.Second)
}

func (t ReportTally) back() timeline.Totals {
	return timeline.Totals{InWater: duration(t.RodHours), Landed: int(t.Landed), Lost: int(t.Lost), Touches: int(t.Touches), Shows: int(t.Shows), Kept: int(t.Kept)}
}

func dateOf(s string) journal.Date {
	d, err := journal.ParseDate(s)
	if err != nil {
		panic(err)
	}
	return d
}

// clocks print instants as the night's clock showed them, and the middle of two.
func (b *jsonRead) clocks(mark string, instants ...string) (out []string) {
	var all []time.Time
	for _, s := range instants {
		at, err := time.Parse(time.RFC3339, s)
		if err != nil {
			panic(err)
		}
		all = append(all, at)
		out = append(out, words.Clock(at, b.zones[mark]))
	}
	if len(all) == 2 {
		out = append(out, words.Clock(all[0].Add(all[1].Sub(all[0])/2), b.zones[mark]))
	}
	return out
}

func (b *jsonRead) day(mark string) string { return words.NightDate(dateOf(b.nights[mark].Evening)) }

func millis(mm *float64, unit units.LengthUnit) string {
	if mm == nil {
		return ""
	}
	return units.Length{M: units.Metres(*mm / 1000)}.Format(unit)
}

// fish prints a contact of the JSON.
func (b *jsonRead) fish(f ReportFish) []string {
	out := append(b.clocks(f.Mark, f.Earliest, f.Latest), b.day(f.Mark), f.Number, f.Tag, words.Darker(f.Darker),
		units.Lux(f.Lux).String(), strings.TrimSuffix(units.LuxRange(units.Lux(f.LuxLow), units.Lux(f.LuxHigh)), " lx"),
		millis(f.LengthMM, figurePrefs.Fish), millis(f.FlyMM, figurePrefs.Fly))
	if f.WeightG != nil {
		out = append(out, units.Weight{G: units.Grams(*f.WeightG)}.Format(figurePrefs.Weight))
	}
	if f.AirS != nil {
		out = append(out, fmt.Sprintf("%d s", *f.AirS))
	}
	return out
}

func (b *jsonRead) run(x ReportRun) []string {
	from, _ := time.Parse(time.RFC3339, x.From)
	to, _ := time.Parse(time.RFC3339, x.To)
	out := append(b.clocks(x.Mark, x.From, x.To), words.Duration(to.Sub(from)))
	if x.RestMin != nil {
		out = append(out, words.Duration(duration(*x.RestMin/60)))
	}
	return out
}

func (b *jsonRead) rig(x ReportRig) []string {
	out := b.clocks(x.Mark, x.At, x.Until)
	for _, mm := range x.FlyMM {
		out = append(out, millis(mm, figurePrefs.Fly))
	}
	if x.SinkIPS != nil {
		out = append(out, fmt.Sprintf("%g in a second", *x.SinkIPS))
	}
	if x.LeaderM != nil {
		out = append(out, units.Length{M: units.Metres(*x.LeaderM)}.Format(figurePrefs.Leader))
	}
	return out
}

func poolSum(p ReportPool) timeline.PoolSum {
	return timeline.PoolSum{Water: duration(p.RodHours), Landed: int(p.Landed), Lost: int(p.Lost)}
}

// figurePrefs print what people typed in any unit in one.
var figurePrefs = words.Prefs{Fly: units.Millimetre, Fish: units.Centimetre, Weight: units.Kilogram, Leader: units.Metre}

// hit prints what the JSON holds of the record behind a hit; known reports whether it holds it.
func (b *jsonRead) hit(s scene.Sides, h scene.Hit) (printed []string, known bool) {
	id := h.Ref.ID.String()
	switch h.Ref.Kind {
	case journal.KindContact:
		for _, f := range b.Fish {
			if f.ID == id {
				return b.fish(f), true
			}
		}
	case journal.KindTrip:
		for _, n := range b.Nights {
			if n.Trip == id {
				return []string{words.NightDate(dateOf(n.Evening)), words.RodHours(duration(n.RodHours)), words.Tally(n.ReportTally.back())}, true
			}
		}
	case journal.KindRun:
		for _, x := range b.Runs {
			if x.ID == id {
				return b.run(x), true
			}
		}
	case journal.KindRig:
		for _, x := range b.Rigs {
			if x.ID == id {
				return b.rig(x), true
			}
		}
	case scene.PoolKind:
		for _, p := range b.Pools {
			if p.Pool == id {
				return []string{words.PoolCount(p.Name, poolSum(p))}, true
			}
		}
		return nil, true // not fished: it has no figure
	case scene.BinKind:
		for _, a := range []ReportAxis{b.Time, b.Light} {
			axis, _ := timeline.ParseAxis(a.Axis)
			for _, x := range a.Bins {
				part := timeline.Part(slices.IndexFunc([]timeline.Part{0, 1, 2, 3}, func(p timeline.Part) bool { return p.String() == x.Part }))
				if !strings.HasPrefix(h.Tip, words.BinSpan(axis, timeline.Bin{Part: part, Lo: x.From, Hi: x.To})+":") {
					continue
				}
				known = true
				for _, e := range []float64{-2e-6, 0, 2e-6} { // the JSON has six decimals: a half may go either way
					printed = append(printed, pieces(words.BinTip(axis, timeline.Bin{Part: part, Lo: x.From, Hi: x.To, Nights: x.Nights,
						Water: time.Duration((x.RodHours + e) * float64(time.Hour)), Landed: x.Landed + e, Lost: x.Lost + e, Touches: x.Touches + e, Shows: x.Shows + e}))...)
				}
			}
		}
		for _, said := range pieces(h.Tip) {
			known = known && slices.Contains(printed, said)
		}
		return pieces(h.Tip), known
	case scene.SpotKind:
		return nil, true
	}
	return nil, false
}

// pieces are the parts of a sentence about a step, the first with its span.
func pieces(said string) []string { return regexp.MustCompile("[,;] | on ").Split(said, -1) }

// texts prints what the JSON holds that may be drawn or listed.
func (b *jsonRead) texts() (out []string) {
	years := map[int]bool{}
	for _, n := range b.Nights {
		years[dateOf(n.Evening).Year] = true
	}
	for _, n := range b.Nights {
		d := dateOf(n.Evening)
		out = append(out, words.ShortNight(d, len(years) > 1), words.ShortDate(d), words.HoursAndFish(n.ReportTally.back()))
	}
	for _, n := range b.Others {
		out = append(out, words.ShortDate(dateOf(n.Evening)), words.HoursAndFish(n.ReportTally.back()))
	}
	for _, f := range b.Fish {
		out = append(out, f.Mark+f.Number)
	}
	for _, p := range b.Pools {
		_, count, _ := strings.Cut(words.PoolCount("x", poolSum(p)), ": ")
		out = append(out, count)
	}
	for _, x := range b.Rigs {
		for _, mm := range x.FlyMM {
			out = append(out, millis(mm, figurePrefs.Fly))
		}
	}
	for _, shown := range b.Beats {
		var rest timeline.Totals
		for _, x := range b.Beats {
			if x.Beat != shown.Beat {
				rest = rest.Plus(x.ReportTally.back())
			}
		}
		out = append(out, words.OnOtherBeats(rest), words.WithoutPool(shown.WithoutPool))
	}
	return append(out, b.Said...)
}

// scales are the texts along axes and of the map's scale: of no night.
func scales(axis timeline.Axis) map[string]bool {
	out := map[string]bool{}
	for m := -24 * 60; m <= 48*60; m += 5 {
		out[words.AxisTick(axis, float64(m))] = true
		out[words.HoursTick(time.Duration(m)*time.Minute)] = true
	}
	for p := -6; p <= 6; p++ {
		out[words.LuxTick(p, true)], out[words.LuxTick(p, false)] = true, true
	}
	for _, m := range []int{1, 2, 5, 10, 20, 50, 100, 200, 500} {
		out[fmt.Sprintf("%d m", m)] = true
	}
	return out
}

// Ensure that the JSON holds every figure that the room shows: what is drawn, what a tip says of
// the thing under the pointer, the rows of the list, the title and the sentences. What is shown is
// printed anew from the JSON alone and taken out; no digit may be left.
func TestEveryFigureOfTheRoomIsInItsJSON(t *testing.T) {
	d, r := inTogether(t)
	d.SetPrefs(figurePrefs)
	rows := r.Rows()
	met := map[string]int{}
	for name, choose := range map[string]func(){
		"latest": func() { r.Reset() },
		"all":    func() { r.SetChoice(NightChoice{}) },
		"one":    func() { r.SetChoice(NightChoice{None: true, Added: []journal.ID{rows[3].Trip}}) },
		"three": func() {
			r.SetChoice(NightChoice{None: true, Added: []journal.ID{rows[0].Trip, rows[3].Trip, rows[7].Trip}})
		},
		"several": func() { r.SetChoice(NightChoice{Filter: season.Filter{Months: []time.Month{time.June, time.August}}}) },
		"like":    func() { r.LikeThis(rows[5].Trip) },
		"none":    func() { r.None() },
	} {
		choose()
		for _, axis := range timeline.Axes {
			r.SetAxis(axis)
			back := readReport(t, r)
			title, how := r.Said()
			assert.Equal(t, [2]string{title, how}, [2]string{back.Title, back.How})
			s, texts, scale := r.Sides(), back.texts(), scales(r.Sides().Time.Axis)
			for _, l := range s.Light.Nights {
				for _, x := range l.Night.Beat.Pools {
					if figure.MatchString(x.Name) {
						texts = append(texts, x.Name)
					}
				}
			}
			for _, row := range r.Rows() {
				for _, said := range []string{words.ShortDate(row.Evening), words.HoursAndFish(row.Totals)} {
					if left, some := unexplained(said, texts); some {
						assert.Fail(t, "the list shows what the JSON does not hold", "%s %s: %s", name, axis, left)
					}
					met["row"]++
				}
			}
			for _, p := range scene.Pictures {
				sc := scene.Together(p, s, draw.Size{W: 1060, H: 660}, scene.Dusk, r.View())
				var drawn []string
				for i := range sc.List.Len() {
					if o := sc.List.Op(i); o.Kind == draw.TextOp && !scale[o.Text.S] {
						drawn = append(drawn, o.Text.S)
					}
				}
				if left, some := unexplained(strings.Join(drawn, " "), texts); some {
					at := figure.FindStringIndex(left)[0]
					assert.Fail(t, "a picture shows what the JSON does not hold", "%s %s %s: … %s …", name, axis, p, left[max(0, at-40):min(len(left), at+60)])
				}
				met["text"] += len(drawn)
				for _, h := range sc.Hits {
					met[string(h.Ref.Kind)]++
					printed, known := back.hit(s, h)
					left, some := unexplained(withoutNotes(s, h), printed)
					if !known || some {
						assert.Fail(t, "a tip says what the JSON does not hold", "%s %s %s: %s, left of %q", name, axis, p, left, h.Tip)
					}
				}
			}
			if t.Failed() {
				return
			}
		}
	}
	for _, kind := range []string{"row", "text", "bin", "contact", "trip", "pool", "run", "rig"} {
		assert.Greater(t, met[kind], 20, kind)
	}
}

// withoutNotes is a tip without what people wrote by hand, which is no figure of the program's.
func withoutNotes(s scene.Sides, h scene.Hit) string {
	tip := h.Tip
	for _, l := range s.Light.Nights {
		for _, k := range l.Night.Contacts {
			if k.Ref() == h.Ref && k.Note != "" {
				tip = strings.Replace(tip, k.Note, "", 1)
			}
		}
		for _, rod := range l.Night.Rods {
			for _, x := range rod.Runs {
				if x.Run.Ref() == h.Ref && x.Run.Note != "" {
					tip = strings.Replace(tip, x.Run.Note, "", 1)
				}
			}
			for _, x := range rod.Rigs {
				if x.Rig.Ref() == h.Ref && x.Rig.Note != "" {
					tip = strings.Replace(tip, x.Rig.Note, "", 1)
				}
			}
		}
	}
	return tip
}
