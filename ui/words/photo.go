package words

import (
	"fmt"

	"gloamline/journal"
	"gloamline/timeline"
)

// PhotoFile is the name of a photo's file, or what stands for one.
func PhotoFile(name string) string {
	if name == "" {
		return "photo"
	}
	return name
}

// PhotoTip says a photo with its time and note.
func PhotoTip(n *timeline.Night, p journal.Photo) string {
	return commas(Moment(p.When, n.Log.Spread(p.When), n.Zone)+" "+PhotoOf(p.Name), p.Note)
}

// MorePhotos counts what there was no room for: and 2 more.
func MorePhotos(n int) string { return fmt.Sprintf("and %d more", n) }
