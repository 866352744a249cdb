package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/timeline/season"
	"gloamline/ui/paper"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	"gloamline/ui/words"
)

const seasonPage = `Example:
  gloam season --demo --year 2026 --beat "Home Beat"

gloam season adds nights up: rod-hours with a fly in the water beside fish, pool by pool
and question by question, and says what may be concluded, which is usually that it is not
enough yet. Unlike a list of catches it counts blank hours and blank nights.

  --journal FILE   the journal to read; it is not changed
  --demo           the demo journal instead

Which nights: those that fit all of what is given; without any, all. Each may be given
several times, except --from, --to and --client.
  --from DATE      --to DATE      evenings, both included
  --year 2026      --month 7 (of any year)
  --beat NAME      --trend TREND (rising, peak, falling flood, fining down, normal, none)
  --person NAME    only this person's rod counts
  --client WHICH   with: nights on which a client fished; without: the others
  --night DATE     this night
  --count WHICH    what counts as a fish: hooked (without it), contacts, touched, landed

  --json           every figure, as written down beside the source (timeline/season/SEASON.md)
  --csv TABLE      one table as CSV; --tables lists them
  --card N -o FILE one question with its plots and tables as pages: .pdf, .png or .svg;
                   0 is what it all comes to; no file that exists is written over
  --look NAME      of those pages: paper (without it), dusk or lamp
  --fold           with the tests behind each answer
`

var seasonCommand = command{
	name: "season",
	help: "what nights come to: hours beside fish, and what may be concluded",
	page: seasonPage,
	run:  runSeason,
}

// seasonOrder is what the command line asks for.
type seasonOrder struct {
	journal, csv              string
	demo, json, fold, tables  bool
	view                      season.View
	beats, people             []string
	years                     []int
	nights                    []journal.Date
	names, persons            map[journal.ID]string
	measure, client, from, to string
	out, look                 string
	card                      int
}

func runSeason(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	o, code, ok := readSeason(args, stdout, stderr)
	if !ok {
		return code
	}
	open := func() (*journal.Journal, error) { return openJournal(o.journal) }
	if o.demo {
		open = demoJournal
	}
	j, err := open()
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	defer j.Close()
	nights, err := season.NewBook(j).Read(nil)
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	if err := o.choose(nights.Digests); err != nil {
		return fail(stderr, wrong, "%v", err)
	}
	s := season.Fold(nights, o.view)
	if s.Nights == 0 {
		return fail(stderr, wrong, "no night fits; give less to choose by")
	}
	s = s.Settle()
	for _, l := range s.Left {
		fmt.Fprintf(stderr, "gloam: the night of %s is in no figure: %v\n", l.Trip.Evening, l.Err)
	}
	if o.out != "" {
		return o.pages(j, nights, s, stdout, stderr)
	}
	return o.write(s, stdout, stderr)
}

// pages draws a card and writes it.
func (o *seasonOrder) pages(j *journal.Journal, nights season.Nights, s *season.Season, stdout, stderr io.Writer) int {
	v := scene.SeasonView{Season: s, Nights: len(nights.Digests), Full: map[int]bool{o.card: o.fold}}
	beats, err := state.SeasonSketches(j, nights, o.view.Filter)
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	v.Beats = beats
	title := words.SeasonPageTitle(words.SeasonTitle(s))
	names, err := paper.Save(o.out, title, scene.SeasonPages(v, o.card, title, words.SeasonMade(o.said(), o.filter()), scene.LookNamed(o.look)))
	if err != nil {
		return notWritten(stderr, o.out, err)
	}
	return show(stdout, strings.Join(names, "\n")+"\n")
}

