package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"time"

	"fyne.io/fyne/v2"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/photo"
	"gloamline/journal/store"
	"gloamline/ui/screen"
	"gloamline/ui/state"
	"gloamline/ui/words"
)

// house holds the one journal that is open and its window.
type house struct {
	asked  asked
	diary  diary
	stderr io.Writer
	app    fyne.App
	store  *store.Store
	screen *screen.Screen
}

func newHouse(a asked, d diary, stderr io.Writer) *house {
	return &house{asked: a, diary: d, stderr: stderr}
}

// run opens a journal in a window and returns when the last window is closed.
func (h *house) run(path string) int {
	h.app = newApp()
	code := done
	if err := h.first(path); err != nil {
		h.diary.Info("the journal does not open", "file", path, "error", err)
		what, do := words.ExplainFile(err, path)
		fmt.Fprintf(h.stderr, "%s\n%s\n", what, do)
		code = broken
		screen.ShowFault(h.app, screen.Fault{Err: err, Path: path, Look: h.look(path), Open: func(other string) error {
			err := h.open(other)
			if err == nil {
				code = done
			}
			return err
		}}).Show()
	}
	if h.asked.verbose {
		onAsked(h.tell, h.tellMemory)
	}
	h.app.Lifecycle().SetOnStarted(func() { h.diary.Debug("shown") })
	h.app.Run()
	h.close()
	h.diary.Info("ended")
	return code
}

// first opens the journal asked for on the command line, at the night asked for.
func (h *house) first(path string) error {
	night := h.asked.night
	if h.asked.demo {
		if !exists(path) {
			fmt.Fprintln(h.stderr, "Making the demo journal; this takes a few seconds the first time.")
			if err := makeDemo(path); err != nil {
				return err
			}
		}
		if m := (memory{h.app.Preferences(), path}); night == "" && m.Get("night") == "" {
			night = demo.Show.String()
		}
	}
	return h.show(path, night)
}

// open opens another journal in place of the one that is open.
func (h *house) open(path string) error { return h.show(path, "") }

// show opens a journal, beginning it if there is none, at the night of an evening or,
// without one, where it was left. The journal that was open before stays if this one
// cannot be opened.
func (h *house) show(path, evening string) error {
	j, s, err := openJournal(path, h.asked.reading)
	if err != nil {
		return err
	}
	j.Subscribe(func(c journal.Change) {
		h.diary.Info("stored", "seq", c.Seq, "did", c.Did, "undo", !c.Undo.IsZero(), "redo", !c.Redo.IsZero())
	})
	desk := state.New(j, time.Now)
	desk.SetReadOnly(s.ReadOnly())
	originals := album.Beside(path)
	desk.SetAlbum(originals)
	mem := memory{h.app.Preferences(), path}
	desk.SetLook(h.look(path))
	if evening != "" && !openNight(desk, evening) {
		fmt.Fprintf(h.stderr, "gloamline: this journal has no night of %s.\n", evening)
	}
	before, beforeStore := h.screen, h.store
	h.store = s
	h.screen = screen.New(h.app, desk, screen.Options{
		Log: h.diary.Logger, Version: version, Journal: path, Crash: h.diary.Crash, Remember: mem,
		OpenJournal: h.open,
		Drafts:      draftsOf(path),
		Keep:        state.NewKeep(desk, s),
		PutBack:     func(from string) error { return h.putBack(path, from) },
		Backup: func(to string) error { // the journal first: it is checked, and names what belongs to it
			if err := s.Backup(to); err != nil {
				return err
			}
			_, err := originals.CopyTo(album.Beside(to))
			return err
		},
	})
	h.diary.Crash = "" // told once
	h.screen.Window().Show()
	h.diary.Info("journal open", "file", path, "reading", s.ReadOnly())
	h.backUp(s, time.Now(), h.screen.Tell)
	if before != nil {
		before.Window().Close()
	}
	if beforeStore != nil {
		_ = beforeStore.Close()
	}
	return nil
}

// look is the look asked for, else the one that was used last on this machine, which is known without a journal.
func (h *house) look(path string) string {
	if h.asked.look != "" {
		return h.asked.look
	}
	return memory{h.app.Preferences(), path}.Get("look")
}

