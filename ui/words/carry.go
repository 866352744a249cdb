package words

import (
	"strings"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
)

// The words of moving things by hand, in time on the strip and in place on the sketch.

// NotOnWater is why a contact cannot be let go there.
func NotOnWater() Told {
	return Told{"There is no pool here.", "The fish is back at its place: let it go on the water of a pool."}
}

// RodElsewhere is why a contact cannot be let go in a pool: its rod fished another one
// then.
func RodElsewhere(n *timeline.Night, rod timeline.RodNight, run timeline.RunSpan, to geo.Pool, at journal.Spread) Told {
	return Told{
		RodName(rod) + " was not in " + PoolName(to.Name) + " at " + End(at, n.Zone) + ", but in " + PoolName(run.Pool.Name) + " " + RunTimes(n, run) + ".",
		"The fish is back at its place: move it in time first, or change its pool on its card.",
	}
}

// StaysWhereItWas is why something cannot be let go at a moment.
func StaysWhereItWas(what string) Told { return Told{what, "It is back where it was."} }

// momentOf prints when something is: 23:41; about 22:10; 22:35–23:12 for a run.
func momentOf(n *timeline.Night, e journal.Entry) string {
	h := e.Base()
	if run, ok := e.(journal.Run); ok {
		from, to := n.Log.RunSpan(run)
		return RunTimes(n, timeline.RunSpan{From: from, To: to})
	}
	s := n.Log.At(e)
	if h.When.Kind == journal.AboutTime {
		return about + Clock(s.Mid(), n.Zone)
	}
	return ClockSpan(s.Lo, s.Hi, n.Zone)
}

// Carried says where an entry that is being moved would come to lie: 23:41, was 23:10.
// fault is why it cannot lie there, nil for nothing.
func Carried(now, was journal.Spread, zone *time.Location, aside string, fault error) string {
	s := End(now, zone)
	if now != was {
		s += ", was " + End(was, zone)
	}
	if aside != "" {
		s += "; " + aside
	}
	return s + whyNot(fault)
}

// CarriedTo says where on the beat a fish that is being moved would come to lie: in Long
// Flat.
func CarriedTo(pool string, fault error) string {
	if fault != nil {
		return strings.TrimSpace(strings.TrimPrefix(whyNot(fault), "."))
	}
	return "in " + PoolName(pool)
}

// NowIn, NowInNone and LeftOutside say, while something is moved in time, what that changes
// beyond its moment.
func NowIn(pool string) string { return "now in " + PoolName(pool) }
func NowInNone() string        { return "now in no pool" }
func LeftOutside(n int) string {
	if n == 0 {
		return ""
	}
	return number(n, "fish or touch outside it", "fish and touches outside it")
}

// Nudged says where an entry moved by keys stands before it is stored.
func Nudged(now journal.Spread, zone *time.Location, aside string, fault error) string {
	if fault != nil {
		return End(now, zone) + whyNot(fault)
	}
	return "Moving to " + commas(End(now, zone), aside) + " …"
}

// whyNot is the sentence of a fault behind another one.
func whyNot(fault error) string {
	if fault == nil {
		return ""
	}
	what, _ := Explain(fault)
	return ". " + what
}

// Moved says what became of something that was moved; left is how many contacts it left
// behind, whose pool was written down: Fish moved to 23:41, now in Long
// Flat. It no longer hangs on the run.
func Moved(n *timeline.Night, before, after journal.Entry, left int) string {
	kind := after.Ref().Kind
	s := kinds[kind] + " moved to " + momentOf(n, after)
	if k, ok := after.(journal.Contact); ok {
		was, _ := before.(journal.Contact)
		if k.When.Lo.Equal(was.When.Lo) && k.When.Hi.Equal(was.When.Hi) {
			s = kinds[kind] + " moved to its place"
		}
		s += contactPool(n, k)
	}
	s = sentence(s)
	if len(before.Base().When.Anchors) > 0 && len(after.Base().When.Anchors) == 0 {
		s += " Its time stands by itself now."
	}
	if left > 0 {
		s += " " + sentence(number(left, "fish or touch that is outside it now keeps its pool", "fish and touches that are outside it now keep their pool"))
	}
	return s
}

// contactPool says the pool of a moved contact where a reader may wonder: it is in
// another one's run now, or its rod was in no run or another pool then.
func contactPool(n *timeline.Night, k journal.Contact) string {
	for _, c := range n.Contacts {
		if c.Contact.ID != k.ID || !c.HasPool {
			continue
		}
		at := ", in " + PoolName(c.Pool.Name)
		if run := n.Rods[c.Rod].RunAt(c.At.Mid()); run == nil {
			return at + ", outside any run of " + RodName(n.Rods[c.Rod])
		} else if run.Run.Pool != c.Pool.ID {
			return at + ", though " + RodName(n.Rods[c.Rod]) + " was in " + PoolName(run.Pool.Name) + " then"
		}
		return at
	}
	return ""
}
