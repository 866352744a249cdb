package main

import (
	"flag"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"time"

	"gloamline/journal/album"
	"gloamline/journal/archive"
	"gloamline/journal/store"
	"gloamline/ui/words"
)

const archivePage = `Example:
  gloam archive --journal journal.gloam -o journal.json
  gloam archive --journal journal.gloam -o journal.zip

gloam archive writes a whole journal as one JSON text: every record as it stands, every
change that was ever made, and what was removed. gloam restore makes the same journal of
it again, without loss. DEVELOPERS.md describes the text. With a name that ends in .zip the
photographs kept beside the journal come along: journal.json and photos/ in one file.

  --journal FILE   the journal to read; it is not changed
  -o FILE          where to; no file that exists is written over
`

var archiveCommand = command{
	name: "archive",
	help: "a whole journal as one JSON text, and nothing lost",
	page: archivePage,
	run:  runArchive,
}

func runArchive(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("archive", flag.ContinueOnError)
	path := flags.String("journal", "", "")
	out := flags.String("o", "", "")
	if code, ok := parse(flags, args, archivePage, stdout, stderr); !ok {
		return code
	}
	switch {
	case flags.NArg() > 0:
		return fail(stderr, wrong, "gloam archive takes no %q; see gloam help archive", flags.Arg(0))
	case *path == "":
		return fail(stderr, wrong, "say which journal: --journal FILE")
	case *out == "":
		return fail(stderr, wrong, "say where to: -o journal.json")
	}
	s, err := store.Open(*path, store.Options{ReadOnly: true})
	if err != nil {
		return explain(stderr, err, *path)
	}
	defer s.Close()
	head, err := s.Head()
	if err != nil {
		return explain(stderr, err, *path)
	}
	var n archive.Count
	var photos int
	var missing []album.Original
	var unread error // the journal's own fault, not that of the file written
	err = saveNew(*out, func(w io.Writer) error {
		var err error
		if strings.EqualFold(filepath.Ext(*out), ".zip") {
			n, photos, missing, err = archive.Bundle(w, s, head.Created, time.Now(), album.Beside(*path))
		} else {
			n, err = archive.Write(w, s, head.Created, time.Now())
		}
		unread = journalFault(err)
		return err
	})
	switch {
	case unread != nil:
		return explain(stderr, unread, *path)
	case err != nil:
		return notSaved(stderr, *out, err)
	}
	for _, o := range missing {
		fmt.Fprintf(stderr, "gloam: %s\n", words.PhotoDamaged(o.Name()))
	}
	return show(stdout, fmt.Sprintf("%s holds %s.\n", *out, words.ArchiveHolds(n.Changes, n.Records, photos)))
}
