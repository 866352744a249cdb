package words

import (
	"strings"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

var (
	silhouettes = map[journal.Silhouette]string{journal.Slim: "slim", journal.MediumBulk: "medium bulk", journal.Full: "full"}
	tones       = map[journal.Tone]string{journal.DarkTone: "dark", journal.MediumTone: "mid tone", journal.LightTone: "pale"}
)

// SilhouetteName names the bulk of a fly against the sky.
func SilhouetteName(s journal.Silhouette) string { return silhouettes[s] }

// ToneName names how light a fly looks in grey.
func ToneName(t journal.Tone) string { return tones[t] }

// Fly describes a fly by what the fish may see: 1½ in slim dark, orange spot.
func Fly(d journal.Dress, p Prefs) string {
	length := ""
	if l, ok := d.Length.Get(); ok {
		length = p.fly(l)
	}
	look := join(" ", []string{length, silhouettes[d.Silhouette.Or("")], tones[d.Tone.Or("")]})
	spot := ""
	if c := strings.TrimSpace(d.HotSpot.Or("")); c != "" {
		spot = strings.ToLower(c) + " spot"
	}
	if s := commas(look, spot); s != "" {
		return s
	}
	return "fly not described"
}

// FlyInFull adds how it is built and armed: tube, treble, barbless.
func FlyInFull(d journal.Dress, p Prefs) string {
	barbs := ""
	if b, ok := d.Barbless.Get(); ok {
		barbs = "barbed"
		if b {
			barbs = "barbless"
		}
	}
	built := d.Built.Or("")
	if built == "hook" {
		built = "on a hook"
	}
	return join("; ", []string{Fly(d, p), commas(built, d.Hook.Or(""), barbs), d.Note})
}

// FlyOn describes a fly on the leader: point ¾ in slim dark, orange spot.
func FlyOn(f timeline.FlyOn, p Prefs) string {
	return join(" ", []string{PositionName(f.Position), flyOrUnknown(f, p)})
}

func flyOrUnknown(f timeline.FlyOn, p Prefs) string {
	if !f.Known {
		return "fly not known"
	}
	return Fly(f.Dress, p)
}

// FlyShort labels a fly in its lane: ¾ in point.
func FlyShort(f timeline.FlyOn, p Prefs) string {
	if l, ok := f.Dress.Length.Get(); ok && f.Known {
		return join(" ", []string{p.fly(l), PositionName(f.Position)})
	}
	return commas(PositionName(f.Position), "length not known")
}

// OneInch labels the faint rule of the lanes.
func OneInch() string { return units.LengthOf(1, units.Inch).String() }

// FlyArms says how a fly is built and armed, and its hot-spot: orange spot, tube, treble,
// barbless.
func FlyArms(d journal.Dress) string {
	spot := ""
	if c := strings.TrimSpace(d.HotSpot.Or("")); c != "" {
		spot = strings.ToLower(c) + " spot"
	}
	built := d.Built.Or("")
	if built == "hook" {
		built = ""
	}
	barbs := ""
	if b, ok := d.Barbless.Get(); ok && b {
		barbs = "barbless"
	}
	return commas(spot, built, d.Hook.Or(""), barbs)
}
