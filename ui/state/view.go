package state

import (
	"math"
	"slices"
	"time"

	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// DefaultLook is the look a desk starts with. Looks are named as in ui/scene.
const DefaultLook = "dusk"

// Looks lists the names of the looks in the order in which a key steps through them.
var Looks = []string{"dusk", "paper", "lamp"}

// Look returns the name of the look.
func (d *Desk) Look() string { return d.look }

// SetLook chooses a look by name; an unknown name leaves things as they are.
func (d *Desk) SetLook(name string) {
	d.act(func() {
		if name != d.look && slices.Contains(Looks, name) {
			d.look = name
			d.tell(Look)
		}
	})
}

// Prefs returns the units and names a person prefers.
func (d *Desk) Prefs() words.Prefs { return d.prefs }

// SetPrefs sets them; all that is shown follows at once.
func (d *Desk) SetPrefs(p words.Prefs) {
	d.act(func() {
		d.prefs = p
		d.tell(Look)
		d.refreshCard()
	})
}

// span is a stretch of the night; zero: the part worth drawing.
type span struct{ from, to time.Time }

// closest is the shortest stretch the strip shows.
const closest = 10 * time.Minute

// StripWindow returns the part of the night that the strip shows.
func (d *Desk) StripWindow() (from, to time.Time) {
	if d.night == nil {
		return time.Time{}, time.Time{}
	}
	switch {
	case !d.strip.from.IsZero():
	case d.carry != nil: // the ground stays still under what is carried
		return d.carry.night.From, d.carry.night.To
	default:
		return d.night.From, d.night.To
	}
	return d.strip.from, d.strip.to
}

// Fitted reports whether the strip shows just the part worth drawing.
func (d *Desk) Fitted() bool { return d.strip.from.IsZero() }

// ZoomStrip makes the strip show a window factor times as long (below 1 is
// closer), keeping at where it is. A zero at means the cursor.
func (d *Desk) ZoomStrip(factor float64, at time.Time) {
	if d.night == nil || !(factor > 0) || math.IsInf(factor, 0) {
		return
	}
	from, to := d.StripWindow()
	if at.IsZero() {
		at = d.cursor
	}
	if at.Before(from) || at.After(to) {
		at = from.Add(to.Sub(from) / 2)
	}
	long := float64(to.Sub(from))
	want := math.Max(float64(closest), math.Min(long*factor, float64(d.night.End.Sub(d.night.Start))))
	share := 0.5
	if long > 0 {
		share = float64(at.Sub(from)) / long
	}
	start := at.Add(-time.Duration(want * share))
	d.setStrip(start, start.Add(time.Duration(want)))
}

// PanStrip moves the window by a span, within the night.
func (d *Desk) PanStrip(by time.Duration) {
	if d.night == nil {
		return
	}
	from, to := d.StripWindow()
	d.setStrip(from.Add(by), to.Add(by))
}

// FitStrip shows the part of the night worth drawing.
func (d *Desk) FitStrip() {
	d.act(func() {
		d.strip = span{}
		d.tell(View)
	})
}

// setStrip keeps the window's length where it can and slides it into the night.
func (d *Desk) setStrip(from, to time.Time) {
	d.act(func() {
		long := min(to.Sub(from), d.night.End.Sub(d.night.Start))
		if from.Before(d.night.Start) {
			from = d.night.Start
		}
		if last := d.night.End.Add(-long); from.After(last) {
			from = last
		}
		d.strip = span{from, from.Add(long)}
		d.tell(View)
	})
}

// SketchView is which part of the sketch is in view, as ui/scene takes it.
type SketchView struct {
	Zoom float64    // 1 fits the beat; up to MaxZoom
	Pan  draw.Point // dp by which the middle is moved
}

// MaxZoom is how close the sketch can be looked at.
const MaxZoom = 16

// reach is how far the sketch can be moved, in dp.
const reach = 1e5

var wholeBeat = SketchView{Zoom: 1}

// Sketch returns the view of the sketch.
func (d *Desk) Sketch() SketchView { return d.sketch }

// SetSketch sets it: the zoom is kept within its bounds, and at 1 nothing is moved.
func (d *Desk) SetSketch(v SketchView) {
	d.act(func() {
		if v.Zoom = clamp(v.Zoom, 1, MaxZoom); v.Zoom == 1 {
			v.Pan = draw.Point{}
		}
		v.Pan = draw.Pt(clamp(v.Pan.X, -reach, reach), clamp(v.Pan.Y, -reach, reach))
		if v != d.sketch {
			d.sketch = v
			d.tell(View)
		}
	})
}

// FitSketch shows the whole beat.
func (d *Desk) FitSketch() { d.SetSketch(wholeBeat) }

// clamp keeps v in [lo, hi]; no number becomes lo.
func clamp(v, lo, hi float64) float64 {
	if !(v > lo) {
		return lo
	}
	return math.Min(v, hi)
}
