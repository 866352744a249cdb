package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/timeline"
	"gloamline/ui/paper/replay"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

const clientPage = `Example:
  gloam export client --demo --night 2026-07-04 --for Anna --show pools,photo --to night.html

gloam export client writes one night, or with --pool all nights on one pool, for somebody
else: as a page (.pdf, .png, .svg), as one HTML file (.html) that plays it in a browser
without any network, or as one picture that moves (.gif). Only what is asked for is in the
file. Without --show and --hide that is what the journal remembers of whom it is for, and
where it remembers nothing the least: pools by number in the order fished, no places, times
to five minutes, no names but that of --for. Private notes and what a photo says of itself
never leave.

  --journal FILE   the journal to read; it is not changed
  --demo           the demo journal instead
  --night DATE     the evening, as 2026-07-04; without it the latest night
                   (in the demo, the night of 4 July 2026)
  --which N        the first, second, ... where an evening has several nights
  --pool NAME      all nights on this pool instead of one night
  --for NAME       who it is for: a person of the journal, whose own name may stand there
  --show LIST      of: pools (their names), water (names of river and beat), places,
                   coordinates (with places), people, weights, notes, photo; or all
  --hide LIST      all of these but those; not together with --show
  --look NAME      of a page: paper (without it), dusk or lamp
  --to FILE        where to; no file that exists is written over
`

// shownNames are the words of --show and --hide.
var shownNames = []struct {
	name string
	set  func(*scene.Shown)
}{
	{"pools", func(s *scene.Shown) { s.Pools = scene.PoolNames }},
	{"water", func(s *scene.Shown) { s.Water = true }},
	{"places", func(s *scene.Shown) { s.Places = true }},
	{"coordinates", func(s *scene.Shown) { s.Coordinates = true }},
	{"people", func(s *scene.Shown) { s.People = true }},
	{"weights", func(s *scene.Shown) { s.Weights = true }},
	{"notes", func(s *scene.Shown) { s.Notes = true }},
	{"photo", func(s *scene.Shown) { s.Photo = true }},
}

// readShown reads the two lists; given says whether --hide was there at all, since an
// empty one hides nothing.
func readShown(show, hide string, hides bool) (s scene.Shown, err error) {
	if show != "" && hides {
		return s, errors.New("--show and --hide exclude each other")
	}
	list := show
	if hides {
		list = hide
	}
	var named []string
	for _, w := range strings.Split(list, ",") {
		if w = strings.TrimSpace(w); w == "" {
			continue
		}
		known := func(n struct {
			name string
			set  func(*scene.Shown)
		}) bool {
			return n.name == w
		}
		if !slices.ContainsFunc(shownNames, known) && w != "all" {
			return s, fmt.Errorf("there is no %q to show or hide; there are pools, water, places, coordinates, people, weights, notes, photo, and all", w)
		}
		named = append(named, w)
	}
	for _, n := range shownNames {
		if (slices.Contains(named, n.name) || slices.Contains(named, "all")) != hides {
			n.set(&s)
		}
	}
	if s.Coordinates && !s.Places {
		if !hides {
			return s, errors.New("coordinates are shown with places alone: --show places,coordinates")
		}
		s.Coordinates = false
	}
	return s, nil
}

