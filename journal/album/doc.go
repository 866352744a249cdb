// Package album keeps the originals of photographs in a folder beside a journal, each
// once, under the SHA-256 of its bytes, and looks into a file that may become a photo.
//
// A kept original is a copy to the last byte: it is checked while it is written, synced,
// and only then given its name; nothing in the folder is ever altered or taken away. A
// file that is read is not touched. The folder of journal.gloam is journal.photos, and in
// it ab/abcd….jpg, where abcd… are the 64 digits; the ending is that of the format.
//
// Not done: taking away originals that no entry names any more (undo may want them back),
// and any position: what a picture says of the place it was taken is read by package photo
// and not handed on here.
package album
