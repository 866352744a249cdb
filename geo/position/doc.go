// Package position reads a place as people write or paste it, and prints it.
//
// Read are: decimal degrees (55.12345, -4.60123), degrees and decimal minutes, degrees,
// minutes and seconds, with N S E W or the words before or after, signs, blanks, commas,
// semicolons, decimal commas and the marks of any keyboard; geo URIs (RFC 5870); and
// references of the British National Grid (NX 12345 67890). Two bare numbers are latitude, then
// longitude, as ISO 6709 orders them.
//
// What can be read in two ways is refused with the reason, at its place in the text: no
// hemisphere where there are minutes, 55,4 (one number or two?), O (east in German, west in Spanish).
//
// Degrees are WGS84. A grid reference is turned by the published seven parameters, right to
// 5 m (grid.go names the guide), and stands for the middle of its square; Reading.AccuracyM says how
// far off it may be. Not done: the exact grid shift (a table of 20 MB), the Irish and other
// grids, UTM, and codes of words or letters that belong to a firm.
package position
