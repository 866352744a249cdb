package state

import (
	"gloamline/journal"
	"gloamline/journal/units"
)

// ParseDress reads a fly as people describe one: "1in slim dark", "3/4 full pale
// orange spot": length (a bare number in unit), silhouette, tone, hot-spot, hook and
// build, in any order. The error is one sentence.
func ParseDress(text string, unit units.LengthUnit) (journal.Dress, error)

// PrintDress writes a fly so that ParseDress reads it back.
func PrintDress(d journal.Dress) string
