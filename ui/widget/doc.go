// Package widget holds the few widgets of the program's own: the Board, which shows
// a scene (the sketch, the strip, the log), and buttons with tips.
//
// A Board paints its scene into one raster, again only when the scene, the size, the
// scale or the colours change. What follows the pointer (a thin upright, a tip, the
// outline of what would be picked) and the ring of the keyboard's focus are objects
// on top, so that moving the mouse paints no scene.
//
// Lengths are Fyne's dp, which are those of ui/draw. A widget decides nothing: it
// reports what was pointed at and which key was pressed, and is handed a new scene.
// It starts no goroutine and reads no clock.
package widget
