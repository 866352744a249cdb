package season

import (
	"math"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// lot draws one of a list.
func lot[T any](t *rapid.T, list ...T) T { return rapid.SampledFrom(list).Draw(t, "lot") }

func upTo(t *rapid.T, n int) int { return rapid.IntRange(0, n).Draw(t, "n") }

// orNone is a figure now and then, and not a number otherwise.
func orNone(t *rapid.T, v float64) float64 { return lot(t, math.NaN(), v, 2*v, v/3) }

func randomFly(t *rapid.T) FlyDigest {
	return FlyDigest{
		Position: upTo(t, 2), Fly: journal.ID{9, byte(upTo(t, 3))}, LengthMM: orNone(t, 38.1),
		Silhouette: lot(t, append(journal.Silhouettes, "")...), Tone: lot(t, append(journal.Tones, "")...),
		HotSpot: Answer(upTo(t, 2)), Hook: lot(t, append(journal.Hooks, "")...), Surface: lot(t, false, true),
	}
}

// randomNight is a night as DigestOf may make it, of one rod or several, with everything that
// questions ask known or not.
func randomNight(t *rapid.T, i int) *Digest {
	beat := byte(1 + upTo(t, 1))
	d := &Digest{
		Trip: journal.ID{8, byte(i)}, Evening: journal.Date{Year: 2025 + upTo(t, 1), Month: time.Month(5 + upTo(t, 3)), Day: 1 + i},
		Beat: journal.ID{beat}, BeatName: lot(t, "Home Beat", "Kirk Beat"), River: "Larrick Water", Edges: []float64{3, 0.3, 0.03},
	}
	d.Grey.Lux = 0.3
	d.Fished = time.Date(d.Evening.Year, d.Evening.Month, d.Evening.Day, 22, 0, 0, 0, time.UTC)
	d.Facts = Facts{
		Trend: lot(t, append(journal.Trends, "")...), Clarity: lot(t, append(journal.Clarities, "")...),
		LevelM: orNone(t, 0.4), TempC: orNone(t, 8.5), Wind: upTo(t, 5) - 1, Cloud: upTo(t, 9) - 1,
	}
	if lot(t, false, true) {
		d.Planned = []journal.ID{{7, beat, 1}}
	}
	for range 1 + upTo(t, 2) {
		d.Rods = append(d.Rods, randomRod(t, d, beat))
	}
	return d
}

func randomRod(t *rapid.T, d *Digest, beat byte) RodDigest {
	r := RodDigest{Person: journal.ID{6, byte(upTo(t, 2))}, Client: lot(t, false, true)}
	for range 1 + upTo(t, 3) {
		pool := journal.ID{7, beat, byte(upTo(t, 3))}
		local := slices.Index(d.pools, pool)
		if local < 0 {
			local = len(d.pools)
			d.pools = append(d.pools, pool)
		}
		r.Runs = append(r.Runs, RunDigest{
			Pool: pool, Name: lot(t, "Pool A", "Pool B"), Order: upTo(t, 2), Local: local, Nth: 1 + upTo(t, 2),
			Rest: time.Duration(upTo(t, 90)) * time.Minute, Bank: lot(t, "", geo.TrueLeft, geo.TrueRight), Planned: lot(t, false, true),
		})
	}
	for range upTo(t, 2) {
		rig := RigDigest{Surface: lot(t, false, false, true)}
		for range upTo(t, 3) {
			rig.Flies = append(rig.Flies, randomFly(t))
		}
		r.Rigs = append(r.Rigs, rig)
	}
	for range upTo(t, 2) {
		r.Ways = append(r.Ways, WayDigest{Speed: lot(t, append(journal.Speeds, "")...)})
	}
	for range 1 + upTo(t, 7) {
		h := lot(t, 0, 0.01, 0.07, 0.1, 0.3, 1.7)
		r.Cells = append(r.Cells, Cell{
			Run: int16(upTo(t, len(r.Runs)-1)), Rig: int16(upTo(t, len(r.Rigs)) - 1), Way: int16(upTo(t, len(r.Ways)) - 1),
			Sky: int16(upTo(t, 3)), Band: Band(upTo(t, Bands-1)), Night: lot(t, false, true), Since: int8(upTo(t, SinceMost+2) - 2),
			Moon: lot(t, false, true), Hours: h,
		})
		r.Hours += h
		r.Clock = append(r.Clock, Bin{int16(upTo(t, 95)), h})
		r.Dark = append(r.Dark, Bin{int16(upTo(t, 60) - 30), h})
	}
	for range upTo(t, 5) {
		f := Fish{
			Touch: lot(t, journal.Touches...), Pool: r.Runs[0].Pool, HasPool: lot(t, false, true), Fly: randomFly(t), HasFly: lot(t, false, true, true),
			FliesUp: upTo(t, 3), Length: orNone(t, 0.3), Weight: orNone(t, 500), Lice: Answer(upTo(t, 2)),
			Hooked: lot(t, append(journal.HookPlaces, "")...), Part: lot(t, append(journal.Parts, "")...),
		}
		f.rank = rank(f.Touch)
		f.At = journal.Spread{Lo: d.Fished, Hi: d.Fished.Add(time.Duration(upTo(t, 50)) * time.Minute)}
		left := 1.0
		for range upTo(t, 3) {
			v := left * 0.37
			f.In = append(f.In, Part{int32(upTo(t, len(r.Cells)-1)), v})
			f.Clock = append(f.Clock, Bin{int16(upTo(t, 95)), v})
			f.Dark = append(f.Dark, Bin{int16(upTo(t, 60) - 30), v})
			left -= v
		}
		r.Fish = append(r.Fish, f)
	}
	return r
}

func randomRule(t *rapid.T, i int) journal.HouseRule {
	r := journal.HouseRule{ID: journal.ID{5, byte(i)}, Words: "a rule", AtGrey: lot(t, "", "before", "after")}
	if lot(t, false, true) {
		r.Min = journal.Of(units.Length{M: 0.03})
	}
	if lot(t, false, true) {
		r.Tones = journal.Tones[:1]
	}
	if lot(t, false, true) {
		r.Position = journal.Of(upTo(t, 1))
	}
	if r.AtGrey == "" {
		r.Dark = journal.Of(units.Lux(0.03))
	}
	return r
}

func randomView(t *rapid.T) View {
	v := View{Measure: lot(t, Measures...)}
	f := &v.Filter
	if lot(t, false, true) {
		f.People = []journal.ID{{6, byte(upTo(t, 2))}}
	}
	if lot(t, false, false, true) {
		f.Beats = []journal.ID{{byte(1 + upTo(t, 1))}}
	}
	if lot(t, false, false, true) {
		f.Months = []time.Month{5, 6}
	}
	if lot(t, false, false, true) {
		f.Trends = []journal.Trend{"", journal.Trends[upTo(t, len(journal.Trends)-1)]}
	}
	f.Clients = lot(t, AnyNights, AnyNights, ClientNights, OwnNights)
	return v
}

func randomNights(t *rapid.T) Nights {
	var n Nights
	for i := range 1 + upTo(t, 4) {
		n.Digests = append(n.Digests, randomNight(t, i))
	}
	for i := range upTo(t, 2) {
		n.Rules = append(n.Rules, randomRule(t, i))
	}
	if lot(t, false, true) {
		n.Floods = &Floods{From: time.Date(2025, 1, 1, 0, 0, 0, 0, time.UTC), To: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC),
			Peaks: []time.Time{time.Date(2025, 5, 3, 0, 0, 0, 0, time.UTC), time.Date(2026, 6, 2, 6, 0, 0, 0, time.UTC)}}
	}
	return n
}

