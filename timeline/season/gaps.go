package season

// gaps returns what is missing of a night, of the rods that are let through.
func (f Filter) gaps(d *Digest) Gaps {
	g := d.Gaps
	for _, r := range f.rods(d) {
		g = g.plus(r.Gaps)
	}
	return g
}

func (g Gaps) plus(o Gaps) Gaps {
	g.Runs, g.RunsOpen = g.Runs+o.Runs, g.RunsOpen+o.RunsOpen
	g.Fish, g.FishNoFly = g.Fish+o.Fish, g.FishNoFly+o.FishNoFly
	g.FishNoPool, g.FishNoRun, g.FishWide = g.FishNoPool+o.FishNoPool, g.FishNoRun+o.FishNoRun, g.FishWide+o.FishWide
	g.Hooked, g.NoSize = g.Hooked+o.Hooked, g.NoSize+o.NoSize
	g.RodHours, g.NoRigHours, g.NoWayHours = g.RodHours+o.RodHours, g.NoRigHours+o.NoRigHours, g.NoWayHours+o.NoWayHours
	return g
}

// count is how many things are missing that the figures could have used.
func (g Gaps) count() int {
	n := g.RunsOpen + g.FishNoFly + g.FishNoPool + g.FishNoRun + g.FishWide + g.NoSize
	for _, b := range []bool{g.NoTrend, g.NoTemp, g.NoSky, g.NoEnd} {
		if b {
			n++
		}
	}
	return n
}
