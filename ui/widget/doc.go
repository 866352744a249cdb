// Package widget holds the few widgets of the program's own: the Board, which shows
// a scene (the sketch, the strip, the log), buttons with tips, and the dividers by which
// the window's room is shared out.
//
// A Board paints its scene into one raster, again only when the scene, the size, the
// scale or the colours change, and then only where the scene differs from the one
// before (raster.Updater). Without a graphics card it is not the painting that is dear
// but each pixel the window puts together: so nothing large lies under a Board, its
// outlines are thin lines (Edges), and a picture that is the same is not handed over. What follows the pointer (a thin upright, a tip, the
// outline of what would be picked) and the ring of the keyboard's focus are objects
// on top, so that moving the mouse paints no scene.
//
// Lengths are Fyne's dp, which are those of ui/draw. A widget decides nothing: it
// reports what was pointed at and which key was pressed, and is handed a new scene.
// It starts no goroutine and reads no clock.
package widget
