// Package timeline sets a night in its light: a trip's log, its beat and its
// sky become one Night value, from which header, list, sketch, strip, log and
// page all read, so that every count and every lux agrees wherever it stands.
//
// A Night is derived and never stored: it is rebuilt whole after each change.
// Lux is horizontal illuminance on the water in lux with a 68 % factor band;
// instants are UTC; the axis of darkness has its zero where the beat's open-sky
// reference falls below the threshold at which the trees go grey.
package timeline
