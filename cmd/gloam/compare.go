package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"
	"text/tabwriter"
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/paper"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	"gloamline/ui/words"
)

const comparePage = `Example:
  gloam compare --demo --month 2026-07 --axis grey

gloam compare lays nights over each other along one axis and prints them with what may
be concluded, which is usually that it is not enough. With --json it prints every figure
that the window shows, so that anybody can check it.

  --journal FILE   the journal to read; it is not changed
  --demo           the demo journal instead
  --axis A         clock (without it), sunset, grey, moon or light
  --order O        darkest (without it), date, level or catch

Which nights: those fished that fit all of what is given; without any the latest year.
Each may be given several times, except --from, --to, --client and --like.
` + filterPage + `  --person NAME    fishing or guiding
  --moon SIZE      thin, half or full: how much of it was lit
  --like DATE      the 8 nights likest to that one, by trend, level and temperature of
                   the river, light at the start and time of the year
  --night DATE     only these

  --json           every figure as JSON (below)
  --tables STEM    the figures as CSV: STEM-steps.csv, -nights, -fish, -pools,
                   -runs, -rigs
  -o FILE          a picture: .pdf, .png or .svg; no file that exists is written over
  --picture P      joined (without it), strips or pools

The JSON is one object, schema "gloamline nights together 1":
  title, how       which nights, and how they were chosen
  said             the sentences below the pictures, what may be concluded first
  axis, order      as asked for; time.axis is clock where axis is light
  totals           rod_hours with a fly in the water; landed, lost, touches, shows
                   (follows and boils); kept of those landed
  behind           what the verdict counts: fish_hooked, nights, blank_nights without one;
                   steps of light fished in, steps_enough of them with least_hours and
                   least_nights; least_fish for a verdict
  nights           in order: mark (letter in the pictures), trip, evening, beat, zone,
                   the same counts, bank_hours, sunset and grey_at in UTC, grey_lux,
                   darkest_lux fished in, level_m, curve: place along the axis of time and
                   lux of the open sky there, in turn; time_bins, light_bins of that night
  others           the nights of the list that are not laid with them, with their counts
  beats            counts and nights on each beat; without_pool: contacts without one
  time, light      an axis each: bins (part, from, to, counts, nights with a fly in the
                   water) and off: what has no place on it, why. Places are minutes: by
                   the clock from noon of the evening, else from sunset, trees grey, or
                   the moon over the pool's skyline. On light they are log10 of lux, in
                   three parts: falling, moonlit, dawn. Bins that hold nothing are left
                   out; an uncertain contact counts in each bin by its share.
  fish             each contact: mark, number, id, earliest and latest moment in UTC, rod,
                   pool, touch, fate, weight_g, length_mm, air_s out of the water, tag,
                   fly_mm, position of the fly (0 the point), rung, darker (decades
                   below trees grey; negative: lighter), lux with its band; and its place
                   on both axes: at, reach (where it may lie, with shares), or off
  runs             each run: mark, id, rod, pool, nth through it that night, from, to,
                   rest_min, on both axes likewise; curve as above, of its pool's light
  rigs             each change of flies: mark, id, rod, at, until, fly_mm from the point
                   up, sink_ips of the line, leader_m
  pools            counts, runs and nights pool by pool; without a name: pool not known
`

var compareCommand = command{
	name: "compare",
	help: "nights side by side, by the clock and by the light",
	page: comparePage,
	run:  runCompare,
}

// compareOrder is what the command line asks for.
type compareOrder struct {
	journal, out, tables           string
	demo, json                     bool
	axis                           timeline.Axis
	order                          timeline.NightOrder
	picture                        scene.Picture
	which                          filterOrder
	moons                          []string
	like                           journal.Date
	axisText, orderText, pictureOf string
	likeText                       string
}

func runCompare(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	o, code, ok := readCompare(args, stdout, stderr)
	if !ok {
		return code
	}
	open := func() (*journal.Journal, error) { return openJournal(o.journal) }
	if o.demo {
		open = demoJournal
	}
	j, err := open()
	if err != nil {
		return explain(stderr, err, o.journal)
	}
	defer j.Close()
	t := state.New(j, time.Now).Together()
	if len(t.Traits()) == 0 {
		return fail(stderr, wrong, "the journal holds no night yet")
	}
	if err := o.choose(t); err != nil {
		return fail(stderr, wrong, "%v", err)
	}
	t.SetAxis(o.axis)
	t.SetOrder(o.order)
	t.Sides()
	if err := t.Fault(); err != nil {
		return explain(stderr, err, o.journal)
	}
	if len(t.Sides().Light.Nights) == 0 {
		return fail(stderr, wrong, "no night fits; give less to choose by")
	}
	return o.write(t, stdout, stderr)
}

// readCompare reads the command line. When it returns ok false the command ends with
// code at once.
func readCompare(args []string, stdout, stderr io.Writer) (o compareOrder, code int, ok bool) {
	flags := flag.NewFlagSet("compare", flag.ContinueOnError)
	flags.StringVar(&o.journal, "journal", "", "")
	flags.BoolVar(&o.demo, "demo", false, "")
	flags.BoolVar(&o.json, "json", false, "")
	flags.StringVar(&o.axisText, "axis", "clock", "")
	flags.StringVar(&o.orderText, "order", "darkest", "")
	flags.StringVar(&o.pictureOf, "picture", string(scene.JoinedPicture), "")
	flags.StringVar(&o.out, "o", "", "")
	flags.StringVar(&o.tables, "tables", "", "")
	flags.StringVar(&o.likeText, "like", "", "")
	flags.Func("moon", "", func(s string) error { o.moons = append(o.moons, s); return nil })
	o.which.flags(flags)
	if code, ok := parse(flags, args, comparePage, stdout, stderr); !ok {
		return o, code, false
	}
	if err := o.check(flags.Args()); err != nil {
		return o, fail(stderr, wrong, "%v", err), false
	}
	return o, done, true
}

