package sketch

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/geo"
)

// Ensure that no bytes make reading or checking panic, and that what is read is
// written by the standard and reads back equal.
func FuzzRead(f *testing.F) {
	files, _ := filepath.Glob("testdata/*.geojson")
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		if len(data) < 2000 { // a whole beat makes every step slow
			f.Add(data)
		}
	}
	for _, s := range []string{
		`{"type":"Feature","id":1,"properties":{"id":2,"journal_id":"738eb1778485a275993269cd4f123846"},"geometry":null}`,
		`{"type":"FeatureCollection","id":{},"zone":{},"features":[{"type":"Feature","properties":{"zone":"Europe/London","role":[],"order":"7"},"geometry":{"type":"Polygon","bbox":1,"coordinates":[[[1,2,3],[1,2,4],[1,2],[3,4,5]]]}}]}`,
		`{"type":"Feature","properties":{"role":"pool","head":[0,0],"tail":[1,2],"skyline":[[1,2]]},"geometry":{"type":"LineString","coordinates":[[3,4,9],[1,4],[1,2],[3,4]]}}`,
		`{"type":"GeometryCollection","x":1,"geometries":[{"type":"MultiPoint","coordinates":[[179,1],[-179,2,7]]},{"type":"LineString","coordinates":[[1,2,3],[1,2,4]]}]}`,
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		b, warnings, err := Read(bytes.NewReader(data))
		if err != nil {
			return
		}
		for _, w := range warnings {
			_ = w.String()
		}
		var buf bytes.Buffer
		if err := Write(&buf, b); err != nil {
			t.Fatalf("read but not written: %v", err)
		}
		text := buf.String()
		if err := strict(buf.Bytes()); err != nil {
			t.Fatalf("%v in %s", err, text)
		}
		back, _, err := Read(&buf)
		if err != nil {
			t.Fatalf("written but not read: %v in %s", err, text)
		}
		if !assert.ObjectsAreEqual(b, back) {
			t.Fatalf("wrote %+v\nread %+v\nas %s", b, back, text)
		}
		geo.Check(b)
	})
}
