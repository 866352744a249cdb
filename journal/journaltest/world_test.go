package journaltest_test

import (
	"fmt"
	"reflect"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/journaltest"
	"gloamline/journal/memory"
)

// made makes a base, every kind that stands by itself, and a night of every
// kind of entry, through the journal's own checks.
func made(t testing.TB, seed uint64) []journal.Record {
	w := journaltest.New(seed)
	j, err := journal.Open(memory.New(w.ID()), time.Now)
	require.NoError(t, err)
	var all []journal.Record
	do := func(rs ...journal.Record) {
		_, err := j.Do("write", journal.Batch{Put: rs})
		require.NoError(t, err, "seed %d", seed)
		all = append(all, rs...)
	}
	do(w.Base()...)
	for _, k := range journal.RecordKinds {
		r := w.Record(k)
		do(r)
		do(w.Vary(r))
	}
	trip := w.Record(journal.KindTrip).(journal.Trip)
	do(trip)
	n := w.Night(trip)
	for _, e := range n.Fill(40) {
		do(e)
	}
	for i, e := range n.Entries {
		n.Entries[i] = n.Vary(e)
		do(n.Entries[i])
	}
	return all
}

// Ensure that everything made is valid, alone and together, also when varied.
// Over some seeds every exported field of every kind is filled at least once, so
// that a new field cannot be forgotten here.
func TestValid(t *testing.T) {
	filled := map[string]bool{}
	kinds := map[journal.Kind]bool{}
	for seed := range uint64(10) {
		for _, r := range made(t, seed) {
			kinds[r.Ref().Kind] = true
			note(filled, reflect.TypeOf(r).Name(), reflect.ValueOf(r))
		}
	}
	for _, k := range append(journal.RecordKinds, journal.EntryKinds...) {
		require.True(t, kinds[k], "no record of kind %s", k)
	}
	for name, ok := range filled {
		require.True(t, ok, "%s is never filled", name)
	}
}

// Ensure that a seed makes the same again, and another makes others.
func TestSeed(t *testing.T) {
	require.Equal(t, made(t, 1), made(t, 1))
	require.NotEqual(t, made(t, 1), made(t, 2))
}

func note(filled map[string]bool, name string, v reflect.Value) {
	for i := range v.NumField() {
		f := v.Type().Field(i)
		if f.Anonymous {
			note(filled, name, v.Field(i))
			continue
		}
		if !f.IsExported() {
			continue
		}
		at := fmt.Sprintf("%s.%s", name, f.Name)
		filled[at] = filled[at] || !v.Field(i).IsZero()
		if f.Type.Kind() != reflect.Slice || f.Type.Elem().Kind() != reflect.Struct {
			continue
		}
		for k := range v.Field(i).Len() {
			note(filled, at, v.Field(i).Index(k))
		}
	}
}
