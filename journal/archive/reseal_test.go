package archive_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/archive"
)

// reseal gives an archive the count and the sum that its content has. It sums as
// doc.go says, in its own words.
func reseal(t testing.TB, text []byte) []byte {
	var a struct {
		Changes, Records []json.RawMessage
	}
	require.NoError(t, json.Unmarshal(text, &a))
	h := sha256.New()
	for _, js := range append(append([]json.RawMessage{}, a.Changes...), a.Records...) {
		var b bytes.Buffer
		require.NoError(t, json.Compact(&b, js))
		fmt.Fprintf(h, "%s\n", b.Bytes())
	}
	end := bytes.LastIndex(text, []byte(`"count"`))
	return fmt.Appendf(bytes.Clone(text[:end]), "\"count\":{\"changes\":%d,\"records\":%d},\n\"sum\":\"%x\"}\n", len(a.Changes), len(a.Records), h.Sum(nil))
}

// Ensure that sealing anew what was not altered changes nothing: the sum is what the
// documentation says.
func TestSumAsDocumented(t *testing.T) {
	text, _ := written(t, lived(t, 1, 20))
	require.Equal(t, string(text), string(reseal(t, text)))
}

// Whatever bytes come, reading ends, and what it accepts can be summed again.
func FuzzRead(f *testing.F) {
	text, _ := written(f, lived(f, 1, 3))
	f.Add(text)
	f.Add([]byte(`{"gloamline archive":1,"copy":"00000000000000000000000000000001","created":"","written":"","changes":[{"edits":[{"after":null}]}],"records":[],"count":{},"sum":""}`))
	f.Fuzz(func(t *testing.T, b []byte) {
		keepC := func(journal.Change) error { return nil }
		keepR := func(journal.Envelope) error { return nil }
		if _, _, err := archive.Read(bytes.NewReader(b), keepC, keepR); err == nil {
			require.True(t, json.Valid(b))
		}
	})
}
