package gauge

import "time"

// localise turns the clock times of rows without a zone into instants. When a clock
// showed an hour twice, the neighbours decide: the first unless time would run back. A
// time that a clock skipped is read as if it had not been put on yet.
func localise(rows []row, loc *time.Location, w *warner) {
	back := false // newest first
	for i, j := 0, len(rows)-1; i < j; {
		switch {
		case !rows[i].naive:
			i++
		case !rows[j].naive:
			j--
		default:
			back = rows[i].at > rows[j].at
			i = j
		}
	}
	step := stepOf(rows)
	var prevWall, prev int64
	have := false
	for k := range rows {
		r := &rows[k]
		if back {
			r = &rows[len(rows)-1-k]
		}
		if !r.naive {
			continue
		}
		wall := r.at
		first, second, kind := instants(wall, loc)
		switch kind {
		case shownTwice:
			w.at(r.line, "the clock showed this hour twice", "the clock showed %s twice that night; the readings around it decided which it was", clockText(wall))
			r.at = first
			again := wall == prevWall && step < 3000 // a row written twice, not the hour
			if have && first <= prev && !again {
				r.at = second
			}
		case skipped:
			w.at(r.line, "the clock skipped this hour", "the clock skipped %s that night; read as if it had not been put on yet", clockText(wall))
			r.at = first
		default:
			r.at = first
		}
		prevWall, prev, have = wall, r.at, true
	}
}

// stepOf is the first step in time between neighbours, in seconds.
func stepOf(rows []row) int64 {
	for i := 1; i < len(rows); i++ {
		if d := rows[i].at - rows[i-1].at; d > 0 {
			return d
		} else if d < 0 {
			return -d
		}
	}
	return 0
}

type clockKind uint8

const (
	shownOnce clockKind = iota
	shownTwice
	skipped
)

// instants are the moments at which the clock of loc showed wall.
func instants(wall int64, loc *time.Location) (first, second int64, kind clockKind) {
	const day = 24 * 3600
	_, before := time.Unix(wall-day, 0).In(loc).Zone()
	_, after := time.Unix(wall+day, 0).In(loc).Zone()
	a, b := wall-int64(before), wall-int64(after)
	if a == b {
		return a, a, shownOnce
	}
	_, atA := time.Unix(a, 0).In(loc).Zone()
	_, atB := time.Unix(b, 0).In(loc).Zone()
	switch okA, okB := atA == before, atB == after; {
	case okA && okB:
		return min(a, b), max(a, b), shownTwice
	case okA:
		return a, a, shownOnce
	case okB:
		return b, b, shownOnce
	}
	return a, a, skipped
}

func clockText(wall int64) string { return time.Unix(wall, 0).UTC().Format("15:04 on 2006-01-02") }
