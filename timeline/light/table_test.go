package light

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// row is one line of a check table by column name.
type row map[string]string

// table reads a file of testdata/light; lines that begin with # are comments.
func table(t testing.TB, name string) []row {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "light", name))
	require.NoError(t, err)
	var lines []string
	for line := range strings.Lines(string(data)) {
		if !strings.HasPrefix(line, "#") {
			lines = append(lines, line)
		}
	}
	records, err := csv.NewReader(strings.NewReader(strings.Join(lines, ""))).ReadAll()
	require.NoError(t, err)
	var rows []row
	for _, rec := range records[1:] {
		r := row{}
		for i, name := range records[0] {
			r[name] = rec[i]
		}
		rows = append(rows, r)
	}
	require.NotEmpty(t, rows)
	return rows
}

func (r row) num(t testing.TB, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	require.NoError(t, err, "%s of %v", column, r)
	return v
}

func (r row) time(t testing.TB, column string) time.Time {
	t.Helper()
	v, err := time.Parse(time.RFC3339Nano, r[column])
	require.NoError(t, err, "%s of %v", column, r)
	return v
}
