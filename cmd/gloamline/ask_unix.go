//go:build unix

package main

import (
	"os"
	"os/signal"
	"syscall"
)

// onAsked has where called each time that the process is sent SIGUSR1, and memory each
// time that it is sent SIGUSR2, on a goroutine of their own.
func onAsked(where, memory func()) {
	asked := make(chan os.Signal, 2)
	signal.Notify(asked, syscall.SIGUSR1, syscall.SIGUSR2)
	go func() {
		for s := range asked {
			if s == syscall.SIGUSR2 {
				memory()
				continue
			}
			where()
		}
	}()
}
