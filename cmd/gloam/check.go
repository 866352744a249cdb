package main

import (
	"flag"
	"fmt"
	"io"
	"strings"

	"gloamline/journal/store"
	"gloamline/ui/words"
)

const checkPage = `Example:
  gloam check journal.gloam

gloam check reads every record and every change of a journal and names each fault, one
a line; nothing is changed. It ends with 0 when the journal is sound and with 1 when it
is not or cannot be opened.
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
		what, do := words.ExplainFile(err, path)
		return fail(stderr, broken, "%s", strings.TrimSuffix(what+" "+do, "."))
	}
	defer s.Close()
	faults, err := s.Check()
	if err != nil {
		what, do := words.ExplainFile(err, path)
		return fail(stderr, broken, "%s", strings.TrimSuffix(what+" "+do, "."))
	}
	for _, f := range faults {
		fmt.Fprintln(stdout, f.Error())
	}
	last, err := s.Last()
	if err != nil {
		return fail(stderr, broken, "%v", err)
	}
	if len(faults) > 0 {
		fmt.Fprintf(stdout, "%s: %d faults in %d changes.\n", path, len(faults), last)
		return broken
	}
	fmt.Fprintf(stdout, "%s is sound: %d changes read.\n", path, last)
	return done
}
