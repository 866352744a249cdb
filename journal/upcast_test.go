package journal

import (
	"bytes"
	"encoding/json"
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that the codecs are those of the listed kinds and that each can lift
// every earlier version.
func TestCodecs(t *testing.T) {
	assert.Len(t, codecs, len(RecordKinds)+len(EntryKinds))
	for _, k := range append(append([]Kind{}, RecordKinds...), EntryKinds...) {
		c, ok := codecs[k]
		require.True(t, ok, k)
		assert.GreaterOrEqual(t, c.version, 1)
		assert.Len(t, c.upcasters, c.version-1, "%s: one upcaster for each earlier version", k)
		assert.Equal(t, c.version, versions[k])
	}
}

// Ensure that a record of an early version passes through every upcaster after
// its own, in order, and no other.
func TestUpcasterChain(t *testing.T) {
	swap := func(old, new string) func(json.RawMessage) (json.RawMessage, error) {
		return func(b json.RawMessage) (json.RawMessage, error) {
			if !bytes.Contains(b, []byte(old)) {
				return nil, errors.New("this is not " + old)
			}
			return bytes.Replace(b, []byte(old), []byte(new), 1), nil
		}
	}
	// version 1 called a person's name "who", version 2 "called", version 3 "name"
	c := codec{3, reader[Person], []func(json.RawMessage) (json.RawMessage, error){swap(`"who"`, `"called"`), swap(`"called"`, `"name"`)}}
	id := NewID()
	for version, member := range map[int]string{1: "who", 2: "called", 3: "name"} {
		e := Envelope{Version: version, Kind: KindPerson, ID: id, Body: json.RawMessage(`{"id":"` + id.String() + `","` + member + `":"Anna"}`)}
		before := string(e.Body)
		r, err := c.unseal(e)
		require.NoError(t, err)
		assert.Equal(t, Person{ID: id, Name: "Anna"}, r)
		assert.Equal(t, before, string(e.Body), "upcasters leave what lies in the file")
	}
	_, err := c.unseal(Envelope{Version: 1, Kind: KindPerson, ID: id, Body: json.RawMessage(`{"name":"Anna"}`)})
	assert.Equal(t, Corrupt, KindOf(err))
	_, err = c.unseal(Envelope{Version: 4, Kind: KindPerson, ID: id, Body: json.RawMessage(`{}`)})
	assert.Equal(t, Newer, KindOf(err))
}

// slip is a record whose writer and reader do not agree.
type slip struct {
	Person
	json string
}

func (s slip) MarshalJSON() ([]byte, error) { return []byte(s.json), nil }

// Ensure that a record which would not come back as it was is refused before it
// is stored.
func TestSealedReadsBack(t *testing.T) {
	id := NewID()
	for name, body := range map[string]string{
		"another spelling": `{"id":"` + id.String() + `","NAME":"Anna"}`,
		"unknown member":   `{"id":"` + id.String() + `","name":"Anna","age":3}`,
		"another identity": `{"id":"` + NewID().String() + `","name":"Anna"}`,
		"no JSON":          `{`,
	} {
		_, err := sealed(slip{Person{ID: id}, body})
		require.Error(t, err, name)
		assert.Equal(t, Internal, KindOf(err), name)
	}
	_, err := sealed(slip{Person{ID: id}, `{"id":"` + id.String() + `","name":"Anna"}`})
	assert.NoError(t, err)
}
