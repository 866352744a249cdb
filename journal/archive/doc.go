// Package archive writes a whole journal as one JSON text and makes a journal of
// such a text again. Nothing is lost on the way: every change, every record as it
// stands, tombstones too, byte for byte, and the identity of the copy.
//
// # The text
//
// UTF-8, one JSON object, its members in this order; each change and each record
// has a line of its own when this package writes it:
//
//	{"gloamline archive":1,
//	"copy":"<32 hexadecimal digits>",
//	"created":"<RFC 3339, may be empty>",
//	"written":"<RFC 3339>",
//	"changes":[
//	{…},
//	{…}
//	],
//	"records":[
//	{…},
//	{…}
//	],
//	"count":{"changes":2,"records":2},
//	"sum":"<SHA-256, 64 hexadecimal digits>"}
//
// A change and an envelope are what they are in the file of a journal; DEVELOPERS.md
// describes them. Changes stand in the order of their numbers, from 1 without
// gaps. Records stand once each, by kind, then those of nights by night; within
// each by ID. The sum is that of all changes and records in order, each as compact
// JSON followed by a line feed, so that it survives another layout but no other
// alteration.
//
// What stands follows from the changes. Records are there all the same, so that a
// reader needs no history, and so that each can prove the other.
//
// Writing and reading go item by item; what is kept in memory is the identity of
// each record, about 100 bytes, and one item.
//
// # With photographs
//
// Copied originals of photographs lie beside the journal, not in it, and not in the text. A
// bundle is a ZIP file of both: the text as journal.json, each original as
// photos/ab/abcd….jpg, named by the SHA-256 of its bytes, which proves it when it is restored.
//
// # Not done
//
// The text by itself is not compressed, and nothing is encrypted. A journal with faults is not archived as if it were sound: what cannot
// be read is an error, and package store repairs first.
package archive
