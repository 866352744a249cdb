package gauge

import "fmt"

// Each kind of warning is given in full for the first lines, then counted: a year of
// bad rows is told in one line more.
const fullWarnings = 5

type warner struct {
	file  *File
	count map[string]int
	order []string
}

// at warns of one line; kind groups the warnings and is what the count is told by.
func (w *warner) at(line int, kind, format string, args ...any) {
	if w.count == nil {
		w.count = map[string]int{}
	}
	n := w.count[kind]
	if n == 0 {
		w.order = append(w.order, kind)
	}
	w.count[kind] = n + 1
	if n < fullWarnings {
		w.file.Warnings = append(w.file.Warnings, Warning{line, fmt.Sprintf(format, args...)})
	}
}

// once warns of the file, one time for each kind.
func (w *warner) once(kind, format string, args ...any) {
	if w.count[kind] == 0 {
		w.at(0, kind, format, args...)
	}
}

func (w *warner) finish() {
	for _, kind := range w.order {
		if n := w.count[kind] - fullWarnings; n > 0 {
			w.file.Warnings = append(w.file.Warnings, Warning{0, fmt.Sprintf("%d more lines like it: %s", n, kind)})
		}
	}
}
