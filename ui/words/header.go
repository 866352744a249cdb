package words

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
)

// Header is what stands over a night: sky, river and cloud in the first line, the
// party with its hours and fish in the second.
func Header(n *timeline.Night, p Prefs) []string {
	first := join(" ", []string{NightSky(n), River(n, p), Cloud(n), EclipseSentence(n.Sky)})
	return []string{first, Party(n)}
}

// NightSky says what the sky does: Sunset 21:54, trees grey 23:15 (noted 23:18), moon
// over the hill 00:31.
func NightSky(n *timeline.Night) string {
	sun := map[string]string{"always_above": "the sun does not set", "always_below": "the sun does not rise"}[n.Sky.SunState]
	if len(n.Sky.Sunset) > 0 {
		sun = SunsetMark(n, n.Sky.Sunset[0])
	}
	moon, noted := headerMoon(n), greyNoted(n)
	if grey := n.Grey.At; !grey.IsZero() {
		return sentence(commas(sun, GreyMark(n, grey)+noted, moon))
	}
	if len(n.Grey.Dark) > 0 {
		return sentence(commas(sun, "trees grey all night"+noted, moon))
	}
	return sentence(commas(sun, moon, NeverGrey(n)+noted))
}

// greyNoted adds when the party saw the trees go grey: (noted 23:18).
func greyNoted(n *timeline.Night) string {
	var clocks []string
	for _, t := range slices.SortedFunc(slices.Values(n.Grey.Logged), time.Time.Compare) {
		clocks = append(clocks, Clock(t, n.Zone))
	}
	if len(clocks) == 0 {
		return ""
	}
	return " (noted " + and(slices.Compact(clocks)) + ")"
}

// NeverGrey says that the night stays too light: never dark enough for the trees to go
// grey: least 1.6 lx at 01:12.
func NeverGrey(n *timeline.Night) string {
	return fmt.Sprintf("never dark enough for the trees to go grey: least %s at %s", n.Grey.Least, Clock(n.Grey.LeastAt, n.Zone))
}

// sameMoon is how close the moon must reach two pools to count as one moment.
const sameMoon = 10 * time.Minute

// headerMoon says what the moon does over the pools fished (all, if none was) in
// the part of the night that is shown. Where it counts the pools fished alone, it says
// so.
func headerMoon(n *timeline.Night) string {
	pools := fished(n)
	var first, last *timeline.PoolNight
	var rise, set, setFirst time.Time
	same, up, hidden := true, 0, false
	where := ""
	if len(pools) < len(n.Pools) {
		where = " at the pools fished"
	}
	for _, p := range pools {
		rises, sets, over := moonIn(p, n.From, n.To)
		if over {
			up++
		}
		hidden = hidden || p.Moonless == "hill"
		switch {
		case rises.IsZero():
			same = same && first == nil && rise.IsZero()
		case first == nil || rises.Before(rise):
			same = same && (first == nil || rise.Sub(rises) < sameMoon)
			first, rise = p, rises
		default:
			same = same && rises.Sub(rise) < sameMoon
		}
		if sets.After(set) {
			last, set = p, sets
		}
		if over && (setFirst.IsZero() || sets.Before(setFirst)) {
			setFirst = sets
		}
	}
	switch {
	case first != nil && up == 0 && same:
		return "moon over the hill " + Clock(rise, n.Zone)
	case first != nil && up == 0:
		return "moon on " + moonRises(n, pools)
	case up > 0 && !set.IsZero() && set.Sub(setFirst) < sameMoon:
		return "moon behind the hill from " + Clock(set, n.Zone)
	case up > 0 && !set.IsZero():
		return "moon behind the hill from " + Clock(set, n.Zone) + " at " + PoolName(last.Pool.Name)
	case up > 0:
		return "moon over the hill throughout" + where
	case moonShown(n):
		return "moon behind the hill throughout" + where
	case hidden:
		return "moon behind the hill" + where
	}
	return "no moon"
}

// moonRises says when the moon comes over the hill of which pool, those of one moment
// together: Lower Tail 00:24, Sand Bend and Long Flat 00:48; of more than two moments the
// first and the last: Lower Tail 00:24 to Alder Pool 01:52.
func moonRises(n *timeline.Night, pools []*timeline.PoolNight) string {
	type rise struct {
		at    time.Time
		names []string
	}
	var rises []rise
	for _, p := range pools {
		at, _, over := moonIn(p, n.From, n.To)
		if at.IsZero() || over {
			continue
		}
		rises = append(rises, rise{at, []string{PoolName(p.Pool.Name)}})
	}
	slices.SortStableFunc(rises, func(a, b rise) int { return a.at.Compare(b.at) })
	var out []rise
	for _, r := range rises {
		if k := len(out) - 1; k >= 0 && r.at.Sub(out[k].at) < sameMoon {
			out[k].names = append(out[k].names, r.names...)
			continue
		}
		out = append(out, r)
	}
	parts := make([]string, len(out))
	for i, r := range out {
		parts[i] = and(r.names) + " " + Clock(r.at, n.Zone)
	}
	if len(parts) > 2 {
		return parts[0] + " to " + parts[len(parts)-1]
	}
	return strings.Join(parts, ", ")
}

