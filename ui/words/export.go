package words

import (
	"fmt"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
)

// NoPlacesInGPX is why a file of coordinates cannot be made without any.
func NoPlacesInGPX() Told {
	return Told{"A GPX file is made of coordinates, and none may be shown.", "Allow the middle of each pool or exact places, or export as GeoJSON or CSV."}
}

// ExportTitle names the file of a night: Night of Sat 4 July 2026.
func ExportTitle(d journal.Date) string { return "Night of " + NightDate(d) }

// ExportFish names a fish on a map: 3 landed, sea trout.
func ExportFish(k timeline.Contact) string {
	return commas(fmt.Sprintf("%d %s", k.N, TouchName(k.Touch)), SpeciesName(k.Species.Or("")))
}

// ExportFishNote says in one line what is known of a fish: about 23:20, pool 3, 48 cm,
// 1.2 kg, returned, trees grey, 0.2 lx.
func ExportFishNote(k timeline.Contact, pool, note string, zone *time.Location, p Prefs) string {
	length, weight := "", ""
	if l, ok := k.Length.Get(); ok {
		length = p.fish(l)
	}
	if w, ok := k.Weight.Get(); ok {
		weight = p.weight(w)
		if k.Estimated {
			weight = "~" + weight
		}
	}
	return commas(Moment(k.When, k.At, zone), pool, length, weight, string(k.Fate.Or("")), RungName(k.Rung, p), note)
}

// FishWithoutPlace says how many fish a map leaves out.
func FishWithoutPlace(n int) string {
	return counted(n, "fish has", "fish have") + " no place and could not be put on the map"
}
