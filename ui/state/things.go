package state

import (
	"fmt"
	"slices"
	"strings"

	"gloamline/journal"
	"gloamline/timeline"
)

// nouns names the kinds of entry where one is numbered through the night.
var nouns = map[journal.Kind]string{
	journal.KindRun: "run", journal.KindRig: "rig", journal.KindWay: "way", journal.KindContact: "fish",
	journal.KindSky: "sky", journal.KindWeather: "weather", journal.KindWater: "river", journal.KindReady: "ready",
	journal.KindBreak: "break", journal.KindEnd: "end", journal.KindPlan: "plan", journal.KindNote: "note", journal.KindPhoto: "photo",
}

// Things returns what a moment of the night can hang on, in the order of the
// night, each by a name of its own: fish by their number, runs by their pool
// ("Alder Pool", with "run 2" if it was fished twice), everything else by kind and
// number.
func Things(n *timeline.Night) []Thing {
	counts := map[journal.Kind]int{}
	perPool := map[journal.ID]int{}
	greys := 0
	entries := n.Log.Sorted()
	for _, e := range entries {
		switch e := e.(type) {
		case journal.Run:
			perPool[e.Pool]++
		case journal.Sky:
			if e.TreesGrey {
				greys++
			}
		}
	}
	names := poolNames(n)
	nth := map[journal.ID]int{}
	var out []Thing
	for _, e := range entries {
		k := e.Ref().Kind
		counts[k]++
		plain := fmt.Sprintf("%s %d", nouns[k], counts[k])
		t := Thing{ID: e.Base().ID, Name: plain}
		switch e := e.(type) {
		case journal.Run:
			t.Run = true
			nth[e.Pool]++
			name := names[e.Pool]
			if name == "" {
				break
			}
			t.Alias = []string{plain}
			full := fmt.Sprintf("%s run %d", name, nth[e.Pool])
			if t.Name = full; perPool[e.Pool] == 1 {
				t.Name = name
				t.Alias = append(t.Alias, strings.TrimPrefix(strings.ToLower(full), "the "))
			}
		case journal.Contact:
			if i := slices.IndexFunc(n.Contacts, func(x timeline.Contact) bool { return x.Contact.ID == e.ID }); i >= 0 {
				t.Name = fmt.Sprintf("fish %d", n.Contacts[i].N)
			}
		case journal.Sky:
			if e.TreesGrey && greys == 1 {
				t.Name, t.Alias = "trees grey", []string{plain}
			}
		}
		out = append(out, t)
	}
	return out
}

// poolNames returns the names by which pools can be told apart in a typed time:
// none for a pool whose name another has, or that reads as a number of its own
// ("run 2") or as a joining word.
func poolNames(n *timeline.Night) map[journal.ID]string {
	out := map[journal.ID]string{}
	bare := func(s string) string {
		return strings.TrimPrefix(strings.Join(strings.Fields(strings.ToLower(s)), " "), "the ")
	}
	for _, p := range n.Beat.Pools {
		low := bare(p.Name)
		same := 0
		for _, q := range n.Beat.Pools {
			if bare(q.Name) == low {
				same++
			}
		}
		if same > 1 || low == "" || low == "run" || low == "this run" || low == "trees grey" ||
			strings.Contains(low, " and ") || strings.Contains(low, " run ") || clashes(low) {
			continue
		}
		out[p.ID] = strings.Join(strings.Fields(p.Name), " ")
	}
	return out
}

// clashes reports whether a pool's name looks like a kind and its number.
func clashes(name string) bool {
	for _, noun := range nouns {
		if rest, ok := strings.CutPrefix(name, noun+" "); ok && strings.Trim(rest, "0123456789") == "" {
			return true
		}
	}
	return false
}
