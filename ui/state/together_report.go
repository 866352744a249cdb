package state

// Report is every figure behind the pictures of nights side by side. Its members are
// described under gloam help compare; none changes its meaning, new ones may be added.
type Report struct {
	Schema string        `json:"schema"` // ReportSchema
	Title  string        `json:"title"`
	How    string        `json:"how"`
	Said   []string      `json:"said"`
	Axis   string        `json:"axis"`
	Order  string        `json:"order"`
	Totals ReportTally   `json:"totals"`
	Behind ReportBehind  `json:"behind"`
	Nights []ReportNight `json:"nights"`
	Others []ReportOther `json:"others"`
	Beats  []ReportBeat  `json:"beats"`
	Time   ReportAxis    `json:"time"`
	Light  ReportAxis    `json:"light"`
	Fish   []ReportFish  `json:"fish"`
	Runs   []ReportRun   `json:"runs"`
	Rigs   []ReportRig   `json:"rigs"`
	Pools  []ReportPool  `json:"pools"`
}

// ReportSchema names the form of a report.
const ReportSchema = "gloamline nights together 1"

// ReportTotals counts what came in how many rod-hours with a fly in the water.
type ReportTotals struct {
	RodHours float64 `json:"rod_hours"`
	Landed   float64 `json:"landed"`
	Lost     float64 `json:"lost"`
	Touches  float64 `json:"touches"`
	Shows    float64 `json:"shows"`
}

// ReportTally is that with how many of those landed were kept.
type ReportTally struct {
	ReportTotals
	Kept float64 `json:"kept"`
}

// ReportBehind is what stands behind the verdict.
type ReportBehind struct {
	FishHooked  int     `json:"fish_hooked"`
	Nights      int     `json:"nights"`
	BlankNights int     `json:"blank_nights"`
	Steps       int     `json:"steps"`
	StepsEnough int     `json:"steps_enough"`
	LeastHours  float64 `json:"least_hours"`
	LeastNights int     `json:"least_nights"`
	LeastFish   float64 `json:"least_fish"`
}

// ReportOther is a night of the list that is not laid with the others.
type ReportOther struct {
	Trip    string `json:"trip"`
	Evening string `json:"evening"`
	Beat    string `json:"beat"`
	ReportTally
}

// ReportBeat is what the nights had on one beat.
type ReportBeat struct {
	Beat   string `json:"beat"`
	Name   string `json:"name"`
	Nights int    `json:"nights"`
	ReportTally
	WithoutPool int `json:"without_pool"` // contacts of which the pool is not known
}

// ReportNight is a night; lux in lux, level in metres, instants in UTC.
type ReportNight struct {
	Mark    string `json:"mark"`
	Trip    string `json:"trip"`
	Evening string `json:"evening"`
	Beat    string `json:"beat"`
	Zone    string `json:"zone"`
	ReportTally
	BankHours  float64     `json:"bank_hours"`
	GreyLux    float64     `json:"grey_lux"`
	GreyAt     string      `json:"grey_at,omitempty"`
	Sunset     string      `json:"sunset,omitempty"`
	DarkestLux float64     `json:"darkest_lux"`
	LevelM     *float64    `json:"level_m,omitempty"`
	Curve      []float64   `json:"curve,omitempty"` // place, lux, place, lux ... of the open sky along the axis of time
	TimeBins   []ReportBin `json:"time_bins"`
	LightBins  []ReportBin `json:"light_bins"`
}

// ReportAxis is an axis with its steps and what has no place on it.
type ReportAxis struct {
	Axis string      `json:"axis"`
	Bins []ReportBin `json:"bins"`
	Off  []ReportOff `json:"off"`
}

// ReportBin is a step of an axis: minutes, or log10 of lux.
type ReportBin struct {
	Part string  `json:"part"`
	From float64 `json:"from"`
	To   float64 `json:"to"`
	ReportTotals
	Nights int `json:"nights"`
}

// ReportOff is what has no place on an axis.
type ReportOff struct {
	Why      string  `json:"why"`
	RodHours float64 `json:"rod_hours"`
	Contacts int     `json:"contacts"`
	Nights   int     `json:"nights"`
}

// ReportPlace is where something lies on an axis.
type ReportPlace struct {
	Off   string        `json:"off,omitempty"`
	Part  string        `json:"part,omitempty"`
	At    *float64      `json:"at,omitempty"`
	Reach []ReportReach `json:"reach,omitempty"`
}

// ReportReach is a stretch of an axis with its share of the time.
type ReportReach struct {
	Part  string  `json:"part"`
	From  float64 `json:"from"`
	To    float64 `json:"to"`
	Share float64 `json:"share"`
}

// ReportFish is a contact.
type ReportFish struct {
	Mark     string      `json:"mark"`
	Number   string      `json:"number"`
	ID       string      `json:"id"`
	Earliest string      `json:"earliest"`
	Latest   string      `json:"latest"`
	Rod      string      `json:"rod"`
	Pool     string      `json:"pool,omitempty"`
	Touch    string      `json:"touch"`
	WeightG  *float64    `json:"weight_g,omitempty"`
	LengthMM *float64    `json:"length_mm,omitempty"`
	Position *int        `json:"position,omitempty"` // of its fly: 0 the point, 1 the first dropper
	AirS     *int        `json:"air_s,omitempty"`    // out of the water
	Fate     string      `json:"fate,omitempty"`
	Tag      string      `json:"tag,omitempty"`
	FlyMM    *float64    `json:"fly_mm,omitempty"`
	Rung     string      `json:"rung"`
	Darker   float64     `json:"darker"` // decades below trees grey; negative is lighter
	Lux      float64     `json:"lux"`
	LuxLow   float64     `json:"lux_low"`
	LuxHigh  float64     `json:"lux_high"`
	Time     ReportPlace `json:"time"`
	Light    ReportPlace `json:"light"`
}

// ReportRun is a run.
type ReportRun struct {
	Mark    string      `json:"mark"`
	ID      string      `json:"id"`
	Rod     string      `json:"rod"`
	Pool    string      `json:"pool"`
	Nth     int         `json:"nth"`
	From    string      `json:"from"` // the middle of its spread
	To      string      `json:"to"`
	RestMin *float64    `json:"rest_min,omitempty"` // since a rod last left the pool
	Time    ReportPlace `json:"time"`
	Light   ReportPlace `json:"light"`
	Curve   []float64   `json:"curve,omitempty"` // place, lux, place, lux ... at its pool along the axis of time
}

// ReportRig is a change of flies, point first; a length not known is missing.
type ReportRig struct {
	Mark    string      `json:"mark"`
	ID      string      `json:"id"`
	Rod     string      `json:"rod"`
	At      string      `json:"at"` // the middle of its spread
	Until   string      `json:"until"`
	FlyMM   []*float64  `json:"fly_mm"`
	SinkIPS *float64    `json:"sink_ips,omitempty"` // inches a second
	LeaderM *float64    `json:"leader_m,omitempty"`
	Time    ReportPlace `json:"time"`
	Light   ReportPlace `json:"light"`
}

// ReportPool is what all nights had at a pool; an empty name is contacts without one.
type ReportPool struct {
	Beat string `json:"beat"`
	Pool string `json:"pool"`
	Name string `json:"name"`
	ReportTotals
	Runs   int `json:"runs"`
	Nights int `json:"nights"`
}
