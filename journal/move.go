package journal

import "time"

// MoveTo returns the batch that moves a trip with all its entries to another
// evening: for a night written up under the wrong date. Every moment keeps what
// the clock showed in the zone of the trip. Where the clocks change in one of
// the two nights, a time that does not exist there is moved as Go's time.Date
// moves it, and a stretch of time may become an hour longer or shorter.
func (l *Log) MoveTo(evening Date) (Batch, error) {
	loc, err := l.Trip.Location()
	if err != nil {
		return Batch{}, err
	}
	days := l.Trip.Evening.days(evening)
	at := func(t time.Time) time.Time {
		if t.IsZero() {
			return t
		}
		c := t.In(loc)
		return time.Date(c.Year(), c.Month(), c.Day()+days, c.Hour(), c.Minute(), c.Second(), c.Nanosecond(), loc).UTC()
	}
	move := func(w When) When {
		w.Lo, w.Hi = at(w.Lo), at(w.Hi)
		if w.Hi.Before(w.Lo) {
			w.Hi = w.Lo
		}
		return w
	}
	t := l.Trip
	t.Evening = evening
	t.Rods = nil
	for _, r := range l.Trip.Rods {
		r.Start, r.Stop = mapField(r.Start, move), mapField(r.Stop, move)
		t.Rods = append(t.Rods, r)
	}
	t.Hours = mapField(t.Hours, func(s Span) Span { return Span{move(s.Start), move(s.Stop)} })
	b := Batch{Put: []Record{t}}
	for _, e := range l.Entries {
		b.Put = append(b.Put, mapWhens(e, move))
	}
	return b, nil
}

func mapField[T any](f Field[T], by func(T) T) Field[T] {
	if v, ok := f.Get(); ok {
		return Of(by(v))
	}
	return f
}

// days returns how many days e comes after d.
func (d Date) days(e Date) int {
	noon := func(d Date) time.Time { return time.Date(d.Year, d.Month, d.Day, 12, 0, 0, 0, time.UTC) }
	return int(noon(e).Sub(noon(d)) / (24 * time.Hour))
}
