package state

import "time"

// DefaultLook is the look a desk starts with. Looks are named as in ui/scene.
const DefaultLook = "dusk"

// Looks lists the names of the looks in the order in which a key steps through them.
var Looks = []string{"dusk", "paper", "lamp"}

// Look returns the name of the look.
func (d *Desk) Look() string { return d.look }

// SetLook chooses a look by name; an unknown name leaves things as they are.
func (d *Desk) SetLook(name string)

// Prefs returns the units and names a person prefers.
func (d *Desk) Prefs() Prefs { return d.prefs }

// SetPrefs sets them.
func (d *Desk) SetPrefs(p Prefs)

// SketchView is which part of the sketch is in view.
type SketchView struct {
	Zoom float64 // 1 fits the beat; up to MaxZoom
	X, Y float64 // middle of the view as shares of the fitted picture, 0.5 0.5 its middle
}

// StripWindow returns the part of the night that the strip shows.
func (d *Desk) StripWindow() (from, to time.Time)

// ZoomStrip makes the strip show a window factor times as long (below 1 is
// closer), keeping at where it is. A zero at means the cursor.
func (d *Desk) ZoomStrip(factor float64, at time.Time)

// PanStrip moves the window by a span, within the night.
func (d *Desk) PanStrip(by time.Duration)

// FitStrip shows the part of the night worth drawing.
func (d *Desk) FitStrip()

// Sketch returns the view of the sketch.
func (d *Desk) Sketch() SketchView { return d.sketch }

// SetSketch sets it, kept within bounds.
func (d *Desk) SetSketch(v SketchView)

// FitSketch shows the whole beat.
func (d *Desk) FitSketch()
