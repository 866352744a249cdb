package scene

import (
	"slices"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
)

// What follows tells which codes stand on the page of a night.

func always(*timeline.Night) bool { return true }

// came reports whether something came that is drawn as k is.
func came(k journal.Contact) func(*timeline.Night) bool {
	kept := func(c journal.Contact) bool { return c.Touch == journal.Landed && c.Fate.Or("") == journal.Kept }
	return func(n *timeline.Night) bool {
		return slices.ContainsFunc(n.Contacts, func(c timeline.Contact) bool { return c.Touch == k.Touch && kept(c.Contact) == kept(k) })
	}
}

func weighed(n *timeline.Night) bool {
	return slices.ContainsFunc(n.Contacts, func(c timeline.Contact) bool {
		return (c.Touch == journal.Landed || c.Touch == journal.Lost) && c.Weight.Known()
	})
}

func photographed(n *timeline.Night) bool {
	return slices.ContainsFunc(n.Log.Entries, func(e journal.Entry) bool { return e.Ref().Kind == journal.KindPhoto })
}

func uncertain(n *timeline.Night) bool {
	unsure := func(s journal.Spread) bool { return !s.Exact() }
	if slices.ContainsFunc(n.Contacts, func(c timeline.Contact) bool { return unsure(c.At) }) ||
		slices.ContainsFunc(n.Waters, func(w timeline.Noted[journal.Water]) bool { return unsure(w.At) }) {
		return true
	}
	return slices.ContainsFunc(n.Rods, func(r timeline.RodNight) bool {
		return slices.ContainsFunc(r.Runs, func(run timeline.RunSpan) bool { return unsure(run.From) || unsure(run.To) }) ||
			slices.ContainsFunc(r.Rigs, func(rig timeline.RigSpan) bool { return unsure(rig.From) })
	})
}

// flies reports whether some fly of the night, or a rig of which nothing is known,
// is as f asks.
func flies(n *timeline.Night, f func(timeline.FlyOn) bool) bool {
	return slices.ContainsFunc(n.Rods, func(r timeline.RodNight) bool {
		return slices.ContainsFunc(r.Rigs, func(rig timeline.RigSpan) bool {
			return len(rig.Flies) == 0 && f(timeline.FlyOn{}) || slices.ContainsFunc(rig.Flies, f)
		})
	})
}

func tied(known bool) func(*timeline.Night) bool {
	return func(n *timeline.Night) bool {
		return flies(n, func(f timeline.FlyOn) bool { return (f.Known && f.Dress.Length.Known()) == known })
	}
}

func dropper(n *timeline.Night) bool {
	return slices.ContainsFunc(n.Rods, func(r timeline.RodNight) bool {
		return slices.ContainsFunc(r.Rigs, func(rig timeline.RigSpan) bool { return len(rig.Flies) > 1 })
	})
}

// rods reports whether at least so many rods fished a pool.
func rods(count int) func(*timeline.Night) bool {
	return func(n *timeline.Night) bool {
		for i, r := range n.Rods {
			if i >= count-1 && len(r.Runs) > 0 {
				return true
			}
		}
		return false
	}
}

// bankless reports whether a run lacks its bank and both its ends.
func bankless(n *timeline.Night) bool {
	return slices.ContainsFunc(n.Rods, func(r timeline.RodNight) bool {
		return slices.ContainsFunc(r.Runs, func(run timeline.RunSpan) bool {
			return !run.Run.Bank.Known() && !run.Run.Enter.Known() && !run.Run.Leave.Known()
		})
	})
}

func greyWasNoted(n *timeline.Night) bool { return len(n.Grey.Logged) > 0 }

func cloudNoted(n *timeline.Night) bool {
	return slices.ContainsFunc(n.Skies, func(s timeline.Noted[journal.Sky]) bool { return s.Entry.Cloud.Known() || !s.Entry.TreesGrey })
}

func levelKnown(n *timeline.Night) bool {
	return len(n.Gauges) > 0 || slices.ContainsFunc(n.Waters, func(w timeline.Noted[journal.Water]) bool {
		return w.Entry.Level.Known() || w.Entry.Trend.Known()
	})
}

func hasTrees(n *timeline.Night) bool { return len(n.Beat.Trees()) > 0 }

func spots(role geo.Role) func(*timeline.Night) bool {
	return func(n *timeline.Night) bool {
		return slices.ContainsFunc(n.Beat.Features, func(f geo.Feature) bool { return f.Role == role })
	}
}
