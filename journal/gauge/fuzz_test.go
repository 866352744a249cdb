package gauge_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal/gauge"
)

// Ensure that no bytes bring the reader down, and that what it returns keeps its word:
// order of time, no instant twice, finite values, lines within the file.
func FuzzRead(f *testing.F) {
	names, err := filepath.Glob("testdata/*/*.*")
	require.NoError(f, err)
	require.NotEmpty(f, names)
	for _, n := range names {
		data, err := os.ReadFile(n)
		require.NoError(f, err)
		f.Add(data[:min(len(data), 2000)])
	}
	f.Add([]byte("Tid;Vattenst\xe5nd (cm)\n2025-07-14 21:00;64,2\n"))
	f.Add([]byte("\xff\xfea\x00;\x00"))
	f.Add([]byte(`[[[[{"data":[[1,{}]]}]]]]`))
	loc := zone(f, "Europe/London")
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := gauge.Read(bytes.NewReader(data), gauge.Options{Zone: loc})
		require.NotNil(t, file)
		if err != nil {
			require.NotEmpty(t, err.Error())
		}
		for _, s := range file.Series {
			last := time.Time{}
			for _, p := range s.Points {
				require.True(t, last.IsZero() || p.At.After(last))
				require.False(t, math.IsNaN(float64(p.Level)) || math.IsInf(float64(p.Level), 0) || math.IsNaN(p.FlowM3s))
				require.Positive(t, p.Line)
				last = p.At
			}
		}
	})
}

// yearCSV is a year of quarter hours as the English service writes them.
func yearCSV() []byte {
	var b bytes.Buffer
	b.WriteString("dateTime,measure,value\n")
	at := time.Date(2025, 1, 1, 0, 0, 0, 0, time.UTC)
	for i := range 35040 {
		fmt.Fprintf(&b, "%s,http://environment.data.gov.uk/flood-monitoring/id/measures/000000-level-stage-i-15_min-m,%.3f\n", at.Format(time.RFC3339), 0.6+0.3*math.Sin(float64(i)/500))
		at = at.Add(15 * time.Minute)
	}
	return b.Bytes()
}

func BenchmarkReadYear(b *testing.B) {
	data := yearCSV()
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		f, err := gauge.Read(bytes.NewReader(data), gauge.Options{})
		if err != nil || len(f.Series[0].Points) != 35040 {
			b.Fatal(err)
		}
	}
}

func BenchmarkReadYearLocal(b *testing.B) {
	var s strings.Builder
	s.WriteString("when;level (cm)\n")
	at := time.Date(2025, 1, 1, 0, 0, 0, 0, zone(b, "Europe/London"))
	for range 35040 {
		fmt.Fprintf(&s, "%s;64,2\n", at.Format("02.01.2006 15:04"))
		at = at.Add(15 * time.Minute)
	}
	loc := zone(b, "Europe/London")
	b.ReportAllocs()
	for b.Loop() {
		if f, err := gauge.Read(strings.NewReader(s.String()), gauge.Options{Zone: loc}); err != nil || len(f.Series[0].Points) != 35040 {
			b.Fatal(err, len(f.Series[0].Points))
		}
	}
}