// Ensure that what is added up from sheets is what a walk over the cells themselves comes to,
// to the last bit, in every table of any nights under any filter, measure and house rules.
func TestSheetsSayWhatCellsSay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, v := randomNights(t), randomView(t)
		summed, walked := foldedBy(n, v, false), foldedBy(n, v, true)
		require.Equal(t, len(walked), len(summed))
		for i, w := range walked {
			s := summed[i]
			require.Equal(t, w.table.Name, s.table.Name)
			require.Equal(t, w.table.Apart, s.table.Apart, w.table.Name)
			require.Equal(t, w.table.NoHours, s.table.NoHours, w.table.Name)
			for k, row := range w.table.Rows {
				require.Equal(t, row, s.table.Rows[k], "%s %s", w.table.Name, row.Code)
			}
		}
	})
}

// foldedBy fills every table one way or the other.
func foldedBy(n Nights, v View, walk bool) []*split {
	s := &Season{View: v, cat: newCatalogue(n.Rules), rules: n.Rules, floods: n.Floods}
	for _, d := range n.Digests {
		if v.Filter.Takes(d) {
			s.digests = append(s.digests, d)
		}
	}
	c := &chosen{s.digests, s.cat.sheetsOf(s.digests), s.cat, v}
	b := &builder{s: s, sheets: c.sheets}
	b.pools, b.place = poolsOf(c.sheets)
	b.questions()
	all := append(b.splits, b.hidden...)
	if walk {
		c.walk(all)
	} else {
		c.sum(all)
	}
	return all
}

