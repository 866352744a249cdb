package main

import (
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/archive"
	"gloamline/journal/store"
	"gloamline/ui/words"
)

const restorePage = `Example:
  gloam restore --from journal.json -o again.gloam

gloam restore makes a journal of an archive, or of a backup, in a new file. The journal
in use is not touched: open the new file, look at it, and then put it where the other
was. Without -o it only says what the archive or the backup holds.

  --from FILE   an archive that gloam archive wrote, or a backup: gloam backups lists them
  -o FILE       the new journal; no file that exists is written over
`

var restoreCommand = command{
	name: "restore",
	help: "a journal again, from an archive or a backup",
	page: restorePage,
	run:  runRestore,
}

func runRestore(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("restore", flag.ContinueOnError)
	from := flags.String("from", "", "")
	out := flags.String("o", "", "")
	if code, ok := parse(flags, args, restorePage, stdout, stderr); !ok {
		return code
	}
	switch {
	case flags.NArg() > 0:
		return fail(stderr, wrong, "gloam restore takes no %q; see gloam help restore", flags.Arg(0))
	case *from == "":
		return fail(stderr, wrong, "say what from: --from journal.json")
	}
	o, err := outlineOf(*from)
	if err != nil {
		return explain(stderr, err, *from)
	}
	told := words.OutlineLines(o, time.Local)
	if *out == "" {
		return show(stdout, strings.Join(told, "\n")+"\n")
	}
	if err := restore(*from, *out); err != nil {
		if journal.KindOf(err) == journal.Conflict {
			return notSaved(stderr, *out, taken(*out))
		}
		return explain(stderr, err, *from)
	}
	return show(stdout, filepath.Base(*out)+" was made:\n"+strings.Join(told, "\n")+"\n")
}

// isArchive tells an archive from a backup by how it begins: a backup is no text.
func isArchive(path string) (bool, error) {
	f, err := os.Open(path)
	if err != nil {
		return false, err
	}
	defer f.Close()
	head := make([]byte, 512)
	n, err := io.ReadFull(f, head)
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) && err != io.EOF {
		return false, err
	}
	return strings.HasPrefix(strings.TrimSpace(string(head[:n])), "{"), nil
}

// outlineOf says what an archive or a backup holds, having proved it.
func outlineOf(path string) (journal.Outline, error) {
	text, err := isArchive(path)
	if err != nil {
		return journal.Outline{}, reading(err)
	}
	if !text {
		return store.OutlineOf(path)
	}
	f, err := os.Open(path)
	if err != nil {
		return journal.Outline{}, reading(err)
	}
	defer f.Close()
	return archive.Outline(f)
}

func restore(from, to string) error {
	text, err := isArchive(from)
	if err != nil {
		return reading(err)
	}
	if !text {
		return store.Restore(from, to)
	}
	f, err := os.Open(from)
	if err != nil {
		return reading(err)
	}
	defer f.Close()
	_, _, err = archive.Restore(f, to)
	return err
}

// reading classes an error met in opening a file to read.
func reading(err error) error {
	k := journal.IO
	if errors.Is(err, os.ErrNotExist) {
		k = journal.NotFound
	}
	return &journal.Error{Op: "read", Kind: k, Err: err}
}

// journalFault returns an error of a journal, nil for any other.
func journalFault(err error) error {
	if je := (*journal.Error)(nil); errors.As(err, &je) {
		return err
	}
	return nil
}
