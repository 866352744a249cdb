package main

import (
	"flag"
	"fmt"
	"io"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/store"
	"gloamline/ui/words"
)

const checkPage = `Example:
  gloam check journal.gloam

gloam check reads every record and every change of a journal and names each fault, one
a line: what cannot be read, and what contradicts itself or something else. Nothing is
changed. It ends with 0 when the journal is sound and with 1 when it is not or cannot be
opened.
`

var checkCommand = command{
	name: "check",
	help: "read a whole journal and name each fault",
	page: checkPage,
	run:  runCheck,
}

func runCheck(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("check", flag.ContinueOnError)
	if code, ok := parse(flags, args, checkPage, stdout, stderr); !ok {
		return code
	}
	if flags.NArg() != 1 {
		return fail(stderr, wrong, "gloam check needs one journal: gloam check journal.gloam")
	}
	path := flags.Arg(0)
	s, err := store.Open(path, store.Options{ReadOnly: true})
	if err != nil {
		return explain(stderr, err, path)
	}
	defer s.Close()
	faults, err := findFaults(s)
	if err != nil && len(faults) == 0 {
		return explain(stderr, err, path)
	}
	last, err := s.Last()
	if err != nil {
		return explain(stderr, err, path)
	}
	bad, err := album.Beside(path).Damaged()
	if err != nil {
		return explain(stderr, err, album.Beside(path).Dir())
	}
	text := report(path, faults, last)
	for _, o := range bad {
		text += words.PhotoUnsound(o.Path) + "\n"
	}
	code := show(stdout, text)
	if len(faults)+len(bad) > 0 {
		return broken
	}
	return code
}

// findFaults has the journal look for contradictions too. One whose history cannot be
// read does not open as a journal: then the store alone says what is wrong.
func findFaults(s *store.Store) ([]journal.Fault, error) {
	j, err := journal.Open(s, time.Now)
	if err == nil {
		return j.Check()
	}
	faults, checkErr := s.Check()
	if checkErr != nil {
		err = checkErr
	}
	return faults, err
}

// report is a line for each fault and one that says how many there are.
func report(path string, faults []journal.Fault, changes uint64) string {
	var b strings.Builder
	for _, f := range faults {
		fmt.Fprintln(&b, f.Error())
	}
	switch len(faults) {
	case 0:
		fmt.Fprintf(&b, "%s is sound: %d changes read.\n", path, changes)
	case 1:
		fmt.Fprintf(&b, "%s has 1 fault.\n", path)
	default:
		fmt.Fprintf(&b, "%s has %d faults.\n", path, len(faults))
	}
	return b.String()
}
