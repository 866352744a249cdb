package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/intake"
	"gloamline/journal/store"
	"gloamline/ui/words"
)

const importPage = `Example:
  gloam import --journal journal.gloam --rod Anna night.gpx fish.jpg river.csv

gloam import sets tracks (GPX), photos (JPEG, HEIC) and river levels against a night of the
journal and prints what they propose: runs, photos, the gauge's course. Nothing is stored
without --accept; then all of it is one change, which one undo takes back. The same files
again change nothing; what was rejected, or removed later, does not come back.

  --journal FILE       the journal whose night it is: always needed, as there is no usual one
                       here. Close it in the window first. Without --accept it is only read
  --trip DATE          the evening, as 2026-07-04; without it the night the files are of
  --which N            the first, second, ... where an evening has several nights
  --rod NAME           whose track it is, where several rods fished: name or initials
  --clock DEVICE=TIME  what to add to a device's clock, as "Larrick Eye=-1m32s"; repeatable
  --zone NAME          of cameras and readings that name none; else the night's and UTC
  --copy               copy the originals of photos beside the journal; else they are linked
  --accept             store what is ticked (+), or what --only names
  --only LIST          with --accept: only these numbers, as 1,3,5
  --take LIST          with --accept: these too, and where they contradict what is written
                       they take its place
  --reject LIST        with --accept: never propose these again
  --json               print the proposal as JSON
`

var importCommand = command{
	name: "import",
	help: "a night from a track, photos and a gauge: proposed, or accepted",
	page: importPage,
	run:  runImport,
}

// importOrder is what the command line asks for.
type importOrder struct {
	journal, rod         string
	night                journal.Date
	which                int
	copied, accept, json bool
	zone                 *time.Location
	clocks               map[string]time.Duration
	only, take, reject   []int
	files                []string
}

func readImport(args []string, stdout, stderr io.Writer) (o importOrder, code int, ok bool) {
	o.clocks = map[string]time.Duration{}
	flags := flag.NewFlagSet("import", flag.ContinueOnError)
	flags.StringVar(&o.journal, "journal", "", "")
	trip := flags.String("trip", "", "")
	flags.IntVar(&o.which, "which", 0, "")
	flags.StringVar(&o.rod, "rod", "", "")
	zone := flags.String("zone", "", "")
	flags.BoolVar(&o.copied, "copy", false, "")
	flags.BoolVar(&o.accept, "accept", false, "")
	flags.BoolVar(&o.json, "json", false, "")
	lists := map[string]*[]int{"only": &o.only, "take": &o.take, "reject": &o.reject}
	for name, list := range lists {
		flags.Func(name, "", func(s string) error { return numbers(s, list) })
	}
	flags.Func("clock", "", func(s string) error {
		i := strings.LastIndex(s, "=")
		d, err := time.ParseDuration(s[i+1:])
		if i < 0 || err != nil {
			return fmt.Errorf("it wants a device and what to add to its clock, as \"Larrick Eye=-1m32s\"")
		}
		o.clocks[s[:i]] = d
		return nil
	})
	if code, ok := parse(flags, args, importPage, stdout, stderr); !ok {
		return o, code, false
	}
	no := func(format string, a ...any) (importOrder, int, bool) {
		return o, fail(stderr, wrong, format, a...), false
	}
	o.files = flags.Args()
	switch {
	case o.journal == "":
		return no("say which journal the night is in: --journal FILE, such as --journal journal.gloam")
	case len(o.files) == 0:
		return no("gloam import needs a file: gloam import --journal journal.gloam night.gpx")
	case !o.accept && len(o.only)+len(o.take)+len(o.reject) > 0:
		return no("--only, --take and --reject go with --accept")
	case o.which < 0:
		return no("--which counts from 1, not %d", o.which)
	}
	if *trip != "" {
		var err error
		if o.night, err = journal.ParseDate(*trip); err != nil {
			return no("--trip %q is not a date like 2026-07-04", *trip)
		}
	}
	if *zone != "" {
		loc, err := time.LoadLocation(*zone)
		if err != nil || *zone == "Local" {
			return no("--zone %q is no time zone such as Europe/London", *zone)
		}
		o.zone = loc
	}
	return o, done, true
}

// numbers reads 1,3,5.
func numbers(s string, to *[]int) error {
	for _, part := range strings.Split(s, ",") {
		n, err := strconv.Atoi(strings.TrimSpace(part))
		if err != nil || n < 1 {
			return fmt.Errorf("%q is no number of a proposal", part)
		}
		*to = append(*to, n)
	}
	return nil
}

