// Package pdf writes display lists as the pages of a PDF document.
//
// One dp is one PostScript point (1/72 inch), so a page of A4 is a list of 595.28 by
// 841.89 dp. Everything stays lines, curves and letters; only pictures and gradients
// with transparency become images. The typeface is embedded with the letters in
// use, and text can be searched and copied. The same lists and options give the same
// bytes: the date comes from the caller.
//
// Not done: tagged structure (titles of groups are left out), PDF/A, encryption.
package pdf