// Ensure that a mark says of a fish what the fish says, for all that questions ask.
func TestMarksSayWhatFishSay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomNight(t, 0)
		sheet := newCatalogue(nil).sheetOf(d)
		for ri := range d.Rods {
			r := &d.Rods[ri]
			require.Len(t, sheet.rods[ri].marks, len(r.Fish))
			for i, m := range sheet.rods[ri].marks {
				f := &r.Fish[i]
				for _, measure := range Measures {
					require.Equal(t, measure.counts(f.Touch), m.rank >= measure.least())
				}
				word := func(list []string, at int8) string {
					if at < 0 {
						return ""
					}
					return list[at]
				}
				require.Equal(t, f.Touch == journal.Landed, m.class == landed)
				require.Equal(t, f.Fly.Hook, word(journal.Hooks, m.hook))
				require.Equal(t, f.Hooked, word(journal.HookPlaces, m.place))
				require.Equal(t, f.Part, word(journal.Parts, m.part))
				require.Equal(t, LengthClass(f.Fly.LengthMM), int(m.length))
				require.Equal(t, []bool{f.HasFly, f.HasPool, len(f.In) > 0, f.At.Hi.Sub(f.At.Lo) >= wide}, []bool{m.hasFly, m.hasPool, m.placed, m.wide})
				require.Equal(t, []int{f.Fly.Position, f.FliesUp, int(f.Lice)}, []int{int(m.position), int(m.flies), int(m.lice)})
				band, speed, rig, most, mostRig := -1, journal.Speed(""), -1, 0.0, 0.0
				for _, p := range f.In {
					c := r.Cells[p.Cell]
					if p.Share > most {
						most, band, speed = p.Share, int(c.Band), ""
						if c.Way >= 0 {
							speed = r.Ways[c.Way].Speed
						}
					}
					if c.Rig >= 0 && p.Share > mostRig {
						mostRig, rig = p.Share, int(c.Rig)
					}
				}
				require.Equal(t, []int{band, rig}, []int{int(m.band), int(m.rig)})
				require.Equal(t, string(speed), word(texts(journal.Speeds), m.speed))
				var a, b Chain
				a.add(f.Touch, 2)
				b.put(m.class, 2)
				require.Equal(t, a, b)
			}
		}
	})
}

// Ensure that a season made with the sheets that a book keeps is the season of its nights
// without them, and that house rules of another journal make their own.
func TestKeptSheets(t *testing.T) {
	n := demoNights(t)
	require.NotNil(t, n.cat)
	for _, d := range n.Digests {
		require.Same(t, n.cat, d.sheet.of)
	}
	bare := Nights{Rules: n.Rules, Floods: n.Floods, Left: n.Left}
	for _, d := range n.Digests {
		c := *d
		c.sheet = nil
		bare.Digests = append(bare.Digests, &c)
	}
	for _, v := range []View{{}, {Measure: AllContacts, Filter: Filter{People: []journal.ID{n.Digests[0].Rods[0].Person}}}} {
		want := Fold(bare, v)
		got := Fold(n, v)
		assert.Equal(t, want.Tables, got.Tables)
		assert.Equal(t, want.Pools, got.Pools)
		assert.Equal(t, want.Rules, got.Rules)
		assert.Equal(t, want.List, got.List)
		assert.Equal(t, want.Placed, got.Placed)
		// Settling changes no row but by what is resampled.
		for i, tb := range got.Settle().Tables {
			if tb.Name == "alike_foretold" {
				continue // which is worked out then
			}
			for k, row := range tb.Rows {
				row.Nightly = nil
				require.Equal(t, got.Tables[i].Rows[k], row, "%s %s", tb.Name, row.Code)
			}
		}
	}
	other := n
	other.Rules = []journal.HouseRule{{ID: journal.NewID(), Words: "long by night", AtGrey: "after", Min: journal.Of(units.Length{M: 0.04})}}
	bare.Rules = other.Rules
	assert.Equal(t, Fold(bare, View{}).Tables, Fold(other, View{}).Tables)
}
