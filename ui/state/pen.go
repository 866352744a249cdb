package state

import (
	"fmt"
	"strconv"

	"gloamline/journal/pen"
)

// Times are read and printed by package pen, in fields as in scribbles.
type (
	Clock    = pen.Clock
	Thing    = pen.Thing
	Question = pen.Question
	Answer   = pen.Answer
)

// wrong is a fault that is said at a field in one sentence.
type wrong struct{ s string }

// Error implements error.
func (w wrong) Error() string { return w.s }

func wrongf(format string, a ...any) error { return wrong{fmt.Sprintf(format, a...)} }

// number reads digits that have been checked; nothing is 0.
func number(s string) int {
	n, _ := strconv.Atoi(s)
	return n
}
