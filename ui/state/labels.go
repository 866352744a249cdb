package state

import (
	"cmp"

	"gloamline/ui/words"
)

// labelOf names a stored value for a person. Most texts are plain words already.
func labelOf[T ~string](v T) string { return cmp.Or(words.Label(v), string(v)) }
