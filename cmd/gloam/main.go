// Command gloam does without a window what needs none: the light of a night, the sun
// and the moon for tables of places, and more as listed in commands.
//
// Results go to standard output and everything else to standard error. It ends with 0
// when the work is done, 1 when a file cannot be read or written, and 2 when it was
// asked wrongly; then nothing is written to standard output.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
	_ "time/tzdata" // zones must be there on every machine, and the same
)

// command is one word after gloam.
type command struct {
	name string
	help string // one line for the list
	page string // what gloam help NAME prints: an example first
	run  func(args []string, stdin io.Reader, stdout, stderr io.Writer) int
}

// commands in the order of the list. To add one, write it in a file of its own and
// add its line here.
var commands = []command{
	lightCommand,
	skyCommand,
	sheetCommand,
	compareCommand,
	seasonCommand,
	checkCommand,
	readCommand,
	importCommand,
	archiveCommand,
	restoreCommand,
	backupsCommand,
	repairCommand,
	mergeCommand,
	exportCommand,
}

// The ways to end.
const (
	done   = 0
	broken = 1 // a file cannot be read or written
	wrong  = 2 // asked wrongly, or a row makes no sense
)

func main() {
	os.Exit(gloam(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

func gloam(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	if len(args) == 0 || isHelp(args[0]) && len(args) == 1 {
		return show(stdout, overview())
	}
	name := args[0]
	if isHelp(name) {
		name, args = args[1], []string{args[1], "--help"}
	}
	for _, c := range commands {
		if c.name != name {
			continue
		}
		if len(args) > 1 && isHelp(args[1]) {
			return show(stdout, c.page)
		}
		return c.run(args[1:], stdin, stdout, stderr)
	}
	return fail(stderr, wrong, "there is no command %q; gloam alone lists them", name)
}

func isHelp(arg string) bool {
	switch arg {
	case "help", "-h", "-help", "--help":
		return true
	}
	return false
}

// overview is the page of gloam itself.
func overview() string {
	var b strings.Builder
	b.WriteString(`Example:
  gloam light --lat 55.05 --lon -4.62 --zone Europe/London --night 2026-06-12

Commands:
`)
	for _, c := range commands {
		fmt.Fprintf(&b, "  %-8s %s\n", c.name, c.help)
	}
	b.WriteString("\ngloam help COMMAND tells more about one.\n")
	return b.String()
}

func show(w io.Writer, page string) int {
	if _, err := io.WriteString(w, page); err != nil {
		return broken
	}
	return done
}

// plain says in other words what package flag finds wrong.
func plain(err error) string {
	text := err.Error()
	if name, ok := strings.CutPrefix(text, "flag provided but not defined: -"); ok {
		return "there is no flag --" + strings.TrimLeft(name, "-")
	}
	if name, ok := strings.CutPrefix(text, "flag needs an argument: -"); ok {
		return "--" + strings.TrimLeft(name, "-") + " needs a value"
	}
	return text
}

// fail writes one sentence and returns code.
func fail(stderr io.Writer, code int, format string, args ...any) int {
	fmt.Fprintf(stderr, "gloam: "+format+".\n", args...)
	return code
}

// parse reads the flags of a command. When it returns ok false the command ends with
// code at once.
func parse(flags *flag.FlagSet, args []string, page string, stdout, stderr io.Writer) (code int, ok bool) {
	flags.SetOutput(io.Discard)
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return show(stdout, page), false
	case err != nil:
		return fail(stderr, wrong, "%s; gloam help %s lists the flags", plain(err), flags.Name()), false
	}
	return done, true
}
