// Package font holds the product's own typeface, so that words look the same and
// take the same room on screen, in pictures and on paper, whatever is installed.
//
// The three files are "Gloamline Sans": Inter with TrueType outlines, 1000 units
// to the em, tabular figures as the only figures (so that times stand in columns)
// and Latin, Greek, Welsh, Gaelic, fractions, arrows and a few signs. make.sh makes
// them again; OFL.txt is their licence. The layout tables hold kerning and accents
// only. The package knows nothing of drawing: it hands out bytes.
package font

import _ "embed"

// Family is the name the files carry.
const Family = "Gloamline Sans"

//go:embed GloamlineSans-Regular.ttf
var regular []byte

//go:embed GloamlineSans-Medium.ttf
var medium []byte

//go:embed GloamlineSans-Bold.ttf
var bold []byte

//go:embed OFL.txt
var licence string

// Regular is the TrueType file of weight 400. The bytes are shared: read only.
func Regular() []byte { return regular }

// Medium is the TrueType file of weight 500. The bytes are shared: read only.
func Medium() []byte { return medium }

// Bold is the TrueType file of weight 700. The bytes are shared: read only.
func Bold() []byte { return bold }

// Licence is the text that has to travel with the files.
func Licence() string { return licence }
