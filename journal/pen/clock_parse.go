package pen

import (
	"regexp"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
)

var (
	aboutShape   = regexp.MustCompile(`^(?:about|abt\.?|around|roughly|approx\.?|circa|ca\.?|c\.|~) *(.+)$`)
	slackShape   = regexp.MustCompile(`^(.+?) *(?:\+/?-|±) *(\d{1,3}) *(m|min|mins|minutes|h|hour|hours|s|sec|seconds)?$`)
	betweenShape = regexp.MustCompile(`^between (.+?) and (.+)$`)
	rangeShape   = regexp.MustCompile(`^([^-–]*\d[^-–]*?) *(?:-|–| to ) *([^-–]*\d[^-–]*)$`)
	hangShape    = regexp.MustCompile(`^(during|within|in|after|before) +(?:the +)?(.+)$`)
)

// Parse reads a text. The error is one sentence for the field.
func (c Clock) Parse(text string) (Moment, error) {
	s := strings.Join(strings.Fields(strings.ToLower(text)), " ")
	s = strings.TrimPrefix(s, "at ")
	if _, inWords := spoken(s); inWords || digitsAt(s) {
		return c.parsePlain(s)
	}
	if m := hangShape.FindStringSubmatch(s); m != nil {
		return c.parseHanging(m[1], m[2])
	}
	if m := betweenShape.FindStringSubmatch(s); m != nil {
		a, okA := c.thing(m[1])
		b, okB := c.thing(m[2])
		switch {
		case okA && okB && a.ID == b.ID:
			return Moment{}, wrongf("“between” needs two different things")
		case okA && okB:
			return Moment{When: journal.When{Kind: journal.BetweenTime, Anchors: []journal.ID{a.ID, b.ID}}}, nil
		case okA || okB:
			return Moment{}, wrongf("“between” joins two times or two things of the night, not one of each")
		}
		return c.parseRange(m[1], m[2])
	}
	if rest, ok := strings.CutPrefix(s, "from "); ok {
		return c.parseFrom(rest)
	}
	if m := slackShape.FindStringSubmatch(s); m != nil {
		return c.parseAbout(trimAbout(m[1]), slackOf(m[2], m[3]))
	}
	if m := aboutShape.FindStringSubmatch(s); m != nil {
		return c.parseAbout(m[1], journal.AboutSlack)
	}
	if at, ok := strings.CutSuffix(s, "?"); ok {
		return c.parseAbout(strings.TrimSpace(at), journal.AboutSlack)
	}
	if at := cutIsh(s); at != s {
		return c.parseAbout(at, journal.AboutSlack)
	}
	if m := rangeShape.FindStringSubmatch(s); m != nil {
		return c.parseRange(m[1], m[2])
	}
	return c.parsePlain(s)
}

// parseFrom reads the two ends of a stretch. “To” also stands in spoken times, so each
// one is tried as what joins the ends.
func (c Clock) parseFrom(s string) (Moment, error) {
	if _, ok := spoken(s); ok {
		return Moment{}, wrongf("“from %s” may be a time or a stretch: write it in figures, such as 22:00-23:00", s)
	}
	for at := 0; ; {
		i := strings.Index(s[at:], " to ")
		if i < 0 {
			break
		}
		from, to := s[:at+i], s[at+i+4:]
		at += i + 4
		if _, err := parseWall(from); err != nil {
			continue
		}
		if _, err := parseWall(to); err == nil {
			return c.parseRange(from, to)
		}
	}
	from, to, _ := strings.Cut(s, " to ")
	return c.parseRange(from, to)
}

// parsePlain reads one clock time as it stands.
func (c Clock) parsePlain(s string) (Moment, error) {
	w, err := parseWall(s)
	if err != nil {
		return Moment{}, err
	}
	in, err := c.resolve(w, c.After)
	return in.reading(journal.Exact(in.at)), err
}

func (in instant) reading(w journal.When) Moment {
	r := Moment{When: w, Ask: in.ask}
	if in.warning != "" {
		r.Warnings = []journal.Warning{in.warning}
	}
	return r
}

