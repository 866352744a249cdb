package scene_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
)

// Ensure that the pictures show every contact that has a place on their axes, as often as
// they show axes, and every night; none is dropped unsaid.
func TestTogetherShowsEveryFish(t *testing.T) {
	for name, set := range tellingSets(t) {
		for _, axis := range timeline.Axes {
			s := sides(set, axis)
			joined := countHits(scene.Together(scene.JoinedPicture, s, draw.Size{W: 1000, H: 640}, scene.Dusk, scene.TogetherView{}), journal.KindContact)
			strips := scene.Together(scene.StripsPicture, s, draw.Size{W: 1000, H: 640}, scene.Dusk, scene.TogetherView{})
			inStrips, rows := countHits(strips, journal.KindContact), countHits(strips, journal.KindTrip)
			places := 1
			if len(set) <= scene.MostOverlaid && axis != timeline.LightAxis {
				places = 2 // on the curve and in the lane
			}
			for i, l := range s.Shown().Nights {
				require.Equal(t, 1, rows[l.Night.Log.Trip.ID], name)
				for k, f := range l.Fish {
					what := fmt.Sprintf("%s, night %s, contact %d by %s", name, l.Night.Log.Trip.Evening, f.Contact.N, axis)
					if f.Off == timeline.OnAxis {
						assert.Equal(t, places, inStrips[f.Contact.ID], what)
					} else {
						assert.Zero(t, inStrips[f.Contact.ID], what)
					}
					want := 1 // its light
					if s.Time.Nights[i].Fish[k].Off == timeline.OnAxis {
						want++
					}
					assert.Equal(t, want, joined[f.Contact.ID], what)
				}
			}
		}
	}
}

// Ensure that the sketch has every contact of its beat that has a pool and a place.
func TestPoolsTogetherShowsEveryFish(t *testing.T) {
	for name, set := range tellingSets(t) {
		if len(set) == 0 {
			continue
		}
		s := sides(set, timeline.ClockAxis)
		got := countHits(scene.PoolsTogether(s.Time, draw.Size{W: 1000, H: 640}, scene.Dusk, scene.TogetherView{}), journal.KindContact)
		beat := s.Time.Nights[0].Night.Log.Trip.Beat
		for _, l := range s.Time.Nights {
			for _, c := range l.Night.Contacts {
				want := 0
				if c.HasPool && l.Night.Log.Trip.Beat == beat {
					want = 1
				}
				assert.Equal(t, want, got[c.ID], "%s, night %s, contact %d", name, l.Night.Log.Trip.Evening, c.N)
			}
		}
	}
}

// Ensure that only the fish that are picked out are joined, those of the night that
// stands out among them.
func TestJoinedOnlyWhereAsked(t *testing.T) {
	set := sharedDemo(t)[:12]
	s := sides(set, timeline.ClockAxis)
	strokes := func(v scene.TogetherView) int {
		l := scene.Joined(s.Time, s.Light, draw.Size{W: 1000, H: 640}, scene.Dusk, v).List
		n := 0
		for i := range l.Len() {
			o := l.Op(i)
			if o.Kind == draw.StrokeOp && (o.Stroke.Width == 1.1 || o.Stroke.Width == 2) {
				n++
			}
		}
		return n
	}
	none := strokes(scene.TogetherView{})
	var with *timeline.Night
	for _, n := range set {
		if len(n.Contacts) >= 3 {
			with = n
		}
	}
	require.NotNil(t, with)
	one := strokes(scene.TogetherView{Fish: with.Contacts[0].Ref()})
	all := strokes(scene.TogetherView{Night: with.Log.Trip.ID})
	assert.Greater(t, one, none)
	assert.Greater(t, all, one)
}

// Ensure that nothing moves under the pointer: what is pointed at is drawn stronger and
// joined, and every mark stays where it was.
func TestPointingMovesNothing(t *testing.T) {
	set := sharedDemo(t)[:20]
	s := sides(set, timeline.GreyAxis)
	size := draw.Size{W: 1000, H: 640}
	for _, p := range scene.Pictures {
		v := scene.TogetherView{Night: set[3].Log.Trip.ID}
		before := scene.Together(p, s, size, scene.Dusk, v)
		for _, n := range set[:6] {
			v.Over = n.Log.Trip.Ref()
			if len(n.Contacts) > 0 {
				v.Over = n.Contacts[0].Ref()
			}
			after := scene.Together(p, s, size, scene.Dusk, v)
			require.Len(t, after.Hits, len(before.Hits))
			for i := range before.Hits {
				require.Equal(t, before.Hits[i].Box, after.Hits[i].Box, "%s", p)
			}
		}
	}
}
