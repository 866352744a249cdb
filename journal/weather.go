package journal

import "gloamline/journal/units"

// Weather is wind, mist and air.
type Weather struct {
	Head
	Wind Field[int]               `json:"wind,omitzero"`      // Beaufort force, 0 to 12
	From Field[units.Degrees]     `json:"wind_from,omitzero"` // where the wind comes from
	Mist Field[bool]              `json:"mist,omitzero"`
	Rain Field[bool]              `json:"rain,omitzero"`
	Air  Field[units.Temperature] `json:"air,omitzero"`
}

// Ref implements Record.
func (w Weather) Ref() Ref { return Ref{KindWeather, w.Trip, w.ID} }

// WithHead implements Entry.
func (w Weather) WithHead(h Head) Entry { w.Head = h; return w }

func (w Weather) check(c *checker) {
	c.head(w.Head, false)
	if n, ok := w.Wind.Get(); ok && (n < 0 || n > 12) {
		c.bad("wind", "wind is a Beaufort force, 0 to 12")
	}
	if d, ok := w.From.Get(); ok && !(d >= 0 && d <= 360) {
		c.bad("wind_from", "a bearing lies between 0 and 360 degrees")
	}
	if t, ok := w.Air.Get(); ok && !(t.C >= -40 && t.C <= 50) {
		c.bad("air", "air between -40 and 50 °C")
	}
}

// Trend is what the river is doing.
type Trend string

const (
	Rising       Trend = "rising"
	Peak         Trend = "peak"
	FallingFlood Trend = "falling flood"
	FiningDown   Trend = "fining down"
	NormalLevel  Trend = "normal"
)

// Trends lists every trend.
var Trends = []Trend{Rising, Peak, FallingFlood, FiningDown, NormalLevel}

// Clarity is the colour of the water.
type Clarity string

const (
	ClearWater    Clarity = "clear"
	TeaWater      Clarity = "tea"
	ColouredWater Clarity = "coloured"
)

// Clarities lists every clarity.
var Clarities = []Clarity{ClearWater, TeaWater, ColouredWater}

// Water is the state of the river as the party found it, not a gauge's word.
type Water struct {
	Head
	Level   Field[units.Length]      `json:"level,omitzero"` // on the staff the party reads; may be below its zero
	Trend   Field[Trend]             `json:"trend,omitzero"`
	Clarity Field[Clarity]           `json:"clarity,omitzero"`
	Temp    Field[units.Temperature] `json:"temp,omitzero"`
}

// Ref implements Record.
func (w Water) Ref() Ref { return Ref{KindWater, w.Trip, w.ID} }

// WithHead implements Entry.
func (w Water) WithHead(h Head) Entry { w.Head = h; return w }

func (w Water) check(c *checker) {
	c.head(w.Head, false)
	fieldOneOf(c, "trend", w.Trend, Trends)
	fieldOneOf(c, "clarity", w.Clarity, Clarities)
	if l, ok := w.Level.Get(); ok && !(l.M > -100 && l.M < 1000) {
		c.bad("level", "a level between -100 and 1000 m")
	}
	if t, ok := w.Temp.Get(); ok && !(t.C >= -1 && t.C <= 35) {
		c.bad("temp", "water between -1 and 35 °C")
	}
}
