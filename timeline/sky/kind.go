package sky

// Line is an altitude that a body crosses.
type Line uint8

// The lines. Sun: the centre at -50' (34' of mean refraction and 16' of radius, as
// almanacs take it), -6, -12 and -18, without refraction. Moon: the upper limb at
// -34', with the radius as seen from the place.
const (
	SunLine Line = iota
	CivilLine
	NauticalLine
	AstronomicalLine
	MoonLine
	lineCount
)

// Lines lists them all, in order.
var Lines = [lineCount]Line{SunLine, CivilLine, NauticalLine, AstronomicalLine, MoonLine}

var lineNames = [lineCount]string{"sun", "civil", "nautical", "astronomical", "moon"}

// String returns sun, civil, nautical, astronomical or moon.
func (l Line) String() string {
	if l < lineCount {
		return lineNames[l]
	}
	return "unknown line"
}

// horizonLift is the mean refraction at the horizon, 34'.
const horizonLift = 34.0 / 60

// sunAltitude is the altitude of the sun's centre on each line of the sun.
var sunAltitude = [MoonLine]float64{-50.0 / 60, -6, -12, -18}

// Kind is a crossing of a line in one direction.
type Kind uint8

// The kinds: for each line first downward, then upward.
const (
	Sunset Kind = iota
	Sunrise
	CivilDusk
	CivilDawn
	NauticalDusk
	NauticalDawn
	AstronomicalDusk
	AstronomicalDawn
	Moonset
	Moonrise
	kindCount
)

var kindNames = [kindCount]string{
	"sunset", "sunrise", "civil_dusk", "civil_dawn", "nautical_dusk", "nautical_dawn",
	"astronomical_dusk", "astronomical_dawn", "moonset", "moonrise",
}

// String returns the name in lower case with underscores: civil_dusk.
func (k Kind) String() string {
	if k < kindCount {
		return kindNames[k]
	}
	return "unknown event"
}

// Line returns the line that is crossed.
func (k Kind) Line() Line { return Line(k / 2) }

// Rising reports whether the body comes up through the line.
func (k Kind) Rising() bool { return k%2 == 1 }

func kindOf(l Line, rising bool) Kind {
	k := Kind(2 * l)
	if rising {
		k++
	}
	return k
}

// State says on which side of its line a body stays.
type State uint8

// The states of a line over a window.
const (
	Crosses State = iota // at least one event
	AlwaysAbove
	AlwaysBelow
)

// String returns crosses, always_above or always_below.
func (s State) String() string {
	switch s {
	case AlwaysAbove:
		return "always_above"
	case AlwaysBelow:
		return "always_below"
	default:
		return "crosses"
	}
}
