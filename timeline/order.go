package timeline

import (
	"time"

	"gloamline/journal"
)

// inOrder returns the entries of a log in the order of the night, each with its
// resolved moment.
func inOrder(log *journal.Log) []Noted[journal.Entry] {
	sorted := log.Sorted()
	out := make([]Noted[journal.Entry], len(sorted))
	for i, e := range sorted {
		out[i] = Noted[journal.Entry]{e, log.At(e)}
	}
	return out
}

// pick returns the entries of one type, in the order given.
func pick[T journal.Entry](entries []Noted[journal.Entry]) []Noted[T] {
	var out []Noted[T]
	for _, n := range entries {
		if v, ok := n.Entry.(T); ok {
			out = append(out, Noted[T]{v, n.At})
		}
	}
	return out
}

// others returns the entries that have no field of their own in a Night.
func others(entries []Noted[journal.Entry]) []Noted[journal.Entry] {
	var out []Noted[journal.Entry]
	for _, n := range entries {
		switch n.Entry.(type) {
		case journal.Run, journal.Rig, journal.Way, journal.Contact, journal.Water, journal.Sky:
		default:
			out = append(out, n)
		}
	}
	return out
}

func earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

func later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}
