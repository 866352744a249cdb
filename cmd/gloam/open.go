package main

import (
	"fmt"
	"io"
	"time"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/journal/store"
	"gloamline/ui/words"
)

// openJournal opens the journal in a file for reading only; nothing in it changes.
func openJournal(path string) (*journal.Journal, error) {
	s, err := store.Open(path, store.Options{ReadOnly: true})
	if err != nil {
		return nil, err
	}
	j, err := journal.Open(s, time.Now)
	if err != nil {
		_ = s.Close() // it was only read
		return nil, err
	}
	return j, nil
}

// demoJournal makes the demo journal in memory.
func demoJournal() (*journal.Journal, error) {
	j, err := journal.Open(memory.New(journal.NewID()), time.Now)
	if err != nil {
		return nil, err
	}
	return j, demo.Write(j, demo.Seed)
}

// explain says in two lines what is wrong with a journal and what to do.
func explain(stderr io.Writer, err error, path string) int {
	what, do := words.ExplainFile(err, path)
	return twoLines(stderr, what, do)
}

// twoLines says what happened and what to do.
func twoLines(stderr io.Writer, what, do string) int {
	fmt.Fprintf(stderr, "gloam: %s\n%s\n", what, do)
	return broken
}
