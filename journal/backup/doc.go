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
// # Not done
//
// The copies lie on the disk of the journal: they help against slips and damaged
// files, not against a lost computer. Copied originals of photographs are not
// copied again. Nothing is compressed.
package backup
