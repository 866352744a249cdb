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

const repairPage = `Example:
  gloam repair --journal damaged.gloam -o saved.gloam

gloam repair reads what can be read of a damaged journal and writes it into a new one,
which is sound. It says what was saved and names each record that is lost, or stands as
it was earlier. The damaged file is not changed: keep it. A backup may hold more: gloam
backups lists them, and gloam merge joins two journals.

It ends with 0 when nothing is missing and with 1 when something is.

  --journal FILE   the damaged journal
  -o FILE          the new one; no file that exists is written over
`

var repairCommand = command{
	name: "repair",
	help: "save what can be read of a damaged journal",
	page: repairPage,
	run:  runRepair,
}

func runRepair(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("repair", flag.ContinueOnError)
	path := flags.String("journal", "", "")
	out := flags.String("o", "", "")
	if code, ok := parse(flags, args, repairPage, stdout, stderr); !ok {
		return code
	}
	switch {
	case flags.NArg() > 0:
		return fail(stderr, wrong, "gloam repair takes no %q; see gloam help repair", flags.Arg(0))
	case *path == "":
		return fail(stderr, wrong, "say which journal: --journal FILE")
	case *out == "":
		return fail(stderr, wrong, "say where to: -o saved.gloam")
	}
	r, err := store.Repair(*path, *out, time.Now())
	switch {
	case journal.KindOf(err) == journal.Conflict && err != nil:
		return notSaved(stderr, *out, taken(*out))
	case err != nil:
		return explain(stderr, err, *path)
	}
	_, _ = album.Beside(*path).LinkTo(album.Beside(*out))
	var b strings.Builder
	b.WriteString(strings.Join(words.RepairLines(r), "\n") + "\n")
	for _, list := range []struct {
		what string
		refs []journal.Ref
	}{{"lost", r.Lost}, {"earlier", r.Older}, {"as found", r.Unproved}} {
		for _, ref := range list.refs {
			fmt.Fprintf(&b, "%s\t%s %s%s\n", list.what, words.KindName(ref.Kind), ref.ID, ofNight(ref))
		}
	}
	if code := show(stdout, b.String()); code != done {
		return code
	}
	if !r.Whole() {
		return broken
	}
	return done
}

func ofNight(r journal.Ref) string {
	if r.Trip.IsZero() {
		return ""
	}
	return " of the night " + r.Trip.String()
}
