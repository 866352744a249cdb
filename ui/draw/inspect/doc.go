// Package inspect looks into display lists, for tests: what lies behind a text and
// how well the text stands out from it, which texts overlap, which marks they hide.
// It paints the list with package raster and looks at pixels, so that it sees what a
// person sees: gradients, transparency, clips and halos.
package inspect
