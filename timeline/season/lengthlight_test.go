package season

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

func inchOf(v float64) journal.Field[units.Length] {
	return journal.Of(units.LengthOf(v, units.Inch))
}

// Ensure that classes are cut where a rule's length lies within one, and nowhere else.
func TestLengthRows(t *testing.T) {
	codes := func(rules ...journal.HouseRule) (out []string) {
		rows := lengthRows(rules)
		for i, r := range rows {
			out = append(out, r.Code)
			if i > 0 {
				assert.InDelta(t, rows[i-1].To, r.From, 1e-9, "rows leave no gap")
			}
			mid := r.From + 10
			if r.To > 0 {
				mid = (r.From + r.To) / 2
			}
			assert.Equal(t, i, rowOf(rows, mid), r.Code)
		}
		assert.Zero(t, rows[len(rows)-1].To)
		assert.Equal(t, -1, rowOf(rows, math.NaN()))
		return out
	}
	assert.Equal(t, lengthCodes, codes())
	assert.Equal(t, lengthCodes, codes(journal.HouseRule{Min: inchOf(0.875)}), "a rule on the edge of a class cuts none")
	got := codes(journal.HouseRule{Min: inchOf(1)}, journal.HouseRule{Max: inchOf(1)}, journal.HouseRule{Max: journal.Of(units.LengthOf(150, units.Millimetre))})
	assert.Equal(t, []string{"half_inch", "three_quarter_inch", "1_inch_under_25.4_mm", "1_inch_from_25.4_mm", "1_and_half_inch", "2_inch", "3_inch",
		"longer_under_150_mm", "longer_from_150_mm"}, got)
	rows := lengthRows([]journal.HouseRule{{Min: inchOf(1)}})
	assert.Equal(t, "1_inch_from_25.4_mm", rows[rowOf(rows, 25.35)].Code, "a fly measured a hair short keeps to the rule, and stands so")
	assert.Equal(t, "1_inch_under_25.4_mm", rows[rowOf(rows, 25.2)].Code)
}

// Ensure that rules by grey trees and by lux become steps, and that those which cannot are told.
func TestSteps(t *testing.T) {
	at := func(v float64) *float64 { return &v }
	one := []BeatGrey{{Lux: 0.2}}
	two := []BeatGrey{{Lux: 0.2}, {Lux: 0.4}}
	for _, x := range []struct {
		rule  journal.HouseRule
		greys []BeatGrey
		want  RuleStep
		drawn bool
	}{
		{journal.HouseRule{AtGrey: "before", Max: inchOf(1)}, two, RuleStep{Darker: at(0), Max: 25.4}, true},
		{journal.HouseRule{AtGrey: "after", Min: inchOf(1.5)}, two, RuleStep{Lighter: at(0), Min: 38.1}, true},
		{journal.HouseRule{Light: journal.Of(units.Lux(2)), Dark: journal.Of(units.Lux(0.02)), Max: inchOf(1)}, one, RuleStep{Lighter: at(-1), Darker: at(1), Max: 25.4}, true},
		{journal.HouseRule{Light: journal.Of(units.Lux(2)), Max: inchOf(1)}, two, RuleStep{}, false},
		{journal.HouseRule{AtGrey: "after", Tones: []journal.Tone{journal.DarkTone}}, one, RuleStep{}, false},
	} {
		got, ok := stepOf(x.rule, x.greys)
		require.Equal(t, x.drawn, ok, x.rule)
		if !ok {
			continue
		}
		assert.InDelta(t, x.want.Max, got.Max, 1e-9)
		assert.InDelta(t, x.want.Min, got.Min, 1e-9)
		for _, e := range [][2]*float64{{x.want.Lighter, got.Lighter}, {x.want.Darker, got.Darker}} {
			require.Equal(t, e[0] == nil, e[1] == nil)
			if e[0] != nil {
				assert.InDelta(t, *e[0], *e[1], 1e-9)
			}
		}
	}
}

// Ensure that every fish that counts is drawn or told, under any measure and filter, and that
// the hours of the rows are those of their classes.
func TestLengthLightAddsUp(t *testing.T) {
	n := demoNights(t)
	for _, m := range Measures {
		for _, f := range []Filter{{}, {Months: []time.Month{time.August}}, {Clients: ClientNights}, {Trips: []journal.ID{n.Digests[3].Trip}}} {
			s := Fold(n, View{Filter: f, Measure: m})
			l := s.LengthLight
			assert.Equal(t, s.Placed.Fish, len(l.Fish)+l.Left.NoFly+l.Left.NoLength)
			assert.Equal(t, s.Placed.NoFly, l.Left.NoFly)
			classes := s.Table("length_light")
			hours, fish := make([]float64, len(classes.Rows)), make([]float64, len(classes.Rows))
			for i, r := range l.Rows {
				for k := range Bands {
					cell := l.Table.Rows[i*Bands+k]
					hours[r.Class*Bands+k] += cell.Hours
					fish[r.Class*Bands+k] += cell.Fish
				}
			}
			for i, r := range classes.Rows {
				assert.GreaterOrEqual(t, hours[i], r.Hours-1e-9, r.Code) // two flies of one class on a leader may lie in two rows
				assert.InDelta(t, r.Fish, fish[i], 1e-9, r.Code)
			}
		}
	}
	assert.NotEmpty(t, Fold(n, View{}).LengthLight.Fish)
}

// Ensure that a fish is said to have come off a rule just when the open sky over it and its
// fly say so, taken from the night itself.
func TestOutside(t *testing.T) {
	j := demoJournal(t)
	n, err := NewBook(j).Read(nil)
	require.NoError(t, err)
	s := Fold(n, View{Measure: AllContacts})
	var after journal.HouseRule
	for _, r := range n.Rules {
		if r.AtGrey == "after" && r.Min.Known() {
			after = r
		}
	}
	require.False(t, after.ID.IsZero())
	nights := map[journal.ID]*timeline.Night{}
	off, on := 0, 0
	for _, f := range s.LengthLight.Fish {
		if f.NoHours {
			assert.Empty(t, f.Outside)
			continue
		}
		if nights[f.Trip] == nil {
			nights[f.Trip], err = timeline.Load(j, f.Trip)
			require.NoError(t, err)
		}
		night := nights[f.Trip]
		for _, k := range night.Contacts {
			if k.ID != f.ID || k.At.Hi.Sub(k.At.Lo) > 0 {
				continue // of an uncertain one the likeliest light counts
			}
			dark := float64(night.Open.At(k.At.Mid()).Lux) < float64(night.Grey.Threshold.Lux)
			want := dark && f.Length < 25.4-ruleSlack
			got := false
			for _, id := range f.Outside {
				got = got || id == after.ID
			}
			assert.Equal(t, want, got, "%s no. %d", f.Evening, f.N)
			if got {
				off++
			} else {
				on++
			}
		}
	}
	assert.Greater(t, off, 3)
	assert.Greater(t, on, 10)
}