// putBack puts a copy in the place of the journal that is open, which is kept beside it, and
// opens it. If that cannot be, the journal is opened again as it was.
func (h *house) putBack(path, from string) error {
	if err := h.store.Close(); err != nil {
		return err
	}
	kept, err := state.PutBack(path, from, time.Now())
	if again := h.show(path, ""); again != nil {
		return errors.Join(err, again)
	}
	if err != nil {
		what, do := words.ExplainFile(err, from)
		h.screen.Message(what, do)
		return nil
	}
	h.diary.Info("put back", "from", from, "kept", kept)
	h.screen.Message(words.RestoreDone(), words.PutBackDone(kept))
	return nil
}

// openNight opens the night of an evening and reports whether there is one.
func openNight(d *state.Desk, evening string) bool {
	for i := range d.NightCount() {
		if r := d.NightRow(i); r.Evening.String() == evening {
			return d.Open(r.Trip) == nil
		}
	}
	return false
}

// tellMemory writes into the log how much memory is in use after what is no longer needed
// was given back.
func (h *house) tellMemory() {
	var m runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&m)
	h.diary.Debug("memory", "heap", m.HeapAlloc, "goroutines", runtime.NumGoroutine())
}

// tell writes into the log what can be pointed at in the window.
func (h *house) tell() {
	if s := h.screen; s != nil {
		s.TellRegions()
	}
}

func (h *house) close() {
	if h.store != nil {
		if err := h.store.Close(); err != nil {
			h.diary.Error("the journal does not close", "error", err)
		}
	}
}

// openJournal opens a file or begins it. One that may not be written, or of which
// nothing but reading is asked, is opened for reading.
func openJournal(path string, reading bool) (*journal.Journal, *store.Store, error) {
	open, opts := store.Open, store.Options{Now: time.Now, ReadOnly: reading}
	if !exists(path) && !reading {
		open = store.Create
	}
	s, err := open(path, opts)
	if journal.KindOf(err) == journal.ReadOnly && exists(path) && !reading {
		opts.ReadOnly = true
		s, err = store.Open(path, opts)
	}
	if err != nil {
		return nil, nil, err
	}
	j, err := journal.Open(s, time.Now)
	if err != nil {
		_ = s.Close()
		return nil, nil, err
	}
	return j, s, nil
}

// makeDemo writes the demo beside its place and then puts it there, so that one cut
// short is never taken for the whole.
func makeDemo(path string) error {
	part, err := os.MkdirTemp(filepath.Dir(path), ".demo-*")
	if err != nil {
		return err
	}
	defer os.RemoveAll(part)
	made := filepath.Join(part, filepath.Base(path))
	j, s, err := openJournal(made, false)
	if err != nil {
		return err
	}
	err = demo.Write(j, demo.Seed)
	if cerr := s.Close(); err == nil {
		err = cerr
	}
	if err == nil {
		err = layOriginals(part, album.Beside(path))
	}
	if err != nil {
		return err
	}
	// A link overwrites nothing; where the disk knows no links the file is moved.
	if err := os.Link(made, path); err == nil || exists(path) {
		return err
	}
	return os.Rename(made, path)
}

// layOriginals lays the pictures of the demo beside where it will be; part is a folder for
// what is only passing through.
func layOriginals(part string, a *album.Album) error {
	all, err := demo.Originals()
	if err != nil {
		return err
	}
	for _, o := range all {
		path := filepath.Join(part, o.Name)
		if err := os.WriteFile(path, o.JPEG, 0o600); err != nil {
			return err
		}
		if err := a.Keep(path, o.SHA256, photo.JPEG); err != nil {
			return err
		}
	}
	return nil
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return !errors.Is(err, fs.ErrNotExist)
}

// memory keeps small things between sessions: the night that was open for each
// journal, the rest for all.
type memory struct {
	prefs   fyne.Preferences
	journal string
}

func (m memory) key(k string) string {
	if k == "night" {
		return k + " " + m.journal
	}
	return k
}

// Get is part of screen.Remember.
func (m memory) Get(k string) string { return m.prefs.String(m.key(k)) }

// Set is part of screen.Remember.
func (m memory) Set(k, v string) { m.prefs.SetString(m.key(k), v) }