func runImport(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	o, code, ok := readImport(args, stdout, stderr)
	if !ok {
		return code
	}
	j, err := openFor(o.journal, o.accept)
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	defer j.Close()
	var files []*intake.File
	for _, name := range o.files {
		f := readFile(name, intake.ReadOptions{Now: time.Now(), Zone: o.zone, Thumb: true})
		if f.Fault != nil {
			code = broken
			fmt.Fprintf(stderr, "gloam: %s: %s. %s\n", name, f.Fault, f.Fault.Do)
		}
		files = append(files, f)
	}
	trips, err := j.Trips()
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	t, err := nightFor(trips, files, o)
	if err != nil {
		return fail(stderr, wrong, "%v", err)
	}
	rod, err := rodNamed(j, t, o.rod)
	if err != nil {
		return fail(stderr, wrong, "%v", err)
	}
	b, err := intake.Propose(j, files, intake.Order{Trip: t.ID, Rod: rod, Clocks: o.clocks, Zone: o.zone, Copied: o.copied, Now: time.Now()})
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	v, err := viewOf(j, b)
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	var stored *journal.Change
	if o.accept {
		c, err := importChoices(b, o)
		if err != nil {
			return fail(stderr, wrong, "%v", err)
		}
		change, err := acceptImport(j, b, c, o.journal)
		if err != nil {
			return explain(stderr, err, o.journal)
		}
		stored = &change
	}
	out := importText(v, stored)
	if o.json {
		out = importJSON(v, stored)
	}
	if c := show(stdout, out); c != done {
		return c
	}
	return code
}

// openFor opens a journal, for reading only unless something is to be stored.
func openFor(path string, write bool) (*journal.Journal, error) {
	if !write {
		return openJournal(path)
	}
	s, err := store.Open(path, store.Options{})
	if err != nil {
		return nil, err
	}
	j, err := journal.Open(s, time.Now)
	if err != nil {
		return nil, errors.Join(err, s.Close())
	}
	return j, nil
}

// nightFor picks the night asked for, else the one night the files are of.
func nightFor(trips []journal.Trip, files []*intake.File, o importOrder) (journal.Trip, error) {
	if !o.night.IsZero() {
		return pickTrip(trips, o.night, o.which)
	}
	if len(trips) == 0 {
		return journal.Trip{}, errors.New("the journal holds no night yet")
	}
	of := intake.NightsOf(trips, files)
	switch {
	case len(of) == 0:
		return journal.Trip{}, errors.New("no night of the journal holds a moment of these files: write the night down first, or say which with --trip")
	case o.which > len(of):
		return journal.Trip{}, fmt.Errorf("--which %d goes beyond the nights these files are of, of which there are %d", o.which, len(of))
	case len(of) > 1 && o.which == 0:
		var days []string
		for _, t := range of {
			days = append(days, t.Evening.String())
		}
		return journal.Trip{}, fmt.Errorf("these files are of several nights (%s): say which with --trip or --which", strings.Join(days, ", "))
	}
	return of[max(o.which, 1)-1], nil
}

// rodNamed finds a rod by its person's name or initials; none asked for is none.
func rodNamed(j *journal.Journal, t journal.Trip, name string) (journal.ID, error) {
	if name == "" {
		return journal.ID{}, nil
	}
	var names []string
	for _, r := range t.Rods {
		p, err := journal.One[journal.Person](j, r.Person)
		if err != nil {
			continue
		}
		if strings.EqualFold(p.Name, name) || strings.EqualFold(p.Initials, name) {
			return r.ID, nil
		}
		names = append(names, p.Name)
	}
	if len(names) == 0 {
		return journal.ID{}, fmt.Errorf("the night of %s has no rod", t.Evening)
	}
	return journal.ID{}, fmt.Errorf("%q did not fish on the night of %s; there were %s", name, t.Evening, strings.Join(names, ", "))
}

// importChoices turns the numbers asked for into choices.
func importChoices(b *intake.Batch, o importOrder) (intake.Choices, error) {
	c := b.Ticks()
	if len(o.only) > 0 {
		c = intake.Choices{}
	}
	set := func(list []int, choice func(intake.Proposal) intake.Choice) error {
		for _, n := range list {
			if n > len(b.Proposals) {
				return fmt.Errorf("there is no proposal %d; there are %d", n, len(b.Proposals))
			}
			p := b.Proposals[n-1]
			c[p.Key] = choice(p)
		}
		return nil
	}
	accept := func(intake.Proposal) intake.Choice { return intake.Choice{Do: intake.Accept} }
	take := func(p intake.Proposal) intake.Choice {
		way := intake.TakeProposed
		for _, x := range p.Conflicts {
			if !x.Allows(way) {
				way = intake.TakeBoth
			}
			delete(c, x.Rival)
		}
		return intake.Choice{Do: intake.Accept, Way: way}
	}
	reject := func(intake.Proposal) intake.Choice { return intake.Choice{Do: intake.Reject} }
	return c, errors.Join(set(o.only, accept), set(o.take, take), set(o.reject, reject))
}

// acceptImport copies the originals asked for, then stores the choices as one change.
func acceptImport(j *journal.Journal, b *intake.Batch, c intake.Choices, path string) (journal.Change, error) {
	plan, err := b.Plan(c)
	if unsettled := (*intake.UnsettledError)(nil); errors.As(err, &unsettled) {
		return journal.Change{}, words.Told{What: words.Unsettled(len(unsettled.Keys)).What, Do: "Nothing was stored. Leave it out of --only, or name it in --take."}
	}
	if err != nil {
		return journal.Change{}, err
	}
	if err := j.Try(plan); err != nil {
		return journal.Change{}, err
	}
	for _, x := range b.Originals(plan) {
		if err := album.Beside(path).Keep(x.Path, x.SHA256, x.Format); err != nil {
			what, _ := words.NotCopied(err, x.Path)
			return journal.Change{}, words.Told{What: what, Do: "Try again, or leave --copy away to link it."}
		}
	}
	return b.Commit(j, c)
}
