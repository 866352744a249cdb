// Package svg writes a display list as SVG 1.1 with text as text.
//
// One dp becomes one user unit; width and height are given in the same units, so
// that a browser shows one dp as one CSS pixel. The same list gives the same bytes.
// Groups become <g> elements with a <title>, so that a reader for the blind finds
// its way; the whole has a title and a description.
//
// Text is set in the product's typeface. With Options.Fonts the file carries the
// letters it uses (a WOFF of the glyphs in use, a few kB a weight), so that it looks the
// same elsewhere. Without, the names of common faces stand in and each text keeps
// its measured width by textLength. Programs that ignore embedded fonts need the
// typeface installed to show the same shapes.
package svg
