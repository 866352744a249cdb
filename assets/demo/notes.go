package demo

import (
	"time"

	"gloamline/geo"
	"gloamline/journal"
)

// plan writes down before a guest's night which pools they mean to fish, the first
// not before dusk.
func (m *maker) plan(n *night, c conditions, pools []geo.Pool, top int, start time.Time) {
	at := start.Add(-3 * time.Hour).Truncate(15 * time.Minute)
	for i := range 3 {
		p := journal.Plan{Head: n.headAt(none, journal.Exact(at.Add(time.Duration(i)*time.Minute))), Pool: journal.Of(pools[(top+i)%len(pools)].ID), Order: journal.Of(i + 1)}
		if i == 1 && c.trend == journal.NormalLevel {
			p.Note = "Rest it until the trees are grey."
		}
		n.add(p)
	}
}

// jot adds what somebody thought worth a line, by what the night was like.
func (m *maker) jot(n *night, c conditions, start, stop time.Time) {
	var lines []string
	switch c.trend {
	case journal.Rising:
		lines = append(lines, "Twigs and leaves coming down; staff up two fingers in an hour.", "Kept to the gravel, river coming up.")
	case journal.FallingFlood:
		lines = append(lines, "Fish moving through, splashing in the runs.", "Dropped a hand since the afternoon.")
	case journal.FiningDown:
		lines = append(lines, "Fish settled in the tails.", "Takes close in, on the dangle.")
	default:
		lines = append(lines, "Low and clear: long leader, short steps.", "Fish jumping under the far bank, none to the fly.")
	}
	if c.moonAlt(stop) > 8 && c.later < 4 {
		lines = append(lines, "Moon full on the water: went to the shaded side.")
	}
	if c.wind > 2 {
		lines = append(lines, "Wind upstream, hard to turn the cast over.")
	}
	if n.came == 0 {
		lines = append(lines, "Nothing at all, but a fine night.")
	}
	if m.r.IntN(5) > 2 {
		return
	}
	at := start.Add(time.Duration((0.3 + 0.6*m.r.Float64()) * float64(stop.Sub(start)))).Truncate(5 * time.Minute)
	n.add(journal.Note{Head: noted(n.headAt(n.trip.Rods[0].ID, journal.About(at, 0)), lines[m.r.IntN(len(lines))])})
}
