package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/merge"
	"gloamline/journal/store"
	"gloamline/ui/words"
)

const mergePage = `Example:
  gloam merge --journal journal.gloam other.gloam

gloam merge says what would be taken over of another copy of the journal: nights, fish,
changes, removals, and each record that both sides changed, with how it is settled. It
changes nothing until it is told to with --accept; then all of it is one change, which
Undo in the window takes back. The other copy is only read. Whatever is not chosen is
kept in the history.

  --journal FILE   the journal to merge into
  --accept         do it
`

var mergeCommand = command{
	name: "merge",
	help: "join another copy of the journal into this one",
	page: mergePage,
	run:  runMerge,
}

func runMerge(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("merge", flag.ContinueOnError)
	path := flags.String("journal", "", "")
	accept := flags.Bool("accept", false, "")
	if code, ok := parse(flags, args, mergePage, stdout, stderr); !ok {
		return code
	}
	switch {
	case *path == "":
		return fail(stderr, wrong, "say which journal to merge into: --journal FILE")
	case flags.NArg() != 1:
		return fail(stderr, wrong, "gloam merge needs one other copy: gloam merge --journal FILE OTHER")
	case sameFile(*path, flags.Arg(0)):
		return fail(stderr, wrong, "a journal cannot be merged with itself")
	}
	other := flags.Arg(0)
	theirs, err := store.Open(other, store.Options{ReadOnly: true})
	if err != nil {
		return explain(stderr, err, other)
	}
	defer theirs.Close()
	ours, err := store.Open(*path, store.Options{ReadOnly: !*accept})
	if err != nil {
		return explain(stderr, err, *path)
	}
	defer ours.Close()
	p, err := merge.Look(ours, theirs)
	if err != nil {
		return explain(stderr, err, other)
	}
	b := new(strings.Builder)
	b.WriteString(strings.Join(words.MergeLines(p), "\n") + "\n")
	for _, c := range p.Conflicts {
		e := c.Ours
		if e.Gone {
			e = c.Theirs
		}
		fmt.Fprintln(b, words.ConflictLine(c, words.RecordName(e, evening(ours, theirs, e.Trip))))
	}
	for _, a := range p.Alike {
		fmt.Fprintln(b, words.AlikeLine(a))
	}
	if !*accept || p.Empty() {
		if !p.Empty() {
			b.WriteString("Nothing was changed: --accept does it.\n")
		}
		return show(stdout, b.String())
	}
	j, err := journal.Open(ours, time.Now)
	if err == nil {
		_, err = p.Accept(j)
	}
	if err != nil {
		return explain(stderr, err, *path)
	}
	b.WriteString("Done, as one change.\n" + contradictions(j, p))
	return show(stdout, b.String())
}

// evening is that of a night, in whichever copy has it.
func evening(ours, theirs journal.Store, trip journal.ID) journal.Date {
	for _, s := range []journal.Store{ours, theirs} {
		if e, err := s.Get(journal.Ref{Kind: journal.KindTrip, ID: trip}); err == nil && !trip.IsZero() {
			if r, err := journal.Unseal(e); err == nil {
				return r.(journal.Trip).Evening
			}
		}
	}
	return journal.Date{}
}

// contradictions names what the nights that were touched say twice now.
func contradictions(j *journal.Journal, p *merge.Plan) string {
	var b strings.Builder
	for _, trip := range p.Nights() {
		faults, err := j.NightFaults(trip)
		if err != nil {
			continue // the night was removed
		}
		for _, f := range faults {
			fmt.Fprintf(&b, "To look at, night of %s: %s\n", words.NightDate(evening(j.Store(), j.Store(), trip)), words.FieldSentence(f))
		}
	}
	return b.String()
}

func sameFile(a, b string) bool {
	x, err := os.Stat(a)
	y, err2 := os.Stat(b)
	return errors.Join(err, err2) == nil && os.SameFile(x, y)
}
