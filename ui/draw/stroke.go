package draw

// Cap is the end of an open line.
type Cap uint8

// The line ends.
const (
	ButtCap   Cap = iota // ends at the point
	RoundCap             // half a circle beyond it
	SquareCap            // half the width beyond it
)

// Join is the corner of a line.
type Join uint8

// The corners. A mitre longer than MiterLimit widths becomes a bevel.
const (
	MiterJoin Join = iota
	RoundJoin
	BevelJoin
)

// MiterLimit is the longest mitre in widths of the line, the usual 4 of SVG.
const MiterLimit = 4

// Stroke says how a line is drawn.
type Stroke struct {
	Width float64   // dp
	Dash  []float64 // dp: on, off, on ...; empty for an unbroken line
	Phase float64   // dp into the pattern at which the line begins
	Cap   Cap
	Join  Join
}

// tidy drops a dash pattern that makes no sense (negative, not finite, all nought)
// or is finer than an eye or a printer can tell, and doubles an odd one, as SVG does.
func (s Stroke) tidy() Stroke {
	sum, longest := 0.0, 0.0
	for _, d := range s.Dash {
		if !(d >= 0) || !sane(d) {
			s.Dash, s.Phase = nil, 0
			return s
		}
		sum += d
		longest = max(longest, d)
	}
	if sum < 0.05*float64(len(s.Dash)) || longest == 0 {
		s.Dash, s.Phase = nil, 0
		return s
	}
	dash := append([]float64(nil), s.Dash...)
	if len(dash)%2 == 1 {
		dash = append(dash, s.Dash...)
	}
	s.Dash = dash
	if !sane(s.Phase) {
		s.Phase = 0
	}
	return s
}

func (s Stroke) scaled(k float64) Stroke {
	s.Width *= k
	s.Phase *= k
	dash := make([]float64, len(s.Dash))
	for i, d := range s.Dash {
		dash[i] = d * k
	}
	s.Dash = dash
	return s
}

// reach is how far paint may lie from the line, in dp.
func (s Stroke) reach() float64 {
	r := s.Width / 2
	if s.Join == MiterJoin {
		return r * MiterLimit
	}
	if s.Cap == SquareCap {
		return r * 1.4142135623730951
	}
	return r
}
