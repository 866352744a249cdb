package state

import (
	"errors"
	"io"
	"math"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// SkyPool returns the pool whose skyline the strip shows: the one picked out, else the first
// in fishing order; false without any.
func (b *BeatDesk) SkyPool() (geo.Pool, bool) {
	d := b.now()
	p, ok := d.Beat.Pool(b.sel)
	if order := d.Beat.InOrder(); !ok && len(order) > 0 {
		p, ok = order[0], true
	}
	if b.skyHeld != nil {
		p.Skyline = b.skyHeld
	}
	return p, ok
}

// SkyPoint returns the point of the skyline picked out, -1 for none.
func (b *BeatDesk) SkyPoint() int { return b.sky }

// GraspSky takes hold of a point of the skyline within so many degrees of bearing and of
// altitude, or puts a new one there. Until ReleaseSky the skyline is a preview.
func (b *BeatDesk) GraspSky(at geo.SkyPoint, bearing, altitude units.Degrees) {
	p, ok := b.SkyPool()
	if !ok {
		return
	}
	b.d.act(func() {
		if b.sel != p.ID {
			b.Select(p.ID)
		}
		b.tell()
		b.refused = nil
		line := p.Skyline.Sorted()
		b.skyMoved = false
		if b.sky = draft.NearSky(line, at, bearing, altitude); b.sky < 0 {
			line, b.sky = draft.AddSky(line, rounded(at))
			b.skyMoved = true
		}
		b.skyHeld = line
	})
}

// DragSky moves the point of the skyline that is held.
func (b *BeatDesk) DragSky(to geo.SkyPoint) {
	if b.skyHeld == nil || b.sky < 0 {
		return
	}
	b.d.act(func() {
		b.skyHeld, b.sky = draft.DragSky(b.skyHeld, b.sky, rounded(to))
		b.skyMoved = true
		b.d.tell(RoomView)
	})
}

// rounded is to the half degree, as fine as a hand can be held against a hill.
func rounded(p geo.SkyPoint) geo.SkyPoint {
	half := func(v units.Degrees) units.Degrees { return units.Degrees(math.Round(float64(v)*2) / 2) }
	return geo.SkyPoint{Bearing: half(p.Bearing).Bearing(), Altitude: half(p.Altitude)}
}

// ReleaseSky stores what was drawn of the skyline, as one step.
func (b *BeatDesk) ReleaseSky() error {
	line, moved := b.skyHeld, b.skyMoved
	b.skyHeld = nil
	if line == nil || !moved {
		return nil
	}
	return b.horizon("", line)
}

func (b *BeatDesk) horizon(about string, line geo.Skyline) error {
	p, ok := b.SkyPool()
	if !ok {
		return nil
	}
	at := b.sky
	err := b.do(about, func(d draft.Draft) (draft.Draft, error) { return d.Horizon(p.ID, line) })
	b.sky = min(at, len(line)-1)
	return err
}

// NextSky picks out the next (step 1) or previous point of the skyline, round and round.
func (b *BeatDesk) NextSky(step int) {
	p, ok := b.SkyPool()
	if !ok || len(p.Skyline) == 0 {
		return
	}
	b.d.act(func() {
		if b.sel != p.ID {
			b.Select(p.ID)
		}
		n := len(p.Skyline)
		if b.sky < 0 && step < 0 {
			b.sky = 0
		}
		b.sky = ((b.sky+step)%n + n) % n
		b.tell()
	})
}

// NudgeSky moves the point picked out by degrees of bearing and of altitude; strokes in a row
// are one step.
func (b *BeatDesk) NudgeSky(bearing, altitude units.Degrees) error {
	p, ok := b.SkyPool()
	if !ok || b.sky < 0 || b.sky >= len(p.Skyline) {
		return nil
	}
	line := p.Skyline.Sorted()
	q := line[b.sky]
	line, b.sky = draft.DragSky(line, b.sky, geo.SkyPoint{Bearing: q.Bearing + bearing, Altitude: q.Altitude + altitude})
	return b.horizon("sky "+p.ID.String(), line)
}

// AddSky puts in a point halfway to the next one, or the first at south.
func (b *BeatDesk) AddSky() error {
	p, ok := b.SkyPool()
	if !ok {
		return nil
	}
	b.d.act(func() { b.Select(p.ID) })
	line := p.Skyline.Sorted()
	at := geo.SkyPoint{Bearing: 180, Altitude: 10}
	if n := len(line); n > 0 {
		i := max(0, b.sky)
		gap := (line[(i+1)%n].Bearing - line[i].Bearing).Bearing()
		if gap == 0 {
			gap = 360
		}
		at.Bearing = (line[i].Bearing + gap/2).Bearing()
		at.Altitude = line.Altitude(at.Bearing)
	}
	line, b.sky = draft.AddSky(line, rounded(at))
	return b.horizon("", line)
}

// DropSky takes the point picked out away.
func (b *BeatDesk) DropSky() error {
	p, ok := b.SkyPool()
	if !ok || b.sky < 0 {
		return nil
	}
	return b.horizon("", draft.DropSky(p.Skyline.Sorted(), b.sky))
}

// TypeSky sets the skyline of the pool picked out by pairs of bearing and altitude.
func (b *BeatDesk) TypeSky(text string) error {
	line, err := draft.ParseSkyline(text)
	if err != nil {
		return b.skyFault(err)
	}
	return b.horizon("sky text "+b.sel.String(), line)
}

func (b *BeatDesk) skyFault(err error) error {
	if e := (*draft.TextError)(nil); errors.As(err, &e) {
		return words.Told{What: e.What, Do: e.Do}
	}
	return err
}

// ReadSky sets the skyline from a list taken with compass and clinometer; declination, east
// positive, makes its bearings true.
func (b *BeatDesk) ReadSky(in io.Reader, declination units.Degrees) error {
	line, err := draft.ReadClinometer(in, declination)
	if err != nil {
		if e := (*draft.TextError)(nil); errors.As(err, &e) {
			return words.ListRefused(e.Line, e.What, e.Do)
		}
		return err
	}
	return b.horizon("", line)
}

// Evening is the night whose sun and moon the strip of the skyline shows: tonight, unless
// another was chosen.
func (b *BeatDesk) Evening() journal.Date {
	if b.evening.IsZero() {
		return journal.EveningOf(b.d.now(), zoneOf(b.now().Beat.Zone))
	}
	return b.evening
}

// StepEvening goes so many nights on; 0 goes back to tonight.
func (b *BeatDesk) StepEvening(days int) {
	b.d.act(func() {
		if b.evening = b.Evening().Add(days); days == 0 {
			b.evening = journal.Date{}
		}
		b.tell()
	})
}
