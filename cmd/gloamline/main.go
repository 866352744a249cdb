// Command gloamline opens the journal in a window. It wires: flags, where things
// lie, the log and the account of a crash, the display, and the screen on a desk on
// a journal. It decides nothing about nights.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	_ "time/tzdata" // zones must be there on every machine, and the same

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"gloamline/journal"
	"gloamline/journal/store"
	"gloamline/ui/screen"
	"gloamline/ui/state"
	"gloamline/ui/words"
)

// version is set by the linker.
var version = "unversioned"

// The ways to end.
const (
	done   = 0
	broken = 1 // no window or no journal
	wrong  = 2 // asked wrongly
)

// asked is what the command line says.
type asked struct {
	demo    bool
	journal string
	look    string
	night   string
	reading bool
	verbose bool
	version bool
}

func main() { os.Exit(gloamline(os.Args[1:], os.Getenv, os.Stdout, os.Stderr)) }

func gloamline(args []string, env func(string) string, stdout, stderr io.Writer) int {
	a, err := parse(args, stderr)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return done
	case err != nil:
		return wrong
	case a.version:
		fmt.Fprintln(stdout, "gloamline", version)
		return done
	}
	// The toolkit panics without a display, so it is not even started.
	if err := display(env, sockets); err != nil {
		fmt.Fprintf(stderr, "gloamline: %v.\nThe command gloam draws a night's page without a window: gloam help.\n", err)
		return broken
	}
	dir, err := place("state", env)
	if err != nil {
		dir = ""
	}
	d := openDiary(dir, a.verbose)
	d.Info("started", "version", version)
	if d.Crash != "" {
		d.Warn("the program ended unexpectedly last time", "account", d.Crash)
	}
	path, err := journalPath(a, env)
	if err != nil {
		fmt.Fprintf(stderr, "gloamline: there is no place for the journal: %v.\nSet XDG_DATA_HOME to a folder you can write to, or name a journal with -journal.\n", err)
		return broken
	}
	return newHouse(a, d, stderr).run(path)
}

func parse(args []string, stderr io.Writer) (asked, error) {
	var a asked
	f := flag.NewFlagSet("gloamline", flag.ContinueOnError)
	f.SetOutput(stderr)
	f.BoolVar(&a.demo, "demo", false, "open the demo journal, made the first time in a place of its own")
	f.StringVar(&a.journal, "journal", "", "open, or begin, the journal in this `file`")
	f.StringVar(&a.look, "look", "", "dusk, paper or lamp (`name`); else as last time")
	f.StringVar(&a.night, "night", "", "open the night of this `evening`, as 2026-07-04; else that of last time")
	f.BoolVar(&a.reading, "read", false, "open the journal for reading only")
	f.BoolVar(&a.verbose, "v", false, "write more into the log")
	f.BoolVar(&a.version, "version", false, "print the version and end")
	f.Usage = func() {
		fmt.Fprintf(stderr, "Gloamline, a journal for fishing rivers at night.\n\n  gloamline [-demo] [-look NAME] [JOURNAL]\n\nWithout a name your own journal is opened, and begun the first time.\n\n")
		f.PrintDefaults()
	}
	if err := f.Parse(args); err != nil {
		return a, err
	}
	if a.journal == "" && f.NArg() == 1 {
		a.journal = f.Arg(0)
	} else if f.NArg() > 0 || a.demo && a.journal != "" {
		fmt.Fprintln(stderr, "gloamline: one journal at a time; gloamline -help says how.")
		return a, errors.New("too many journals")
	}
	if a.night != "" {
		if _, err := journal.ParseDate(a.night); err != nil {
			fmt.Fprintf(stderr, "gloamline: %q is no evening; write it as 2026-07-04.\n", a.night)
			return a, err
		}
	}
	known := a.look == ""
	for _, l := range state.Looks {
		known = known || l == a.look
	}
	if !known {
		fmt.Fprintf(stderr, "gloamline: there is no look %q; there are %v.\n", a.look, state.Looks)
		return a, errors.New("no such look")
	}
	return a, nil
}

// journalPath is the journal to open: the one named, the demo, or one's own.
func journalPath(a asked, env func(string) string) (string, error) {
	if a.journal != "" {
		return filepath.Abs(a.journal)
	}
	dir, err := place("data", env)
	if err != nil {
		return "", err
	}
	if a.demo {
		return filepath.Join(dir, "demo.gloam"), nil
	}
	return filepath.Join(dir, store.FileName), nil
}

// newApp starts the toolkit. All that it should know stands here, so that a binary
// built by the plain go command knows it too.
func newApp() fyne.App {
	if dir, err := os.UserCacheDir(); err == nil {
		_ = os.MkdirAll(dir, 0o700) // the toolkit makes its own folder in it, but not this one
	}
	app.SetMetadata(fyne.AppMetadata{
		ID: "local.gloamline", Name: words.ProductName(), Version: version, Icon: screen.AppIcon(),
		Migrations: map[string]bool{"fyneDo": true},
	})
	return app.NewWithID("local.gloamline")
}
