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
.svg. A page that does not fit goes on in a second one.

  --journal FILE   the journal to read; it is not changed
  --demo           the demo journal instead
  --night DATE     the evening, as 2026-07-04; without it the latest night
                   (in the demo, the night of 4 July 2026)
  --look NAME      paper (without it), dusk or lamp
  -o FILE          where to; no file that exists is written over
`

var sheetCommand = command{
	name: "sheet",
	help: "one night as a page: PDF, PNG or SVG",
	page: sheetPage,
	run:  runSheet,
}

func runSheet(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("sheet", flag.ContinueOnError)
	path := flags.String("journal", "", "")
	useDemo := flags.Bool("demo", false, "")
	night := flags.String("night", "", "")
	look := flags.String("look", scene.Paper.Name, "")
	out := flags.String("o", "", "")
	if code, ok := parse(flags, args, sheetPage, stdout, stderr); !ok {
		return code
	}
	switch {
	case flags.NArg() > 0:
		return fail(stderr, wrong, "gloam sheet takes no %q; see gloam help sheet", flags.Arg(0))
	case *path == "" && !*useDemo:
		return fail(stderr, wrong, "say which journal: --journal FILE, or --demo")
	case *path != "" && *useDemo:
		return fail(stderr, wrong, "--journal and --demo exclude each other")
	case *out == "":
		return fail(stderr, wrong, "say where to: -o night.pdf")
	case scene.LookNamed(*look).Name != *look:
		return fail(stderr, wrong, "there is no look %q; there are paper, dusk and lamp", *look)
	}
	want := journal.Date{}
	if *night != "" {
		var err error
		if want, err = journal.ParseDate(*night); err != nil {
			return fail(stderr, wrong, "--night %q is not a date like 2026-07-04", *night)
		}
	} else if *useDemo {
		want = demo.Show
	}
	j, why := openJournal(*path, *useDemo)
	if j == nil {
		return fail(stderr, broken, "%s", strings.TrimSuffix(why, "."))
	}
	defer j.Close()
	t, err := pickTrip(j, want)
	if err != nil {
		return fail(stderr, wrong, "%v", err)
	}
	n, err := timeline.Load(j, t.ID)
	if err != nil {
		what, do := words.ExplainFile(err, *path)
		return fail(stderr, broken, "%s", strings.TrimSuffix(what+" "+do, "."))
	}
	pages := scene.Page(n, scene.LookNamed(*look), scene.PageView{})
	names, err := paper.Save(*out, words.PageTitle(n), pages)
	switch {
	case errors.Is(err, paper.ErrFormat):
		return fail(stderr, wrong, "%v, not %q", err, *out)
	case errors.Is(err, fs.ErrExist):
		return fail(stderr, broken, "%s is there already: choose another name or move it away", *out)
	case err != nil:
		return fail(stderr, broken, "the page cannot be written: %v", err)
	}
	for _, name := range names {
		fmt.Fprintln(stdout, name)
	}
	return done
}

// pickTrip returns the trip of that evening, or the latest if none is asked for.
func pickTrip(j *journal.Journal, want journal.Date) (journal.Trip, error) {
	trips, err := j.Trips()
	if err != nil {
		return journal.Trip{}, err
	}
	if len(trips) == 0 {
		return journal.Trip{}, errors.New("the journal holds no night yet")
	}
	if want.IsZero() {
		return trips[0], nil
	}
	for _, t := range trips {
		if t.Evening == want {
			return t, nil
		}
	}
	return journal.Trip{}, fmt.Errorf("the journal holds no night of %s; the latest is %s", want, trips[0].Evening)
}
