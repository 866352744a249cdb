package main

import (
	"flag"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/timeline/season"
	"gloamline/ui/state"
)

// filterPage says in the help of a command how nights are chosen.
const filterPage = `  --from DATE      --to DATE      evenings, both included
  --year 2026      --month 7 (of any year), --month 2026-07
  --beat NAME      --trend TREND (rising, peak, falling flood, fining down, normal, none)
  --client WHICH   with: nights on which a client fished; without: the others
`

// filterOrder is which nights the command line asks for.
type filterOrder struct {
	filter        season.Filter
	beats, people []string
	nights        []journal.Date
	from, to      string
	client        string
	monthYears    []int // of months given with their year
	fault         error // the first that was met
}

// flags has the choice read from the command line.
func (o *filterOrder) flags(flags *flag.FlagSet) {
	flags.StringVar(&o.from, "from", "", "")
	flags.StringVar(&o.to, "to", "", "")
	flags.StringVar(&o.client, "client", "", "")
	each := func(name string, take func(string) error) {
		flags.Func(name, "", func(s string) error {
			if err := take(s); err != nil && o.fault == nil {
				o.fault = err
			}
			return nil
		})
	}
	f := &o.filter
	each("beat", func(s string) error { o.beats = append(o.beats, s); return nil })
	each("person", func(s string) error { o.people = append(o.people, s); return nil })
	each("year", func(s string) error {
		y, err := strconv.Atoi(s)
		if err != nil {
			return fmt.Errorf("--year %q is not a year like 2026", s)
		}
		f.Years = append(f.Years, y)
		return nil
	})
	each("month", o.month)
	each("trend", func(s string) error {
		t := journal.Trend(s)
		if s == "none" {
			t = ""
		} else if !slices.Contains(journal.Trends, t) {
			return fmt.Errorf("there is no trend %q; there are rising, peak, falling flood, fining down, normal and none", s)
		}
		f.Trends = append(f.Trends, t)
		return nil
	})
	each("night", func(s string) error {
		d, err := journal.ParseDate(s)
		if err != nil {
			return fmt.Errorf("--night %q is not a date like 2026-07-04", s)
		}
		o.nights = append(o.nights, d)
		return nil
	})
}

// month reads 2026-07, 07 or 7.
func (o *filterOrder) month(s string) error {
	bad := fmt.Errorf("--month %q is not a month like 2026-07 or 7", s)
	text := s
	if year, month, ok := strings.Cut(s, "-"); ok {
		y, err := strconv.Atoi(year)
		if err != nil || len(year) != 4 {
			return bad
		}
		text = month
		o.monthYears = append(o.monthYears, y)
	}
	m, err := strconv.Atoi(text)
	if err != nil || m < 1 || m > 12 || len(text) > 2 {
		return bad
	}
	o.filter.Months = append(o.filter.Months, time.Month(m))
	return nil
}

// check reads the rest of what was typed and finds what makes no sense.
func (o *filterOrder) check() (err error) {
	f := &o.filter
	if o.fault != nil {
		return o.fault
	}
	if n := len(o.monthYears); n > 0 {
		for _, y := range append(o.monthYears, f.Years...) {
			if y != o.monthYears[0] || n != len(f.Months) {
				return fmt.Errorf("months of two years cannot be asked for together; give --year and --month, which are those months of each of those years")
			}
		}
		f.Years = o.monthYears[:1]
	}
	if o.client != "" && o.client != string(season.ClientNights) && o.client != string(season.OwnNights) {
		return fmt.Errorf("--client is with or without, not %q", o.client)
	}
	f.Clients = season.Clients(o.client)
	for _, x := range []struct {
		name, text string
		to         *journal.Date
	}{{"from", o.from, &f.From}, {"to", o.to, &f.To}} {
		if x.text == "" {
			continue
		}
		if *x.to, err = journal.ParseDate(x.text); err != nil {
			return fmt.Errorf("--%s %q is not a date like 2026-07-04", x.name, x.text)
		}
	}
	return nil
}

// find finds beats and people by what they are called.
func (o *filterOrder) find(there state.Offers) (err error) {
	find := func(what string, names []string, list []state.Offered[journal.ID]) (out []journal.ID, err error) {
		var all []string
		for _, x := range list {
			all = append(all, x.Name)
		}
		for _, name := range names {
			i := slices.IndexFunc(all, func(n string) bool { return strings.EqualFold(n, name) })
			if i < 0 {
				return nil, fmt.Errorf("there is no %s %q on a night fished; there are %s", what, name, strings.Join(all, ", "))
			}
			out = append(out, list[i].Value)
		}
		return out, nil
	}
	if o.filter.Beats, err = find("beat", o.beats, there.Beats); err != nil {
		return err
	}
	o.filter.People, err = find("person", o.people, there.People)
	return err
}

// none reports whether nothing is asked for.
func (o *filterOrder) none() bool {
	f := o.filter
	return f.From.IsZero() && f.To.IsZero() && f.Clients == "" && len(f.Years)+len(f.Months)+len(f.Trends)+len(o.beats)+len(o.people) == 0
}

// trips are the nights of the evenings asked for among all.
func (o *filterOrder) trips(all []season.Subject) (out []journal.ID, err error) {
	for _, evening := range o.nights {
		n := len(out)
		for _, x := range all {
			if x.Evening == evening {
				out = append(out, x.Trip)
			}
		}
		if len(out) == n {
			return nil, fmt.Errorf("there is no night of %s", evening)
		}
	}
	return out, nil
}
