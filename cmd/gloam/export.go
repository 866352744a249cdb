package main

import (
	"flag"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"text/tabwriter"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/export"
	"gloamline/ui/words"
)

const exportPage = `Example:
  gloam export night --journal journal.gloam --night 2026-07-04 -o night.csv
  gloam export returns --journal journal.gloam --year 2026
  gloam export client --demo --night 2026-07-04 --for Anna --to night.html

gloam export night writes one night for other programs. The ending of the name says how:
.csv (every entry), .geojson or .gpx (fish, pools, tracks). Unless told otherwise it hides
what gives a water or a person away: no coordinates, pools and rods by number, no notes,
times to 5 minutes. Private notes never leave.

gloam export returns adds up a year's landed fish per river and month, by the date of
their capture, names those that lack a weight or a date, and reminds where returns are
known to be due. The authority has the last word. With -o returns.csv it writes a table.

gloam export client makes a night for somebody else to see, as a page, a picture or an
HTML file that plays it; gloam export client --help says more. Of the others:

  --journal FILE   the journal to read; it is not changed
  --night DATE     the evening, as 2026-07-04; without it the latest night
  --which N        the first, second, ... where an evening has several nights
  --places HOW     none (without it), pool (the middle of the pool) or exact
  --people         names of people
  --pools          names of pools
  --notes          notes, but not those marked private
  --year YEAR      of the returns; without it that of the latest night
  --person NAME    returns of one person's rod alone
  -o FILE          where to; no file that exists is written over
`

var exportCommand = command{
	name: "export",
	help: "a night for other programs or for a client; a year's catch returns",
	page: exportPage,
	run:  runExport,
}

// exportOrder is what the command line asks for.
type exportOrder struct {
	journal, out, person string
	night                journal.Date
	which, year          int
	show                 export.Show
}

var placesNamed = map[string]export.Places{"none": export.NoPlaces, "pool": export.PoolPlaces, "exact": export.ExactPlaces}

func runExport(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	if len(args) > 0 && args[0] == "client" {
		return runClient(args[1:], stdin, stdout, stderr)
	}
	if len(args) > 0 && args[0] != "night" && args[0] != "returns" {
		return fail(stderr, wrong, "there is no %q to export; there are night, returns and client", args[0])
	}
	if len(args) == 0 {
		return fail(stderr, wrong, "say what to export: gloam export night, returns or client")
	}
	var o exportOrder
	flags := flag.NewFlagSet("export", flag.ContinueOnError)
	flags.StringVar(&o.journal, "journal", "", "")
	flags.StringVar(&o.out, "o", "", "")
	flags.StringVar(&o.person, "person", "", "")
	flags.IntVar(&o.which, "which", 0, "")
	flags.IntVar(&o.year, "year", 0, "")
	flags.BoolVar(&o.show.People, "people", false, "")
	flags.BoolVar(&o.show.PoolNames, "pools", false, "")
	flags.BoolVar(&o.show.Notes, "notes", false, "")
	night, places := flags.String("night", "", ""), flags.String("places", "none", "")
	if code, ok := parse(flags, args[1:], exportPage, stdout, stderr); !ok {
		return code
	}
	var known bool
	o.show.Places, known = placesNamed[*places]
	switch {
	case flags.NArg() > 0:
		return fail(stderr, wrong, "gloam export %s takes no %q; see gloam help export", args[0], flags.Arg(0))
	case o.journal == "":
		return fail(stderr, wrong, "say which journal: --journal FILE")
	case !known:
		return fail(stderr, wrong, "--places is none, pool or exact, not %q", *places)
	case o.which < 0:
		return fail(stderr, wrong, "--which counts from 1, not %d", o.which)
	}
	if *night != "" {
		var err error
		if o.night, err = journal.ParseDate(*night); err != nil {
			return fail(stderr, wrong, "--night %q is not a date like 2026-07-04", *night)
		}
	}
	j, err := openJournal(o.journal)
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	defer j.Close()
	if args[0] == "returns" {
		return exportReturns(j, o, stdout, stderr)
	}
	return exportNight(j, o, stdout, stderr)
}

