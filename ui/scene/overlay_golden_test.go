package scene_test

import (
	"testing"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
)

// Ensure that the pictures of three small nights stay as they were looked at: one with a
// late moon and two rods, one without a moon and with a fish whose time is not known, and
// a blank one.
func TestGoldenTogether(t *testing.T) {
	night := func(n byte, month time.Month, day int) *fixture {
		f := newFixture(t, 54.985, -4.431, journal.Date{Year: 2026, Month: month, Day: day}, true)
		f.trip.ID, f.next = fixed(n), n
		return f
	}
	two := night(100, time.July, 4).rods(2)
	two.add(journal.Sky{Head: two.head(0, two.exact(22, 0)), Cloud: journal.Of(2)})
	two.rig(1, 22, 30, 13)
	two.run(1, 2, 22, 35, 23, 40)
	two.fish(1, two.exact(22, 52), journal.Landed, 26)
	two.rig(2, 23, 0, 14, 13)
	two.run(2, 3, 23, 5, 1, 10)
	two.fish(2, journal.About(two.clock(0, 42), 0), journal.Lost, 0)

	unsure := night(150, time.July, 14).rods(1)
	unsure.rig(1, 22, 40, 0)
	run := unsure.run(1, 2, 22, 45, 23, 50)
	unsure.fish(1, journal.Within(run), journal.Pull, 0)

	blank := night(200, time.August, 20).rods(1)
	blank.run(1, 3, 21, 30, 23, 0)

	set := []*timeline.Night{two.night(), unsure.night(), blank.night()}
	v := scene.TogetherView{Night: set[0].Log.Trip.ID, Fish: set[0].Contacts[1].Ref()}
	size := draw.Size{W: 900, H: 520}
	golden(t, "together-joined", scene.Together(scene.JoinedPicture, sides(set, timeline.ClockAxis), size, scene.Dusk, v).List)
	golden(t, "together-strips", scene.Together(scene.StripsPicture, sides(set, timeline.MoonAxis), size, scene.Dusk, v).List)
	golden(t, "together-light", scene.Together(scene.StripsPicture, sides(set, timeline.LightAxis), size, scene.Paper, v).List)
	golden(t, "together-pools", scene.Together(scene.PoolsPicture, sides(set, timeline.ClockAxis), size, scene.Lamp, v).List)
	golden(t, "together-page", scene.TogetherPage(scene.JoinedPicture, sides(set, timeline.GreyAxis), "Three nights on Home Beat", []string{"Picked one by one."}, scene.Paper, v))
	golden(t, "together-legend", scene.TogetherLegend(700, scene.Paper))
}
