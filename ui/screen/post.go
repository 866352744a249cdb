package screen

import (
	"time"

	"fyne.io/fyne/v2"
)

// post runs f on the window's goroutine, soon. A test that has none replaces it.
var post = func(f func()) { fyne.Do(f) }

// job runs work away from the window and hands its one value to done, on the
// window's goroutine. work must touch nothing that the window shows.
func job[T any](work func() T, done func(T)) {
	post := post
	go func() {
		v := work()
		post(func() { done(v) })
	}()
}

// clock calls tick on the window's goroutine with the time that passed since the
// last call, until it is stopped.
type clock struct{ stop chan struct{} }

func startClock(every time.Duration, tick func(elapsed time.Duration)) *clock {
	c := &clock{stop: make(chan struct{})}
	post := post
	go func() {
		t := time.NewTicker(every)
		defer t.Stop()
		last := time.Now()
		pending := make(chan struct{}, 1) // one call at a time: a slow window skips
		for {
			select {
			case <-c.stop:
				return
			case <-t.C:
			}
			select {
			case pending <- struct{}{}:
			default:
				continue
			}
			now := time.Now()
			elapsed := now.Sub(last)
			last = now
			post(func() {
				defer func() { <-pending }()
				select {
				case <-c.stop:
				default:
					tick(elapsed)
				}
			})
		}
	}()
	return c
}

// Stop ends it; no tick comes after.
func (c *clock) Stop() { close(c.stop) }
