//go:build !x11

package main

// wayland says whether this build can open a window in a Wayland session itself.
const wayland = true
