package journal

// Gap is a stretch of changes that could not be read, both ends within.
type Gap struct{ From, To uint64 }

// Repaired is what a repair saved and what it could not.
type Repaired struct {
	Copy      ID
	CopyKnown bool   // else taken from the latest change, or made up
	Changes   int    // read, of those numbered 1 to Last
	Last      uint64 // the highest number met
	Gaps      []Gap  // changes that could not be read
	Open      bool   // later changes may be missing too: nothing in the file tells
	Records   int    // that stand in the new file, without those removed
	// Older stand in a version that may not be their latest: that could not be read.
	Older []Ref
	// Unproved stand as they were found, though no change that could be read tells of them.
	Unproved []Ref
	// Lost were in the journal, and no version of them could be read.
	Lost []Ref
	// Nights are those of which entries were saved, but not their own record, so that
	// no list of nights shows them.
	Nights []ID
}

// Whole reports whether everything that the file ever held was saved.
func (r Repaired) Whole() bool {
	return !r.Open && len(r.Gaps)+len(r.Older)+len(r.Unproved)+len(r.Lost)+len(r.Nights) == 0
}
