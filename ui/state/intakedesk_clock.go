package state

import (
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/ui/words"
)

// IntakeClock is the clock of a device, to be put right.
type IntakeClock struct {
	Device string
	Files  int // of this device
	Offset time.Duration
	Set    bool
	Hint   time.Duration // an offset that something speaks for; see HasHint
	Shown  time.Time     // a moment of the file by that clock, in the zone it is read in
	Fish   []IntakeFish
	Zone   *time.Location
	night  journal.Date
	from   intake.HintFrom
}

// IntakeFish is a fish that is written with its moment: a photo may show it.
type IntakeFish struct {
	Name string
	At   time.Time
}

// clock is what is added to the clock of a source's device, and whether somebody said so.
func (k *IntakeDesk) clock(s intake.Source) (time.Duration, bool) {
	if off, ok := k.order.Clocks[s.Device]; ok {
		return off, true
	}
	return s.Record.Offset, s.Record.Offset != 0
}

// Clock is the clock of the device of the file picked out; false if it has none.
func (k *IntakeDesk) Clock() (IntakeClock, bool) {
	sources := k.Sources()
	if k.file < 0 || k.file >= len(sources) {
		return IntakeClock{}, false
	}
	s := sources[k.file].Source
	c := IntakeClock{Device: s.Device, Hint: s.Hint.Offset, from: s.Hint.From, Zone: k.zone()}
	switch {
	case len(s.File.Fixes) > 0:
		c.Shown = s.File.Fixes[0].At
	case s.File.Photo != nil && !s.Clock.At.IsZero():
		c.Shown = s.Clock.At
	default:
		return IntakeClock{}, false
	}
	c.Offset, c.Set = k.clock(s)
	for _, other := range sources {
		if other.Source.Device == s.Device && other.Source.File.Kind != intake.GaugeFile && other.Source.File.Fault == nil {
			c.Files++
		}
	}
	c.night = journal.EveningOf(c.Shown, c.Zone)
	if n, ghosts := k.Laid(); n != nil {
		c.night = n.Log.Trip.Evening
		for _, f := range n.Contacts {
			if ghosts[f.Ref()] == 0 {
				c.Fish = append(c.Fish, IntakeFish{words.ContactNumber(n, f) + ", " + words.Clock(f.At.Mid(), n.Zone) + ", " + words.ContactLine(f, k.d.prefs), f.At.Mid()})
			}
		}
	}
	return c, true
}

// HasHint reports whether there is one.
func (c IntakeClock) HasHint() bool { return c.from != intake.NoHint }

// Moment reads a moment of a clock: 23:12, 23:12:40, or with its date in front, which
// else is that of the night.
func (c IntakeClock) Moment(text string) (time.Time, bool) {
	text = strings.TrimSpace(text)
	for _, layout := range []string{"2006-01-02 15:04:05", "2006-01-02 15:04", "2006-01-02T15:04:05"} {
		if t, err := time.ParseInLocation(layout, text, c.Zone); err == nil {
			return t.UTC(), true
		}
	}
	for _, layout := range []string{"15:04:05", "15:04"} {
		t, err := time.Parse(layout, text)
		if err != nil {
			continue
		}
		d := c.night
		if t.Hour() < 12 { // after midnight
			d = d.Add(1)
		}
		return time.Date(d.Year, d.Month, d.Day, t.Hour(), t.Minute(), t.Second(), 0, c.Zone).UTC(), true
	}
	return time.Time{}, false
}

// Print prints a moment as Moment reads it.
func (c IntakeClock) Print(t time.Time) string { return t.In(c.Zone).Format("2006-01-02 15:04:05") }

// Unclock takes the offset of a device away again.
func (k *IntakeDesk) Unclock(device string) {
	k.act(func() {
		clocks := map[string]time.Duration{}
		for d, off := range k.order.Clocks {
			if d != device {
				clocks[d] = off
			}
		}
		k.order.Clocks = clocks
	})
}
