package timeline

import (
	"time"

	"gloamline/journal"
	"gloamline/timeline/light"
)

// greyOf finds when the trees lose their colour, on the reference. Where that
// happens within the night before any sunset is seen, as in the polar night, the
// evening instant stays unknown.
func greyOf(reference *light.Trace, grey Threshold, skies []Noted[journal.Sky]) Grey {
	g := light.TreesGrey(reference, grey.Lux)
	out := Grey{Threshold: grey, Least: g.Least, LeastAt: g.LeastAt}
	if g.Reached {
		out.At, out.Back = g.Evening, g.Morning
	}
	for _, s := range g.Spells {
		out.Dark = append(out.Dark, Interval{From: s.From, To: s.To})
	}
	for _, s := range skies {
		if s.Entry.TreesGrey {
			out.Logged = append(out.Logged, s.At.Mid())
		}
	}
	return out
}

// DefaultThreshold is what a beat starts from until its own logs say otherwise.
func DefaultThreshold() Threshold { return Threshold{Lux: light.DefaultGrey} }

// Minute is the first full minute at which the trees are grey, zero if they do not go
// grey: the one that a cursor of full minutes can stand on with its light read as grey.
func (g Grey) Minute() time.Time { return FullMinute(g.At) }

// FullMinute rounds up to the full minute; zero stays zero.
func FullMinute(t time.Time) time.Time {
	if full := t.Truncate(time.Minute); full.Before(t) {
		return full.Add(time.Minute)
	}
	return t
}
