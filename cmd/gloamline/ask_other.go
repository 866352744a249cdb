//go:build !unix

package main

// onAsked does nothing: this system has no signals to ask with.
func onAsked(_, _ func()) {}