func (c Clock) parseAbout(text string, slack time.Duration) (Moment, error) {
	if slack <= 0 {
		return Moment{}, wrongf("give or take nothing is an exact time: write it alone")
	}
	w, err := parseWall(text)
	if err != nil {
		return Moment{}, err
	}
	in, err := c.resolve(w, c.After)
	if err != nil {
		return Moment{}, err
	}
	if q := in.ask; q != nil {
		for i := range q.Answers {
			q.Answers[i].Text = c.Print(journal.About(q.Answers[i].At, slack))
		}
	}
	return in.reading(journal.About(in.at, slack)), nil
}

// parseRange reads a stretch. A doubt about either end is asked one after the
// other: an answer rewrites that end and leaves the other as typed.
func (c Clock) parseRange(from, to string) (Moment, error) {
	a, err := parseWall(from)
	if err != nil {
		return Moment{}, err
	}
	b, err := parseWall(to)
	if err != nil {
		return Moment{}, err
	}
	lo, err := c.resolve(a, c.After)
	if err != nil {
		return Moment{}, err
	}
	hi, err := c.resolve(b, lo.at)
	if err != nil {
		return Moment{}, err
	}
	if hi.at.Before(lo.at) {
		return Moment{}, wrongf("the later time comes before the earlier one")
	}
	r := lo.reading(journal.Between(lo.at, hi.at))
	if hi.warning != "" && !slices.Contains(r.Warnings, hi.warning) {
		r.Warnings = append(r.Warnings, hi.warning)
	}
	switch {
	case lo.ask != nil:
		for i := range lo.ask.Answers {
			lo.ask.Answers[i].Text += "–" + to
		}
	case hi.ask != nil:
		r.Ask = hi.ask
		for i := range hi.ask.Answers {
			hi.ask.Answers[i].Text = from + "–" + hi.ask.Answers[i].Text
		}
	}
	return r, nil
}

func (c Clock) parseHanging(how, name string) (Moment, error) {
	kind := map[string]journal.WhenKind{"after": journal.AfterTime, "before": journal.BeforeTime}[how]
	if kind == "" {
		kind = journal.WithinTime
	}
	t, ok := c.thing(name)
	switch {
	case !ok && name == "run":
		return Moment{}, wrongf("which run? Name it, such as %s", c.example(how, true))
	case !ok:
		if _, err := parseWall(name); err == nil {
			return Moment{}, wrongf("“%s” needs a thing of this night; for a stretch write 23:10-23:40", how)
		}
		return Moment{}, wrongf("there is no “%s” in this night%s", name, c.suchAs(how, kind == journal.WithinTime))
	case kind == journal.WithinTime && !t.Run:
		return Moment{}, wrongf("“%s” needs a run%s", how, c.suchAs(how, true))
	}
	return Moment{When: journal.When{Kind: kind, Anchors: []journal.ID{t.ID}}}, nil
}

// thing finds what a moment may hang on by its name.
func (c Clock) thing(name string) (Thing, bool) {
	name = strings.TrimPrefix(strings.ToLower(name), "the ")
	if name == "run" || name == "this run" {
		for _, t := range c.Things {
			if t.ID == c.Run && t.Run {
				return t, true
			}
		}
		return Thing{}, false
	}
	for _, t := range c.Things {
		if strings.TrimPrefix(strings.ToLower(t.Name), "the ") == name {
			return t, true
		}
	}
	for _, t := range c.Things {
		if slices.Contains(t.Alias, name) {
			return t, true
		}
	}
	return Thing{}, false
}

func (c Clock) example(how string, run bool) string {
	for _, t := range c.Things {
		if t.Run || !run {
			return how + " " + t.Name
		}
	}
	return how + " run 1"
}

func (c Clock) suchAs(how string, run bool) string {
	for _, t := range c.Things {
		if t.Run || !run {
			return ", such as " + how + " " + t.Name
		}
	}
	return ""
}

func trimAbout(s string) string {
	if m := aboutShape.FindStringSubmatch(s); m != nil {
		return m[1]
	}
	return s
}

func slackOf(n, unit string) time.Duration {
	d := time.Duration(number(n))
	switch {
	case strings.HasPrefix(unit, "h"):
		return d * time.Hour
	case strings.HasPrefix(unit, "s"):
		return d * time.Second
	}
	return d * time.Minute
}
