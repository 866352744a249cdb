// Package gpx reads and writes GPX, the exchange format of satellite receivers: bytes
// to values and warnings, knowing nothing of beats or nights. It reads versions 1.0 and
// 1.1 as their schemas at topografix.com describe them, and writes 1.1.
//
// Units: degrees on WGS84, metres of height, instants in UTC. A time with an offset is
// converted. A time without a zone is taken as UTC, which the standard asks for, and the
// warning says so. Nothing is sorted or thrown away on the quiet: points stay in the order
// of the file, what had to be left out or looks wrong is counted in a Warning with
// the line where it first stood, and Fixes gives the timed points sorted.
//
// Read keeps the points; Scan hands them over one by one in memory that does not grow
// with the file. Both refuse a document type (and with it every entity but the five
// of XML itself), elements nested more than 64 deep, a single tag or text longer than
// 1 MiB, and more bytes or points than Options allow. A file that breaks off gives what
// stood before the break. Accepted: no namespace or any prefix, a byte order mark,
// UTF-16, ISO-8859-1, ISO-8859-15 and Windows-1252, and such bytes in a file that calls itself UTF-8.
//
// The parser is encoding/xml in its strict mode: it is kept with the language, streams and
// never expands entities of its own accord. Libraries for GPX read the whole file into a tree
// and stop at the first odd time, which is why none is used.
//
// Not done: the content of extensions (their namespaces are listed), speed and course,
// finding spikes, and putting a wrong clock right: that takes a person who knows one moment.
package gpx