// moonIn returns when within from..to the moon comes over and goes behind the hill
// of a pool, and whether it stands over it at from.
func moonIn(p *timeline.PoolNight, from, to time.Time) (rises, sets time.Time, over bool) {
	for _, i := range p.MoonOver {
		if i.Contains(from) {
			over = true
		} else if i.From.After(from) && i.From.Before(to) && rises.IsZero() {
			rises = i.From
		}
		if i.To.After(from) && i.To.Before(to) {
			sets = i.To
		}
	}
	return rises, sets, over
}

func moonShown(n *timeline.Night) bool {
	for _, i := range n.Sky.MoonUp {
		if i.From.Before(n.To) && i.To.After(n.From) {
			return true
		}
	}
	return false
}

// fished returns the pools that were fished, or all if none was.
func fished(n *timeline.Night) []*timeline.PoolNight {
	ran := map[journal.ID]bool{}
	for _, r := range n.Rods {
		for _, run := range r.Runs {
			ran[run.Run.Pool] = true
		}
	}
	var all, out []*timeline.PoolNight
	for i := range n.Pools {
		all = append(all, &n.Pools[i])
		if ran[n.Pools[i].Pool.ID] {
			out = append(out, &n.Pools[i])
		}
	}
	if len(out) == 0 {
		return all
	}
	return out
}

// River says how the party found the water, from first to last: River 0.46 m and
// falling, clear, 14.2 °C. Empty if nobody said.
func River(n *timeline.Night, p Prefs) string {
	var levels, temps []string
	var last journal.Water
	add := func(list []string, s string) []string {
		if len(list) > 0 && list[len(list)-1] == s {
			return list
		}
		return append(list, s)
	}
	for _, w := range n.Waters {
		if l, ok := w.Entry.Level.Get(); ok {
			levels = add(levels, p.level(l))
		}
		if t, ok := w.Entry.Temp.Get(); ok {
			temps = add(temps, p.degrees(t))
		}
		if w.Entry.Trend.Known() {
			last.Trend = w.Entry.Trend
		}
		if w.Entry.Clarity.Known() {
			last.Clarity = w.Entry.Clarity
		}
	}
	return sentence(riverWords(firstToLast(levels), last.Trend.Or(""), last.Clarity.Or(""), firstToLast(temps)))
}

func firstToLast(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return list[0] + ", later " + list[len(list)-1]
}

// Cloud says the least and the most of what was noted: Cloud from 2 to 6 eighths.
func Cloud(n *timeline.Night) string {
	lo, hi := 9, -1
	for _, s := range n.Skies {
		c, ok := s.Entry.Cloud.Get()
		if s.Entry.Cloud.IsNone() {
			c, ok = 0, true
		}
		if ok {
			lo, hi = min(lo, c), max(hi, c)
		}
	}
	switch {
	case hi < 0:
		return "Cloud not noted."
	case hi == 0:
		return "No cloud."
	case lo == hi:
		return "Cloud " + eighths(lo) + "."
	}
	return fmt.Sprintf("Cloud from %d to %s.", lo, eighths(hi))
}

// Party says who fished, how long and what came of it: Anna and Colm: 10.2 h on the
// bank, 7.9 rod-hours with a fly in the water; 4 landed, 1 lost, 1 touch.
func Party(n *timeline.Night) string {
	names := make([]string, len(n.Rods))
	for i, r := range n.Rods {
		names[i] = RodName(r)
	}
	if len(names) == 0 {
		return join(" ", []string{"Nobody is down as fishing yet.", Guided(n)})
	}
	if nothingFished(n) {
		return and(names) + guidedBy(n) + ": no run written down yet."
	}
	return and(names) + guidedBy(n) + ": " + Hours(n.Totals.OnBank) + " on the bank, " + inWater(n.Totals.InWater, len(names)) + "; " + Tally(n.Totals) + "."
}

// nothingFished reports whether neither hours nor fish are written down: a count of
// noughts would say that the party was out and had none.
func nothingFished(n *timeline.Night) bool {
	for _, r := range n.Rods {
		if len(r.Runs) > 0 {
			return false
		}
	}
	return n.Totals.OnBank == 0 && len(n.Contacts) == 0
}

// guidedBy adds the guide to the rods: , guided by Morag.
func guidedBy(n *timeline.Night) string {
	if n.Guide == "" {
		return ""
	}
	return ", guided by " + n.Guide
}

// Guided says who guides: Morag guides. Empty if nobody does.
func Guided(n *timeline.Night) string {
	if n.Guide == "" {
		return ""
	}
	return n.Guide + " guides."
}

func inWater(d time.Duration, rods int) string {
	if rods == 1 {
		return Hours(d) + " with a fly in the water"
	}
	return strings.TrimSuffix(Hours(d), "h") + "rod-hours with a fly in the water"
}

// Tally counts what came: 4 landed (1 kept), 1 lost, 1 touch, 2 shows; or no fish.
func Tally(t timeline.Totals) string {
	landed := ""
	if t.Landed > 0 {
		landed = fmt.Sprintf("%d landed", t.Landed)
		if t.Kept > 0 {
			landed += fmt.Sprintf(" (%d kept)", t.Kept)
		}
	}
	lost := ""
	if t.Lost > 0 {
		lost = fmt.Sprintf("%d lost", t.Lost)
	}
	if all := commas(landed, lost, some(t.Touches, "touch", "touches"), some(t.Shows, "follow or boil", "follows and boils")); all != "" {
		return all
	}
	return "no fish"
}

// RodName is the name of a rod's person, or its mark where the name is not known.
func RodName(r timeline.RodNight) string {
	if r.Name != "" {
		return r.Name
	}
	return "rod " + r.Initials
}
