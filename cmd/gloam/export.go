package main

import "io"

const exportPage = `Example:
  gloam export client --demo --night 2026-07-04 --for Anna --to night.html

gloam export writes what leaves the journal. After it comes what:

  client   one night for somebody else: what to show is said, the rest is not in the file

gloam export client --help says more.
`

var exportCommand = command{
	name: "export",
	help: "a night for a client: page, picture, or HTML that plays it",
	page: exportPage,
	run:  runExport,
}

func runExport(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	if len(args) == 0 {
		return fail(stderr, wrong, "say what to export: client; see gloam help export")
	}
	switch args[0] {
	case "client":
		return runClient(args[1:], stdin, stdout, stderr)
	}
	return fail(stderr, wrong, "there is no %q to export; there is client", args[0])
}
