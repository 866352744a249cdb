package main

import (
	"errors"
	"flag"
	"io"
	"path/filepath"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/archive"
	"gloamline/journal/backup"
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
	o, photos, err := outlineOf(*from)
	if err != nil {
		return explain(stderr, err, *from)
	}
	told := words.OutlineLines(o, time.Local)
	if photos > 0 {
		told = append(told, words.WithPhotos(photos))
	}
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

// outlineOf says what an archive or a backup holds, having proved it, and how many
// photographs come with it.
func outlineOf(path string) (journal.Outline, int, error) {
	form, err := archive.FormOf(path)
	if err != nil || form != archive.NoArchive {
		if err != nil {
			return journal.Outline{}, 0, err
		}
		return archive.OutlineOf(path)
	}
	o, err := store.OutlineOf(path)
	return o, 0, err
}

func restore(from, to string) error {
	form, err := archive.FormOf(from)
	switch {
	case err != nil:
		return err
	case form == archive.NoArchive:
		return extract(from, to)
	}
	return archive.RestoreFile(from, to)
}

// extract takes a backup out of the folder of backups it lies in, with its photographs.
func extract(from, to string) error {
	if name, ok := strings.CutSuffix(filepath.Dir(from), ".backups"); ok {
		return backup.Of(name).Extract(from, to)
	}
	return backup.Of(from).Extract(from, to)
}

// journalFault returns an error of a journal, nil for any other.
func journalFault(err error) error {
	if je := (*journal.Error)(nil); errors.As(err, &je) {
		return err
	}
	return nil
}
