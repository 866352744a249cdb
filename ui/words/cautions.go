package words

// Caution reminds of something that harms people or fish at night, in the trade's
// usual words (common practice). None of them says what may be done: that is for
// local byelaws, the owner of the water and licensed practice.
type Caution struct{ Topic, Text string }

// Cautions lists the reminders.
var Cautions = []Caution{
	{"Wading", "Wade at night only where you have waded by day, with a stick, a buoyancy aid and a companion who knows where you are. This journal says how dark a pool is, never whether it can be waded."},
	{"Floods", "Rivers rise fast after rain far away, and faster below a dam. If the water rises, colours or carries leaves, get out on the bank from which you can walk home."},
	{"Lightning", "A rod is a conductor. With thunder about, lay it down, leave the water and the open bank, and wait. Keep every rod and line well away from power lines."},
	{"Hooks", "Wear glasses and a hat when casting in the dark, keep the back-cast clear, and carry cutters. A hook deep in flesh, or anywhere near an eye, is for a doctor."},
	{"The fish", "Warm water kills released fish; many rivers ask anglers to stop at a set temperature. Wet hands, keep the fish in the water, unhook it quickly and let it swim off by itself. Kelts go back wherever that is the rule."},
	{"Rules", "Seasons, hours, days of rest, hooks, limits and tags are set by local byelaws and by the owner of the water, and they change. Ask them, and note with the beat who said what and when."},
}

// PageCaution stands at the foot of a page that is given away.
func PageCaution() string {
	return "A record of one night, no advice: light is computed and may be out by the factor shown. Wading, floods, lightning and hooks are dangers at night; byelaws and the owner of the water decide what may be done."
}
