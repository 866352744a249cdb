package words

import (
	"fmt"
	"strconv"
	"strings"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// ContactNumber is the number of a contact, with the rod's initials where more than
// one rod fished: 5, or 5A.
func ContactNumber(n *timeline.Night, k timeline.Contact) string {
	s := strconv.Itoa(k.N)
	if len(n.Rods) > 1 {
		s += n.Rods[k.Rod].Initials
	}
	return s
}

// ContactLine says what came and where on the leader: 1 lb 10 oz, dropper; came off,
// point; brown trout, 12 oz.
func ContactLine(k timeline.Contact, p Prefs) string {
	what := touches[k.Touch]
	if k.Touch == journal.Landed && FishSize(k.Contact, p) != "" {
		what = ""
	}
	species := ""
	if s, ok := k.Species.Get(); ok && s != journal.SeaTrout {
		species = SpeciesName(s)
	}
	return commas(what, species, FishSize(k.Contact, p), PositionName(k.Fly.Position))
}

// FishSize says the weight, marked if it was judged, else the length; empty if
// neither is known.
func FishSize(k journal.Contact, p Prefs) string {
	if w, ok := k.Weight.Get(); ok {
		if k.Estimated {
			return "about " + p.weight(w)
		}
		return p.weight(w)
	}
	if l, ok := k.Length.Get(); ok {
		return p.fish(l)
	}
	return ""
}

// ContactLines says a contact in the log: the fish and the fly that took it, what else
// is known of it, and the note: 1 lb 10 oz, dropper ½ in full pale.
func ContactLines(n *timeline.Night, k timeline.Contact, p Prefs) []string {
	first := ContactLine(k, p)
	if k.HasFly && k.Fly.Known {
		between := " " // after the fly's place on the leader
		if PositionName(k.Fly.Position) == "" {
			between = ", to "
		}
		first += between + Fly(k.Fly.Dress, p)
	}
	out := []string{first}
	for _, s := range []string{FishDetails(k.Contact, p), k.Note} {
		if s != "" {
			out = append(out, s)
		}
	}
	return out
}

// ContactLog says a contact in the column of the log, a line for each: what came and what
// became of it, the fly that took it, what else is known, the note.
func ContactLog(n *timeline.Night, k timeline.Contact, p Prefs) []string {
	species := ""
	if s, ok := k.Species.Get(); ok && s != journal.SeaTrout {
		species = SpeciesName(s)
	}
	what := touches[k.Touch]
	size := FishSize(k.Contact, p)
	if k.Touch == journal.Landed && size != "" {
		what = ""
	}
	fate := string(k.Fate.Or(""))
	fly := PositionName(k.Fly.Position)
	if k.HasFly && k.Fly.Known {
		fly = strings.TrimSpace(fly + " " + Fly(k.Fly.Dress, p))
	}
	rest := k.Contact
	rest.Fate = journal.Field[journal.Fate]{}
	var out []string
	for _, s := range []string{commas(what, species, size, fate), fly, FishDetails(rest, p), k.Note} {
		if s != "" {
			out = append(out, s)
		}
	}
	return out
}

// FishDetails says the rest: herling, 38 cm, hen, sea lice, hooked in the scissors, 20
// s out of water, returned.
func FishDetails(k journal.Contact, p Prefs) string {
	length, lice, hook, air, tag, part := "", "", "", "", "", ""
	if l, ok := k.Length.Get(); ok && k.Weight.Known() {
		length = p.fish(l)
	}
	if has, ok := k.Lice.Get(); ok {
		lice = "no sea lice"
		if has {
			lice = "sea lice"
		}
	}
	if h, ok := k.HookPlace.Get(); ok {
		hook = "hooked in the " + h
		if h == "foul" {
			hook = "foul-hooked"
		}
	}
	if s, ok := k.AirTime.Get(); ok {
		air = fmt.Sprintf("%d s out of water", s)
		if s == 0 {
			air = "kept in the water"
		}
	}
	if t, ok := k.Tag.Get(); ok {
		tag = "tag " + t
	}
	if s, ok := k.Part.Get(); ok {
		part = "in the " + s + " of the pool"
	}
	return commas(k.Class.Or(""), length, k.Sex.Or(""), lice, hook, air, string(k.Fate.Or("")), tag, part)
}

// ContactTip says a contact in full: number, rod, time, pool, fish, fly and light.
func ContactTip(n *timeline.Night, k timeline.Contact, p Prefs) string {
	who := ""
	if len(n.Rods) > 1 {
		who = RodName(n.Rods[k.Rod])
	}
	where := ""
	if k.HasPool {
		where = PoolName(k.Pool.Name)
	}
	fly := ""
	if k.HasFly && k.Fly.Known {
		fly = "to " + Fly(k.Fly.Dress, p)
	}
	head := commas(ContactNumber(n, k), who, Moment(k.When, k.At, n.Zone), where)
	return head + ": " + join("; ", []string{ContactLine(k, p), fly, Light(n, k, p), FishDetails(k.Contact, p), k.Note})
}

// VeryHeavy asks about a weight that is likely a slip: 99 lb is very heavy for a sea
// trout.
func VeryHeavy(w units.Weight) string {
	return w.String() + " is very heavy for a sea trout: Enter again keeps it."
}
