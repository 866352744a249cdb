package geo

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestID(t *testing.T) {
	seen := map[ID]bool{}
	for range 1000 {
		id := NewID()
		require.False(t, id.IsZero())
		require.False(t, seen[id])
		seen[id] = true
		require.Regexp(t, "^[0-9a-f]{32}$", id.String())
		again, err := ParseID(id.String())
		require.NoError(t, err)
		require.Equal(t, id, again)
	}
	id, err := ParseID("738EB1778485a275993269cd4f123846")
	require.NoError(t, err)
	assert.Equal(t, "738eb1778485a275993269cd4f123846", id.String())
	for _, bad := range []string{"1", "738eb1778485a275993269cd4f12384", "738eb1778485a275993269cd4f12384g", "738eb177-8485-a275-9932-69cd4f123846"} {
		_, err := ParseID(bad)
		assert.Error(t, err, bad)
	}
}

// Ensure that an ID is text in JSON, as a value and as a key, and none is empty text.
func TestIDJSON(t *testing.T) {
	id := ID{0: 0xab, 15: 1}
	in := map[ID]ID{id: {}}
	b, err := json.Marshal(in)
	require.NoError(t, err)
	assert.Equal(t, `{"ab000000000000000000000000000001":""}`, string(b))
	var out map[ID]ID
	require.NoError(t, json.Unmarshal(b, &out))
	assert.Equal(t, in, out)
	var bad ID
	assert.Error(t, json.Unmarshal([]byte(`"zz"`), &bad))
}
