package journal_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

var regen = flag.Bool("regen", false, "write golden files that are missing; those that exist are never changed")

// envelopes are the golden files: what each version of each kind looks like in a
// journal. They are never rewritten. A new version of a kind gets a file of its
// own, and this test then proves that the old one is still read.
func envelopes(t testing.TB) []string {
	names, err := filepath.Glob("testdata/envelopes/*.json")
	require.NoError(t, err)
	return names
}

func TestEnvelopeGoldens(t *testing.T) {
	if *regen {
		require.NoError(t, os.MkdirAll("testdata/envelopes", 0o755))
		for _, k := range allKinds() {
			e, err := journal.Seal(sample(k))
			require.NoError(t, err)
			name := fmt.Sprintf("testdata/envelopes/%s.v%d.json", k, e.Version)
			if _, err := os.Stat(name); err == nil {
				continue
			}
			b, err := json.Marshal(e)
			require.NoError(t, err)
			require.NoError(t, os.WriteFile(name, append(b, '\n'), 0o644))
		}
	}
	seen := map[journal.Kind]bool{}
	for _, name := range envelopes(t) {
		t.Run(filepath.Base(name), func(t *testing.T) {
			var e journal.Envelope
			require.NoError(t, json.Unmarshal(readFile(t, name), &e))
			r, err := journal.Unseal(e)
			require.NoError(t, err)
			assert.NoError(t, journal.Check(r))
			again, err := journal.Seal(r)
			require.NoError(t, err)
			if again.Version == e.Version {
				b, err := json.Marshal(again)
				require.NoError(t, err)
				assert.Equal(t, string(readFile(t, name)), string(b)+"\n")
				assert.Equal(t, sample(e.Kind), r, "the file says all that the sample says")
			}
			seen[e.Kind] = true
		})
	}
	for _, k := range allKinds() {
		assert.True(t, seen[k], "no golden file for a %s", k)
	}
}

// Ensure that the samples fill every member of every kind, so that the goldens
// hold them all.
func TestSamplesAreFull(t *testing.T) {
	filled := map[string]bool{}
	var all []string
	var walk func(name string, v reflect.Value)
	walk = func(name string, v reflect.Value) {
		if v.Kind() != reflect.Struct || !strings.HasPrefix(v.Type().PkgPath(), "gloamline/") || v.NumField() > 0 && !v.Type().Field(0).IsExported() {
			return
		}
		for i := range v.NumField() {
			f := v.Type().Field(i)
			field := name + "." + f.Name
			all = append(all, field)
			filled[field] = filled[field] || !v.Field(i).IsZero()
			walk(field, v.Field(i))
			if v.Field(i).Kind() == reflect.Slice {
				for j := range v.Field(i).Len() {
					walk(field, v.Field(i).Index(j))
				}
			}
		}
	}
	mayBeZero := map[string]bool{} // 0 is a position like another
	for _, r := range samples() {
		name := reflect.TypeOf(r).Name()
		walk(name, reflect.ValueOf(r))
		if h, ok := r.(journal.Entry); ok && h.Base().Rod.IsZero() {
			mayBeZero[name+".Head.Rod"] = true
		}
	}
	for _, f := range all {
		if strings.Contains(f, ".When.Anchors") || strings.Contains(f, "Until.Anchors") || mayBeZero[f] {
			continue // an exact time hangs on nothing
		}
		assert.True(t, filled[f], "%s is nowhere filled", f)
	}
}

// Ensure that every sample comes back as it was, and is valid.
func TestSealUnseal(t *testing.T) {
	for _, r := range samples() {
		require.NoError(t, journal.Check(r), "%s", r.Ref().Kind)
		e, err := journal.Seal(r)
		require.NoError(t, err)
		assert.Equal(t, r.Ref(), e.Ref())
		back, err := journal.Unseal(e)
		require.NoError(t, err)
		assert.Equal(t, r, back)
		bare, _ := journal.Prototype(r.Ref().Kind)
		b, err := json.Marshal(bare)
		require.NoError(t, err)
		assert.NotContains(t, string(b), "null", "an empty %s says nothing of what is unknown", r.Ref().Kind)
	}
}