func exportNight(j *journal.Journal, o exportOrder, stdout, stderr io.Writer) int {
	ending := strings.ToLower(filepath.Ext(o.out))
	if ending != ".csv" && ending != ".geojson" && ending != ".gpx" {
		return fail(stderr, wrong, "the name says how: -o night.csv, night.geojson or night.gpx, not %q", o.out)
	}
	n, code, ok := nightOf(j, o.night, o.which, o.journal, stderr)
	if !ok {
		return code
	}
	all, err := journal.All[journal.Track](j)
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	var tracks []journal.Track
	for _, k := range all {
		if k.Trip.Or(journal.ID{}) == n.Log.Trip.ID {
			tracks = append(tracks, k)
		}
	}
	left := 0
	err = saveNew(o.out, func(w io.Writer) (err error) {
		switch ending {
		case ".csv":
			return export.CSV(w, n, o.show)
		case ".geojson":
			return export.GeoJSON(w, n, tracks, o.show)
		}
		left, err = export.GPX(w, n, tracks, o.show)
		return err
	})
	if err != nil {
		return notSaved(stderr, o.out, err)
	}
	if left > 0 {
		fmt.Fprintf(stderr, "gloam: %s.\n", words.FishWithoutPlace(left))
	}
	return show(stdout, o.out+"\n")
}

func exportReturns(j *journal.Journal, o exportOrder, stdout, stderr io.Writer) int {
	ask := timeline.ReturnsAsk{Year: o.year}
	trips, err := j.Trips()
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	if ask.Year == 0 {
		if len(trips) == 0 {
			return fail(stderr, wrong, "the journal holds no night yet: say which year with --year")
		}
		ask.Year = trips[0].Evening.Year
	}
	if o.person != "" {
		people, err := journal.All[journal.Person](j)
		if err != nil {
			return explain(stderr, err, o.journal)
		}
		for _, p := range people {
			if strings.EqualFold(p.Name, o.person) {
				ask.Person = p.ID
			}
		}
		if ask.Person.IsZero() {
			return fail(stderr, wrong, "nobody in the journal is called %q", o.person)
		}
	}
	r, err := timeline.LoadReturns(j, ask)
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	if o.out == "" {
		return show(stdout, returnsText(r))
	}
	if err := saveNew(o.out, func(w io.Writer) error { return export.ReturnsCSV(w, r) }); err != nil {
		return notSaved(stderr, o.out, err)
	}
	return show(stdout, o.out+"\n")
}

// returnsText prints the returns to be copied onto a form.
func returnsText(r timeline.Returns) string {
	var b strings.Builder
	var p words.Prefs
	if len(r.Rivers) == 0 {
		fmt.Fprintln(&b, words.NoReturn(r.Year))
	}
	for _, river := range r.Rivers {
		fmt.Fprintln(&b, words.ReturnTitle(r.Year, river))
		t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
		fmt.Fprintln(t, strings.Join(words.ReturnHeads(), "\t"))
		for i, m := range river.Months {
			for _, l := range m.Lines {
				fmt.Fprintln(t, strings.Join(words.ReturnCells(time.Month(i+1), l, p), "\t"))
			}
		}
		t.Flush()
		for i, m := range river.Months {
			if m.Days > 0 {
				fmt.Fprintln(&b, words.ReturnDays(time.Month(i+1).String(), m))
			}
		}
		fmt.Fprintln(&b, strings.Join(words.ReturnBlanks(river), "\n")+"\n")
	}
	for _, d := range r.Doubtful {
		fmt.Fprintln(&b, words.DoubtfulLine(d, p))
	}
	if len(r.Doubtful) > 0 {
		fmt.Fprintln(&b, words.ConditionLine(r.Condition)+"\n")
	}
	for _, m := range words.ReturnReminders() {
		fmt.Fprintln(&b, m.Line())
	}
	fmt.Fprintln(&b, words.ReturnCaution())
	return b.String()
}
