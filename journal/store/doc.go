// Package store keeps a journal in one bbolt file, journal.gloam. It is the
// only user of bbolt and implements journal.Store.
//
// # The file
//
//	meta/     magic    "gloamline journal"
//	          format   "1", decimal
//	          copy     the ID of this copy, 32 hexadecimal digits
//	          created  RFC 3339, UTC
//	          sum      CRC-32C of the four values above, each ended by a line
//	                   feed, 8 hexadecimal digits
//	records/<kind>/<16-byte ID>              records that stand by themselves
//	trips/<16-byte trip ID>/<16-byte ID><kind>  the entries of a trip
//	changes/<8-byte big-endian seq>          every change, from 1 without gaps
//
// A value in records, trips and changes is a CRC-32C (Castagnoli polynomial,
// 4 bytes, big-endian) of the JSON that follows it: a journal.Envelope, or a
// journal.Change. bbolt checks only its two header pages, so without the sum a
// flipped bit could turn one weight into another unnoticed.
//
// # What is promised
//
// Commit is one bbolt transaction: data pages are written and synced, then one
// header page is written and synced, and only then does Commit return. A
// program that is killed at any moment leaves the journal as it was before or
// after a change, never between. That is tested by killing. That a loss of power
// does no more than that is bbolt's promise, and rests on a disk that tells the
// truth about a sync; it is not tested here. NoSync and its relatives are never
// set; tests fail when they are.
//
// bbolt trusts its pages and would crash, or run in circles, on damaged ones.
// So Open first walks all pages under the file's lock, and every later touch of
// the file turns a panic or a memory fault into an error of kind Corrupt. After
// such an error the store answers nothing more but Close.
//
// # Not done
//
// A damaged journal is refused or its faults are listed, never mended in place:
// Repair saves what can be read into a new file. No compaction: bbolt reuses free pages but does not
// give them back to the disk. No watching for changes by other programs: the
// lock keeps them out while the journal is open for writing. On a network file
// system the lock is as good as that system makes it.
package store
