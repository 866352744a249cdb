package words

import (
	"fmt"

	"gloamline/journal"
	"gloamline/timeline"
)

// RigLines describes a rig, a line for each fly from the point up: point ¾ in slim
// dark, orange spot. When only one fly changed in length the first line says so:
// point down to 1 in slim dark.
func RigLines(rod *timeline.RodNight, rig timeline.RigSpan, p Prefs) []string {
	if change := oneChange(before(rod, rig), rig, p); change != "" {
		return []string{change}
	}
	var out []string
	for _, f := range rig.Flies {
		out = append(out, FlyOn(f, p))
	}
	if rig.Rig.Surface {
		if len(out) > 0 {
			out[0] = "surface lure alone: " + flyOrUnknown(rig.Flies[0], p)
		} else {
			out = append(out, "surface lure alone")
		}
	}
	tackle := Tackle(rig.Rig.Setup, p)
	if old := before(rod, rig); old != nil && Tackle(old.Rig.Setup, p) == tackle {
		tackle = "" // as before: not worth saying again
	}
	if tackle != "" {
		out = append(out, tackle)
	}
	if len(out) == 0 {
		out = append(out, "rig changed")
	}
	return out
}

// Tackle describes line and leader: sinking line 3 in a second, 9 ft leader.
func Tackle(s journal.Setup, p Prefs) string {
	line, leader := "", ""
	if l, ok := s.Line.Get(); ok {
		line = string(l.Kind) + " line"
		if ips, ok := l.Sink.Get(); ok {
			line += fmt.Sprintf(" %g in a second", ips)
		}
	}
	if l, ok := s.Leader.Get(); ok {
		leader = p.leader(l) + " leader"
	}
	return commas(line, leader)
}

// before returns the rig that the rod fished before this one, nil if none.
func before(rod *timeline.RodNight, rig timeline.RigSpan) *timeline.RigSpan {
	for i := range rod.Rigs {
		if i > 0 && rod.Rigs[i].Rig.ID == rig.Rig.ID {
			return &rod.Rigs[i-1]
		}
	}
	return nil
}

// oneChange says that one fly alone went up or down in length; empty if more
// happened, or less.
func oneChange(old *timeline.RigSpan, rig timeline.RigSpan, p Prefs) string {
	if old == nil || len(old.Flies) != len(rig.Flies) || old.Rig.Surface != rig.Rig.Surface ||
		Tackle(rig.Rig.Setup, p) != "" && Tackle(old.Rig.Setup, p) != Tackle(rig.Rig.Setup, p) {
		return ""
	}
	changed := -1
	for i := range rig.Flies {
		if rig.Flies[i].Fly == old.Flies[i].Fly && !rig.Flies[i].Fly.IsZero() {
			continue
		}
		if changed >= 0 {
			return ""
		}
		changed = i
	}
	if changed < 0 {
		return ""
	}
	was, okWas := old.Flies[changed].Dress.Length.Get()
	is, okIs := rig.Flies[changed].Dress.Length.Get()
	if !okWas || !okIs || was.M == is.M {
		return ""
	}
	way := "up"
	if is.M < was.M {
		way = "down"
	}
	return PositionName(rig.Flies[changed].Position) + " " + way + " to " + flyOrUnknown(rig.Flies[changed], p)
}

// RigTip says a rig in full: Anna, 23:30–00:36: point 1½ in slim dark.
func RigTip(n *timeline.Night, rig timeline.RigSpan, rod timeline.RodNight, p Prefs) string {
	var flies []string
	for _, f := range rig.Flies {
		if f.Known {
			flies = append(flies, join(" ", []string{PositionName(f.Position), FlyInFull(f.Dress, p)}))
		} else {
			flies = append(flies, FlyOn(f, p))
		}
	}
	surface := ""
	if rig.Rig.Surface {
		surface = "surface lure alone"
	}
	what := join("; ", append([]string{surface}, append(flies, Tackle(rig.Rig.Setup, p), rig.Rig.Note)...))
	if what == "" {
		what = "rig not described"
	}
	return RodName(rod) + ", " + Moment(rig.Rig.When, rig.From, n.Zone) + " to " + Clock(rig.To, n.Zone) + ": " + what
}

var speeds = map[journal.Speed]string{
	journal.DeadDrift: "dead drift", journal.FigureOfEight: "figure of eight", journal.SlowStrip: "slow strip",
	journal.FastStrip: "fast strip", journal.Roll: "rolled under the arm",
}

var depths = map[journal.Depth]string{
	journal.OnSurface: "on the surface", journal.UnderSurface: "just under the surface", journal.MidWater: "mid-water", journal.Deep: "deep",
}

// Way says how the fly was fished: figure of eight, mid-water.
func Way(w journal.Way) string {
	if s := commas(speeds[w.Speed.Or("")], depths[w.Depth.Or("")]); s != "" {
		return s
	}
	return "way of fishing not described"
}
