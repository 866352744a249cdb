package words

import (
	"fmt"
	"math"
	"strings"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/gauge"
	"gloamline/journal/intake"
)

// IntakeView is what sentences about a batch need beside it.
type IntakeView struct {
	Batch *intake.Batch
	Beat  geo.Beat // as on that evening
	Zone  *time.Location
	Prefs Prefs
}

func (v IntakeView) pool(id journal.ID) string {
	p, _ := v.Beat.Pool(id)
	return PoolName(p.Name)
}

// SourceLine says what a file is: night.gpx: track of a watch, 28,515 positions,
// 22:30–06:29.
func (v IntakeView) SourceLine(s intake.Source) string {
	f := s.File
	what := ""
	switch {
	case f.Kind == intake.TrackFile:
		what = commas(ofDevice("track", s.Device), number(f.Track.Points, "position", "positions"))
		if !f.Track.First.IsZero() {
			what = commas(what, ClockSpan(f.Track.First.Add(s.Record.Offset), f.Track.Last.Add(s.Record.Offset), v.Zone))
		}
	case f.Photo != nil:
		what = ofDevice("photo", s.Device)
		if !s.Clock.At.IsZero() {
			what = commas(what, Clock(s.Clock.At.Add(s.Record.Offset), v.Zone))
		}
	case f.Gauge != nil:
		what = "river levels"
		if n := len(f.Gauge.Series); n > 0 {
			what = commas(what, number(len(f.Gauge.Series[0].Points), "reading", "readings"))
		}
	}
	if s.Record.Offset != 0 {
		what = commas(what, "clock put right by "+Offset(s.Record.Offset))
	}
	if s.Known {
		what = commas(what, "read in before")
	}
	if what == "" {
		return f.Name
	}
	return f.Name + ": " + what
}

func ofDevice(what, device string) string {
	if device == "" {
		return what
	}
	return what + " of “" + device + "”"
}

// Offset prints what is added to a clock: +1 min 32 s, −1 h.
func Offset(d time.Duration) string {
	sign := "+"
	if d < 0 {
		sign, d = "−", -d
	}
	d = d.Round(time.Second)
	var parts []string
	for _, u := range []struct {
		of   time.Duration
		name string
	}{{24 * time.Hour, "days"}, {time.Hour, "h"}, {time.Minute, "min"}, {time.Second, "s"}} {
		if n := d / u.of; n > 0 {
			name := u.name
			if name == "days" && n == 1 {
				name = "day"
			}
			parts = append(parts, fmt.Sprintf("%d %s", n, name))
			d -= n * u.of
		}
	}
	if len(parts) == 0 {
		return "0 s"
	}
	return sign + strings.Join(parts, " ")
}

// RemarkLine says why a file gives less than it might.
func (v IntakeView) RemarkLine(s intake.Source, r intake.Remark) string {
	switch r.Kind {
	case intake.BadFile:
		return s.File.Fault.Error()
	case intake.Twice:
		return "the same file is given twice"
	case intake.OtherNight:
		return "belongs to another night: it begins " + r.At.In(v.Zone).Format("15:04 on 2 January 2006")
	case intake.NoMoment:
		return "nothing in it says when"
	case intake.NoRuns:
		return "no run was found: it nowhere goes down a pool of this beat"
	case intake.FarAway:
		return "its position lies " + distance(r.Metres) + " from the beat and is not used"
	case intake.NothingNew:
		return "the journal has " + number(r.Count, "its reading", "its readings") + " already"
	case intake.OldFix:
		return "its satellite fix is older than the picture and says nothing of the zone"
	case intake.ClockOff:
		if r.By < 0 {
			return "the camera's clock is " + strings.TrimPrefix(Offset(-r.By), "+") + " behind its satellite fix"
		}
		return "the camera's clock is " + strings.TrimPrefix(Offset(r.By), "+") + " ahead of its satellite fix, or the fix is older"
	case intake.TrackThinned:
		return fmt.Sprintf("%d of %d positions would be kept: none left out lies more than %.0f m off", r.Count, r.Of, math.Ceil(r.Metres))
	case intake.ReadingsCut:
		return fmt.Sprintf("%d of %d readings would be kept: those of two weeks before the night and a day after", r.Count, r.Of)
	case intake.NoLevels:
		return "holds no levels of a river and no temperatures of its water"
	case intake.ZoneAssumed:
		return "its clock names no zone; read as " + r.Zone
	case intake.NoThumb:
		return "no small copy can be made, so it is kept without a picture"
	}
	return string(r.Kind)
}

