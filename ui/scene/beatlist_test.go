package scene_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/geo"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
)

// Ensure that the list of beats can be read in every look, and that each row can be pointed at.
func TestBeatList(t *testing.T) {
	beats := []scene.BeatLine{{ID: planID(1), Name: "Larrick Water, Home Beat", Under: "3 pools, not stored yet", On: true}, {ID: planID(2), Name: "Kirk Beat", Under: "1 pool"}}
	things := []scene.BeatLine{
		{ID: planID(3), Name: "Alder Pool", Under: "open sky, skyline", Number: "1", On: true}, {ID: planID(4), Name: "True left bank", Role: geo.RoleBank},
		{ID: planID(5), Name: "Trees", Role: geo.RoleTrees}, {ID: planID(6), Name: "Lie: behind the stone", Role: geo.RoleLie},
	}
	for _, k := range scene.Looks {
		for _, size := range []draw.Size{{W: 214, H: 600}, {W: 150, H: 60}} {
			s := scene.BeatList(beats, things, size, k)
			assert.Empty(t, inspect.Weak(s.List, 4.5, 12))
			assert.Empty(t, inspect.Overlaps(s.List))
			assert.Empty(t, inspect.Outside(s.List))
			assert.Len(t, s.Hits, 6)
			assert.GreaterOrEqual(t, s.List.Size().H, size.H)
		}
	}
	assert.NotEmpty(t, scene.BeatList(nil, nil, draw.Size{W: 200, H: 100}, scene.Dusk).List.Len())
}
