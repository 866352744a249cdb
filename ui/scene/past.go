package scene

import (
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// ClientPast is all that was fished of one pool, night after night, as a recipient may
// see it: each fish with its light, and the nights and hours it took. It is made from
// nights that were shared one by one, so that whatever is hidden there is hidden here.
// Notes are of a night and stay with it. A pool that was split or joined later counts as
// the pool it was.
type ClientPast struct {
	Pool, Water, Place string
	Outline            [][2]float64 `json:",omitempty"` // only where places are shown
	Nights             []ClientPastNight
	Steps              []ClientPastStep // those fished in, lightest first, moonlit last
	Fish               []ClientPastFish // by night and time; N counts through all of them
	Minutes            int              // with a fly in the water, summed over rods
	Totals             timeline.Totals  // counts alone
	Pictures           []ClientPhoto
}

// ClientPastNight is one of the nights.
type ClientPastNight struct {
	Date    string
	Minutes int
	Totals  timeline.Totals // counts alone
}

// ClientPastStep is how long the pool was fished in one step of the light.
type ClientPastStep struct {
	Rung    timeline.Rung
	Minutes int
}

// ClientPastFish is a fish and the night it came on.
type ClientPastFish struct {
	ClientFish
	Night int    // index
	Who   string // "" where one rod fished
}

// SharePast returns what a recipient may see of a pool on nights, which are put in order
// of time by the caller. Nights on which the pool was not fished are left out.
func SharePast(nights []*timeline.Night, pool journal.ID, s Shown, p words.Prefs) ClientPast {
	past := NewPast(pool, s, p)
	for _, n := range nights {
		past.Add(n)
	}
	return past.Shared()
}

// Past is SharePast night by night, so that no more than one need be held.
type Past struct {
	out   ClientPast
	pool  journal.ID
	shown Shown
	prefs words.Prefs
	hours map[timeline.Rung]int
}

// NewPast begins with no nights.
func NewPast(pool journal.ID, s Shown, p words.Prefs) *Past {
	return &Past{ClientPast{Pool: words.OnePool()}, pool, s, p, map[timeline.Rung]int{}}
}

// Add adds the next night in order of time.
func (x *Past) Add(n *timeline.Night) {
	out, hours, pool, s := &x.out, x.hours, x.pool, x.shown
	m := newSharer(n, s, x.prefs)
	c, _ := Share(n, s, x.prefs)
	index := slices.IndexFunc(m.listPools(), func(x geo.Pool) bool { return x.ID == pool })
	if index < 0 {
		return
	}
	night := ClientPastNight{Date: c.Date}
	for _, rod := range n.Rods {
		for _, run := range rod.Runs {
			if run.Pool.ID == pool {
				m.c.Light = c.Light
				night.Minutes += m.pastMinutes(rod, run, hours)
			}
		}
	}
	frame, drawn := framePast(c.Pools[index].Outline)
	here := len(out.Nights)
	was := map[int]int{} // their numbers on the night
	for _, f := range c.Fish {
		if f.Pool != index {
			continue
		}
		x := ClientPastFish{ClientFish: f, Night: here}
		x.N, x.Pool = len(out.Fish)+1, 0
		was[f.N] = x.N
		if f.Rod >= 0 && len(c.Rods) > 1 {
			x.Who = c.Rods[f.Rod]
		}
		x.Rod = -1
		if x.Spot != nil && drawn {
			at := frame.at(*x.Spot)
			x.Spot = &at
		}
		out.Fish = append(out.Fish, x)
		count(&night.Totals, f)
	}
	if night.Minutes == 0 && len(was) == 0 {
		return
	}
	for _, pic := range c.Pictures {
		if at, ok := was[pic.Fish]; ok && len(out.Pictures) < mostPictures {
			out.Pictures = append(out.Pictures, ClientPhoto{at, pic.JPEG})
		}
	}
	out.Nights = append(out.Nights, night)
	out.Minutes += night.Minutes
	add(&out.Totals, night.Totals)
	out.Water, out.Place = c.Water, c.Place
	if s.Pools == PoolNames {
		out.Pool = c.Pools[index].Name
	}
	out.Outline = nil
	for _, q := range c.Pools[index].Outline {
		if drawn {
			out.Outline = append(out.Outline, frame.at(q))
		}
	}
}

// Shared returns what was added.
func (x *Past) Shared() ClientPast {
	out := x.out
	for _, r := range timeline.Rungs {
		if x.hours[r] > 0 || fishIn(out.Fish, r) > 0 {
			out.Steps = append(out.Steps, ClientPastStep{r, x.hours[r]})
		}
	}
	return out
}

// pastMinutes adds up a run's minutes with the fly in the water by their light, told no
// finer than the night tells it.
func (m *sharer) pastMinutes(rod timeline.RodNight, run timeline.RunSpan, hours map[timeline.Rung]int) int {
	sum := 0
	from, to := m.at(run.From.Mid()), m.at(run.To.Mid())
	for t := from; t.Before(to); t = t.Add(time.Minute) {
		wet := false
		for _, w := range rod.Water {
			wet = wet || !t.Before(m.at(w.From)) && t.Before(m.at(w.To))
		}
		if !wet {
			continue
		}
		r := m.n.Rung(t, run.Pool.ID)
		if !m.s.Places {
			r = m.c.rung(m.minute(t))
		}
		hours[r]++
		sum++
	}
	return sum
}

// pastFrame is the box of a pool's outline; false where there is none.
type pastFrame struct{ x, y, across float64 }

func framePast(pts [][2]float64) (pastFrame, bool) {
	if len(pts) == 0 {
		return pastFrame{}, false
	}
	f, right := pastFrame{pts[0][0], pts[0][1], 0}, pts[0][0]
	for _, p := range pts {
		f.x, f.y, right = min(f.x, p[0]), min(f.y, p[1]), max(right, p[0])
	}
	f.across = right - f.x
	return f, f.across > 0
}

// at puts a point of the beat into a box 1 wide around the pool alone.
func (f pastFrame) at(p [2]float64) [2]float64 {
	return [2]float64{(p[0] - f.x) / f.across, (p[1] - f.y) / f.across}
}

func fishIn(all []ClientPastFish, r timeline.Rung) (n int) {
	for _, f := range all {
		if f.Rung == r {
			n++
		}
	}
	return n
}

func add(t *timeline.Totals, u timeline.Totals) {
	t.Landed, t.Lost, t.Touches, t.Shows, t.Kept = t.Landed+u.Landed, t.Lost+u.Lost, t.Touches+u.Touches, t.Shows+u.Shows, t.Kept+u.Kept
}

// Title is the one sentence over it.
func (c ClientPast) Title() string {
	return words.PastSentence(words.Commas(c.Pool, c.Water), len(c.Nights), time.Duration(c.Minutes)*time.Minute, c.Totals)
}

// Where is the beat's position, if it is shown.
func (c ClientPast) Where() string { return c.Place }

// Lines are the nights, each with its hours, its fish below.
func (c ClientPast) Lines(p words.Prefs) []string {
	var out []string
	for i, n := range c.Nights {
		out = append(out, words.PastNight(n.Date, time.Duration(n.Minutes)*time.Minute, n.Totals))
		for _, f := range c.Fish {
			if f.Night == i {
				said, more := f.told(p)
				out = append(out, words.PastFish(said, more))
			}
		}
	}
	return out
}

// told is a fish as it is said large, and the rest of it.
func (f ClientPastFish) told(p words.Prefs) (said, more string) {
	fly := ""
	if f.Fly != nil {
		fly = f.Fly.Words
	}
	return f.Said(), words.Commas(words.RungName(f.Rung, p), fly, f.Who)
}

// Remarks are none: notes are of a night.
func (c ClientPast) Remarks() []ClientNote { return nil }

// Seen are the fish.
func (c ClientPast) Seen() []ClientFish {
	out := make([]ClientFish, len(c.Fish))
	for i, f := range c.Fish {
		out[i] = f.ClientFish
	}
	return out
}

// Moment is the night of a fish, passed.
func (c ClientPast) Moment(n int) int { return c.Fish[n-1].Night + 1 }

// Photos are pictures of some of them.
func (c ClientPast) Photos() []ClientPhoto { return c.Pictures }

// End is the last night: the cursor is how many nights have passed.
func (c ClientPast) End() int { return len(c.Nights) }

// Pace lets a night pass in a second at the usual rate of ten minutes.
func (c ClientPast) Pace(rate int) float64 { return float64(rate) / 10 }

// Moments are the nights; of very many some are left out.
func (c ClientPast) Moments(most int) []int {
	step := len(c.Nights)/most + 1
	var out []int
	for i := 1; i < len(c.Nights); i += step {
		out = append(out, i)
	}
	return append(out, len(c.Nights))
}

// Says says how many nights have passed and what came on them.
func (c ClientPast) Says(cursor int, _ words.Prefs) string {
	k := min(max(cursor, 0), len(c.Nights))
	var t timeline.Totals
	minutes := 0
	for _, n := range c.Nights[:k] {
		add(&t, n.Totals)
		minutes += n.Minutes
	}
	return words.PastPlayed(k, time.Duration(minutes)*time.Minute, t)
}

// Pages draws it on A4.
func (c ClientPast) Pages(look Look, p words.Prefs) []*draw.List { return handoutPages(c, look, p) }