func distance(m float64) string {
	if m >= 1000 {
		return fmt.Sprintf("%.1f km", m/1000)
	}
	return fmt.Sprintf("%.0f m", m)
}

// HintLine offers an offset for a device; empty if there is none.
func HintLine(s intake.Source) string {
	switch s.Hint.From {
	case intake.FromBefore:
		return "its clock was put right by " + Offset(s.Hint.Offset) + " last time"
	case intake.FromSatellite:
		return Offset(s.Hint.Offset) + " would put its clock right"
	}
	return ""
}

// QuestionLines say what has to be answered, the answers offered below.
func (v IntakeView) QuestionLines(q intake.Question) []string {
	var names []string
	for _, i := range q.Sources {
		names = append(names, v.Batch.Sources[i].File.Name)
	}
	who := and(names)
	if len(names) > 4 {
		who = fmt.Sprintf("%s, %s and %d more", names[0], names[1], len(names)-2)
	}
	switch q.Kind {
	case intake.WhoseTrack:
		return []string{"Whose track is " + who + "? Several rods fished this night."}
	case intake.NoRods:
		return []string{"Who carried " + who + "? The night has no rod yet."}
	case intake.WhichZone:
		return []string{"Which zone was the clock set to for " + who + "? It was taken to be that of the night."}
	case intake.GaugeZone:
		out := []string{"Which zone are the times of " + who + " in?"}
		for _, p := range q.Peaks {
			out = append(out, fmt.Sprintf("if %s, the highest reading was at %s", p.Zone, p.At.In(v.Zone).Format("15:04 on 2 January")))
		}
		return out
	case intake.Columns:
		return []string{"Which columns of " + who + " are the time and the level?"}
	}
	return []string{string(q.Kind)}
}

// ProposalLine says what would be stored: 22:34–23:15 run, Alder Pool.
func (v IntakeView) ProposalLine(p intake.Proposal) string {
	return strings.TrimSpace(v.ProposalTimes(p) + " " + commas(v.ProposalWhat(p), doubt(p)))
}

// ProposalTimes says from when to when, or the moment; empty for a track and a gauge.
func (v IntakeView) ProposalTimes(p intake.Proposal) string {
	switch r := p.Record.(type) {
	case journal.Run:
		return v.runTimes(r)
	case journal.Contact:
		return v.moment(r.When)
	case journal.Photo:
		return v.moment(r.When)
	}
	return ""
}

// ProposalWhat says what it is: run, Alder Pool, second run there.
func (v IntakeView) ProposalWhat(p intake.Proposal) string {
	switch r := p.Record.(type) {
	case journal.Run:
		return commas("run", v.pool(r.Pool), again(p))
	case journal.Contact:
		return commas("fish landed", v.poolOr(r.Pool), "if "+v.Batch.Sources[p.Source].File.Name+" shows one")
	case journal.Photo:
		shows := ""
		if r.Of.Known() {
			shows = "of the fish written then"
		}
		return commas(PhotoOf(r.Name), placed(r.Spot), shows)
	case journal.Track:
		return "the track itself, " + number(len(r.Fixes), "position", "positions")
	case journal.Series:
		what := "readings of the gauge "
		if r.What == "temperature" {
			what = "temperatures of the water at the gauge "
		}
		return commas(what+r.Station, number(len(r.Points), "reading", "readings"))
	}
	return string(p.Record.Ref().Kind)
}

// again says which run of the track at its pool it is, from the second on.
func again(p intake.Proposal) string {
	if p.Visit == nil || p.Visit.Nth < 2 {
		return ""
	}
	return ordinal(p.Visit.Nth) + " run there"
}

