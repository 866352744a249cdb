package store

import (
	"encoding/binary"
	"encoding/json"
	"hash/crc32"

	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

const sumSize = 4

// encode writes v as JSON behind its sum.
func encode(v any) ([]byte, error) {
	js, err := json.Marshal(v)
	if err != nil {
		return nil, &journal.Error{Kind: journal.Internal, Err: err}
	}
	out := make([]byte, sumSize, sumSize+len(js))
	binary.BigEndian.PutUint32(out, crc32.Checksum(js, castagnoli))
	return append(out, js...), nil
}

// decode reads what encode wrote into v.
func decode(b []byte, v any) error {
	if len(b) < sumSize {
		return damaged("a value of %d bytes is too short", len(b))
	}
	js := b[sumSize:]
	if crc32.Checksum(js, castagnoli) != binary.BigEndian.Uint32(b) {
		return damaged("a value does not agree with its sum")
	}
	var err error
	if e, ok := v.(*journal.Envelope); ok {
		*e, err = journal.ReadEnvelope(js)
	} else {
		err = json.Unmarshal(js, v)
	}
	if err != nil {
		return damaged("a value cannot be read: %v", err)
	}
	return nil
}

// envelope reads the envelope that must lie under ref.
func envelope(ref journal.Ref, b []byte) (journal.Envelope, error) {
	var e journal.Envelope
	if err := decode(b, &e); err != nil {
		return journal.Envelope{}, &journal.Error{Kind: journal.Corrupt, ID: ref.ID, Err: err}
	}
	if e.Ref() != ref {
		return journal.Envelope{}, &journal.Error{Kind: journal.Corrupt, ID: ref.ID, Err: damaged("another record lies in its place")}
	}
	return e, nil
}

// entryKey is the key of an entry within its trip. The ID comes first, so
// entries lie in the order of their IDs.
func entryKey(r journal.Ref) []byte { return append(r.ID[:], r.Kind...) }

func entryRef(trip journal.ID, key []byte) (journal.Ref, bool) {
	r := journal.Ref{Trip: trip}
	if len(key) <= len(r.ID) {
		return r, false
	}
	copy(r.ID[:], key)
	r.Kind = journal.Kind(key[len(r.ID):])
	return r, !r.ID.IsZero()
}

func recordRef(k journal.Kind, key []byte) (journal.Ref, bool) {
	r := journal.Ref{Kind: k}
	return r, copy(r.ID[:], key) == len(key) && len(key) == len(r.ID) && !r.ID.IsZero()
}

func seqKey(seq uint64) []byte { return binary.BigEndian.AppendUint64(nil, seq) }

// home returns the bucket of a record and its key there; the bucket is nil if
// it does not exist.
func home(tx *bolt.Tx, r journal.Ref) (*bolt.Bucket, []byte) {
	if r.Trip.IsZero() {
		return tx.Bucket(bucketRecords).Bucket([]byte(r.Kind)), r.ID[:]
	}
	return tx.Bucket(bucketTrips).Bucket(r.Trip[:]), entryKey(r)
}

// makeHome is home, creating the bucket.
func makeHome(tx *bolt.Tx, r journal.Ref) (*bolt.Bucket, []byte, error) {
	if r.Trip.IsZero() {
		b, err := tx.Bucket(bucketRecords).CreateBucketIfNotExists([]byte(r.Kind))
		return b, r.ID[:], err
	}
	b, err := tx.Bucket(bucketTrips).CreateBucketIfNotExists(r.Trip[:])
	return b, entryKey(r), err
}
