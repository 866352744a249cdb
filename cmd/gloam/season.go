package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

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
` + filterPage + `  --person NAME    only this person's rod counts
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
	journal, csv             string
	demo, json, fold, tables bool
	which                    filterOrder
	view                     season.View
	offers                   state.Offers
	measure                  string
	out, look                string
	card                     int
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
	names, err := paper.Save(o.out, title, scene.SeasonPages(v, o.card, title, words.SeasonMade(o.view, o.filter()), scene.LookNamed(o.look)))
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
	flags.StringVar(&o.out, "o", "", "")
	flags.StringVar(&o.look, "look", scene.Paper.Name, "")
	flags.IntVar(&o.card, "card", 0, "")
	o.which.flags(flags)
	if code, ok := parse(flags, args, seasonPage, stdout, stderr); !ok {
		return o, code, false
	}
	if err := o.check(flags.Args()); err != nil {
		return o, fail(stderr, wrong, "%v", err), false
	}
	return o, done, true
}

// check finds what makes no sense.
func (o *seasonOrder) check(more []string) (err error) {
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
	}
	o.view.Measure = season.Measure(o.measure)
	return o.which.check()
}

// choose finds beats, people and nights by what they are called.
func (o *seasonOrder) choose(nights []*season.Digest) (err error) {
	o.offers = state.SeasonOffers(nights)
	if err := o.which.find(o.offers); err != nil {
		return err
	}
	var all []season.Subject
	for _, d := range nights {
		all = append(all, d.Subject())
	}
	o.view.Filter = o.which.filter
	o.view.Filter.Trips, err = o.which.trips(all)
	return err
}

// title says what the figures are made from; it stands on every export.
func (o *seasonOrder) title(s *season.Season) string {
	out := words.SeasonTitle(s)
	if by := o.filter(); by != "" {
		out += "; " + by
	}
	return out + "; a fish is: " + words.MeasureName(s.View.Measure)
}

// filter says which nights were let through; empty for all.
func (o *seasonOrder) filter() string {
	return words.SeasonFilter(o.view, o.offers.Beat, o.offers.Person)
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