func runClient(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("export client", flag.ContinueOnError)
	file := flags.String("journal", "", "")
	isDemo := flags.Bool("demo", false, "")
	night := flags.String("night", "", "")
	which := flags.Int("which", 0, "")
	pool := flags.String("pool", "", "")
	person := flags.String("for", "", "")
	shows := flags.String("show", "", "")
	hides := flags.String("hide", "", "")
	look := flags.String("look", scene.Paper.Name, "")
	to := flags.String("to", "", "")
	if code, ok := parse(flags, args, clientPage, stdout, stderr); !ok {
		return code
	}
	hid, asked := false, false
	flags.Visit(func(f *flag.Flag) {
		hid, asked = hid || f.Name == "hide", asked || f.Name == "hide" || f.Name == "show"
	})
	shown, err := readShown(*shows, *hides, hid)
	var evening journal.Date
	switch {
	case err != nil:
		return fail(stderr, wrong, "%v", err)
	case flags.NArg() > 0:
		return fail(stderr, wrong, "gloam export client takes no %q; see gloam export client --help", flags.Arg(0))
	case (*file == "") != *isDemo:
		return fail(stderr, wrong, "say which journal: --journal FILE, or --demo, not both")
	case *to == "":
		return fail(stderr, wrong, "say where to: --to night.html")
	case !replay.Takes(*to):
		return fail(stderr, wrong, "the name must end in .html, .gif, .pdf, .png or .svg, not %q", *to)
	case scene.LookNamed(*look).Name != *look:
		return fail(stderr, wrong, "there is no look %q; there are paper, dusk and lamp", *look)
	case *pool != "" && (*night != "" || *which != 0):
		return fail(stderr, wrong, "--pool takes all nights: leave --night and --which out")
	case *which < 0:
		return fail(stderr, wrong, "--which counts from 1, not %d", *which)
	}
	if *night != "" {
		if evening, err = journal.ParseDate(*night); err != nil {
			return fail(stderr, wrong, "--night %q is not a date like 2026-07-04", *night)
		}
	} else if *isDemo {
		evening = demo.Show
	}
	open := func() (*journal.Journal, error) { return openJournal(*file) }
	if *isDemo {
		open = demoJournal
	}
	j, err := open()
	if err != nil {
		return explain(stderr, err, *file)
	}
	defer j.Close()
	who, err := personNamed(j, *person)
	if err != nil {
		return fail(stderr, wrong, "%v", err)
	}
	if !asked {
		r, _, err := journal.RecipientOf(j, who)
		if err != nil {
			return explain(stderr, err, *file)
		}
		shown = scene.ShownTo(r)
	}
	shown.Person = who
	if *file != "" {
		originals := album.Beside(*file)
		shown.Larger = func(p journal.Photo) []byte {
			b, err := originals.Larger(p.SHA256, p.Link)
			if err != nil {
				return nil // the journal's small copy leaves
			}
			return b
		}
	}
	if *pool != "" {
		trips, err := j.Trips()
		if err != nil {
			return explain(stderr, err, *file)
		}
		return writePast(j, trips, *pool, shown, *to, scene.LookNamed(*look), stdout, stderr)
	}
	n, code, ok := nightOf(j, evening, *which, *file, stderr)
	if !ok {
		return code
	}
	c, held := scene.Share(n, shown, words.Prefs{})
	if held > 0 {
		fmt.Fprintln(stderr, words.NotesHeld(held))
	}
	return writeClient(c, *to, scene.LookNamed(*look), stdout, stderr)
}

// personNamed finds a person of the journal, by the name as written; nobody for "".
func personNamed(j *journal.Journal, name string) (journal.ID, error) {
	if name == "" {
		return journal.ID{}, nil
	}
	people, err := journal.All[journal.Person](j)
	for _, p := range people {
		if strings.EqualFold(p.Name, name) {
			return p.ID, nil
		}
	}
	if err == nil {
		err = fmt.Errorf("nobody in the journal is called %q", name)
	}
	return journal.ID{}, err
}

// writePast writes all nights on a pool, which are told apart by beat where two have one
// of that name: the pool fished last counts.
func writePast(j *journal.Journal, trips []journal.Trip, pool string, shown scene.Shown, to string, look scene.Look, stdout, stderr io.Writer) int {
	load := timeline.NewLoader(j)
	var at journal.ID
	var nights []*timeline.Night
	for _, t := range trips { // the latest first
		n, err := load.Load(t.ID)
		if err != nil {
			return explain(stderr, err, "")
		}
		for _, p := range n.Pools {
			if at.IsZero() && strings.EqualFold(p.Pool.Name, pool) {
				at = p.Pool.ID
			}
		}
		nights = append(nights, n)
	}
	if at.IsZero() {
		return fail(stderr, wrong, "no beat that was fished has a pool %q", pool)
	}
	slices.Reverse(nights)
	return writeClient(scene.SharePast(nights, at, shown, words.Prefs{}), to, look, stdout, stderr)
}

// writeClient makes the file from what is shown alone.
func writeClient(c scene.Handout, to string, look scene.Look, stdout, stderr io.Writer) int {
	names, err := replay.Save(to, c, look, words.Prefs{})
	if err != nil {
		name := to
		if at := (*fs.PathError)(nil); errors.As(err, &at) {
			name = at.Path
		}
		return twoLines(stderr, name+" was not written.", words.SaveFault(err))
	}
	return show(stdout, strings.Join(names, "\n")+"\n")
}
