package state

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// GapKind is a sort of thing that a written night lacks.
type GapKind string

// The sorts of gaps, what costs most first: without them hours, light or flies cannot be
// counted. What is only nice to have, such as the sex of a fish, is none.
const (
	GapUntil  GapKind = "until"  // a run without an end
	GapRig    GapKind = "rig"    // a rod that fished, and no flies
	GapPool   GapKind = "pool"   // a fish in no pool
	GapFly    GapKind = "fly"    // a fish to no fly, though it touched one
	GapSize   GapKind = "size"   // a landed fish without weight and length
	GapFate   GapKind = "fate"   // a landed fish neither returned nor kept
	GapTemp   GapKind = "temp"   // no water temperature all night
	GapCloud  GapKind = "cloud"  // no cloud noted all night
	GapEnd    GapKind = "end"    // no end of fishing, and none of the rods'
	GapUnread GapKind = "unread" // a scribble that stayed a note
)

// GapKinds lists them in the order in which they are shown.
var GapKinds = []GapKind{GapUntil, GapRig, GapPool, GapFly, GapSize, GapFate, GapTemp, GapCloud, GapEnd, GapUnread}

// Gap is one thing missing: what it is, and the field of the card that fills it.
type Gap struct {
	Kind  GapKind
	Ref   journal.Ref // the entry that lacks it; zero: an entry is to be added
	Add   journal.Kind
	Rod   journal.ID // whose, where an entry is to be added for a rod
	Field string     // of the card
	Says  string     // one line for a list
	at    time.Time
}

// key is what a decision on the gap goes by. A night's own gaps go by the night.
func (g Gap) key(trip journal.ID) string {
	id := cmp.Or(g.Ref.ID, g.Rod, trip)
	return gapKeys + id.String() + "#" + string(g.Kind)
}

// gapKeys begins the keys of decisions on gaps; others begin with a source.
const gapKeys = "gap:"

// Gaps returns what the open night lacks, in the order of GapKinds and of the night. An
// answer of “not known” closes a gap for good.
func (d *Desk) Gaps() []Gap {
	n := d.stands()
	if n == nil || len(n.Log.Entries) == 0 {
		return nil // an empty night says itself what to begin with
	}
	closed := d.closedGaps()
	out := slices.DeleteFunc(gapsOf(n), func(g Gap) bool { return closed[g.key(n.Log.Trip.ID)] })
	slices.SortStableFunc(out, func(a, b Gap) int {
		return cmp.Or(cmp.Compare(slices.Index(GapKinds, a.Kind), slices.Index(GapKinds, b.Kind)), a.at.Compare(b.at))
	})
	for i, g := range out {
		e, _ := n.Log.Find(g.Ref.ID)
		rod := ""
		if !g.Rod.IsZero() {
			for _, r := range n.Rods {
				if r.Rod.ID == g.Rod {
					rod = words.RodName(r)
				}
			}
		}
		out[i].Says = words.GapLine(n, string(g.Kind), e, rod, d.prefs)
	}
	return out
}

// closedGaps are the keys of gaps answered with “not known”.
func (d *Desk) closedGaps() map[string]bool {
	all, _ := journal.All[journal.Decision](d.j) // one that cannot be read closes nothing
	out := map[string]bool{}
	for _, v := range all {
		if v.Verdict == journal.Rejected && strings.HasPrefix(v.Key, gapKeys) {
			out[v.Key] = true
		}
	}
	return out
}