// Ensure that what the program cannot know is refused as Newer and what is
// damaged as Corrupt.
func TestUnsealRefuses(t *testing.T) {
	good, err := journal.Seal(run("run", "anna", at(23, 0)))
	require.NoError(t, err)
	with := func(f func(*journal.Envelope)) journal.Envelope {
		e := good
		f(&e)
		return e
	}
	body := func(old, new string) journal.Envelope {
		return with(func(e *journal.Envelope) {
			e.Body = bytes.Replace(e.Body, []byte(old), []byte(new), 1)
			require.NotEqual(t, good.Body, e.Body)
		})
	}
	for name, c := range map[string]struct {
		e    journal.Envelope
		kind journal.Fail
	}{
		"unknown kind":         {with(func(e *journal.Envelope) { e.Kind = "kite" }), journal.Newer},
		"newer version":        {with(func(e *journal.Envelope) { e.Version = 2 }), journal.Newer},
		"newer tombstone":      {with(func(e *journal.Envelope) { e.Version, e.Gone = 2, true }), journal.Newer},
		"no version":           {with(func(e *journal.Envelope) { e.Version = 0 }), journal.Corrupt},
		"removed":              {journal.Tombstone(good.Ref()), journal.NotFound},
		"no body":              {with(func(e *journal.Envelope) { e.Body = nil }), journal.Corrupt},
		"cut short":            {with(func(e *journal.Envelope) { e.Body = e.Body[:20] }), journal.Corrupt},
		"something follows":    {with(func(e *journal.Envelope) { e.Body = append(bytes.Clone(e.Body), "{}"...) }), journal.Corrupt},
		"null":                 {with(func(e *journal.Envelope) { e.Body = json.RawMessage("null") }), journal.Corrupt},
		"unknown member":       {body(`"pool"`, `"moon":3,"pool"`), journal.Corrupt},
		"unknown inner member": {body(`"kind":"exact"`, `"kind":"exact","doubt":1`), journal.Corrupt},
		"another type":         {body(`"`+id("alder pool").String()+`"`, `7`), journal.Corrupt},
		"another identity":     {with(func(e *journal.Envelope) { e.ID = id("other") }), journal.Corrupt},
		"another night":        {with(func(e *journal.Envelope) { e.Trip = id("other") }), journal.Corrupt},
		"another kind":         {with(func(e *journal.Envelope) { e.Kind = journal.KindSky }), journal.Corrupt},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := journal.Unseal(c.e)
			require.Error(t, err)
			assert.Equal(t, c.kind, journal.KindOf(err), "%v", err)
		})
	}
}

// Ensure that the lists of kinds, the codecs and the types agree.
func TestKinds(t *testing.T) {
	assert.Len(t, journal.RecordKinds, 11)
	assert.Len(t, journal.EntryKinds, 13)
	seen := map[journal.Kind]bool{}
	for _, k := range allKinds() {
		assert.False(t, seen[k], "%s stands twice", k)
		seen[k] = true
		r, ok := journal.Prototype(k)
		require.True(t, ok, k)
		assert.Equal(t, journal.Ref{Kind: k}, r.Ref())
		assert.NotNil(t, sample(k), "no sample of a %s", k)
		assert.Error(t, journal.Check(r), "an empty %s is not valid", k)
	}
	for _, k := range journal.EntryKinds {
		r, _ := journal.Prototype(k)
		e, ok := r.(journal.Entry)
		require.True(t, ok, "%s belongs to a trip", k)
		h := head("x", "anna", at(23, 0))
		assert.Equal(t, h, e.WithHead(h).Base(), k)
		assert.Equal(t, journal.Ref{Kind: k, Trip: id("trip"), ID: id("x")}, e.WithHead(h).Ref())
	}
	for _, k := range journal.RecordKinds {
		r, _ := journal.Prototype(k)
		_, ok := r.(journal.Entry)
		assert.False(t, ok, "%s stands by itself", k)
	}
	_, ok := journal.Prototype("kite")
	assert.False(t, ok)
}

func TestTombstone(t *testing.T) {
	e := journal.Tombstone(sample(journal.KindFly).Ref())
	b, err := json.Marshal(e)
	require.NoError(t, err)
	assert.Equal(t, `{"v":1,"kind":"fly","id":"`+id("dark fly").String()+`","gone":true}`, string(b))
}

func FuzzEnvelope(f *testing.F) {
	for _, name := range envelopes(f) {
		f.Add(readFile(f, name))
	}
	f.Add([]byte(`{"v":1,"kind":"trip","id":""}`))
	f.Add([]byte(`{"v":1,"kind":"trip","id":"","body":null}`))
	f.Fuzz(func(t *testing.T, b []byte) {
		var e journal.Envelope
		if json.Unmarshal(b, &e) != nil {
			return
		}
		r, err := journal.Unseal(e)
		if err != nil {
			assert.Contains(t, []journal.Fail{journal.Newer, journal.Corrupt, journal.NotFound}, journal.KindOf(err))
			return
		}
		again, err := journal.Seal(r)
		if err != nil {
			assert.Error(t, journal.Check(r), "what cannot be written is not valid: %v", err)
			return
		}
		back, err := journal.Unseal(again)
		require.NoError(t, err)
		twice, err := journal.Seal(back)
		require.NoError(t, err)
		assert.True(t, again.Equal(twice), "%s\n%s", again.Body, twice.Body)
	})
}

func benchmarkUnseal(b *testing.B, k journal.Kind) {
	e, err := journal.Seal(sample(k))
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := journal.Unseal(e); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkUnsealRun(b *testing.B)     { benchmarkUnseal(b, journal.KindRun) }
func BenchmarkUnsealContact(b *testing.B) { benchmarkUnseal(b, journal.KindContact) }