// readSeason reads the command line. When it returns ok false the command ends with code
// at once.
func readSeason(args []string, stdout, stderr io.Writer) (o *seasonOrder, code int, ok bool) {
	o = &seasonOrder{}
	flags := flag.NewFlagSet("season", flag.ContinueOnError)
	flags.StringVar(&o.journal, "journal", "", "")
	flags.BoolVar(&o.demo, "demo", false, "")
	flags.BoolVar(&o.json, "json", false, "")
	flags.BoolVar(&o.fold, "fold", false, "")
	flags.BoolVar(&o.tables, "tables", false, "")
	flags.StringVar(&o.csv, "csv", "", "")
	flags.StringVar(&o.measure, "count", string(season.Hooked), "")
	flags.StringVar(&o.client, "client", "", "")
	flags.StringVar(&o.from, "from", "", "")
	flags.StringVar(&o.to, "to", "", "")
	flags.StringVar(&o.out, "o", "", "")
	flags.StringVar(&o.look, "look", scene.Paper.Name, "")
	flags.IntVar(&o.card, "card", 0, "")
	var bad error
	each := func(name string, take func(string) error) {
		flags.Func(name, "", func(s string) error {
			if err := take(s); err != nil && bad == nil {
				bad = err
			}
			return nil
		})
	}
	f := &o.view.Filter
	each("beat", func(s string) error { o.beats = append(o.beats, s); return nil })
	each("person", func(s string) error { o.people = append(o.people, s); return nil })
	each("year", func(s string) error {
		y, err := strconv.Atoi(s)
		if err != nil {
			return fmt.Errorf("--year %q is not a year like 2026", s)
		}
		o.years = append(o.years, y)
		return nil
	})
	each("month", func(s string) error {
		m, err := strconv.Atoi(s)
		if err != nil || m < 1 || m > 12 {
			return fmt.Errorf("--month %q is not a month from 1 to 12", s)
		}
		f.Months = append(f.Months, time.Month(m))
		return nil
	})
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
	if code, ok := parse(flags, args, seasonPage, stdout, stderr); !ok {
		return o, code, false
	}
	if bad == nil {
		bad = o.check(flags.Args())
	}
	if bad != nil {
		return o, fail(stderr, wrong, "%v", bad), false
	}
	return o, done, true
}

