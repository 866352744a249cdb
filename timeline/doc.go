// Package timeline sets a night in its light: a trip's log, its beat and its
// sky become one Night value, from which header, list, sketch, strip, log and
// page all read, so that every count and every lux agrees wherever it stands.
//
// A Night is derived and never stored: it is rebuilt whole after each change.
// Lux is horizontal illuminance on the water in lux with a 68 % factor band;
// instants are UTC; the axis of darkness has its zero where the beat's open-sky
// reference falls below the threshold at which the trees go grey.
//
// # Rules
//
// Runs are counted, and pools rest, over all rods of the party. A contact lies in
// the pool noted on it, else in that of the run which covers the middle of its
// spread; it came to the fly noted, else to the only one on the leader, else to an
// unknown one. A rig and a way of fishing hold until the rod's next. A rod is on
// the bank from its start to its stop, else from the first to the last thing logged
// for it; it has a fly in the water during its runs less its breaks. Uncertain ends
// count at the middle of their spread. The light at an uncertain moment is the mean
// of log lux over its spread, with a range that holds the band of every moment in it.
//
// The ladder of light: daylight while the sun's upper limb is up; sunset glow down
// to 10 lx of open sky; half-light down to the threshold; trees grey for a decade
// below it, dark for another, then black; moonlit wherever the moon gives more than
// half of the light and it is darker than half a decade above the threshold.
//
// # Nights laid over each other
//
// An Overlay lays nights along one axis: the clock on the wall, minutes from sunset,
// from trees grey or from the moon coming over the skyline of the pool concerned, or the
// light at the pool itself in three parts: falling, moonlit (where the ladder says so),
// dawn. A rod-hour lies where its run was fished, an uncertain contact is shared out
// evenly over its time. What has no place on an axis is told with its reason. Bins are a
// quarter of an hour or half a decade of light wide; their hours add up to those of the
// nights to the nanosecond. Likeness of nights (Traits.Unlike) is our own measure.
//
// # Accuracy
//
// That of packages sky and light: risings to about a minute in nature, lux within
// the band two times in three. Between samples a minute apart light is log-linear.
//
// # Not done
//
// Lamps of towns (a beat holds no figure for them yet), lunar eclipses (flagged
// only), one position per pool for the sky (a kilometre is 0.009 degrees), and any
// judgement whether a pool may be fished or waded.
package timeline
