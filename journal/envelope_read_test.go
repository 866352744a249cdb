package journal_test

import (
	"encoding/json"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
)

// asEver reads a record from an envelope as encoding/json reads it.
func asEver(js []byte) (journal.Record, journal.Envelope, error) {
	var e journal.Envelope
	if err := json.Unmarshal(js, &e); err != nil {
		return nil, e, err
	}
	r, err := journal.Unseal(e)
	return r, e, err
}

func sameRecord(t require.TestingT, js []byte) {
	want, env, err := asEver(js)
	e, fault := journal.ReadEnvelope(js)
	var got journal.Record
	if fault == nil {
		got, fault = journal.Unseal(e)
	}
	require.Equal(t, err == nil, fault == nil, "%s: %v, %v", js, err, fault)
	if err == nil {
		require.Equal(t, want, got)
		require.Equal(t, env, e)
	}
}

// Ensure that an envelope of every kind, and a tombstone, reads as encoding/json reads it, and
// shares no memory with what it was read from.
func TestReadEnvelope(t *testing.T) {
	for _, name := range envelopes(t) {
		js := readFile(t, name)
		js = js[:len(js)-1]
		sameRecord(t, js)
		e, err := journal.ReadEnvelope(js)
		require.NoError(t, err)
		before := string(e.Body)
		for i := range js {
			js[i] = 'x'
		}
		require.Equal(t, before, string(e.Body))
		gone, err := json.Marshal(journal.Tombstone(e.Ref()))
		require.NoError(t, err)
		back, err := journal.ReadEnvelope(gone)
		require.NoError(t, err)
		assert.Equal(t, journal.Tombstone(e.Ref()), back)
	}
	for _, js := range []string{
		``, `{}`, `null`, `{"v":1}`, `{"v":1,"kind":"note","id":"","body":{}}`,
		`{"v":1,"kind":"person","id":"00000000000000000000000000000001","body":{"id":"00000000000000000000000000000001"}}`,
		`{"v":1,"kind":"person","id":"00000000000000000000000000000001","body":{"id":"00000000000000000000000000000001"},"more":{}}`,
		`{"v":1,"kind":"person","id":"00000000000000000000000000000001","body":{"id":"00000000000000000000000000000001"},"gone":true}`,
		`{"v":1,"kind":"person","id":"00000000000000000000000000000001","body":{"id":"00000000000000000000000000000001"}}}`,
		`{"v":1,"kind":"person","id":"00000000000000000000000000000001","body":{"id":"00000000000000000000000000000001","name":"}"}}`,
		`{"v":1,"kind":"person","id":"00000000000000000000000000000001","body":{"id":"00000000000000000000000000000001","name":"\"}{"}}`,
		`{"v":1,"kind":"person","id":"00000000000000000000000000000001","body":{"id":}}`,
		`{"v":1,"kind":"person","id":"0000000000000000000000000000000G","body":{"id":"00000000000000000000000000000001"}}`,
		`{"v":1,"kind":"dream","id":"00000000000000000000000000000001","body":{"id":"00000000000000000000000000000001"}}`,
		`{"v":12,"kind":"person","id":"00000000000000000000000000000001","body":{"id":"00000000000000000000000000000001"}}`,
	} {
		sameRecord(t, []byte(js))
	}
}

// Ensure that no envelope, however damaged, reads as another record than it does with
// encoding/json, or as one where that finds none.
func TestReadEnvelopeDamaged(t *testing.T) {
	names := envelopes(t)
	rapid.Check(t, func(rt *rapid.T) {
		js := readFile(t, rapid.SampledFrom(names).Draw(rt, "of"))
		js = js[:len(js)-1]
		for range rapid.IntRange(0, 3).Draw(rt, "times") {
			at := rapid.IntRange(0, len(js)-1).Draw(rt, "at")
			c := rapid.SampledFrom([]byte(`{}[]",:\0a1 `+"\n\x80")).Draw(rt, "to")
			switch rapid.IntRange(0, 2).Draw(rt, "how") {
			case 0:
				js[at] = c
			case 1:
				js = slices.Insert(js, at, c)
			default:
				js = slices.Delete(js, at, min(at+rapid.IntRange(1, 20).Draw(rt, "cut"), len(js)-1))
			}
		}
		sameRecord(rt, js)
	})
}

// Ensure that reading goes on as it should after a fault, after something that follows, and
// after a long text.
func TestReadAfterAFault(t *testing.T) {
	id := journal.NewID()
	body := func(name, after string) journal.Envelope {
		js := `{"id":"` + id.String() + `","name":"` + name + `"}` + after
		return journal.Envelope{Version: 1, Kind: journal.KindPerson, ID: id, Body: json.RawMessage(js)}
	}
	long := string(slices.Repeat([]byte("a"), 60_000))
	for range 3 {
		for _, x := range []struct {
			e  journal.Envelope
			ok bool
		}{
			{body("Anna", ""), true}, {body("Anna", " \n"), true}, {body("Anna", "{}"), false}, {body("Colm", ""), true},
			{body("An\"na", ""), false}, {body(long, ""), true}, {body(long+long, ""), true}, {body("Anna", " x"), false}, {body("Anna", ""), true},
		} {
			r, err := journal.Unseal(x.e)
			require.Equal(t, x.ok, err == nil)
			if x.ok {
				require.Equal(t, id, r.Ref().ID)
			}
		}
	}
}
