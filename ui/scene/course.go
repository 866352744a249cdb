package scene

import (
	"math"
	"time"

	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// CourseView is the course of a river at its gauge before and in a night.
type CourseView struct {
	Title    string        // gauge Kirk Bridge, levels in m
	Points   []CoursePoint // in order of time
	From, To time.Time     // what is shown
	Night    [2]time.Time  // the part that the strip above shows
	Cursor   time.Time     // zero: none
	Peak     CoursePoint   // the last peak before the cursor; zero time: none
	Base     float64       // the level before the rise; NaN: not known
	Says     []string      // how it stood at the cursor
	Zone     *time.Location
	Unit     string
}

// CoursePoint is a level, in the unit that is shown. A gap begins after Gap.
type CoursePoint struct {
	At  time.Time
	V   float64
	Gap bool // nothing is known from here to the next
}

// Course draws the curve, the part of it that the strip shows, the peak and the level before
// the rise, and in words how it stood at the cursor. It is the river at the gauge.
func Course(size draw.Size, look Look, v CourseView) Scene {
	l := draw.NewList(size)
	l.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(look.Panel))
	l.Group(v.Title)
	defer l.EndGroup()
	sc := Scene{List: l}
	y := 17.0
	l.Text(draw.Text{S: draw.Fit(boldFont, v.Title, size.W-16), At: draw.Pt(8, y), Font: boldFont, Color: look.Ink})
	if len(v.Says) > 0 { // beside the title where there is room
		x := 8 + draw.Measure(boldFont, v.Title).Width + 16
		for i, s := range v.Says {
			if i > 0 || x+draw.Measure(textFont, s).Width > size.W-8 {
				x, y = 8, y+16
			}
			for k, line := range draw.Wrap(textFont, s, size.W-8-x) {
				if k > 0 {
					y += 16
				}
				l.Text(draw.Text{S: line, At: draw.Pt(x, y), Font: textFont, Color: look.Ink})
			}
		}
	}
	plot := draw.R(stripLeft, y+12, size.W-stripLeft-stripRight, size.H-stripFoot-y-14)
	if len(v.Points) < 2 || plot.H() < 16 || !v.To.After(v.From) {
		return sc
	}
	axis := timeAxis{v.From, v.To, plot.Min.X, plot.Max.X}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range v.Points {
		if !p.At.Before(v.From) && !p.At.After(v.To) {
			lo, hi = min(lo, p.V), max(hi, p.V)
		}
	}
	if !math.IsNaN(v.Base) {
		lo = min(lo, v.Base)
	}
	at := func(p CoursePoint) draw.Point { return draw.Pt(axis.x(p.At), share(plot, p.V, lo, hi)) }
	clamp := func(t time.Time) float64 { return max(plot.Min.X, min(plot.Max.X, axis.x(t))) }
	night := draw.R(clamp(v.Night[0]), plot.Min.Y-6, clamp(v.Night[1])-clamp(v.Night[0]), plot.H()+12)
	l.Fill(draw.Rectangle(night), draw.NonZero, draw.Solid(draw.Fade(look.Ink, 0.10)))
	for _, end := range []float64{lo, hi} {
		yy := share(plot, end, lo, hi)
		l.Stroke(draw.Line(draw.Pt(plot.Min.X, yy), draw.Pt(plot.Max.X, yy)), draw.Stroke{Width: 1}, look.Rule)
		l.Text(draw.Text{S: words.CourseLevel(end, v.Unit), At: draw.Pt(plot.Min.X-10, yy), Font: textFont, Color: look.Soft, Anchor: draw.End, Align: draw.Centre})
		if hi-lo < 1e-9 {
			break
		}
	}
	if !math.IsNaN(v.Base) && v.Base > lo+0.12*(hi-lo) {
		yy := share(plot, v.Base, lo, hi)
		l.Stroke(draw.Line(draw.Pt(plot.Min.X, yy), draw.Pt(plot.Max.X, yy)), thresholdStroke, look.Soft)
	}
	l.PushClip(draw.Rectangle(plot.Inset(-3)))
	var run []draw.Point
	flush := func() {
		if len(run) > 1 {
			l.Stroke(draw.Polyline(run), levelStroke, look.Ink)
		}
		run = nil
	}
	for _, p := range v.Points {
		run = append(run, at(p))
		if p.Gap {
			flush()
		}
	}
	flush()
	l.PopClip()
	var taken labels
	taken.room = draw.Bounds(size)
	if !v.Peak.At.IsZero() && !v.Peak.At.Before(v.From) && !v.Peak.At.After(v.To) {
		p := at(v.Peak)
		l.Fill(draw.Circle(p, 3), draw.NonZero, draw.Solid(look.Ink))
		t := draw.Text{S: words.CoursePeak(v.Peak.At, v.Peak.V, v.Unit, v.Zone), Font: textFont, Color: look.Ink, Halo: draw.Halo{Width: 2.5, Color: look.Panel}}
		w := draw.Measure(t.Font, t.S).Width
		taken.put(l, t, draw.Pt(p.X+7, p.Y+4), draw.Pt(p.X-7-w, p.Y+4), draw.Pt(p.X+7, p.Y+14))
	}
	if c := v.Cursor; !c.IsZero() && !c.Before(v.From) && !c.After(v.To) {
		x := axis.x(c)
		l.Stroke(draw.Line(draw.Pt(x, plot.Min.Y-6), draw.Pt(x, plot.Max.Y+6)), cursorStroke, look.Accent)
	}
	foot := size.H - stripFoot + 4
	last := math.Inf(-1)
	for _, t := range axis.ticks(v.Zone, 96) {
		x := axis.x(t)
		l.Stroke(draw.Line(draw.Pt(x, foot-2), draw.Pt(x, foot+3)), draw.Stroke{Width: 1.2}, look.Soft)
		s := words.CourseTick(t, v.Zone)
		if w := draw.Measure(textFont, s).Width; x-w/2 > last+10 && x+w/2 < size.W-4 {
			l.Text(draw.Text{S: s, At: draw.Pt(x, foot+16), Font: textFont, Color: look.Soft, Anchor: draw.Middle})
			last = x + w/2
		}
	}
	return sc
}
