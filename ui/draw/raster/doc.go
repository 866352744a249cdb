// Package raster paints a display list into an image.
//
// Shapes are filled by exact area coverage of each pixel. The coverage is gathered
// in a sparse grid (cells) that is visited only where edges passed, so that a thin
// line across the whole picture costs as much as its length, not as its box. Lines
// are turned into shapes that all wind the same way, so that a line that crosses
// itself does not cancel. Letters are filled outlines of the product's typeface,
// kept per size at quarters of a pixel; the baseline of upright text sits on a whole
// pixel, other text is placed exactly. There is no hinting.
//
// Colours blend on their sRGB values, as in SVG and PDF. A clip that is an upright
// rectangle is rounded to whole pixels; any other has soft edges.
//
// Where several pieces of one shape share a pixel their coverages add up to at most
// one: exact for abutting pieces, slightly heavy for overlapping ones on the rim.
package raster
