package main

import (
	"time"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/journal/store"
	"gloamline/ui/words"
)

// openJournal opens the journal in a file for reading, or makes the demo journal
// in memory. The second result says in one sentence why it did not.
func openJournal(path string, useDemo bool) (*journal.Journal, string) {
	if useDemo {
		j, err := journal.Open(memory.New(journal.NewID()), time.Now)
		if err == nil {
			err = demo.Write(j, demo.Seed)
		}
		if err != nil {
			return nil, "the demo journal cannot be made: " + err.Error()
		}
		return j, ""
	}
	s, err := store.Open(path, store.Options{ReadOnly: true})
	if err != nil {
		what, do := words.ExplainFile(err, path)
		return nil, what + " " + do
	}
	j, err := journal.Open(s, time.Now)
	if err != nil {
		s.Close()
		what, do := words.ExplainFile(err, path)
		return nil, what + " " + do
	}
	return j, ""
}
