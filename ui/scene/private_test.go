package scene_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
)

// Ensure that a private note stands in the log of the window and on no page, while
// another note of the same night stands on both.
func TestPrivateNotesStayOffThePage(t *testing.T) {
	f := newFixture(t, 54.985, -4.431, journal.Date{Year: 2026, Month: time.July, Day: 4}, true).rods(1)
	for _, n := range []struct {
		text    string
		private bool
	}{{"splashing", false}, {"whispered", true}} {
		h := f.head(1, f.exact(23, 5))
		h.Note = n.text
		f.add(journal.Note{Head: h, Private: n.private})
	}
	night := f.night()
	said := func(lists ...*draw.List) string {
		var out []string
		for _, l := range lists {
			out = append(out, texts(l)...)
		}
		return strings.Join(out, " ")
	}
	log := said(scene.Log(night, 400, scene.Dusk, scene.LogView{}).List)
	assert.Contains(t, log, "whispered")
	assert.Contains(t, log, "splashing")
	for _, look := range scene.Looks {
		page := said(scene.Page(night, look, scene.PageView{})...)
		assert.NotContains(t, page, "whispered")
		assert.Contains(t, page, "splashing", "the page does show notes")
	}
}