func doubt(p intake.Proposal) string {
	switch {
	case p.Visit != nil && p.Visit.Stood:
		return "doubtful: it stayed in one place"
	case p.Confidence < intake.Doubtful:
		return "doubtful"
	}
	return ""
}

func placed(f journal.Field[journal.Place]) string {
	if f.Known() {
		return ""
	}
	return "place not known"
}

func (v IntakeView) poolOr(f journal.Field[journal.ID]) string {
	if id, ok := f.Get(); ok {
		return v.pool(id)
	}
	return ""
}

func (v IntakeView) moment(w journal.When) string {
	return Moment(w, v.Batch.Log.Spread(w), v.Zone)
}

func (v IntakeView) runTimes(r journal.Run) string {
	from := v.Batch.Log.Spread(r.When)
	u, ok := r.Until.Get()
	if !ok {
		return Clock(from.Mid(), v.Zone)
	}
	return ClockSpan(from.Mid(), v.Batch.Log.Spread(u).Mid(), v.Zone)
}

// GaugeLine says how the river stood at a gauge: at the gauge at 22:34: 0.69 m, falling
// flood, 9 h since the peak, 32 % of the rise left, 2.4 cm an hour down.
func (v IntakeView) GaugeLine(s gauge.State) string {
	level, left, slope, since := "", "", "", ""
	if h := float64(s.Level); !math.IsNaN(h) {
		level = fmt.Sprintf("%.2f m", h)
	}
	if s.Peak != nil && s.SincePeak >= 0 {
		since = Duration(s.SincePeak) + " since the peak"
		switch {
		case math.IsNaN(s.Left):
		case s.Left < 0:
			left = "below where the rise began"
		default:
			left = fmt.Sprintf("%.0f %% of the rise left", 100*s.Left)
		}
	}
	switch r := s.Slope * 100; {
	case math.IsNaN(r):
	case math.Abs(r) < 0.05:
		slope = "steady"
	case r > 0:
		slope = fmt.Sprintf("%.1f cm an hour up", r)
	default:
		slope = fmt.Sprintf("%.1f cm an hour down", -r)
	}
	class := string(s.Class)
	if s.Class == gauge.NoClass {
		class = string(s.Why)
	}
	at := "at the gauge at " + Clock(s.At, v.Zone)
	if s.Lagged {
		at += ", the lag taken off"
	}
	return at + ": " + commas(level, class, since, left, slope)
}

// ConflictLine says what stands against a proposal.
func (v IntakeView) ConflictLine(c intake.Conflict) string {
	switch c.Kind {
	case intake.RunOverlap:
		r := c.Written.(journal.Run)
		from, to := v.Batch.Log.RunSpan(r)
		return "written: " + commas(ClockSpan(from.Mid(), to.Mid(), v.Zone)+" run", v.pool(r.Pool))
	case intake.TwoTracks:
		p, _ := v.Batch.Find(c.Rival)
		return v.Batch.Sources[p.Source].File.Name + " gives: " + v.ProposalLine(p)
	case intake.SameFish:
		k := c.Written.(journal.Contact)
		return "written: " + commas(v.moment(k.When)+" fish, "+TouchName(k.Touch), v.poolOr(k.Pool))
	case intake.SamePhoto:
		p := c.Written.(journal.Photo)
		return "written: " + v.moment(p.When) + " the same picture"
	case intake.OtherReadings:
		return fmt.Sprintf("the journal has other values for %d of these moments", len(c.Readings))
	}
	return string(c.Kind)
}

// VerdictLine counts what was decided before; empty if nothing was.
func VerdictLine(ps []intake.Proposal) string {
	n := map[journal.Verdict]int{}
	for _, p := range ps {
		n[p.Past]++
	}
	count := func(v journal.Verdict, word string) string {
		if n[v] == 0 {
			return ""
		}
		return fmt.Sprintf("%d %s", n[v], word)
	}
	s := commas(count(journal.Accepted, "accepted"), count(journal.Rejected, "rejected"), count(journal.Deleted, "removed later"))
	if s == "" {
		return ""
	}
	return "Decided before and left alone: " + s + "."
}
