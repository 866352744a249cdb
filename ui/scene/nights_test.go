package scene_test

import (
	"testing"
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// fish adds a contact of a rod; ounces 0 is a weight that is not known.
func (f *fixture) fish(rod byte, w journal.When, touch journal.Touch, ounces float64) {
	c := journal.Contact{Head: f.head(rod, w), Touch: touch}
	if ounces > 0 {
		c.Weight = journal.Of(units.Weight{G: units.Grams(ounces * 28.349523125), Unit: units.Pound})
		c.Fate = journal.Of(journal.Returned)
	}
	f.add(c)
}

var july4 = journal.Date{Year: 2026, Month: time.July, Day: 4}

// tellingNights are nights on which pictures tend to go wrong, by name.
func tellingNights(t *testing.T) map[string]*timeline.Night {
	white := newFixture(t, 60.4, -1.2, journal.Date{Year: 2026, Month: time.June, Day: 21}, true).rods(1)
	white.run(1, 2, 23, 0, 0, 30)
	white.fish(1, white.exact(23, 40), journal.Landed, 30)

	moonless := newFixture(t, 54.985, -4.431, journal.Date{Year: 2026, Month: time.July, Day: 14}, true).rods(1)
	moonless.rig(1, 22, 40, 13)
	moonless.run(1, 3, 22, 45, 1, 20)
	moonless.fish(1, moonless.exact(0, 5), journal.Boil, 0)

	unsure := newFixture(t, 54.985, -4.431, july4, true).rods(1)
	unsure.rig(1, 22, 40, 0)
	run := unsure.run(1, 2, 22, 45, 23, 50)
	unsure.fish(1, journal.Within(run), journal.Pull, 0)
	unsure.fish(1, journal.About(unsure.clock(23, 30), 0), journal.Landed, 20)
	unsure.add(journal.Run{Head: unsure.head(1, journal.About(unsure.clock(0, 20), 0)), Until: journal.Of(journal.Between(unsure.clock(1, 5), unsure.clock(1, 40))), Pool: fixed(3)})
	unsure.fish(1, journal.Between(unsure.clock(0, 35), unsure.clock(1, 0)), journal.Lost, 0)

	out := map[string]*timeline.Night{
		"white": white.night(), "moonless": moonless.night(), "unsure": unsure.night(), "busy": busyNight(t, 3),
		"empty": newFixture(t, 54.985, -4.431, july4, true).rods(1).night(), "nobody": newFixture(t, 54.985, -4.431, july4, true).night(),
	}
	return out
}

// busyNight is two rods with five times perRun fish, six runs of which one is blank,
// and a way of fishing noted before each and during it.
func busyNight(t *testing.T, perRun int) *timeline.Night {
	f := newFixture(t, 54.985, -4.431, july4, true).rods(2)
	f.trip.Guide = journal.Of(fixed(15))
	f.puts = append(f.puts, journal.Person{ID: fixed(15), Name: "Morag"})
	water := func(h, m int, level, temp float64, trend journal.Trend) {
		f.add(journal.Water{Head: f.head(0, f.exact(h, m)), Level: journal.Of(units.Length{M: units.Metres(level), Unit: units.Metre}), Trend: journal.Of(trend), Clarity: journal.Of(journal.TeaWater), Temp: journal.Of(units.Temperature{C: units.Celsius(temp), Unit: units.DegreeCelsius})})
	}
	water(21, 50, 0.52, 14.5, journal.FiningDown)
	water(0, 30, 0.47, 14, journal.FiningDown)
	water(2, 0, 0.45, 13.5, journal.FiningDown)
	for i, c := range []int{1, 4, 7, 3} {
		f.add(journal.Sky{Head: f.head(0, f.exact((22+i)%24, 5)), Cloud: journal.Of(c)})
	}
	f.add(journal.Sky{Head: f.head(1, f.exact(23, 17)), TreesGrey: true})
	speeds := []journal.Speed{journal.SlowStrip, journal.FigureOfEight, journal.FastStrip}
	for rod := byte(1); rod <= 2; rod++ {
		for k := range 3 {
			h, m := (22+k)%24, 14+int(rod)*6
			f.rig(rod, h, m-4, 13+byte(k+int(rod))%2)
			f.add(journal.Way{Head: f.head(rod, f.exact(h, m-3)), Speed: journal.Of(speeds[k]), Depth: journal.Of(journal.UnderSurface)})
			f.run(rod, 2+byte(k+int(rod))%2, h, m, h, m+28)
			f.add(journal.Way{Head: f.head(rod, f.exact(h, m+12)), Speed: journal.Of(speeds[(k+1)%3]), Depth: journal.Of(journal.MidWater)})
			if k == 1 && rod == 2 {
				continue // a blank run
			}
			for i := range perRun {
				touch := []journal.Touch{journal.Landed, journal.Pull, journal.Lost}[(i+k)%3]
				oz := 0.0
				if touch == journal.Landed {
					oz = float64(12 + 14*i + 5*k)
				}
				f.fish(rod, f.exact(h, m+4+7*i), touch, oz)
			}
		}
	}
	f.add(journal.Note{Head: func() journal.Head {
		h := f.head(1, f.exact(1, 20))
		h.Note = "Mist on the flat, nothing moved after it came."
		return h
	}()})
	f.add(journal.End{Head: f.head(0, f.exact(2, 5)), Why: journal.Of("enough")})
	return f.night()
}
