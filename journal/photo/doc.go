// Package photo reads what a photograph says of itself: when by the camera's clock, where,
// which way up, by which device; and makes a small copy that says nothing of it.
//
// JPEG and HEIC are told by content. Times stay apart as the file has them: the camera's
// clock without a zone, its offset from UTC if noted, and the time of the satellite fix in
// UTC, which may be older than the picture. None is derived from another. Positions are
// WGS84 degrees as written; 0,0 and figures outside the globe count as unknown. What is
// unknown is absent, never nothing, and a warning says why.
//
// EXIF (CIPA DC-008, version 2.32) is read by this package: the libraries looked at give 0
// for a figure they cannot read, lose leading zeros of parts of a second, and do not tell
// a loop of directories. Some twenty tags are needed. HEIC is walked (ISO/IEC 14496-12 and
// 23008-12) as far as the EXIF block; its pictures are not decoded, as that needs a video
// decoder, so there is no small copy of one.
//
// Not done: XMP, IPTC, makers' notes, other formats, the turn a HEIC keeps outside its
// EXIF, altitude, and any choice of a zone.
package photo
