package scene_test

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
)

// sides lays nights along an axis and along the light, darkest first.
func sides(nights []*timeline.Night, axis timeline.Axis) scene.Sides {
	along := axis
	if axis == timeline.LightAxis {
		along = timeline.ClockAxis
	}
	s := scene.Sides{Time: timeline.Lay(nights, along), Light: timeline.Lay(nights, timeline.LightAxis), ByLight: axis == timeline.LightAxis}
	s.Time.Sort(timeline.ByDarkest)
	s.Light.Sort(timeline.ByDarkest)
	return s
}

var theDemo = struct {
	sync.Once
	nights []*timeline.Night
}{}

// sharedDemo builds the nights of the demo once; nobody changes them.
func sharedDemo(t testing.TB) []*timeline.Night {
	theDemo.Do(func() { theDemo.nights = demoNights(t) })
	require.NotEmpty(t, theDemo.nights)
	return theDemo.nights
}

// tellingSets are sets of nights on which pictures tend to go wrong.
func tellingSets(t *testing.T) map[string][]*timeline.Night {
	demo := sharedDemo(t)
	telling := tellingNights(t)
	return map[string][]*timeline.Night{
		"none": nil, "one": demo[5:6], "four": demo[3:7], "five": demo[:5], "thirty": demo[:30],
		"white": {telling["white"], demo[2]}, "unsure": {telling["unsure"], demo[9]}, "moonless": {telling["moonless"]}, "busy": {telling["busy"], demo[7]}, "empty": {telling["empty"]}, "nobody": {telling["nobody"], demo[1]},
	}
}

// togetherPictures draws every picture of a set of nights.
func togetherPictures(set []*timeline.Night, size draw.Size, look scene.Look) map[string]scene.Scene {
	out := map[string]scene.Scene{}
	v := scene.TogetherView{Hand: true}
	for i, n := range set {
		v.Night = n.Log.Trip.ID
		if len(n.Contacts) > 0 {
			v.Fish = n.Contacts[0].Ref()
			if i > 1 {
				break
			}
		}
	}
	for _, axis := range timeline.Axes {
		s := sides(set, axis)
		for _, p := range scene.Pictures {
			// each axis of time looks alike: one joined, one sketch, strips along three
			switch {
			case p != scene.StripsPicture && axis != timeline.GreyAxis, axis == timeline.SunsetAxis, axis == timeline.ClockAxis:
				continue
			}
			out[string(p)+" "+axis.String()] = scene.Together(p, s, size, look, v)
		}
		if axis == timeline.GreyAxis {
			out["page"] = scene.Scene{List: scene.TogetherPage(scene.JoinedPicture, s, "Nights of July", []string{"chosen by month"}, look, v)}
			out["page of strips"] = scene.Scene{List: scene.TogetherPage(scene.StripsPicture, s, "Nights of July", nil, look, v)}
		}
	}
	return out
}
