package state

import (
	"maps"
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/journal/gauge"
	"gloamline/journal/intake"
	"gloamline/timeline"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// IntakeDesk is the room in which files become a night: what they propose is listed over
// what is written, ticked, edited, settled, and stored as one change. Files are read
// outside (intake.Read may run on any goroutine) and handed to Add.
type IntakeDesk struct {
	d      *Desk
	trip   journal.ID
	files  []*intake.File
	order  intake.Order
	chosen intake.Choices  // where they differ from what is ticked by itself
	batch  *intake.Batch   // nil: to be made anew
	fault  error           // why there is none
	laid   *timeline.Night // the night with what is proposed; see Laid
	ghosts scene.Ghosts
	set    *timeline.Setting             // of the night, while the batch stands
	rows   []IntakeRow                   // as last made
	reads  map[string]intake.ReadOptions // by path, where a file was read otherwise than usual
	extras map[string][]journal.Record   // by key: what an edited proposal needs beside it
	picked journal.Ref                   // the proposal picked out, by its record
	file   int                           // the file picked out
	cursor time.Time
}

// Intake returns the room.
func (d *Desk) Intake() *IntakeDesk {
	if d.intake == nil {
		d.intake = &IntakeDesk{d: d, chosen: intake.Choices{}, reads: map[string]intake.ReadOptions{}, extras: map[string][]journal.Record{}}
		d.intake.order.IDs = map[string]journal.ID{}
		d.j.Subscribe(func(journal.Change) { d.intake.forget() })
	}
	return d.intake
}

// forget has the batch made anew when it is asked for next.
func (k *IntakeDesk) forget() {
	k.batch, k.fault, k.set = nil, nil, nil
	k.stale()
	k.d.tell(RoomView)
}

func (k *IntakeDesk) act(f func()) { k.d.act(func() { f(); k.forget() }) }

// Add takes files that were read. A file of the same bytes takes the place of the one
// before, as when it was read again with a zone or with columns.
func (k *IntakeDesk) Add(files ...*intake.File) {
	k.act(func() {
		for _, f := range files {
			i := slices.IndexFunc(k.files, func(g *intake.File) bool {
				return g.SHA256 != "" && g.SHA256 == f.SHA256 || g.SHA256 == "" && g.Path == f.Path
			})
			if i >= 0 {
				k.files[i] = f
			} else {
				k.files = append(k.files, f)
			}
		}
	})
}

// Files are the files at hand.
func (k *IntakeDesk) Files() []*intake.File { return k.files }

// Drop takes a file off the desk; nothing happens to the file.
func (k *IntakeDesk) Drop(f *intake.File) {
	k.act(func() {
		k.files = slices.DeleteFunc(k.files, func(g *intake.File) bool { return g == f })
		k.file = max(0, min(k.file, len(k.files)-1))
	})
}

// Clear takes all files off, and all choices.
func (k *IntakeDesk) Clear() {
	k.act(func() {
		k.files, k.trip, k.chosen = nil, journal.ID{}, intake.Choices{}
		k.order = intake.Order{IDs: map[string]journal.ID{}, Gauges: k.order.Gauges}
		k.reads, k.picked, k.file, k.cursor = map[string]intake.ReadOptions{}, journal.Ref{}, 0, time.Time{}
	})
}

// Nights lists the nights that hold a moment of the files.
func (k *IntakeDesk) Nights() []journal.Trip {
	trips, err := k.d.j.Trips()
	if err != nil {
		return nil
	}
	return intake.NightsOf(trips, k.files)
}

// Trip is the night the files are set against: the one chosen, else the open one if it
// holds a moment of them, else the only one that does; zero: choose one.
func (k *IntakeDesk) Trip() journal.ID {
	if !k.trip.IsZero() {
		return k.trip
	}
	of := k.Nights()
	if len(of) == 0 { // a gauge alone tells no night
		return k.d.trip
	}
	if i := slices.IndexFunc(of, func(t journal.Trip) bool { return t.ID == k.d.trip }); i >= 0 {
		return of[i].ID
	}
	if len(of) == 1 {
		return of[0].ID
	}
	return journal.ID{}
}

// ChooseNight sets the files against another night. Choices are forgotten.
func (k *IntakeDesk) ChooseNight(trip journal.ID) {
	k.act(func() { k.trip, k.chosen, k.order.Rod = trip, intake.Choices{}, journal.ID{} })
}

// GiveTo says whose track it is.
func (k *IntakeDesk) GiveTo(rod journal.ID) { k.act(func() { k.order.Rod = rod }) }

// SetClock says what is added to the clock of a device (intake.DeviceOf).
func (k *IntakeDesk) SetClock(device string, offset time.Duration) {
	k.act(func() {
		k.order.Clocks = maps.Clone(k.order.Clocks)
		if k.order.Clocks == nil {
			k.order.Clocks = map[string]time.Duration{}
		}
		k.order.Clocks[device] = offset
	})
}

// KnowMoment sets the clock of a device by one moment known twice.
func (k *IntakeDesk) KnowMoment(device string, m intake.Moment) { k.SetClock(device, m.Offset()) }

// SetZone says in which zone cameras were set that name none; nil: that of the night.
func (k *IntakeDesk) SetZone(loc *time.Location) { k.act(func() { k.order.Zone = loc }) }

// SetCopied says whether originals of photos are copied beside the journal or linked. Without
// a place for copies they are linked.
func (k *IntakeDesk) SetCopied(on bool) { k.act(func() { k.order.Copied = on && k.d.album != nil }) }

// SetGauge keeps settings for a gauge: a lag, that it is regulated, thresholds.
func (k *IntakeDesk) SetGauge(station string, s gauge.Settings) {
	k.act(func() {
		k.order.Gauges = maps.Clone(k.order.Gauges)
		if k.order.Gauges == nil {
			k.order.Gauges = map[string]gauge.Settings{}
		}
		k.order.Gauges[station] = s
	})
}

// Order is what was answered so far.
func (k *IntakeDesk) Order() intake.Order { return k.order }

// Batch is what the files propose with the answers given. It is nil while there are no
// files or no night; then the error, if any, says why.
func (k *IntakeDesk) Batch() (*intake.Batch, error) {
	if k.batch != nil || k.fault != nil || len(k.files) == 0 {
		return k.batch, k.fault
	}
	o := k.order
	if o.Trip = k.Trip(); o.Trip.IsZero() {
		return nil, nil
	}
	o.Now = k.d.now()
	k.batch, k.fault = intake.Propose(k.d.j, k.files, o)
	return k.batch, k.fault
}

// view is what words need.
func (k *IntakeDesk) view(b *intake.Batch) (words.IntakeView, error) {
	set, err := k.setting(b)
	if err != nil {
		return words.IntakeView{}, err
	}
	zone, err := b.Log.Trip.Location()
	return words.IntakeView{Batch: b, Beat: set.Beat, Zone: zone, Prefs: k.d.prefs}, err
}

// setting is what the night needs besides its log.
func (k *IntakeDesk) setting(b *intake.Batch) (timeline.Setting, error) {
	if k.set == nil {
		set, err := k.d.loader.Setting(b.Log.Trip)
		if err != nil {
			return set, err
		}
		k.set = &set
	}
	return *k.set, nil
}

// stale has what is made of the choices made anew when it is asked for next.
func (k *IntakeDesk) stale() {
	k.laid, k.ghosts, k.rows = nil, nil, nil
}
