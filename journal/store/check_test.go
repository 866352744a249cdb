package store

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"
	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// Ensure that Check finds every sort of contradiction that whole pages and whole
// sums can still hide, and says where it lies.
func TestCheckFinds(t *testing.T) {
	anna := journal.Person{ID: journal.ID{15: 1}, Name: "Anna"}
	isla := journal.Person{ID: journal.ID{15: 2}, Name: "Isla"}
	note := journal.Note{Head: journal.Head{ID: journal.ID{15: 3}, Trip: journal.ID{15: 9}, Note: "mist"}}
	people := func(tx *bolt.Tx) *bolt.Bucket { return tx.Bucket(bucketRecords).Bucket([]byte(journal.KindPerson)) }
	value := func(v any) []byte {
		b, err := encode(v)
		require.NoError(t, err)
		return b
	}
	seal := func(r journal.Record) journal.Envelope {
		e, err := journal.Seal(r)
		require.NoError(t, err)
		return e
	}
	// amendChange rewrites the stored change seq.
	amendChange := func(tx *bolt.Tx, seq uint64, f func(*journal.Change)) error {
		c, err := change(seqKey(seq), tx.Bucket(bucketChanges).Get(seqKey(seq)))
		if err != nil {
			return err
		}
		f(&c)
		return tx.Bucket(bucketChanges).Put(seqKey(seq), value(c))
	}
	for _, c := range []struct {
		what  string
		spoil func(*bolt.Tx) error
		where string
		why   string
	}{
		{"a record changed alone", func(tx *bolt.Tx) error {
			return people(tx).Put(anna.ID[:], value(seal(journal.Person{ID: anna.ID, Name: "Una"})))
		}, "records/person/00000000000000000000000000000001", "not what its latest change left"},
		{"a record missing", func(tx *bolt.Tx) error { return people(tx).Delete(anna.ID[:]) },
			"records/person/00000000000000000000000000000001", "a record that is not there"},
		{"an entry missing", func(tx *bolt.Tx) error { return tx.Bucket(bucketTrips).DeleteBucket(note.Trip[:]) },
			"trips/00000000000000000000000000000009/note 00000000000000000000000000000003", "a record that is not there"},
		{"a record nobody made", func(tx *bolt.Tx) error {
			id := journal.ID{15: 7}
			return people(tx).Put(id[:], value(seal(journal.Person{ID: id, Name: "Una"})))
		}, "records/person/00000000000000000000000000000007", "no change made it"},
		{"a record under another identity", func(tx *bolt.Tx) error {
			return people(tx).Put(anna.ID[:], people(tx).Get(isla.ID[:]))
		}, "records/person/00000000000000000000000000000001", "another record lies in its place"},
		{"a value without its sum", func(tx *bolt.Tx) error {
			v := bytes.Clone(people(tx).Get(anna.ID[:]))
			v[0]++
			return people(tx).Put(anna.ID[:], v)
		}, "records/person/00000000000000000000000000000001", "does not agree with its sum"},
		{"a value cut short", func(tx *bolt.Tx) error { return people(tx).Put(anna.ID[:], []byte{1}) },
			"records/person/00000000000000000000000000000001", "too short"},
		{"a key that is no identity", func(tx *bolt.Tx) error { return people(tx).Put([]byte("anna"), value(seal(anna))) },
			"records/person/616e6e61000000000000000000000000", "a key that is no record"},
		{"a loose value", func(tx *bolt.Tx) error { return tx.Bucket(bucketRecords).Put([]byte("x"), []byte("y")) },
			"records", "a loose value"},
		{"a night that is none", func(tx *bolt.Tx) error {
			_, err := tx.Bucket(bucketTrips).CreateBucket([]byte("x"))
			return err
		}, "trips", "no night"},
		{"a part too many", func(tx *bolt.Tx) error {
			_, err := tx.CreateBucket([]byte("extra"))
			return err
		}, "extra", "no journal has"},
		{"a gap", func(tx *bolt.Tx) error { return tx.Bucket(bucketChanges).Delete(seqKey(2)) },
			"changes/2", "missing; the next change is 3"},
		{"a change in the wrong place", func(tx *bolt.Tx) error {
			return tx.Bucket(bucketChanges).Put(seqKey(4), tx.Bucket(bucketChanges).Get(seqKey(3)))
		}, "changes/4", "change 3 lies in the place of 4"},
		{"a change twice", func(tx *bolt.Tx) error {
			c, err := change(seqKey(1), tx.Bucket(bucketChanges).Get(seqKey(1)))
			require.NoError(t, err)
			return amendChange(tx, 2, func(d *journal.Change) { d.ID = c.ID })
		}, "changes/2", "identity of its own"},
		{"a change of no copy", func(tx *bolt.Tx) error {
			return amendChange(tx, 2, func(c *journal.Change) { c.Copy = journal.ID{} })
		}, "changes/2", "or of its copy"},
		{"a change without edits", func(tx *bolt.Tx) error {
			return amendChange(tx, 3, func(c *journal.Change) { c.Edits = nil })
		}, "changes/3", "changes nothing"},
		{"a history that does not join", func(tx *bolt.Tx) error {
			return amendChange(tx, 3, func(c *journal.Change) { c.Edits[0].Before.Body = json.RawMessage(`{"id":"x"}`) })
		}, "changes/3", "does not start from where"},
		{"an edit of what never was", func(tx *bolt.Tx) error {
			return amendChange(tx, 1, func(c *journal.Change) { e := seal(anna); c.Edits[0].Before = &e })
		}, "changes/1", "does not start from where"},
		{"a record made twice", func(tx *bolt.Tx) error {
			return amendChange(tx, 3, func(c *journal.Change) { c.Edits[0].Before = nil })
		}, "changes/3", "does not start from where"},
		{"a record of a later version", func(tx *bolt.Tx) error {
			e := seal(isla)
			e.Version = 99
			if err := amendChange(tx, 2, func(c *journal.Change) { c.Edits[0].After = &e }); err != nil {
				return err
			}
			return people(tx).Put(isla.ID[:], value(e))
		}, "records/person/00000000000000000000000000000002", "newer"},
		{"a removed record of an unknown kind", func(tx *bolt.Tx) error {
			e := journal.Envelope{Version: 1, Kind: "kite", ID: isla.ID, Gone: true}
			if err := amendChange(tx, 3, func(c *journal.Change) { c.Edits = append(c.Edits, journal.Edit{After: &e}) }); err != nil {
				return err
			}
			b, err := tx.Bucket(bucketRecords).CreateBucket([]byte("kite"))
			if err != nil {
				return err
			}
			return b.Put(e.ID[:], value(e))
		}, "records/kite/00000000000000000000000000000002", "not known to this version"},
		{"a changed date of beginning", func(tx *bolt.Tx) error {
			return tx.Bucket(bucketMeta).Put(keyCreated, []byte("2020-01-01T00:00:00Z"))
		}, "meta", "does not agree with its sum"},
	} {
		t.Run(c.what, func(t *testing.T) {
			s := fresh(t)
			j, err := journal.Open(s, clock)
			require.NoError(t, err)
			_, err = j.Log(anna)
			require.NoError(t, err)
			_, err = j.Log(isla)
			require.NoError(t, err)
			before, after := seal(anna), seal(journal.Person{ID: anna.ID, Name: "Anna again"})
			entry := seal(note)
			require.NoError(t, s.Commit(&journal.Change{ID: journal.NewID(), Copy: s.Copy(), Edits: []journal.Edit{
				{Before: &before, After: &after}, {After: &entry}}}))
			sound(t, s)
			require.NoError(t, s.db.Update(c.spoil))
			faults, err := s.Check()
			require.NoError(t, err)
			var said []string
			found := false
			for _, f := range faults {
				said = append(said, f.Error())
				found = found || f.Where == c.where && bytes.Contains([]byte(f.Err.Error()), []byte(c.why))
			}
			require.True(t, found, "wanted %q at %s, got %q", c.why, c.where, said)
		})
	}
}
