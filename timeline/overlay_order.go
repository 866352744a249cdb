package timeline

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"gloamline/journal"
)

// NightOrder is the order in which nights laid over each other are listed.
type NightOrder uint8

const (
	ByDarkest NightOrder = iota // darkest light fished first
	ByDate                      // earliest first
	ByLevel                     // lowest river first; unknown last
	ByCatch                     // most landed first, then most hooked, then most hours
)

// NightOrders lists every order, the usual one first.
var NightOrders = []NightOrder{ByDarkest, ByDate, ByLevel, ByCatch}

// String is the name in files and on a command line; it never changes.
func (o NightOrder) String() string {
	return [...]string{"darkest", "date", "level", "catch"}[min(o, ByCatch)]
}

// ParseNightOrder reads what String wrote.
func ParseNightOrder(s string) (NightOrder, error) {
	for _, o := range NightOrders {
		if o.String() == s {
			return o, nil
		}
	}
	return 0, fmt.Errorf("there is no order %q; there are darkest, date, level and catch", s)
}

// Sort puts the nights of an overlay in order. Nights that are level in it come by
// date, and then by identity, so that the order never depends on what was before.
func (o *Overlay) Sort(by NightOrder) {
	slices.SortStableFunc(o.Nights, func(a, b Laid) int {
		first := 0
		switch by {
		case ByDarkest:
			first = cmp.Compare(a.Darkest, b.Darkest)
		case ByLevel:
			first = cmp.Compare(a.level(), b.level())
		case ByCatch:
			x, y := a.Night.Totals, b.Night.Totals
			first = cmp.Or(cmp.Compare(y.Landed, x.Landed), cmp.Compare(y.Landed+y.Lost, x.Landed+x.Lost), cmp.Compare(y.InWater, x.InWater))
		}
		return cmp.Or(first, compareDates(a.Night, b.Night))
	})
}

func compareDates(a, b *Night) int {
	x, y := a.Log.Trip, b.Log.Trip
	return cmp.Or(strings.Compare(x.Evening.String(), y.Evening.String()), strings.Compare(x.ID.String(), y.ID.String()))
}

// level is the first level noted in metres, +Inf if none was.
func (l Laid) level() float64 {
	for _, w := range l.Night.Waters {
		if v, ok := w.Entry.Level.Get(); ok {
			return float64(v.M)
		}
	}
	return math.Inf(1)
}

// Level returns the first level noted that night.
func (l Laid) Level() journal.Field[float64] {
	if v := l.level(); !math.IsInf(v, 1) {
		return journal.Of(v)
	}
	return journal.Field[float64]{}
}

// Marks gives each night of the overlay a letter by date, a to z, then aa: the same
// whatever the order, so that a night keeps its letter when it is sorted anew.
func (o *Overlay) Marks() map[journal.ID]string {
	nights := make([]*Night, len(o.Nights))
	for i := range o.Nights {
		nights[i] = o.Nights[i].Night
	}
	slices.SortFunc(nights, compareDates)
	out := make(map[journal.ID]string, len(nights))
	for i, n := range nights {
		m := string(rune('a' + i%26))
		if i >= 26 {
			m = string(rune('a'+(i/26-1)%26)) + m
		}
		out[n.Log.Trip.ID] = m
	}
	return out
}