// check reads what was typed and finds what makes no sense.
func (o *compareOrder) check(more []string) (err error) {
	switch {
	case len(more) > 0:
		return fmt.Errorf("gloam compare takes no %q; see gloam help compare", more[0])
	case o.journal == "" && !o.demo:
		return fmt.Errorf("say which journal: --journal FILE, or --demo")
	case o.journal != "" && o.demo:
		return fmt.Errorf("--journal and --demo exclude each other")
	case o.out != "" && !paper.Takes(o.out):
		return fmt.Errorf("%w, not %q", paper.ErrFormat, o.out)
	case !slices.Contains(scene.Pictures, scene.Picture(o.pictureOf)):
		return fmt.Errorf("there is no picture %q; there are joined, strips and pools", o.pictureOf)
	case len(o.which.nights) > 0 && !(o.which.none() && len(o.moons) == 0 && o.likeText == ""):
		return fmt.Errorf("--night and the other ways to choose exclude each other")
	}
	o.picture = scene.Picture(o.pictureOf)
	if o.axis, err = timeline.ParseAxis(o.axisText); err != nil {
		return err
	}
	if o.order, err = timeline.ParseNightOrder(o.orderText); err != nil {
		return err
	}
	for _, moon := range o.moons {
		if !slices.ContainsFunc(timeline.MoonSizes, func(m timeline.MoonSize) bool { return m.String() == moon }) {
			return fmt.Errorf("there is no moon %q; there are thin, half and full", moon)
		}
	}
	if o.likeText != "" {
		if o.like, err = journal.ParseDate(o.likeText); err != nil {
			return fmt.Errorf("--like %q is not a date like 2026-07-04", o.likeText)
		}
	}
	return o.which.check()
}

// choose finds beats, people and nights by what they are called.
func (o *compareOrder) choose(t *state.Together) error {
	if err := o.which.find(t.Offers()); err != nil {
		return err
	}
	c := state.NightChoice{Filter: o.which.filter, Moons: o.moons}
	if !o.like.IsZero() {
		like := filterOrder{nights: []journal.Date{o.like}}
		ids, err := like.trips(t.Subjects())
		if err != nil {
			return err
		}
		c.Like = ids[0]
	}
	picked, err := o.which.trips(t.Subjects())
	if err != nil {
		return err
	}
	c.Added, c.None = picked, len(picked) > 0
	if o.which.none() && len(o.moons) == 0 && o.likeText == "" && len(picked) == 0 {
		c = t.Choice() // the latest year
	}
	t.SetChoice(c)
	return nil
}

// write prints what was asked for.
func (o *compareOrder) write(t *state.Together, stdout, stderr io.Writer) int {
	rep := t.Report()
	var names []string
	if o.tables != "" {
		var files []paper.File
		for _, x := range rep.Tables() {
			files = append(files, paper.File{Name: o.tables + x.Name + ".csv", Content: x.CSV})
		}
		saved, err := paper.SaveFiles(files)
		if err != nil {
			return notWritten(stderr, o.tables, err)
		}
		names = append(names, saved...)
	}
	if o.out != "" {
		page := scene.TogetherPage(o.picture, t.Sides(), rep.Title, []string{rep.How}, scene.Paper, t.View())
		saved, err := paper.Save(o.out, rep.Title, []*draw.List{page})
		if err != nil {
			return notWritten(stderr, o.out, err)
		}
		names = append(names, saved...)
	}
	if o.json {
		text, err := json.MarshalIndent(rep, "", "  ")
		if err != nil {
			return fail(stderr, broken, "the figures cannot be written: %v", err)
		}
		return show(stdout, string(text)+"\n")
	}
	if len(names) > 0 {
		return show(stdout, strings.Join(names, "\n")+"\n")
	}
	return show(stdout, compareText(rep))
}

// notWritten says why a file was not written.
func notWritten(stderr io.Writer, name string, err error) int {
	if at := (*fs.PathError)(nil); errors.As(err, &at) {
		name = at.Path
	}
	return twoLines(stderr, name+" was not written.", words.SaveFault(err))
}

// compareText is a report for people: the nights, the steps of the light, the sentences.
func compareText(r state.Report) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s\n\n", r.Title, r.How)
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "\tevening\tbeat\trod-hours\tlanded\tlost\ttouches\tdarkest")
	for _, n := range r.Nights {
		fmt.Fprintf(w, "%s\t%s\t%s\t%.1f\t%g\t%g\t%g\t%s\n", n.Mark, n.Evening, n.Beat, n.RodHours, n.Landed, n.Lost, n.Touches, units.Lux(n.DarkestLux))
	}
	_ = w.Flush() // to memory
	b.WriteString("\n")
	for _, s := range r.Said {
		b.WriteString(s + "\n")
	}
	return b.String()
}
