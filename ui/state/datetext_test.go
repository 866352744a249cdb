package state

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"gloamline/journal"
	"gloamline/journal/pen"
)

// Ensure that the date of an evening as printed reads back.
func TestDateReadsBack(t *testing.T) {
	today := journal.Date{Year: 2026, Month: time.July, Day: 5}
	rapid.Check(t, func(t *rapid.T) {
		d := today.Add(rapid.IntRange(-40001, 39999).Draw(t, "days"))
		got, err := pen.ParseDate(printDate(d), today)
		if err != nil || got != d {
			t.Fatalf("%v prints as %s, which reads %v, %v", d, printDate(d), got, err)
		}
	})
}
