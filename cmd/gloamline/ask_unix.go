//go:build unix

package main

import (
	"os"
	"os/signal"
	"syscall"
)

// onAsked has f called, on a goroutine of its own, each time that the process is sent
// SIGUSR1.
func onAsked(f func()) {
	asked := make(chan os.Signal, 1)
	signal.Notify(asked, syscall.SIGUSR1)
	go func() {
		for range asked {
			f()
		}
	}()
}
