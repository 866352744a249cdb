package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"time"

	"fyne.io/fyne/v2"

	"gloamline/assets/demo"
	"gloamline/journal"
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
	if err := h.open(path); err != nil {
		h.diary.Error("the journal does not open", "file", path, "error", err)
		what, do := words.ExplainFile(err, path)
		fmt.Fprintf(h.stderr, "%s\n%s\n", what, do)
		screen.ShowFault(h.app, what, do, path).Show()
		code = broken
	}
	h.app.Lifecycle().SetOnStarted(func() { h.diary.Debug("shown") })
	h.app.Run()
	h.close()
	h.diary.Info("ended")
	return code
}

// open opens a journal, beginning it if there is none, and shows it. The journal
// that was open before stays if this one cannot be opened.
func (h *house) open(path string) error {
	j, s, err := openJournal(path, h.asked.demo)
	if err != nil {
		return err
	}
	j.Subscribe(func(c journal.Change) {
		h.diary.Info("stored", "seq", c.Seq, "did", c.Did, "undo", !c.Undo.IsZero(), "redo", !c.Redo.IsZero())
	})
	desk := state.New(j, time.Now)
	mem := memory{h.app.Preferences(), path}
	look := h.asked.look
	if look == "" {
		look = mem.Get("look")
	}
	desk.SetLook(look)
	if h.asked.night != "" {
		if !openNight(desk, h.asked.night) {
			fmt.Fprintf(h.stderr, "gloamline: this journal has no night of %s.\n", h.asked.night)
		}
		h.asked.night = "" // for the first journal only
	}
	if h.asked.demo && mem.Get("night") == "" {
		if t := showNight(j); !t.IsZero() {
			mem.Set("night", t.String())
		}
	}
	before, beforeStore := h.screen, h.store
	h.store = s
	h.screen = screen.New(h.app, desk, screen.Options{
		Log: h.diary.Logger, Version: version, Journal: path, Crash: h.diary.Crash, Remember: mem,
		OpenJournal: h.open, Backup: s.Backup,
	})
	h.diary.Crash = "" // told once
	h.screen.Window().Show()
	h.diary.Info("journal open", "file", path)
	if before != nil {
		before.Window().Close()
	}
	if beforeStore != nil {
		_ = beforeStore.Close()
	}
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

func (h *house) close() {
	if h.store != nil {
		if err := h.store.Close(); err != nil {
			h.diary.Error("the journal does not close", "error", err)
		}
	}
}

// openJournal opens a file or begins it, with the demo if asked.
func openJournal(path string, withDemo bool) (*journal.Journal, *store.Store, error) {
	s, err := store.Open(path, store.Options{})
	begun := false
	if _, statErr := os.Stat(path); err != nil && errors.Is(statErr, fs.ErrNotExist) {
		s, err = store.Create(path, store.Options{Now: time.Now})
		begun = true
	}
	if err != nil {
		return nil, nil, err
	}
	j, err := journal.Open(s, time.Now)
	if err == nil && begun && withDemo {
		err = demo.Write(j, demo.Seed)
	}
	if err != nil {
		_ = s.Close()
		return nil, nil, err
	}
	return j, s, nil
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

// showNight is the trip that the demo opens on the first time.
func showNight(j *journal.Journal) journal.ID {
	trips, _ := j.Trips() // what cannot be read is told when the nights are listed
	for _, t := range trips {
		if t.Evening == demo.Show {
			return t.ID
		}
	}
	return journal.ID{}
}
