package screen

import (
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// queue is a window's goroutine for a test: what is posted runs when it is drained.
type queue struct {
	mu sync.Mutex
	fs []func()
}

func newQueue(t *testing.T) *queue {
	q := &queue{}
	before := post
	post = func(f func()) {
		q.mu.Lock()
		defer q.mu.Unlock()
		q.fs = append(q.fs, f)
	}
	t.Cleanup(func() { post = before })
	return q
}

func (q *queue) drain() int {
	q.mu.Lock()
	fs := q.fs
	q.fs = nil
	q.mu.Unlock()
	for _, f := range fs {
		f()
	}
	return len(fs)
}

// Ensure that a job hands its value back on the window's goroutine and not before.
func TestJob(t *testing.T) {
	q := newQueue(t)
	worked := make(chan struct{})
	got := 0
	job(func() int { defer close(worked); return 7 }, func(v int) { got = v })
	<-worked
	assert.Zero(t, got)
	require.Eventually(t, func() bool { return q.drain() > 0 }, 10*time.Second, time.Millisecond)
	assert.Equal(t, 7, got)
}

// Ensure that the clock tells all the time that passed however slow the window is,
// never has two calls waiting, and is silent once stopped.
func TestClock(t *testing.T) {
	q := newQueue(t)
	start := time.Now()
	var told time.Duration
	c := startClock(time.Millisecond, func(d time.Duration) { told += d })
	time.Sleep(30 * time.Millisecond) // a window that is busy
	q.mu.Lock()
	waiting := len(q.fs)
	q.mu.Unlock()
	assert.LessOrEqual(t, waiting, 1)
	require.Eventually(t, func() bool { q.drain(); return told > 40*time.Millisecond }, 10*time.Second, time.Millisecond)
	assert.LessOrEqual(t, told, time.Since(start))

	c.Stop()
	told = 0
	time.Sleep(5 * time.Millisecond)
	q.drain()
	assert.Zero(t, told)
}
