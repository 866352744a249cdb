// Package sketch reads and writes a beat as GeoJSON (RFC 7946). It is the only
// package that knows this format; the journal keeps beats in a form of its own.
//
// A beat is a FeatureCollection. Its members name, river, river_id, zone, id and
// place ([longitude, latitude], when the place was given by hand) describe the beat.
// Each Feature has the property role: pool, bank, mark, trees, entry or hazard; any
// other role is kept. Further properties: name, id (32 hexadecimal digits), bank (left
// or right, the true bank), and for pools order (1 is the top), canopy (open, partly,
// closed), skyline ([[bearing, altitude], ...] in degrees), head and tail ([longitude,
// latitude]). Members and properties not known here survive reading and writing, and
// so do heights.
//
// Reading forgives and warns: byte order marks, clockwise or open rings, missing
// roles, foreign ids, a bare Feature or geometry. It refuses coordinates of another
// grid, since a guess would put the light in the wrong place. Coordinates are rounded
// to 7 decimals, about 1 cm; more is noise (RFC 7946 section 11.2 thinks six enough).
//
// Writing is strict: WGS84 longitude and latitude, exterior rings anticlockwise and
// islands clockwise, rings closed, a right bbox, no crs member, UTF-8 without a byte
// order mark.
//
// Not done: cutting shapes at the 180th meridian (section 3.1.9), members of single
// geometries inside a GeometryCollection (a warning says so), other coordinate systems.
package sketch
