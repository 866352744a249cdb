package season

import (
	"cmp"
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline/light"
)

// Darkness is when the trees go grey on one beat by its own logs: the light at each
// moment at which somebody noted it, and what those moments come to (light.Calibrate says
// how). It goes by all nights of the beat, whatever the filter.
type Darkness struct {
	Beat journal.ID `json:"beat"`
	Name string     `json:"name"`
	// Used is the light that figures and pictures go by, lux; Hand says that it was settled
	// by hand.
	Used  float64        `json:"used_lux"`
	Hand  bool           `json:"by_hand"`
	Fit   GreyFit        `json:"fit"` // of the open sky
	Logs  []DarkLog      `json:"logs"`
	Pools []PoolDarkness `json:"pools"`
}

// GreyFit is a threshold from logged moments. It is the beat's or the pool's own from five
// of them on; before, Lux is what it falls back on.
type GreyFit struct {
	Lux    float64 `json:"lux"`
	Lo     float64 `json:"lo"` // how well Lux is known: 68 %
	Hi     float64 `json:"hi"`
	Spread float64 `json:"spread_decades"` // how single evenings scatter about it
	From   string  `json:"from"`           // "pool", "beat" or "default"
	Logged int     `json:"logged"`
	Used   int     `json:"used"`
}

// OwnFrom is the number of logged moments from which a threshold is a beat's own.
const OwnFrom = 5

// DarkLog is one logged moment.
type DarkLog struct {
	Trip    journal.ID   `json:"trip"`
	Evening journal.Date `json:"evening"`
	At      time.Time    `json:"at"`
	Lux     float64      `json:"lux"` // of the open sky
	Pool    string       `json:"pool,omitempty"`
	PoolLux float64      `json:"pool_lux,omitempty"`
	// Apart says why it is not in the beat's fit: "cloud unknown", "far off", "no light";
	// "" if it is.
	Apart string `json:"apart,omitempty"`
}

// PoolDarkness is the threshold of one pool, from the light on the pool itself.
type PoolDarkness struct {
	Pool journal.ID `json:"pool"`
	Name string     `json:"name"`
	Fit  GreyFit    `json:"fit"`
}

var apart = map[light.Reason]string{light.CloudUnknown: "cloud unknown", light.FarOff: "far off", light.NoLight: "no light"}

// Darknesses returns the beats of the nights by name.
func Darknesses(nights []*Digest) []Darkness {
	byBeat := map[journal.ID][]*Digest{}
	for _, d := range nights {
		byBeat[d.Beat] = append(byBeat[d.Beat], d)
	}
	out := make([]Darkness, 0, len(byBeat))
	for _, list := range byBeat {
		out = append(out, darkness(list))
	}
	slices.SortFunc(out, func(a, b Darkness) int {
		return cmp.Or(cmp.Compare(a.Name, b.Name), slices.Compare(a.Beat[:], b.Beat[:]))
	})
	return out
}

func darkness(nights []*Digest) Darkness {
	last := nights[len(nights)-1]
	out := Darkness{Beat: last.Beat, Name: last.BeatName, Used: float64(last.Grey.Lux), Hand: last.Grey.Hand, Logs: []DarkLog{}, Pools: []PoolDarkness{}}
	var open, onPools []light.LoggedGrey
	pools := map[journal.ID][]light.LoggedGrey{}
	names := map[journal.ID]string{}
	for _, d := range nights {
		for _, l := range d.Logged {
			out.Logs = append(out.Logs, DarkLog{Trip: d.Trip, Evening: d.Evening, At: l.At, Lux: l.Lux, Pool: l.PoolName, PoolLux: l.PoolLux})
			open = append(open, light.LoggedGrey{Lux: units.Lux(l.Lux), CloudNoted: l.CloudNoted})
			if l.PoolLux > 0 {
				g := light.LoggedGrey{Lux: units.Lux(l.PoolLux), CloudNoted: l.CloudNoted}
				onPools = append(onPools, g)
				pools[l.Pool] = append(pools[l.Pool], g)
				names[l.Pool] = l.PoolName
			}
		}
	}
	fit := light.Calibrate(open)
	for _, l := range fit.LeftOut {
		out.Logs[l.Index].Apart = apart[l.Reason]
	}
	out.Fit = greyFit(fit, len(open), "beat")
	for id, list := range pools {
		out.Pools = append(out.Pools, PoolDarkness{id, names[id], greyFit(light.Calibrate(list, onPools), len(list), "pool", "beat")})
	}
	slices.SortFunc(out.Pools, func(a, b PoolDarkness) int {
		return cmp.Or(cmp.Compare(a.Name, b.Name), slices.Compare(a.Pool[:], b.Pool[:]))
	})
	return out
}

func greyFit(t light.Threshold, logged int, levels ...string) GreyFit {
	lo, hi := t.Band()
	f := GreyFit{Lux: float64(t.Lux), Lo: float64(lo), Hi: float64(hi), Spread: t.Spread, From: "default", Logged: logged, Used: t.Used}
	if t.Own {
		f.From = levels[t.Level]
	}
	return f
}
