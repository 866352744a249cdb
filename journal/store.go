package journal

// Store keeps envelopes and changes. It knows nothing of what records mean.
// Two implementations, a file and memory, pass one suite.
//
// A store is used from one goroutine at a time.
type Store interface {
	// Copy identifies this copy of the journal.
	Copy() ID

	// Get returns the envelope of a record. An *Error of kind NotFound comes
	// back for a record that never was; a removed one comes back Gone.
	Get(Ref) (Envelope, error)

	// List returns the live records of one kind that stand by themselves, by ID.
	List(Kind) ([]Envelope, error)

	// Entries returns the live entries of a trip, by ID. An unknown trip has none.
	Entries(trip ID) ([]Envelope, error)

	// Commit stores a change and what it makes of its records, all or nothing,
	// and gives it its Seq. When it returns nil the change is on the disk. If a
	// record is no longer what Before says, nothing happens and the error is of
	// kind Conflict. One tombstone of a record is as good as another, whichever
	// version of the program left it.
	Commit(*Change) error

	// Changes returns up to n changes with Seq greater than after, oldest first.
	Changes(after uint64, n int) ([]Change, error)

	// Last returns the highest Seq, 0 in a new journal.
	Last() (uint64, error)

	// Check reads everything and reports each fault; nil means sound.
	Check() ([]Fault, error)

	Close() error
}

// Fault is one thing wrong in a journal's file.
type Fault struct {
	Where string // bucket or record
	Ref   Ref    // zero if it concerns no record
	Err   error
}

// Error names the fault in one line.
func (f Fault) Error() string { return f.Where + ": " + f.Err.Error() }
