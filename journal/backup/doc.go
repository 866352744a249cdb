// Package backup keeps copies of a journal beside it: one at each start of the
// program if anything changed since the last, and of those the ones worth keeping.
//
// The copies of journal.gloam lie in the folder journal.gloam.backups beside it, each
// named by the instant in UTC at which it was taken: 2026-07-04T211500Z.gloam. Each
// is a whole journal and opens as one. Anything else in the folder is left alone.
//
// # What is kept
//
// The newest copy of each of the 7 latest days that have one, of each of the 4 latest
// weeks and of each of the 12 latest months: 23 at most. Days on which nothing was
// written down have no copy and push none out, so that a journal left alone for two
// winters keeps all of its copies. A day begins at midnight in the zone of now, a week on Monday.
// Copies dated later than now are kept and count for nothing: some clock was wrong.
//
// Nothing is removed unless the newest copy was read as a whole, each value held
// against its sum and its history, and found sound. So damage that creeps into a
// journal cannot push out the copies from before it.
//
// # Photographs
//
// The originals kept beside the journal get a second name in the folder photos, each once
// for all copies, under the sum of its bytes; where the disk knows no such second names
// they are copied. So they come back when the folder of the journal was lost or cleared out. An
// original that is damaged on the disk is damaged under both names: gloam check and the
// window's check read them all. None is ever removed.
//
// # Not done
//
// The copies lie on the disk of the journal: they help against slips and damaged
// files, not against a lost computer or disk. Nothing is compressed.
package backup
