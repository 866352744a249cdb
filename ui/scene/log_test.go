package scene_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// Ensure that a night of near forty entries is one page, one of fifteen fish two at
// most, and that nothing written down is missing.
func TestBusyNightsLoseNothing(t *testing.T) {
	five, fifteen := busyNight(t, 1), busyNight(t, 3)
	require.Greater(t, len(five.Log.Entries), 35)
	require.Len(t, fifteen.Contacts, 15)
	require.Len(t, scene.Page(five, scene.Paper, scene.PageView{}), 1)
	require.LessOrEqual(t, len(scene.Page(fifteen, scene.Paper, scene.PageView{})), 2)
	for _, n := range []*timeline.Night{five, fifteen} {
		holdsAll(t, n)
	}
}

// holdsAll asks that each entry's words and moment stand on the page.
func holdsAll(t *testing.T, n *timeline.Night) {
	var said []string
	for _, p := range scene.Page(n, scene.Paper, scene.PageView{}) {
		said = append(said, texts(p)...)
	}
	all := strings.Join(said, " ")
	for _, e := range n.Log.Sorted() {
		if _, ok := e.(journal.Run); ok {
			continue // runs are headings, held by another test
		}
		for _, line := range words.EntryLines(n, e, words.Prefs{}) {
			for _, word := range strings.Fields(line) {
				assert.Contains(t, all, strings.TrimRight(word, ".,;"), "%s at %s", e.Ref().Kind, words.MomentShort(n, e.Base().When))
			}
		}
		assert.Contains(t, all, words.MomentShort(n, e.Base().When), "%s: %v", e.Ref().Kind, words.EntryLines(n, e, words.Prefs{}))
	}
}

// Ensure that an empty night says what to do first, with keys, at any width.
func TestEmptyLogSaysWhatToDo(t *testing.T) {
	nights := tellingNights(t)
	for name, key := range map[string]string{"empty": "R adds a run", "nobody": "Ctrl+Shift+N"} {
		for _, width := range []float64{260, 400, 700} {
			l := scene.Log(nights[name], width, scene.Dusk, scene.LogView{}).List
			assert.Contains(t, strings.Join(texts(l), " "), key, name)
			assert.Empty(t, inspect.Outside(l))
		}
	}
	assert.NotContains(t, strings.Join(texts(scene.Log(nights["busy"], 400, scene.Dusk, scene.LogView{}).List), " "), "Nothing is written down")
}

// Ensure that each fish in the log has its fly and its light, in words and in lux.
func TestFishInTheLogHasFlyAndLight(t *testing.T) {
	n := busyNight(t, 3)
	all := texts(scene.Log(n, 420, scene.Dusk, scene.LogView{}).List)
	for _, c := range n.Contacts {
		assert.Contains(t, all, words.RungName(c.Rung, words.Prefs{}))
		assert.Contains(t, all, words.LuxShort(c), "contact %d", c.N)
		assert.Contains(t, strings.Join(all, " "), words.ContactLog(n, c, words.Prefs{})[0])
	}
}

// Ensure that the figure of a fish whose time is uncertain breaks no line of its fly: where
// there is no room beside it the figure waits for the next line.
func TestFigureBreaksNoLine(t *testing.T) {
	lines := 0
	for _, n := range sharedDemo(t) {
		l := scene.Log(n, 340, scene.Dusk, scene.LogView{}).List
		texts := map[string]bool{}
		for i := range l.Len() {
			if o := l.Op(i); o.Kind == draw.TextOp {
				texts[o.Text.S] = true
			}
		}
		for _, c := range n.Contacts {
			said := words.ContactLog(n, c, words.Prefs{})
			if len(said) < 2 || !c.HasFly || draw.Measure(draw.Font{Weight: draw.Regular, Size: 12}, said[1]).Width > 150 {
				continue
			}
			lines++
			assert.True(t, texts[said[1]], "%s: %q is broken", n.Log.Trip.Evening, said[1])
		}
	}
	assert.Greater(t, lines, 40)
}
