package main

import (
	"io"
	"log"
	"log/slog"
	"os"
	"path/filepath"
	"runtime/debug"
	"time"
)

// maxLog is the size in bytes beyond which a log is set aside at the next start.
const maxLog = 1 << 20

// diary is the program's own log: what it did, never what a person wrote.
type diary struct {
	*slog.Logger
	Path  string // of the log; empty if it goes to stderr only
	Crash string // of the account of a crash last time; empty if there was none
}

// openDiary begins the log in a folder, empty for none, and has a crash leave an
// account there. On stderr only warnings appear, or everything if verbose. What the
// toolkit says of itself goes into the file, since a missing desktop service is no
// news to a person.
func openDiary(dir string, verbose bool) diary {
	d := diary{}
	level, loud := slog.LevelInfo, slog.LevelWarn
	if verbose {
		level, loud = slog.LevelDebug, slog.LevelDebug
	}
	out := []slog.Handler{slog.NewTextHandler(os.Stderr, &slog.HandlerOptions{Level: loud})}
	var file io.Writer = io.Discard
	if dir != "" {
		path := filepath.Join(dir, "gloamline.log")
		if i, err := os.Stat(path); err == nil && i.Size() > maxLog {
			_ = os.Rename(path, path+".old")
		}
		if f, err := os.OpenFile(path, os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600); err == nil {
			file, d.Path = f, path
			out = append(out, slog.NewTextHandler(f, &slog.HandlerOptions{Level: level}))
		}
		d.Crash = catchCrash(filepath.Join(dir, "crash.txt"), time.Now())
	}
	if verbose {
		file = io.MultiWriter(os.Stderr, file)
	}
	log.SetOutput(file)
	d.Logger = slog.New(slog.NewMultiHandler(out...))
	return d
}

// catchCrash keeps the account of an earlier crash under its date, returning its
// name, and has the next one written to path. The Go run time writes it.
func catchCrash(path string, now time.Time) (earlier string) {
	if i, err := os.Stat(path); err == nil && i.Size() > 0 {
		earlier = filepath.Join(filepath.Dir(path), "crash-"+now.UTC().Format("20060102-150405")+".txt")
		if os.Rename(path, earlier) != nil {
			earlier = path
		}
	}
	if f, err := os.Create(path); err == nil {
		_ = debug.SetCrashOutput(f, debug.CrashOptions{})
		_ = f.Close() // the run time has its own copy
	}
	return earlier
}
