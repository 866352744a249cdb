package intake

import (
	"gloamline/journal"
	"gloamline/journal/photo"
)

// Original is a file whose bytes are to be kept beside the journal.
type Original struct {
	Path, SHA256 string
	Format       photo.Format
}

// Originals lists the files of the photos that a plan stores as copies. They are kept
// before the plan is carried out (package album), so that no record names a copy that is
// not there.
func (b *Batch) Originals(plan journal.Batch) []Original {
	var out []Original
	for _, r := range plan.Put {
		p, ok := r.(journal.Photo)
		if !ok || !p.Copied {
			continue
		}
		for _, s := range b.Sources {
			if s.File.Photo != nil && s.File.SHA256 == p.SHA256 {
				out = append(out, Original{s.File.Path, p.SHA256, s.File.Photo.Format})
				break
			}
		}
	}
	return out
}