func gapsOf(n *timeline.Night) (out []Gap) {
	for i := range n.Rods {
		r := &n.Rods[i]
		for _, run := range r.Runs {
			if !run.Run.Until.Known() && !run.Run.Until.IsNone() {
				out = append(out, Gap{Kind: GapUntil, Ref: run.Run.Ref(), Field: "until", at: run.From.Mid()})
			}
		}
		if len(r.Runs) > 0 && len(r.Rigs) == 0 {
			out = append(out, Gap{Kind: GapRig, Add: journal.KindRig, Rod: r.Rod.ID, Field: "flies.0", at: r.Runs[0].From.Mid()})
		}
	}
	for _, k := range n.Contacts {
		add := func(kind GapKind, field string) {
			out = append(out, Gap{Kind: kind, Ref: k.Contact.Ref(), Field: field, at: k.At.Mid()})
		}
		if !k.HasPool && !k.Contact.Pool.IsNone() {
			add(GapPool, "pool")
		}
		touched := k.Touch != journal.Follow && k.Touch != journal.Boil
		if touched && !k.HasFly && !k.Contact.Fly.IsNone() {
			add(GapFly, "fly")
		}
		if k.Touch != journal.Landed {
			continue
		}
		if k.Weight == (journal.Contact{}).Weight && k.Length == (journal.Contact{}).Length {
			add(GapSize, "weight")
		}
		if !k.Fate.Known() {
			add(GapFate, "fate")
		}
	}
	return append(out, ofNight(n)...)
}

// ofNight are the gaps of the night as a whole, once somebody fished, and the scribbles
// that stayed notes.
func ofNight(n *timeline.Night) (out []Gap) {
	temp, cloud, ended := false, false, false
	var water *journal.Water
	for _, e := range n.Log.Sorted() {
		switch e := e.(type) {
		case journal.Water:
			temp = temp || e.Temp.Known() || e.Temp.IsNone()
			if water == nil {
				water = &e
			}
		case journal.Sky:
			cloud = cloud || e.Cloud.Known() || e.Cloud.IsNone()
		case journal.End:
			ended = true
		case journal.Note:
			if e.Reason != "" {
				out = append(out, Gap{Kind: GapUnread, Ref: e.Ref(), Field: "note", at: n.Log.At(e).Mid()})
			}
		}
	}
	if n.Totals.Runs == 0 && n.Totals.Contacts() == 0 {
		return out
	}
	if !temp {
		g := Gap{Kind: GapTemp, Add: journal.KindWater, Field: "temp"}
		if water != nil {
			g.Add, g.Ref = "", water.Ref()
		}
		out = append(out, g)
	}
	if !cloud {
		out = append(out, Gap{Kind: GapCloud, Add: journal.KindSky, Field: "cloud"})
	}
	stops := len(n.Rods) > 0
	for _, r := range n.Log.Trip.Rods {
		stops = stops && r.Stop.Known()
	}
	if !ended && !stops {
		out = append(out, Gap{Kind: GapEnd, Add: journal.KindEnd, Field: "when"})
	}
	return out
}

// GapCard returns the card that fills a gap, which is not on the desk yet: the card of
// the entry, or of a new one for the rod that lacks it.
func (d *Desk) GapCard(g Gap) (*Card, error) {
	d.HideGhost()
	if !g.Ref.ID.IsZero() {
		d.Select(g.Ref)
		return d.AmendCard(g.Ref)
	}
	if !g.Rod.IsZero() {
		d.SelectRod(g.Rod)
	}
	if !g.at.IsZero() {
		d.SetCursor(g.at)
	}
	return d.AddCard(g.Add)
}

// NotKnown answers a gap: it is not known and never will be. That is stored, as a
// decision on what the night proposed to fill in, so that it is not asked again; the
// entry stays as it is, unknown and not none.
func (d *Desk) NotKnown(g Gap) (err error) {
	n := d.stands()
	if n == nil {
		return errNoNight()
	}
	v := journal.Decision{ID: journal.NewID(), Key: g.key(n.Log.Trip.ID), Verdict: journal.Rejected, Entry: g.Ref}
	d.act(func() {
		if _, err = d.j.Do(words.NotKnownDeed, journal.Batch{Put: []journal.Record{v}}); err == nil {
			d.tell(NightOpen)
		}
	})
	return err
}
