package sketch

import "fmt"

// WarningKind says what was put right or left aside while reading, for programs.
type WarningKind string

// The kinds of warning.
const (
	NoFeatures     WarningKind = "no features"
	NoRole         WarningKind = "no role"          // Detail: what it was taken for
	UnknownRole    WarningKind = "unknown role"     // Detail: the role
	RingClosed     WarningKind = "ring closed"      // an open ring was closed
	RingLeftOut    WarningKind = "ring left out"    // fewer than three corners
	LineLeftOut    WarningKind = "line left out"    // a line of fewer than two points
	LineAsOutline  WarningKind = "line as outline"  // a pool drawn as a line that closes
	NotOneArea     WarningKind = "not one area"     // a pool that is no area, or several
	SameID         WarningKind = "same id"          // given a new one
	BadProperty    WarningKind = "bad property"     // Detail: which; kept unread
	TwoZones       WarningKind = "two zones"        // Detail: the one left aside
	MaybeSwapped   WarningKind = "maybe swapped"    // latitude before longitude?
	NotText        WarningKind = "not text"         // bytes that are no UTF-8
	MemberLeftOut  WarningKind = "member left out"  // Detail: a member the standard forbids there
	GeometryAlone  WarningKind = "geometry alone"   // a geometry where a Feature belongs
	FeatureSkipped WarningKind = "feature left out" // not an object of a known type
)

// WarningKinds lists all kinds, so that others can check they have words for each.
var WarningKinds = []WarningKind{NoFeatures, NoRole, UnknownRole, RingClosed, RingLeftOut, LineLeftOut, LineAsOutline,
	NotOneArea, SameID, BadProperty, TwoZones, MaybeSwapped, NotText, MemberLeftOut, GeometryAlone, FeatureSkipped}

// Warning is one thing put right or left aside while reading.
type Warning struct {
	Kind    WarningKind
	Feature int    // counted from 0; -1 for the file as a whole
	Name    string // of the feature, if it has one
	Detail  string
}

// String returns one plain sentence.
func (w Warning) String() string {
	what := w.subject()
	switch w.Kind {
	case NoFeatures:
		return "the file has no features"
	case NoRole:
		return fmt.Sprintf("%s has no role and was taken as %s", what, w.Detail)
	case UnknownRole:
		return fmt.Sprintf("%s has the role %q, which is kept but not known here", what, w.Detail)
	case RingClosed:
		return fmt.Sprintf("the outline of %s was open and has been closed", what)
	case RingLeftOut:
		return fmt.Sprintf("an outline of %s with fewer than three corners was left out", what)
	case LineLeftOut:
		return fmt.Sprintf("a line of %s with fewer than two points was left out", what)
	case LineAsOutline:
		return fmt.Sprintf("%s was drawn as a line that comes round and was taken as an outline", what)
	case NotOneArea:
		return fmt.Sprintf("%s is called a pool but is not one area; it was kept as drawn, not as a pool", what)
	case SameID:
		return fmt.Sprintf("%s had the ID of another feature and was given a new one", what)
	case BadProperty:
		return fmt.Sprintf("%s has a %s that cannot be used; it was kept unread", what, w.Detail)
	case TwoZones:
		return fmt.Sprintf("%s names another time zone, %s, which was left aside", what, w.Detail)
	case MaybeSwapped:
		return fmt.Sprintf("latitude and longitude may be swapped: the file lies at %s", w.Detail)
	case NotText:
		return "the file holds bytes that are no text; they were replaced by a mark"
	case MemberLeftOut:
		return fmt.Sprintf("%s has a member %q that does not belong there; it was left out", what, w.Detail)
	case GeometryAlone:
		return fmt.Sprintf("%s is a bare geometry and was taken as a feature without properties", what)
	case FeatureSkipped:
		return fmt.Sprintf("%s is no feature that can be read and was left out", what)
	}
	return fmt.Sprintf("%s: %s", what, w.Kind)
}

func (w Warning) subject() string {
	switch {
	case w.Feature < 0:
		return "the file"
	case w.Name == "":
		return fmt.Sprintf("feature %d", w.Feature+1)
	}
	return w.Name
}
