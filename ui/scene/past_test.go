package scene_test

import (
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

// pastOfDemo is all that was fished of a pool of the demo.
func pastOfDemo(t *testing.T, pool string, s scene.Shown) scene.ClientPast {
	t.Helper()
	nights := demoNights(t)
	var id journal.ID
	for _, n := range nights {
		for _, p := range n.Pools {
			if p.Pool.Name == pool {
				id = p.Pool.ID
			}
		}
	}
	require.False(t, id.IsZero(), pool)
	return scene.SharePast(nights, id, s, words.Prefs{})
}

// Ensure that every text of a pool's nights can be read, on a page, on a phone and on the
// whole screen, in all looks, and that a fish can be pointed at where it is drawn.
func TestPastCanBeRead(t *testing.T) {
	for who, s := range map[string]scene.Shown{
		"least": {},
		"all":   {Pools: scene.PoolNames, Water: true, Places: true, Coordinates: true, People: true, Weights: true, Notes: true, Photo: true},
	} {
		for _, pool := range []string{"Long Flat"} {
			c := pastOfDemo(t, pool, s)
			require.NotEmpty(t, c.Fish, pool)
			for _, look := range scene.Looks {
				lists := c.Pages(look, words.Prefs{})
				for _, cursor := range []int{scene.ClientWhole, c.End() / 2} {
					lists = append(lists, c.Frame(draw.Size{W: 360, H: 420}, look, cursor, words.Prefs{}))
					for _, size := range []draw.Size{{W: 1440, H: 900}, {W: 1050, H: 640}} {
						sc := c.Show(size, look, scene.ClientView{Cursor: cursor, Fish: 1, Keys: true})
						lists = append(lists, sc.List)
						for _, h := range sc.Hits {
							assert.True(t, draw.Bounds(size).Contains(h.Box.Center()), "%s: hit outside", h.Ref.Kind)
						}
					}
				}
				for k, l := range lists {
					for what, found := range map[string][]inspect.Fault{"weak": inspect.Weak(l, 4.5, 12), "overlap": inspect.Overlaps(l), "outside": inspect.Outside(l)} {
						for _, f := range found {
							assert.Fail(t, "a text is hard to read", "%s of %s, %s, list %d, %s: %s", who, pool, look.Name, k, what, f)
						}
					}
				}
			}
		}
	}
}

// Ensure that counts and hours of a pool add up from its nights, whatever is shown, that
// each fish stands in a step that was told, and that its film ends at all of it.
func TestPastCounts(t *testing.T) {
	for _, s := range []scene.Shown{{}, {Places: true}} {
		c := pastOfDemo(t, "Alder Pool", s)
		sum, minutes := timeline.Totals{}, 0
		for _, n := range c.Nights {
			sum.Landed += n.Totals.Landed
			sum.Lost += n.Totals.Lost
			sum.Touches += n.Totals.Touches
			sum.Shows += n.Totals.Shows
			sum.Kept += n.Totals.Kept
			minutes += n.Minutes
		}
		assert.Equal(t, sum, c.Totals)
		assert.Equal(t, c.Minutes, minutes)
		assert.Len(t, c.Fish, sum.Landed+sum.Lost+sum.Touches+sum.Shows)
		told := map[timeline.Rung]bool{}
		for _, st := range c.Steps {
			told[st.Rung] = true
			minutes -= st.Minutes
		}
		assert.Zero(t, minutes, "of the steps")
		for i, f := range c.Fish {
			assert.Equal(t, i+1, f.N)
			assert.True(t, told[f.Rung])
			if !s.Places {
				assert.Contains(t, "05", f.Clock[4:], "to five minutes")
				assert.Nil(t, f.Spot)
			}
		}
		for _, most := range []int{3, 72} {
			m := c.Moments(most)
			assert.LessOrEqual(t, len(m), most+1)
			assert.Equal(t, c.End(), m[len(m)-1])
		}
		assert.Contains(t, c.Says(c.End(), words.Prefs{}), words.Tally(c.Totals))
	}
}

// Ensure that nothing hidden is in it, whatever was hidden.
func TestPastKeepsNothingHidden(t *testing.T) {
	pool := fixed(2)
	a := scene.SharePast([]*timeline.Night{sharedNight(t, false)}, pool, scene.Shown{}, words.Prefs{})
	b := scene.SharePast([]*timeline.Night{sharedNight(t, true)}, pool, scene.Shown{}, words.Prefs{})
	require.Len(t, a.Fish, 1)
	assert.Equal(t, a, b)
	for _, s := range []scene.Shown{{Pools: scene.PoolNames}, {Water: true}, {People: true}, {Weights: true}, {Places: true, Coordinates: true}} {
		a := scene.SharePast([]*timeline.Night{sharedNight(t, false)}, pool, s, words.Prefs{})
		b := scene.SharePast([]*timeline.Night{sharedNight(t, true)}, pool, s, words.Prefs{})
		assert.NotEqual(t, a, b, "%+v", s)
	}
	none := scene.SharePast([]*timeline.Night{sharedNight(t, false)}, fixed(99), scene.Shown{}, words.Prefs{})
	assert.Empty(t, none.Nights)
	assert.NotEmpty(t, none.Pages(scene.Paper, words.Prefs{}), "a pool never fished is a page")
	none.Show(draw.Size{W: 1280, H: 800}, scene.Dusk, scene.ClientView{Cursor: scene.ClientWhole})
}
