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
	"gloamline/journal/backup"
	"gloamline/ui/words"
)

const backupsPage = `Example:
  gloam backups --journal journal.gloam

gloam backups lists the copies that were made of a journal when it was opened in the
window, newest first: the file, when it was taken, its size. Of these stay the newest of
each of the 7 latest days that have one, of the 4 latest weeks and of the 12 latest
months. gloam restore --from FILE says what is in one, and makes a journal of it again.

  --journal FILE   the journal; it need not be there any more
`

var backupsCommand = command{
	name: "backups",
	help: "the copies made of a journal at each start",
	page: backupsPage,
	run:  runBackups,
}

func runBackups(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("backups", flag.ContinueOnError)
	path := flags.String("journal", "", "")
	if code, ok := parse(flags, args, backupsPage, stdout, stderr); !ok {
		return code
	}
	switch {
	case flags.NArg() > 0:
		return fail(stderr, wrong, "gloam backups takes no %q; see gloam help backups", flags.Arg(0))
	case *path == "":
		return fail(stderr, wrong, "say of which journal: --journal FILE")
	}
	f := backup.Of(*path)
	list, err := f.List()
	if err != nil {
		return explain(stderr, err, f.Path())
	}
	if len(list) == 0 {
		if _, err := os.Stat(*path); errors.Is(err, os.ErrNotExist) {
			return explain(stderr, &journal.Error{Op: "list backups", Kind: journal.NotFound, Err: err}, *path)
		}
		return show(stdout, "There is no backup yet: one is made when the journal is opened in the window.\n")
	}
	var b strings.Builder
	for _, c := range list {
		fmt.Fprintf(&b, "%s\t%s\n", c.Path, words.BackupLine(c.At, c.Bytes, time.Local))
	}
	return show(stdout, b.String())
}
