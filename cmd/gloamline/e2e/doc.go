// Package e2e drives the real window on an X server of its own, with the keyboard and
// the mouse, and looks at what is then on the disk. It proves the wiring; the logic is
// proved in ui/state. Its tests have the build tag e2e, are run by the make targets
// e2e, test and pictures, and need Xvfb, openbox, xdotool and ImageMagick.
//
// The binary is named by GLOAMLINE, the folder for pictures by OUT. Nothing waits for a
// fixed time where the window says in its log that it is ready.
package e2e
