package words

import (
	"time"

	"gloamline/journal"
)

// Carried says where an entry that is being moved would come to lie: 23:41, was 23:10.
// fault is why it cannot lie there, nil for nothing.
func Carried(now, was journal.Spread, zone *time.Location, fault error) string {
	s := End(now, zone)
	if now != was {
		s += ", was " + End(was, zone)
	}
	if fault != nil {
		return s + ". " + capital(cause(fault)) + "."
	}
	return s
}

// CarriedTo says where on the beat a fish that is being moved would come to lie: in Long
// Flat.
func CarriedTo(pool string, fault error) string {
	s := "not in a pool"
	if pool != "" {
		s = "in " + pool
	}
	if fault != nil {
		return s + ". " + capital(cause(fault)) + "."
	}
	return s
}

// NotMoved says that what was moved is back where it was, and why.
func NotMoved(fault error) string { return "Not moved: " + cause(fault) + "." }
