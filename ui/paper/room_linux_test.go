package paper_test

import (
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/paper"
)

// Ensure that a file that cannot be written to its end is not left there cut short,
// nor are the pages before it. The system's limit on the size of files stands for a
// full disk.
func TestSaveCutShort(t *testing.T) {
	signal.Ignore(syscall.SIGXFSZ)
	defer signal.Reset(syscall.SIGXFSZ)
	var was syscall.Rlimit
	require.NoError(t, syscall.Getrlimit(syscall.RLIMIT_FSIZE, &was))
	// The second page holds more than the first and alone is too large.
	long := pages("one", "Sand Bend, Long Flat, Cauldron, Gate Pool, Yew Pool, Kirk Stream: 0123456789 äöü ½ ¾")
	whole, err := paper.Save(filepath.Join(t.TempDir(), "n.svg"), "", long)
	require.NoError(t, err)
	first, err := os.Stat(whole[0])
	require.NoError(t, err)
	second, err := os.Stat(whole[1])
	require.NoError(t, err)
	require.Greater(t, second.Size(), first.Size()+1000)

	dir := t.TempDir()
	limit := func(n uint64) {
		require.NoError(t, syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: n, Max: was.Max}))
	}
	defer limit(was.Cur)
	for _, n := range []int64{0, 100, first.Size() - 1, first.Size(), second.Size() - 1} {
		limit(uint64(n))
		names, err := paper.Save(filepath.Join(dir, "n.svg"), "", long)
		limit(was.Cur)
		assert.ErrorIs(t, err, syscall.EFBIG, "%d bytes", n)
		assert.Empty(t, names)
		assert.Empty(t, left(t, dir), "%d bytes", n)
	}
	limit(uint64(second.Size()))
	_, err = paper.Save(filepath.Join(dir, "n.svg"), "", long)
	limit(was.Cur)
	require.NoError(t, err)
	assert.Len(t, left(t, dir), 2)
}
