package scene_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
)

// Ensure that every text of every picture of nights side by side can be read, whatever
// the nights: 4.5:1 and 12 dp, whole, on no other text. Pages of so many nights that they
// are made smaller to fit are left out of the size.
func TestTextsOfNightsTogetherCanBeRead(t *testing.T) {
	sizes := []draw.Size{{W: 1000, H: 640}}
	if !testing.Short() {
		sizes = append(sizes, draw.Size{W: 760, H: 470})
	}
	seen := map[string]int{}
	for name, set := range tellingSets(t) {
		for _, look := range scene.Looks {
			chief := name == "four" || name == "thirty"
			if look.Name != scene.Dusk.Name && (testing.Short() || !chief) {
				continue
			}
			for i, size := range sizes {
				if i > 0 && !chief {
					continue
				}
				for pic, s := range togetherPictures(set, size, look) {
					for what, faults := range map[string][]inspect.Fault{
						"weak": inspect.Weak(s.List, 4.5, 12), "overlap": inspect.Overlaps(s.List), "outside": inspect.Outside(s.List),
					} {
						for _, f := range faults {
							if strings.HasPrefix(pic, "page") && strings.Contains(f.What, "smaller") {
								continue
							}
							key := fmt.Sprintf("%s %s %gx%g %s %s", name, pic, size.W, size.H, look.Name, what)
							if seen[key]++; seen[key] <= 2 {
								assert.Fail(t, "a text is hard to read", "%s: %s", key, f)
							}
						}
					}
				}
			}
		}
	}
	l := scene.TogetherLegend(700, scene.Paper)
	assert.Empty(t, inspect.Weak(l, 4.5, 12))
	assert.Empty(t, inspect.Overlaps(l))
	assert.Empty(t, inspect.Outside(l))
}
