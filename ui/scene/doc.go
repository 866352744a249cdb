// Package scene draws a night: the sketch of the beat, the light strip with its
// rig lanes, the log, and the page to keep. Each scene is a display list with
// hit regions; screen, print and files replay the same list, so what a person
// sees is what leaves.
//
// Codes (the same everywhere): a fly stands upright, its height the dressing
// length on one scale, thin, middling or thick by silhouette, black, grey or
// white on a mid-grey plate; a fish is a small outline with a tail, filled when
// landed and broken when lost; a triangle is a touch, a chevron a follow or a
// boil; what lies after the cursor is faint, never gone.
//
// Lengths are in dp (see ui/draw), light in lux on a log scale. Texts come from
// ui/words. Nothing here reads a clock or keeps state between calls.
package scene
