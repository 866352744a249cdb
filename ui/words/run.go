package words

import (
	"strings"
	"time"

	"gloamline/timeline"
)

// RunHeading heads the block of a run: Alder Pool, Anna, first run. The rod is named
// where more than one fished.
func RunHeading(n *timeline.Night, run timeline.RunSpan, rod timeline.RodNight) string {
	who := ""
	if len(n.Rods) > 1 {
		who = RodName(rod)
	}
	return commas(PoolName(run.Pool.Name), who, ordinal(run.Nth)+" run")
}

// RunTimes says when a run was: 22:35–23:10; about 22:35–23:10 where its beginning, or
// both ends, are uncertain; 22:35–about 23:10 where its end alone is.
func RunTimes(n *timeline.Night, run timeline.RunSpan) string {
	from, to := End(run.From, n.Zone), End(run.To, n.Zone)
	if from == to {
		return from
	}
	if strings.HasPrefix(from, about) {
		to = strings.TrimPrefix(to, about)
	}
	return from + "–" + to
}

// RunShort labels a run on the strip: Alder Pool, second run.
func RunShort(run timeline.RunSpan) string {
	if run.Nth > 1 {
		return PoolName(run.Pool.Name) + ", " + ordinal(run.Nth) + " run"
	}
	return PoolName(run.Pool.Name)
}

// Rest says how long a pool had been left alone before a run: rested 40 min; empty
// before the first.
func Rest(run timeline.RunSpan) string {
	switch {
	case run.Nth < 2:
		return ""
	case run.Rest <= 0:
		return "not rested"
	}
	return "rested " + Duration(run.Rest)
}

// RunTip says a run in full.
func RunTip(n *timeline.Night, run timeline.RunSpan, rod timeline.RodNight, p Prefs) string {
	return commas(
		RunHeading(n, run, rod)+" "+RunTimes(n, run),
		Duration(run.To.Mid().Sub(run.From.Mid())),
		BankName(run.Run.Bank.Or("")),
		Rest(run),
		run.Run.Note,
	)
}

// BlankRun says that a run brought nothing.
func BlankRun() string { return "no fish" }

// PoolName is a pool's name, or what stands for one.
func PoolName(name string) string {
	if name == "" {
		return "unnamed pool"
	}
	return name
}

// RunsOverlap says that a rod is somewhere else at the time: Anna fishes Long Flat
// 23:12–23:45 then.
func RunsOverlap(rod, pool string, from, to time.Time, zone *time.Location) string {
	return sentence(join(" ", []string{rod, "fishes", PoolName(pool), ClockSpan(from, to, zone), "then: one rod is in one pool at a time"}))
}
