package pen

import (
	"fmt"
	"time"

	"gloamline/journal"
)

// Print writes a moment so that Parse reads it back. A moment that hangs on
// something no longer in the night is written as the bounds it keeps.
func (c Clock) Print(w journal.When) string {
	if w.IsZero() {
		return ""
	}
	if len(w.Anchors) > 0 {
		if s, ok := c.printHanging(w); ok {
			return s
		}
		if w.Lo.IsZero() || w.Hi.IsZero() {
			return ""
		}
		return c.printRange(w.Lo, w.Hi)
	}
	switch w.Kind {
	case journal.ExactTime:
		return c.print(w.Lo)
	case journal.AboutTime:
		slack := w.Hi.Sub(w.Lo) / 2
		at := c.print(w.Lo.Add(slack))
		switch {
		case slack == journal.AboutSlack:
			return "about " + at
		case slack%time.Minute == 0:
			return fmt.Sprintf("%s ±%d min", at, slack/time.Minute)
		}
		return fmt.Sprintf("%s ±%d s", at, slack/time.Second)
	}
	return c.printRange(w.Lo, w.Hi)
}

// printRange writes each end as it reads after the one before it.
func (c Clock) printRange(lo, hi time.Time) string { return c.print(lo) + "–" + c.print(hi) }

func (c Clock) printHanging(w journal.When) (string, bool) {
	var names []string
	for _, id := range w.Anchors {
		name := ""
		for _, t := range c.Things {
			if t.ID == id {
				name = t.Name
			}
		}
		if name == "" {
			return "", false
		}
		names = append(names, name)
	}
	switch {
	case w.Kind == journal.WithinTime && len(names) == 1:
		return "during " + names[0], true
	case w.Kind == journal.BeforeTime && len(names) == 1:
		return "before " + names[0], true
	case w.Kind == journal.AfterTime && len(names) == 1:
		return "after " + names[0], true
	case w.Kind == journal.BetweenTime && len(names) == 2:
		return "between " + names[0] + " and " + names[1], true
	}
	return "", false
}
