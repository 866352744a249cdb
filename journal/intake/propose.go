package intake

import (
	"slices"
	"strings"
	"time"

	"gloamline/geo"
	"gloamline/journal"
)

// Propose sets files against a night. It reads the journal and changes nothing. Files with
// a fault have their remark; the others count. The error is the journal's.
func Propose(j *journal.Journal, files []*File, o Order) (*Batch, error) {
	log, err := j.Night(o.Trip)
	if err != nil {
		return nil, err
	}
	beat, err := journal.One[journal.Beat](j, log.Trip.Beat)
	if err != nil {
		return nil, err
	}
	m := &maker{Batch: &Batch{Log: log, order: o, past: map[string]journal.Decision{}}, beat: beat.On(log.Trip.Evening)}
	m.layout = m.beat.Layout()
	if m.zone, err = log.Trip.Location(); err != nil {
		return nil, err
	}
	if m.sources, err = journal.All[journal.Source](j); err != nil {
		return nil, err
	}
	if m.series, err = journal.All[journal.Series](j); err != nil {
		return nil, err
	}
	if err := m.remember(j, files); err != nil {
		return nil, err
	}
	m.whose()
	for i, f := range files {
		m.source(i, f)
	}
	// Tracks first: they say where a photo without a position was taken.
	for _, k := range []Kind{TrackFile, PhotoFile, GaugeFile} {
		for i := range m.Sources {
			if f := m.Sources[i].File; f.Kind == k && f.Fault == nil && !m.twice(i) {
				map[Kind]func(int){TrackFile: m.track, PhotoFile: m.photo, GaugeFile: m.gauge}[k](i)
			}
		}
	}
	m.ask()
	for i := range m.Proposals {
		m.settle(&m.Proposals[i])
	}
	slices.SortStableFunc(m.Proposals, func(a, b Proposal) int { return a.At.Compare(b.At) })
	return m.Batch, nil
}

// maker makes a batch.
type maker struct {
	*Batch
	beat    geo.Beat
	layout  *geo.Layout
	zone    *time.Location
	sources []journal.Source
	walked  []Fix // positions of the rod's tracks in this night, by true time
	unzoned []int // sources whose camera names no zone
}

// remember fetches what was decided about the bytes at hand.
func (m *maker) remember(j *journal.Journal, files []*File) error {
	all, err := journal.All[journal.Decision](j)
	if err != nil {
		return err
	}
	here := map[string]bool{}
	for _, f := range files {
		here[f.SHA256] = f.SHA256 != ""
	}
	for _, d := range all {
		if sum, _, ok := strings.Cut(d.Key, "#"); ok && here[sum] {
			m.past[d.Key] = d
		}
	}
	return nil
}

// whose settles the rod.
func (m *maker) whose() {
	rods := m.Log.Trip.Rods
	if _, ok := m.Log.Trip.Rod(m.order.Rod); ok {
		m.Rod = m.order.Rod
	} else if len(rods) == 1 {
		m.Rod = rods[0].ID
	}
}

// source makes a source of a file: the one the journal knows, or a new one.
func (m *maker) source(i int, f *File) {
	s := Source{File: f, Device: DeviceOf(f)}
	s.Record = journal.Source{ID: m.id(f.SHA256), SHA256: f.SHA256, Name: f.Name, Format: string(f.Kind), Device: s.Device, Read: m.order.Now}
	var before *journal.Source
	for k, old := range m.sources {
		if old.SHA256 == f.SHA256 {
			s.Record, s.Known = old, true
		}
		if s.Device != "" && old.Device == s.Device && (before == nil || old.Read.After(before.Read)) {
			before = &m.sources[k]
		}
	}
	offset, given := m.order.Clocks[s.Device]
	switch {
	case given:
		s.Record.Offset = offset
	case !s.Known && before != nil && before.Offset != 0:
		s.Hint = Hint{before.Offset, FromBefore}
	}
	if f.Fault != nil {
		s.Remarks = append(s.Remarks, Remark{Kind: BadFile})
	}
	m.Sources = append(m.Sources, s)
	if f.Fault == nil && m.twice(i) {
		m.remark(i, Remark{Kind: Twice})
	}
}

// twice reports whether the same bytes stand earlier in the batch.
func (m *maker) twice(i int) bool {
	return slices.ContainsFunc(m.Sources[:i], func(s Source) bool { return s.File.SHA256 == m.Sources[i].File.SHA256 })
}

func (m *maker) remark(i int, r Remark) { m.Sources[i].Remarks = append(m.Sources[i].Remarks, r) }

// inNight reports whether an instant lies between the two noons.
func (m *maker) inNight(t time.Time) bool {
	start, end := m.Log.Night()
	return !t.Before(start) && !t.After(end)
}

// add takes a proposal with what was decided about it before.
func (m *maker) add(p Proposal) {
	if d, ok := m.past[p.Key]; ok {
		p.Past = d.Verdict
	}
	m.Proposals = append(m.Proposals, p)
}

// id is a new identity, or the one remembered for a key that nothing was decided on.
func (m *maker) id(key string) journal.ID {
	if _, decided := m.past[key]; decided || m.order.IDs == nil || key == "" {
		return journal.NewID()
	}
	id, ok := m.order.IDs[key]
	if !ok {
		id = journal.NewID()
		m.order.IDs[key] = id
	}
	return id
}

// head makes the head of an entry from a source.
func (m *maker) head(i int, how, key string, w journal.When) journal.Head {
	return journal.Head{ID: m.id(key), Trip: m.Log.Trip.ID, Rod: m.Rod, When: w,
		From: journal.Origin{How: how, Source: m.Sources[i].Record.ID, Key: key}}
}

// ask puts the questions together.
func (m *maker) ask() {
	var tracks []int
	for i, s := range m.Sources {
		if s.File.Kind == TrackFile && s.File.Fault == nil {
			tracks = append(tracks, i)
		}
		if s.File.Gauge != nil && s.File.Fault != nil && len(s.File.Gauge.Columns) > 0 {
			m.Questions = append(m.Questions, Question{Kind: Columns, Sources: []int{i}})
		}
	}
	switch n := len(m.Log.Trip.Rods); {
	case len(tracks) > 0 && n == 0:
		m.Questions = append(m.Questions, Question{Kind: NoRods, Sources: tracks})
	case len(tracks) > 0 && m.Rod.IsZero():
		m.Questions = append(m.Questions, Question{Kind: WhoseTrack, Sources: tracks})
	}
	if len(m.unzoned) > 0 {
		m.Questions = append(m.Questions, Question{Kind: WhichZone, Sources: m.unzoned})
	}
}

func keyOf(f *File, element string) string { return f.SHA256 + "#" + element }

// NightsOf lists the nights that hold a moment of a track or a photo, in the order given.
// Photos that name no zone are read in that of the night. Gauges tell no night.
func NightsOf(trips []journal.Trip, files []*File) (out []journal.Trip) {
	for _, t := range trips {
		loc, err := t.Location()
		if err != nil {
			continue
		}
		start, end := t.Evening.Night(loc)
		if slices.ContainsFunc(files, func(f *File) bool {
			if f.Photo != nil {
				r := ReadClock(f.Photo, loc, nil)
				return !r.At.IsZero() && !r.At.Before(start) && !r.At.After(end)
			}
			return slices.ContainsFunc(f.Fixes, func(x Fix) bool { return !x.At.Before(start) && !x.At.After(end) })
		}) {
			out = append(out, t)
		}
	}
	return out
}
