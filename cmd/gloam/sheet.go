package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"strings"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/paper"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

const sheetPage = `Example:
  gloam sheet --journal journal.gloam --night 2026-07-04 -o night.pdf

gloam sheet draws one night as a page to keep: the sketch of the beat, the light with
its rig lanes, the log and the totals. The ending of the name says how: .pdf, .png or
.svg. A page that does not fit goes on in a second one: in the same PDF, or in a file
of its own, night-2.png. The names written are printed, one a line.

  --journal FILE   the journal to read; it is not changed
  --demo           the demo journal instead
  --night DATE     the evening, as 2026-07-04; without it the latest night
                   (in the demo, the night of 4 July 2026)
  --which N        the first, second, ... where an evening has several nights
  --look NAME      paper (without it), dusk or lamp
  -o FILE          where to; no file that exists is written over
`

var sheetCommand = command{
	name: "sheet",
	help: "one night as a page: PDF, PNG or SVG",
	page: sheetPage,
	run:  runSheet,
}

// sheetOrder is what the command line asks for.
type sheetOrder struct {
	journal, out, look string
	demo               bool
	night              journal.Date // zero: the latest
	which              int          // from 1; 0: not said
}

// readSheet reads the command line. When it returns ok false the command ends with
// code at once.
func readSheet(args []string, stdout, stderr io.Writer) (o sheetOrder, code int, ok bool) {
	flags := flag.NewFlagSet("sheet", flag.ContinueOnError)
	flags.StringVar(&o.journal, "journal", "", "")
	flags.BoolVar(&o.demo, "demo", false, "")
	night := flags.String("night", "", "")
	flags.IntVar(&o.which, "which", 0, "")
	flags.StringVar(&o.look, "look", scene.Paper.Name, "")
	flags.StringVar(&o.out, "o", "", "")
	if code, ok := parse(flags, args, sheetPage, stdout, stderr); !ok {
		return o, code, false
	}
	no := func(format string, a ...any) (sheetOrder, int, bool) {
		return o, fail(stderr, wrong, format, a...), false
	}
	switch {
	case flags.NArg() > 0:
		return no("gloam sheet takes no %q; see gloam help sheet", flags.Arg(0))
	case o.journal == "" && !o.demo:
		return no("say which journal: --journal FILE, or --demo")
	case o.journal != "" && o.demo:
		return no("--journal and --demo exclude each other")
	case o.out == "":
		return no("say where to: -o night.pdf")
	case !paper.Takes(o.out):
		return no("%v, not %q", paper.ErrFormat, o.out)
	case scene.LookNamed(o.look).Name != o.look:
		return no("there is no look %q; there are paper, dusk and lamp", o.look)
	case o.which < 0:
		return no("--which counts from 1, not %d", o.which)
	}
	if *night != "" {
		var err error
		if o.night, err = journal.ParseDate(*night); err != nil {
			return no("--night %q is not a date like 2026-07-04", *night)
		}
	} else if o.demo {
		o.night = demo.Show
	}
	return o, done, true
}

func runSheet(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	o, code, ok := readSheet(args, stdout, stderr)
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
	n, code, ok := nightOf(j, o.night, o.which, o.journal, stderr)
	if !ok {
		return code
	}
	names, err := paper.Save(o.out, words.PageTitle(n), scene.Page(n, scene.LookNamed(o.look), scene.PageView{}))
	if err != nil {
		name := o.out
		if at := (*fs.PathError)(nil); errors.As(err, &at) {
			name = at.Path
		}
		return twoLines(stderr, name+" was not written.", words.SaveFault(err))
	}
	return show(stdout, strings.Join(names, "\n")+"\n")
}

// nightOf loads the night of an evening, the nth where there are several; without one the
// exit code to end with, the reason told.
func nightOf(j *journal.Journal, evening journal.Date, which int, file string, stderr io.Writer) (n *timeline.Night, code int, ok bool) {
	trips, err := j.Trips()
	if err != nil {
		return nil, explain(stderr, err, file), false
	}
	t, err := pickTrip(trips, evening, which)
	if err != nil {
		return nil, fail(stderr, wrong, "%v", err), false
	}
	if n, err = timeline.Load(j, t.ID); err != nil {
		return nil, explain(stderr, err, file), false
	}
	return n, done, true
}

// pickTrip returns the trip of an evening, or of the latest if none is asked for, and
// of several the one that which counts to, in the order of the journal.
func pickTrip(trips []journal.Trip, evening journal.Date, which int) (journal.Trip, error) {
	if len(trips) == 0 {
		return journal.Trip{}, errors.New("the journal holds no night yet")
	}
	if evening.IsZero() {
		evening = trips[0].Evening // they come latest first
	}
	var there []journal.Trip
	for _, t := range trips {
		if t.Evening == evening {
			there = append(there, t)
		}
	}
	switch {
	case len(there) == 0:
		return journal.Trip{}, fmt.Errorf("the journal holds no night of %s; the latest is of %s", evening, trips[0].Evening)
	case which > len(there):
		return journal.Trip{}, fmt.Errorf("--which %d goes beyond the nights of %s, of which there are %d", which, evening, len(there))
	case which == 0 && len(there) > 1:
		return journal.Trip{}, fmt.Errorf("there are %d nights of %s: say which with --which 1 to --which %d", len(there), evening, len(there))
	}
	return there[max(which, 1)-1], nil
}
