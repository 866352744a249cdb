package pen

import (
	"time"

	"gloamline/journal"
)

// Clock reads and prints the moments of one night as people write them:
//
//	2312  23:12  23.12  9.40 pm  0:10      an exact time, noon to noon
//	half ten  ten to eleven  11 o'clock    the same in words (spoken.go)
//	about 23:30  abt 2330  ~23:30  23:30?  give or take ten minutes
//	23:30 +-15                             give or take so many minutes
//	23:20-23:40  between 23:20 and 23:40   a stretch
//	during the run  during Alder Pool      somewhere in a run
//	after fish 3  before Alder Pool run 2  next to an entry
//	between fish 2 and fish 3
//
// What Print writes, Parse reads as the same moment, to the second. A time that the
// clock showed twice is printed "first 01:30" or "second 01:30".
type Clock struct {
	Evening journal.Date
	Zone    *time.Location
	Things  []Thing    // what a moment may hang on, each by a name of its own
	Run     journal.ID // what "the run" means; zero if nothing
	// After and Before bound what fits in the order of the log when a clock shows
	// a time twice; zero: unbounded. Fits, if not nil, is asked where they leave it
	// open.
	After, Before time.Time
	Fits          func(time.Time) bool
}

// Thing is an entry that a moment can hang on.
type Thing struct {
	ID    journal.ID
	Name  string   // "fish 3", "Alder Pool run 2", "rig 1"
	Alias []string // also understood
	Run   bool
}

// Moment is what a text was understood to say.
type Moment struct {
	When     journal.When
	Warnings []journal.Warning
	Ask      *Question
}

// instant is a clock time found in the night.
type instant struct {
	at      time.Time
	warning journal.Warning
	ask     *Question
}

// resolve finds the instant of a reading of the clock. It asks where two readings
// fit, and takes the first until answered: the earlier of a time shown twice, the
// evening of a time that may be either half of the day.
func (c Clock) resolve(w wall, after time.Time) (instant, error) {
	if w.half == eitherHalf {
		return c.resolveHalf(w, after)
	}
	r, err := journal.ResolveWall(c.Evening, c.Zone, w.hour, w.min, after, c.Before)
	if err != nil {
		return instant{}, err
	}
	sec := time.Duration(w.sec) * time.Second
	if n := len(r.Candidates); n > 1 && w.pick != pickNone {
		if i, ok := c.picked(w, r.Candidates); ok {
			return instant{at: r.Candidates[i].Add(sec)}, nil
		}
	}
	if w.pick == pickZone && !c.named(w.zone, r.Candidates) {
		return instant{}, wrongf("the clock did not show %s that night", w.zone)
	}
	if r.Warning == journal.WallTwice {
		if at, ok := c.only(r.Candidates); ok {
			return instant{at: at.Add(sec)}, nil
		}
	}
	in := instant{at: r.At.Add(sec), warning: r.Warning}
	if r.Warning == journal.WallTwice {
		in.ask = c.askTwice(w, r.Candidates)
	}
	return in, nil
}

// picked returns which of two candidates the text named.
func (c Clock) picked(w wall, at []time.Time) (int, bool) {
	switch w.pick {
	case pickFirst:
		return 0, true
	case pickSecond:
		return len(at) - 1, true
	case pickZone:
		for i, t := range at {
			if zoneName(t.In(c.Zone)) == w.zone {
				return i, true
			}
		}
	}
	return 0, false
}

func (c Clock) named(zone string, at []time.Time) bool {
	for _, t := range at {
		if zoneName(t.In(c.Zone)) == zone {
			return true
		}
	}
	return false
}

// only returns the single candidate that Fits takes.
func (c Clock) only(at []time.Time) (time.Time, bool) {
	if c.Fits == nil {
		return time.Time{}, false
	}
	var out time.Time
	n := 0
	for _, t := range at {
		if c.Fits(t) {
			out, n = t, n+1
		}
	}
	return out, n == 1
}

// sameOuting bounds how long after an earlier moment a doubtful time is taken
// without asking for the half of the day.
const sameOuting = 6 * time.Hour

// resolveHalf reads a time such as 9.40 or 12.15 that does not say which half of
// the day it means. Nights are fished in the dark, so the evening, or after
// midnight, is the likelier.
func (c Clock) resolveHalf(w wall, after time.Time) (instant, error) {
	likely, other := w, w
	likely.half, other.half = givenHalf, givenHalf
	labels := [2]string{" in the evening", " in the morning"}
	if w.hour == 12 {
		likely.hour = 0
		labels = [2]string{" after midnight", " at midday"}
	} else {
		likely.hour += 12
	}
	l, err := c.resolve(likely, after)
	if err != nil {
		return l, err
	}
	o, err := c.resolve(other, after)
	if err != nil {
		return l, nil
	}
	switch {
	case after.IsZero():
	case l.at.Before(after) && !o.at.Before(after) && o.at.Sub(after) <= sameOuting:
		return o, nil
	case !l.at.Before(after) && l.at.Sub(after) <= sameOuting:
		return l, nil
	}
	if l.ask != nil {
		return l, nil // one question at a time
	}
	l.ask = &Question{
		Text: "Which half of the day?",
		Answers: []Answer{
			{Label: clockText(l.at, c.Zone) + labels[0], Text: c.print(l.at), At: l.at},
			{Label: clockText(o.at, c.Zone) + labels[1], Text: c.print(o.at), At: o.at},
		},
	}
	return l, nil
}

func (c Clock) askTwice(w wall, at []time.Time) *Question {
	q := &Question{Text: "The clock showed " + w.String() + " twice that night. Which was it?"}
	for i, t := range at {
		t = t.Add(time.Duration(w.sec) * time.Second)
		label := "the first"
		if i > 0 {
			label = "the second, after the clocks went back"
		}
		if z := zoneName(t.In(c.Zone)); z != "" {
			label += " (" + z + ")"
		}
		q.Answers = append(q.Answers, Answer{Label: label, Text: c.print(t), At: t})
	}
	return q
}

// print writes an instant so that it reads back, alone, as the same.
func (c Clock) print(t time.Time) string {
	s := clockText(t, c.Zone)
	l := t.In(c.Zone)
	r, err := journal.ResolveWall(c.Evening, c.Zone, l.Hour(), l.Minute(), time.Time{}, time.Time{})
	switch {
	case err == nil && len(r.Candidates) > 1 && t.Before(r.Candidates[1]):
		return "first " + s
	case err == nil && len(r.Candidates) > 1:
		return "second " + s
	case l.Hour() == 12:
		return s + " pm"
	case l.Hour() == 10 || l.Hour() == 11:
		return s + " am"
	}
	return s
}
