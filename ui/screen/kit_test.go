package screen

import (
	"io"
	"log/slog"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/ui/state"
)

// recall is a Remember in a map.
type recall map[string]string

func (r recall) Get(k string) string { return r[k] }
func (r recall) Set(k, v string)     { r[k] = v }

var noon = time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC)

// demoStore holds the demo, written once; each test has a journal on a copy.
var demoStore = func() *memory.Store {
	s := memory.New(journal.NewID())
	j, err := journal.Open(s, func() time.Time { return noon })
	if err == nil {
		err = demo.Write(j, demo.Seed)
	}
	if err != nil {
		panic(err)
	}
	return s
}

// newScreen makes a window on the demo, or on an empty journal, at a size.
func newScreen(t testing.TB, filled bool, w, h float32) *Screen {
	t.Helper()
	return newScreenWith(t, filled, w, h, recall{})
}

// newScreenWith does so with what was remembered.
func newScreenWith(t testing.TB, filled bool, w, h float32, r Remember) *Screen {
	t.Helper()
	a := test.NewTempApp(t)
	store := memory.New(journal.NewID())
	if filled {
		store = demoStore()
	}
	j, err := journal.Open(store, func() time.Time { return noon })
	require.NoError(t, err)
	d := state.New(j, func() time.Time { return noon })
	s := New(a, d, Options{Log: slog.New(slog.NewTextHandler(io.Discard, nil)), Version: "test", Journal: "/nowhere/journal.gloam", Remember: r})
	s.win.Resize(fyne.NewSize(w, h))
	t.Cleanup(s.win.Close)
	return s
}

// open opens the night of an evening.
func open(t testing.TB, s *Screen, evening string) {
	t.Helper()
	for i := range s.desk.NightCount() {
		if r := s.desk.NightRow(i); r.Evening.String() == evening {
			require.NoError(t, s.desk.Open(r.Trip))
			return
		}
	}
	t.Fatalf("the demo has no night of %s", evening)
}

// press sends a key where it would go.
func press(s *Screen, name fyne.KeyName) {
	e := &fyne.KeyEvent{Name: name}
	if f := s.win.Canvas().Focused(); f != nil {
		if tab, ok := f.(fyne.Tabbable); name == fyne.KeyTab && !(ok && tab.AcceptsTab()) {
			s.win.Canvas().FocusNext()
			return
		}
		f.TypedKey(e)
		return
	}
	s.win.Canvas().OnTypedKey()(e)
}

// write sends characters where they would go.
func write(s *Screen, text string) {
	for _, r := range text {
		if f := s.win.Canvas().Focused(); f != nil {
			f.TypedRune(r)
		} else {
			s.win.Canvas().OnTypedRune()(r)
		}
	}
}

// row finds a row of the card that is shown.
func row(t testing.TB, s *Screen, id string) *cardRow {
	t.Helper()
	for _, r := range s.card.rows {
		if r.id == id {
			return r
		}
	}
	t.Fatalf("the card shows no field %q", id)
	return nil
}