// check finds what makes no sense.
func (o *seasonOrder) check(more []string) (err error) {
	f := &o.view.Filter
	switch {
	case len(more) > 0:
		return fmt.Errorf("gloam season takes no %q; see gloam help season", more[0])
	case o.journal == "" && !o.demo:
		return fmt.Errorf("say which journal: --journal FILE, or --demo")
	case o.journal != "" && o.demo:
		return fmt.Errorf("--journal and --demo exclude each other")
	case o.json && (o.csv != "" || o.tables) || o.csv != "" && o.tables || o.out != "" && (o.json || o.tables || o.csv != ""):
		return fmt.Errorf("--json, --csv, --tables and -o exclude each other")
	case o.out != "" && !paper.Takes(o.out):
		return fmt.Errorf("%w, not %q", paper.ErrFormat, o.out)
	case o.card < 0 || o.card >= state.SeasonCards:
		return fmt.Errorf("--card is a question from 1 to %d, or 0, not %d", state.SeasonCards-1, o.card)
	case o.card > 0 && o.out == "":
		return fmt.Errorf("say where the card goes: -o season.pdf")
	case scene.LookNamed(o.look).Name != o.look:
		return fmt.Errorf("there is no look %q; there are paper, dusk and lamp", o.look)
	case !slices.Contains(season.Measures, season.Measure(o.measure)):
		return fmt.Errorf("--count %q is none of contacts, touched, hooked, landed", o.measure)
	case o.client != "" && o.client != string(season.ClientNights) && o.client != string(season.OwnNights):
		return fmt.Errorf("--client is with or without, not %q", o.client)
	}
	o.view.Measure, f.Clients = season.Measure(o.measure), season.Clients(o.client)
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

// choose finds beats, people and nights by what they are called.
func (o *seasonOrder) choose(nights []*season.Digest) error {
	f := &o.view.Filter
	o.names, o.persons = map[journal.ID]string{}, map[journal.ID]string{}
	for _, d := range nights {
		o.names[d.Beat] = d.BeatName
		for _, r := range d.Rods {
			o.persons[r.Person] = r.Name
		}
	}
	find := func(what, name string, list map[journal.ID]string) (journal.ID, error) {
		var there []string
		for id, n := range list {
			if strings.EqualFold(n, name) {
				return id, nil
			}
			there = append(there, n)
		}
		slices.Sort(there)
		return journal.ID{}, fmt.Errorf("there is no %s %q on a night fished; there are %s", what, name, strings.Join(there, ", "))
	}
	for _, name := range o.beats {
		id, err := find("beat", name, o.names)
		if err != nil {
			return err
		}
		f.Beats = append(f.Beats, id)
	}
	for _, name := range o.people {
		id, err := find("person", name, o.persons)
		if err != nil {
			return err
		}
		f.People = append(f.People, id)
	}
	for _, evening := range o.nights {
		n := len(f.Trips)
		for _, d := range nights {
			if d.Evening == evening {
				f.Trips = append(f.Trips, d.Trip)
			}
		}
		if len(f.Trips) == n {
			return fmt.Errorf("there is no night of %s", evening)
		}
	}
	if len(o.years) > 0 {
		var in []journal.ID
		for _, d := range nights {
			if slices.Contains(o.years, d.Evening.Year) && (len(o.nights) == 0 || slices.Contains(f.Trips, d.Trip)) {
				in = append(in, d.Trip)
			}
		}
		if len(in) == 0 {
			return fmt.Errorf("no night of that year fits")
		}
		f.Trips = in
	}
	return nil
}

// title says what the figures are made from; it stands on every export.
func (o *seasonOrder) title(s *season.Season) string {
	out := words.SeasonTitle(s)
	if by := o.filter(); by != "" {
		out += "; " + by
	}
	return out + "; a fish is: " + words.MeasureName(s.View.Measure)
}

// said is the choice as it is put into words.
func (o *seasonOrder) said() season.View {
	v := o.view
	if len(o.nights) == 0 {
		v.Filter.Trips = nil // they are those of the years, which the title shows
	}
	return v
}

// filter says which nights were let through; empty for all.
func (o *seasonOrder) filter() string {
	return words.SeasonFilter(o.said(), func(id journal.ID) string { return o.names[id] }, func(id journal.ID) string { return o.persons[id] })
}

func (o *seasonOrder) write(s *season.Season, stdout, stderr io.Writer) int {
	switch {
	case o.tables:
		var b strings.Builder
		for _, t := range s.Tables {
			fmt.Fprintf(&b, "%s\n", t.Name)
		}
		for _, x := range s.Sheets() {
			fmt.Fprintf(&b, "%s\n", x.Name)
		}
		return show(stdout, b.String())
	case o.csv != "" && s.Sheet(o.csv) != nil:
		var b bytes.Buffer
		if err := s.Sheet(o.csv).WriteCSV(&b, "Gloamline: "+o.title(s)); err != nil {
			return fail(stderr, broken, "the table cannot be written: %v", err)
		}
		return show(stdout, b.String())
	case o.csv != "":
		t := s.Table(o.csv)
		if t == nil {
			return fail(stderr, wrong, "there is no table %q; --tables lists them", o.csv)
		}
		var b bytes.Buffer
		if err := t.WriteCSV(&b, "Gloamline: "+o.title(s), words.TableTitle(t)+"; hours are "+words.PerName(t.Per)); err != nil {
			return fail(stderr, broken, "the table cannot be written: %v", err)
		}
		return show(stdout, b.String())
	case o.json:
		text, err := seasonJSON(s, o.title(s))
		if err != nil {
			return fail(stderr, broken, "the figures cannot be written: %v", err)
		}
		return show(stdout, text)
	}
	return show(stdout, seasonText(s, o.title(s), o.fold))
}
