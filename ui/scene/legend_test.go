package scene_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// Ensure that the legend can be read whole at any width from a narrow column on.
func TestLegendFitsAnyWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		look := rapid.SampledFrom(scene.Looks).Draw(t, "look")
		l := scene.Legend(rapid.Float64Range(160, 1500).Draw(t, "width"), look)
		require.Empty(t, inspect.Overlaps(l))
		require.Empty(t, inspect.Outside(l))
	})
}

// Ensure that the page explains what stands on it and nothing else: no cursor, no
// third rod, and a fish that came off only where one did.
func TestPageLegendHasWhatIsThere(t *testing.T) {
	nights := tellingNights(t)
	said := func(name string) []string { return texts(scene.Page(nights[name], scene.Paper, scene.PageView{})[0]) }
	busy, white := said("busy"), said("white")
	for _, w := range []string{words.LegendTrace(1), words.LegendLevel(), words.LegendGreyNoted(), words.LegendCloud(), words.LegendHazard(), "came off", "pull"} {
		assert.Contains(t, busy, w)
		assert.NotContains(t, said("empty"), words.LegendRun())
	}
	for _, w := range []string{words.LegendTrace(2), words.LegendCursor(), words.LegendSelected(), words.LegendKept()} {
		assert.NotContains(t, busy, w)
	}
	for _, w := range []string{words.LegendTrace(1), words.LegendLevel(), words.LegendUncertain(), "came off"} {
		assert.NotContains(t, white, w)
	}
	assert.Contains(t, said("unsure"), words.LegendUncertain())
}
