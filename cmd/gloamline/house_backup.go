package main

import (
	"fmt"
	"time"

	"gloamline/journal/backup"
	"gloamline/journal/store"
	"gloamline/ui/words"
)

// backUp has a journal that was just opened copied, beside everything else, and says
// in one line when that fails. Nothing waits for it but a change that needs a larger file, until the
// copy is written. The channel is closed at its end.
func (h *house) backUp(s *store.Store, now time.Time, tell func(string)) <-chan struct{} {
	done := make(chan struct{})
	if s.ReadOnly() {
		close(done)
		return done
	}
	say := func(o backup.Outcome, err error) {
		line := words.BackupFault(err, o.Copy.Path)
		h.diary.Error("no backup", "copy", o.Copy.Path, "error", err)
		fmt.Fprintln(h.stderr, line)
		tell(line)
	}
	n, err := s.Snapshot()
	if err != nil {
		close(done)
		say(backup.Outcome{}, err)
		return done
	}
	if n.Tip().Seq == 0 { // nothing was written yet
		n.Close()
		close(done)
		return done
	}
	go func() {
		defer close(done)
		o, err := backup.Of(s.Path()).Take(n, now)
		if err != nil {
			say(o, err)
			return
		}
		if o.PhotoFault != nil {
			h.diary.Error("photographs not backed up", "error", o.PhotoFault)
			tell(words.PhotosNotBackedUp(o.PhotoFault))
		}
		h.diary.Info("backed up", "copy", o.Copy.Path, "bytes", o.Copy.Bytes, "same", o.Same, "removed", len(o.Removed), "photos", o.Photos)
	}()
	return done
}
